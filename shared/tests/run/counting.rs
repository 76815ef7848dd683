//! The count: what was pulled, spoiled and taken back, by size and device, and what is left to pull.

use crate::shop::{PHONE, TABLET, TestShop, clock, seconds, wall};
use lastpull_core::facts::Fact;
use lastpull_core::job::{Size, job_card, job_list, job_row};
use lastpull_core::run::{MisprintCause, RunPhase, StopCause, UndoView, UnsavedFact, count_view, run_summary};
use lastpull_core::time::WallTime;

const M: Option<Size> = Some(Size::M);
const L: Option<Size> = Some(Size::L);

#[test]
fn pieces_are_counted_by_size_and_in_all() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3), (Size::L, 2)]);
    press.start_at(0, run).count_at(40, run, 3, M).count_at(80, run, 1, L);
    let count = press.count(run, 90);
    assert_eq!((count.good, count.planned, count.left, count.over), (4, 5, 1, 0));
    let rows: Vec<_> = count.sizes.iter().map(|row| (row.size, row.planned, row.good, row.left())).collect();
    assert_eq!(rows, [(M, 3, 3, 0), (L, 2, 1, 1)]);
    assert_eq!(count.next_size, L, "medium is full");
}

#[test]
fn counting_starts_with_the_smallest_size() {
    let (press, run) = TestShop::with_run(&[(Size::L, 2), (Size::YouthL, 1), (Size::M, 3)]);
    let count = press.count(run, 0);
    assert_eq!(count.next_size, Some(Size::YouthL));
    assert_eq!(count.phase, RunPhase::Waiting);
}

#[test]
fn pieces_past_the_order_are_over_and_none_are_left() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    press.count_at(40, run, 5, M);
    let count = press.count(run, 50);
    assert_eq!((count.good, count.left, count.over), (5, 0, 2));
    assert_eq!(count.next_size, M, "a clicker still has a size to count under");
}

#[test]
fn a_size_that_left_the_order_is_still_shown_with_what_was_counted() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    press.count_at(40, run, 2, L);
    let count = press.count(run, 50);
    let rows: Vec<_> = count.sizes.iter().map(|row| (row.size, row.planned, row.good)).collect();
    assert_eq!(rows, [(M, 3, 0), (L, 0, 2)]);
}

#[test]
fn two_mediums_too_many_do_not_make_up_for_two_larges_too_few() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 10), (Size::L, 10)]);
    press.count_at(40, run, 12, M).count_at(80, run, 8, L);
    let count = press.count(run, 90);
    assert_eq!((count.left, count.over), (2, 2));
    let rows: Vec<_> = count.sizes.iter().map(|row| (row.size, row.left(), row.over())).collect();
    assert_eq!(rows, [(M, 0, 2), (L, 2, 0)]);
    let shop = press.shop();
    assert_eq!((shop.pieces_left(run), shop.pieces_over(run)), (2, 2));
    let summary = run_summary(&shop, run);
    assert_eq!((summary.good, summary.planned), (20, 20));
    assert_eq!((summary.short, summary.over), (vec![(L, 2)], vec![(M, 2)]));
    let row = job_row(&shop, clock(90), job_list(&shop).open[0]).unwrap();
    assert_eq!((row.good, row.over, row.planned, row.complete), (18, 2, 20, false));
    let card = job_card(&shop, row.id).unwrap();
    assert_eq!((card.good, card.over, card.lots[0].runs[0].over), (18, 2, 2));
}

#[test]
fn pieces_over_in_one_size_do_not_count_towards_closing() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 6), (Size::L, 6)]);
    press.guess(run, 30.0).start_at(0, run).count_at(40, run, 11, M);
    let count = press.count(run, 50);
    assert_eq!((count.good, count.left, count.over), (11, 6, 5));
    assert!(press.pace(run, 50).by_closing.unwrap() <= 12);
}

#[test]
fn pieces_counted_without_a_size_are_over_only_beyond_the_whole_order() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    press.count_at(40, run, 2, None);
    assert_eq!((press.count(run, 50).over, press.shop().pieces_over(run)), (0, 0));
    press.count_at(60, run, 2, M);
    assert_eq!((press.count(run, 70).over, press.shop().pieces_over(run)), (1, 1));
}

#[test]
fn undo_removes_the_last_piece_and_then_the_one_before() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9), (Size::L, 9)]);
    press.count_at(40, run, 1, M).count_at(80, run, 5, L);
    assert_eq!(press.count(run, 80).undo, Some(UndoView::Pulled { pieces: 5, size: L }));
    press.count_at(85, run, -5, L);
    let count = press.count(run, 85);
    assert_eq!((count.good, count.undo), (1, Some(UndoView::Pulled { pieces: 1, size: M })));
    press.count_at(90, run, -1, M);
    let count = press.count(run, 90);
    assert_eq!((count.good, count.undo), (0, None));
}

#[test]
fn undo_on_one_device_never_removes_what_another_counted() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.count_at(40, run, 1, M);
    press.on(TABLET).count_at(50, run, 2, M);
    let undo = |press: &TestShop, device| count_view(&press.shop(), run, device, clock(60), &[]).undo;
    assert_eq!(undo(&press, PHONE), Some(UndoView::Pulled { pieces: 1, size: M }));
    assert_eq!(undo(&press, TABLET), Some(UndoView::Pulled { pieces: 2, size: M }));
    press.on(PHONE).count_at(60, run, -1, M);
    assert_eq!(undo(&press, PHONE), None);
    assert_eq!(undo(&press, TABLET), Some(UndoView::Pulled { pieces: 2, size: M }));
    assert_eq!(press.count(run, 60).good, 2);
}

