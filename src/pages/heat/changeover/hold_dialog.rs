//! Confirmation for starting the count while ink must stay off the screen; a confirmed start is recorded.

use super::change_first::cure_missed;
use crate::components::{Icon, Sheet};
use crate::i18n;
use lastpull_core::heat::{Changeover, LimitCheck};
use leptos::prelude::*;

/// The confirmation. `open` is the number of all checks not made.
#[component]
pub fn HoldSheet(
    change: Memo<Option<Changeover>>,
    open: Memo<u32>,
    start: Callback<()>,
    on_close: Callback<()>,
) -> impl IntoView {
    view! {
        <Sheet title=i18n::hold_title() on_close>
            {move || change.with(|change| change.as_ref().map(reasons))}
            <p>{i18n::hold_text()}</p>
            {move || (open.get() > 0).then(|| view! { <p>{i18n::start_open_text(open.get())}</p> })}
            <p class="quiet-line">{i18n::hold_noted()}</p>
            <div class="button-row">
                <button type="button" class="button primary" id="hold-back" on:click=move |_| on_close.run(())>{i18n::hold_back()}</button>
                <button type="button" class="button danger" id="start-anyway" on:click=move |_| start.run(())>{i18n::start_anyway()}</button>
            </div>
        </Sheet>
    }
}

fn reasons(change: &Changeover) -> AnyView {
    let limits = change.exceeded_limits();
    let to_do = change.steps_to_do();
    let passed = |finding: &LimitCheck| {
        let text = format!("{}: {}", i18n::temperature(finding.limit), i18n::at_limit(finding.name));
        view! { <li class="problem"><Icon name="alert"/>{text}</li> }
    };
    view! {
        <ul class="heat-reasons">
            {limits.iter().map(passed).collect::<Vec<_>>()}
            {cure_missed(change).map(|missed| view! { <li class="problem"><Icon name="alert"/>{missed}</li> })}
            {(change.settling_to_setting().is_some() && !change.verified).then(|| view! { <li><Icon name="clock"/>{i18n::hold_settling()}</li> })}
            {(to_do > 0).then(|| view! { <li><Icon name="heat"/>{i18n::hold_steps(to_do)}</li> })}
        </ul>
    }.into_any()
}
