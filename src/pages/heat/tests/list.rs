//! Wash, crock and stretch tests: due and recorded.

use super::run_tests::line;
use crate::components::{Empty, Icon, Page, long_rows};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::heat::{CureTest, TestResult, TestStatus, test_log, tests_due};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The list.
#[component]
pub fn TestsPage() -> impl IntoView {
    let store = Store::from_context();
    let due = Memo::new(move |_| store.shop.with(tests_due));
    let made = Memo::new(move |_| {
        store.shop.with(|shop| test_log(shop).into_iter().map(|(id, test)| (id, test.clone())).collect::<Vec<_>>())
    });
    let none = Memo::new(move |_| due.with(Vec::is_empty) && made.with(Vec::is_empty));
    let add = || {
        view! { <a class="button primary with-icon" href=HeatRoute::NewTest.hash()><Icon name="plus"/>{i18n::test_add()}</a> }
    };
    view! {
        <Page title=Signal::derive(|| i18n::tests_title().to_owned()) up=Route::Heat(HeatRoute::Home) aside=help(Term::WashTest) class="heat">
            {move || if none.get() {
                view! { <Empty icon="drop" title=i18n::tests_none_title() text=i18n::tests_none_text()>{add()}</Empty> }.into_any()
            } else {
                view! {
                    {group("due", i18n::tests_due(), due.get(), due_row)}
                    {group("log", i18n::tests_log(), made.get(), made_row)}
                    {add()}
                    <p class="quiet-line">{i18n::heat_no_promise()}</p>
                }.into_any()
            }}
        </Page>
    }
}

fn group<T: Send + Sync + 'static>(
    name: &'static str,
    title: &'static str,
    rows: Vec<T>,
    row: fn(&T) -> AnyView,
) -> AnyView {
    if rows.is_empty() {
        return ().into_any();
    }
    view! { <section class="heat-fabric"><h2>{title}</h2>{long_rows(name, "menu", rows, row)}</section> }.into_any()
}

fn due_row((run, standing): &(RunId, TestStatus)) -> AnyView {
    let lines: Vec<String> = standing.kinds.iter().filter(|kind| !kind.why.is_empty()).map(line).collect();
    let waiting = standing.kinds.iter().find_map(|kind| kind.waiting);
    let route = waiting.map_or(HeatRoute::NewTestForRun(*run), HeatRoute::Test);
    view! {
        <a class="menu-row" data-due="true" href=route.hash()>
            <Icon name="clock"/>
            <span class="row-words">
                <strong>{i18n::test_of(standing.ink.clone(), i18n::fabric_inside(standing.fabric))}</strong>
                {lines.into_iter().map(|line| view! { <span class="heat-calls">{line}</span> }).collect::<Vec<_>>()}
            </span>
            <Icon name="next"/>
        </a>
    }
    .into_any()
}

fn made_row((id, test): &(Subject, CureTest)) -> AnyView {
    let (tone, icon) = match test.result {
        TestResult::Waiting => ("", "clock"),
        TestResult::Pass => ("good", "check"),
        TestResult::Fail => ("bad", "alert"),
    };
    let how = format!("{}, {}", i18n::test_kind_of(test.kind), i18n::moment(test.result_at));
    view! {
        <a class="menu-row" href=HeatRoute::Test(*id).hash()>
            <span class="row-words">
                <strong>{i18n::test_of(test.ink.clone(), i18n::fabric_inside(test.fabric))}</strong>
                <span class="muted">{how}</span>
                <span><span class=format!("badge {tone}")><Icon name=icon/>{i18n::test_result_of(test.result)}</span></span>
            </span>
            <Icon name="next"/>
        </a>
    }.into_any()
}
