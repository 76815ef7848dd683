//! Dryers, cure and the climate of the shop.

mod changeover;
mod climate;
mod dryers;
mod folding_row;
mod home;
mod limits;
mod run;
mod sheets;
mod tests;
mod trials;

pub use changeover::{ChangeFirst, HoldSheet};
pub use climate::ClimateStrip;
pub use run::RunHeatRows;
pub use tests::RunTests;

use crate::route::HeatRoute;
use leptos::prelude::*;

/// Draws the page of a route.
pub fn page(route: HeatRoute) -> AnyView {
    match route {
        HeatRoute::Home => view! { <home::HeatHomePage/> }.into_any(),
        HeatRoute::Climate => view! { <climate::ClimatePage/> }.into_any(),
        HeatRoute::Dryers => view! { <dryers::DryersPage/> }.into_any(),
        HeatRoute::NewDryer => view! { <dryers::DryerFormPage unit=None/> }.into_any(),
        HeatRoute::Dryer(id) => view! { <dryers::DryerFormPage unit=id/> }.into_any(),
        HeatRoute::Measure(id) => view! { <dryers::MeasureDryerPage id/> }.into_any(),
        HeatRoute::SettlingTimes => view! { <dryers::SettlingTimesPage/> }.into_any(),
        HeatRoute::Sheets => view! { <sheets::InkSheetsPage/> }.into_any(),
        HeatRoute::NewSheet => view! { <sheets::InkSheetFormPage sheet=None run=None/> }.into_any(),
        HeatRoute::NewSheetForRun(run) => view! { <sheets::InkSheetFormPage sheet=None run=run/> }.into_any(),
        HeatRoute::Sheet(id) => view! { <sheets::InkSheetFormPage sheet=id run=None/> }.into_any(),
        HeatRoute::Limits => view! { <limits::LimitsPage/> }.into_any(),
        HeatRoute::Limit(number) => view! { <limits::LimitFormPage number/> }.into_any(),
        HeatRoute::Tests => view! { <tests::TestsPage/> }.into_any(),
        HeatRoute::NewTest => view! { <tests::NewTestPage run=None/> }.into_any(),
        HeatRoute::NewTestForRun(run) => view! { <tests::NewTestPage run=run/> }.into_any(),
        HeatRoute::Test(id) => view! { <tests::TestPage id/> }.into_any(),
        HeatRoute::Trials => view! { <trials::TrialsPage/> }.into_any(),
        HeatRoute::NewTrial => view! { <trials::TrialFormPage trial=None run=None/> }.into_any(),
        HeatRoute::NewTrialForRun(run) => view! { <trials::TrialFormPage trial=None run=run/> }.into_any(),
        HeatRoute::Trial(id) => view! { <trials::TrialFormPage trial=id run=None/> }.into_any(),
    }
}
