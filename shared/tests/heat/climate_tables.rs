//! The heat of the room: the published index, its levels, the rest table, and readings by hand.

use super::index;
use lastpull_core::heat::{HeatIndex, HeatLevel, RestReason, Schedule, WorkRest, heat_index, work_rest};
use lastpull_core::units::{Temperature, Units};
use proptest::prelude::*;

fn rows(csv: &str) -> impl Iterator<Item = Vec<&str>> {
    csv.lines().skip(1).map(|row| row.split(',').collect())
}

fn number(cell: &str) -> f64 {
    cell.parse().unwrap()
}

fn minutes_of_work(schedule: Schedule) -> u8 {
    match schedule {
        Schedule::Normal => 60,
        Schedule::WorkRest { work, .. } => work,
        Schedule::MoreRest { least } => 60 - least,
        Schedule::Caution => 0,
    }
}

/// Source: NWS Tulsa, "Heat Index Information". The regression's own stated error is 1.3 °F. The printed
/// table leaves out the adjustment for damp air, which reaches 2.3 °F at 80 °F and 100 %: that corner is
/// held to the formula column, which was computed independently.
#[test]
fn every_cell_of_the_published_table_is_within_the_regressions_error() {
    let (mut cells, mut corner) = (0, 0);
    for row in rows(include_str!("../data/heat_index_nws_table.csv")) {
        let [t, r, printed, formula] = [number(row[0]), number(row[1]), number(row[2]), number(row[3])];
        let ours = index(t, r);
        assert!((ours - formula).abs() < 1e-3, "{row:?} {ours}");
        let damp_corner = r > 85.0 && t <= 86.0;
        let allowed = if damp_corner { 2.3 } else { 1.3 };
        assert!((ours - printed).abs() <= allowed, "{row:?} {ours}");
        cells += 1;
        corner += i32::from(damp_corner);
    }
    assert_eq!((cells, corner), (68, 6));
}

/// Source: `heat_index_branch_checks.csv`, computed independently.
#[test]
fn every_branch_and_edge_of_the_formula_is_tested() {
    let mut met = 0;
    for row in rows(include_str!("../data/heat_index_branch_checks.csv")) {
        let ours = heat_index(number(row[0]), number(row[1])).unwrap();
        assert!((ours.fahrenheit - number(row[6])).abs() < 1e-4, "{row:?} {ours:?}");
        assert!((Temperature::from_fahrenheit(ours.fahrenheit).celsius() - number(row[8])).abs() < 0.001, "{row:?}");
        met += 1;
    }
    assert_eq!(met, 13);
}

#[test]
fn air_outside_the_range_of_the_formula_has_no_heat_index() {
    for (t, r) in [(39.0, 50.0), (131.0, 20.0), (90.0, -1.0), (90.0, 101.0), (f64::NAN, 50.0), (90.0, f64::NAN)] {
        assert_eq!(heat_index(t, r), None, "{t} {r}");
    }
}

/// The printed table ends at 110 °F and at 137 °F of index: NWS Tulsa.
#[test]
fn an_index_beyond_the_printed_table_is_marked() {
    let past = |t, r| heat_index(t, r).unwrap().beyond_table;
    assert!(!past(110.0, 40.0) && past(111.0, 40.0));
    assert!(!past(90.0, 95.0) && past(100.0, 70.0));
}

/// Source: OSHA, "Protective Measures to Take at Each Risk Level", in `heat_categories.csv`.
#[test]
fn levels_begin_at_the_guides_thresholds() {
    let levels = [HeatLevel::Lower, HeatLevel::Moderate, HeatLevel::High, HeatLevel::Extreme];
    let osha: Vec<_> =
        rows(include_str!("../data/heat_categories.csv")).filter(|row| row[0].starts_with("OSHA")).collect();
    assert_eq!(osha.len(), 4);
    for (row, level) in osha.iter().zip(levels) {
        if let Ok(lower) = row[1].parse::<f64>() {
            assert_eq!(HeatLevel::of(lower), level, "{row:?}");
            assert!(HeatLevel::of(lower - 0.01) < level);
        }
        if let Ok(upper) = row[2].parse::<f64>() {
            assert_eq!(HeatLevel::of(upper - 0.01), level, "{row:?}");
        }
    }
}

