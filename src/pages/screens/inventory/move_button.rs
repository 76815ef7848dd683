//! The button that moves screens to another state.

use crate::i18n;
use lastpull_core::screen::ScreenState;
use leptos::prelude::*;

/// Moves to this state; the usual next one is emphasised.
pub fn move_button(to: ScreenState, usual: bool, go: impl Fn() + 'static) -> AnyView {
    view! {
        <button type="button" class="button" class:primary=usual data-to=format!("{to:?}") on:click=move |_| go()>
            {i18n::screen_move(to)}
        </button>
    }
    .into_any()
}
