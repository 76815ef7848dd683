//! What a new run and a new lot start from.

use super::dryer;
use crate::shop::TestShop;
use lastpull_core::facts::{Fact, LotField, RunField};
use lastpull_core::ids::LotId;
use lastpull_core::job::{Fabric, Size, SizePieces, suggested_lot, suggested_run};
use lastpull_core::run::Location;

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
fn polyester_starts_from_polyester_elsewhere_and_never_from_a_cotton_dryer() {
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
fn defaults_at_the_same_location_come_from_a_fabric_with_the_same_heat_limit() {
    let mut press = TestShop::new();
    printed(&mut press, Fabric::Polyester, Location::FullFront, 260.0);
    assert_eq!(suggested(&mut press, Fabric::Cotton), None);
    printed(&mut press, Fabric::Cotton, Location::FullFront, 320.0);
    assert_eq!(suggested(&mut press, Fabric::Canvas), Some(320.0));
}

#[test]
fn a_new_lot_starts_from_the_jobs_last_or_else_the_shops_last() {
    let mut press = TestShop::new();
    let [mine, other] = ["Mine", "Other"].map(|title| press.job(title, None));
    let named = |press: &mut TestShop, job, garment: &str| {
        let lot = press.lot(job, Fabric::Cotton, &[]);
        let pieces = LotField::Pieces(vec![SizePieces { size: Size::M, pieces: 1 }]);
        press.record(lot, Fact::LotSet(vec![LotField::Garment(garment.into()), pieces]));
        lot
    };
    let tee = named(&mut press, mine, "tee");
    named(&mut press, other, "tote");
    assert_eq!(suggested_lot(&press.shop(), mine).unwrap().garment, "tee");
    press.record(tee, Fact::Deleted);
    assert_eq!(suggested_lot(&press.shop(), mine).unwrap().garment, "tote");
}
