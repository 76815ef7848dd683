//! Failures on the press: what they stop, what they make suspect, and what a burned screen costs.

use crate::shop::{DAY, Press, clock, near, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::failure::{
    FailureForm, FailureKind, Mark, Remedy, Replacement, RunPieces, Verdict, add_screen_facts, burn_again_facts,
    delete_facts, failure_card, failures_of, failures_stopping_press, failures_today, judge_all_facts, judge_facts,
    notice_at_press, notices_today, open_facts, remedy_facts, resume_facts, run_pieces, spare_screens_for, suspects_of,
    undo_delete_facts, undo_verdict_facts, undo_verdict_of_misprint,
};
use lastpull_core::form::FormProblem;
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::job::Size;
use lastpull_core::journal::JournalFact;
use lastpull_core::run::{MisprintCause, RunPhase, StopCause, run_summary};
use lastpull_core::screen::replacement_wait;
use lastpull_core::screen::{BurnStep, ScreenFact, ScreenField, ScreenState, StepTimes, step_done};
use lastpull_core::units::Seconds;
use proptest::prelude::*;
use uuid::Uuid;

trait AtThePress {
    fn all_at(&mut self, seconds: u64, facts: Vec<(Subject, Fact)>) -> &mut Self;
    fn screen(&mut self, label: &str, state: ScreenState) -> Subject;
    fn fails_at(&mut self, seconds: u64, run: RunId) -> Subject;
    fn tell(&mut self, seconds: u64, id: Subject, since: &str) -> &mut Self;
}

impl AtThePress for Press {
    fn all_at(&mut self, seconds: u64, facts: Vec<(Subject, Fact)>) -> &mut Self {
        for (subject, fact) in facts {
            assert!(fact.in_bounds(), "{fact:?}");
            self.say_at(seconds, subject, fact);
        }
        self
    }

    fn screen(&mut self, label: &str, state: ScreenState) -> Subject {
        let id = self.id();
        self.say(id, Fact::Screen(ScreenFact::Set(vec![ScreenField::Label(label.into())])));
        self.say(id, Fact::Screen(ScreenFact::Moved { to: state, by: None }));
        id
    }

    fn fails_at(&mut self, seconds: u64, run: RunId) -> Subject {
        let id = self.id();
        let facts = open_facts(&self.shop(), run, id, Some("Ines"));
        self.all_at(seconds, facts);
        id
    }

    fn tell(&mut self, seconds: u64, id: Subject, since: &str) -> &mut Self {
        let form = FailureForm { kind: Some(FailureKind::Pinhole), since: since.into(), ..FailureForm::default() };
        let facts = form.check(&self.shop(), id).unwrap();
        self.all_at(seconds, facts)
    }
}

/// Twenty mediums and ten larges ordered, on screen A3; ten mediums pulled forty seconds apart, the last
/// at 360 s; set-up between runs is ten minutes; no dryer time.
fn running() -> (Press, RunId, Subject) {
    let (mut press, run) = Press::with_run(&[(Size::M, 20), (Size::L, 10)]);
    let minutes = |n: f64| Seconds::new(n * 60.0);
    let times = StepTimes {
        reclaim: minutes(20.0),
        coat: minutes(10.0),
        dry: minutes(60.0),
        expose: minutes(5.0),
        wash_dry: minutes(30.0),
        tape: minutes(5.0),
    };
    press.say(Uuid::nil(), Fact::Screen(ScreenFact::StepTimes(times)));
    let screen = press.screen("A3", ScreenState::OnPress);
    press.set_up(run, vec![RunField::Screens("A3".into())]);
    press.start_at(0, run).pulls(run, 0, 40, 10);
    (press, run, screen)
}

#[test]
fn one_tap_stops_the_press_and_knows_the_screen() {
    let (mut press, run, screen) = running();
    let id = press.fails_at(380, run);
    assert_eq!(press.count(run, 400).phase, RunPhase::Stopped { since: wall(380), cause: StopCause::Screen });
    let card = failure_card(&press.shop(), id, clock(500)).unwrap();
    assert_eq!((card.failure.screen, card.failure.by.as_deref()), (Some(screen), Some("Ines")));
    assert_eq!((card.row.downtime, card.is_stopped, card.row.open), (120_000, true, true));
}

#[test]
fn downtime_ends_when_the_press_goes_on_and_stays_out_of_the_pace() {
    let (mut press, run, _) = running();
    let before = press.count(run, 380).pace.unwrap().seconds;
    let id = press.fails_at(380, run);
    let facts = remedy_facts(&press.shop(), id, Remedy::Tape, None);
    press.all_at(600, facts);
    let facts = resume_facts(&press.shop(), id, None);
    press.all_at(980, facts);
    // Forty seconds of work since the last pull: twenty before the stop, twenty after.
    press.pulls(run, 1_000, 40, 3);
    let shop = press.shop();
    assert_eq!(failures_of(&shop, run, wall(9_000))[0].downtime, 600_000);
    assert!(near(press.count(run, 1_080).pace.unwrap().seconds, before), "a stop does not slow the pace");
    assert_eq!(failures_of(&shop, run, wall(0))[0].downtime, 600_000, "on a device whose clock runs late too");
    assert!(!failures_of(&shop, run, wall(9_000))[0].open, "taped, and going");
}

#[test]
fn a_press_that_stood_already_is_not_stopped_again_and_the_time_before_is_not_the_failures() {
    let (mut press, run, _) = running();
    press.stop_at(370, run, StopCause::Break);
    let id = press.fails_at(470, run);
    press.resume_at(570, run);
    let card = failure_card(&press.shop(), id, clock(900)).unwrap();
    assert_eq!(card.row.downtime, 100_000);
    assert_eq!(press.shop().run(run).unwrap().progress.stops().len(), 1);
}

#[test]
fn the_pieces_since_the_last_good_one_are_suspect_by_size_and_stay_in_the_count() {
    let (mut press, run, _) = running();
    press.count_at(400, run, 3, Some(Size::L));
    let id = press.fails_at(420, run);
    press.tell(430, id, "5");
    let shop = press.shop();
    let open: Vec<_> = suspects_of(&shop, run).into_iter().collect();
    assert_eq!(open, [(Some(Size::M), 2), (Some(Size::L), 3)]);
    assert_eq!(run_pieces(&shop, run), RunPieces { good: 8, suspect: 5, spoiled: 0 });
    assert_eq!(press.count(run, 440).good, 13, "they stay counted until somebody looks");
    // Corrected to three, the mediums are no suspects any more.
    press.tell(450, id, "3");
    assert_eq!(suspects_of(&press.shop(), run).into_iter().collect::<Vec<_>>(), [(Some(Size::L), 3)]);
    let form = FailureForm { since: "14".into(), ..FailureForm::default() };
    let problems = form.check(&press.shop(), id).unwrap_err();
    assert!(problems.contains_key("since"), "there are thirteen");
    assert_eq!(failure_card(&press.shop(), id, clock(460)).unwrap().most, 13);
}

#[test]
fn what_is_spoiled_leaves_the_count_and_is_to_be_printed_again() {
    let (mut press, run, _) = running();
    let id = press.fails_at(380, run);
    press.tell(390, id, "4");
    let m = Some(Size::M);
    let facts = judge_facts(&press.shop(), id, m, 1, Verdict::Spoiled, Some("Moss"));
    press.all_at(400, facts);
    let facts = judge_facts(&press.shop(), id, m, 1, Verdict::Good, Some("Moss"));
    press.all_at(410, facts);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 7, suspect: 2, spoiled: 1 });
    assert_eq!(press.shop().pieces_left(run), 21);
    let facts = judge_all_facts(&press.shop(), id, Verdict::Spoiled, None);
    press.all_at(420, facts);
    let shop = press.shop();
    assert_eq!(run_pieces(&shop, run), RunPieces { good: 7, suspect: 0, spoiled: 3 });
    assert_eq!(judge_all_facts(&shop, id, Verdict::Spoiled, None), [], "nothing is suspect any more");
    let ended = run_summary(&shop, run);
    assert_eq!(ended.replace, [(m, 3)]);
    assert_eq!(ended.causes, [(MisprintCause::Pinhole, 3)]);
    assert_eq!((ended.suspect, ended.failures.len(), ended.failures[0].spoiled), (0, 1, 3));
    // One was good after all.
    let facts = judge_facts(&shop, id, m, -1, Verdict::Spoiled, None);
    press.all_at(430, facts);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 7, suspect: 1, spoiled: 2 });
}

