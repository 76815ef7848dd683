//! What forms and pages ask of all that a shop ever had, found as by going through all of it: in any history, also when
//! more of a kind were deleted than the lists of the latest hold.

use crate::shop::PHONE;
use lastpull_core::facts::{Entry, Fact, JobField, LotField, RunField};
use lastpull_core::failure::{FailureFact, FailureField, failures_of_screen};
use lastpull_core::heat::{DueReason, HeatFact, TestField, TestKind, TestResult, ink_key, test_log, test_status};
use lastpull_core::ids::Subject;
use lastpull_core::ink::{BatchSize, BatchSizeForm, InkFact, NewPot, Part, PotField, Share};
use lastpull_core::job::{Fabric, client_names, fabric_of_garment, new_run};
use lastpull_core::journal::{Checkpoint, Stamp};
use lastpull_core::run::{Location, Run};
use lastpull_core::shop::Shop;
use lastpull_core::time::WallTime;
use lastpull_core::units::{Grams, Units};
use proptest::prelude::*;
use proptest::sample::select;
use std::collections::BTreeSet;
use uuid::Uuid;

const GARMENTS: [&str; 6] = ["Tee", " tee", "TEE", "οδος", "οδοσ", ""];
const FABRICS: [Fabric; 3] = [Fabric::Cotton, Fabric::Canvas, Fabric::Polyester];
const LOCATIONS: [Location; 2] = [Location::FullFront, Location::Pocket];
const INKS: [&str; 3] = ["Moss", "mo ss", "White"];

/// What the ids are of: a hundred for each.
const JOB: u128 = 0x100;
const LOT: u128 = 0x200;
const RUN: u128 = 0x300;
const FAILURE: u128 = 0x400;
const SCREEN: u128 = 0x500;
const POT: u128 = 0x600;
const REVISION: u128 = 0x700;
const RECIPE: u128 = 0x800;
const TEST: u128 = 0x900;

fn id(of: u128, many: u128) -> impl Strategy<Value = Uuid> {
    (of..of + many).prop_map(Uuid::from_u128)
}

fn any_ink_fact() -> impl Strategy<Value = (Uuid, Fact)> {
    let grams = || (1..9_i64).prop_map(|grams| Grams::from_milligrams(grams * 1_000));
    let size = (grams(), any::<bool>())
        .prop_map(|(grams, ink)| if ink { BatchSize::Ink(grams) } else { BatchSize::Whole(grams) });
    let saved = |(recipe, component): (Uuid, Uuid)| {
        let parts = vec![Part { component, share: Share::WHOLE, on_top: false }];
        let (number, parent, pot, note, by) = (1, None, None, String::new(), None);
        InkFact::RevisionSaved { recipe, number, parts, parent, pot, note, by }
    };
    let pot =
        (id(REVISION, 2), prop::option::of(size), prop::option::of(grams())).prop_map(|(revision, size, capacity)| {
            InkFact::PotSet(vec![
                PotField::Revision(Some(revision)),
                PotField::Size(size),
                PotField::Capacity(capacity),
            ])
        });
    prop_oneof![
        6 => (id(POT, 30), pot).prop_map(|(pot, fact)| (pot, Fact::Ink(fact))),
        1 => (id(REVISION, 2), (id(RECIPE, 2), id(RECIPE, 2)).prop_map(saved))
            .prop_map(|(revision, fact)| (revision, Fact::Ink(fact))),
    ]
}

