//! Starting the count while ink must stay off the screen: it asks, and what it asks it notes.

use crate::parts::{Icon, Sheet};
use crate::words;
use lastpull_core::heat::{Changeover, LimitFinding};
use leptos::prelude::*;

/// The question. `open` is how many checks are not made, in all.
#[component]
pub fn HoldSheet(
    change: Memo<Option<Changeover>>,
    open: Memo<u32>,
    start: Callback<()>,
    on_close: Callback<()>,
) -> impl IntoView {
    view! {
        <Sheet title=words::hold_title() on_close>
            {move || change.with(|change| change.as_ref().map(reasons))}
            <p>{words::hold_text()}</p>
            {move || (open.get() > 0).then(|| view! { <p>{words::start_open_text(open.get())}</p> })}
            <p class="quiet-line">{words::hold_noted()}</p>
            <div class="button-row">
                <button type="button" class="button primary" id="hold-back" on:click=move |_| on_close.run(())>{words::hold_back()}</button>
                <button type="button" class="button danger" id="start-anyway" on:click=move |_| start.run(())>{words::start_anyway()}</button>
            </div>
        </Sheet>
    }
}

fn reasons(change: &Changeover) -> AnyView {
    let limits = change.limits_called();
    let to_do = change.steps_to_do();
    let passed = |finding: &LimitFinding| {
        let text = format!("{}: {}", words::temperature(finding.limit), words::at_limit(finding.name));
        view! { <li class="problem"><Icon name="alert"/>{text}</li> }
    };
    view! {
        <ul class="heat-reasons">
            {limits.iter().map(passed).collect::<Vec<_>>()}
            {(change.timing().is_some() && !change.seen_to).then(|| view! { <li><Icon name="clock"/>{words::hold_settling()}</li> })}
            {(to_do > 0).then(|| view! { <li><Icon name="heat"/>{words::hold_steps(to_do)}</li> })}
        </ul>
    }.into_any()
}
