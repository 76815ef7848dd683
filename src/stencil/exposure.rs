//! How long to expose: the answer, what it is for, and what stands beside it.

use super::answer::Answer;
use super::beside::{Damp, Edge};
use super::known::Known;
use super::picks::Picks;
use super::{StencilPlace, memory};
use crate::parts::{Empty, Icon, Page};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::journal::Subject;
use lastpull_core::screen::{ExposurePick, emulsion_list, lamp_list};
use leptos::prelude::*;

/// How long to expose; for a screen of the shop, or what was asked last.
#[component]
pub fn ExposureScreen(#[prop(into)] screen: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let pick = RwSignal::new(match screen {
        Some(id) => store.shop.with_untracked(|shop| ExposurePick::for_screen(shop, id)),
        None => memory::pick(store),
    });
    Effect::new(move || memory::keep(pick.get()));
    let bare = Memo::new(move |_| store.shop.with(|shop| lamp_list(shop).is_empty() || emulsion_list(shop).is_empty()));
    view! {
        <Page title=Signal::derive(|| words::exposure_title().to_owned()) up=Place::Stencil(StencilPlace::Home) class="stencil-exposure">
            {move || if bare.get() {
                view! {
                    <Empty icon="sun" title=words::exposure_begin_title() text=words::exposure_begin_text()>
                        <a class="button primary" href=StencilPlace::Kit.hash()>{words::stencil_kit()}</a>
                    </Empty>
                }.into_any()
            } else {
                view! {
                    <div class="stencil-desk">
                        <Answer pick/>
                        <Picks pick/>
                        <div class="stencil-aside">
                            <Damp pick/>
                            <p class="caution"><Icon name="alert"/>{words::exposure_caution()}</p>
                        </div>
                    </div>
                    <div class="stencil-folds">
                        <Edge pick/>
                        <Known/>
                    </div>
                }.into_any()
            }}
        </Page>
    }
}
