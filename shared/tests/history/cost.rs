//! What opening, counting and drawing read of a shop, in rows: as many in one of two thousand runs as in one of six
//! thousand.

use super::page_answers::{of_a_pot_form, of_the_day, of_the_press};
use super::years::Years;
use lastpull_core::facts::{Entry, Fact, RunField};
use lastpull_core::failure::{FailureFact, FailureField};
use lastpull_core::heat::{HeatFact, TestField, TestResult, tests_due};
use lastpull_core::ink::{InkFact, PotField, PourStep, ink_shelf, stock_left};
use lastpull_core::job::{Size, client_names, fabric_of_garment, garment_names, job_card, job_row, new_run};
use lastpull_core::journal::Checkpoint;
use lastpull_core::run::{Location, StopCause};
use lastpull_core::screen::screen_card;
use lastpull_core::shop::Shop;
use lastpull_core::units::Grams;
use std::collections::BTreeMap;
use uuid::Uuid;

/// A name for something done, and the number of rows that the shop had read or changed since it was opened.
type Costs = BTreeMap<&'static str, usize>;

fn opened(years: &Years) -> Shop {
    let mut shop = Shop::default();
    assert!(shop.apply_all(&years.entries));
    Checkpoint::of(&shop).shop().unwrap()
}

fn costs(jobs: usize) -> Costs {
    let mut years = Years::new(jobs, 7);
    let (run, lot, job, clock) = (years.on_press, years.lot, years.job, years.clock());
    let (recipe, revision, screen) = (years.recipes[0], years.revisions[0], years.screens[0]);
    let (component, pot, grams) = (years.components[0], Uuid::from_u128(8), Grams::from_grams(20.0));
    let first_job = years.entries.iter().find(|entry| matches!(entry.fact, Fact::JobSet(_))).unwrap().subject;
    let is_pour = |entry: &&Entry| matches!(entry.fact, Fact::Ink(InkFact::Poured { .. }));
    let first_pour = years.entries.iter().find(is_pour).unwrap().subject;
    let mut costs = Costs::new();
    let fresh = opened(&years);
    let mut note = |name, shop: &Shop| costs.insert(name, shop.rows_in_memory());
    note("opening", &fresh);
    let drawn = |draw: &dyn Fn(&Shop)| {
        let shop = fresh.clone();
        draw(&shop);
        shop
    };
    note("the day", &drawn(&|shop| drop(of_the_day(shop, clock))));
    note("the press", &drawn(&|shop| drop(of_the_press(shop, run, clock))));
    note("a row of the list of jobs", &drawn(&|shop| drop(job_row(shop, clock, job))));
    note("a job", &drawn(&|shop| drop(job_card(shop, job))));
    note("a new run", &drawn(&|shop| drop(new_run(shop, lot, Location::FullFront))));
    note("garments", &drawn(&|shop| drop((garment_names(shop), fabric_of_garment(shop, "Tee 1")))));
    note("a garment that nobody ordered", &drawn(&|shop| assert!(fabric_of_garment(shop, "Tote").is_none())));
    note("clients", &drawn(&|shop| assert_eq!(client_names(shop).len(), 40)));
    note("a new run where nobody printed", &drawn(&|shop| drop(new_run(shop, lot, Location::Pocket))));
    note("a screen", &drawn(&|shop| assert_eq!(screen_card(shop, screen, clock.now).unwrap().failures.len(), 3)));
    note("the form of a batch", &drawn(&|shop| drop(of_a_pot_form(shop, recipe))));
    note("a new pot", &drawn(&|shop| drop(of_a_pot_form(shop, revision))));
    note("the ink shelf", &drawn(&|shop| drop(ink_shelf(shop))));
    note("what is left of a component", &drawn(&|shop| assert!(stock_left(shop, component).is_some())));
    note("tests that are due", &drawn(&|shop| assert!(!tests_due(shop).is_empty())));
    for (name, subject, fact) in [
        ("a piece", run, Fact::Pulled { pieces: 1, size: Some(Size::M) }),
        ("a stop", run, Fact::Stopped(StopCause::Ink)),
        ("a failure", Uuid::from_u128(7), Fact::Failure(FailureFact::Set(vec![FailureField::Run(run)]))),
        ("a run set up", run, Fact::RunSet(vec![RunField::Ink("Moss".into())])),
        ("the end of a run", run, Fact::RunEnded),
        ("the end of a job", job, Fact::JobFinished),
        ("a deleted job", job, Fact::Deleted),
        ("a job of long ago finished again", first_job, Fact::JobFinished),
        ("a pot", Uuid::from_u128(7), Fact::Ink(InkFact::PotSet(vec![PotField::Revision(Some(revision))]))),
        ("a pour of long ago undone", first_pour, Fact::Deleted),
        (
            "a pour",
            Uuid::from_u128(7),
            Fact::Ink(InkFact::Poured {
                pot,
                component,
                grams,
                step: PourStep::WeighIn,
                note: String::new(),
                reading: None,
                by: None,
            }),
        ),
        (
            "a test",
            Uuid::from_u128(7),
            Fact::Heat(HeatFact::TestSet(vec![TestField::Ink("Moss".into()), TestField::Result(TestResult::Pass)])),
        ),
    ] {
        let entry: Entry = years.next(1, subject, fact);
        let mut shop = fresh.clone();
        assert!(shop.apply_all(&[entry]));
        note(name, &shop);
    }
    costs
}

#[test]
fn what_is_read_and_changed_does_not_grow_with_the_history() {
    // Both are so many that the same kinds of runs are the latest.
    let (short, long) = (costs(720), costs(2_040));
    assert_eq!(short, long);
    assert_eq!(short["opening"], 0);
    assert!(short["a piece"] < 10 && short["the end of a job"] < 40, "{short:?}");
    assert!(short["a pot"] < 10 && short["a test"] < 10 && short["a pour"] < 10, "{short:?}");
    assert!(short["a pour of long ago undone"] < 10, "{short:?}");
    assert_eq!(short["what is left of a component"], 1);
    assert!(short["a garment that nobody ordered"] == 0 && short["clients"] == 40, "{short:?}");
    assert!(short["the press"] < 200 && short["the day"] < 300, "{short:?}");
}
