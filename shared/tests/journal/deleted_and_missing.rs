//! Things deleted and restored, and files that hold only part of what happened.

use crate::shop::{PHONE, TABLET, TestShop, clock, wall};
use lastpull_core::facts::{Entry, Fact, Journal};
use lastpull_core::ids::RunId;
use lastpull_core::job::{Fabric, Size, job_card, job_list};
use lastpull_core::journal::Checkpoint;
use lastpull_core::plan::rail;
use lastpull_core::run::{PaceSource, check_list, count_view, forecast, run_summary};
use lastpull_core::shop::Shop;
use lastpull_core::time::Millis;
use uuid::Uuid;

/// One open run, three of nine pulled; its job and lot.
fn three_pulled() -> (TestShop, [Uuid; 3]) {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    press.guess(run, 60.0).pulls(run, 0, 40, 3).end_at(100, run);
    let shop = press.shop();
    let ids = [shop.job_of(run).unwrap().0, shop.run(run).unwrap().lot.unwrap(), run];
    (press, ids)
}

/// How many runs the rail, jobs the list and lots and runs the card show.
fn shown(press: &TestShop, job: Uuid) -> [usize; 4] {
    let shop = press.shop();
    let card = job_card(&shop, job);
    let lots = card.iter().flat_map(|card| &card.lots);
    let runs = lots.clone().map(|lot| lot.runs.len()).sum();
    [rail(&shop, clock(200)).runs.len(), job_list(&shop).open.len(), lots.count(), runs]
}

/// The entries about these subjects only, as a file with gaps holds them.
fn only(press: &TestShop, subjects: &[Uuid]) -> Vec<Entry> {
    press.entries().into_iter().filter(|entry| subjects.contains(&entry.subject)).collect()
}

fn fold(entries: Vec<Entry>) -> Shop {
    Shop::fold(&Journal::of(entries).unwrap())
}

#[test]
fn deleting_hides_a_thing_and_all_below_it_until_it_is_restored() {
    let (mut press, [job, lot, run]) = three_pulled();
    let before = press.shop();
    assert_eq!(shown(&press, job), [1, 1, 1, 1]);
    for (thing, left) in [(job, [0, 0, 0, 0]), (lot, [0, 1, 0, 0]), (run, [0, 1, 1, 0])] {
        press.record_at(200, thing, Fact::Deleted);
        assert_eq!(shown(&press, job), left);
        assert!(press.shop().job_of(run).is_none());
        press.record_at(200, thing, Fact::Restored);
        assert_eq!(shown(&press, job), [1, 1, 1, 1]);
    }
    let after = press.shop();
    assert_eq!((after.job(job), after.lot(lot), after.run(run)), (before.job(job), before.lot(lot), before.run(run)));
}

#[test]
fn what_is_counted_while_deleted_is_there_when_restored() {
    let (mut press, [job, _, run]) = three_pulled();
    press.record_at(200, job, Fact::Deleted);
    press.on(TABLET).pulls(run, 210, 40, 2);
    press.record_at(300, job, Fact::Restored);
    assert_eq!(press.rail(300).runs[0].good, 5);
}

#[test]
fn a_count_is_kept_and_hidden_until_its_lot_and_job_arrive() {
    let (press, [job, lot, run]) = three_pulled();
    let mut journal = Journal::of(only(&press, &[run])).unwrap();
    let early = Shop::fold(&journal);
    let count = count_view(&early, run, PHONE, clock(200), &[]);
    assert_eq!((count.good, count.planned, count.left, count.over), (3, 0, 0, 3));
    assert_eq!((rail(&early, clock(200)).runs.len(), run_summary(&early, run).good), (0, 3));
    journal.absorb(only(&press, &[lot])).unwrap();
    let count = count_view(&Shop::fold(&journal), run, PHONE, clock(200), &[]);
    assert_eq!((count.good, count.planned, count.left), (3, 9, 6));
    assert_eq!(rail(&Shop::fold(&journal), clock(200)).runs.len(), 0, "its job is still missing");
    journal.absorb(only(&press, &[job])).unwrap();
    assert_eq!(Checkpoint::of(&Shop::fold(&journal)), Checkpoint::of(&press.shop()));
    assert_eq!(rail(&Shop::fold(&journal), clock(200)).runs.len(), 1);
}

