//! A photo of a drawdown beside a patch of known colour: first the patch, then the photo.

use super::lab_inputs::LabInputs;
use super::photo_reading::PhotoReadingInput;
use super::photo_subject::PhotoOf;
use super::reading::Reading;
use crate::components::Icon;
use crate::i18n;
use crate::platform::{clock, dom};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{KnownPatch, known_patches, lab_of};
use leptos::prelude::*;
use std::sync::Arc;
use std::time::Duration;

/// What is beside the drawdown.
#[derive(Clone, PartialEq)]
enum PhotoReference {
    /// A patch of the shop's own.
    Patch(KnownPatch),
    /// A card with printed L*a*b* values.
    Card,
}

/// Number of patches shown without expanding the list.
const SHOWN_PATCHES: usize = 4;
/// Element that gets the keyboard focus when the focused one is removed.
const SECTION_ID: &str = "beside";

/// Asks what is beside the drawdown, then takes and reads the photo.
#[component]
pub fn PhotoReferenceInput(component: Subject, reading: RwSignal<Reading>) -> impl IntoView {
    let store = Store::from_context();
    let patches = Arc::new(store.shop.with_untracked(|shop| known_patches(shop, component)));
    let none = patches.is_empty();
    let lies = RwSignal::new(none.then_some(PhotoReference::Card));
    let card = RwSignal::new(Reading::default());
    let known = Memo::new(move |_| match lies.get() {
        Some(PhotoReference::Patch(patch)) => Some(patch.reading),
        Some(PhotoReference::Card) => card.with(Reading::colour),
        None => None,
    });
    let name = Signal::derive(move || match (lies.get(), known.get()) {
        (Some(PhotoReference::Patch(patch)), _) => format!("{}, {}", patch.name, i18n::colour_patch(&patch.of)),
        (Some(PhotoReference::Card), Some(card)) => {
            let [l, a, b] = card.lab().map(|value| i18n::number(value, 2));
            format!("{}, L* {l} a* {a} b* {b}", i18n::colour_beside_card())
        }
        _ => String::new(),
    });
    // The photo stays while a number is edited or another patch is chosen.
    let ready = RwSignal::new(false);
    Effect::new(move || {
        if known.get().is_some() {
            ready.set(true);
        }
    });
    let is_ready = Memo::new(move |_| ready.get());
    let choose = Callback::new(move |chosen: Option<PhotoReference>| {
        lies.set(chosen);
        clock::after(Duration::ZERO, || dom::focus(SECTION_ID));
    });
    view! {
        <section class="colour-beside" id=SECTION_ID tabindex="-1" aria-label=i18n::colour_beside()>
            {move || match lies.get() {
                None => view! { <PatchPicker patches=patches.clone() choose/> }.into_any(),
                Some(PhotoReference::Patch(patch)) => view! {
                    <div class="colour-beside-row chosen">{row(&patch)}<Change choose/></div>
                }.into_any(),
                Some(PhotoReference::Card) => view! {
                    {none.then(|| view! { <p class="quiet-line">{i18n::colour_beside_none()}</p> })}
                    <div class="colour-beside-row chosen">{card_row()}{(!none).then(|| view! { <Change choose/> })}</div>
                    <LabInputs name="card" reading=card hint=i18n::colour_beside_card_lab()/>
                }.into_any(),
            }}
        </section>
        {move || is_ready.get().then(|| {
            view! { <PhotoReadingInput known=Signal::from(known) beside=name of=PhotoOf::Drawdown(component) reading/> }
        })}
    }
}

/// The known patches, likeliest first.
#[component]
fn PatchPicker(patches: Arc<Vec<KnownPatch>>, choose: Callback<Option<PhotoReference>>) -> impl IntoView {
    let offer = |patch: &KnownPatch| {
        let chosen = patch.clone();
        view! { <button type="button" class="colour-beside-row" on:click=move |_| choose.run(Some(PhotoReference::Patch(chosen.clone())))>{row(patch)}</button> }
    };
    let first = patches.iter().take(SHOWN_PATCHES).map(offer).collect_view();
    let rest = patches.iter().skip(SHOWN_PATCHES).map(offer).collect_view();
    let more = i18n::colour_beside_more(rest.len() as u32);
    view! {
        <h3>{i18n::colour_beside()}</h3>
        <p class="quiet-line">{i18n::colour_beside_why()}</p>
        <div class="colour-beside-list">
            {first}
            {(!rest.is_empty()).then(|| view! { <details class="colour-how"><summary>{more}</summary>{rest}</details> })}
            <button type="button" class="colour-beside-row" id="beside-card" on:click=move |_| choose.run(Some(PhotoReference::Card))>{card_row()}</button>
        </div>
    }
}

#[component]
fn Change(choose: Callback<Option<PhotoReference>>) -> impl IntoView {
    view! { <button type="button" class="button quiet" id="beside-change" on:click=move |_| choose.run(None)>{i18n::colour_beside_change()}</button> }
}

fn row(patch: &KnownPatch) -> AnyView {
    let colour = lab_of(patch.reading).to_colour().to_string();
    view! {
        <span class="swatch" aria-hidden="true" style:background-color=colour></span>
        <span class="row-words"><strong>{patch.name.clone()}</strong><span class="muted">{i18n::colour_patch(&patch.of)}</span></span>
    }.into_any()
}

fn card_row() -> AnyView {
    view! {
        <span class="swatch none"><Icon name="label"/></span>
        <span class="row-words"><strong>{i18n::colour_beside_card()}</strong><span class="muted">{i18n::colour_beside_card_hint()}</span></span>
    }.into_any()
}
