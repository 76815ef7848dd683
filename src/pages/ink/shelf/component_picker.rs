//! Choosing a component: from the shelf, or a new one.

use super::component_form::KindAndColour;
use crate::components::{Icon, Sheet, Swatch};
use crate::forms::{Draft, FormSubmit, field_name, problem_text};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::collections::sort_by_key;
use lastpull_core::colour::Colour;
use lastpull_core::facts::Fact;
use lastpull_core::heat::ink_key;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{ComponentForm, ComponentKind, InkFact, stock_left};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// Number of components from which a search field is shown.
const SEARCHABLE: usize = 9;

/// A component to choose from.
#[derive(Clone)]
struct PickerOption {
    id: Subject,
    name: String,
    kind: ComponentKind,
    colour: Option<Colour>,
    left: Option<Grams>,
}

/// The dialog for choosing a component.
#[component]
pub fn ComponentPicker(
    /// Called with the chosen component.
    on_pick: Callback<Subject>,
    /// Called when the user closes it.
    on_close: Callback<()>,
) -> impl IntoView {
    let store = Store::from_context();
    let offered = store.shop.with_untracked(|shop| {
        let row = |(id, component): (Subject, &lastpull_core::ink::Component)| PickerOption {
            id,
            name: component.name.clone(),
            kind: component.kind,
            colour: component.colour,
            left: stock_left(shop, id),
        };
        let mut rows: Vec<PickerOption> = shop.ink.components().map(row).collect();
        sort_by_key(&mut rows, |row| (row.kind, ink_key(&row.name), row.id));
        rows
    });
    let search = RwSignal::new(String::new());
    // With an empty shelf there is nothing to choose from.
    let making = RwSignal::new(offered.is_empty());
    let searchable = offered.len() >= SEARCHABLE;
    view! {
        <Sheet title=i18n::ink_pick_title() on_close>
            {move || if making.get() {
                view! { <NewComponentFields on_pick/> }.into_any()
            } else {
                let offered = offered.clone();
                view! {
                    {searchable.then(|| view! {
                        <div class="search">
                            <label class="visually-hidden" for="component-search">{i18n::ink_pick_search()}</label>
                            <input id="component-search" type="search" placeholder=i18n::ink_pick_search() prop:value=search on:input=move |event| search.set(event_target_value(&event))/>
                        </div>
                    })}
                    {move || list(&offered, &search.get(), on_pick)}
                    <button type="button" class="button with-icon" id="new-component" on:click=move |_| making.set(true)><Icon name="plus"/>{i18n::ink_component_new()}</button>
                }.into_any()
            }}
        </Sheet>
    }
}

fn list(offered: &[PickerOption], search: &str, on_pick: Callback<Subject>) -> AnyView {
    let wanted = ink_key(search);
    let rows = offered
        .iter()
        .filter(|row| ink_key(&row.name).contains(&wanted))
        .map(|row| {
            let id = row.id;
            let left = row.left.map(i18n::weight);
            view! {
                <li>
                    <button type="button" class="ink-offer" data-component=row.name.clone() on:click=move |_| on_pick.run(id)>
                        <Swatch colour=row.colour/>
                        <span class="row-words"><strong>{row.name.clone()}</strong><span class="muted">{i18n::ink_kind_name(row.kind)}</span></span>
                        {left.map(|left| view! { <span class="muted">{left}</span> })}
                    </button>
                </li>
            }
        })
        .collect_view();
    view! { <ul class="ink-offers">{rows}</ul> }.into_any()
}

/// Name, kind and colour: enough for a recipe. The other fields are on its own page.
#[component]
fn NewComponentFields(on_pick: Callback<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(ComponentForm::default());
    let id = ids::new_id();
    let submit = FormSubmit::new(Box::new(move || {
        let fields = store.shop.with(|shop| form.with(|form| form.check(shop, None, i18n::units())))?;
        Ok(vec![(id, Fact::Ink(InkFact::ComponentSet(fields)))])
    }));
    let draft = Draft::of_dialog("component").keep(form);
    let added = move || {
        draft.saved();
        on_pick.run(id);
    };
    let problem = move || problem_text(submit.problems, field_name!(ComponentForm.name));
    view! {
        <form on:submit=move |event| submit.submit_then(store, &event, Box::new(added)) novalidate=true>
            {draft.line()}
            <div class="field" class:wrong=move || problem().is_some()>
                <label for="component-name">{i18n::ink_component_name()}</label>
                <div class="field-input">
                    <input
                        id="component-name"
                        type="text"
                        autocomplete="off"
                        prop:value=move || form.with(|form| form.name.clone())
                        on:input=move |event| form.update(|form| form.name = event_target_value(&event))
                        aria-describedby="component-name-help"
                    />
                </div>
                <p class="field-help" id="component-name-help">
                    {move || match problem() {
                        Some(problem) => view! { <span class="problem">{problem}</span> }.into_any(),
                        None => view! { <span>{i18n::ink_component_name_hint()}</span> }.into_any(),
                    }}
                </p>
            </div>
            <KindAndColour form/>
            <button type="submit" class="button primary" id="add-component">{i18n::ink_add_component()}</button>
        </form>
    }
}
