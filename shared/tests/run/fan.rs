//! The line of what was pulled, opening into the fan of likely finishes.

use crate::shop::{DAY, HOUR, TestShop, clock, due, today, wall};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::{Fan, FanPoint};
use lastpull_core::time::DAY_TURN;

fn rises(points: &[FanPoint]) -> bool {
    points.windows(2).all(|pair| pair[0].at <= pair[1].at && pair[0].pieces <= pair[1].pieces)
}

fn edges(fan: &Fan) -> [&Vec<FanPoint>; 3] {
    [&fan.early, &fan.expected, &fan.late]
}

#[test]
fn the_fan_opens_now_at_the_count_and_only_ever_rises() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 90)]);
    // Uneven on purpose, so that the fan is wide: the early edge even of several pieces is now.
    let mut at = 0;
    for piece in 0..30 {
        at += [5, 20, 90][piece % 3];
        press.pull_at(at, run);
    }
    let fan = &press.fan(run, at + 7);
    assert_eq!(fan.line.last(), Some(&FanPoint { at: wall(at), pieces: 30 }));
    assert!(fan.line.len() <= 25 && rises(&fan.line), "{:?}", fan.line);
    for edge in edges(fan) {
        assert_eq!((edge.len(), edge[0]), (7, FanPoint { at: wall(at + 7), pieces: 30 }));
        assert!(rises(edge), "{edge:?}");
        assert_eq!(edge.last().unwrap().pieces, 90);
    }
    for index in 1..7 {
        let [early, expected, late] = edges(fan).map(|edge| edge[index]);
        assert_eq!((early.pieces, expected.pieces), (expected.pieces, late.pieces));
        assert!(early.at <= expected.at && expected.at < late.at);
    }
    let finish = press.pace(run, at + 7).finish;
    assert_eq!(edges(fan).map(|edge| edge.last().unwrap().at), [finish.low, finish.expected, finish.high]);
}

#[test]
fn the_fan_has_a_point_for_each_piece_while_few_are_left() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.pulls(run, 0, 40, 6);
    let fan = press.fan(run, 200);
    for edge in edges(&fan) {
        assert_eq!(edge.iter().map(|point| point.pieces).collect::<Vec<_>>(), [6, 7, 8, 9]);
    }
}

#[test]
fn a_run_that_has_not_begun_has_a_fan_and_no_line() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.guess(run, 60.0);
    let fan = press.fan(run, 100);
    assert_eq!((fan.line.len(), fan.expected[0]), (0, FanPoint { at: wall(100), pieces: 0 }));
    let last = *fan.expected.last().unwrap();
    assert!(last.pieces == 9 && (last.at.seconds_after(wall(100)) / 540.0 - 1.0).abs() < 0.05, "{last:?}");
}

#[test]
fn the_fan_ends_at_the_order_however_many_were_spoiled() {
    for was_counted in [true, false] {
        let (mut press, run) = TestShop::with_run(&[(Size::M, 20)]);
        press.pulls(run, 0, 40, 8).misprint_at(300, run, 1, was_counted);
        let fan = press.fan(run, 310);
        assert_eq!(fan.line.last().unwrap().pieces, press.count(run, 310).good, "counted: {was_counted}");
        assert_eq!(fan.late.last().unwrap().pieces, 20, "counted: {was_counted}");
    }
}

#[test]
fn the_chart_ends_where_todays_work_does() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 900)]);
    press.pulls(run, 0, 40, 30);
    let chart = press.run_pace(run, 1_160).chart.unwrap();
    // Ten hours of work from 8:19 on, and closing at five.
    assert!(chart.closing.is_some_and(|closing| closing > 0.95), "{chart:?}");
    for line in [&chart.expected, &chart.fan] {
        assert!(line.len() > 2 && line.iter().all(|(x, _)| Some(*x) <= chart.closing), "{chart:?}");
    }
    assert!(chart.times.iter().all(|(at, _)| *at <= wall(9 * HOUR)), "{chart:?}");
    assert!(press.pace(run, 1_160).finish.expected > wall(DAY), "the words name the day");
}

#[test]
fn after_closing_and_on_a_day_off_the_chart_ends_with_the_working_day() {
    for (start, due_after) in [(9 * HOUR + 60, 2), (3 * DAY + 60, 2)] {
        let mut press = TestShop::new();
        let day = clock(start).today();
        let run = press.order("Long", due(day.plus_days(due_after), 12 * 60), Fabric::Cotton, &[(Size::M, 2_000)]);
        press.start_at(start, run).pulls(run, start, 40, 9);
        let chart = press.run_pace(run, start + 330).chart.unwrap();
        let turn = clock(0).moment(day.plus_days(1), DAY_TURN);
        assert!(chart.times.len() > 1 && chart.times.iter().all(|(at, _)| *at <= turn), "{chart:?}");
        assert!(chart.expected.last().is_some_and(|(x, y)| *x < 0.97 && *y < 0.95), "{chart:?}");
    }
}

#[test]
fn a_run_of_yesterday_is_drawn_from_this_morning_on() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 90)]);
    press.start_at(0, run).pulls(run, 60, 40, 30);
    // In the morning nothing is pulled yet.
    let chart = press.run_pace(run, DAY + 60).chart.unwrap();
    assert_eq!((chart.line.len(), chart.now), (0, 0.0));
    assert!(chart.times.iter().all(|(at, _)| *at > wall(DAY + 60)), "{chart:?}");
    press.pulls(run, DAY + 600, 40, 3);
    let fan = press.fan(run, DAY + 700);
    assert_eq!(fan.line.first(), Some(&FanPoint { at: wall(DAY + 600), pieces: 31 }));
    let chart = press.run_pace(run, DAY + 700).chart.unwrap();
    assert!(chart.line[0].0.abs() < 1e-9, "{chart:?}");
    assert!(chart.times.iter().all(|(at, _)| clock(0).day_of(*at) == today().plus_days(1)), "{chart:?}");
}
