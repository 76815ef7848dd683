//! What heat does to a run: dwell, cure on paper, limits of the fabric; and the changeover.

use super::{belt, dryer, seconds};
use crate::shop::TestShop;
use lastpull_core::facts::RunField;
use lastpull_core::heat::{dryer_transit, dwell, fastest_belt, passes_for};
use lastpull_core::job::Size;
use lastpull_core::units::{BeltSpeed, Length, Seconds};
use proptest::prelude::*;

/// Source: `cure_dwell_checks.csv`. A belt is stored to a millionth of a metre a second.
#[test]
fn dwell_and_fastest_belt_match_the_reference_values() {
    let mut read = 0;
    for row in include_str!("../data/cure_dwell_checks.csv").lines().skip(1) {
        let cells: Vec<f64> = row.split(',').take(5).map(|cell| cell.parse().unwrap()).collect();
        let [length, speed, expected, needed, fastest] = cells[..] else { panic!("{row}") };
        let heated = Length::from_inches(length);
        let found = dwell(heated, belt(speed)).unwrap();
        assert!((found.seconds() - expected).abs() < 0.02, "{row}: {found:?}");
        let slow_enough = fastest_belt(heated, seconds(needed)).unwrap();
        assert!((slow_enough.inches_per_minute() - fastest).abs() < 0.005, "{row}: {slow_enough:?}");
        assert_eq!(passes_for(seconds(needed), found).unwrap() > 1, expected < needed, "{row}");
        read += 1;
    }
    assert_eq!(read, 5);
}

#[test]
fn a_stopped_belt_or_a_tunnel_without_length_has_no_dwell() {
    assert_eq!(dwell(Length::from_inches(36.0), BeltSpeed::from_micrometres_per_second(0)), None);
    assert_eq!(dwell(Length::from_inches(0.0), belt(24.0)), None);
    assert_eq!(dwell(Length::from_micrometres(-5), belt(24.0)), None);
    assert_eq!(dwell(Length::from_micrometres(i32::MAX), BeltSpeed::from_micrometres_per_second(1)), None);
    assert_eq!(fastest_belt(Length::from_inches(36.0), seconds(0.0)), None);
    assert_eq!(passes_for(seconds(90.0), seconds(0.0)), None);
}

/// 36 inches under heat at 24 inches a minute are 90 s: `cure_dwell_checks.csv`.
#[test]
fn the_way_through_the_dryer_is_known_from_the_belt_alone() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 21)]);
    press.guess(run, 60.0);
    let out = |press: &TestShop| press.pace(run, 0).time_left.seconds();
    let pulled = out(&press);
    dryer(&mut press, "Tunnel");
    assert_eq!(dryer_transit(&press.shop(), run), None, "neither belt nor dwell is set");
    press.set_up(run, vec![RunField::Belt(Some(belt(24.0)))]);
    assert_eq!(dryer_transit(&press.shop(), run), Some(seconds(90.0)));
    assert!((out(&press) - pulled - 90.0).abs() < 0.01, "the last piece is not out before that");
    press.set_up(run, vec![RunField::Passes(2)]);
    assert!((out(&press) - pulled - 180.0).abs() < 0.01);
    press.set_up(run, vec![RunField::Dwell(Some(seconds(80.0)))]);
    assert_eq!(dryer_transit(&press.shop(), run), Some(seconds(180.0)), "a finish does not depend on the shorter one");
}

proptest! {
    #[test]
    fn the_fastest_belt_gives_the_dwell_and_a_slightly_faster_one_does_not(
        inches in 5.0..200.0f64, hold in 5.0..600.0f64,
    ) {
        let heated = Length::from_inches(inches);
        let speed = fastest_belt(heated, seconds(hold)).unwrap();
        prop_assert!(dwell(heated, speed).unwrap() >= seconds(hold));
        let faster = BeltSpeed::from_micrometres_per_second(speed.micrometres_per_second() * 101 / 100 + 2);
        prop_assert!(dwell(heated, faster).unwrap() < seconds(hold));
    }

    #[test]
    fn the_passes_reach_the_dwell_and_one_pass_less_does_not(hold in 1_000u32..900_000, pass in 1_000u32..400_000) {
        let (hold_time, pass_time) = (Seconds::from_milliseconds(hold), Seconds::from_milliseconds(pass));
        let passes = passes_for(hold_time, pass_time).unwrap();
        // A thousandth short is the rounding of a stored belt.
        prop_assert!(u64::from(passes) * u64::from(pass) * 1000 >= u64::from(hold) * 999 - 1000);
        prop_assert!(passes == 1 || u64::from(passes - 1) * u64::from(pass) < u64::from(hold));
    }
}
