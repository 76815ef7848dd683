//! The target colour of a recipe, what it is read on, and its garments.

use super::on_garment::OnGarment;
use super::photo_subject::{PhotoOf, keep_picture};
use super::reading::{CompleteReading, Reading};
use super::reading_field::ReadingField;
use crate::components::{Choice, Icon, NotHere, Page, Sheet};
use crate::forms::{Draft, FormSubmit, submit_dialog};
use crate::i18n::{self, Term};
use crate::pages::help::{Help, help};
use crate::pages::photos::Photos;
use crate::route::{InkRoute, Route};
use crate::store::Store;
use lastpull_core::colour::Lab;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    ColourReading, Garment, InkFact, ReadBy, ReadOn, RecipeField, cover_runs, lab_of, reading_of,
};
use leptos::prelude::*;

/// The page.
#[component]
pub fn TargetPage(recipe: Subject) -> impl IntoView {
    let store = Store::from_context();
    let found =
        Memo::new(move |_| store.shop.with(|shop| shop.ink.recipe(recipe).filter(|recipe| !recipe.deleted).cloned()));
    let Some(before) = found.with_untracked(Clone::clone) else { return view! { <NotHere/> }.into_any() };
    let set = move |field: RecipeField| (recipe, Fact::Ink(InkFact::RecipeSet(vec![field])));
    let garments = Memo::new(move |_| store.shop.with(|shop| garments_of(shop, recipe)));
    let target = Memo::new(move |_| found.with(|found| found.as_ref().and_then(|recipe| recipe.target)));
    let on =
        Signal::derive(move || found.with(|found| found.as_ref().map(|recipe| recipe.read_on).unwrap_or_default()));
    let ways = vec![
        (ReadOn::Thick, i18n::colour_read_on_thick().to_owned()),
        (ReadOn::Garment, i18n::colour_read_on_garment().to_owned()),
    ];
    // A recipe with a display colour starts with it; nothing is recorded until it is saved.
    let likely = before.colour.map(|colour| reading_of(Lab::of(colour), ReadBy::Screen));
    let reading = RwSignal::new(Reading::of(if before.target.is_some() { None } else { likely }));
    let submit = FormSubmit::new(Box::new(move || reading.with(|reading| reading.check("target")))).with_draft(reading);
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let Some(CompleteReading { sample, photo }) = submit.validate() else { return };
        let undo = set(RecipeField::Target(target.get_untracked()));
        let saved = move || {
            store.notify_with_undo(i18n::colour_target_saved(), vec![undo]);
            keep_picture(store, recipe, photo);
            reading.set(Reading::default());
            submit.draft.saved();
        };
        submit.save(store, vec![set(RecipeField::Target(Some(sample.sample)))], Box::new(saved));
    };
    let clear = move |_| {
        let undo = set(RecipeField::Target(target.get_untracked()));
        store.record_with_undo(vec![set(RecipeField::Target(None))], vec![undo], i18n::colour_target_cleared());
    };
    let waits = Signal::derive(move || submit.busy.get() || reading.with(|reading| reading.colour().is_none()));
    let opened = RwSignal::new(None::<Garment>);
    let read_garment = Memo::new(move |_| {
        store
            .shop
            .with(|shop| garments.with(|garments| garments.iter().find_map(|garment| shop.ink.garment(garment.lot?))))
    });
    let title = i18n::colour_target_title(&before.name);
    view! {
        <Page title=Signal::derive(move || title.clone()) up=Route::Ink(InkRoute::Recipe(recipe)) aside=help(Term::TargetColor) class="colour-target">
            {move || {
                let garment = garments.with(|garments| garments.first().map(|garment| garment.colour));
                match target.get() {
                    Some(target) => {
                        let [l, a, b] = target.lab().map(|value| i18n::number(value, 1));
                        view! {
                            <section class="plain">
                                <OnGarment garment patches=vec![(lab_of(target), i18n::colour_target_now().to_owned())]/>
                                <div class="help-row"><p>{format!("L* {l}  a* {a}  b* {b}")}" · "{i18n::colour_read_by(target.by)}</p><Help term=Term::Lab/></div>
                                <div class="button-row"><button type="button" class="button quiet" id="target-clear" on:click=clear>{i18n::colour_target_clear()}</button></div>
                            </section>
                        }.into_any()
                    }
                    None => view! { <p class="lead">{i18n::colour_no_target_title()}</p> }.into_any(),
                }
            }}
            <form on:submit=save novalidate=true class="card">
                <h2>{i18n::colour_target_new()}</h2>
                {submit.draft_line()}
                {move || {
                    // Drawn again when what was typed is discarded.
                    read_garment.track();
                    submit.draft.restored.track();
                    view! { <ReadingField name="target" label=i18n::colour_target_new() reading known=read_garment photo=PhotoOf::Target/> }
                }}
                <button type="submit" class="button primary" id="target-save" disabled=waits>{i18n::save()}</button>
            </form>
            <section class="plain">
                <Choice label=i18n::colour_read_on() name="read-on" options=ways value=on on_pick=Callback::new(move |on| store.record_all(vec![set(RecipeField::ReadOn(on))]))/>
                <p class="quiet-line">{i18n::colour_read_on_hint()}</p>
            </section>
            {move || garments.with(|garments| (!garments.is_empty()).then(|| {
                let rows = garments.iter().map(|garment| garment_row(garment, opened)).collect_view();
                view! { <section class="plain"><h2>{i18n::colour_garments()}</h2><div class="menu">{rows}</div></section> }
            }))}
            {move || opened.get().map(|garment| view! { <GarmentSheet garment target on_close=Callback::new(move |()| opened.set(None))/> })}
        </Page>
    }.into_any()
}

