//! The bar below a selection: the states to which all selected screens can move.

use super::move_button::move_button;
use super::record::record_screens;
use crate::i18n;
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{ScreenState, move_facts, next_states};
use leptos::prelude::*;

/// The bar.
#[component]
pub fn SelectBar(picked: RwSignal<Option<Vec<Subject>>>) -> impl IntoView {
    let store = Store::from_context();
    let ids = Memo::new(move |_| picked.with(|picked| picked.clone().unwrap_or_default()));
    let states = Memo::new(move |_| ids.with(|ids| store.shop.with(|shop| next_states(shop, ids))));
    let go = move |to: ScreenState| {
        let facts =
            store.shop.with_untracked(|shop| move_facts(shop, &ids.get_untracked(), to, store.operator().as_deref()));
        let screens = i18n::screens_n(ids.with_untracked(Vec::len) as u32);
        picked.set(None);
        record_screens(store, facts, i18n::screens_moved(screens, i18n::screen_state(to)));
    };
    let said = move || {
        let count = ids.with(Vec::len) as u32;
        if count == 0 {
            i18n::screens_select_hint().to_owned()
        } else if states.with(Vec::is_empty) {
            format!("{}. {}", i18n::screens_selected_n(count), i18n::screens_select_no_way())
        } else {
            i18n::screens_selected_n(count)
        }
    };
    view! {
        <div class="screen-bar" role="group" aria-label=i18n::screens_select() id="select-bar">
            <p role="status">{said}</p>
            <div class="button-row">
                {move || states.get().into_iter().enumerate().map(|(index, state)|
                    move_button(state, index == 0, move || go(state))
                ).collect_view()}
            </div>
        </div>
    }
}
