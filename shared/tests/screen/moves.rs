//! Screens moved between states, and moves taken back.

use super::MINUTE;
use crate::shop::{DAY, HOUR, TestShop, wall};
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use lastpull_core::journal::JournalFact;
use lastpull_core::screen::{
    AgeWarning, BurnStep, ScreenFact, ScreenField, ScreenFilter, ScreenState, burn_steps, move_facts, next_states,
    screen_board, screen_card, step_done, tick_facts, undo_facts, undo_latest, undo_step_fact,
};
use lastpull_core::shop::Shop;
use lastpull_core::time::Millis;

#[test]
fn only_moves_that_every_selected_screen_can_make_are_offered() {
    let mut press = TestShop::new();
    let [clean, coated, ready] = ["A", "B", "C"].map(|label| press.screen(label));
    press.move_screen(1, coated, ScreenState::Coated).move_screen(2, ready, ScreenState::Ready);
    let shop = press.shop();
    assert_eq!(next_states(&shop, &[clean]), [ScreenState::Coated, ScreenState::Failed]);
    assert_eq!(next_states(&shop, &[coated, ready]), [ScreenState::ToReclaim, ScreenState::Failed]);
    assert_eq!(next_states(&shop, &[]), []);
    let facts = move_facts(&shop, &[coated, ready, coated], ScreenState::ToReclaim, Some("Moss"));
    assert_eq!(facts.len(), 2, "each once");
    press.record_at(3, clean, Fact::Deleted).record_all(facts);
    let shop = press.shop();
    assert!(shop.screens.iter().all(|(_, screen)| screen.state == ScreenState::ToReclaim));
    assert_eq!(shop.screens.get(ready).unwrap().log.last().unwrap().by.as_deref(), Some("Moss"));
    assert_eq!(move_facts(&shop, &[clean, ready], ScreenState::ToReclaim, None), [], "deleted, and there already");
}

#[test]
fn undoing_a_move_restores_the_screens_state_and_age() {
    let mut press = TestShop::new();
    let run = press.ten_minutes(None);
    let [coated, ready] = ["A", "B"].map(|label| press.screen(label));
    let art = vec![ScreenField::Run(Some(run)), ScreenField::Colour("red".into())];
    press.record(ready, Fact::Screen(ScreenFact::Set(art)));
    press.move_screen(0, coated, ScreenState::Coated).move_screen(0, ready, ScreenState::Exposed);
    press.record_at(10, coated, step_done(BurnStep::Dry, None));
    press.move_screen(DAY, ready, ScreenState::Ready);
    let before = press.shop();
    let cards = |shop: &Shop| [coated, ready].map(|id| shop.screens.live(id).unwrap().clone());

    for (day, ids, to) in [(2, vec![coated, ready], ScreenState::ToReclaim), (3, vec![ready], ScreenState::Clean)] {
        let shop = press.shop();
        let facts = move_facts(&shop, &ids, to, Some("Moss"));
        let back = undo_facts(&shop, &facts);
        let undone = back.iter().filter(|(_, fact)| matches!(fact, Fact::Screen(ScreenFact::Undone { .. })));
        assert_eq!(undone.count(), ids.len());
        press.record_at(day * DAY, SHOP, Fact::ShopNamed("Two Kettles".into())).record_all(facts);
        assert_ne!(cards(&press.shop()), cards(&before));
        press.record_at(day * DAY + 5, SHOP, Fact::ShopNamed("Two Kettles".into())).record_all(back);
        assert_eq!(cards(&press.shop()), cards(&before));
    }
    let board = screen_board(&press.shop(), &ScreenFilter::default(), wall(30 * DAY));
    assert_eq!(board.groups[0].rows[0].warning, Some(AgeWarning::Coated { days: 30, limit: 28 }), "its age counts on");
}

#[test]
fn the_latest_change_can_be_undone_much_later() {
    let mut press = TestShop::new();
    let screen = press.screen("A");
    assert!(undo_latest(press.shop().screens.live(screen).unwrap()).is_none(), "nothing happened to it yet");
    press.move_screen(5, screen, ScreenState::Coated).move_screen(DAY, screen, ScreenState::Exposed);
    let shop = press.shop();
    let (change, fact) = undo_latest(shop.screens.live(screen).unwrap()).unwrap();
    assert_eq!(change.at, wall(DAY));
    press.record_at(2 * DAY, screen, fact);
    let shop = press.shop();
    let screen = shop.screens.live(screen).unwrap();
    assert_eq!((screen.state, screen.since, screen.exposed), (ScreenState::Coated, wall(5), None));
    assert_eq!(screen.log.len(), 1);
}

#[test]
fn ticking_a_step_for_a_run_assigns_the_screen_and_reclaiming_clears_it() {
    let mut press = TestShop::new();
    let run = press.ten_minutes(None);
    let [a, b] = ["A", "B"].map(|label| press.screen(label));
    press.move_screen(1, a, ScreenState::Coated).move_screen(1, b, ScreenState::Coated);
    let facts = tick_facts(&press.shop(), &[a, b], BurnStep::Expose, Some(run), Some("Ines"));
    press.record_all(facts);
    let carries = |press: &TestShop, id| press.shop().screens.live(id).map(|screen| (screen.state, screen.run));
    assert_eq!(carries(&press, a), Some((ScreenState::Exposed, Some(run))));
    press.move_screen(2, b, ScreenState::ToReclaim);
    let facts = tick_facts(&press.shop(), &[b], BurnStep::Reclaim, Some(run), None);
    press.record_all(facts);
    assert_eq!(carries(&press, b), Some((ScreenState::Clean, None)));
}

