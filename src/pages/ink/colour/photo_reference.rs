//! A photo of a drawdown beside a patch of known colour: first the patch, then the photo.

use super::lab_inputs::LabInputs;
use super::photo_reading::PhotoRead;
use super::photo_subject::PhotoOf;
use super::reading_field::Reading;
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
enum Lies {
    /// A patch of the shop's own.
    Patch(KnownPatch),
    /// A card with printed L*a*b* values.
    Card,
}

/// Number of patches shown without expanding the list.
const GLANCE: usize = 4;
/// Element that gets the keyboard focus when the focused one is removed.
const HERE: &str = "beside";

/// Asks what is beside the drawdown, then takes and reads the photo.
#[component]
pub fn BesideRead(component: Subject, reading: RwSignal<Reading>) -> impl IntoView {
    let store = Store::from_context();
    let patches = Arc::new(store.shop.with_untracked(|shop| known_patches(shop, component)));
    let none = patches.is_empty();
    let lies = RwSignal::new(none.then_some(Lies::Card));
    let card = RwSignal::new(Reading::default());
    let known = Memo::new(move |_| match lies.get() {
        Some(Lies::Patch(patch)) => Some(patch.reading),
        Some(Lies::Card) => card.with(Reading::colour),
        None => None,
    });
    let name = Signal::derive(move || match (lies.get(), known.get()) {
        (Some(Lies::Patch(patch)), _) => format!("{}, {}", patch.name, i18n::colour_patch(&patch.of)),
        (Some(Lies::Card), Some(card)) => {
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
    let choose = Callback::new(move |chosen: Option<Lies>| {
        lies.set(chosen);
        clock::after(Duration::ZERO, || dom::focus(HERE));
    });
    view! {
        <section class="colour-beside" id=HERE tabindex="-1" aria-label=i18n::colour_beside()>
            {move || match lies.get() {
                None => view! { <Ask patches=patches.clone() choose/> }.into_any(),
                Some(Lies::Patch(patch)) => view! {
                    <div class="colour-beside-row chosen">{row(&patch)}<Change choose/></div>
                }.into_any(),
                Some(Lies::Card) => view! {
                    {none.then(|| view! { <p class="quiet-line">{i18n::colour_beside_none()}</p> })}
                    <div class="colour-beside-row chosen">{card_row()}{(!none).then(|| view! { <Change choose/> })}</div>
                    <LabInputs name="card" reading=card hint=i18n::colour_beside_card_lab()/>
                }.into_any(),
            }}
        </section>
        {move || is_ready.get().then(|| {
            view! { <PhotoRead known=Signal::from(known) beside=name of=PhotoOf::Drawdown(component) reading/> }
        })}
    }
}

/// The known patches, likeliest first.
#[component]
fn Ask(patches: Arc<Vec<KnownPatch>>, choose: Callback<Option<Lies>>) -> impl IntoView {
    let offer = |patch: &KnownPatch| {
        let chosen = patch.clone();
        view! { <button type="button" class="colour-beside-row" on:click=move |_| choose.run(Some(Lies::Patch(chosen.clone())))>{row(patch)}</button> }
    };
    let first = patches.iter().take(GLANCE).map(offer).collect_view();
    let rest = patches.iter().skip(GLANCE).map(offer).collect_view();
    let more = i18n::colour_beside_more(rest.len() as u32);
    view! {
        <h3>{i18n::colour_beside()}</h3>
        <p class="quiet-line">{i18n::colour_beside_why()}</p>
        <div class="colour-beside-list">
            {first}
            {(!rest.is_empty()).then(|| view! { <details class="colour-how"><summary>{more}</summary>{rest}</details> })}
            <button type="button" class="colour-beside-row" id="beside-card" on:click=move |_| choose.run(Some(Lies::Card))>{card_row()}</button>
        </div>
    }
}

#[component]
fn Change(choose: Callback<Option<Lies>>) -> impl IntoView {
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
