//! What was done today, compared with a usual day.

use crate::components::Icon;
use crate::i18n;
use crate::pages::shared::FailureBar;
use crate::store::Store;
use lastpull_core::failure::{DayFailures, FailureNotice, failures_today, notices_today};
use lastpull_core::plan::done_today;
use leptos::prelude::*;

/// Jobs, pieces, misprints and hours of today.
#[component]
pub fn DoneToday() -> impl IntoView {
    let store = Store::from_context();
    // Updating the day's totals once a minute is enough.
    let done = store.every_minute(done_today);
    let failures = store.every_minute(failures_today);
    let rows = store.every_minute(notices_today);
    view! {
        <section class="done-today">
            <h2>{i18n::done_today()}</h2>
            {move || {
                let done = done.get();
                let usual = done.usual;
                let beside = move |amount: Option<String>| amount.map(|amount| view! { <small>{i18n::usual(amount)}</small> });
                view! {
                    <dl class="figures">
                        <div><dd id="done-jobs">{done.jobs}</dd><dt>{i18n::done_jobs(done.jobs)}</dt></div>
                        <div>
                            <dd id="done-pieces">{done.row.pieces}</dd>
                            <dt>{i18n::done_pieces(done.row.pieces as u32)}" "{beside(usual.map(|usual| i18n::number(usual.pieces, 0)))}</dt>
                        </div>
                        <div>
                            <dd id="done-misprints">{done.row.misprints}</dd>
                            <dt>{i18n::done_misprints(done.row.misprints as u32)}" "{beside(usual.map(|usual| i18n::number(usual.misprints, 1)))}</dt>
                        </div>
                        <div>
                            <dd>{i18n::duration(done.row.active)}</dd>
                            <dt>{i18n::done_hours()}" "{beside(usual.map(|usual| i18n::duration(usual.active)))}</dt>
                        </div>
                    </dl>
                    {failed(&failures.get(), &rows.get())}
                    <p class="quiet-line">{match usual {
                        Some(usual) => i18n::usual_days(usual.days),
                        None => i18n::usual_not_yet().to_owned(),
                    }}</p>
                }
            }}
        </section>
    }
}

/// Failures of the day and their cost, and suspect pieces that nobody has judged yet.
fn failed(day: &DayFailures, rows: &[FailureNotice]) -> AnyView {
    if rows.is_empty() {
        return ().into_any();
    }
    let cost = (day.count > 0)
        .then(|| i18n::failures_cost(i18n::duration(day.downtime), i18n::failure_spoiled_n(day.spoiled)));
    view! {
        <section class="failures" id="failed-today">
            <h3>{i18n::failures_today()}</h3>
            {cost.map(|cost| view! { <p>{cost}</p> })}
            {(day.suspect > 0).then(|| view! { <p class="failure-suspects" id="done-suspect"><Icon name="alert"/>{i18n::failures_suspect(day.suspect)}</p> })}
            // A failure that stops the press is shown at the top of the page.
            {rows.iter().filter(|row| row.stopped_for.is_some()).map(|notice| view! { <FailureBar notice=notice.clone() titled=true/> }).collect_view()}
        </section>
    }.into_any()
}