#[test]
fn a_second_failure_does_not_suspect_the_same_pieces_twice() {
    let (mut press, run, _) = running();
    let first = press.fails_at(380, run);
    press.tell(390, first, "4").resume_at(400, run).pulls(run, 440, 40, 2);
    let second = press.fails_at(500, run);
    press.tell(510, second, "5");
    assert_eq!(run_pieces(&press.shop(), run).suspect, 6, "four, and the two since");
    let all = FailureForm { since: "12".into(), kind: Some(FailureKind::Clog), ..FailureForm::default() };
    let facts = all.check(&press.shop(), second).unwrap();
    press.all_at(520, facts);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 0, suspect: 12, spoiled: 0 });
}

#[test]
fn a_failure_opened_by_mistake_is_taken_back_with_all_it_did() {
    let (mut press, run, _) = running();
    let id = press.fails_at(380, run);
    press.tell(390, id, "2");
    let facts = judge_all_facts(&press.shop(), id, Verdict::Spoiled, None);
    press.all_at(400, facts);
    let (facts, undo) = (delete_facts(&press.shop(), id), undo_delete_facts(&press.shop(), id));
    press.all_at(410, facts);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 10, suspect: 0, spoiled: 0 });
    assert_eq!(press.count(run, 420).phase, RunPhase::Running);
    assert_eq!(failures_of(&press.shop(), run, wall(420)), []);
    assert_eq!(undo_delete_facts(&press.shop(), id), [], "it is gone already");
    press.all_at(430, undo);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 8, suspect: 0, spoiled: 2 });
    // Nothing was pulled in between: the press stood all along.
    let card = failure_card(&press.shop(), id, clock(480)).unwrap();
    assert_eq!((card.is_stopped, card.row.downtime), (true, 100_000));
}

