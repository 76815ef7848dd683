//! The history of a screen: when and by whom, latest first, with undo; and its failures.

use crate::components::{Icon, long_rows};
use crate::i18n;
use crate::route::Route;
use crate::store::Store;
use lastpull_core::failure::FailureRow;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{Screen, ScreenChange, ScreenEvent, restore_fact, undo_latest};
use leptos::prelude::*;

/// The recorded changes of a screen.
#[component]
pub fn History(id: Subject, screen: Screen) -> impl IntoView {
    let store = Store::from_context();
    if screen.log.is_empty() {
        return ().into_any();
    }
    let take_back = move |_| {
        let found = store.shop.with_untracked(|shop| {
            let screen = shop.screens.live(id)?;
            let (_, fact) = undo_latest(screen)?;
            Some((screen.label.clone(), fact, restore_fact(screen)))
        });
        if let Some((label, fact, stands)) = found {
            store.record_with_undo(vec![(id, fact)], vec![(id, stands)], i18n::screen_taken_back(label));
        }
    };
    let latest_first: Vec<_> = screen.log.into_iter().rev().enumerate().collect();
    let row = move |(index, change): &(usize, ScreenChange)| {
        let what = match change.what {
            ScreenEvent::To(state) => i18n::screen_state(state),
            ScreenEvent::Dry(true) => i18n::history_dry(),
            ScreenEvent::Dry(false) => i18n::history_not_dry(),
        };
        view! {
            <div class="screen-change">
                <span class="row-words"><strong>{what}</strong><span class="muted">{i18n::by_whom(change.at, change.by.clone())}</span></span>
                {(*index == 0).then(|| view! {
                    <button type="button" class="button quiet" id="take-back" on:click=take_back>{i18n::screen_take_back()}</button>
                })}
            </div>
        }.into_any()
    };
    view! {
        <section class="screen-history">
            <h2>{i18n::screen_history()}</h2>
            {long_rows("history", "screen-changes", latest_first, row)}
        </section>
    }
    .into_any()
}

/// Its failures.
#[component]
pub fn Failures(rows: Vec<FailureRow>) -> impl IntoView {
    let row = |row: &FailureRow| {
        view! {
            <a class="menu-row" href=Route::Failure(row.id).hash()>
                <Icon name="alert"/>
                <span class="row-words">
                    <strong>{i18n::failure_kind(row.kind)}</strong>
                    <span class="muted">{i18n::moment(row.at)}{row.open.then(|| format!(" · {}", i18n::failure_open()))}</span>
                </span>
                <Icon name="next"/>
            </a>
        }
        .into_any()
    };
    (!rows.is_empty())
        .then(|| {
            view! {
                <section class="screen-failures">
                    <h2>{i18n::screen_failures()}</h2>
                    {long_rows("failures", "menu", rows, row)}
                </section>
            }
        })
        .into_any()
}
