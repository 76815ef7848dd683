//! Whether each run makes it, and what the rail says of the day as a whole.

use crate::shop::{DAY, HOUR, TestShop, clock, due, today, wall};
use lastpull_core::facts::RunField;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::plan::{LastFinish, Rail, RailVerdict, RunFit, rail};
use lastpull_core::run::Likelihood;
use lastpull_core::time::{Due, Millis};
use lastpull_core::units::Seconds;

const CLOSING: u64 = 9 * HOUR;

/// A rail of one run of about ten minutes after ten of set-up, as of opening.
fn one(due: Option<Due>, closes: u16) -> Rail {
    let mut press = TestShop::with_history();
    press.ten_minutes(due);
    press.closes(closes);
    press.rail(0)
}

fn fits(rail: &Rail) -> Vec<RunFit> {
    rail.runs.iter().map(|run| run.fit).collect()
}

/// Whether a finish is about so many minutes after opening.
fn about(finish: LastFinish, minutes: f64) -> bool {
    (finish.at.seconds_after(wall(0)) / 60.0 - minutes).abs() < 1.5
}

fn span(time: Millis, minutes: f64) -> bool {
    (time.minutes() - minutes).abs() < 1.5
}

#[test]
fn an_empty_rail_says_so() {
    assert_eq!(TestShop::new().rail(0).verdict, RailVerdict::Empty);
}

#[test]
fn a_day_with_time_to_spare_fits_and_says_how_much() {
    let day = one(due(today(), 17 * 60), 17 * 60);
    assert_eq!(fits(&day), [RunFit::Fits]);
    let RailVerdict::Fits { finish, spare } = day.verdict else { panic!("{:?}", day.verdict) };
    assert!(about(finish, 20.0) && span(spare, 9.0 * 60.0 - 20.0), "{finish:?} {spare:?}");
}

/// What is said of one run for each ten seconds less that are left until a closing, the most first: its chance, its fit,
/// and the fit that the verdict stands for.
fn as_time_runs_out(press: &mut TestShop) -> Vec<(Likelihood, RunFit, RunFit)> {
    press.ten_minutes(due(today(), 17 * 60));
    press.closes(8 * 60 + 45);
    let shop = press.shop();
    let at = |tens: u64| {
        let day = rail(&shop, clock(10 * tens));
        let said = match day.verdict {
            RailVerdict::Fits { .. } => RunFit::Fits,
            RailVerdict::Likely { .. } => RunFit::Likely,
            RailVerdict::Tight { .. } => RunFit::Tight,
            RailVerdict::Hardly { closing: 1, due: 0 } => RunFit::HardlyClosing,
            RailVerdict::Misses { runs: 1, late: 0, hardly: 0, .. } => RunFit::MissesClosing,
            other => panic!("{other:?}"),
        };
        (day.runs[0].chance.unwrap().likelihood, day.runs[0].fit, said)
    };
    let mut all: Vec<_> = (0..240).map(at).collect();
    all.dedup();
    all
}

#[test]
fn nothing_is_said_to_be_in_time_or_late_below_95_percent() {
    let said = as_time_runs_out(&mut TestShop::with_history());
    let bins = [
        (Likelihood::Sure, RunFit::Fits),
        (Likelihood::Likely, RunFit::Likely),
        (Likelihood::Even, RunFit::Tight),
        (Likelihood::Unlikely, RunFit::HardlyClosing),
        (Likelihood::No, RunFit::MissesClosing),
    ];
    assert_eq!(said, bins.map(|(chance, fit)| (chance, fit, fit)));
}

#[test]
fn a_guess_alone_makes_nothing_certain_in_either_direction() {
    let said: Vec<RunFit> = as_time_runs_out(&mut TestShop::new()).into_iter().map(|(_, fit, _)| fit).collect();
    // Set-up alone takes ten minutes: with less left than that, no pace is quick enough.
    assert_eq!(said, [RunFit::Likely, RunFit::Tight, RunFit::HardlyClosing, RunFit::MissesClosing]);
    let mut press = TestShop::new();
    press.ten_minutes(due(today(), 17 * 60));
    press.closes(8 * 60 + 11);
    assert_eq!(fits(&press.rail(0)), [RunFit::HardlyClosing]);
    assert_eq!(fits(&press.rail(90)), [RunFit::MissesClosing]);
}

