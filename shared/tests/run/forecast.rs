//! When the run on the press will be out of the dryer: what that rests on, and its chance of being in time.

use crate::shop::{DAY, HOUR, TestShop, clock, due, seconds, today, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::ids::RunId;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::plan::WorkCalendar;
use lastpull_core::run::{Flash, ForecastBasis, GoalKind, Likelihood, Location, PaceSource, StopCause, forecast};
use lastpull_core::time::Millis;
use lastpull_core::units::Seconds;

const TWENTY_ONE: &[(Size, u32)] = &[(Size::M, 21)];

fn basis(press: &TestShop, run: RunId, seconds: u64) -> ForecastBasis {
    press.pace(run, seconds).basis
}

fn based(gaps: u32, source: PaceSource) -> ForecastBasis {
    ForecastBasis { gaps, source }
}

/// Seconds until the last piece is out, as often earlier as later.
fn left(press: &TestShop, run: RunId, seconds: u64) -> f64 {
    press.pace(run, seconds).time_left.seconds()
}

/// Nine of 21 pulled, 20 s and 40 s apart in turn, the last at 240 s: mean 30 s. Twelve are left: 360 s.
fn nine_pulled() -> (TestShop, RunId) {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    for seconds in [0, 20, 60, 80, 120, 140, 180, 200, 240] {
        press.pull_at(seconds, run);
    }
    (press, run)
}

fn others<const N: usize>(press: &mut TestShop) -> [RunId; N] {
    [(); N].map(|()| press.order("Other", None, Fabric::Cotton, &[(Size::M, 36)]))
}

/// An earlier run of 36 mediums with this time for each of the first five and for each of the others.
fn earlier(press: &mut TestShop, run: RunId, from: u64, first: u64, then: u64) {
    press.start_at(from, run);
    let mut at = from;
    for piece in 0..36 {
        press.pull_at(at, run);
        at += if piece < 5 { first } else { then } + [0, 6, 3, 9][piece as usize % 4] - 4;
    }
    press.end_at(at, run);
}

#[test]
fn without_count_history_or_guess_there_is_no_forecast() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    press.start_at(0, run).pull_at(30, run).pull_at(60, run);
    assert_eq!(press.run_pace(run, 60).pace, None);
    assert_eq!((press.fan(run, 60).expected.len(), press.fan(run, 60).line.len()), (0, 2));
}

#[test]
fn a_run_without_history_or_guess_has_a_forecast_from_its_second_gap() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    press.pulls(run, 0, 30, 3);
    assert_eq!(basis(&press, run, 60), based(2, PaceSource::Unknown));
}

#[test]
fn runs_alike_come_before_a_guess() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    press.guess(run, 60.0);
    assert_eq!(basis(&press, run, 0), based(0, PaceSource::Guess));
    assert!((press.pace(run, 0).seconds / 60.0 - 1.0).abs() < 0.05, "{:?}", press.pace(run, 0));
    let [other] = others(&mut press);
    press.earlier_run(0, 40, other);
    assert_eq!(basis(&press, run, 300), based(0, PaceSource::Alike { runs: 1 }));
    assert!((press.pace(run, 300).seconds / 40.0 - 1.0).abs() < 0.05, "{:?}", press.pace(run, 300));
}

#[test]
fn a_guess_is_all_there_is_until_five_gaps() {
    let is_only_guess = |gaps: u32, source: PaceSource| ForecastBasis { gaps, source }.is_only_guess();
    assert!(is_only_guess(4, PaceSource::Guess) && !is_only_guess(5, PaceSource::Guess));
    assert!(!is_only_guess(0, PaceSource::Alike { runs: 1 }) && !is_only_guess(2, PaceSource::Unknown));
}

#[test]
fn a_guess_comes_before_runs_that_are_not_alike() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    let one_hit: [RunId; 3] = others(&mut press);
    let flash = Flash { seconds: Seconds::new(8.0), distance: None };
    press.set_up(run, vec![RunField::Hits(2), RunField::Flash(Some(flash))]).guess(run, 60.0);
    for (turn, other) in one_hit.into_iter().enumerate() {
        earlier(&mut press, other, turn as u64 * HOUR, 31, 31);
    }
    let pace = press.pace(run, 4 * HOUR);
    assert_eq!(pace.basis, ForecastBasis { gaps: 0, source: PaceSource::Guess });
    assert!((pace.seconds / 60.0 - 1.0).abs() < 0.1, "{pace:?}");
}

