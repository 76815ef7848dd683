//! How long to expose: the answer, the query, and the context.

use super::answer::Answer;
use super::context::{CornerFalloff, HumidityNote};
use super::known_times::KnownTimes;
use super::last_query;
use super::query_fields::QueryFields;
use crate::components::{Empty, Icon, Page};
use crate::i18n;
use crate::route::{ExposureRoute, Route};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{ExposureChoice, emulsion_list, lamp_list};
use leptos::prelude::*;

/// The page; for one of the shop's screens, or with the last query.
#[component]
pub fn ExposurePage(#[prop(into)] screen: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let pick = RwSignal::new(match screen {
        Some(id) => store.shop.with_untracked(|shop| ExposureChoice::for_screen(shop, id)),
        None => last_query::pick(store),
    });
    Effect::new(move || last_query::keep(pick.get()));
    let bare = Memo::new(move |_| store.shop.with(|shop| lamp_list(shop).is_empty() || emulsion_list(shop).is_empty()));
    view! {
        <Page title=Signal::derive(|| i18n::exposure_title().to_owned()) up=Route::Exposure(ExposureRoute::Home) class="stencil-exposure">
            {move || if bare.get() {
                view! {
                    <Empty icon="sun" title=i18n::exposure_begin_title() text=i18n::exposure_begin_text()>
                        <a class="button primary" href=ExposureRoute::Equipment.hash()>{i18n::stencil_equipment()}</a>
                    </Empty>
                }.into_any()
            } else {
                view! {
                    <div class="stencil-desk">
                        <Answer pick/>
                        <QueryFields pick/>
                        <div class="stencil-aside">
                            <HumidityNote pick/>
                            <p class="caution"><Icon name="alert"/>{i18n::exposure_caution()}</p>
                        </div>
                    </div>
                    <div class="stencil-folds">
                        <CornerFalloff pick/>
                        <KnownTimes/>
                    </div>
                }.into_any()
            }}
        </Page>
    }
}
