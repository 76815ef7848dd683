//! What the screen room's own screens lay on top of exposures and bath: batches that take their screens
//! along, what can be picked, the room's air, the figures on the way in.

use super::{MINUTE, RUN, two_in};
use crate::shop::{HOUR, TestShop, minutes, near, wall};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{
    BatchOutForm, BatchTimeKind, ScreenFact, ScreenState, bath_view, delete_batch, take_out, waiting_screens,
};
use lastpull_core::shop::Shop;
use lastpull_core::units::NumberProblem;

fn stands(shop: &Shop, screens: &[Subject]) -> Vec<ScreenState> {
    screens.iter().map(|id| shop.screens.live(*id).unwrap().state).collect()
}

#[test]
fn a_batch_moves_its_screens_into_the_bath_and_out_clean() {
    let (mut press, screens, batch, _) = two_in();
    assert_eq!(stands(&press.shop(), &screens), [ScreenState::InBath; 2]);
    assert_eq!(waiting_screens(&press.shop()), 0);
    let step = take_out(&press.shop(), batch, &BatchOutForm::default(), None).unwrap();
    press.record_all_at(11 * MINUTE, &step.facts);
    let shop = press.shop();
    assert_eq!(stands(&shop, &screens), [ScreenState::Clean; 2]);
    assert_eq!(shop.screens.live(screens[0]).unwrap().run, None);
    let done = bath_view(&shop, 0, wall(HOUR)).done;
    assert_eq!((done.len(), done[0].count), (1, 2));
    assert!(near(done[0].minutes.unwrap(), 5.0));
}

#[test]
fn undo_of_putting_in_returns_the_screens_to_the_queue() {
    let (mut press, screens, _, step) = two_in();
    press.record_all_at(2 * MINUTE, &step.undo);
    let shop = press.shop();
    assert_eq!(stands(&shop, &screens), [ScreenState::ToReclaim; 2]);
    assert!(bath_view(&shop, 0, wall(HOUR)).in_bath.is_empty());
}

#[test]
fn undo_of_taking_out_restores_the_batch_and_its_running_time() {
    let (mut press, screens, batch, _) = two_in();
    let step = take_out(&press.shop(), batch, &BatchOutForm::default(), None).unwrap();
    press.record_all_at(11 * MINUTE, &step.facts).record_all_at(12 * MINUTE, &step.undo);
    let shop = press.shop();
    assert_eq!(stands(&shop, &screens), [ScreenState::InBath; 2]);
    let screen = shop.screens.live(screens[1]).unwrap();
    assert_eq!((screen.run, screen.colour.as_str()), (Some(RUN), "Bone"));
    let view = bath_view(&shop, 0, wall(13 * MINUTE));
    assert_eq!((view.done.len(), view.in_bath[0].elapsed), (0, minutes(12)));
    assert_eq!(view.in_bath[0].screens, screens);
}

#[test]
fn a_screen_that_did_not_come_clean_waits_again_and_is_not_counted() {
    let (mut press, screens, batch, _) = two_in();
    let form = BatchOutForm { not_clean: vec![screens[1]], ..BatchOutForm::default() };
    let step = take_out(&press.shop(), batch, &form, None).unwrap();
    press.record_all_at(11 * MINUTE, &step.facts);
    let shop = press.shop();
    assert_eq!(stands(&shop, &screens), [ScreenState::Clean, ScreenState::ToReclaim]);
    assert_eq!(bath_view(&shop, 0, wall(HOUR)).done[0].count, 1);
    press.record_all_at(12 * MINUTE, &step.undo);
    assert_eq!(stands(&press.shop(), &screens), [ScreenState::InBath; 2]);
}

#[test]
fn a_batch_of_which_nothing_came_clean_is_left_in() {
    let (press, screens, batch, _) = two_in();
    let form = BatchOutForm { not_clean: screens.to_vec(), ..BatchOutForm::default() };
    let problems = take_out(&press.shop(), batch, &form, None).unwrap_err();
    assert_eq!(problems["count"], FormProblem::Number(NumberProblem::TooLow { least: 1.0 }));
}

#[test]
fn undo_of_a_batch_does_not_move_a_screen_that_has_moved_on() {
    let (mut press, screens, batch, _) = two_in();
    for state in [ScreenState::Clean, ScreenState::Coated] {
        press.record_at(5 * MINUTE, screens[0], Fact::Screen(ScreenFact::Moved { to: state, by: None }));
    }
    let step = take_out(&press.shop(), batch, &BatchOutForm::default(), None).unwrap();
    press.record_all_at(11 * MINUTE, &step.facts);
    assert_eq!(stands(&press.shop(), &screens), [ScreenState::Coated, ScreenState::Clean]);
}

#[test]
fn a_batch_put_in_by_mistake_can_be_deleted_and_restored() {
    let (mut press, screens, batch, _) = two_in();
    let step = delete_batch(&press.shop(), batch, None);
    press.record_all_at(3 * MINUTE, &step.facts);
    assert_eq!(stands(&press.shop(), &screens), [ScreenState::ToReclaim; 2]);
    press.record_all_at(4 * MINUTE, &step.undo);
    let shop = press.shop();
    assert_eq!(stands(&shop, &screens), [ScreenState::InBath; 2]);
    assert_eq!(bath_view(&shop, 0, wall(HOUR)).in_bath[0].id, batch);
}

#[test]
fn a_batch_can_be_recorded_afterwards_with_count_and_minutes() {
    let mut press = TestShop::new();
    let batch = press.id();
    assert!(take_out(&press.shop(), batch, &BatchOutForm::default(), None).is_err());
    let form =
        BatchOutForm { kind: BatchTimeKind::Whole, minutes: "20".into(), count: "4".into(), not_clean: Vec::new() };
    let step = take_out(&press.shop(), batch, &form, None).unwrap();
    press.record_all_at(MINUTE, &step.facts);
    assert!(near(bath_view(&press.shop(), 0, wall(HOUR)).done[0].minutes.unwrap(), 5.0));
    press.record_all_at(2 * MINUTE, &step.undo);
    assert!(bath_view(&press.shop(), 0, wall(HOUR)).done.is_empty());
}
