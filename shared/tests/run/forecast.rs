//! When the run on the press will be out of the dryer: what that rests on, and its chance of closing.

use crate::shop::{DAY, HOUR, TestShop, near, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::ids::RunId;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::{ForecastBasis, Location, PaceView, StopCause, stop_rate};
use lastpull_core::units::Seconds;

const TWENTY_ONE: &[(Size, u32)] = &[(Size::M, 21)];

fn pace(press: &TestShop, run: RunId, seconds: u64) -> PaceView {
    press.count(run, seconds).pace.expect("something is known")
}

fn basis(press: &TestShop, run: RunId, seconds: u64) -> Option<ForecastBasis> {
    press.count(run, seconds).pace.map(|pace| pace.basis)
}

/// Nine of 21 pulled, 20 s and 40 s apart in turn, the last at 240 s: mean 30 s, and over 8 gaps
/// s² = 8·10²/7, so s = 10.69 s. Twelve are left: 360 s.
fn nine_pulled() -> (TestShop, RunId) {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    for seconds in [0, 20, 60, 80, 120, 140, 180, 200, 240] {
        press.pull_at(seconds, run);
    }
    (press, run)
}

#[test]
fn without_count_history_or_guess_there_is_no_forecast() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    press.start_at(0, run).pull_at(30, run).pull_at(60, run);
    let count = press.count(run, 60);
    assert_eq!((count.pace, count.fan.expected.len(), count.fan.line.len()), (None, 0, 2));
}

#[test]
fn a_run_without_history_or_guess_has_a_forecast_from_its_second_gap() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    press.pulls(run, 0, 30, 3);
    assert_eq!(basis(&press, run, 60), Some(ForecastBasis::ThisRun { gaps: 2 }));
}

#[test]
fn history_comes_before_a_guess_and_the_run_itself_before_both_from_five_gaps() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    press.guess(run, 60.0);
    assert_eq!((basis(&press, run, 0), pace(&press, run, 0).time.expected), (Some(ForecastBasis::Guess), 21.0 * 60.0));
    let other = press.order("Other", None, Fabric::Cotton, &[(Size::M, 6)]);
    press.earlier_run(0, 40, other);
    let history = ForecastBasis::History { runs: 1, alike: true };
    assert_eq!((basis(&press, run, 300), pace(&press, run, 300).time.expected), (Some(history), 21.0 * 40.0));
    press.pulls(run, 400, 30, 5);
    assert_eq!((basis(&press, run, 520), pace(&press, run, 520).per_hour), (Some(history), 90.0));
    press.pull_at(550, run);
    assert_eq!(basis(&press, run, 550), Some(ForecastBasis::ThisRun { gaps: 5 }));
    let pace = pace(&press, run, 550);
    assert!(near(pace.per_hour, 120.0) && near(pace.seconds, 30.0) && near(pace.time.expected, 15.0 * 30.0));
}

#[test]
fn a_run_with_four_gaps_or_still_on_the_press_is_not_history() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    let [short, running] = ["Short", "Running"].map(|title| press.order(title, None, Fabric::Cotton, &[(Size::M, 9)]));
    press.pulls(short, 0, 40, 5).end_at(161, short);
    press.pulls(running, 200, 40, 6);
    assert_eq!(basis(&press, run, 400), None);
    press.end_at(401, running);
    assert_eq!(basis(&press, run, 402), Some(ForecastBasis::History { runs: 1, alike: true }));
}

#[test]
fn runs_alike_come_before_runs_at_the_same_place_before_all_others() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    let others = [(); 3].map(|()| press.order("Other", None, Fabric::Cotton, &[(Size::M, 6)]));
    press.set_up(others[0], vec![RunField::Location(Location::LeftChest)]);
    press.set_up(others[1], vec![RunField::Hits(2)]);
    let steps = [(70, false), (50, false), (40, true)];
    for (turn, (&other, (each, alike))) in others.iter().zip(steps).enumerate() {
        press.earlier_run(turn as u64 * HOUR, each, other);
        let pace = pace(&press, run, 3 * HOUR);
        assert_eq!((pace.basis, pace.seconds), (ForecastBasis::History { runs: 1, alike }, each as f64));
    }
    press.record(others[2], Fact::Deleted);
    assert!(near(pace(&press, run, 3 * HOUR).seconds, 50.0), "a deleted run teaches nothing");
    press.record(others[2], Fact::Restored);
    assert!(near(pace(&press, run, 3 * HOUR).seconds, 40.0));
}

#[test]
fn one_earlier_run_gives_a_wide_interval_and_two_give_their_deviation() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 10)]);
    let [first, second] = ["First", "Second"].map(|title| press.order(title, None, Fabric::Cotton, &[(Size::M, 6)]));
    press.earlier_run(0, 40, first);
    // A fifth of 40 s, times √(1 + 1/1): ± 10 · 11.314 · t(0.9; 4) = 1.53321.
    let time = pace(&press, run, 300).time;
    assert!((time.expected - 400.0).abs() < 1e-6 && (time.high - 573.4625).abs() < 1e-3, "{time:?}");
    press.earlier_run(HOUR, 60, second);
    // Means of 40 and 60 s: s = √200, times √(1 + 1/2), times t(0.9; 1) = 3.07768.
    let time = pace(&press, run, 2 * HOUR).time;
    assert!((time.expected - 500.0).abs() < 1e-6 && (time.high - 1033.0704).abs() < 1e-3, "{time:?}");
    assert!(near(time.low, 0.0), "never before now");
}

