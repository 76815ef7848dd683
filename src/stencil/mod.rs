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
use crate::live::Drawn;
use crate::live::view;

/// Draws one of these screens.
pub fn screen(place: StencilPlace) -> Drawn {
    match place {
        StencilPlace::Home => view! { <home::HomeScreen/> },
        StencilPlace::Exposure => view! { <exposure::ExposureScreen screen=None/> },
        StencilPlace::ExposureOf(screen) => view! { <exposure::ExposureScreen screen=screen/> },
        StencilPlace::Find => view! { <find::FindScreen found=None from=None/> },
        StencilPlace::FindFrom(from) => view! { <find::FindScreen found=None from=from/> },
        StencilPlace::Found(found) => view! { <find::FindScreen found=found from=None/> },
        StencilPlace::Kit => view! { <kit::KitScreen/> },
        StencilPlace::NewLamp => view! { <lamp::LampScreen lamp=None/> },
        StencilPlace::Lamp(lamp) => view! { <lamp::LampScreen lamp=lamp/> },
        StencilPlace::NewEmulsion => view! { <emulsion::EmulsionScreen emulsion=None/> },
        StencilPlace::Emulsion(emulsion) => view! { <emulsion::EmulsionScreen emulsion=emulsion/> },
        StencilPlace::Bath => view! { <bath::BathScreen/> },
        StencilPlace::BathSettings => view! { <bath_settings::BathSettingsScreen/> },
        StencilPlace::Volume => view! { <volume::VolumeScreen/> },
    }
}