#[test]
fn unticking_a_step_unticks_later_ones_and_keeps_the_age() {
    let mut press = TestShop::new();
    let screen = press.screen("A");
    for (at, step) in [(10, BurnStep::Coat), (20, BurnStep::Dry), (30, BurnStep::Expose), (40, BurnStep::WashDry)] {
        press.record_at(at, screen, step_done(step, None));
    }
    let back = |press: &TestShop, step| {
        let shop = press.shop();
        undo_step_fact(shop.screens.live(screen).unwrap(), step, wall(DAY))
    };
    let undone = |to, since: u64, dry: Option<u64>, exposed: Option<u64>| {
        Fact::Screen(ScreenFact::Undone { to, since: wall(since), dry: dry.map(wall), exposed: exposed.map(wall) })
    };
    assert_eq!(back(&press, BurnStep::WashDry), undone(ScreenState::Exposed, 30, None, Some(30)));
    assert_eq!(back(&press, BurnStep::Expose), undone(ScreenState::Coated, 10, Some(20), None));
    assert_eq!(back(&press, BurnStep::Dry), undone(ScreenState::Coated, 10, None, None));
    assert_eq!(back(&press, BurnStep::Coat), undone(ScreenState::Clean, 0, None, None));
    // Never ticked, but passed over: since when is not known.
    assert_eq!(back(&press, BurnStep::Reclaim), undone(ScreenState::ToReclaim, DAY, None, Some(30)));
    let fact = back(&press, BurnStep::Dry);
    press.record_at(DAY, screen, fact);
    let card = screen_card(&press.shop(), screen, wall(DAY)).unwrap();
    assert_eq!((card.next_step, card.row.since, card.screen.log.len()), (Some(BurnStep::Dry), wall(10), 1));
}

#[test]
fn each_ticked_step_shortens_the_rest_and_can_be_unticked() {
    let mut press = TestShop::new();
    press.set_step_times();
    let screen = press.screen("A");
    let left = |press: &TestShop, seconds: u64| -> u64 {
        let shop = press.shop();
        let steps = burn_steps(shop.screens.live(screen).unwrap(), &shop.screens.times, wall(seconds));
        steps.iter().map(|step| step.left.whole_minutes()).sum()
    };
    assert_eq!(left(&press, 0), 110, "all but reclaiming");
    let mut expected = 110;
    for (at, step, time) in [
        (600, BurnStep::Coat, 10),
        (1_200, BurnStep::Dry, 60),
        (1_800, BurnStep::Expose, 5),
        (2_400, BurnStep::WashDry, 30),
        (3_000, BurnStep::Tape, 5),
    ] {
        let before = left(&press, at);
        press.record_at(at, screen, step_done(step, Some("Moss")));
        expected -= time;
        assert_eq!(left(&press, at), expected, "{step:?}");
        let done = screen_card(&press.shop(), screen, wall(at)).unwrap();
        let row = done.steps.iter().find(|row| row.step == step).unwrap();
        assert_eq!((row.at, row.by.as_deref()), (Some(wall(at)), Some("Moss")));
        // Taken back on the same day, it is to do again.
        let mut other = TestShop::new();
        other.set_step_times();
        other.screen("A");
        for (at, done) in [
            (600, BurnStep::Coat),
            (1_200, BurnStep::Dry),
            (1_800, BurnStep::Expose),
            (2_400, BurnStep::WashDry),
            (3_000, BurnStep::Tape),
        ] {
            if done <= step {
                other.record_at(at, screen, step_done(done, None));
            }
        }
        let back = undo_latest(other.shop().screens.live(screen).unwrap()).unwrap().1;
        assert!(back.in_bounds());
        other.record_at(at, screen, back);
        let undone = screen_card(&other.shop(), screen, wall(at)).unwrap();
        assert_eq!(undone.next_step, Some(step));
        assert!(left(&other, at) >= before, "{step:?}");
    }
    assert_eq!(screen_card(&press.shop(), screen, wall(3_000)).unwrap().next_step, None);
}

#[test]
fn drying_time_already_passed_counts_and_manual_steps_have_not_begun() {
    let mut press = TestShop::new();
    press.set_step_times();
    let screen = press.screen("A");
    press.move_screen(0, screen, ScreenState::Coated);
    let left = |press: &TestShop, seconds: u64| {
        let shop = press.shop();
        let rows = burn_steps(shop.screens.live(screen).unwrap(), &shop.screens.times, wall(seconds));
        rows.iter().map(|row| row.left).sum::<Millis>().whole_minutes()
    };
    assert_eq!(left(&press, 0), 100);
    assert_eq!(left(&press, 45 * MINUTE), 55);
    assert_eq!(left(&press, 5 * HOUR), 40, "dry, but not exposed by itself");
}

#[test]
fn the_log_of_a_screen_keeps_its_latest_changes_only() {
    let mut press = TestShop::new();
    let screen = press.screen("A");
    for round in 0..30 {
        press.move_screen(round * 2, screen, ScreenState::Coated).move_screen(
            round * 2 + 1,
            screen,
            ScreenState::Clean,
        );
    }
    let card = screen_card(&press.shop(), screen, wall(100)).unwrap();
    assert_eq!(card.screen.log.len(), 24);
    assert_eq!(card.screen.log.last().unwrap().at, wall(59));
}
