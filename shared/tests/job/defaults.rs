//! What a new run and a new lot start from.

use super::dryer;
use crate::shop::TestShop;
use lastpull_core::colour::Colour;
use lastpull_core::facts::{Fact, LotField, RunField};
use lastpull_core::ids::LotId;
use lastpull_core::job::{Fabric, Size, fabric_of_garment, garment_names, new_run, suggested_lot, suggested_run};
use lastpull_core::run::Location;
use lastpull_core::units::Seconds;
use uuid::Uuid;

/// A run on a new lot of this fabric, with its dryer setting, and the lot.
fn printed(press: &mut TestShop, fabric: Fabric, location: Location, fahrenheit: f64) -> LotId {
    let job = press.job("Tour tees", None);
    let lot = press.lot(job, fabric, &[(Size::M, 3)]);
    let run = press.run(lot);
    press.set_up(run, vec![RunField::Location(location), dryer(fahrenheit)]);
    lot
}

/// The dryer, in °F, that a new full front on a new lot of this fabric starts from.
fn suggested(press: &mut TestShop, fabric: Fabric) -> Option<f64> {
    let job = press.job("New", None);
    let lot = press.lot(job, fabric, &[(Size::M, 3)]);
    let run = suggested_run(&press.shop(), lot, Location::FullFront)?.clone();
    run.set_up.dryer.map(|dryer| dryer.fahrenheit().round())
}

#[test]
fn a_new_run_starts_from_the_latest_at_its_location_on_its_fabric() {
    let mut press = TestShop::new();
    printed(&mut press, Fabric::Polyester, Location::FullFront, 255.0);
    printed(&mut press, Fabric::Polyester, Location::FullFront, 260.0);
    let last = printed(&mut press, Fabric::Polyester, Location::FullBack, 270.0);
    printed(&mut press, Fabric::Cotton, Location::FullFront, 320.0);
    assert_eq!(suggested(&mut press, Fabric::Polyester), Some(260.0));
    let gone = press.shop().runs_of(last)[0].0;
    press.record(gone, Fact::Deleted);
    assert_eq!(suggested_run(&press.shop(), last, Location::FullBack).unwrap().location, Location::FullFront);
}

#[test]
fn polyester_starts_from_polyester_and_never_from_a_cotton_dryer() {
    let mut press = TestShop::new();
    printed(&mut press, Fabric::Cotton, Location::FullFront, 320.0);
    for fabric in [Fabric::Polyester, Fabric::Blend, Fabric::TriBlend, Fabric::Nylon] {
        assert_eq!(suggested(&mut press, fabric), None, "{fabric:?}");
    }
    printed(&mut press, Fabric::Polyester, Location::LeftChest, 265.0);
    printed(&mut press, Fabric::Cotton, Location::FullFront, 325.0);
    assert_eq!(suggested(&mut press, Fabric::Polyester), Some(265.0));
    assert_eq!(suggested(&mut press, Fabric::Blend), None, "nor from another fabric's");
}

#[test]
fn defaults_at_a_location_come_from_a_fabric_of_the_same_heat_limit() {
    let mut press = TestShop::new();
    printed(&mut press, Fabric::Polyester, Location::FullFront, 260.0);
    assert_eq!(suggested(&mut press, Fabric::Cotton), None);
    printed(&mut press, Fabric::Cotton, Location::FullFront, 320.0);
    assert_eq!(suggested(&mut press, Fabric::Canvas), Some(320.0));
}

/// A lot of this garment and fabric.
fn ordered(press: &mut TestShop, job: Uuid, garment: &str, fabric: Fabric) -> LotId {
    let lot = press.lot(job, fabric, &[(Size::M, 1)]);
    press.record(lot, Fact::LotSet(vec![LotField::Garment(garment.into())]));
    lot
}

#[test]
fn a_new_lot_starts_from_the_jobs_last_and_never_from_another_clients() {
    let mut press = TestShop::new();
    let [mine, other] = ["Mine", "Other"].map(|title| press.job(title, None));
    let tee = ordered(&mut press, mine, "tee", Fabric::Cotton);
    ordered(&mut press, other, "jersey", Fabric::Polyester);
    assert_eq!(suggested_lot(&press.shop(), mine).unwrap().garment, "tee");
    press.record(tee, Fact::Deleted);
    assert_eq!(suggested_lot(&press.shop(), mine), None);
}

#[test]
fn a_garment_ordered_before_names_its_fabric_by_its_latest_order() {
    let mut press = TestShop::new();
    let job = press.job("Tees", None);
    ordered(&mut press, job, "Heavy tee", Fabric::Cotton);
    ordered(&mut press, job, "Race shirt", Fabric::Polyester);
    let last = ordered(&mut press, job, "heavy tee ", Fabric::Blend);
    let shop = press.shop();
    assert_eq!(fabric_of_garment(&shop, " HEAVY TEE"), Some(Fabric::Blend));
    assert_eq!(fabric_of_garment(&shop, "Race shirt"), Some(Fabric::Polyester));
    assert_eq!((fabric_of_garment(&shop, "Tote"), fabric_of_garment(&shop, " ")), (None, None));
    assert_eq!(garment_names(&shop), ["heavy tee", "Race shirt"]);
    press.record(last, Fact::Deleted);
    assert_eq!(fabric_of_garment(&press.shop(), "Heavy tee"), Some(Fabric::Cotton));
}

#[test]
fn a_second_lot_has_its_jobs_ink_and_guess_another_job_only_the_set_up() {
    let mut press = TestShop::new();
    let job = press.job("Tour", None);
    let tees = press.lot(job, Fabric::Cotton, &[(Size::M, 3)]);
    let run = press.run(tees);
    press.guess(run, 25.0).set_up(
        run,
        vec![
            RunField::Ink("Violet".into()),
            RunField::InkColour(Colour::WHITE),
            RunField::Location(Location::FullFront),
            dryer(320.0),
        ],
    );
    let totes = press.lot(job, Fabric::Canvas, &[(Size::One, 3)]);
    let other = press.job("Other", None);
    let elsewhere = press.lot(other, Fabric::Cotton, &[(Size::M, 3)]);
    let shop = press.shop();
    let second = new_run(&shop, totes, Location::FullFront);
    assert_eq!((second.run.ink.as_str(), second.run.ink_colour), ("Violet", Some(Colour::WHITE)));
    assert_eq!((second.run.guess, second.set_up_from), (Some(Seconds::new(25.0)), Some(run)));
    let third = new_run(&shop, elsewhere, Location::FullFront);
    assert_eq!((third.run.ink.as_str(), third.run.ink_colour, third.run.guess), ("", None, None));
    assert_eq!((third.run.set_up.dryer, third.set_up_from), (second.run.set_up.dryer, Some(run)));
    let back = new_run(&shop, totes, Location::FullBack);
    assert_eq!((back.run.ink.as_str(), back.run.location), ("", Location::FullBack));
}
