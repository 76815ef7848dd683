//! The client's approval, and saving a pot's composition as a revision.

use crate::components::{Icon, Sheet};
use crate::forms::{Bound, Draft, Field, Kind, submit_dialog};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{PotCard, SaveAs, approve_facts, save_as, save_facts, with_reading};
use leptos::prelude::*;

/// Greatest length of a name and of a note.
const LONGEST: usize = 80;

/// The dialog: who approves, and what.
#[component]
pub fn ApprovalSheet(id: Subject, card: Memo<Option<PotCard>>, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let (client, as_written, revision) = card.with_untracked(|card| {
        let card = card.as_ref();
        let revision = card.and_then(|card| card.label.holds.revision.clone());
        (card.map(|card| card.label.client.clone()), card.is_some_and(|card| card.as_written), revision)
    });
    let text = RwSignal::new(client.unwrap_or_default());
    let called = called(store, id);
    let draft = Draft::of_dialog("approve").keep(called).keep(text);
    let what = match (as_written, revision) {
        (true, Some(revision)) => i18n::pot_yes_as_written(i18n::pot_revision(&revision)),
        (_, Some(revision)) => i18n::pot_yes_saves(i18n::pot_revision(&revision)),
        (_, None) => i18n::pot_yes_first().to_owned(),
    };
    let problems = RwSignal::new(Problems::new());
    let facts = move || {
        let client: String = text.get_untracked().trim().chars().take(LONGEST).collect();
        let by = store.operator();
        Ok(store.shop.with_untracked(|shop| {
            let facts = approve_facts(shop, id, &called.get_untracked(), &client, by.as_deref(), ids::new_id);
            with_reading(shop, facts)
        }))
    };
    let send = submit_dialog(problems, facts, move |facts| {
        draft.saved();
        close.run(());
        store.record_new(facts, i18n::pot_yes_notice());
    });
    view! {
        <Sheet title=i18n::pot_client_yes() on_close=close>
            <p>{what}</p>
            <form on:submit=send novalidate=true>
                {draft.line()}
                {name_of(store, id, called, problems)}
                {text_field("client", i18n::pot_client(), text, problems)}
                <div class="button-row"><button type="submit" class="button primary" id="yes-save">{i18n::pot_yes_note()}</button></div>
            </form>
        </Sheet>
    }
}

/// The dialog: why the revision differs.
#[component]
pub fn SaveSheet(id: Subject, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let text = RwSignal::new(String::new());
    let called = called(store, id);
    let draft = Draft::of_dialog("save").keep(called).keep(text);
    let problems = RwSignal::new(Problems::new());
    let facts = move || {
        let note: String = text.get_untracked().trim().chars().take(LONGEST).collect();
        let by = store.operator();
        Ok(store
            .shop
            .with_untracked(|shop| save_facts(shop, id, &called.get_untracked(), &note, by.as_deref(), ids::new_id)))
    };
    let send = submit_dialog(problems, facts, move |facts| {
        draft.saved();
        close.run(());
        store.record_new(facts, i18n::pot_saved_notice());
    });
    view! {
        <Sheet title=i18n::pot_save() on_close=close>
            <p>{i18n::pot_save_text()}</p>
            <form on:submit=send novalidate=true>
                {draft.line()}
                {name_of(store, id, called, problems)}
                {text_field("note", i18n::ink_why(), text, problems)}
                <div class="button-row"><button type="submit" class="button primary" id="save-revision">{i18n::save()}</button></div>
            </form>
        </Sheet>
    }
}

/// The name of a new recipe, at first the text written on the pot.
fn called(store: Store, id: Subject) -> RwSignal<String> {
    let name = store.shop.with_untracked(|shop| shop.ink.pot(id).map(|pot| pot.name.clone()));
    RwSignal::new(name.unwrap_or_default())
}

/// The name field for a pot without a recipe, and what happens with an existing name.
fn name_of(store: Store, id: Subject, called: RwSignal<String>, problems: RwSignal<Problems>) -> Option<AnyView> {
    let found = move || store.shop.with_untracked(|shop| save_as(shop, id, &called.get()));
    if matches!(found(), SaveAs::Own(_)) {
        return None;
    }
    Some(view! {
        {text_field("recipe", i18n::pot_recipe_name(), called, problems)}
        {move || match found() {
            SaveAs::Named { name, number, .. } => view! {
                <p class="caution" id="joins"><Icon name="alert"/>{i18n::pot_joins_recipe(name, number.to_string())}</p>
            }.into_any(),
            SaveAs::New(name) => view! { <p class="quiet-line" id="joins">{i18n::pot_new_recipe(name)}</p> }.into_any(),
            SaveAs::Own(_) => ().into_any(),
        }}
    }.into_any())
}

/// A field in which any text is valid.
fn text_field(
    name: &'static str,
    label: &'static str,
    text: RwSignal<String>,
    problems: RwSignal<Problems>,
) -> AnyView {
    let bound = Bound::of(name, text);
    view! { <Field label kind=Kind::Words bound problems/> }.into_any()
}