fn any_fact() -> impl Strategy<Value = (Uuid, Fact)> {
    let job = select(vec!["", " ", "Choir", "Gym"]).prop_map(|name| Fact::JobSet(vec![JobField::Client(name.into())]));
    let lot = (id(JOB, 3), select(GARMENTS.to_vec()), select(FABRICS.to_vec())).prop_map(|(job, garment, fabric)| {
        Fact::LotSet(vec![LotField::Job(job), LotField::Garment(garment.into()), LotField::Fabric(fabric)])
    });
    let run = (id(LOT, 30), select(LOCATIONS.to_vec()), select(INKS.to_vec())).prop_map(|(lot, location, ink)| {
        Fact::RunSet(vec![RunField::Lot(lot), RunField::Location(location), RunField::Ink(ink.into())])
    });
    let failure = (id(RUN, 3), prop::option::of(id(SCREEN, 2))).prop_map(|(run, screen)| {
        Fact::Failure(FailureFact::Set(vec![FailureField::Run(run), FailureField::Screen(screen)]))
    });
    let results = [TestResult::Waiting, TestResult::Pass, TestResult::Fail];
    let test = (
        select(INKS.to_vec()),
        select(FABRICS[1..].to_vec()),
        select(vec![TestKind::Wash, TestKind::Crock]),
        prop::option::of(select(results.to_vec())),
    );
    let test = test.prop_map(|(ink, fabric, kind, result)| {
        let fields = vec![TestField::Ink(ink.into()), TestField::Fabric(fabric), TestField::Kind(kind)];
        Fact::Heat(HeatFact::TestSet(fields.into_iter().chain(result.map(TestField::Result)).collect()))
    });
    let any_of = [(JOB, 9), (LOT, 30), (RUN, 30), (FAILURE, 9), (POT, 30), (REVISION, 2), (TEST, 30)];
    let anything = select(any_of.to_vec()).prop_flat_map(|(of, many)| id(of, many));
    let gone = prop_oneof![3 => Just(Fact::Deleted), 1 => Just(Fact::Restored)];
    prop_oneof![
        2 => (id(JOB, 9), job),
        4 => (id(LOT, 30), lot),
        4 => (id(RUN, 30), prop_oneof![3 => run, 1 => Just(Fact::RunStarted), 1 => Just(Fact::RunEnded)]),
        2 => (id(FAILURE, 9), failure),
        4 => any_ink_fact(),
        6 => (id(TEST, 30), test),
        6 => (anything, gone),
    ]
}

fn any_history() -> impl Strategy<Value = Vec<Entry>> {
    prop::collection::vec((0..40_u64, any_fact()), 1..400).prop_map(|facts| {
        let number = |(seq, (at, (subject, fact))): (usize, (u64, (Uuid, Fact)))| {
            let stamp = Stamp { wall: WallTime::from_unix_ms(seq as u64), counter: 0 };
            let at = WallTime::from_unix_ms(at * 1_000);
            Entry { device: PHONE, seq: seq as u64 + 1, stamp, at, subject, fact }
        };
        facts.into_iter().enumerate().map(number).collect()
    })
}

fn fabric_by_all(shop: &Shop, name: &str) -> Option<Fabric> {
    let key = |name: &str| name.trim().to_lowercase();
    let lots = (LOT..LOT + 30).map(Uuid::from_u128).filter_map(|id| Some((id, shop.lot(id)?)));
    let of_it = lots.filter(|(_, lot)| !lot.deleted && !key(name).is_empty() && key(&lot.garment) == key(name));
    of_it.max_by_key(|(id, lot)| (lot.created, *id)).map(|(_, lot)| lot.fabric)
}

fn suggested_by_all(shop: &Shop, lot: Subject, location: Location) -> Option<Subject> {
    let fabric = shop.lot(lot)?.fabric;
    let alike = |run: &Run| {
        let other = run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric);
        let both_stand_heat = !fabric.is_heat_sensitive() && other.is_some_and(|other| !other.is_heat_sensitive());
        match (other == Some(fabric), run.location == location) {
            (true, true) => 3,
            (true, false) => 2,
            (false, true) if both_stand_heat => 1,
            _ => 0,
        }
    };
    let last = |run: &Run| run.progress.last_activity().unwrap_or(run.created);
    let all = shop.runs().filter(|(_, run)| !run.deleted && alike(run) > 0);
    all.max_by_key(|(id, run)| (alike(run), last(run), *id)).map(|(id, _)| id)
}

fn size_by_all(shop: &Shop, recipe: Subject) -> Option<BatchSize> {
    let recipe_of = |revision: Option<Subject>| Some(shop.ink.revision(revision?)?.recipe);
    let pots = shop.ink.pots().filter(|(_, pot)| pot.size.is_some() && recipe_of(pot.revision) == Some(recipe));
    pots.max_by_key(|(id, pot)| (pot.created, *id)).and_then(|(_, pot)| pot.size)
}

/// Of each kind of test of a run's ink on its fabric: what passed last, whether it failed since, and what is under way.
type TestStory = Vec<(TestKind, Option<Subject>, bool, Option<Subject>)>;

fn story(shop: &Shop, run: Subject) -> Option<TestStory> {
    let failed = |why: &[DueReason]| why.contains(&DueReason::Failed);
    let kinds = test_status(shop, run)?.kinds;
    Some(kinds.iter().map(|due| (due.kind, due.passed.map(|test| test.id), failed(&due.why), due.waiting)).collect())
}

