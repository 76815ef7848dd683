//! Screens that follow their run onto the press and off it.

use crate::shop::TestShop;
use lastpull_core::facts::Fact;
use lastpull_core::screen::{
    ScreenState, facts_on_end, facts_on_finish, facts_on_start, move_facts, not_ready, off_press, should_keep_ready,
};

#[test]
fn screens_follow_their_run_onto_the_press_and_off_it() {
    let mut press = TestShop::new();
    let run = press.ten_minutes(None);
    let [a, b, c] = ["A", "B", "C"].map(|label| press.screen(label));
    press.name_screens(run, "A, B, X").move_screen(1, a, ScreenState::Ready).move_screen(2, c, ScreenState::Ready);
    let facts = facts_on_start(&press.shop(), run, Some("Ines"));
    press.start_at(10, run).record_all(facts);
    let state = |press: &TestShop, id| press.shop().screens.get(id).unwrap().state;
    assert_eq!([a, b, c].map(|id| state(&press, id)), [ScreenState::OnPress, ScreenState::OnPress, ScreenState::Ready]);
    assert_eq!(press.shop().screens.get(a).unwrap().run, Some(run));
    assert_eq!(facts_on_start(&press.shop(), run, None), [], "said already");

    assert!(should_keep_ready(&press.shop(), run), "pieces are left");
    press.pulls(run, 20, 30, 10);
    assert!(!should_keep_ready(&press.shop(), run));
    let other = press.ten_minutes(None);
    press.name_screens(other, "b").end_at(400, run);
    let facts = facts_on_end(&press.shop(), run, false, None);
    press.record_all(facts);
    assert_eq!(state(&press, a), ScreenState::ToReclaim);
    assert_eq!(state(&press, b), ScreenState::Ready, "another run wants it");

    let off = off_press(&press.shop(), run).unwrap();
    assert_eq!((off.screens, off.labels.as_str(), off.kept), (vec![a], "A", false), "the other is not ours to let go");
    let facts = move_facts(&press.shop(), &[a], ScreenState::Ready, None);
    press.record_all(facts);
    assert!(off_press(&press.shop(), run).unwrap().kept);
    assert_eq!(off_press(&press.shop(), other), None, "it was never on the press");
}

#[test]
fn finishing_a_job_takes_its_screens_off_the_press() {
    let mut press = TestShop::new();
    let run = press.ten_minutes(None);
    let screen = press.screen("A");
    press.name_screens(run, "A").move_screen(1, screen, ScreenState::Ready);
    let facts = facts_on_start(&press.shop(), run, None);
    press.start_at(10, run).record_all(facts);
    let job = press.shop().job_of(run).unwrap().0;
    let facts = facts_on_finish(&press.shop(), job, None);
    press.record_all(facts).record(job, Fact::JobFinished);
    assert_eq!(press.shop().screens.get(screen).unwrap().state, ScreenState::ToReclaim);
    assert_eq!(facts_on_finish(&press.shop(), job, None), []);
}

#[test]
fn a_run_says_which_of_its_screens_cannot_print_yet() {
    let mut press = TestShop::new();
    let run = press.ten_minutes(None);
    press.name_screens(run, "A, B, Z");
    assert_eq!(not_ready(&press.shop(), run), None, "the shop keeps no list");
    let [a, b] = ["A", "B"].map(|label| press.screen(label));
    press.move_screen(1, a, ScreenState::Ready).move_screen(2, b, ScreenState::Coated);
    assert_eq!(not_ready(&press.shop(), run), Some(vec!["B".to_owned()]));
    press.move_screen(3, b, ScreenState::OnPress);
    assert_eq!(not_ready(&press.shop(), run), Some(vec![]));
}
