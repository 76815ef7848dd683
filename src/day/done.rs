//! What was done today, beside a usual day.

use crate::failure::FailureBar;
use crate::parts::Icon;
use crate::store::Store;
use crate::words;
use lastpull_core::failure::{DayFailures, FailureNotice, failures_today, notices_today};
use lastpull_core::plan::done_today;
use leptos::prelude::*;

/// Jobs, pieces, misprints and hours of today.
#[component]
pub fn DoneToday() -> impl IntoView {
    let store = Store::from_context();
    // Once a minute is often enough for a sum of the day.
    let minute = Memo::new(move |_| store.clock.get().now / 60_000);
    let done = Memo::new(move |_| {
        minute.get();
        store.shop.with(|shop| done_today(shop, store.clock.get_untracked()))
    });
    let failures = Memo::new(move |_| {
        minute.get();
        store.shop.with(|shop| failures_today(shop, store.clock.get_untracked()))
    });
    let rows = Memo::new(move |_| {
        minute.get();
        store.shop.with(|shop| notices_today(shop, store.clock.get_untracked()))
    });
    view! {
        <section class="done-today">
            <h2>{words::done_today()}</h2>
            {move || {
                let done = done.get();
                let usual = done.usual;
                let beside = move |amount: Option<String>| amount.map(|amount| view! { <small>{words::usual(amount)}</small> });
                view! {
                    <dl class="figures">
                        <div><dd id="done-jobs">{done.jobs}</dd><dt>{words::done_jobs(done.jobs)}</dt></div>
                        <div>
                            <dd id="done-pieces">{done.row.pieces}</dd>
                            <dt>{words::done_pieces(done.row.pieces as u32)}" "{beside(usual.map(|usual| words::number(usual.pieces, 0)))}</dt>
                        </div>
                        <div>
                            <dd id="done-misprints">{done.row.misprints}</dd>
                            <dt>{words::done_misprints(done.row.misprints as u32)}" "{beside(usual.map(|usual| words::number(usual.misprints, 1)))}</dt>
                        </div>
                        <div>
                            <dd>{words::duration(done.row.active)}</dd>
                            <dt>{words::done_hours()}" "{beside(usual.map(|usual| words::duration(usual.active as u64)))}</dt>
                        </div>
                    </dl>
                    {failed(&failures.get(), &rows.get())}
                    <p class="quiet-line">{match usual {
                        Some(usual) => words::usual_days(usual.days),
                        None => words::usual_not_yet().to_owned(),
                    }}</p>
                }
            }}
        </section>
    }
}

/// What failed and what it cost, and counted pieces that nobody has looked at since.
fn failed(day: &DayFailures, rows: &[FailureNotice]) -> AnyView {
    if rows.is_empty() {
        return ().into_any();
    }
    let cost = (day.count > 0)
        .then(|| words::failures_cost(words::duration(day.downtime), words::failure_spoiled_n(day.spoiled)));
    view! {
        <section class="failures" id="failed-today">
            <h3>{words::failures_today()}</h3>
            {cost.map(|cost| view! { <p>{cost}</p> })}
            {(day.suspect > 0).then(|| view! { <p class="failure-suspects" id="done-suspect"><Icon name="alert"/>{words::failures_suspect(day.suspect)}</p> })}
            // One for which the press stands is at the top of the day.
            {rows.iter().filter(|row| row.stood.is_some()).map(|notice| view! { <FailureBar notice=notice.clone() titled=true/> }).collect_view()}
        </section>
    }.into_any()
}
