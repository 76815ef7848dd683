//! Who approved a revision.

use crate::components::Icon;
use crate::i18n;
use lastpull_core::ink::Approval;
use leptos::prelude::*;

/// The approval, or that there is none.
pub(super) fn approval_line(approval: Option<&Approval>) -> AnyView {
    match approval {
        Some(yes) => {
            let heard = yes.by.as_ref().map(|by| format!(", {}", i18n::ink_heard_by(by)));
            view! {
                <p class="ink-yes">
                    <Icon name="check"/>
                    <span>{i18n::ink_approved_by(&yes.client)}<small>{i18n::moment(yes.at)}{heard}</small></span>
                </p>
            }
            .into_any()
        }
        None => view! { <p class="muted">{i18n::ink_nobody_yet()}</p> }.into_any(),
    }
}
