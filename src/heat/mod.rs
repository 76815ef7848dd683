//! Dryers, cure and the room: what changes before a run, what heat does on paper, what was tested.

mod changeover;
mod hold;
mod home;
mod limit_form;
mod limits;
mod measure;
mod on_paper;
mod place;
mod room;
mod room_asks;
mod run_heat;
mod run_tests;
mod settle;
mod settlings;
mod sheet_form;
mod sheets;
mod strip;
mod test_form;
mod tests;
mod trial_form;
mod trials;
mod unit_form;
mod units;

pub use changeover::ChangeFirst;
pub use hold::HoldSheet;
pub use place::HeatPlace;
pub use run_heat::RunHeatRows;
pub use run_tests::TestsStand;
pub use strip::RoomStrip;

use leptos::prelude::*;

/// Draws one of these screens.
pub fn screen(place: HeatPlace) -> AnyView {
    match place {
        HeatPlace::Home => view! { <home::HeatHome/> }.into_any(),
        HeatPlace::Room => view! { <room::RoomScreen/> }.into_any(),
        HeatPlace::Units => view! { <units::UnitsScreen/> }.into_any(),
        HeatPlace::NewUnit => view! { <unit_form::UnitForm unit=None/> }.into_any(),
        HeatPlace::Unit(id) => view! { <unit_form::UnitForm unit=id/> }.into_any(),
        HeatPlace::Measure(id) => view! { <measure::MeasureScreen id/> }.into_any(),
        HeatPlace::Settlings => view! { <settlings::SettlingsScreen/> }.into_any(),
        HeatPlace::Sheets => view! { <sheets::SheetsScreen/> }.into_any(),
        HeatPlace::NewSheet => view! { <sheet_form::InkSheetForm sheet=None run=None/> }.into_any(),
        HeatPlace::SheetOf(run) => view! { <sheet_form::InkSheetForm sheet=None run=run/> }.into_any(),
        HeatPlace::Sheet(id) => view! { <sheet_form::InkSheetForm sheet=id run=None/> }.into_any(),
        HeatPlace::Limits => view! { <limits::LimitsScreen/> }.into_any(),
        HeatPlace::Limit(number) => view! { <limit_form::LimitForm number/> }.into_any(),
        HeatPlace::Tests => view! { <tests::TestsScreen/> }.into_any(),
        HeatPlace::NewTest => view! { <test_form::NewTest run=None/> }.into_any(),
        HeatPlace::TestOf(run) => view! { <test_form::NewTest run=run/> }.into_any(),
        HeatPlace::Test(id) => view! { <test_form::OneTest id/> }.into_any(),
        HeatPlace::Trials => view! { <trials::TrialsScreen/> }.into_any(),
        HeatPlace::NewTrial => view! { <trial_form::TrialFormScreen trial=None run=None/> }.into_any(),
        HeatPlace::TrialOf(run) => view! { <trial_form::TrialFormScreen trial=None run=run/> }.into_any(),
        HeatPlace::Trial(id) => view! { <trial_form::TrialFormScreen trial=id run=None/> }.into_any(),
    }
}
