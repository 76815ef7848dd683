//! A shop folded at once, one opened from a checkpoint and one that was read in between answer alike; and what is found
//! through an index is what going through everything finds.

use super::page_answers::{of_a_thing, of_the_day, of_the_press, of_the_shop};
use super::years::Years;
use crate::journal::any_entries::any_entries;
use lastpull_core::facts::{Entry, Journal};
use lastpull_core::failure::failures_of;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{InkFact, ink_shelf, stock_left, stock_view};
use lastpull_core::job::{Job, JobList, job_list, job_texts};
use lastpull_core::journal::Checkpoint;
use lastpull_core::plan::done_today;
use lastpull_core::run::{Run, check_list};
use lastpull_core::shop::Shop;
use lastpull_core::time::{WallClock, WallTime};
use lastpull_core::units::Grams;
use proptest::prelude::*;
use proptest::sample::Index;
use std::collections::BTreeSet;

fn answers(shop: &Shop, ids: &BTreeSet<Subject>, clock: WallClock) -> Vec<String> {
    let things = ids.iter().flat_map(|id| [of_the_press(shop, *id, clock), of_a_thing(shop, *id, clock)].concat());
    [of_the_day(shop, clock), of_the_shop(shop, clock)].concat().into_iter().chain(things).collect()
}

fn subjects(entries: &[Entry]) -> BTreeSet<Subject> {
    entries.iter().map(|entry| entry.subject).collect()
}

fn reopened(shop: &Shop) -> Shop {
    Checkpoint::of(shop).shop().unwrap()
}

fn assert_alike(whole: &Shop, other: &Shop, ids: &BTreeSet<Subject>, clock: WallClock) -> Result<(), TestCaseError> {
    for (whole, other) in answers(whole, ids, clock).iter().zip(answers(other, ids, clock)) {
        prop_assert_eq!(whole, &other);
    }
    Ok(())
}

/// The other run that was last on the press before this one started, found by going through all of them.
fn previous(shop: &Shop, id: Subject) -> Option<Subject> {
    let went_on = |run: &Run, before: WallTime| {
        let again = run.progress.stops().iter().filter(|stop| stop.cause.is_none()).filter_map(|stop| stop.to);
        run.progress.started().into_iter().chain(again).filter(|at| *at < before).max()
    };
    let limit = shop.run(id).and_then(|run| went_on(run, WallTime::MAX)).unwrap_or(WallTime::MAX);
    let others = shop.runs().filter(|(other, run)| *other != id && !run.deleted);
    others.filter_map(|(other, run)| went_on(run, limit).map(|at| (at, other))).max().map(|(_, other)| other)
}

/// What is left of a component and when it was last weighed, found by going through its events.
fn stock(shop: &Shop, component: Subject) -> (Option<Grams>, Option<WallTime>) {
    let (mut left, mut counted) = (None::<Grams>, None);
    for (_, event) in shop.ink.events_of(component).into_iter().filter(|(_, event)| !event.deleted) {
        match &event.fact {
            InkFact::Counted { component: of, grams, .. } if *of == component => {
                (left, counted) = (Some(*grams), Some(event.at));
            }
            InkFact::Delivered { component: of, grams, .. } if *of == component => {
                left = Some(left.unwrap_or_default().saturating_add(*grams));
            }
            InkFact::Poured { component: of, grams, .. } if *of == component => {
                left = left.map(|left| left.saturating_sub(*grams));
            }
            _ => {}
        }
    }
    (left, counted)
}

/// The jobs with every word of a search, found by looking at each of them.
fn found(shop: &Shop, search: &str) -> JobList {
    let has = |job: &Job| {
        let text = format!("{} {} {}", job.title, job.client, job.notes).to_lowercase();
        search.split_whitespace().all(|word| text.contains(word))
    };
    let JobList { mut open, mut finished } = job_list(shop);
    for jobs in [&mut open, &mut finished] {
        jobs.retain(|id| shop.job(*id).is_some_and(has));
    }
    JobList { open, finished }
}

