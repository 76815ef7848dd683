use super::*;
use crate::facts::{Entry, Fact, Flash, JobField, Journal, LotField, MisprintCause, RunField};
use crate::facts::{Location, Size};
use crate::journal::{Checkpoint, Stamp};
use crate::shop::Shop;
use crate::time::wall;
use crate::units::Seconds;
use proptest::prelude::*;
use proptest::sample::select;

/// Facts about a few ids, which are of jobs, lots and runs alike: a file may say that.
fn any_fact() -> impl Strategy<Value = (Uuid, Fact)> {
    let id = || (0x10..0x16_u128).prop_map(Uuid::from_u128);
    let flash = select(vec![None, Some(Flash { seconds: Seconds::new(4.0), distance: None })]);
    let fact = prop_oneof![
        4 => Just(Fact::Pulled { pieces: 1, size: Some(Size::M) }),
        1 => Just(Fact::Pulled { pieces: -1, size: Some(Size::M) }),
        1 => any::<bool>().prop_map(|was_counted| {
            Fact::Misprinted { pieces: 1, size: None, cause: MisprintCause::Smudge, was_counted }
        }),
        2 => Just(Fact::RunStarted),
        3 => Just(Fact::RunEnded),
        1 => Just(Fact::Deleted),
        1 => Just(Fact::Restored),
        2 => Just(Fact::JobFinished),
        1 => Just(Fact::JobReopened),
        1 => select(vec!["", " ", "Choir", "Gym"]).prop_map(|name| Fact::JobSet(vec![JobField::Client(name.into())])),
        2 => select(vec!["", "Tee", "TEE ", "Tote"]).prop_map(|name| Fact::LotSet(vec![LotField::Garment(name.into())])),
        2 => id().prop_map(|job| Fact::LotSet(vec![LotField::Job(job)])),
        2 => select(vec![Fabric::Cotton, Fabric::Nylon]).prop_map(|fabric| Fact::LotSet(vec![LotField::Fabric(fabric)])),
        3 => id().prop_map(|lot| Fact::RunSet(vec![RunField::Lot(lot)])),
        2 => (select(vec![Location::FullFront, Location::Pocket]), 1..3_u8, flash).prop_map(|(location, hits, flash)| {
            Fact::RunSet(vec![RunField::Location(location), RunField::Hits(hits), RunField::Flash(flash)])
        }),
    ];
    (id(), fact)
}

fn entries(facts: Vec<(u64, (Uuid, Fact))>) -> Vec<Entry> {
    let number = |(seq, (at, (subject, fact))): (usize, (u64, (Uuid, Fact)))| {
        let stamp = Stamp { wall: wall(seq as u64), counter: 0 };
        Entry { device: Uuid::from_u128(1), seq: seq as u64 + 1, stamp, at: wall(at * 1_000), subject, fact }
    };
    facts.into_iter().enumerate().map(number).collect()
}

/// The links as everything in the shop says.
fn from_all(shop: &Shop) -> Links {
    let mut links = Links::default();
    for (id, job) in shop.jobs.iter() {
        links.job_changed(*id, LinkedJob::default(), LinkedJob::of(job));
    }
    for (id, lot) in shop.lots.iter() {
        links.lot_changed(*id, LinkedLot::default(), LinkedLot::of(lot), &Table::default());
    }
    for (id, run) in shop.runs.iter() {
        links.run_changed(*id, LinkedRun::default(), LinkedRun::of(run), &shop.lots);
    }
    links
}

/// What is kept of all kinds, the oldest first.
fn rows<K: Copy + PartialEq>(kinds: &NewestOfKinds<K>) -> Vec<((WallTime, Uuid), K)> {
    let mut rows: Vec<_> = kinds.iter().flat_map(|(kind, kept)| kept.iter().map(move |row| (row, kind))).collect();
    rows.sort_unstable_by_key(|(row, _)| *row);
    rows
}

/// Links whose lists are all in one order, whatever happened first.
fn in_order(links: &Links) -> impl PartialEq + std::fmt::Debug + use<> {
    let sorted = |groups: &Groups| {
        let row = |(id, ids): (&Uuid, &Vec<Uuid>)| {
            let mut ids = ids.clone();
            ids.sort_unstable();
            (*id, ids)
        };
        groups.iter().map(row).collect::<Vec<_>>()
    };
    (
        [sorted(&links.lots_of_job), sorted(&links.runs_of_lot)],
        [links.open_jobs.clone(), links.on_press.clone()],
        [links.finished_jobs.clone(), links.new_lots.clone(), links.recent_runs.clone()],
        (rows(&links.ended_runs), rows(&links.runs_by_place)),
        (links.lots_of_garment.clone(), links.clients.clone()),
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn kept_at_each_fact_they_say_what_going_through_everything_says(
        facts in prop::collection::vec((0..50_u64, any_fact()), 1..80),
        reopened in 0..80_usize,
    ) {
        let entries = entries(facts);
        let whole = Shop::fold(&Journal::of(entries.clone()).unwrap());
        prop_assert_eq!(in_order(&whole.links), in_order(&from_all(&whole)));
        let (before, after) = entries.split_at(reopened.min(entries.len()));
        let mut shop = Shop::default();
        prop_assert!(shop.apply_all(before));
        let mut shop = Checkpoint::of(&shop).shop().unwrap();
        prop_assert!(shop.apply_all(after));
        prop_assert_eq!(&shop.links, &whole.links);
    }
}
