//! Stops, pauses, the end of a run and taking it up again: time at work and time stood.

use crate::shop::{DAY, HOUR, TestShop, seconds, wall};
use lastpull_core::facts::Fact;
use lastpull_core::ids::RunId;
use lastpull_core::job::Size;
use lastpull_core::run::{Pace, RunPhase, StopCause, run_summary};

/// Whole seconds at work and stood, as the counting page shows them.
fn times(press: &TestShop, run: RunId, seconds: u64) -> (u64, u64) {
    let count = press.count(run, seconds);
    (count.active.ms() / 1000, count.stopped.ms() / 1000)
}

fn pace_of(press: &TestShop, run: RunId) -> Pace {
    press.shop().run(run).unwrap().progress.pace().unwrap()
}

#[test]
fn a_stop_lasts_until_the_press_resumes_and_is_not_work() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).pulls(run, 0, 40, 3).stop_at(100, run, StopCause::Ink);
    assert_eq!(press.count(run, 250).phase, RunPhase::Stopped { since: wall(100), cause: StopCause::Ink });
    assert_eq!(times(&press, run, 250), (100, 150));
    press.resume_at(400, run).pull_at(420, run);
    assert_eq!(press.count(run, 500).phase, RunPhase::Running);
    assert_eq!(times(&press, run, 500), (200, 300));
    // 80 to 420 is 340 s, 300 of them stood.
    assert!((pace_of(&press, run).mean - 40.0).abs() < 1e-9);
}

#[test]
fn counting_while_stopped_ends_the_stop() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).stop_at(100, run, StopCause::Screen).pull_at(220, run);
    assert_eq!(press.count(run, 240).phase, RunPhase::Running);
    assert_eq!(times(&press, run, 240), (120, 120));
}

#[test]
fn a_stop_on_top_of_a_stop_does_not_count_twice() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).stop_at(100, run, StopCause::Ink).stop_at(150, run, StopCause::Break);
    assert_eq!(press.count(run, 160).phase, RunPhase::Stopped { since: wall(100), cause: StopCause::Ink });
    press.resume_at(200, run).resume_at(230, run);
    assert_eq!(times(&press, run, 300), (200, 100));
}

#[test]
fn a_run_that_is_not_on_the_press_cannot_stop() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.stop_at(10, run, StopCause::Ink);
    assert_eq!(press.count(run, 50).phase, RunPhase::Waiting);
    assert_eq!(times(&press, run, 50), (0, 0));
    press.start_at(100, run).end_at(200, run).stop_at(300, run, StopCause::Ink);
    assert_eq!(press.count(run, 400).phase, RunPhase::Ended);
    assert_eq!(times(&press, run, 400), (100, 0));
}

#[test]
fn counting_alone_starts_a_run() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.pull_at(60, run);
    let count = press.count(run, 100);
    assert_eq!((count.phase, count.started), (RunPhase::Running, Some(wall(60))));
}

#[test]
fn ending_a_run_ends_its_stop_and_its_time() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).pulls(run, 0, 40, 3).stop_at(100, run, StopCause::Client).end_at(160, run);
    assert_eq!(press.count(run, 999).phase, RunPhase::Ended);
    assert_eq!(times(&press, run, 999), (100, 60));
    let ended = run_summary(&press.shop(), run);
    assert_eq!((ended.active, ended.stopped, ended.span), (seconds(100), seconds(60), Some(wall(0)..wall(160))));
    assert_eq!(ended.per_hour, Some(90.0), "a piece every 40 s");
}

#[test]
fn time_off_the_press_is_neither_work_nor_stop() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).pulls(run, 0, 40, 3).end_at(100, run).start_at(1100, run);
    let count = press.count(run, 1120);
    assert_eq!((count.phase, count.started), (RunPhase::Running, Some(wall(0))));
    assert_eq!(times(&press, run, 1120), (120, 0));
    press.pull_at(1140, run).stop_at(1150, run, StopCause::Heat).resume_at(1180, run).end_at(1200, run);
    assert_eq!(times(&press, run, 9000), (170, 30));
    // 80 to 1140 is 1060 s, 1000 of them off the press: gaps of 40, 40 and 60.
    let pace = pace_of(&press, run);
    assert_eq!(pace.gaps, 3);
    assert!((pace.mean - 140.0 / 3.0).abs() < 1e-9);
}

#[test]
fn counting_reopens_an_ended_run() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.pulls(run, 0, 40, 3).end_at(100, run).pull_at(500, run);
    assert_eq!(press.count(run, 520).phase, RunPhase::Running);
    assert_eq!(times(&press, run, 520), (120, 0));
}