/// The garments of the open runs with an ink, each lot once.
fn garments_of(shop: &lastpull_core::shop::Shop, recipe: Subject) -> Vec<Garment> {
    let mut garments: Vec<Garment> = Vec::new();
    for garment in cover_runs(shop, recipe).into_iter().filter_map(|run| run.garment) {
        if garments.iter().all(|other| other.lot != garment.lot) {
            garments.push(garment);
        }
    }
    garments
}

fn garment_row(garment: &Garment, opened: RwSignal<Option<Garment>>) -> AnyView {
    let (colour, open) = (garment.colour.to_colour().to_string(), garment.clone());
    let how = if garment.read { i18n::colour_garment_read() } else { i18n::colour_garment_guess() };
    view! {
        <button type="button" class="menu-row colour-garment" on:click=move |_| opened.set(Some(open.clone()))>
            <span class="swatch" aria-hidden="true" style:background-color=colour></span>
            <span class="row-words"><strong>{garment.name.clone()}</strong><span class="muted">{how}</span></span>
            <Icon name="next"/>
        </button>
    }
    .into_any()
}

/// The dialog for reading a garment's colour.
#[component]
fn GarmentSheet(garment: Garment, target: Memo<Option<ColourReading>>, on_close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let Some(lot) = garment.lot else { return ().into_any() };
    let before = store.shop.with_untracked(|shop| shop.ink.garment(lot));
    let reading = RwSignal::new(Reading::of(before));
    let draft = Draft::of_dialog(format!("garment-{lot}")).keep(reading);
    // A photo just taken may still be on its way when the dialog is opened again.
    let has_photos = Memo::new(move |_| store.shop.with(|shop| !shop.photos.of(lot).is_empty()));
    let waits = Signal::derive(move || reading.with(|reading| reading.colour().is_none()));
    let problems = RwSignal::new(Problems::new());
    let check = move || reading.with_untracked(|reading| reading.check("garment"));
    let save = submit_dialog(problems, check, move |CompleteReading { sample, photo }| {
        store.record_with_undo(
            vec![(lot, Fact::Ink(InkFact::GarmentRead(Some(sample.sample))))],
            vec![(lot, Fact::Ink(InkFact::GarmentRead(before)))],
            i18n::colour_garment_saved(),
        );
        keep_picture(store, lot, photo);
        draft.saved();
        on_close.run(());
    });
    view! {
        <Sheet title=i18n::colour_garment_do() on_close>
            <form on:submit=save novalidate=true>
                {draft.line()}
                {move || {
                    // Drawn again when what was typed is discarded.
                    draft.restored.track();
                    view! { <ReadingField name="garment" label=i18n::colour_garment_do() reading known=target photo=PhotoOf::Garment/> }
                }}
                <button type="submit" class="button primary huge" id="garment-save" disabled=waits>{i18n::save()}</button>
            </form>
            {move || has_photos.get().then(|| view! { <Photos subject=lot/> })}
        </Sheet>
    }.into_any()
}