/// Source: CDC/NIOSH, "Heat Stress: Work/Rest Schedules".
#[test]
fn every_row_of_the_rest_table_is_matched() {
    let mut read = 0;
    for row in rows(include_str!("../data/heat_niosh_work_rest.csv")) {
        let table = work_rest(number(row[0])).unwrap();
        for (cell, schedule) in [(row[1], table.light), (row[2], table.moderate), (row[3], table.heavy)] {
            let expected = match cell {
                "normal" => Schedule::Normal,
                "caution" => Schedule::Caution,
                minutes => {
                    let (work, rest) = minutes.split_once('/').unwrap();
                    Schedule::WorkRest { work: work.parse().unwrap(), rest: rest.parse().unwrap() }
                }
            };
            assert_eq!(schedule, expected, "{row:?}");
        }
        assert!(!table.below_table && !table.beyond_table);
        read += 1;
    }
    assert_eq!(read, 23);
}

#[test]
fn temperatures_outside_the_rest_table_are_marked_and_not_extrapolated() {
    let cool = work_rest(80.0).unwrap();
    assert!(cool.below_table && cool.heavy == Schedule::Normal);
    let hot = work_rest(113.0).unwrap();
    let caution = Schedule::Caution;
    assert_eq!(
        hot,
        WorkRest {
            light: caution,
            moderate: caution,
            heavy: caution,
            below_table: false,
            beyond_table: true,
            reason: None
        }
    );
    assert_eq!(work_rest(f64::NAN), None);
}

#[test]
fn half_a_degree_uses_the_row_of_the_next_whole_degree() {
    assert_eq!(work_rest(99.5), work_rest(100.0));
    assert_ne!(work_rest(99.5), work_rest(99.0));
}

/// The printed cells of the heat index with the level of the number they print: NWS Tulsa, and OSHA's levels.
#[test]
fn the_level_is_that_of_the_number_that_is_shown() {
    let mut cells = 0;
    for row in rows(include_str!("../data/heat_index_nws_table.csv")) {
        let index = heat_index(number(row[0]), number(row[1])).unwrap();
        let shown = index.shown(Units::US);
        assert_eq!(index.level(), HeatLevel::of(shown), "{row:?}");
        cells += 1;
    }
    assert_eq!(cells, 68);
    let edge = heat_index(90.0, 65.0).unwrap();
    assert!(edge.fahrenheit < 103.0 && edge.level() == HeatLevel::High, "102.65 is shown as 103");
}

/// 39 °C is both 102 °F and 103 °F, moderate and high: in whole degrees Celsius one number would have two levels.
#[test]
fn one_shown_temperature_has_one_level_in_either_unit() {
    for units in [Units::US, Units::METRIC] {
        let mut levels = std::collections::BTreeMap::new();
        for hundredths in 4_000..=16_000 {
            let index = HeatIndex { fahrenheit: f64::from(hundredths) / 100.0, beyond_table: false };
            // As it is written: with at most one decimal.
            let shown = format!("{:.1}", index.shown(units));
            let level = *levels.entry(shown.clone()).or_insert(index.level());
            assert_eq!(index.level(), level, "{shown} {units:?} at {index:?}");
        }
    }
}

/// At 90 °F and 35 % the level is lower, and the table (for 30 %) has no rest: the reason is in plain view beside it.
#[test]
fn air_damper_than_the_rest_table_is_told_at_the_lower_level_too() {
    for (fahrenheit, humidity, reason) in [
        (90.0, 35, Some(RestReason::DamperThanTable)),
        (90.0, 31, Some(RestReason::DamperThanTable)),
        (90.0, 30, None),
        (75.0, 70, None),
    ] {
        let (level, table) = advice(fahrenheit, humidity);
        assert_eq!((level, table.reason), (Some(HeatLevel::Lower), reason), "{fahrenheit} {humidity}");
        assert_eq!(table.moderate, Schedule::Normal);
    }
    for fahrenheit in 90..=112 {
        for humidity in 31..=100 {
            let (_, table) = advice(f64::from(fahrenheit), humidity);
            let all_put_off = [table.light, table.moderate, table.heavy] == [Schedule::Caution; 3];
            assert!(table.reason.is_some() || all_put_off, "{fahrenheit} {humidity}");
        }
    }
}

fn advice(fahrenheit: f64, humidity: u8) -> (Option<HeatLevel>, WorkRest) {
    let level = heat_index(fahrenheit, f64::from(humidity)).map(HeatIndex::level);
    (level, work_rest(fahrenheit).unwrap().in_air(humidity, level))
}

