//! How long screens are exposed, which is not how long the step takes: a link for each time, and its time where it
//! is known.

use crate::components::Icon;
use crate::i18n;
use crate::route::{ExposureRoute, Route};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::screen::exposures_of;
use leptos::prelude::*;

/// Links to the exposure times of these screens.
#[component]
pub fn ExposureLinks(screens: Vec<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let rows = store.shop.with_untracked(|shop| exposures_of(shop, &screens));
    let several = rows.len() > 1;
    rows.into_iter()
        .map(|row| {
            let time = row.tested.map(|(time, lamp)| i18n::exposure_known(i18n::exposure_seconds(time), lamp));
            let time = time.unwrap_or_else(|| i18n::screen_exposure().to_owned());
            let words = if several { format!("{}: {time}", row.labels.join(", ")) } else { time };
            view! {
                <a class="screen-exposure" href=Route::Exposure(ExposureRoute::TimeForScreen(row.screen)).hash()>
                    <Icon name="lamp"/>{words}
                </a>
            }
        })
        .collect_view()
}
