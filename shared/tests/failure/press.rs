//! Failures on the press: what they stop, what they make suspect, and what a burned screen costs.

use super::running;
use crate::shop::{DAY, TestShop, clock, minutes, near, seconds, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::failure::{
    FailureForm, FailureKind, Remedy, RunPieces, Verdict, add_screen_facts, delete_facts, failure_card, failures_of,
    failures_stopping_press, judge_all_facts, judge_facts, notice_at_press, notices_today, remedy_facts, resume_facts,
    run_pieces, suspects_of, undo_delete_facts, undo_verdict_facts, undo_verdict_of_misprint,
};
use lastpull_core::job::Size;
use lastpull_core::run::{MisprintCause, RunPhase, StopCause, run_summary};
use lastpull_core::screen::ScreenState;

#[test]
fn one_tap_stops_the_press_and_names_the_only_screen() {
    let (mut press, run, screen) = running();
    let id = press.fails_at(380, run);
    assert_eq!(press.count(run, 400).phase, RunPhase::Stopped { since: wall(380), cause: StopCause::Screen });
    let card = failure_card(&press.shop(), id, clock(500)).unwrap();
    assert_eq!((card.failure.screen, card.failure.by.as_deref()), (Some(screen), Some("Ines")));
    assert_eq!((card.row.downtime, card.is_stopped, card.row.open), (minutes(2), true, true));
}

#[test]
fn downtime_ends_when_the_press_resumes_and_does_not_slow_the_pace() {
    let (mut press, run, _) = running();
    let before = press.shop().run(run).unwrap().progress.pace().unwrap().mean;
    let id = press.fails_at(380, run);
    let facts = remedy_facts(&press.shop(), id, Remedy::Tape, None);
    press.record_all_at(600, facts);
    let facts = resume_facts(&press.shop(), id, None);
    press.record_all_at(980, facts);
    // Forty seconds of work since the last pull: twenty before the stop, twenty after.
    press.pulls(run, 1_000, 40, 3);
    let shop = press.shop();
    assert_eq!(failures_of(&shop, run, wall(9_000))[0].downtime, minutes(10));
    assert!(near(shop.run(run).unwrap().progress.pace().unwrap().mean, before), "a stop does not slow the pace");
    assert_eq!(failures_of(&shop, run, wall(0))[0].downtime, minutes(10), "on a device whose clock runs late too");
    assert!(!failures_of(&shop, run, wall(9_000))[0].open, "taped, and going");
}

#[test]
fn downtime_of_a_failure_on_a_stopped_press_counts_from_its_finding() {
    let (mut press, run, _) = running();
    press.stop_at(370, run, StopCause::Break);
    let id = press.fails_at(470, run);
    press.resume_at(570, run);
    let card = failure_card(&press.shop(), id, clock(900)).unwrap();
    assert_eq!(card.row.downtime, seconds(100));
    assert_eq!(press.shop().run(run).unwrap().progress.stops().len(), 1);
}

#[test]
fn pieces_since_the_last_good_one_are_suspect_by_size_and_still_counted() {
    let (mut press, run, _) = running();
    press.count_at(400, run, 3, Some(Size::L));
    let id = press.fails_at(420, run);
    press.describe_failure(430, id, "5");
    let shop = press.shop();
    let open: Vec<_> = suspects_of(&shop, run).into_iter().collect();
    assert_eq!(open, [(Some(Size::M), 2), (Some(Size::L), 3)]);
    assert_eq!(run_pieces(&shop, run), RunPieces { good: 8, suspect: 5, spoiled: 0 });
    assert_eq!(press.count(run, 440).good, 13, "they stay counted until somebody looks");
    // Corrected to three, the mediums are no suspects any more.
    press.describe_failure(450, id, "3");
    assert_eq!(suspects_of(&press.shop(), run).into_iter().collect::<Vec<_>>(), [(Some(Size::L), 3)]);
    let form = FailureForm { since: "14".into(), ..FailureForm::default() };
    let problems = form.check(&press.shop(), id).unwrap_err();
    assert!(problems.contains_key("since"), "there are thirteen");
    assert_eq!(failure_card(&press.shop(), id, clock(460)).unwrap().most, 13);
}

#[test]
fn spoiled_pieces_leave_the_count_and_must_be_printed_again() {
    let (mut press, run, _) = running();
    let id = press.fails_at(380, run);
    press.describe_failure(390, id, "4");
    let m = Some(Size::M);
    let facts = judge_facts(&press.shop(), id, m, 1, Verdict::Spoiled, Some("Moss"));
    press.record_all_at(400, facts);
    let facts = judge_facts(&press.shop(), id, m, 1, Verdict::Good, Some("Moss"));
    press.record_all_at(410, facts);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 7, suspect: 2, spoiled: 1 });
    assert_eq!(press.shop().pieces_left(run), 21);
    let facts = judge_all_facts(&press.shop(), id, Verdict::Spoiled, None);
    press.record_all_at(420, facts);
    let shop = press.shop();
    assert_eq!(run_pieces(&shop, run), RunPieces { good: 7, suspect: 0, spoiled: 3 });
    assert_eq!(judge_all_facts(&shop, id, Verdict::Spoiled, None), [], "nothing is suspect any more");
    let ended = run_summary(&shop, run);
    assert_eq!(ended.replace, [(m, 3)]);
    assert_eq!(ended.causes, [(MisprintCause::Pinhole, 3)]);
    assert_eq!((ended.suspect, ended.failures.len(), ended.failures[0].spoiled), (0, 1, 3));
    // One was good after all.
    let facts = judge_facts(&shop, id, m, -1, Verdict::Spoiled, None);
    press.record_all_at(430, facts);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 7, suspect: 1, spoiled: 2 });
}