#[test]
fn a_hand_that_slips_onto_the_zone_does_not_end_the_downtime() {
    let (mut press, run, _) = running();
    let id = press.fails_at(380, run);
    press.resume_at(440, run).stop_at(445, run, StopCause::Screen);
    let card = failure_card(&press.shop(), id, clock(480)).unwrap();
    assert_eq!((card.is_stopped, card.row.downtime), (true, 100_000));
    press.resume_at(500, run).pull_at(520, run).stop_at(560, run, StopCause::Screen);
    let card = failure_card(&press.shop(), id, clock(900)).unwrap();
    assert_eq!((card.is_stopped, card.row.downtime), (false, 120_000), "a piece was pulled in between");
}

#[test]
fn the_press_is_told_of_the_failure_it_stands_for_before_one_that_waits() {
    let (mut press, run, _) = running();
    let first = press.fails_at(380, run);
    press.tell(385, first, "2").resume_at(400, run);
    let at_press =
        |press: &Press| notice_at_press(&press.shop(), run).map(|row| (row.id, row.stopped_for, row.suspect));
    assert_eq!(at_press(&press), Some((first, Some(20_000), 2)));
    assert_eq!(failures_stopping_press(&press.shop()), []);
    press.pull_at(440, run);
    let second = press.fails_at(480, run);
    assert_eq!(at_press(&press), Some((second, None, 0)));
    let standing = failures_stopping_press(&press.shop());
    assert_eq!((standing.len(), standing[0].id, standing[0].title.as_str()), (1, second, "Tour tees"));
    let facts = [remedy_facts(&press.shop(), second, Remedy::Clean, None), resume_facts(&press.shop(), second, None)];
    press.all_at(500, facts.concat());
    assert_eq!(at_press(&press), Some((first, Some(20_000), 2)), "it still has pieces to look at");
    let ids = |press: &Press, at| notices_today(&press.shop(), clock(at)).iter().map(|row| row.id).collect::<Vec<_>>();
    assert_eq!(ids(&press, 900), [first, second]);
    assert_eq!(ids(&press, DAY), [first], "tomorrow only what is open");
    press.finish_at(DAY, run);
    assert!(ids(&press, DAY).is_empty(), "nobody waits for a finished job");
}

#[test]
fn a_screen_that_only_the_run_names_comes_onto_the_list_as_the_one_that_failed() {
    let (mut press, run, known) = running();
    press.set_up(run, vec![RunField::Screens("A3, B7".into())]);
    let id = press.fails_at(380, run);
    assert_eq!(press.shop().failures.live(id).unwrap().screen, None, "it may be either");
    let new = press.id();
    assert_eq!(add_screen_facts(&press.shop(), id, "A3", new, None), [], "the shop has it");
    let facts = add_screen_facts(&press.shop(), id, "B7", new, Some("Moss"));
    press.all_at(390, facts);
    let card = failure_card(&press.shop(), id, clock(400)).unwrap();
    assert_eq!(card.failure.screen, Some(new));
    assert_eq!(card.screens.iter().map(|found| found.screen).collect::<Vec<_>>(), [Some(known), Some(new)]);
    assert_eq!(press.shop().screens.live(new).unwrap().state, ScreenState::OnPress);
}

