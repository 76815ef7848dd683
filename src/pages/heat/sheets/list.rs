//! The data sheets of the shop's inks.

use crate::components::{Empty, Icon, Page};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::heat::{InkSheet, inks_without_sheet, sheet_list};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The list, and the inks that need a data sheet.
#[component]
pub fn InkSheetsPage() -> impl IntoView {
    let store = Store::from_context();
    let sheets = Memo::new(move |_| {
        store.shop.with(|shop| sheet_list(shop).into_iter().map(|(id, sheet)| (id, sheet.clone())).collect::<Vec<_>>())
    });
    let wanted = Memo::new(move |_| store.shop.with(inks_without_sheet));
    let add = || {
        view! { <a class="button primary with-icon" href=HeatRoute::NewSheet.hash()><Icon name="plus"/>{i18n::sheet_add()}</a> }
    };
    let none = Memo::new(move |_| sheets.with(Vec::is_empty) && wanted.with(Vec::is_empty));
    view! {
        <Page title=Signal::derive(|| i18n::sheets_title().to_owned()) up=Route::Heat(HeatRoute::Home) aside=help(Term::DataSheets) class="heat">
            {move || if none.get() {
                view! { <Empty icon="jobs" title=i18n::sheets_none_title() text=i18n::sheets_none_text()>{add()}</Empty> }.into_any()
            } else {
                view! {
                    {wanted.with(|wanted| missing(wanted))}
                    <ul class="menu">{sheets.with(|sheets: &Vec<(Subject, InkSheet)>| sheets.iter().map(|(id, sheet)| line(*id, sheet)).collect::<Vec<_>>())}</ul>
                    {add()}
                    <p class="quiet-line">{i18n::heat_no_promise()}</p>
                }.into_any()
            }}
        </Page>
    }
}

/// Inks that will be printed soon and have no data sheet.
fn missing(wanted: &[(String, RunId)]) -> AnyView {
    if wanted.is_empty() {
        return ().into_any();
    }
    view! {
        <section class="heat-wanted">
            <h2>{i18n::sheet_wanted()}</h2>
            <ul class="heat-fixes">
                {wanted.iter().map(|(ink, run)| view! {
                    <li><a class="button with-icon" href=HeatRoute::NewSheetForRun(*run).hash()><Icon name="plus"/>{ink.clone()}</a></li>
                }).collect::<Vec<_>>()}
            </ul>
        </section>
    }.into_any()
}

fn line(id: Subject, sheet: &InkSheet) -> AnyView {
    let cure = i18n::sheet_cure_words(&sheet.figures);
    let source = match (sheet.source.is_empty(), sheet.source_day) {
        (true, None) => String::new(),
        (true, Some(day)) => i18n::date(day),
        (false, None) => sheet.source.clone(),
        (false, Some(day)) => format!("{}, {}", sheet.source, i18n::date(day)),
    };
    view! {
        <li>
            <a class="menu-row" href=HeatRoute::Sheet(id).hash()>
                <span class="row-words"><strong>{sheet.ink.clone()}</strong><span>{cure}</span><small class="muted">{source}</small></span>
                <Icon name="next"/>
            </a>
        </li>
    }.into_any()
}