#[test]
fn a_second_failure_does_not_suspect_the_same_pieces_twice() {
    let (mut press, run, _) = running();
    let first = press.fails_at(380, run);
    press.describe_failure(390, first, "4").resume_at(400, run).pulls(run, 440, 40, 2);
    let second = press.fails_at(500, run);
    press.describe_failure(510, second, "5");
    assert_eq!(run_pieces(&press.shop(), run).suspect, 6, "four, and the two since");
    let all = FailureForm { since: "12".into(), kind: Some(FailureKind::Clog), ..FailureForm::default() };
    let facts = all.check(&press.shop(), second).unwrap();
    press.record_all_at(520, facts);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 0, suspect: 12, spoiled: 0 });
}

#[test]
fn undoing_a_failure_undoes_everything_it_changed() {
    let (mut press, run, _) = running();
    let id = press.fails_at(380, run);
    press.describe_failure(390, id, "2");
    let facts = judge_all_facts(&press.shop(), id, Verdict::Spoiled, None);
    press.record_all_at(400, facts);
    let (facts, undo) = (delete_facts(&press.shop(), id), undo_delete_facts(&press.shop(), id));
    press.record_all_at(410, facts);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 10, suspect: 0, spoiled: 0 });
    assert_eq!(press.count(run, 420).phase, RunPhase::Running);
    assert_eq!(failures_of(&press.shop(), run, wall(420)), []);
    assert_eq!(undo_delete_facts(&press.shop(), id), [], "it is gone already");
    press.record_all_at(430, undo);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 8, suspect: 0, spoiled: 2 });
    // Nothing was pulled in between: the press stood all along.
    let card = failure_card(&press.shop(), id, clock(480)).unwrap();
    assert_eq!((card.is_stopped, card.row.downtime), (true, seconds(100)));
}

#[test]
fn an_accidental_count_does_not_end_the_downtime() {
    let (mut press, run, _) = running();
    let id = press.fails_at(380, run);
    press.resume_at(440, run).stop_at(445, run, StopCause::Screen);
    let card = failure_card(&press.shop(), id, clock(480)).unwrap();
    assert_eq!((card.is_stopped, card.row.downtime), (true, seconds(100)));
    press.resume_at(500, run).pull_at(520, run).stop_at(560, run, StopCause::Screen);
    let card = failure_card(&press.shop(), id, clock(900)).unwrap();
    assert_eq!((card.is_stopped, card.row.downtime), (false, minutes(2)), "a piece was pulled in between");
}