#[test]
fn closing_at_the_expected_finish_is_an_even_chance() {
    let (mut press, run) = nine_pulled();
    press.closes(8 * 60 + 10);
    let now = pace(&press, run, 240);
    assert_eq!(now.finish.expected, wall(600), "08:10");
    assert!(near(now.chance.unwrap(), 0.5) && near(now.needed_per_hour.unwrap(), 120.0), "{now:?}");
    // 360 ± t(0.9; 7)·s·√(12 + 12²/8) = 1.41492 · 58.554.
    assert!((now.time.low - 277.1505).abs() < 1e-3 && (now.time.high - 442.8495).abs() < 1e-3, "{now:?}");
    // A minute less is 60 / 58.554 standard errors less.
    press.closes(8 * 60 + 9);
    let earlier = pace(&press, run, 240);
    assert!((earlier.chance.unwrap() - 0.169_804).abs() < 1e-5, "{earlier:?}");
    assert!(near(earlier.needed_per_hour.unwrap(), 12.0 / 300.0 * 3600.0));
    // 300/30 + (0.35635² − 1)/2 = 9.56: nine more.
    assert_eq!(earlier.by_closing, Some(18));
}

#[test]
fn time_spent_on_the_current_piece_shortens_only_that_piece() {
    let (mut press, run) = nine_pulled();
    press.closes(8 * 60 + 10);
    let part_way = pace(&press, run, 255);
    assert_eq!(part_way.finish.expected, wall(600));
    assert!(near(part_way.time.expected, 345.0) && near(part_way.chance.unwrap(), 0.5), "{part_way:?}");
    // However long the one took, eleven more take 330 s.
    assert!(near(pace(&press, run, 400).time.expected, 330.0));
}

#[test]
fn an_unmarked_lunch_does_not_finish_the_run_in_the_forecast() {
    let (mut press, run) = nine_pulled();
    press.closes(9 * 60 + 5);
    // A minute before closing, an hour after the last pull: 330 s of work are left.
    let count = press.count(run, 64 * 60);
    let pace = count.pace.unwrap();
    assert!(near(pace.time.expected, 330.0));
    assert!(pace.chance.unwrap() < 0.01, "{pace:?}");
    // At most the one on the platen and two more.
    assert!(pace.by_closing.unwrap() <= 12, "{pace:?}");
    assert_eq!(count.fan.expected.last().unwrap().at, wall(64 * 60 + 330));
}

#[test]
fn the_forecast_includes_every_dryer_pass_of_the_last_piece() {
    let (mut press, run) = nine_pulled();
    press.set_up(run, vec![RunField::Dwell(Some(Seconds::new(150.0))), RunField::Passes(2)]).closes(8 * 60 + 15);
    let count = press.count(run, 240);
    let pace = count.pace.unwrap();
    assert_eq!(pace.finish.expected, wall(900), "360 s of pulls and 300 s of dryer");
    assert!(near(pace.chance.unwrap(), 0.5) && near(pace.needed_per_hour.unwrap(), 120.0), "{pace:?}");
    assert_eq!(count.fan.expected.last().unwrap().at, wall(600), "the fan ends at the press");
    press.closes(8 * 60 + 8);
    let too_late = press.count(run, 240).pace.unwrap();
    assert_eq!((too_late.chance, too_late.needed_per_hour, too_late.by_closing), (Some(0.0), None, Some(9)));
}

#[test]
fn stops_are_expected_at_the_rate_of_earlier_runs_without_breaks() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 10)]);
    let other = press.order("Other", None, Fabric::Cotton, &[(Size::M, 6)]);
    press.start_at(0, other).pulls(other, 0, 40, 3);
    press.stop_at(80, other, StopCause::Ink).resume_at(140, other);
    press.stop_at(140, other, StopCause::Break).resume_at(240, other);
    press.pulls(other, 280, 40, 3);
    assert!(near(stop_rate(&press.shop()), 0.0), "not before it has left the press");
    press.end_at(400, other).closes(8 * 60 + 15);
    // 60 s of trouble in 400 − 160 = 240 s of work.
    assert!(near(stop_rate(&press.shop()), 0.25));
    let pace = pace(&press, run, 400);
    assert!(near(pace.seconds, 40.0) && near(pace.time.expected, 500.0), "{pace:?}");
    // Closing in 500 s leaves 400 s of work for ten pieces.
    assert!(near(pace.needed_per_hour.unwrap(), 90.0) && near(pace.chance.unwrap(), 0.5), "{pace:?}");
}

#[test]
fn a_run_with_no_pieces_left_makes_closing() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 6)]);
    press.pulls(run, 0, 40, 6);
    let count = press.count(run, 200);
    assert_eq!(count.fan.expected.len(), 0);
    let pace = count.pace.unwrap();
    assert_eq!((pace.chance, pace.needed_per_hour, pace.by_closing), (Some(1.0), Some(0.0), Some(6)));
}

#[test]
fn no_pace_is_needed_after_closing_or_on_a_day_off() {
    let (press, run) = nine_pulled();
    let late = pace(&press, run, 9 * HOUR + 1);
    assert_eq!((late.chance, late.needed_per_hour, late.by_closing), (Some(0.0), None, Some(9)));
    let saturday = pace(&press, run, 3 * DAY);
    assert_eq!((saturday.chance, saturday.needed_per_hour, saturday.by_closing), (None, None, None));
}

#[test]
fn an_ended_run_has_no_forecast() {
    let (mut press, run) = nine_pulled();
    press.end_at(250, run);
    let count = press.count(run, 260);
    assert_eq!((count.pace, count.fan.expected.len(), count.fan.line.len()), (None, 0, 9));
}
