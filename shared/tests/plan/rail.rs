//! The day's rail: the order of its runs, when each is out of the dryer, and whether that makes it.

use crate::shop::{DAY, HOUR, TestShop, clock, due, today, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::ids::{RunId, SHOP};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::plan::{Rail, RailRun, RailVerdict, WorkCalendar, only_on_press, reordered};
use lastpull_core::run::{ForecastBasis, PaceSource};
use lastpull_core::time::{Millis, TimeOfDay};
use lastpull_core::units::Seconds;

fn ids(rail: &Rail) -> Vec<RunId> {
    rail.runs.iter().map(|run| run.id).collect()
}

/// Undated, due tomorrow, due today at four, due today at noon, and on the press.
fn five() -> (TestShop, [RunId; 5]) {
    let mut press = TestShop::new();
    let dues = [None, due(today().plus_days(1), 600), due(today(), 960), due(today(), 720), None];
    let runs = dues.map(|due| press.ten_minutes(due));
    press.start_at(0, runs[4]);
    (press, runs)
}

#[test]
fn the_press_comes_first_then_what_is_due_and_the_undated_last() {
    let (press, [undated, tomorrow, four, noon, running]) = five();
    assert_eq!(ids(&press.rail(0)), [running, noon, four, tomorrow, undated]);
    assert!(press.rail(0).runs[0].on_press && !press.rail(0).runs[1].on_press);
}

#[test]
fn a_single_run_on_the_press_is_found_and_of_two_neither() {
    let (mut press, [undated, .., running]) = five();
    assert_eq!(only_on_press(&press.shop()), Some(running));
    press.start_at(0, undated);
    assert_eq!(only_on_press(&press.shop()), None);
    assert_eq!(only_on_press(&TestShop::new().shop()), None);
}

#[test]
fn the_shops_own_order_comes_before_due_times_but_not_before_the_press() {
    let (mut press, [undated, tomorrow, four, noon, running]) = five();
    press.record(SHOP, Fact::RunsOrdered(vec![tomorrow, undated, running]));
    assert_eq!(ids(&press.rail(0)), [running, tomorrow, undated, noon, four]);
}

#[test]
fn moving_a_run_records_the_whole_order() {
    let (mut press, [undated, tomorrow, four, noon, running]) = five();
    let moved = reordered(&press.shop(), undated, 1).unwrap();
    assert_eq!(moved, [running, undated, noon, four, tomorrow]);
    press.record(SHOP, Fact::RunsOrdered(moved.clone()));
    assert_eq!(ids(&press.rail(0)), moved);
    assert_eq!(reordered(&press.shop(), noon, 99).unwrap(), [running, undated, four, tomorrow, noon]);
    press.finish_at(60, four);
    assert_eq!(reordered(&press.shop(), four, 1), None, "its job is finished");
}

#[test]
fn nothing_moves_past_the_run_on_the_press() {
    let (press, [undated, tomorrow, four, noon, running]) = five();
    assert_eq!(reordered(&press.shop(), undated, 0).unwrap(), [running, undated, noon, four, tomorrow]);
    assert_eq!(reordered(&press.shop(), running, 3).unwrap(), [running, noon, four, tomorrow, undated]);
}

#[test]
fn a_run_leaves_the_rail_when_it_has_its_pieces_and_is_off_the_press() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    press.pulls(run, 0, 40, 3);
    assert_eq!(press.rail(90).runs.len(), 1, "still on the press");
    press.end_at(100, run);
    assert_eq!(press.rail(110).verdict, RailVerdict::Empty);
    press.misprint_at(120, run, 1, true).end_at(130, run);
    assert_eq!(press.rail(140).runs.len(), 1, "one to print again");
    press.finish_at(200, run);
    assert_eq!(press.rail(210).runs.len(), 0);
}

