//! When screens must be ready, counted back from the press.

use super::MINUTE;
use crate::shop::{TestShop, clock, due, minutes, today, wall};
use lastpull_core::facts::Fact;
use lastpull_core::ids::{RunId, Subject};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::plan::RunFit;
use lastpull_core::screen::{BurnStep, ScreenFact, ScreenField, ScreenState, readiness, screen_needs};
use lastpull_core::time::{Millis, WallTime};

/// Two runs of ten minutes with ten of set-up each: the press is free for the second at 20 minutes.
fn morning() -> (TestShop, RunId, RunId, Subject) {
    let mut press = TestShop::new();
    press.set_step_times();
    let first = press.ten_minutes(None);
    let second = press.ten_minutes(None);
    let screens = ["A", "B"].map(|label| press.screen(label));
    press.name_screens(first, "A").name_screens(second, "B").move_screen(0, screens[0], ScreenState::Ready);
    (press, first, second, screens[1])
}

#[test]
fn steps_are_scheduled_backwards_from_when_the_press_is_free() {
    let (mut press, _, second, screen) = morning();
    press.move_screen(0, screen, ScreenState::Exposed);
    let needs = screen_needs(&press.shop(), clock(0));
    assert_eq!(needs.len(), 1, "the first run's screen is ready");
    let need = &needs[0];
    assert_eq!((need.run, need.ready), (second, wall(35 * MINUTE)));
    assert!(need.wanted.seconds_after(wall(20 * MINUTE)).abs() < 30.0, "{:?}", need.wanted);
    assert_eq!(need.late_by, need.ready.since(need.wanted));
    let rows: Vec<_> = need.steps.iter().map(|step| (step.step, step.latest, step.late)).collect();
    // Taping takes 5 minutes, washing out and drying 30 before it: begun 15 minutes ago at the latest.
    let (wash, tape) = (need.wanted - minutes(35), need.wanted - minutes(5));
    assert_eq!(rows, [(BurnStep::WashDry, wash, true), (BurnStep::Tape, tape, false)]);
    let now: Vec<_> = need.steps.iter().map(|step| step.now.clone()).collect();
    assert_eq!(now, [vec![screen], vec![]], "it cannot be taped before it is dry");
}

#[test]
fn a_frame_that_three_runs_want_is_listed_once_with_all_three() {
    let (mut press, first, second, screen) = morning();
    let third = press.ten_minutes(None);
    let fourth = press.ten_minutes(None);
    let other = press.screen("C");
    press.name_screens(first, "B").name_screens(third, "B").name_screens(fourth, "B, C");
    press.move_screen(0, screen, ScreenState::Exposed);
    let needs = screen_needs(&press.shop(), clock(0));
    let rows: Vec<_> = needs.iter().map(|need| (need.run, need.also.iter().map(|also| also.run).collect())).collect();
    assert_eq!(rows, [(first, vec![second, third]), (fourth, vec![])], "the last waits for another frame too");
    press.move_screen(0, other, ScreenState::Ready);
    let needs = screen_needs(&press.shop(), clock(0));
    assert_eq!(needs.len(), 1);
    assert_eq!(needs[0].also.len(), 3);
}

#[test]
fn a_run_waits_for_its_screen_and_delays_the_runs_behind_it() {
    let (mut press, first, second, screen) = morning();
    let third = press.ten_minutes(None);
    press.move_screen(0, screen, ScreenState::Exposed);
    let rail = press.rail(0);
    let row = |at: usize| (rail.runs[at].id, rail.runs[at].waits_until, rail.runs[at].set_up_begins);
    let at = |minutes: u64| wall(minutes * MINUTE);
    let near = |moment: WallTime, minutes: u64| assert!(moment.seconds_after(at(minutes)).abs() < 60.0, "{moment:?}");
    assert_eq!((row(0), row(1)), ((first, None, at(0)), (second, Some(at(35)), at(35))));
    assert_eq!(row(2), (third, None, rail.runs[2].press_free));
    let waits: Vec<_> = rail.runs.iter().map(|run| run.waits_for.join(", ")).collect();
    assert_eq!(waits, ["", "B", ""]);
    near(rail.runs[1].press_free, 20);
    near(rail.runs[2].press_free, 55);
    near(rail.runs[1].finish.unwrap().expected, 55);
    // In time for its turn it delays nobody.
    press.move_screen(60, screen, ScreenState::Ready);
    let rail = press.rail(60);
    assert_eq!(rail.runs[1].waits_until, None);
    near(rail.runs[1].set_up_begins, 21);
}

#[test]
fn a_screen_ready_too_late_for_closing_shows_on_the_rail() {
    let mut press = TestShop::with_history();
    press.set_step_times();
    let runs = [(); 2].map(|()| press.ten_minutes(due(today(), 17 * 60)));
    for (run, label, state) in [(runs[0], "A", ScreenState::Ready), (runs[1], "B", ScreenState::Clean)] {
        let screen = press.screen(label);
        press.name_screens(run, label).move_screen(0, screen, state);
    }
    press.closes(9 * 60 + 30);
    let rail = press.rail(0);
    assert_eq!((rail.runs[1].id, rail.runs[1].fit), (runs[1], RunFit::MissesClosing), "110 minutes of burning first");
    assert_eq!(rail.runs[0].fit, RunFit::Fits);
}

#[test]
fn manual_steps_take_one_screen_at_a_time_and_drying_runs_in_parallel() {
    let mut press = TestShop::new();
    press.set_step_times();
    let run = press.ten_minutes(None);
    press.screen("A");
    press.screen("B");
    press.name_screens(run, "A B");
    let left = readiness(&press.shop(), run, wall(0)).unwrap();
    let minutes: Vec<u64> = left.steps.iter().map(|step| step.time.whole_minutes()).collect();
    assert_eq!(minutes, [20, 60, 10, 30, 10]);
    assert!(left.steps.iter().all(|step| step.screens == 2));
    assert_eq!(left.ready, wall(130 * MINUTE));
}

#[test]
fn a_label_that_is_not_on_the_list_is_shown_but_delays_nothing() {
    let mut press = TestShop::new();
    let run = press.ten_minutes(None);
    press.name_screens(run, "Z9");
    assert_eq!(screen_needs(&press.shop(), clock(0)), [], "a shop that keeps no list");
    press.screen("A");
    let needs = screen_needs(&press.shop(), clock(0));
    assert_eq!((needs[0].screens[0].label.as_str(), needs[0].screens[0].screen), ("Z9", None));
    assert_eq!((needs[0].steps.len(), needs[0].late_by), (0, Millis::ZERO));
    assert_eq!(press.rail(0).runs[0].waits_until, None);
}

#[test]
fn a_screen_with_another_jobs_art_is_pointed_out() {
    let mut press = TestShop::new();
    let earlier = press.order("Earlier", None, Fabric::Cotton, &[(Size::M, 1)]);
    let run = press.ten_minutes(None);
    let screen = press.screen("A");
    press.name_screens(run, "A");
    press.record(screen, Fact::Screen(ScreenFact::Set(vec![ScreenField::Run(Some(earlier))])));
    press.move_screen(1, screen, ScreenState::Exposed);
    let needs = screen_needs(&press.shop(), clock(2));
    let row = needs.iter().find(|need| need.run == run).unwrap();
    assert_eq!(row.screens[0].assigned_elsewhere, Some(earlier));
}
