//! Overview of exposure and reclaiming: a link to each page with its main figure.

use crate::components::{Icon, MenuRow, Page};
use crate::i18n;
use crate::route::{ExposureRoute, Route, ScreensRoute};
use crate::store::Store;
use lastpull_core::screen::{BathTrend, ExposureHome, exposure_home};
use leptos::prelude::*;

/// The page.
#[component]
pub fn ExposureHomePage() -> impl IntoView {
    let store = Store::from_context();
    let home = store.every_minute(move |shop, clock| exposure_home(shop, clock.now));
    view! {
        <Page title=Signal::derive(|| i18n::stencil_title().to_owned()) up=Route::Screens(ScreensRoute::Home) class="stencil-home">
            {move || home.with(|home| {
                let (exposure, bath) = (exposure_figure(home), bath_figure(home));
                view! {
                    <div class="stencil-doors">
                        {door(ExposureRoute::Time, "sun", i18n::stencil_exposure(), exposure, None)}
                        {door(ExposureRoute::Bath, "bath", i18n::stencil_bath(), bath, bath_more(home))}
                    </div>
                    <ul class="menu">
                        {line(ExposureRoute::Volume, "drop", i18n::stencil_volume(), volume_line(home))}
                        {line(ExposureRoute::Equipment, "gear", i18n::stencil_equipment(), equipment_line(home))}
                    </ul>
                }
            })}
        </Page>
    }
}

/// A figure, if there is one, and its explanation or what to do.
type Figure = (Option<String>, String);

fn exposure_figure(home: &ExposureHome) -> Figure {
    match home.exposures {
        0 => (None, i18n::stencil_no_times().into()),
        known => (Some(known.to_string()), i18n::stencil_times_known(known as u32)),
    }
}

fn bath_figure(home: &ExposureHome) -> Figure {
    match (home.pace, home.trend) {
        (Some(pace), _) => (Some(i18n::bath_time(pace.now)), i18n::bath_min_a_screen().into()),
        (None, Some(BathTrend::TooFew { more })) => (None, i18n::bath_more_batches(more as u32)),
        _ => (None, i18n::bath_not_charged().into()),
    }
}

/// The time when the bath was fresh, the screens in it and the screens waiting.
fn bath_more(home: &ExposureHome) -> Option<String> {
    let parts = [
        home.pace.map(|pace| i18n::bath_fresh_was(i18n::bath_time(pace.fresh))),
        (home.in_bath > 0).then(|| i18n::bath_screens_in(home.in_bath)),
        (home.waiting > 0).then(|| i18n::bath_screens_wait(home.waiting)),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    (!parts.is_empty()).then(|| parts.join(" · "))
}

fn volume_line(home: &ExposureHome) -> String {
    match home.meshes {
        0 => i18n::stencil_volume_text().into(),
        all => i18n::stencil_volume_sheets(home.full_sheets, all),
    }
}

fn equipment_line(home: &ExposureHome) -> String {
    format!("{}, {}", i18n::stencil_lamps(home.lamps as u32), i18n::stencil_emulsions(home.emulsions as u32))
}

fn door(
    route: ExposureRoute,
    icon: &'static str,
    title: &'static str,
    (figure, text): Figure,
    more: Option<String>,
) -> AnyView {
    view! {
        <a class="stencil-door" href=route.hash()>
            <h2><Icon name=icon/>{title}</h2>
            <p>
                {figure.map(|figure| view! { <strong>{figure}</strong> " " })}
                <span>{text}</span>
                {more.map(|more| view! { <span class="stencil-more">{more}</span> })}
            </p>
        </a>
    }
    .into_any()
}

fn line(route: ExposureRoute, icon: &'static str, title: &'static str, text: String) -> AnyView {
    view! {
        <MenuRow href=route.hash() icon title text/>
    }
    .into_any()
}