#[test]
fn earlier_runs_fade_and_are_not_dropped_at_the_fifth_gap() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 36)]);
    let alike: [RunId; 6] = others(&mut press);
    for (turn, other) in alike.into_iter().enumerate() {
        earlier(&mut press, other, turn as u64 * HOUR, 80, 40);
    }
    // Today begins as slowly as always.
    let start = 7 * HOUR;
    let mut at = start;
    let mut finishes = Vec::new();
    for piece in 0..16 {
        press.pull_at(at, run);
        finishes.push(press.pace(run, at).finish.expected);
        at += if piece < 5 { 80 } else { 40 };
    }
    assert_eq!(basis(&press, run, at), based(15, PaceSource::Alike { runs: 6 }));
    // 5 · 80 + 30 · 40 s.
    for finish in finishes {
        assert!((finish.seconds_after(wall(start)) / 1_600.0 - 1.0).abs() < 0.06, "{finish:?}");
    }
}

#[test]
fn a_run_with_four_gaps_or_still_on_the_press_is_not_history() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    let [short, running] = others(&mut press);
    press.pulls(short, 0, 40, 5).end_at(161, short);
    press.pulls(running, 200, 40, 6);
    assert_eq!(press.run_pace(run, 400).pace, None);
    press.end_at(401, running);
    assert_eq!(basis(&press, run, 402), based(0, PaceSource::Alike { runs: 1 }));
}

#[test]
fn runs_alike_come_before_runs_at_the_same_place_before_all_others() {
    let (mut press, run) = TestShop::with_run(TWENTY_ONE);
    let others: [RunId; 3] = others(&mut press);
    press.set_up(others[0], vec![RunField::Location(Location::LeftChest)]);
    press.set_up(others[1], vec![RunField::Hits(2)]);
    let [other, alike] = [PaceSource::Other { runs: 1 }, PaceSource::Alike { runs: 1 }];
    for (turn, (each, source)) in [(70, other), (50, other), (40, alike)].into_iter().enumerate() {
        press.earlier_run(turn as u64 * HOUR, each, others[turn]);
        let pace = press.pace(run, 3 * HOUR);
        assert_eq!(pace.basis.source, source);
        assert!((pace.seconds / each as f64 - 1.0).abs() < 0.02, "{pace:?}");
    }
    press.record(others[2], Fact::Deleted);
    assert_eq!(basis(&press, run, 3 * HOUR), based(0, other), "a deleted run teaches nothing");
    press.record(others[2], Fact::Restored);
    assert_eq!(basis(&press, run, 3 * HOUR), based(0, alike));
}

#[test]
fn the_finish_shown_is_an_even_chance_and_the_interval_eight_in_ten() {
    let (press, run) = nine_pulled();
    let shop = press.shop();
    let forecast = forecast(&shop, run, wall(240)).unwrap();
    let calendar = WorkCalendar::of(&shop, clock(240), true);
    let finish = press.pace(run, 240).finish;
    let chance = |at| forecast.chance_by(at, &calendar);
    let chances = [finish.low, finish.expected, finish.high].map(chance);
    assert!(chances.iter().zip([0.1, 0.5, 0.9]).all(|(chance, meant)| (chance - meant).abs() < 1e-3), "{chances:?}");
    assert!((finish.expected.seconds_after(wall(240)) / 360.0 - 1.0).abs() < 0.1, "{finish:?}");
    assert!(finish.low > wall(240));
}

#[test]
fn the_pace_needed_is_of_the_pieces_left_in_the_time_left() {
    let (mut press, run) = nine_pulled();
    press.closes(8 * 60 + 9);
    let goal = press.pace(run, 240).goal.unwrap();
    assert_eq!((goal.kind, goal.at), (GoalKind::Closing, wall(540)));
    assert!((goal.needed_per_hour.unwrap() - 12.0 / 300.0 * 3600.0).abs() < 1e-6, "{goal:?}");
    assert!((0.05..0.4).contains(&goal.chance.probability), "{goal:?}");
    // Of 12 left, ten at 30 s are out by closing.
    let by_closing = press.pace(run, 240).by_closing.unwrap();
    assert!((18..=19).contains(&by_closing), "{by_closing}");
}