fn story_by_all(shop: &Shop, run: Subject) -> Option<TestStory> {
    let run = shop.run(run)?;
    let fabric = shop.lot(run.lot?)?.fabric;
    let mut tests = test_log(shop);
    tests.retain(|(_, test)| test.fabric == fabric && ink_key(&test.ink) == ink_key(&run.ink));
    let kinds = [TestKind::Wash, TestKind::Crock, TestKind::Stretch].into_iter();
    let kinds = kinds.filter(|kind| *kind == TestKind::Wash || tests.iter().any(|(_, test)| test.kind == *kind));
    let story = kinds.map(|kind| {
        let last = |result| tests.iter().find(|(_, test)| (test.kind, test.result) == (kind, result));
        let passed = last(TestResult::Pass);
        let failed = last(TestResult::Fail)
            .is_some_and(|(_, fail)| passed.is_none_or(|(_, pass)| fail.result_at > pass.result_at));
        (kind, passed.map(|(id, _)| *id), failed, last(TestResult::Waiting).map(|(id, _)| *id))
    });
    Some(story.collect())
}

fn assert_found(shop: &Shop) -> Result<(), TestCaseError> {
    let named = |client: &String| !client.trim().is_empty();
    let clients: BTreeSet<_> = shop.jobs().filter(|(_, job)| !job.deleted).map(|(_, job)| job.client.clone()).collect();
    prop_assert_eq!(client_names(shop), clients.into_iter().filter(named).collect::<Vec<_>>());
    for name in GARMENTS.into_iter().chain(["Tote"]) {
        prop_assert_eq!(fabric_of_garment(shop, name), fabric_by_all(shop, name), "{}", name);
    }
    for (lot, location) in (LOT..LOT + 30).flat_map(|lot| LOCATIONS.map(|location| (Uuid::from_u128(lot), location))) {
        prop_assert_eq!(new_run(shop, lot, location).set_up_from, suggested_by_all(shop, lot, location));
    }
    for screen in [SCREEN, SCREEN + 1].map(Uuid::from_u128) {
        let all = shop.failures.iter().filter(|(_, failure)| failure.screen == Some(screen));
        let mut all: Vec<_> = all.map(|(id, failure)| (failure.at, id)).collect();
        all.sort_unstable_by(|one, other| other.cmp(one));
        let found = failures_of_screen(shop, screen, WallTime::MAX).into_iter().map(|row| (row.at, row.id));
        prop_assert_eq!(found.collect::<Vec<_>>(), all);
    }
    let vessels = shop.ink.pots().filter(|(_, pot)| pot.capacity.is_some());
    let last = vessels.max_by_key(|(id, pot)| (pot.created, *id)).and_then(|(_, pot)| pot.capacity);
    prop_assert_eq!(NewPot::by_eye(shop).vessel.capacity, last);
    for recipe in [RECIPE, RECIPE + 1].map(Uuid::from_u128) {
        let (grams, of_ink) = match size_by_all(shop, recipe) {
            Some(BatchSize::Whole(grams)) => (grams.text(Units::METRIC), false),
            Some(BatchSize::Ink(grams)) => (grams.text(Units::METRIC), true),
            None => (String::new(), false),
        };
        let form = BatchSizeForm::of(shop, recipe, Units::METRIC);
        prop_assert_eq!((form.grams, form.of_ink), (grams, of_ink));
    }
    for run in (RUN..RUN + 30).map(Uuid::from_u128) {
        prop_assert_eq!(story(shop, run), story_by_all(shop, run));
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn the_lists_of_the_latest_find_what_going_through_everything_finds(
        entries in any_history(),
        cut in any::<prop::sample::Index>(),
    ) {
        let (before, after) = entries.split_at(cut.index(entries.len()));
        let mut whole = Shop::default();
        prop_assert!(whole.apply_all(&entries));
        assert_found(&whole)?;
        let mut first = Shop::default();
        prop_assert!(first.apply_all(before));
        let mut opened = Checkpoint::of(&first).shop().unwrap();
        prop_assert!(opened.apply_all(after));
        assert_found(&opened)?;
        prop_assert_eq!(Checkpoint::of(&opened), Checkpoint::of(&whole));
    }
}
