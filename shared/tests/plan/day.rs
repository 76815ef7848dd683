//! What was done today beside the usual, where one day ends and the next begins, and when the shop closes.

use crate::shop::{DAY, HOUR, OPENING, PHONE, TABLET, TestShop, WEST, clock, minutes, near, seconds, today, wall};
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::plan::{DoneToday, closing_today, done_today};
use lastpull_core::run::StopCause;
use lastpull_core::time::{Millis, TimeOfDay, WallClock};

/// Local midnight after opening.
const MIDNIGHT: u64 = 16 * HOUR;
/// Seconds after opening at which it shows four in the morning.
const FOUR: u64 = 20 * HOUR;

fn done(press: &TestShop, seconds: u64) -> DoneToday {
    done_today(&press.shop(), clock(seconds))
}

fn pieces(press: &TestShop, seconds: u64, offset_minutes: i32) -> i64 {
    done_today(&press.shop(), WallClock::fixed(clock(seconds).now, offset_minutes)).row.pieces
}

#[test]
fn todays_pieces_misprints_and_work_are_added_up_over_all_runs() {
    let (mut press, first) = TestShop::with_run(&[(Size::M, 9)]);
    let second = press.order("Other", None, Fabric::Canvas, &[(Size::One, 9)]);
    press.pulls(first, 0, 40, 6).misprint_at(210, first, 1, true).end_at(220, first);
    press.count_at(1000, second, 1, Some(Size::One)).misprint_at(1050, second, 1, false);
    press.count_at(1100, second, 2, Some(Size::One));
    let row = done(&press, 1200).row;
    // Six and three pulled, one of them spoiled after its count; one more spoiled before.
    assert_eq!((row.pieces, row.misprints), (8, 2));
    // Five gaps of 40 s, then two of 50 s: the spoiled piece took its time too.
    assert_eq!(row.active, minutes(5));
}

#[test]
fn neither_stops_nor_pauses_are_time_pulling() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.pulls(run, 0, 40, 3);
    press.stop_at(80, run, StopCause::Ink).resume_at(200, run).pull_at(240, run);
    press.pull_at(2000, run).pull_at(2040, run);
    assert_eq!(done(&press, 2100).row.active, seconds(160));
}

#[test]
fn a_piece_taken_back_is_not_done() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.pulls(run, 0, 40, 3).count_at(90, run, -1, Some(Size::M)).misprint_at(95, run, 1, true);
    press.misprint_at(99, run, -1, true);
    let row = done(&press, 100).row;
    assert_eq!((row.pieces, row.misprints), (2, 0));
}

#[test]
fn taking_a_piece_back_and_counting_it_again_takes_no_more_time() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.pulls(run, 0, 40, 2).count_at(45, run, -1, Some(Size::M)).pull_at(80, run);
    assert_eq!(done(&press, 80).row.active, seconds(80));
}

#[test]
fn a_piece_dated_ahead_changes_nothing_of_what_was_done_today() {
    let with_piece_at = |ahead: Option<u64>| {
        let (mut press, run) = TestShop::with_run(&[(Size::M, 999)]);
        let other = press.order("Other", None, Fabric::Cotton, &[(Size::M, 9)]);
        for day in 0..3 {
            press.pulls(run, day * DAY, 40, 6);
        }
        press.pulls(run, 3 * DAY, 40, 2);
        if let Some(ahead) = ahead {
            let pulled = Fact::Pulled { pieces: 1, size: Some(Size::M) };
            press.on(TABLET).record_with_clock_at(3 * DAY + ahead, other, pulled).on(PHONE);
        }
        press.pulls(run, 3 * DAY + 80, 40, 3);
        done(&press, 3 * DAY + 300)
    };
    let right = with_piece_at(None);
    assert_eq!((right.row.pieces, right.row.active, right.usual.unwrap().days), (5, seconds(160), 3));
    for ahead in [24 * HOUR, 26 * HOUR, 14 * 365 * DAY] {
        assert_eq!(with_piece_at(Some(ahead)), right, "{ahead} s ahead");
    }
}

#[test]
fn the_usual_day_needs_three_working_days() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 999)]);
    for (day, count) in [3, 6, 9].into_iter().enumerate() {
        let morning = day as u64 * DAY;
        assert_eq!(done(&press, morning).usual, None, "{day} days before");
        press.pulls(run, morning, 40, count);
    }
    press.misprint_at(2 * DAY + 400, run, 1, false).end_at(2 * DAY + 500, run);
    assert_eq!(done(&press, 2 * DAY + 600).usual, None, "today is not a day before");
    press.pulls(run, 3 * DAY, 40, 30);
    let done = done(&press, 3 * DAY + 2000);
    assert_eq!(done.row.pieces, 30);
    let usual = done.usual.unwrap();
    assert_eq!((usual.days, usual.pieces), (3, 6.0));
    // 2, 5 and 8 gaps of 40 s, and 80 s from the last pull to the misprint: 680 s over three days.
    assert!(near(usual.misprints, 1.0 / 3.0) && usual.active == Millis::from_ms(680_000 / 3), "{usual:?}");
}