#[test]
fn judgements_are_taken_back_as_they_were_made() {
    let (mut press, run, _) = running();
    let id = press.fails_at(380, run);
    press.tell(390, id, "4");
    let before = run_pieces(&press.shop(), run);
    let facts = judge_all_facts(&press.shop(), id, Verdict::Spoiled, Some("Moss"));
    let back = undo_verdict_facts(&facts);
    press.all_at(400, facts);
    assert_eq!(run_pieces(&press.shop(), run).spoiled, 4);
    press.all_at(410, back);
    assert_eq!(run_pieces(&press.shop(), run), before);
}

#[test]
fn undo_at_the_count_takes_a_judgement_back_with_the_misprint_it_made() {
    let (mut press, run, _) = running();
    let id = press.fails_at(380, run);
    press.tell(390, id, "4");
    let m = Some(Size::M);
    let smudge = Fact::Misprinted { pieces: -1, size: m, cause: MisprintCause::Smudge, was_counted: true };
    let pinhole = Fact::Misprinted { pieces: -2, size: m, cause: MisprintCause::Pinhole, was_counted: true };
    assert_eq!(undo_verdict_of_misprint(&press.shop(), run, &pinhole), None, "nothing was judged");
    let facts = judge_facts(&press.shop(), id, m, 2, Verdict::Spoiled, None);
    press.all_at(400, facts);
    assert_eq!(undo_verdict_of_misprint(&press.shop(), run, &smudge), None, "it came from no judgement");
    let back = undo_verdict_of_misprint(&press.shop(), run, &pinhole).unwrap();
    press.all_at(410, vec![(run, pinhole), back]);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 6, suspect: 4, spoiled: 0 });
    assert_eq!(failures_of(&press.shop(), run, wall(420))[0].spoiled, 0);
}

/// As [`running`], failed at 380 s and burned again on a new frame at 400 s.
fn burning() -> (Press, RunId, Subject, Subject, Subject) {
    let (mut press, run, old) = running();
    let id = press.fails_at(380, run);
    let new = press.id();
    let facts =
        burn_again_facts(&press.shop(), id, &Replacement::New { id: new, label: "A9".into() }, Some("Moss")).unwrap();
    press.all_at(400, facts);
    (press, run, id, old, new)
}

#[test]
fn burning_again_fails_the_old_screen_and_names_the_new_one() {
    let (press, run, id, old, new) = burning();
    let shop = press.shop();
    assert_eq!(shop.screens.live(old).unwrap().state, ScreenState::Failed);
    let screen = shop.screens.live(new).unwrap();
    assert_eq!((screen.replaces, screen.run, screen.state), (Some(old), Some(run), ScreenState::Clean));
    assert_eq!(shop.run(run).unwrap().set_up.screens, "A9");
    let steps = failure_card(&shop, id, clock(400)).unwrap().replacement.unwrap().steps;
    let names: Vec<_> = steps.iter().map(|step| step.step).collect();
    assert_eq!(names, [BurnStep::Coat, BurnStep::Dry, BurnStep::Expose, BurnStep::WashDry, BurnStep::Tape]);
    let mut press = press;
    let third = press.id();
    let taken = Replacement::New { id: third, label: "a3".into() };
    assert_eq!(burn_again_facts(&shop, id, &taken, None).unwrap_err()["label"], FormProblem::Taken);
}

