//! The place of screens: what is to be burned first, then all of them.

use super::board::Board;
use super::needs::Needs;
use crate::parts::{Empty, Icon, Page};
use crate::place::{Place, ScreensPlace, StencilPlace};
use crate::store::Store;
use crate::words;
use leptos::prelude::*;

/// The first of these screens.
#[component]
pub fn ScreensHome() -> impl IntoView {
    let store = Store::from_context();
    let none = Memo::new(move |_| store.shop.with(|shop| shop.screens.iter().next().is_none()));
    let add = || Place::Screens(ScreensPlace::New).hash();
    let aside = move || {
        (!none.get()).then(|| {
            view! { <a class="button primary with-icon" href=add()><Icon name="plus"/>{words::screens_add()}</a> }
        })
    };
    view! {
        <Page title=Signal::derive(|| words::place_screens().to_owned()) aside=move || view! { {aside} } class="screens">
            {move || if none.get() {
                view! {
                    <Empty icon="screens" title=words::screens_empty_title() text=words::screens_empty_text()>
                        <a class="button primary" href=add()>{words::screens_add()}</a>
                    </Empty>
                    <Links/>
                }
            } else {
                view! { <Needs/> <Links/> <Board/> }
            }}
        </Page>
    }
}

#[component]
fn Links() -> impl IntoView {
    let link = |place: Place, icon: &'static str, title: &'static str| {
        view! { <li><a class="screen-tile" href=place.hash()><Icon name=icon/><strong>{title}</strong></a></li> }
    };
    view! {
        <ul class="screen-tiles">
            {link(Place::Stencil(StencilPlace::Exposure), "lamp", words::stencil_exposure())}
            {link(Place::Stencil(StencilPlace::Bath), "bath", words::stencil_bath())}
            {link(Place::Stencil(StencilPlace::Volume), "drop", words::stencil_volume())}
            {link(Place::Stencil(StencilPlace::Kit), "sun", words::stencil_kit())}
            {link(Place::Screens(ScreensPlace::Room), "gear", words::screen_room_title())}
        </ul>
    }
}
