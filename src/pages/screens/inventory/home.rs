//! Overview of the screens: what to burn first, then all of them.

use super::board::Board;
use super::needs::Needs;
use crate::components::{Empty, Icon, Page};
use crate::i18n;
use crate::route::{ExposureRoute, Route, ScreensRoute};
use crate::store::Store;
use leptos::prelude::*;

/// The page.
#[component]
pub fn ScreensHomePage() -> impl IntoView {
    let store = Store::from_context();
    let none = Memo::new(move |_| store.shop.with(|shop| shop.screens.iter().next().is_none()));
    let add = || Route::Screens(ScreensRoute::New).hash();
    let aside = move || {
        (!none.get()).then(|| {
            view! { <a class="button primary with-icon" href=add()><Icon name="plus"/>{i18n::screens_add()}</a> }
        })
    };
    view! {
        <Page title=Signal::derive(|| i18n::nav_screens().to_owned()) aside=move || view! { {aside} } class="screens">
            {move || if none.get() {
                view! {
                    <Empty icon="screens" title=i18n::screens_empty_title() text=i18n::screens_empty_text()>
                        <a class="button primary" href=add()>{i18n::screens_add()}</a>
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
    let link = |route: Route, icon: &'static str, title: &'static str| {
        view! { <li><a class="screen-tile" href=route.hash()><Icon name=icon/><strong>{title}</strong></a></li> }
    };
    view! {
        <ul class="screen-tiles">
            {link(Route::Exposure(ExposureRoute::Time), "lamp", i18n::stencil_exposure())}
            {link(Route::Exposure(ExposureRoute::Bath), "bath", i18n::stencil_bath())}
            {link(Route::Exposure(ExposureRoute::Volume), "drop", i18n::stencil_volume())}
            {link(Route::Exposure(ExposureRoute::Equipment), "sun", i18n::stencil_equipment())}
            {link(Route::Screens(ScreensRoute::Settings), "gear", i18n::screen_room_title())}
        </ul>
    }
}