/// The forecast by hand: 20 pieces left at 40 s, ten minutes of set-up, the steps left before.
#[test]
fn the_forecast_is_the_steps_left_then_set_up_then_the_pace_of_what_is_left() {
    let (mut press, run, id, _, new) = burning();
    let expected = |remaining_steps: u64, at: u64| wall(at + remaining_steps * 60 + 600 + 20 * 40 - 20);
    // Twenty seconds of work went into the piece on the platen before the stop.
    let finish = |press: &Press, at: u64| {
        let rail = press.rail(at).runs[0].finish.unwrap()[0];
        let count = press.count(run, at).pace.unwrap().finish[0];
        assert!(rail.abs_diff(count) < 1_000, "the rail and the count agree");
        assert_eq!(failure_card(&press.shop(), id, clock(at)).unwrap().finish.unwrap().finish[0], count);
        count
    };
    let close = |a: u64, b: u64| assert!(a.abs_diff(b) < 2_000, "{a} {b}");
    close(finish(&press, 400), expected(110, 400));
    close(finish(&press, 1_000), expected(110, 1_000));
    press.say_at(1_000, new, step_done(BurnStep::Coat, None));
    close(finish(&press, 1_000), expected(100, 1_000));
    // It dries whether anybody looks or not, so that the finish stands still.
    close(finish(&press, 2_800), expected(100, 1_000));
    press.say_at(2_800, new, step_done(BurnStep::Dry, None));
    close(finish(&press, 2_800), expected(40, 2_800));
    for (at, step, left) in [(3_100, BurnStep::Expose, 35), (4_000, BurnStep::WashDry, 5), (4_300, BurnStep::Tape, 0)] {
        press.say_at(at, new, step_done(step, None));
        close(finish(&press, at), expected(left, at));
    }
    // Set-up runs from there.
    close(finish(&press, 4_600), expected(0, 4_300));
    let facts = resume_facts(&press.shop(), id, Some("Moss"));
    press.all_at(4_700, facts);
    assert_eq!(replacement_wait(&press.shop(), run, wall(4_700)), 0);
    assert_eq!(press.shop().screens.live(new).unwrap().state, ScreenState::OnPress);
    close(finish(&press, 4_700), wall(4_700 + 20 * 40 - 20));
    assert_eq!(failures_of(&press.shop(), run, wall(9_000))[0].downtime, (4_700 - 380) * 1000);
}

#[test]
fn a_coated_screen_from_the_stock_saves_the_coating_and_the_drying() {
    let (mut press, run, old) = running();
    let clean = press.screen("C1", ScreenState::Clean);
    let coated = press.screen("C2", ScreenState::Coated);
    let id = press.fails_at(4_000, run);
    let stock = spare_screens_for(&press.shop(), id, wall(4_010));
    let minutes = |pulls: u64| (pulls - wall(4_010)) / 60_000;
    let rows: Vec<_> = stock.rows.iter().map(|row| (row.id, minutes(row.pulls_at))).collect();
    assert_eq!(rows, [(coated, 5 + 30 + 5 + 10), (clean, 110 + 10)]);
    assert_eq!(minutes(stock.new_pulls_at), 110 + 10);
    // A screen that another run waits for comes last, and says so.
    let other = press.ten_minutes(None);
    press.set_up(other, vec![RunField::Screens("C2".into())]);
    let stock = spare_screens_for(&press.shop(), id, wall(4_010));
    let rows: Vec<_> = stock.rows.iter().map(|row| (row.id, row.needed_for.as_deref())).collect();
    assert_eq!(rows, [(clean, None), (coated, Some("Ten"))]);
    let facts = burn_again_facts(&press.shop(), id, &Replacement::Stock(coated), None).unwrap();
    press.all_at(4_010, facts);
    assert_eq!(press.shop().screens.live(coated).unwrap().replaces, Some(old));
    let wait = replacement_wait(&press.shop(), run, wall(4_010));
    assert_eq!(wait, (5 + 30 + 5 + 10) * 60_000, "dry for an hour: exposing, washing, taping, set-up");
    let view = failure_card(&press.shop(), id, clock(4_010)).unwrap().replacement.unwrap();
    assert_eq!((view.ready, view.pulls_at), (Some(wall(4_010) + 40 * 60_000), Some(wall(4_010) + wait)));
}

#[test]
fn off_the_press_a_run_begins_no_earlier_than_its_new_screen() {
    let (mut press, run, _, _, _) = burning();
    let other = press.ten_minutes(None);
    press.end_at(420, run);
    press.say(Uuid::nil(), Fact::RunsOrdered(vec![other, run]));
    let rail = press.rail(420);
    assert_eq!(rail.runs[0].id, other);
    assert_eq!((rail.runs[1].id, rail.runs[1].set_up_begins), (run, wall(420 + 110 * 60)));
    assert!(rail.runs[1].press_free < rail.runs[1].set_up_begins);
    assert_eq!(rail.runs[1].waits_until, Some(rail.runs[1].set_up_begins));
}