#[test]
fn undo_goes_back_forty_actions() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 99)]);
    press.pulls(run, 10, 10, 41);
    for back in 0..40 {
        assert!(press.count(run, 500 + back).undo.is_some(), "{back}");
        press.count_at(500 + back, run, -1, M);
    }
    let count = press.count(run, 600);
    assert_eq!((count.good, count.undo), (1, None));
}

#[test]
fn removing_more_than_was_counted_shows_zero() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    press.pull_at(40, run).count_at(50, run, -2, M);
    let count = press.count(run, 60);
    assert_eq!((count.good, count.left, count.sizes[0].good), (0, 3, 0));
}

#[test]
fn a_misprint_of_a_counted_piece_leaves_one_more_to_pull() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 5)]);
    press.pulls(run, 40, 40, 3).misprint_at(170, run, 1, true);
    let count = press.count(run, 170);
    assert_eq!((count.good, count.left, count.misprints, count.sizes[0].misprints), (2, 3, 1, 1));
}

#[test]
fn a_misprint_of_a_piece_not_counted_leaves_the_count_alone() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 5)]);
    press.pulls(run, 40, 40, 3).misprint_at(160, run, 1, false);
    let count = press.count(run, 160);
    assert_eq!((count.good, count.left, count.misprints), (3, 2, 1));
}

#[test]
fn a_spoiled_piece_takes_its_time_on_the_press_whether_counted_or_not() {
    for was_counted in [true, false] {
        let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
        press.pulls(run, 0, 40, 3);
        if was_counted {
            press.pull_at(120, run);
        }
        press.misprint_at(120, run, 1, was_counted).pull_at(160, run);
        let shop = press.shop();
        let pace = shop.run(run).unwrap().progress.pace().unwrap();
        assert_eq!((pace.gaps, pace.pieces, pace.mean), (4, 4, 40.0), "counted: {was_counted}");
    }
}

#[test]
fn undo_of_a_misprint_restores_the_piece_only_if_it_was_counted() {
    for (was_counted, after, undone) in [(true, 2, 3), (false, 3, 3)] {
        let (mut press, run) = TestShop::with_run(&[(Size::M, 5)]);
        press.pulls(run, 40, 40, 3).misprint_at(160, run, 1, was_counted);
        let count = press.count(run, 160);
        let act = UndoView::Misprinted { pieces: 1, size: M, cause: MisprintCause::Smudge, was_counted };
        assert_eq!((count.good, count.undo), (after, Some(act)));
        press.misprint_at(165, run, -1, was_counted);
        let count = press.count(run, 165);
        assert_eq!((count.good, count.misprints), (undone, 0));
        assert_eq!(count.undo, Some(UndoView::Pulled { pieces: 1, size: M }));
    }
}

#[test]
fn the_summary_says_what_is_short_and_what_to_replace_by_size_and_cause() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 4), (Size::L, 2)]);
    let spoil = |pieces, size, cause, was_counted| Fact::Misprinted { pieces, size, cause, was_counted };
    press.start_at(0, run).count_at(40, run, 4, M).count_at(80, run, 2, L);
    press.record_at(90, run, spoil(1, M, MisprintCause::Pinhole, true));
    press.record_at(95, run, spoil(2, M, MisprintCause::Smudge, false));
    press.record_at(99, run, spoil(1, L, MisprintCause::Smudge, false)).end_at(200, run);
    let ended = run_summary(&press.shop(), run);
    assert_eq!((ended.good, ended.planned), (5, 6));
    assert_eq!(ended.short, [(M, 1)], "only the counted one left the count");
    assert_eq!(ended.replace, [(M, 3), (L, 1)], "every spoiled garment is a garment short");
    assert_eq!(ended.causes, [(MisprintCause::Pinhole, 1), (MisprintCause::Smudge, 3)]);
    assert_eq!(ended.span, Some(wall(0)..wall(200)));
}

#[test]
fn pieces_not_stored_yet_are_shown_as_counted_and_as_unsaved() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3), (Size::L, 2)]);
    press.count_at(40, run, 2, M);
    let other = press.id();
    let touch = |run, pieces, size| UnsavedFact { run, at: WallTime::EPOCH, fact: Fact::Pulled { pieces, size } };
    let pending = [touch(run, 1, M), touch(run, 1, L), touch(run, -1, L), touch(other, 4, M)];
    let count = count_view(&press.shop(), run, PHONE, clock(50), &pending);
    assert_eq!((count.good, count.unsaved, count.left), (3, 3, 2));
    assert_eq!(count.next_size, L, "the third medium is waiting to be stored");
}

#[test]
fn no_more_pieces_are_expected_by_closing_than_were_ordered() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 20)]);
    press.pulls(run, 0, 40, 10);
    // Hours before closing: all twenty.
    assert_eq!(press.pace(run, 370).by_closing, Some(20));
}

#[test]
fn removing_a_piece_does_not_start_the_press() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 20)]);
    press.pulls(run, 0, 40, 3).stop_at(90, run, StopCause::Ink).count_at(95, run, -1, M);
    let standing = press.count(run, 100).phase;
    assert_eq!(standing, RunPhase::Stopped { since: wall(90), cause: StopCause::Ink });
    press.end_at(200, run).count_at(210, run, -1, M);
    assert_eq!(press.count(run, 220).phase, RunPhase::Ended);
}

#[test]
fn a_misprint_found_after_the_end_does_not_put_the_run_back_on_the_press() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 3)]);
    press.pulls(run, 0, 40, 3).end_at(90, run).misprint_at(900, run, 1, true);
    let count = press.count(run, 1000);
    assert_eq!((count.left, count.phase, count.active), (1, RunPhase::Ended, seconds(90)));
}