#[test]
fn days_without_a_good_piece_are_no_working_days() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 999)]);
    press.pulls(run, 0, 40, 4).pulls(run, DAY, 40, 4).misprint_at(2 * DAY, run, 2, false);
    assert_eq!(done(&press, 3 * DAY).usual, None);
    press.pulls(run, 9 * DAY, 40, 10);
    let usual = done(&press, 10 * DAY).usual.unwrap();
    assert_eq!((usual.days, usual.pieces), (3, 6.0));
}

#[test]
fn usual_looks_back_twenty_working_days() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9_999)]);
    for day in 0..22 {
        press.count_at(day * DAY, run, if day < 2 { 500 } else { 10 }, Some(Size::M));
    }
    let usual = done(&press, 22 * DAY).usual.unwrap();
    assert_eq!((usual.days, usual.pieces), (20, 10.0));
}

#[test]
fn a_working_day_ends_at_four_in_the_morning_local_time() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 99)]);
    press.count_at(FOUR - 1, run, 3, Some(Size::M)).count_at(FOUR, run, 5, Some(Size::M));
    assert_eq!((pieces(&press, FOUR - 1, WEST), pieces(&press, FOUR, WEST)), (3, 5));
    // By Greenwich both were pulled around nine in the morning.
    assert_eq!(pieces(&press, FOUR, 0), 8);
}

#[test]
fn a_day_can_end_at_a_quarter_past_the_hour_in_utc() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 99)]);
    // Five and three quarter hours east, four in the morning is at 22:15Z: 9¼ hours after 13:00Z.
    let four = 9 * HOUR + 900;
    press.count_at(four - 1, run, 3, Some(Size::M)).count_at(four, run, 5, Some(Size::M));
    assert_eq!((pieces(&press, four - 1, 345), pieces(&press, four, 345)), (3, 5));
}

#[test]
fn jobs_are_counted_on_the_working_day_they_were_finished() {
    let (mut press, first) = TestShop::with_run(&[(Size::M, 9)]);
    let second = press.order("Other", None, Fabric::Cotton, &[(Size::M, 9)]);
    press.finish_at(FOUR - 1, first).finish_at(FOUR, second);
    assert_eq!((done(&press, FOUR - 1).jobs, done(&press, FOUR).jobs), (1, 1));
    let job = press.shop().job_of(second).unwrap().0;
    press.record(job, Fact::JobReopened);
    assert_eq!(done(&press, FOUR).jobs, 0);
}

#[test]
fn a_deleted_job_is_not_counted_as_done_but_its_pieces_are() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.pulls(run, 0, 40, 6).finish_at(300, run);
    let job = press.shop().job_of(run).unwrap().0;
    press.record(job, Fact::Deleted);
    assert_eq!((done(&press, 400).jobs, done(&press, 400).row.pieces), (0, 6));
    press.record(job, Fact::Restored);
    assert_eq!(done(&press, 400).jobs, 1);
}

#[test]
fn a_new_shop_closes_at_five_from_monday_to_friday() {
    let press = TestShop::new();
    let closing = |day: u64| closing_today(&press.shop().closings, clock(day * DAY));
    // Wednesday to Friday, the weekend, Monday.
    let expected = [0, 1, 2, 3, 4, 5].map(|day| (!(3..=4).contains(&day)).then(|| wall(day * DAY + 9 * HOUR)));
    assert_eq!([0, 1, 2, 3, 4, 5].map(closing), expected);
    assert_eq!(closing_today(&press.shop().closings, clock(MIDNIGHT - 1)), Some(wall(9 * HOUR)), "today's still");
}

#[test]
fn closing_goes_by_the_weekday_and_a_single_day_can_differ() {
    let mut press = TestShop::new();
    let [three, six] = [15, 18].map(|hour| Some(TimeOfDay::at(hour, 0)));
    press.record(SHOP, Fact::WeekClosing([None, six, three, six, six, six, None]));
    let closing = |press: &TestShop, day: u64| press.rail(day * DAY).closing;
    assert_eq!(closing(&press, 0), Some(wall(7 * HOUR)), "Wednesday at three");
    assert_eq!(closing(&press, 1), Some(wall(DAY + 10 * HOUR)), "Thursday at six");
    assert_eq!(closing(&press, 5), None, "Monday off");
    press.record(SHOP, Fact::DayClosing { day: today().plus_days(5), time: TimeOfDay::at(12, 0) }).closes(20 * 60);
    assert_eq!(closing(&press, 5), Some(wall(5 * DAY + 4 * HOUR)), "this Monday until noon");
    assert_eq!(closing(&press, 0), Some(wall(12 * HOUR)), "this Wednesday until eight");
    assert_eq!(closing(&press, 7), Some(wall(7 * DAY + 7 * HOUR)), "next Wednesday at three");
    // The same wall clock in Kathmandu is hours earlier by Greenwich: 20:00 there is 14:15Z.
    let east = WallClock::fixed(OPENING, 345);
    assert_eq!(closing_today(&press.shop().closings, east), Some(wall(HOUR + 900)));
}