#[test]
fn another_remedy_takes_the_burning_back() {
    let (mut press, run, id, old, new) = burning();
    let facts = remedy_facts(&press.shop(), id, Remedy::BlockOut, Some("Moss"));
    press.all_at(450, facts);
    let shop = press.shop();
    assert_eq!(shop.screens.live(new), None, "nobody had touched it");
    assert_eq!(shop.screens.live(old).unwrap().state, ScreenState::OnPress);
    assert_eq!(shop.run(run).unwrap().set_up.screens, "A3");
    assert_eq!(replacement_wait(&shop, run, wall(450)), 0);
    let card = failure_card(&shop, id, clock(450)).unwrap();
    assert_eq!((card.failure.remedy, card.replacement), (Some(Remedy::BlockOut), None));
}

#[test]
fn another_frame_can_be_chosen_in_the_first_ones_place() {
    let (mut press, run, id, old, new) = burning();
    let coated = press.screen("C2", ScreenState::Coated);
    let facts = burn_again_facts(&press.shop(), id, &Replacement::Stock(coated), None).unwrap();
    press.all_at(500, facts);
    let shop = press.shop();
    assert_eq!(shop.run(run).unwrap().set_up.screens, "C2");
    assert_eq!(shop.screens.live(new), None);
    assert_eq!(shop.screens.live(coated).unwrap().replaces, Some(old));
    assert_eq!(failure_card(&shop, id, clock(500)).unwrap().replacement.unwrap().screen, coated);
}

#[test]
fn the_day_counts_a_stop_that_two_failures_share_once() {
    let (mut press, run, _) = running();
    let first = press.fails_at(380, run);
    press.tell(385, first, "2");
    press.fails_at(480, run);
    press.resume_at(580, run);
    let day = failures_today(&press.shop(), clock(1_000));
    assert_eq!((day.count, day.downtime, day.suspect, day.open), (2, 200_000, 2, 2));
}

#[test]
fn a_failure_reads_back_as_it_was_told() {
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
    press.all_at(390, facts);
    let shop = press.shop();
    let failure = shop.failures.live(id).unwrap();
    assert_eq!(FailureForm::of(failure), form);
    assert_eq!(failure.mark, Some(Mark { x: 250, y: 500 }));
    assert_eq!(form.check(&shop, id), Ok(vec![]));
}

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

proptest! {
    #![proptest_config(ProptestConfig::with_cases(80))]

    /// Whatever happens and in whatever order, each piece is in one heap.
    #[test]
    fn good_suspect_and_spoiled_add_up_to_what_was_printed(steps in prop::collection::vec(any_step(), 1..40)) {
        let (mut press, run) = Press::with_run(&[(Size::M, 20), (Size::L, 20)]);
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
                    press.tell(at, id, &since.min(most).to_string());
                    failures.push(id);
                }
                Step::Judge { failure, large, pieces, spoiled } => {
                    if let Some(id) = pick(failure) {
                        press.all_at(at, judge_facts(&shop, id, size(large), pieces, verdict(spoiled), None));
                    }
                }
                Step::JudgeAll { failure, spoiled } => {
                    if let Some(id) = pick(failure) {
                        press.all_at(at, judge_all_facts(&shop, id, verdict(spoiled), None));
                    }
                }
                Step::Misprint(large) => {
                    printed[usize::from(large)] += 1;
                    let fact = Fact::Misprinted { pieces: 1, size: size(large), cause: MisprintCause::Smudge, was_counted: false };
                    press.say_at(at, run, fact);
                }
                Step::Delete(n) => {
                    if let Some(id) = pick(n).filter(|id| shop.failures.live(*id).is_some()) {
                        deleted[n] = Some(undo_delete_facts(&shop, id));
                        press.all_at(at, delete_facts(&shop, id));
                    }
                }
                Step::Restore(n) => {
                    press.all_at(at, deleted[n].take().unwrap_or_default());
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
            press.say_at(500, new, step_done(*step, None));
        }
        let finish = |seconds: u64| failure_card(&press.shop(), id, clock(seconds)).unwrap().finish.unwrap().finish[0];
        prop_assert!(finish(500 + later) >= finish(500));
        prop_assert!(finish(500 + later) <= finish(500) + later * 1000 + 1);
        let fewer = replacement_wait(&press.shop(), run, wall(500));
        press.say_at(500, new, step_done(steps[done], None));
        prop_assert!(replacement_wait(&press.shop(), run, wall(500)) < fewer);
    }
}
