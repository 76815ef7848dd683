//! What is recorded of a failure, the summary of the day, and properties of any course of events.

use super::{burning, running};
use crate::shop::{TestShop, clock, seconds, wall};
use lastpull_core::facts::Fact;
use lastpull_core::failure::{
    FailureForm, FailureKind, Mark, Verdict, delete_facts, failure_card, failures_today, judge_all_facts, judge_facts,
    run_pieces, suspects_of, undo_delete_facts,
};
use lastpull_core::ids::Subject;
use lastpull_core::job::Size;
use lastpull_core::run::MisprintCause;
use lastpull_core::screen::{BurnStep, replacement_wait, step_done};
use lastpull_core::time::Millis;
use proptest::prelude::*;

#[derive(Clone, Debug)]
enum Step {
    Pull(bool),
    Undo(bool),
    Fail(u32),
    Judge { failure: usize, large: bool, pieces: i32, spoiled: bool },
    JudgeAll { failure: usize, spoiled: bool },
    Misprint(bool),
    Delete(usize),
    Restore(usize),
}

fn any_step() -> impl Strategy<Value = Step> {
    prop_oneof![
        6 => any::<bool>().prop_map(Step::Pull),
        1 => any::<bool>().prop_map(Step::Undo),
        2 => (0..8u32).prop_map(Step::Fail),
        3 => (0..4usize, any::<bool>(), -3..4i32, any::<bool>())
            .prop_map(|(failure, large, pieces, spoiled)| Step::Judge { failure, large, pieces, spoiled }),
        1 => (0..4usize, any::<bool>()).prop_map(|(failure, spoiled)| Step::JudgeAll { failure, spoiled }),
        1 => any::<bool>().prop_map(Step::Misprint),
        1 => (0..4usize).prop_map(Step::Delete),
        1 => (0..4usize).prop_map(Step::Restore),
    ]
}

#[test]
fn the_day_counts_a_stop_that_two_failures_share_once() {
    let (mut press, run, _) = running();
    let first = press.fails_at(380, run);
    press.describe_failure(385, first, "2");
    press.fails_at(480, run);
    press.resume_at(580, run);
    let day = failures_today(&press.shop(), clock(1_000));
    assert_eq!((day.count, day.downtime, day.suspect, day.open), (2, seconds(200), 2, 2));
}

#[test]
fn a_failure_reads_back_as_it_was_recorded() {
    let (mut press, run, screen) = running();
    let id = press.fails_at(380, run);
    let form = FailureForm {
        kind: Some(FailureKind::Tear),
        screen: Some(screen),
        mark: Some(Mark::at(0.25, 0.5)),
        since: "1".into(),
        notes: "left of the anchor".into(),
    };
    let facts = form.check(&press.shop(), id).unwrap();
    press.record_all_at(390, facts);
    let shop = press.shop();
    let failure = shop.failures.live(id).unwrap();
    assert_eq!(FailureForm::of(failure), form);
    assert_eq!(failure.mark, Some(Mark { x: 250, y: 500 }));
    assert_eq!(form.check(&shop, id), Ok(vec![]));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(80))]

    /// Whatever happens and in whatever order, each piece is in one heap.
    #[test]
    fn good_suspect_and_spoiled_add_up_to_what_was_printed(steps in prop::collection::vec(any_step(), 1..40)) {
        let (mut press, run) = TestShop::with_run(&[(Size::M, 20), (Size::L, 20)]);
        let size = |large: bool| Some(if large { Size::L } else { Size::M });
        let mut failures: Vec<Subject> = Vec::new();
        let mut deleted: Vec<Option<Vec<(Subject, Fact)>>> = vec![None; 8];
        let (mut printed, mut at) = ([0i64; 2], 0);
        for step in steps {
            at += 10;
            let verdict = |spoiled| if spoiled { Verdict::Spoiled } else { Verdict::Good };
            let pick = |n: usize| failures.get(n).copied();
            let shop = press.shop();
            match step {
                Step::Pull(large) => {
                    printed[usize::from(large)] += 1;
                    press.count_at(at, run, 1, size(large));
                }
                Step::Undo(large) => {
                    let counted = shop.run(run).unwrap().progress.good_of(size(large));
                    if counted > 0 {
                        printed[usize::from(large)] -= 1;
                        press.count_at(at, run, -1, size(large));
                    }
                }
                Step::Fail(since) => {
                    let id = press.fails_at(at, run);
                    let most = shop.run(run).unwrap().progress.pulls().iter().map(|pull| pull.pieces).sum::<u32>();
                    press.describe_failure(at, id, &since.min(most).to_string());
                    failures.push(id);
                }
                Step::Judge { failure, large, pieces, spoiled } => {
                    if let Some(id) = pick(failure) {
                        press.record_all_at(at, judge_facts(&shop, id, size(large), pieces, verdict(spoiled), None));
                    }
                }
                Step::JudgeAll { failure, spoiled } => {
                    if let Some(id) = pick(failure) {
                        press.record_all_at(at, judge_all_facts(&shop, id, verdict(spoiled), None));
                    }
                }
                Step::Misprint(large) => {
                    printed[usize::from(large)] += 1;
                    let fact = Fact::Misprinted { pieces: 1, size: size(large), cause: MisprintCause::Smudge, was_counted: false };
                    press.record_at(at, run, fact);
                }
                Step::Delete(n) => {
                    if let Some(id) = pick(n).filter(|id| shop.failures.live(*id).is_some()) {
                        deleted[n] = Some(undo_delete_facts(&shop, id));
                        press.record_all_at(at, delete_facts(&shop, id));
                    }
                }
                Step::Restore(n) => {
                    press.record_all_at(at, deleted[n].take().unwrap_or_default());
                }
            }
            let shop = press.shop();
            let pieces = run_pieces(&shop, run);
            let progress = &shop.run(run).unwrap().progress;
            prop_assert_eq!(pieces.good + pieces.suspect, progress.good());
            prop_assert_eq!(pieces.suspect, suspects_of(&shop, run).values().sum::<u32>());
            for (size, suspect) in &suspects_of(&shop, run) {
                prop_assert!(*suspect <= progress.good_of(*size));
            }
            prop_assert_eq!(i64::from(pieces.printed()), printed.iter().sum::<i64>());
        }
    }

    /// Later is later: a step that takes longer never brings the finish forward, and none is lost.
    #[test]
    fn the_finish_moves_with_every_minute_the_new_screen_takes(done in 0..5usize, later in 0..3_000u64) {
        let (mut press, run, id, _, new) = burning();
        let steps = [BurnStep::Coat, BurnStep::Dry, BurnStep::Expose, BurnStep::WashDry, BurnStep::Tape];
        for step in &steps[..done] {
            press.record_at(500, new, step_done(*step, None));
        }
        let finish = |seconds: u64| failure_card(&press.shop(), id, clock(seconds)).unwrap().finish.unwrap().finish.expected;
        prop_assert!(finish(500 + later) >= finish(500));
        prop_assert!(finish(500 + later) <= finish(500) + seconds(later) + Millis::from_ms(1));
        let fewer = replacement_wait(&press.shop(), run, wall(500));
        press.record_at(500, new, step_done(steps[done], None));
        prop_assert!(replacement_wait(&press.shop(), run, wall(500)) < fewer);
    }
}
