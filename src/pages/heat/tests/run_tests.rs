//! The state of the tests of a run's ink on its fabric.

use crate::i18n;
use crate::pages::heat::folding_row::folding_row;
use crate::route::HeatRoute;
use crate::store::Store;
use lastpull_core::heat::{TestDue, TestStatus, test_status};
use lastpull_core::ids::RunId;
use leptos::prelude::*;

/// The row and its expanded content.
#[component]
pub fn RunTests(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let standing = Memo::new(move |_| store.shop.with(|shop| test_status(shop, id)));
    move || standing.with(|standing| standing.as_ref().map(|standing| drawn(id, standing)))
}

/// One kind of test, in one line.
pub fn line(test: &TestDue) -> String {
    let kind = i18n::test_kind_of(test.kind);
    match (test.why.is_empty(), test.waiting, test.passed) {
        (true, _, Some(passed)) => i18n::tests_standing_passed(kind, i18n::moment(passed.at)),
        (false, Some(_), _) => i18n::tests_standing_waiting(kind),
        _ => {
            let why: Vec<&str> = test.why.iter().map(|why| i18n::why_due(*why)).collect();
            i18n::tests_standing_due(kind, why.join(", "))
        }
    }
}

fn drawn(id: RunId, standing: &TestStatus) -> AnyView {
    let due = standing.is_due();
    let first = standing.kinds.iter().find(|kind| !kind.why.is_empty()).or(standing.kinds.first());
    let (tone, icon) = if due { ("tight", "clock") } else { ("good", "check") };
    // A single test without a link is already shown by the row itself.
    let is_listed = |test: &&TestDue| standing.kinds.len() > 1 || test.waiting.is_some() || test.passed.is_some();
    let kinds = standing.kinds.iter().filter(is_listed).map(|test| {
        let link = test.waiting.or(test.passed.map(|passed| passed.id));
        view! {
            <li>
                {match link {
                    Some(test_id) => view! { <a class="heat-fix" href=HeatRoute::Test(test_id).hash()>{line(test)}</a> }.into_any(),
                    None => view! { <span>{line(test)}</span> }.into_any(),
                }}
            </li>
        }
    });
    let within = view! {
        <p>{i18n::test_of(standing.ink.clone(), i18n::fabric_inside(standing.fabric))}</p>
        <ul class="heat-kinds">{kinds.collect::<Vec<_>>()}</ul>
        <a class="button" href=HeatRoute::NewTestForRun(id).hash()>{i18n::test_add()}</a>
        <p class="quiet-line">{i18n::heat_no_promise()}</p>
    };
    folding_row(tone, icon, "run-tests", first.map(line).unwrap_or_default(), within.into_any())
}
