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
use crate::live::Drawn;
use crate::live::view;

/// Draws one of these screens.
pub fn screen(place: HeatPlace) -> Drawn {
    match place {
        HeatPlace::Home => view! { <home::HeatHome/> },
        HeatPlace::Room => view! { <room::RoomScreen/> },
        HeatPlace::Units => view! { <units::UnitsScreen/> },
        HeatPlace::NewUnit => view! { <unit_form::UnitForm unit=None/> },
        HeatPlace::Unit(id) => view! { <unit_form::UnitForm unit=id/> },
        HeatPlace::Measure(id) => view! { <measure::MeasureScreen id/> },
        HeatPlace::Settlings => view! { <settlings::SettlingsScreen/> },
        HeatPlace::Sheets => view! { <sheets::SheetsScreen/> },
        HeatPlace::NewSheet => view! { <sheet_form::InkSheetForm sheet=None run=None/> },
        HeatPlace::SheetOf(run) => view! { <sheet_form::InkSheetForm sheet=None run=run/> },
        HeatPlace::Sheet(id) => view! { <sheet_form::InkSheetForm sheet=id run=None/> },
        HeatPlace::Limits => view! { <limits::LimitsScreen/> },
        HeatPlace::Limit(number) => view! { <limit_form::LimitForm number/> },
        HeatPlace::Tests => view! { <tests::TestsScreen/> },
        HeatPlace::NewTest => view! { <test_form::NewTest run=None/> },
        HeatPlace::TestOf(run) => view! { <test_form::NewTest run=run/> },
        HeatPlace::Test(id) => view! { <test_form::OneTest id/> },
        HeatPlace::Trials => view! { <trials::TrialsScreen/> },
        HeatPlace::NewTrial => view! { <trial_form::TrialFormScreen trial=None run=None/> },
        HeatPlace::TrialOf(run) => view! { <trial_form::TrialFormScreen trial=None run=run/> },
        HeatPlace::Trial(id) => view! { <trial_form::TrialFormScreen trial=id run=None/> },
    }
}