#[test]
fn behind_a_guess_nothing_is_certain_either() {
    let mut press = TestShop::with_history();
    let jersey = press.order("Jerseys", due(today(), 10 * 60), Fabric::Polyester, &[(Size::M, 10)]);
    press.guess(jersey, 60.0);
    press.ten_minutes(due(today(), 17 * 60));
    let day = press.rail(0);
    assert_eq!(fits(&day), [RunFit::Likely, RunFit::Likely]);
    assert!(matches!(day.verdict, RailVerdict::Likely { .. }), "{:?}", day.verdict);
    assert_eq!(day.runs[1].chance.unwrap().percent, None);
}

#[test]
fn hardly_in_time_for_the_client_is_not_hardly_before_closing() {
    let mut press = TestShop::with_history();
    press.ten_minutes(due(today(), 8 * 60 + 20));
    let shop = press.shop();
    let at = |seconds: u64| rail(&shop, clock(seconds));
    let hardly = (0..300).step_by(10).map(at).find(|day| day.runs[0].fit == RunFit::HardlyDue);
    assert_eq!(hardly.map(|day| day.verdict), Some(RailVerdict::Hardly { closing: 0, due: 1 }));
}

#[test]
fn what_is_surely_late_does_not_hide_what_is_hardly_in_time() {
    let mut press = TestShop::with_history();
    press.ten_minutes(due(today(), 17 * 60));
    press.ten_minutes(due(today(), 17 * 60));
    press.closes(8 * 60 + 20);
    let shop = press.shop();
    let both = (0..300).step_by(10).map(|seconds| rail(&shop, clock(seconds)));
    let both = both.filter(|day| fits(day) == [RunFit::HardlyClosing, RunFit::MissesClosing]).last().unwrap();
    assert!(matches!(both.verdict, RailVerdict::Misses { runs: 1, late: 0, hardly: 1, .. }), "{:?}", both.verdict);
}

#[test]
fn a_day_with_a_run_of_unknown_time_in_the_dryer_ends_at_the_press() {
    let mut press = TestShop::with_history();
    let known = press.ten_minutes(due(today(), 17 * 60));
    press.set_up(known, vec![RunField::Dwell(Some(Seconds::new(90.0)))]);
    let ends_at_press = |press: &TestShop| match press.rail(0).verdict {
        RailVerdict::Fits { finish, .. } | RailVerdict::NoneDue { finish: Some(finish), .. } => finish.ends_at_press,
        other => panic!("{other:?}"),
    };
    assert!(!ends_at_press(&press));
    let unknown = press.ten_minutes(due(today(), 16 * 60));
    assert!(ends_at_press(&press), "though it is not the last");
    assert!(press.start_at(0, unknown).pace(unknown, 0).goal.unwrap().ends_at_press);
    press.set_up(unknown, vec![RunField::Dwell(Some(Seconds::new(90.0)))]);
    assert!(!ends_at_press(&press) && !press.pace(unknown, 0).goal.unwrap().ends_at_press);
    let (mut later, run) = TestShop::with_run(&[(Size::M, 9)]);
    later.guess(run, 60.0);
    assert!(ends_at_press(&later), "nothing is due");
}

#[test]
fn a_due_time_before_closing_can_be_tight_by_itself() {
    let mut press = TestShop::with_history();
    press.ten_minutes(due(today(), 8 * 60 + 22));
    let shop = press.shop();
    assert!((0..300).step_by(10).any(|seconds| fits(&rail(&shop, clock(seconds))) == [RunFit::Tight]));
    assert_eq!(fits(&one(due(today(), 9 * 60 + 30), 17 * 60)), [RunFit::Fits]);
}

