//! Exposing and reclaiming: how long to expose, lamps and emulsions, the bath, the ink a mesh holds.

mod answer;
mod bath;
mod bath_chart;
mod bath_history;
mod bath_in;
mod bath_now;
mod bath_out;
mod bath_settings;
mod beside;
mod charge;
mod cloth_fields;
mod emulsion;
mod exposure;
mod find;
mod find_fields;
mod goal;
mod home;
mod kit;
mod known;
mod lamp;
mod memory;
mod need;
mod picks;
mod place;
mod tick;
mod volume;
mod who;

pub use cloth_fields::counted;
pub use place::StencilPlace;

use leptos::prelude::*;

/// Draws one of these screens.
pub fn screen(place: StencilPlace) -> AnyView {
    match place {
        StencilPlace::Home => view! { <home::HomeScreen/> }.into_any(),
        StencilPlace::Exposure => view! { <exposure::ExposureScreen screen=None/> }.into_any(),
        StencilPlace::ExposureOf(screen) => view! { <exposure::ExposureScreen screen=screen/> }.into_any(),
        StencilPlace::Find => view! { <find::FindScreen found=None from=None/> }.into_any(),
        StencilPlace::FindFrom(from) => view! { <find::FindScreen found=None from=from/> }.into_any(),
        StencilPlace::Found(found) => view! { <find::FindScreen found=found from=None/> }.into_any(),
        StencilPlace::Kit => view! { <kit::KitScreen/> }.into_any(),
        StencilPlace::NewLamp => view! { <lamp::LampScreen lamp=None/> }.into_any(),
        StencilPlace::Lamp(lamp) => view! { <lamp::LampScreen lamp=lamp/> }.into_any(),
        StencilPlace::NewEmulsion => view! { <emulsion::EmulsionScreen emulsion=None/> }.into_any(),
        StencilPlace::Emulsion(emulsion) => view! { <emulsion::EmulsionScreen emulsion=emulsion/> }.into_any(),
        StencilPlace::Bath => view! { <bath::BathScreen/> }.into_any(),
        StencilPlace::BathSettings => view! { <bath_settings::BathSettingsScreen/> }.into_any(),
        StencilPlace::Volume => view! { <volume::VolumeScreen/> }.into_any(),
    }
}