#[test]
fn the_press_shows_the_failure_it_is_stopped_for_before_other_open_ones() {
    let (mut press, run, _) = running();
    let first = press.fails_at(380, run);
    press.describe_failure(385, first, "2").resume_at(400, run);
    let at_press =
        |press: &TestShop| notice_at_press(&press.shop(), run).map(|row| (row.id, row.stopped_for, row.suspect));
    assert_eq!(at_press(&press), Some((first, Some(seconds(20)), 2)));
    assert_eq!(failures_stopping_press(&press.shop()), []);
    press.pull_at(440, run);
    let second = press.fails_at(480, run);
    assert_eq!(at_press(&press), Some((second, None, 0)));
    let standing = failures_stopping_press(&press.shop());
    assert_eq!((standing.len(), standing[0].id, standing[0].title.as_str()), (1, second, "Tour tees"));
    let facts = [remedy_facts(&press.shop(), second, Remedy::Clean, None), resume_facts(&press.shop(), second, None)];
    press.record_all_at(500, facts.concat());
    assert_eq!(at_press(&press), Some((first, Some(seconds(20)), 2)), "it still has pieces to look at");
    let ids =
        |press: &TestShop, at| notices_today(&press.shop(), clock(at)).iter().map(|row| row.id).collect::<Vec<_>>();
    assert_eq!(ids(&press, 900), [first, second]);
    assert_eq!(ids(&press, DAY), [first], "tomorrow only what is open");
    press.finish_at(DAY, run);
    assert!(ids(&press, DAY).is_empty(), "nobody waits for a finished job");
}

#[test]
fn a_failed_screen_that_only_the_run_names_is_added_to_the_list() {
    let (mut press, run, known) = running();
    press.set_up(run, vec![RunField::Screens("A3, B7".into())]);
    let id = press.fails_at(380, run);
    assert_eq!(press.shop().failures.live(id).unwrap().screen, None, "it may be either");
    let new = press.id();
    assert_eq!(add_screen_facts(&press.shop(), id, "A3", new, None), [], "the shop has it");
    let facts = add_screen_facts(&press.shop(), id, "B7", new, Some("Moss"));
    press.record_all_at(390, facts);
    let card = failure_card(&press.shop(), id, clock(400)).unwrap();
    assert_eq!(card.failure.screen, Some(new));
    assert_eq!(card.screens.iter().map(|found| found.screen).collect::<Vec<_>>(), [Some(known), Some(new)]);
    assert_eq!(press.shop().screens.live(new).unwrap().state, ScreenState::OnPress);
}

#[test]
fn judgements_can_be_undone() {
    let (mut press, run, _) = running();
    let id = press.fails_at(380, run);
    press.describe_failure(390, id, "4");
    let before = run_pieces(&press.shop(), run);
    let facts = judge_all_facts(&press.shop(), id, Verdict::Spoiled, Some("Moss"));
    let back = undo_verdict_facts(&facts);
    press.record_all_at(400, facts);
    assert_eq!(run_pieces(&press.shop(), run).spoiled, 4);
    press.record_all_at(410, back);
    assert_eq!(run_pieces(&press.shop(), run), before);
}

#[test]
fn undo_on_the_count_page_undoes_a_judgement_and_its_misprint() {
    let (mut press, run, _) = running();
    let id = press.fails_at(380, run);
    press.describe_failure(390, id, "4");
    let m = Some(Size::M);
    let smudge = Fact::Misprinted { pieces: -1, size: m, cause: MisprintCause::Smudge, was_counted: true };
    let pinhole = Fact::Misprinted { pieces: -2, size: m, cause: MisprintCause::Pinhole, was_counted: true };
    assert_eq!(undo_verdict_of_misprint(&press.shop(), run, &pinhole), None, "nothing was judged");
    let facts = judge_facts(&press.shop(), id, m, 2, Verdict::Spoiled, None);
    press.record_all_at(400, facts);
    assert_eq!(undo_verdict_of_misprint(&press.shop(), run, &smudge), None, "it came from no judgement");
    let back = undo_verdict_of_misprint(&press.shop(), run, &pinhole).unwrap();
    press.record_all_at(410, vec![(run, pinhole), back]);
    assert_eq!(run_pieces(&press.shop(), run), RunPieces { good: 6, suspect: 4, spoiled: 0 });
    assert_eq!(failures_of(&press.shop(), run, wall(420))[0].spoiled, 0);
}