#[test]
fn finishes_add_set_up_and_overlap_the_dryer_with_the_next_run() {
    let mut press = TestShop::new();
    let first = press.ten_minutes(due(today(), 600));
    let second = press.order("Five", None, Fabric::Canvas, &[(Size::One, 5)]);
    press.guess(second, 120.0);
    let without = press.rail(0);
    press.set_up(first, vec![RunField::Dwell(Some(Seconds::new(100.0)))]);
    let day = press.rail(0);
    assert_eq!((day.set_up, day.set_up_learned), (600.0, false));
    assert_eq!(day.runs[0].basis, Some(ForecastBasis { gaps: 0, source: PaceSource::Guess }));
    let finish = |day: &Rail, index: usize| day.runs[index].finish.unwrap();
    // 600 of set-up and about 600 of pulls, 100 in the dryer; the press is free again before that.
    assert_eq!(day.runs[0].set_up_begins, wall(0));
    assert_eq!(finish(&day, 0).expected, finish(&without, 0).expected + Millis::from_ms(100_000));
    assert!((finish(&day, 0).expected.seconds_after(wall(1_300))).abs() < 60.0, "{:?}", finish(&day, 0));
    assert_eq!(day.runs[1].set_up_begins, finish(&without, 0).expected);
    assert_eq!(finish(&day, 1), finish(&without, 1));
    // Both runs share half of what guesses are off by: the second's doubt is more than its own and the first's.
    let width = |index: usize| finish(&day, index).high.since(finish(&day, index).low).seconds();
    assert!(width(1) > 1.3 * width(0), "{} {}", width(0), width(1));
    press.start_at(0, first);
    let started = press.rail(0);
    assert_eq!(finish(&started, 0).expected + Millis::from_ms(600_000), finish(&day, 0).expected, "set up already");
}

#[test]
fn times_end_at_the_press_where_the_time_in_the_dryer_is_unknown() {
    let mut press = TestShop::new();
    let known = press.ten_minutes(due(today(), 600));
    let unknown = press.ten_minutes(due(today(), 700));
    press.set_up(known, vec![RunField::Dwell(Some(Seconds::new(100.0)))]);
    let of_rail = |press: &TestShop| press.rail(0).runs.iter().map(|run| run.ends_at_press).collect::<Vec<_>>();
    assert_eq!((of_rail(&press), press.rail(0).ending_at_press()), (vec![false, true], 1));
    assert!(!press.pace(known, 0).ends_at_press && press.pace(unknown, 0).ends_at_press);
    press.set_up(unknown, vec![RunField::Dwell(Some(Seconds::new(90.0)))]);
    assert_eq!((of_rail(&press), press.rail(0).ending_at_press()), (vec![false, false], 0));
    let unpaced = press.order("No pace yet", due(today(), 800), Fabric::Cotton, &[(Size::M, 5)]);
    assert_eq!(press.rail(0).runs.last().map(|run| (run.id, run.ends_at_press)), Some((unpaced, false)));
}

#[test]
fn what_a_history_is_off_by_is_off_for_every_run_that_waits() {
    let shop = |waiting: usize| {
        let mut press = TestShop::new();
        for (turn, each) in [30, 50].into_iter().enumerate() {
            let earlier = press.order("Earlier", None, Fabric::Cotton, &[(Size::M, 36)]);
            press.pulls(earlier, turn as u64 * HOUR, each, 36).end_at(turn as u64 * HOUR + 36 * each, earlier);
        }
        for _ in 0..waiting {
            press.order("Waits", None, Fabric::Cotton, &[(Size::M, 36)]);
        }
        let rail = press.rail(2 * HOUR);
        let width = |run: &RailRun| run.finish.map(|finish| finish.high.since(finish.low).seconds()).unwrap();
        width(rail.runs.last().unwrap())
    };
    // Four times as many independent runs would be twice as uncertain.
    assert!(shop(4) > 2.4 * shop(1), "{} {}", shop(1), shop(4));
}

