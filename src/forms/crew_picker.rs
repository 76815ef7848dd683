//! Who does it, where the crew is named.

use crate::components::Choice;
use crate::i18n;
use crate::store::Store;
use leptos::prelude::*;

/// Which of the crew holds this device; nothing where nobody is named.
#[component]
pub fn CrewPicker() -> impl IntoView {
    let store = Store::from_context();
    let crew = Memo::new(move |_| store.shop.with(|shop| shop.crew.clone()));
    move || {
        let names = crew.get();
        (!names.is_empty()).then(|| {
            let options = names.iter().enumerate().map(|(index, name)| (Some(index), name.clone())).collect();
            let known = names.clone();
            let chosen = Signal::derive(move || {
                let held = store.settings.with(|settings| settings.operator.clone());
                held.and_then(|held| known.iter().position(|name| *name == held))
            });
            let pick = Callback::new(move |index: Option<usize>| {
                let name = index.and_then(|index| names.get(index).cloned());
                store.update_settings(|settings| settings.operator = name);
            });
            view! { <Choice label=i18n::stencil_who() name="who" options value=chosen on_pick=pick/> }
        })
    }
}