#[test]
fn time_spent_on_the_current_piece_shortens_only_that_piece() {
    let (press, run) = nine_pulled();
    let [before, part_way, long_after] = [240, 255, 400].map(|at| left(&press, run, at));
    assert!((before - part_way - 15.0).abs() < 0.1, "{before} {part_way}");
    // However long the one took, eleven more take their time.
    assert!((long_after / before - 11.0 / 12.0).abs() < 0.02, "{before} {long_after}");
}

#[test]
fn an_unmarked_lunch_does_not_finish_the_run_in_the_forecast() {
    let (mut press, run) = nine_pulled();
    press.closes(9 * 60 + 5);
    // A minute before closing, an hour after the last pull: 330 s of work are left.
    let pace = press.pace(run, 64 * 60);
    assert!(pace.goal.unwrap().chance.probability < 0.01, "{pace:?}");
    // At most the one on the platen and three more.
    assert!(pace.by_closing.unwrap() <= 13, "{pace:?}");
}

#[test]
fn the_forecast_includes_every_dryer_pass_of_the_last_piece() {
    let (mut press, run) = nine_pulled();
    let before = left(&press, run, 240);
    press.set_up(run, vec![RunField::Dwell(Some(Seconds::new(150.0))), RunField::Passes(2)]).closes(8 * 60 + 15);
    assert!((left(&press, run, 240) - before - 300.0).abs() < 0.01);
    let goal = press.pace(run, 240).goal.unwrap();
    assert!((goal.needed_per_hour.unwrap() - 120.0).abs() < 1e-6, "12 in the 360 s before the dryer: {goal:?}");
    let end = press.fan(run, 240).expected.last().unwrap().at;
    assert!((end.seconds_after(wall(240)) - before).abs() < 0.01, "the fan ends at the press");
    press.closes(8 * 60 + 8);
    let too_late = press.pace(run, 240);
    let goal = too_late.goal.unwrap();
    assert_eq!((goal.chance.probability, goal.needed_per_hour, too_late.by_closing), (0.0, None, Some(9)));
}

#[test]
fn one_failure_does_not_inflate_every_forecast() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 24)]);
    let [failed] = others(&mut press);
    // Forty-eight minutes for a screen in seventeen minutes of work.
    press.start_at(0, failed).pulls(failed, 0, 28, 18).stop_at(490, failed, StopCause::Screen);
    press.resume_at(490 + 48 * 60, failed).pulls(failed, 500 + 48 * 60, 28, 18).end_at(4_000, failed);
    let now = 2 * HOUR;
    let pace = press.pace(run, now);
    // 24 pieces of 28 s are 672 s. A stop is not what happens more often than not.
    assert!((pace.time_left.seconds() / 672.0 - 1.0).abs() < 0.25, "{pace:?}");
    // But a long one is among the eight in ten.
    assert!(pace.finish.low < wall(now + 672) && pace.finish.high > wall(now + 900), "{pace:?}");
    let needed = pace.goal.unwrap().needed_per_hour.unwrap();
    assert!((needed - 24.0 / 7.0).abs() < 0.01, "24 in seven hours: {needed}");
}

#[test]
fn breaks_and_stops_that_still_last_are_not_trouble_to_come() {
    let high = |stops: &[(StopCause, u64)]| {
        let (mut press, run) = TestShop::with_run(&[(Size::M, 36)]);
        press.pulls(run, 0, 40, 10);
        let mut at = 365;
        for (cause, lasts) in stops {
            press.stop_at(at, run, *cause).resume_at(at + lasts, run);
            at += lasts;
        }
        left(&press, run, at + 5)
    };
    let calm = high(&[]);
    assert!((high(&[(StopCause::Break, 900)]) - calm).abs() < 1.0);
    assert!(high(&[(StopCause::Ink, 300), (StopCause::Ink, 300)]) > calm + 30.0);
}

#[test]
fn sizes_to_come_take_their_change_of_pile() {
    let sizes = &[(Size::S, 12), (Size::M, 12), (Size::L, 12)];
    let finish = |change: u64, second: Option<Size>| {
        let (mut press, run) = TestShop::with_run(sizes);
        let mut at = 0;
        for piece in 0..18 {
            at += 40 + if piece == 12 { change } else { 0 };
            let size = if piece < 12 { Some(Size::S) } else { second };
            press.count_at(at, run, 1, size);
        }
        left(&press, run, at)
    };
    // One change seen, one to come.
    assert!(finish(90, Some(Size::M)) > finish(0, Some(Size::M)) + 20.0);
}