#[test]
fn a_long_gap_among_short_ones_is_a_pause_nobody_marked() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).pulls(run, 0, 40, 4).pulls(run, 1900, 40, 2);
    assert_eq!(times(&press, run, 1940), (160, 1780));
    assert!((pace_of(&press, run).mean - 40.0).abs() < 1e-9);
}

#[test]
fn a_long_gap_among_long_ones_is_work() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    // 900 s is past five minutes, but not past six times the middle gap of 200 s.
    press.start_at(0, run).pulls(run, 0, 200, 4).pulls(run, 1500, 200, 2);
    assert_eq!(times(&press, run, 1700), (1700, 0));
    assert!((pace_of(&press, run).mean - 340.0).abs() < 1e-9, "1700 s for five gaps");
}

#[test]
fn a_pause_around_a_marked_stop_is_counted_once() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).pulls(run, 0, 40, 3);
    press.stop_at(100, run, StopCause::Break).resume_at(700, run).pull_at(1480, run);
    // 80 to 1480: 600 s marked, the other 800 forgotten.
    assert_eq!(times(&press, run, 1480), (80, 1400));
}

#[test]
fn finishing_the_job_ends_its_run_and_keeps_its_results() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).pulls(run, 0, 40, 6).misprint_at(210, run, 1, true);
    press.stop_at(220, run, StopCause::Ink).resume_at(250, run).finish_at(300, run);
    let shop = press.shop();
    let progress = &shop.run(run).unwrap().progress;
    assert_eq!((progress.ended(), progress.good(), progress.misprints()), (Some(wall(300)), 5, 1));
    assert_eq!(progress.pulls(), [], "history is condensed");
    let pace = progress.pace().unwrap();
    assert_eq!((pace.gaps, pace.mean), (5, 40.0));
    assert_eq!(times(&press, run, 9000), (270, 30));
    assert_eq!(press.count(run, 9000).undo, None);
}

#[test]
fn a_reopened_job_continues_from_its_count() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).pulls(run, 0, 40, 6).end_at(240, run).finish_at(300, run);
    let job = press.shop().job_of(run).unwrap().0;
    press.record_at(DAY, job, Fact::JobReopened);
    assert!(press.shop().job(job).unwrap().is_open());
    assert_eq!(press.count(run, DAY).phase, RunPhase::Ended);
    press.pull_at(DAY + 60, run);
    let count = press.count(run, DAY + 100);
    assert_eq!((count.good, count.left, count.phase), (7, 2, RunPhase::Running));
    assert_eq!(times(&press, run, DAY + 100), (280, 0), "the night was off the press");
    assert_eq!(pace_of(&press, run).gaps, 5, "one new pull has no gap yet");
}

#[test]
fn finishing_the_job_does_not_turn_a_pause_into_work() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).pulls(run, 0, 40, 4).pulls(run, 1900, 40, 2).end_at(1940, run);
    assert_eq!(times(&press, run, 2000), (160, 1780));
    press.finish_at(2000, run);
    assert_eq!(times(&press, run, 2100), (160, 1780));
}

#[test]
fn the_pace_of_a_reopened_run_includes_the_earlier_gaps() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).pulls(run, 0, 40, 6).finish_at(300, run);
    press.pulls(run, DAY, 60, 2).end_at(DAY + 70, run);
    // Five gaps of 40 s and one of 60 s.
    let pace = pace_of(&press, run);
    assert_eq!((pace.gaps, pace.pieces), (6, 6));
    assert!((pace.mean - 260.0 / 6.0).abs() < 1e-9);
}

#[test]
fn the_line_of_a_reopened_run_ends_at_its_count() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.start_at(0, run).pulls(run, 0, 40, 6).finish_at(300, run);
    press.pulls(run, DAY, 40, 2);
    let count = press.count(run, DAY + 50);
    assert_eq!((count.good, press.fan(run, DAY + 50).line.last().unwrap().pieces), (8, 8));
}

#[test]
fn ending_a_run_on_two_phones_ends_it_once() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.pulls(run, 0, 40, 3).end_at(100, run).end_at(700, run);
    assert_eq!(press.shop().run(run).unwrap().progress.ended(), Some(wall(100)));
    assert_eq!(times(&press, run, 900), (100, 0));
}

#[test]
fn a_run_whose_end_was_forgotten_did_not_work_through_the_night() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 6)]);
    press.start_at(0, run).pulls(run, 0, 40, 6).finish_at(15 * HOUR, run);
    assert_eq!(run_summary(&press.shop(), run).active, seconds(200));
}
