//! Chooses the crew member who uses this device.

use crate::components::Choice;
use crate::store::Store;
use leptos::prelude::*;

/// Chooses the crew member who uses this device. Renders nothing if no crew is entered.
#[component]
pub fn CrewPicker(
    /// The question.
    #[prop(into)]
    label: String,
    /// The group's name, unique on the page.
    name: &'static str,
) -> impl IntoView {
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
            view! { <Choice label=label.clone() name options value=chosen on_pick=pick/> }
        })
    }
}