#[test]
fn runs_that_end_past_closing_miss_it_by_the_work_that_is_too_much() {
    let mut press = TestShop::with_history();
    for _ in 0..3 {
        press.ten_minutes(due(today(), 17 * 60));
    }
    press.closes(8 * 60 + 35);
    let day = press.rail(0);
    // Expected after 20, 40 and 60 minutes; closing after 35. The night between is no work.
    assert_eq!(fits(&day)[1..], [RunFit::MissesClosing, RunFit::MissesClosing]);
    let RailVerdict::Misses { runs: 2, over, late: 0, hardly: 0 } = day.verdict else { panic!("{:?}", day.verdict) };
    assert!(span(over, 26.0), "{over:?}");
}

#[test]
fn runs_past_closing_do_not_hide_those_that_are_late_for_their_own_time() {
    let mut press = TestShop::with_history();
    press.ten_minutes(due(today(), 8 * 60 + 5));
    press.ten_minutes(due(today(), 17 * 60));
    press.closes(8 * 60 + 30);
    let day = press.rail(0);
    assert_eq!(fits(&day), [RunFit::MissesDue, RunFit::MissesClosing]);
    assert!(matches!(day.verdict, RailVerdict::Misses { runs: 1, late: 1, .. }), "{:?}", day.verdict);
}

#[test]
fn a_run_late_for_its_client_but_not_for_closing_is_late() {
    let day = one(due(today(), 8 * 60 + 10), 17 * 60);
    assert_eq!((day.runs[0].fit, day.verdict), (RunFit::MissesDue, RailVerdict::Late { runs: 1, hardly: 0 }));
    let both = one(due(today(), 8 * 60 + 10), 8 * 60 + 15);
    assert_eq!(fits(&both), [RunFit::MissesClosing]);
}

#[test]
fn a_run_due_tomorrow_may_run_past_closing_and_misses_nothing() {
    let mut press = TestShop::with_history();
    press.ten_minutes(due(today(), 17 * 60));
    press.ten_minutes(due(today().plus_days(1), 12 * 60));
    press.closes(8 * 60 + 38);
    let day = press.rail(0);
    assert_eq!(fits(&day), [RunFit::Fits, RunFit::Later]);
    let RailVerdict::TodayFits { finish, spare } = day.verdict else { panic!("{:?}", day.verdict) };
    assert!(about(finish, 20.0) && span(spare, 18.0), "{finish:?} {spare:?}");
    // Ten minutes of set-up and eight of pulls today; the rest from eight on.
    let tomorrow = day.runs[1].finish.unwrap().expected;
    assert!(tomorrow > wall(DAY) && tomorrow < wall(DAY + 600), "{tomorrow:?}");
}

#[test]
fn a_run_for_tomorrow_that_will_be_late_there_is_late_today_already() {
    let mut press = TestShop::with_history();
    press.ten_minutes(due(today().plus_days(1), 8 * 60 + 1));
    press.closes(8 * 60 + 5);
    let day = press.rail(0);
    assert_eq!((fits(&day), day.verdict), (vec![RunFit::MissesDue], RailVerdict::Late { runs: 1, hardly: 0 }));
}

#[test]
fn a_run_without_a_due_time_is_not_due_today() {
    let day = one(None, 8 * 60 + 15);
    assert_eq!(fits(&day), [RunFit::Later]);
    let RailVerdict::NoneDue { runs: 1, finish: Some(finish) } = day.verdict else { panic!("{:?}", day.verdict) };
    assert!(finish.at > wall(DAY), "tomorrow: {finish:?}");
    // And it does not hide that another is.
    let mut press = TestShop::with_history();
    press.ten_minutes(due(today(), 17 * 60));
    press.ten_minutes(None);
    press.closes(8 * 60 + 38);
    assert!(matches!(press.rail(0).verdict, RailVerdict::TodayFits { .. }), "{:?}", press.rail(0).verdict);
}