#[test]
fn a_run_with_no_pieces_left_is_in_time() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 6)]);
    press.pulls(run, 0, 40, 6);
    assert_eq!(press.fan(run, 200).expected.len(), 0);
    let pace = press.pace(run, 200);
    let goal = pace.goal.unwrap();
    assert_eq!((goal.chance.probability, goal.needed_per_hour, pace.by_closing), (1.0, Some(0.0), Some(6)));
}

#[test]
fn no_pace_is_needed_after_closing_or_on_a_day_off() {
    let (press, run) = nine_pulled();
    let late = press.pace(run, 9 * HOUR + 1);
    let goal = late.goal.unwrap();
    assert_eq!((goal.is_past, goal.chance.probability, goal.needed_per_hour), (true, 0.0, None));
    assert_eq!(late.by_closing, Some(9));
    let saturday = press.pace(run, 3 * DAY);
    assert_eq!((saturday.goal, saturday.by_closing), (None, None));
}

#[test]
fn an_ended_run_has_no_forecast() {
    let (mut press, run) = nine_pulled();
    press.end_at(250, run);
    assert_eq!(press.run_pace(run, 260).pace, None);
}

/// 36 at 40 s, five pulled by eight past eight, due at some time.
fn due_at(due: Option<lastpull_core::time::Due>) -> (TestShop, RunId) {
    let mut press = TestShop::new();
    let run = press.order("Due", due, Fabric::Cotton, &[(Size::M, 36)]);
    press.pulls(run, 300, 40, 6);
    (press, run)
}

#[test]
fn the_count_is_compared_with_the_earlier_of_due_time_and_closing() {
    let goal = |due| {
        let (press, run) = due_at(due);
        let goal = press.pace(run, 500).goal.unwrap();
        (goal.kind, goal.is_past, goal.chance.likelihood)
    };
    let day = |days: u64, minutes: u16| due(today().plus_days(days), minutes);
    assert_eq!(goal(None), (GoalKind::Closing, false, Likelihood::Sure));
    assert_eq!(goal(day(0, 8 * 60 + 12)), (GoalKind::Due, false, Likelihood::No));
    assert_eq!(goal(day(0, 16 * 60)), (GoalKind::Due, false, Likelihood::Sure));
    assert_eq!(goal(day(0, 7 * 60)), (GoalKind::Due, true, Likelihood::No), "an hour ago");
    assert_eq!(goal(day(0, 18 * 60)), (GoalKind::Closing, false, Likelihood::Sure));
    assert_eq!(goal(day(1, 9 * 60)), (GoalKind::Closing, false, Likelihood::Sure));
}

#[test]
fn a_run_that_goes_on_another_day_is_compared_with_its_due_time_there() {
    let (mut press, run) = due_at(due(today().plus_days(2), 12 * 60));
    press.closes(8 * 60 + 12);
    let pace = press.pace(run, 500);
    let goal = pace.goal.unwrap();
    assert_eq!((goal.kind, goal.chance.likelihood), (GoalKind::Due, Likelihood::Sure));
    assert_eq!(clock(500).day_of(pace.finish.expected), today().plus_days(1));
}

#[test]
fn work_beyond_closing_goes_on_when_the_shop_opens_next() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 2_000)]);
    press.guess(run, 24.0).start_at(HOUR, run);
    let finish = press.pace(run, HOUR).finish;
    // 13.3 hours from nine on, and a stop of four minutes in every hundred pieces: eight until five, the rest from
    // eight tomorrow.
    let off = finish.expected.seconds_after(wall(DAY) + Millis::from_minutes(320 + 80));
    assert!(off.abs() < 40.0 * 60.0, "{finish:?} {off}");
    assert!(finish.low >= wall(HOUR) && finish.low <= finish.expected && finish.expected <= finish.high);
    let said = press.pace(run, HOUR).goal.unwrap().chance;
    assert_eq!(said.percent, None, "on a guess alone");
    assert_eq!(said.likelihood, Likelihood::Unlikely, "hardly, and on the rail as at the count");
    assert_eq!(press.rail(HOUR).runs[0].chance, Some(said));
}

#[test]
fn the_time_left_is_work_and_not_the_night() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 900)]);
    press.pulls(run, 0, 40, 30).closes(9 * 60);
    let pace = press.pace(run, 1_160);
    assert!((pace.time_left.seconds() / (870.0 * 40.0) - 1.0).abs() < 0.1, "{:?}", pace.time_left);
    assert!(pace.finish.expected.since(wall(1_160)) > pace.time_left + seconds(DAY / 2));
}