/// Asserts it of the shop and some of its things, by going through `all`. What was on the press before a run is compared
/// if no clock was ever set back.
fn assert_found_by_going_through_all(
    shop: &Shop,
    [some, all]: [&BTreeSet<Subject>; 2],
    clock: WallClock,
    clocks_right: bool,
) -> Result<(), TestCaseError> {
    let open: Vec<_> = shop.jobs().filter(|(_, job)| job.is_open()).collect();
    prop_assert_eq!(shop.open_jobs().collect::<Vec<_>>(), open);
    let printing = shop.runs().any(|(_, run)| !run.deleted && run.progress.is_on_press());
    prop_assert_eq!(shop.is_printing(), printing);
    let today = |at: WallTime| clock.work_day_of(at) == clock.work_day();
    let finished = shop.jobs().filter(|(_, job)| !job.deleted && job.finished.is_some_and(today)).count();
    prop_assert_eq!(done_today(shop, clock).jobs as usize, finished);
    let open_pots: BTreeSet<_> = shop.ink.pots().filter(|(_, pot)| pot.is_open()).map(|(id, _)| id).collect();
    prop_assert_eq!(ink_shelf(shop).pots.iter().map(|pot| pot.id).collect::<BTreeSet<_>>(), open_pots);
    let texts = job_texts(shop);
    for search in ["", " ", "a", "ñ e", "order 1", "4 cli order", "order order 29"] {
        prop_assert_eq!(texts.found(search), found(shop, search));
    }
    for row in stock_view(shop).rows {
        prop_assert_eq!((row.left, row.counted), stock(shop, row.component));
    }
    for id in some {
        prop_assert_eq!(stock_left(shop, *id), stock(shop, *id).0);
        let mut lots: Vec<_> = all.iter().filter_map(|lot| Some((*lot, shop.lot(*lot)?))).collect();
        lots.retain(|(_, lot)| lot.job == Some(*id) && !lot.deleted);
        lots.sort_by_key(|(id, lot)| (lot.rank, *id));
        prop_assert_eq!(shop.lots_of(*id), lots);
        let mut runs: Vec<_> = shop.runs().filter(|(_, run)| run.lot == Some(*id) && !run.deleted).collect();
        runs.sort_by_key(|(id, run)| (run.rank, *id));
        prop_assert_eq!(shop.runs_of(*id), runs);
        let mut failures: Vec<_> = shop.failures.iter().filter(|(_, failure)| failure.run == Some(*id)).collect();
        failures.sort_by_key(|(id, failure)| (failure.at, *id));
        let found: Vec<_> = failures_of(shop, *id, clock.now).into_iter().map(|row| row.id).collect();
        prop_assert_eq!(found, failures.into_iter().map(|(id, _)| id).collect::<Vec<_>>());
        if clocks_right && shop.run(*id).is_some() {
            prop_assert_eq!(check_list(shop, *id).previous, previous(shop, *id));
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn answers_are_the_same_from_a_folded_an_opened_and_a_read_shop(
        mut entries in any_entries(),
        clocks_right in any::<bool>(),
        cut in any::<Index>(),
        now in (0..4_000_000_u64).prop_map(WallTime::from_unix_ms),
    ) {
        if clocks_right {
            entries.iter_mut().for_each(|entry| entry.at = entry.stamp.wall);
        }
        let (ids, clock) = (subjects(&entries), WallClock::fixed(now, 60));
        let journal = Journal::of(entries).unwrap();
        let whole = Shop::fold(&journal);
        let ordered: Vec<Entry> = journal.in_order().into_iter().cloned().collect();
        let (before, after) = ordered.split_at(cut.index(ordered.len()));
        let mut first = Shop::default();
        prop_assert!(first.apply_all(before));
        let [mut unread, mut read] = [reopened(&first), reopened(&first)];
        answers(&read, &ids, clock);
        prop_assert!(unread.apply_all(after) && read.apply_all(after));
        assert_alike(&whole, &unread, &ids, clock)?;
        assert_alike(&whole, &read, &ids, clock)?;
        assert_alike(&whole, &reopened(&unread), &ids, clock)?;
        prop_assert_eq!(Checkpoint::of(&read), Checkpoint::of(&whole));
        assert_found_by_going_through_all(&whole, [&ids, &ids], clock, clocks_right)?;
    }
}

/// Six hundred jobs: more than the lists of the latest hold.
#[test]
fn answers_are_the_same_where_the_lists_of_the_latest_are_full() {
    let years = Years::new(600, 7);
    let (clock, ids) = (years.clock(), subjects(&years.entries));
    let few = ids.iter().step_by(97).copied().chain([years.on_press, years.job, years.lot]).collect();
    let mut whole = Shop::default();
    assert!(whole.apply_all(&years.entries));
    let (before, after) = years.entries.split_at(years.entries.len() - 200);
    let mut first = Shop::default();
    assert!(first.apply_all(before));
    let mut opened = reopened(&first);
    assert!(opened.apply_all(after));
    assert_alike(&whole, &opened, &few, clock).unwrap();
    assert_found_by_going_through_all(&whole, [&few, &ids], clock, true).unwrap();
    assert_eq!(Checkpoint::of(&opened), Checkpoint::of(&whole));
}
