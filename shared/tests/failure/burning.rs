//! A screen burned again: what it costs the run, and when the press can go on.

use super::{burning, running};
use crate::shop::{TestShop, clock, minutes, seconds, wall};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::failure::{
    Remedy, Replacement, burn_again_facts, failure_card, failures_of, remedy_facts, resume_facts, spare_screens_for,
};
use lastpull_core::form::FormProblem;
use lastpull_core::ids::SHOP;
use lastpull_core::job::Size;
use lastpull_core::screen::{BurnStep, ScreenState, replacement_wait, step_done};
use lastpull_core::time::{Millis, WallTime};

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
fn the_forecast_adds_the_steps_left_the_set_up_and_the_pieces_left() {
    let (mut press, run, id, _, new) = burning();
    let expected = |remaining_steps: u64, at: u64| wall(at + remaining_steps * 60 + 600 + 20 * 40 - 20);
    // Twenty seconds of work went into the piece on the platen before the stop.
    let finish = |press: &TestShop, at: u64| {
        let rail = press.rail(at).runs[0].finish.unwrap().expected;
        let count = press.pace(run, at).finish.expected;
        assert!(rail.seconds_after(count).abs() < 1.0, "the rail and the count agree");
        assert_eq!(failure_card(&press.shop(), id, clock(at)).unwrap().finish.unwrap().finish.expected, count);
        count
    };
    // Another stop is not what happens more often than not, but moves the middle a little.
    let close = |a: WallTime, b: WallTime| assert!(a.seconds_after(b).abs() < 60.0, "{a:?} {b:?}");
    close(finish(&press, 400), expected(110, 400));
    close(finish(&press, 1_000), expected(110, 1_000));
    press.record_at(1_000, new, step_done(BurnStep::Coat, None));
    close(finish(&press, 1_000), expected(100, 1_000));
    // It dries whether anybody looks or not, so that the finish stands still.
    close(finish(&press, 2_800), expected(100, 1_000));
    press.record_at(2_800, new, step_done(BurnStep::Dry, None));
    close(finish(&press, 2_800), expected(40, 2_800));
    for (at, step, left) in [(3_100, BurnStep::Expose, 35), (4_000, BurnStep::WashDry, 5), (4_300, BurnStep::Tape, 0)] {
        press.record_at(at, new, step_done(step, None));
        close(finish(&press, at), expected(left, at));
    }
    // Set-up runs from there.
    close(finish(&press, 4_600), expected(0, 4_300));
    let facts = resume_facts(&press.shop(), id, Some("Moss"));
    press.record_all_at(4_700, facts);
    assert_eq!(replacement_wait(&press.shop(), run, wall(4_700)), Millis::ZERO);
    assert_eq!(press.shop().screens.live(new).unwrap().state, ScreenState::OnPress);
    close(finish(&press, 4_700), wall(4_700 + 20 * 40 - 20));
    assert_eq!(failures_of(&press.shop(), run, wall(9_000))[0].downtime, seconds(4_700 - 380));
}

#[test]
fn a_coated_spare_screen_needs_no_coating_or_drying() {
    let (mut press, run, old) = running();
    let clean = press.screen_in("C1", ScreenState::Clean);
    let coated = press.screen_in("C2", ScreenState::Coated);
    let id = press.fails_at(4_000, run);
    let stock = spare_screens_for(&press.shop(), id, wall(4_010));
    let minutes_to = |pulls: WallTime| pulls.since(wall(4_010)).whole_minutes();
    let rows: Vec<_> = stock.rows.iter().map(|row| (row.id, minutes_to(row.pulls_at))).collect();
    assert_eq!(rows, [(coated, 5 + 30 + 5 + 10), (clean, 110 + 10)]);
    assert_eq!(minutes_to(stock.new_pulls_at), 110 + 10);
    // A screen that another run waits for comes last, and says so.
    let other = press.ten_minutes(None);
    press.set_up(other, vec![RunField::Screens("C2".into())]);
    let stock = spare_screens_for(&press.shop(), id, wall(4_010));
    let rows: Vec<_> = stock.rows.iter().map(|row| (row.id, row.needed_for.as_deref())).collect();
    assert_eq!(rows, [(clean, None), (coated, Some("Ten"))]);
    let facts = burn_again_facts(&press.shop(), id, &Replacement::Stock(coated), None).unwrap();
    press.record_all_at(4_010, facts);
    assert_eq!(press.shop().screens.live(coated).unwrap().replaces, Some(old));
    let wait = replacement_wait(&press.shop(), run, wall(4_010));
    assert_eq!(wait, minutes(5 + 30 + 5 + 10), "dry for an hour: exposing, washing, taping, set-up");
    let view = failure_card(&press.shop(), id, clock(4_010)).unwrap().replacement.unwrap();
    assert_eq!((view.ready, view.pulls_at), (Some(wall(4_010) + minutes(40)), Some(wall(4_010) + wait)));
}