#[test]
fn pulls_without_the_runs_own_set_up_still_count() {
    let (press, [_, _, run]) = three_pulled();
    let pulls: Vec<Entry> =
        press.entries().into_iter().filter(|entry| matches!(entry.fact, Fact::Pulled { .. })).collect();
    let shop = fold(pulls);
    assert_eq!(shop.run(run).unwrap().progress.good(), 3);
    assert_eq!((shop.run(run).unwrap().lot, shop.pieces_left(run)), (None, 0));
    let asked: Vec<_> = check_list(&shop, run).rows().map(|row| row.item).collect();
    assert_eq!(asked.len(), 4, "passes, flash, ink and hits; no garment is known");
}

#[test]
fn a_deletion_that_arrives_before_what_it_deletes_still_deletes_it() {
    let (mut press, [job, lot, run]) = three_pulled();
    press.on(TABLET).record_at(200, lot, Fact::Deleted);
    let of_tablet = |entry: &Entry| entry.device == TABLET;
    let (tablet, phone): (Vec<_>, Vec<_>) = press.entries().into_iter().partition(of_tablet);
    let mut shop = Shop::default();
    assert!(shop.apply_all(&tablet));
    assert!(!shop.apply_all(&phone), "older than what was folded: fold again");
    let shop = fold([tablet, phone].concat());
    assert!(shop.lot(lot).unwrap().deleted && shop.job_of(run).is_none());
    assert!(job_card(&shop, job).unwrap().lots.is_empty());
}

#[test]
fn a_deletion_holds_against_a_phone_whose_clock_runs_ahead() {
    let (mut press, [job, lot, run]) = three_pulled();
    press.on(TABLET).record_at(200, lot, Fact::Deleted);
    // The phone's clock is two hours ahead: past what the tablet's follows.
    let mut entries = press.entries();
    for entry in entries.iter_mut().filter(|entry| entry.device == PHONE) {
        entry.stamp.wall += Millis::from_hours(2);
    }
    let shop = fold(entries);
    assert!(shop.job_of(run).is_none() && job_card(&shop, job).unwrap().lots.is_empty());
}

#[test]
fn a_job_finished_before_its_lot_arrives_still_ends_and_archives_its_run() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    let lot = press.shop().run(run).unwrap().lot.unwrap();
    press.pulls(run, 0, 40, 6).finish_at(300, run);
    let of_lot = |entry: &Entry| entry.subject == lot;
    let (late, early): (Vec<_>, Vec<_>) = press.entries().into_iter().partition(of_lot);
    let without = fold(early.clone());
    let progress = |shop: &Shop, run: RunId| shop.run(run).unwrap().progress.clone();
    assert_eq!((progress(&without, run).ended(), progress(&without, run).pulls().len()), (None, 6));
    let whole = fold([early, late].concat());
    assert_eq!((progress(&whole, run).ended(), progress(&whole, run).pulls().len()), (Some(wall(300)), 0));
    assert_eq!(progress(&whole, run).good(), 6);
}

#[test]
fn a_gap_in_one_phones_facts_does_not_affect_the_others() {
    let (mut press, [_, _, run]) = three_pulled();
    press.on(TABLET).pulls(run, 200, 40, 4).end_at(400, run);
    let mut journal = Journal::of(press.entries()).unwrap();
    assert_eq!(journal.gaps(), []);
    // The phone's second pull, its sixth fact after job, lot, run, guess and first pull, is missing.
    let (missing, rest): (Vec<_>, Vec<_>) =
        press.entries().into_iter().partition(|entry| entry.device == PHONE && entry.seq == 6);
    journal = Journal::of(rest).unwrap();
    assert_eq!(journal.gaps().iter().map(|gap| (gap.device, gap.first, gap.last)).collect::<Vec<_>>(), [(PHONE, 6, 6)]);
    assert_eq!(Shop::fold(&journal).run(run).unwrap().progress.good(), 6);
    journal.absorb(missing).unwrap();
    assert_eq!(Shop::fold(&journal).run(run).unwrap().progress.good(), 7);
}

#[test]
fn a_run_whose_lot_has_not_arrived_still_counts_as_history() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 9)]);
    let other = press.order("Other", None, Fabric::Cotton, &[(Size::M, 6)]);
    press.earlier_run(0, 40, other);
    let lot = press.shop().run(other).unwrap().lot.unwrap();
    let source = |shop: &Shop| forecast(shop, run, wall(300)).unwrap().basis.source;
    assert_eq!(source(&press.shop()), PaceSource::Alike { runs: 1 });
    let shop = fold(press.entries().into_iter().filter(|entry| entry.subject != lot).collect());
    assert_eq!(source(&shop), PaceSource::Other { runs: 1 }, "its fabric is not known");
}
