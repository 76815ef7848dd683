//! Readings of the room, and what they ask of people.

use super::{index, read};
use crate::shop::{HOUR, TestShop, wall};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::heat::{
    Assumption, ClimateCaveat, ClimateForm, ClimateView, HeatFact, HeatLevel, Schedule, Water, climate_summary,
    climate_view,
};
use lastpull_core::time::Millis;
use lastpull_core::units::{NumberProblem, Temperature, Units};

fn climate(press: &TestShop, seconds: u64) -> ClimateView {
    climate_view(&press.shop(), wall(seconds))
}

#[test]
fn without_a_climate_reading_the_view_is_empty() {
    let view = climate(&TestShop::new(), 0);
    assert_eq!((view.now, view.level, view.water, view.work_rest), (None, None, None, None));
    assert!(view.caveats.is_empty() && view.earlier.is_empty());
}

/// 90 °F and 65 % print as 103 in the table, 102.65 by the formula, which is shown as 103: high, as the guide says from
/// 103 °F on.
#[test]
fn a_hot_shop_gets_water_advice_and_the_caveats_of_the_figures() {
    let mut press = TestShop::new();
    read(&mut press, 0, 90.0, 65);
    let view = climate(&press, 600);
    let now = view.now.unwrap();
    assert_eq!((now.age, now.old, now.reading.by.as_deref()), (Millis::from_minutes(10), false, Some("Ines")));
    assert!((now.index.unwrap().fahrenheit - 102.654).abs() < 0.01);
    assert_eq!((view.level, view.water), (Some(HeatLevel::High), Some(Water::PastTheFigure)));
    assert_eq!(view.assumptions, Assumption::ALL);
    let caveats = [
        ClimateCaveat::ShadeAndLightWind,
        ClimateCaveat::RadiantHeat,
        ClimateCaveat::GuidanceOnly,
        ClimateCaveat::DamperThanTable,
    ];
    assert_eq!(view.caveats, caveats);
}

#[test]
fn beyond_the_published_tables_the_level_is_extreme_and_marked() {
    let mut press = TestShop::new();
    read(&mut press, 0, 113.0, 40);
    let view = climate(&press, 60);
    assert_eq!((view.level, view.water), (Some(HeatLevel::Extreme), Some(Water::PastTheFigure)));
    assert!(view.caveats.contains(&ClimateCaveat::PastTables));
    assert_eq!(view.work_rest.unwrap().light, Schedule::Caution);
}

#[test]
fn a_cold_shop_has_no_heat_index_and_no_level() {
    let mut press = TestShop::new();
    read(&mut press, 0, 35.0, 40);
    let view = climate(&press, 60);
    assert_eq!((view.now.unwrap().index, view.level, view.water), (None, None, None));
    assert!(view.work_rest.unwrap().below_table);
}

#[test]
fn a_reading_is_old_after_two_hours_and_not_before() {
    let mut press = TestShop::new();
    read(&mut press, 0, 95.0, 50);
    assert!(!climate(&press, 2 * HOUR).now.unwrap().old);
    assert!(climate(&press, 2 * HOUR + 1).now.unwrap().old);
}

#[test]
fn the_day_shows_the_climate_while_it_needs_care_and_was_read_lately() {
    let mut press = TestShop::new();
    let brief = |press: &TestShop, seconds| climate_summary(&press.shop(), wall(seconds));
    assert_eq!(brief(&press, 0), None);
    read(&mut press, 0, 80.0, 40);
    assert_eq!(brief(&press, 60), None, "it feels like 80");
    let hot = read(&mut press, 120, 100.0, 50);
    let found = brief(&press, 120 + 2 * HOUR).unwrap();
    assert_eq!((found.level, found.age, found.old), (HeatLevel::Extreme, Millis::from_minutes(120), false));
    assert!((found.index.fahrenheit - index(100.0, 50.0)).abs() < 0.01);
    assert!(brief(&press, 121 + 2 * HOUR).unwrap().old);
    assert!(brief(&press, 120 + 8 * HOUR).is_some());
    assert_eq!(brief(&press, 240 + 8 * HOUR), None);
    press.record(hot, Fact::Deleted);
    assert_eq!(brief(&press, 180), None, "taken back");
}

