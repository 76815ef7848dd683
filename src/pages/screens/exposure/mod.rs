//! Exposure: times, exposure tests, lamps and emulsions, ink volume of a mesh.

mod answer;
mod context;
mod emulsion_form;
mod equipment;
mod home;
mod ink_need;
mod known_times;
mod lamp_form;
mod last_query;
mod mesh_fields;
mod mesh_volume;
mod page;
mod query_fields;
mod step_goal;
mod test_fields;
mod test_form;

pub use mesh_fields::counted;

use super::bath;
use crate::route::ExposureRoute;
use leptos::prelude::*;

/// Draws the page of a route.
pub fn page(route: ExposureRoute) -> AnyView {
    match route {
        ExposureRoute::Home => view! { <home::ExposureHomePage/> }.into_any(),
        ExposureRoute::Time => view! { <page::ExposurePage screen=None/> }.into_any(),
        ExposureRoute::TimeForScreen(screen) => view! { <page::ExposurePage screen/> }.into_any(),
        ExposureRoute::NewTest => view! { <test_form::ExposureTestPage found=None from=None/> }.into_any(),
        ExposureRoute::NewTestFrom(from) => view! { <test_form::ExposureTestPage found=None from/> }.into_any(),
        ExposureRoute::Test(found) => view! { <test_form::ExposureTestPage found from=None/> }.into_any(),
        ExposureRoute::Equipment => view! { <equipment::EquipmentPage/> }.into_any(),
        ExposureRoute::NewLamp => view! { <lamp_form::LampPage lamp=None/> }.into_any(),
        ExposureRoute::Lamp(lamp) => view! { <lamp_form::LampPage lamp/> }.into_any(),
        ExposureRoute::NewEmulsion => view! { <emulsion_form::EmulsionPage emulsion=None/> }.into_any(),
        ExposureRoute::Emulsion(emulsion) => view! { <emulsion_form::EmulsionPage emulsion/> }.into_any(),
        ExposureRoute::Bath => view! { <bath::BathPage/> }.into_any(),
        ExposureRoute::BathSettings => view! { <bath::BathSettingsPage/> }.into_any(),
        ExposureRoute::Volume => view! { <mesh_volume::MeshVolumePage/> }.into_any(),
    }
}