#[test]
fn everything_is_out_only_if_no_run_stays_open() {
    let mut press = TestShop::with_history();
    press.ten_minutes(None);
    press.ten_minutes(due(today().plus_days(1), 600));
    // Nothing is due today, and two runs are open.
    let RailVerdict::NoneDue { runs: 2, finish: Some(finish) } = press.rail(0).verdict else {
        panic!("{:?}", press.rail(0).verdict)
    };
    assert_eq!(finish.at, press.rail(0).runs[1].finish.unwrap().expected, "the last of those shown");
    press.ten_minutes(due(today(), 17 * 60));
    let day = press.rail(0);
    let last = day.runs.last().unwrap().finish.unwrap().expected;
    assert!(matches!(day.verdict, RailVerdict::Fits { finish, .. } if finish.at == last), "{:?}", day.verdict);
}

#[test]
fn behind_a_run_of_unknown_pace_nothing_is_said_to_make_it() {
    let mut press = TestShop::new();
    press.order("Unknown", due(today(), 600), Fabric::Cotton, &[(Size::M, 10)]);
    press.ten_minutes(due(today(), 700));
    let day = press.rail(0);
    let [unknown, known] = [&day.runs[0], &day.runs[1]];
    assert_eq!(
        (unknown.fit, unknown.finish, unknown.basis, unknown.is_earliest_possible),
        (RunFit::Unknown, None, None, false)
    );
    assert_eq!((known.fit, known.is_earliest_possible), (RunFit::Depends, true));
    assert!(about(LastFinish { at: known.finish.unwrap().expected, ends_at_press: true }, 30.0));
    assert_eq!(day.verdict, RailVerdict::Unknown { runs: 1 });
    // What is late at the earliest is late.
    press.closes(8 * 60 + 20);
    assert_eq!(fits(&press.rail(0)), [RunFit::Unknown, RunFit::MissesClosing]);
}

#[test]
fn an_unknown_pace_after_todays_runs_does_not_hide_that_today_fits() {
    let mut press = TestShop::new();
    press.ten_minutes(due(today(), 17 * 60));
    press.order("Next week", due(today().plus_days(7), 600), Fabric::Cotton, &[(Size::M, 10)]);
    assert!(matches!(press.rail(0).verdict, RailVerdict::Likely { .. }), "{:?}", press.rail(0).verdict);
}

#[test]
fn after_closing_and_on_a_day_off_the_shop_is_closed() {
    let mut press = TestShop::with_history();
    press.ten_minutes(due(today(), 17 * 60));
    assert!(matches!(press.rail(CLOSING - 1).verdict, RailVerdict::Misses { .. }));
    assert_eq!(press.rail(CLOSING).verdict, RailVerdict::Closed { runs: 1, past_due: 1 });
    let saturday = press.rail(3 * DAY);
    assert_eq!((saturday.closing, saturday.verdict), (None, RailVerdict::Closed { runs: 1, past_due: 1 }));
    // Its work is for Monday.
    let monday = saturday.runs[0].finish.unwrap().expected.seconds_after(wall(5 * DAY));
    assert!((0.0..1_500.0).contains(&monday), "{monday}");
    assert_eq!(press.rail(CLOSING + 15 * HOUR).closing, Some(wall(CLOSING + DAY)), "Thursday has its own");
}

#[test]
fn a_closed_shop_says_how_many_jobs_are_past_due() {
    let mut press = TestShop::new();
    let late = press.ten_minutes(due(today(), 12 * 60));
    let lot = press.shop().run(late).unwrap().lot.unwrap();
    press.run(lot);
    press.ten_minutes(due(today(), 18 * 60));
    press.ten_minutes(due(today().plus_days(1), 12 * 60));
    press.ten_minutes(None);
    // Two runs of one job, and an hour later the one due at six.
    assert_eq!(press.rail(CLOSING).verdict, RailVerdict::Closed { runs: 5, past_due: 1 });
    assert_eq!(press.rail(CLOSING + HOUR).verdict, RailVerdict::Closed { runs: 5, past_due: 2 });
}

#[test]
fn on_a_day_off_a_run_without_a_due_time_has_nothing_to_be_in_time_for() {
    let mut press = TestShop::with_history();
    press.ten_minutes(None);
    assert_eq!(fits(&press.rail(3 * DAY)), [RunFit::Later]);
}