#[test]
fn a_reading_from_a_device_whose_clock_is_ahead_has_age_zero() {
    let mut press = TestShop::new();
    read(&mut press, HOUR, 95.0, 50);
    assert_eq!(climate(&press, 0).now.unwrap().age, Millis::ZERO);
}

#[test]
fn deleting_a_reading_shows_the_one_before_and_undo_restores_it() {
    let mut press = TestShop::new();
    read(&mut press, 0, 80.0, 50);
    let slip = read(&mut press, 60, 130.0, 100);
    press.record_at(90, slip, Fact::Deleted);
    assert_eq!(climate(&press, 100).now.unwrap().reading.humidity, 50);
    press.record_at(95, slip, Fact::Restored);
    assert_eq!(climate(&press, 100).now.unwrap().reading.id, slip);
}

#[test]
fn the_next_reading_starts_from_the_last_in_either_unit() {
    let mut press = TestShop::new();
    read(&mut press, 0, 91.0, 48);
    let reading = climate(&press, 1).now.unwrap().reading;
    let form = |units| ClimateForm::of(&reading, units);
    assert_eq!((form(Units::US).temperature.as_str(), form(Units::US).humidity.as_str()), ("91", "48"));
    assert_eq!(form(Units::METRIC).temperature, "32.8");
}

#[test]
fn the_last_24_readings_are_kept_and_those_of_a_day_shown() {
    let mut press = TestShop::new();
    for hour in 0..40 {
        read(&mut press, hour * HOUR, 80.0, 50);
    }
    assert_eq!(press.shop().heat.climate().len(), 24);
    assert_eq!(climate(&press, 39 * HOUR).earlier.len(), 23);
    assert_eq!(climate(&press, 60 * HOUR).earlier.len(), 3, "only of the last day");
}

#[test]
fn implausible_temperatures_and_humidity_above_100_percent_are_refused() {
    let form = ClimateForm { temperature: "300".into(), humidity: "101".into() };
    let problems = form.check(Units::US, None).unwrap_err();
    assert_eq!(problems["temperature"], FormProblem::Number(NumberProblem::TooHigh { most: 131.0 }));
    assert_eq!(problems["humidity"], FormProblem::Number(NumberProblem::TooHigh { most: 100.0 }));
    let form = ClimateForm { temperature: "33,5".into(), humidity: "60".into() };
    let temperature = Temperature::from_celsius(33.5);
    assert_eq!(form.check(Units::METRIC, None), Ok(HeatFact::RoomRead { temperature, humidity: 60, by: None }));
}

/// Four cups at 91 to 103 °F: OSHA. Before thirst, and never more than 48 fluid ounces: CDC/NIOSH. In `heat_water.csv`.
#[test]
fn the_advice_on_water_has_a_lower_and_an_upper_bound() {
    let table = include_str!("../data/heat_water.csv");
    let value = |what: &str| -> u32 {
        let row = table.lines().find(|row| row.starts_with(what)).unwrap();
        row.split(',').nth(1).unwrap().parse().unwrap()
    };
    assert!(table.contains("drink before feeling thirsty"));
    assert_eq!(Water::CUPS_AN_HOUR, value("cups an hour at a heat index"));
    assert_eq!(Water::MOST_CUPS_AN_HOUR * value("a cup every 15 to 20 minutes"), value("do not exceed per hour"));
    assert_eq!(Water::at(HeatLevel::Lower), Water::BeforeThirst);
    assert_eq!(Water::at(HeatLevel::Moderate), Water::FourCupsAnHour);
}

#[test]
fn damp_air_is_a_caveat_below_the_rest_table_too() {
    let mut press = TestShop::new();
    read(&mut press, 0, 88.0, 70);
    let view = climate(&press, 60);
    assert!(view.work_rest.unwrap().below_table && view.caveats.contains(&ClimateCaveat::DamperThanTable));
    read(&mut press, 100, 75.0, 70);
    assert!(!climate(&press, 160).caveats.contains(&ClimateCaveat::DamperThanTable), "75 °F is no heat");
}