/// The rest table is for 30 % humidity (CDC/NIOSH), the levels are OSHA's: of the two the more careful one counts.
#[test]
fn rest_advice_in_damp_air_is_never_as_usual_nor_against_the_level() {
    let caution = Schedule::Caution;
    let more = |least| Schedule::MoreRest { least };
    for (fahrenheit, humidity, level, light, moderate, heavy, reason) in [
        (95.0, 60, HeatLevel::High, more(0), more(0), more(15), RestReason::DampAir),
        (88.0, 70, HeatLevel::Moderate, more(0), more(0), more(0), RestReason::DampAir),
        (90.0, 65, HeatLevel::High, more(0), more(0), more(0), RestReason::DampAir),
        (100.0, 55, HeatLevel::Extreme, caution, caution, caution, RestReason::ExtremeIndex),
        (100.0, 35, HeatLevel::High, more(0), more(15), more(30), RestReason::DampAir),
    ] {
        let (found, table) = advice(fahrenheit, humidity);
        assert_eq!(found, Some(level), "{fahrenheit} {humidity}");
        assert_eq!((table.light, table.moderate, table.heavy), (light, moderate, heavy), "{fahrenheit} {humidity}");
        assert_eq!(table.reason, Some(reason));
    }
    for tenths in 700..=1_300 {
        for humidity in 0..=100 {
            let (level, table) = advice(f64::from(tenths) / 10.0, humidity);
            for schedule in [table.light, table.moderate, table.heavy] {
                let fits = match level {
                    Some(HeatLevel::Extreme) => schedule == caution,
                    Some(HeatLevel::High) if humidity > 30 => {
                        matches!(schedule, Schedule::MoreRest { .. } | Schedule::Caution)
                    }
                    Some(HeatLevel::High) => schedule != Schedule::Normal,
                    Some(HeatLevel::Moderate) if humidity > 30 => {
                        matches!(schedule, Schedule::MoreRest { .. } | Schedule::Caution)
                    }
                    Some(HeatLevel::Moderate | HeatLevel::Lower) | None => true,
                };
                assert!(fits, "{tenths} tenths, {humidity} %: {schedule:?} at {level:?}");
            }
        }
    }
}

/// Source: CDC/NIOSH, "Heat Stress: Work/Rest Schedules", at the 30 % humidity it is made for.
#[test]
fn in_dry_air_the_tables_minutes_hold_unless_the_level_asks_for_more() {
    let mut stood = 0;
    for row in rows(include_str!("../data/heat_niosh_work_rest.csv")) {
        let plain = work_rest(number(row[0])).unwrap();
        let (level, table) = advice(number(row[0]), 30);
        for (ours, printed) in
            [(table.light, plain.light), (table.moderate, plain.moderate), (table.heavy, plain.heavy)]
        {
            let stands =
                level == Some(HeatLevel::Moderate) || (level == Some(HeatLevel::High) && printed != Schedule::Normal);
            assert!(!stands || ours == printed, "{row:?}");
            stood += u32::from(stands);
        }
    }
    assert!(stood > 30, "{stood}");
}

proptest! {
    #[test]
    fn hotter_air_or_heavier_work_never_allows_more_working_time(t in 60.0..130.0f64, more in 0.0..30.0f64) {
        let (now, later) = (work_rest(t).unwrap(), work_rest(t + more).unwrap());
        let of = |table: WorkRest| [table.light, table.moderate, table.heavy].map(minutes_of_work);
        for (a, b) in of(now).into_iter().zip(of(later)) {
            prop_assert!(b <= a);
        }
        prop_assert!(of(now).is_sorted_by(|lighter, heavier| lighter >= heavier));
    }

    #[test]
    fn every_reading_gets_a_finite_index_or_none(t in -100.0..300.0f64, r in -10.0..110.0f64) {
        let answered = heat_index(t, r);
        prop_assert_eq!(answered.is_some(), (40.0..=130.0).contains(&t) && (0.0..=100.0).contains(&r));
        prop_assert!(answered.is_none_or(|index| index.fahrenheit.is_finite()));
    }

    #[test]
    fn within_the_table_damper_air_never_feels_cooler(t in 80.0..110.0f64, r in 40.0..99.0f64) {
        prop_assert!(index(t, r + 1.0) >= index(t, r) - 1e-9);
    }
}