#[test]
fn a_run_off_the_press_starts_no_earlier_than_its_new_screen_is_ready() {
    let (mut press, run, _, _, _) = burning();
    let other = press.ten_minutes(None);
    press.end_at(420, run);
    press.record(SHOP, Fact::RunsOrdered(vec![other, run]));
    let rail = press.rail(420);
    assert_eq!(rail.runs[0].id, other);
    assert_eq!((rail.runs[1].id, rail.runs[1].set_up_begins), (run, wall(420 + 110 * 60)));
    assert!(rail.runs[1].press_free < rail.runs[1].set_up_begins);
    assert_eq!(rail.runs[1].waits_until, Some(rail.runs[1].set_up_begins));
    assert_eq!(rail.runs[1].waits_for, ["A9"]);
}

#[test]
fn choosing_another_remedy_undoes_burning_a_new_screen() {
    let (mut press, run, id, old, new) = burning();
    let facts = remedy_facts(&press.shop(), id, Remedy::BlockOut, Some("Moss"));
    press.record_all_at(450, facts);
    let shop = press.shop();
    assert_eq!(shop.screens.live(new), None, "nobody had touched it");
    assert_eq!(shop.screens.live(old).unwrap().state, ScreenState::OnPress);
    assert_eq!(shop.run(run).unwrap().set_up.screens, "A3");
    assert_eq!(replacement_wait(&shop, run, wall(450)), Millis::ZERO);
    let card = failure_card(&shop, id, clock(450)).unwrap();
    assert_eq!((card.failure.remedy, card.replacement), (Some(Remedy::BlockOut), None));
}

#[test]
fn a_screen_burned_before_another_remedy_was_tapped_is_offered_again() {
    let (mut press, run, id, old, new) = burning();
    for (at, step) in [(1_000, BurnStep::Coat), (4_600, BurnStep::Dry), (4_900, BurnStep::Expose)] {
        press.record_at(at, new, step_done(step, None));
    }
    let facts = remedy_facts(&press.shop(), id, Remedy::Tape, Some("Moss"));
    press.record_all_at(5_000, facts);
    let shop = press.shop();
    assert_eq!(shop.run(run).unwrap().set_up.screens, "A3");
    assert_eq!(shop.screens.live(new).unwrap().run, Some(run), "the art is on it");
    let offered = &spare_screens_for(&shop, id, wall(5_000)).rows[0];
    assert_eq!((offered.id, offered.state), (new, ScreenState::Exposed));
    assert_eq!(offered.pulls_at, wall(4_900) + minutes(30 + 5 + 10), "washing since 4900, taping, set-up");
    let facts = burn_again_facts(&shop, id, &Replacement::Stock(new), None).unwrap();
    press.record_all_at(5_100, facts);
    let card = failure_card(&press.shop(), id, clock(5_100)).unwrap();
    assert_eq!((card.failure.remedy, card.replacement.unwrap().screen), (Some(Remedy::BurnAgain), new));
    assert_eq!(press.shop().screens.live(old).unwrap().state, ScreenState::Failed);
    assert_eq!(press.shop().run(run).unwrap().set_up.screens, "A9");
}

#[test]
fn a_new_screen_leaves_the_run_again_even_if_no_failed_one_was_chosen() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 20)]);
    press.set_up(run, vec![RunField::Screens("A3".into())]);
    press.start_at(0, run).pulls(run, 0, 40, 2);
    let id = press.fails_at(100, run);
    let new = press.id();
    let facts = burn_again_facts(&press.shop(), id, &Replacement::New { id: new, label: "B6".into() }, None).unwrap();
    press.record_all_at(200, facts);
    assert_eq!(press.shop().run(run).unwrap().set_up.screens, "A3, B6");
    for step in [BurnStep::Coat, BurnStep::Dry, BurnStep::Expose] {
        press.record_at(300, new, step_done(step, None));
    }
    let facts = remedy_facts(&press.shop(), id, Remedy::Tape, None);
    press.record_all_at(400, facts);
    let shop = press.shop();
    assert_eq!(shop.run(run).unwrap().set_up.screens, "A3");
    assert_eq!(spare_screens_for(&shop, id, wall(400)).rows[0].id, new, "and is offered again");
}

#[test]
fn a_screen_of_another_run_is_never_offered_however_far_it_is() {
    let (mut press, run, _) = running();
    let exposed = press.screen_in("C1", ScreenState::Exposed);
    let id = press.fails_at(4_000, run);
    assert!(spare_screens_for(&press.shop(), id, wall(4_010)).rows.iter().all(|row| row.id != exposed));
}

#[test]
fn the_replacement_screen_can_be_changed() {
    let (mut press, run, id, old, new) = burning();
    let coated = press.screen_in("C2", ScreenState::Coated);
    let facts = burn_again_facts(&press.shop(), id, &Replacement::Stock(coated), None).unwrap();
    press.record_all_at(500, facts);
    let shop = press.shop();
    assert_eq!(shop.run(run).unwrap().set_up.screens, "C2");
    assert_eq!(shop.screens.live(new), None);
    assert_eq!(shop.screens.live(coated).unwrap().replaces, Some(old));
    assert_eq!(failure_card(&shop, id, clock(500)).unwrap().replacement.unwrap().screen, coated);
}