#[test]
fn no_run_can_end_before_the_one_ahead_of_it_and_its_set_up() {
    // Whether the runs ahead are well known, guessed or known from others that differ.
    let fabrics = [Fabric::Cotton, Fabric::Polyester, Fabric::Canvas];
    for (first, each) in [(1, 20.0), (40, 60.0), (300, 30.0)] {
        for fabric in fabrics {
            for pieces in [1, 10, 144] {
                let mut press = TestShop::with_history();
                let ahead = press.order("Ahead", due(today(), 600), Fabric::Cotton, &[(Size::M, first)]);
                let waits = press.order("Waits", due(today(), 700), fabric, &[(Size::M, pieces)]);
                let last = press.order("Last", due(today(), 800), Fabric::Other, &[(Size::M, 2)]);
                if fabric != Fabric::Canvas {
                    press.guess(waits, each);
                }
                press.guess(last, 600.0).start_at(0, ahead);
                let rail = press.rail(0);
                assert_eq!(rail.runs.iter().map(|run| run.id).collect::<Vec<_>>(), [ahead, waits, last]);
                for pair in rail.runs.windows(2) {
                    let [before, after] = [&pair[0], &pair[1]].map(|run| run.finish.unwrap());
                    let set_up = Millis::from_seconds(rail.set_up);
                    let ends = [(before.low, after.low), (before.expected, after.expected), (before.high, after.high)];
                    for (before, after) in ends {
                        assert!(after >= before + set_up, "{first}, {pieces} of {fabric:?}: {before:?} {after:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn times_beyond_today_leave_out_the_night_and_the_days_off() {
    let mut press = TestShop::new();
    for _ in 0..4 {
        let run = press.order("Long", None, Fabric::Cotton, &[(Size::M, 300)]);
        press.guess(run, 60.0);
    }
    // Friday: four runs of five hours and ten minutes, nine hours a day, nothing on the weekend.
    let rail = press.rail(2 * DAY);
    let days: Vec<i64> = rail
        .runs
        .iter()
        .map(|run| clock(0).day_of(run.finish.unwrap().expected))
        .map(|day| day.days_after(today()))
        .collect();
    assert_eq!(days, [2, 5, 5, 6]);
    for run in &rail.runs {
        let finish = run.finish.unwrap();
        assert!(wall(2 * DAY) <= finish.low && finish.low <= finish.expected && finish.expected <= finish.high);
        for at in [finish.low, finish.expected, finish.high] {
            assert!((TimeOfDay::at(8, 0)..=TimeOfDay::at(17, 0)).contains(&clock(0).time_of_day(at)), "{finish:?}");
        }
    }
}

#[test]
fn work_begins_when_the_shops_days_usually_do() {
    let mut press = TestShop::new();
    for day in 0..3 {
        let run = press.order("Early", None, Fabric::Cotton, &[(Size::M, 6)]);
        press.earlier_run(day * DAY, 40, run);
    }
    let monday = |press: &TestShop| {
        let shop = press.shop();
        let calendar = WorkCalendar::of(&shop, clock(3 * DAY), false);
        clock(0).time_of_day(calendar.after(60.0))
    };
    assert_eq!(monday(&press), TimeOfDay::at(8, 1));
    let mut late = TestShop::new();
    for day in 0..3 {
        let run = late.order("Late", None, Fabric::Cotton, &[(Size::M, 6)]);
        late.earlier_run(day * DAY + 2 * HOUR, 40, run);
    }
    assert_eq!(monday(&late), TimeOfDay::at(10, 1));
}

#[test]
fn a_press_that_runs_after_closing_works_on() {
    let mut press = TestShop::new();
    let run = press.ten_minutes(None);
    press.start_at(9 * HOUR + 60, run);
    let finish = press.rail(9 * HOUR + 60).runs[0].finish.unwrap().expected;
    assert!(finish.seconds_after(wall(9 * HOUR + 660)).abs() < 60.0, "{finish:?}");
}

#[test]
fn set_up_time_is_what_the_shop_entered_until_three_changes_are_recorded() {
    let mut press = TestShop::new();
    press.record(SHOP, Fact::SetUpAllowance(Seconds::new(480.0)));
    let runs = [(); 5].map(|()| press.order("Run", None, Fabric::Cotton, &[(Size::M, 3)]));
    let set_up = |press: &TestShop| (press.rail(DAY).set_up, press.rail(DAY).set_up_learned);
    // The clock runs from the end of one run to the first pull of the next, not to its start.
    press.start_at(0, runs[0]).end_at(100, runs[0]);
    press.start_at(150, runs[1]).pull_at(400, runs[1]).end_at(500, runs[1]);
    press.pull_at(900, runs[2]).end_at(1000, runs[2]);
    assert_eq!(set_up(&press), (480.0, false), "300 and 400 s are not enough to go by");
    // Over ninety minutes is no set-up but a break of the day.
    press.pull_at(1000 + 5401, runs[3]).end_at(7000, runs[3]);
    assert_eq!(set_up(&press), (480.0, false));
    press.pull_at(7500, runs[4]);
    assert_eq!(set_up(&press), (400.0, true), "300, 400 and 500");
    for _ in 0..80 {
        press.order("Waits", None, Fabric::Cotton, &[(Size::M, 3)]);
    }
    assert_eq!(set_up(&press), (400.0, true), "what was entered since and waits hides nothing");
}

#[test]
fn a_reopened_run_needs_set_up_again() {
    let mut press = TestShop::new();
    let run = press.ten_minutes(None);
    press.start_at(0, run).end_at(60, run);
    let finish = press.rail(100).runs[0].finish.unwrap().expected;
    assert!(finish.seconds_after(wall(100 + 1_200)).abs() < 60.0, "{finish:?}");
}

#[test]
fn rail_and_count_agree_while_the_last_piece_is_in_the_dryer() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 6)]);
    press.set_up(run, vec![RunField::Dwell(Some(Seconds::new(150.0)))]).pulls(run, 0, 40, 6);
    // Pulled at 200, out at 350; at 240 that is 110 s away.
    let finish = press.pace(run, 240).finish.expected;
    assert_eq!((finish, press.rail(240).runs[0].finish.unwrap().expected), (wall(350), wall(350)));
}
