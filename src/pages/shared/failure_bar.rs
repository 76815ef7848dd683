//! A failure in one line, with a link to its page: on the count, the day and the summary.

use crate::components::Icon;
use crate::i18n;
use crate::route::Route;
use crate::store::Store;
use lastpull_core::failure::FailureNotice;
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// A failure in one line. `titled` adds the title of its job.
#[component]
pub fn FailureBar(notice: FailureNotice, #[prop(optional)] titled: bool) -> impl IntoView {
    let store = Store::from_context();
    let FailureNotice { id, title, kind, screen, at, stopped_for, open, suspect, spoiled } = notice;
    let mut besides = Vec::new();
    if titled {
        besides.push(title);
    }
    if let Some(stopped_for) = stopped_for {
        besides.push(i18n::moment(at));
        if stopped_for > Millis::ZERO {
            besides.push(i18n::failure_stood_for(i18n::duration(stopped_for)));
        }
    }
    if spoiled > 0 {
        besides.push(i18n::failure_spoiled_n(spoiled));
    }
    let to_do = if suspect > 0 { i18n::failure_look_at(suspect) } else { i18n::failure_to_do().to_owned() };
    view! {
        <a class="failure-bar" class:stands=stopped_for.is_none() class:open=open href=Route::Failure(id).hash()>
            <Icon name=if open { "alert" } else { "check" }/>
            <span class="row-words">
                <strong>{i18n::failure_name(kind, screen.as_ref())}</strong>
                {(!besides.is_empty()).then(|| view! { <small>{besides.join(" · ")}</small> })}
                {stopped_for.is_none().then(|| view! {
                    <span class="failure-bar-time">{move || i18n::failure_stands_for(i18n::stopwatch(store.clock.get().now.since(at)))}</span>
                })}
                {(open && (stopped_for.is_some() || suspect > 0)).then(|| view! { <span class="failure-bar-open">{to_do}</span> })}
            </span>
            <Icon name="next"/>
        </a>
    }
}
