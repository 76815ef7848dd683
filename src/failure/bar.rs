//! A failure in a line, with the way to it: on the count, the day, and what came of a run.

use crate::parts::Icon;
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::failure::FailureNotice;
use leptos::prelude::*;

/// A failure in a line. `titled` names its job too.
#[component]
pub fn FailureBar(notice: FailureNotice, #[prop(optional)] titled: bool) -> impl IntoView {
    let store = Store::from_context();
    let FailureNotice { id, title, kind, screen, at, stood, open, suspect, spoiled } = notice;
    let mut besides = Vec::new();
    if titled {
        besides.push(title);
    }
    if let Some(stood) = stood {
        besides.push(words::moment(at));
        if stood > 0 {
            besides.push(words::failure_stood_for(words::duration(stood)));
        }
    }
    if spoiled > 0 {
        besides.push(words::failure_spoiled_n(spoiled));
    }
    let to_do = if suspect > 0 { words::failure_look_at(suspect) } else { words::failure_to_do().to_owned() };
    view! {
        <a class="failure-bar" class:stands=stood.is_none() class:open=open href=Place::Failure(id).hash()>
            <Icon name=if open { "alert" } else { "check" }/>
            <span class="row-words">
                <strong>{words::failure_name(kind, screen.as_ref())}</strong>
                {(!besides.is_empty()).then(|| view! { <small>{besides.join(" · ")}</small> })}
                {stood.is_none().then(|| view! {
                    <span class="failure-bar-time">{move || words::failure_stands_for(words::stopwatch(store.clock.get().now.saturating_sub(at)))}</span>
                })}
                {(open && (stood.is_some() || suspect > 0)).then(|| view! { <span class="failure-bar-open">{to_do}</span> })}
            </span>
            <Icon name="next"/>
        </a>
    }
}
