//! The board of screens, and warnings of age.

use crate::shop::{DAY, TestShop, seconds, wall};
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use lastpull_core::screen::{AgeLimits, AgeWarning, ScreenFact, ScreenFilter, ScreenState, screen_board};

#[test]
fn the_board_groups_by_state_and_counts_what_a_filter_hides() {
    let mut press = TestShop::new();
    let run = press.ten_minutes(None);
    let [a2, a10, b1] = ["A2", "A10", "B1"].map(|label| press.screen(label));
    press.name_screens(run, "B1");
    press.move_screen(60, a10, ScreenState::Coated).move_screen(90, b1, ScreenState::Ready);
    let board = screen_board(&press.shop(), &ScreenFilter::default(), wall(100));
    let states: Vec<_> = board.groups.iter().map(|group| (group.state, group.count)).collect();
    assert_eq!(states, [(ScreenState::Clean, 1), (ScreenState::Coated, 1), (ScreenState::Ready, 1)]);
    assert_eq!((board.total, board.shown, board.warned), (3, 3, 0));
    let ready = &board.groups[2].rows[0];
    assert_eq!((ready.id, ready.age, ready.assigned[0].run), (b1, seconds(10), run));
    assert_eq!(ready.assigned[0].title, "Ten");

    let only = ScreenFilter { state: Some(ScreenState::Clean), ..ScreenFilter::default() };
    let board = screen_board(&press.shop(), &only, wall(100));
    assert_eq!((board.total, board.shown, board.groups.len()), (3, 1, 3));
    assert_eq!(board.groups[0].rows[0].id, a2);
    let search = ScreenFilter { search: "ten b1".into(), ..ScreenFilter::default() };
    assert_eq!(screen_board(&press.shop(), &search, wall(100)).shown, 1, "by its label and its job");
}

#[test]
fn coated_and_exposed_screens_get_a_warning_after_the_shops_days() {
    let mut press = TestShop::new();
    let [coated, exposed] = ["A", "B"].map(|label| press.screen(label));
    let limits = AgeLimits { coated: 3, exposed: 5 };
    press.record(SHOP, Fact::Screen(ScreenFact::AgeLimits(limits)));
    press.move_screen(0, coated, ScreenState::Coated).move_screen(0, exposed, ScreenState::Exposed);
    press.move_screen(DAY, exposed, ScreenState::Ready);
    let warnings = |seconds: u64| -> Vec<Option<AgeWarning>> {
        let board = screen_board(&press.shop(), &ScreenFilter::default(), wall(seconds));
        board.groups.iter().flat_map(|group| &group.rows).map(|row| row.warning).collect()
    };
    assert_eq!(warnings(3 * DAY - 1), [None, None]);
    assert_eq!(warnings(3 * DAY), [Some(AgeWarning::Coated { days: 3, limit: 3 }), None]);
    assert_eq!(warnings(5 * DAY)[1], Some(AgeWarning::Exposed { days: 5, limit: 5 }), "counted from its exposure");
    let filter = ScreenFilter { warned: true, ..ScreenFilter::default() };
    assert_eq!(screen_board(&press.shop(), &filter, wall(4 * DAY)).shown, 1);
}
