//! How much heat a fabric withstands.

use super::{cotton_at_340, dryer, f, heat, measured, measured_with, of_run, over, seconds, sheet};
use crate::shop::{TestShop, wall};
use lastpull_core::facts::RunField;
use lastpull_core::heat::{
    HeatCaveat, HeatFact, HeatStatus, LimitKind, LimitName, LimitOrigin, LimitState, SensorMethod, fabric_limit,
    fabric_limits, limits_while_entering,
};
use lastpull_core::ids::SHOP;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::Flash;
use lastpull_core::shop::Shop;

/// 265 °F and 280 °F: an ink maker's bulletin, and a trade magazine's glossary, both opened
/// (`cure_common_practice.csv`). Of two published figures the lower is the default.
#[test]
fn each_default_limit_has_a_source_or_says_that_it_has_none() {
    let table = include_str!("../data/cure_common_practice.csv");
    let opened = |what: &str, degrees: &str| {
        table.lines().any(|row| row.starts_with(what) && row.contains(degrees) && row.contains(",opened,"))
    };
    assert!(opened("polyester: disperse dye starts to move", ",265,"));
    assert!(opened("polyester: dye migration", ",280,"));
    assert!(opened("synthetics: choose an ink curing at or below", ",300,"));
    for limit in fabric_limits(&Shop::default()) {
        let degrees = limit.temperature.fahrenheit().round();
        match limit.origin {
            LimitOrigin::MakersBulletin => assert!((degrees - 265.0).abs() < 0.1),
            LimitOrigin::DistributorsPage => assert!((degrees - 300.0).abs() < 0.1),
            LimitOrigin::CommonPractice => {
                assert!(matches!(limit.fabric, Fabric::Cotton | Fabric::Canvas));
            }
            LimitOrigin::IfPolyester => assert_eq!((limit.fabric, degrees), (Fabric::Canvas, 265.0)),
            LimitOrigin::OurOwn => assert!(degrees <= 300.0, "the most cautious stands in"),
            other => panic!("{other:?} is no default"),
        }
        let second = limit.also_published.map(|(t, origin)| (t.fahrenheit().round() as i32, origin));
        let conflict = limit.origin == LimitOrigin::MakersBulletin;
        assert_eq!(second, conflict.then_some((280, LimitOrigin::TradeGlossary)));
    }
    assert_eq!(fabric_limit(&Shop::default(), Fabric::Cotton, LimitKind::DyeMigration), None);
}

#[test]
fn the_shops_own_limit_wins_is_marked_as_raised_and_can_be_removed() {
    let (mut press, _) = TestShop::with_run(&[(Size::M, 1)]);
    let kind = LimitKind::DyeMigration;
    let set = |press: &mut TestShop, temperature| {
        let note = "blocker under the ink".to_string();
        heat(press, SHOP, HeatFact::FabricLimit { fabric: Fabric::Polyester, kind, temperature, note });
    };
    set(&mut press, Some(f(280.0)));
    let limit = fabric_limit(&press.shop(), Fabric::Polyester, kind).unwrap();
    assert_eq!(
        (limit.origin, limit.is_raised(), limit.note.as_str()),
        (LimitOrigin::Shop, true, "blocker under the ink")
    );
    assert_eq!(limit.instead_of, Some((f(265.0), LimitOrigin::MakersBulletin)));
    set(&mut press, Some(f(250.0)));
    assert!(!fabric_limit(&press.shop(), Fabric::Polyester, kind).unwrap().is_raised());
    set(&mut press, None);
    assert_eq!(fabric_limit(&press.shop(), Fabric::Polyester, kind).unwrap().origin, LimitOrigin::MakersBulletin);
}

#[test]
fn an_ink_that_cures_above_the_fabrics_limit_is_a_conflict() {
    let mut press = TestShop::new();
    let run = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    sheet(&mut press, 320.0, 90.0);
    let conflict = of_run(&press, run).conflict.unwrap();
    assert_eq!((conflict.cure, conflict.limit.name), (f(320.0), LimitName::DyeMigration));
    sheet(&mut press, 260.0, 90.0);
    assert_eq!(of_run(&press, run).conflict, None);
}

#[test]
fn the_highest_temperature_of_the_ink_is_a_limit_too() {
    let (mut press, run, tunnel) = cotton_at_340();
    sheet(&mut press, 320.0, 90.0);
    measured(&mut press, tunnel, 340.0, 350.0);
    let passed: Vec<_> = of_run(&press, run).exceeded_limits().map(|finding| (finding.name, finding.origin)).collect();
    assert_eq!(passed, [(LimitName::InkHighest, LimitOrigin::InkSheet)]);
}

#[test]
fn a_flash_on_polyester_gets_a_warning() {
    let mut press = TestShop::new();
    let run = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    press.set_up(run, vec![RunField::Flash(Some(Flash { seconds: seconds(7.0), distance: None }))]);
    assert!(of_run(&press, run).caveats.contains(&HeatCaveat::FlashHeatsToo));
}

/// Bags of polyester canvas exist. Which one it is nobody entered, so the limit is shown as unknown and holds nothing.
#[test]
fn the_dye_limit_of_canvas_is_unknown_until_the_shop_sets_its_own() {
    let mut press = TestShop::new();
    let run = press.order("Totes", None, Fabric::Canvas, &[(Size::One, 3)]);
    for (setting, state) in [(240.0, LimitState::Clear), (265.0, LimitState::Unknown), (320.0, LimitState::Unknown)] {
        press.set_up(run, vec![RunField::Dryer(Some(f(setting)))]);
        let heat = of_run(&press, run);
        let dye = heat.limits.iter().find(|limit| limit.name == LimitName::DyeMigration).unwrap();
        assert_eq!((dye.limit, dye.origin, dye.state), (f(265.0), LimitOrigin::IfPolyester, state), "{setting}");
        assert_eq!(heat.caveats.contains(&HeatCaveat::CanvasMayBePolyester), state == LimitState::Unknown);
        assert_ne!(over(&press, run, 10).status(), HeatStatus::SetUpTooHot);
    }
    let (kind, note) = (LimitKind::DyeMigration, "our bags are polyester".to_string());
    let own = HeatFact::FabricLimit { fabric: Fabric::Canvas, kind, temperature: Some(f(265.0)), note };
    heat(&mut press, SHOP, own);
    assert_eq!(over(&press, run, 10).status(), HeatStatus::SetUpTooHot);
    assert!(!of_run(&press, run).caveats.contains(&HeatCaveat::CanvasMayBePolyester));
}

/// 265 and 300 °F: an ink maker's bulletin, and a garment distributor's page (`cure_common_practice.csv`).
#[test]
fn a_setting_too_hot_for_the_fabric_is_found_while_it_is_entered() {
    let mut press = TestShop::new();
    let found = |press: &TestShop, fabric_run, ink: &str, setting| {
        let shop = press.shop();
        let lot = shop.run(fabric_run).unwrap().lot.unwrap();
        limits_while_entering(&shop, lot, None, ink, f(setting), wall(0))
            .into_iter()
            .map(|limit| (limit.name, limit.limit, limit.state))
            .collect::<Vec<_>>()
    };
    let dye = (LimitName::DyeMigration, f(265.0), LimitState::Exceeded);
    let scorch = (LimitName::Scorch, f(300.0), LimitState::Exceeded);
    let jerseys = press.order("Jerseys", None, Fabric::Polyester, &[(Size::M, 3)]);
    assert_eq!(found(&press, jerseys, "Brick", 320.0), [dye, scorch]);
    assert_eq!(found(&press, jerseys, "Brick", 265.0), [dye]);
    assert_eq!(found(&press, jerseys, "Brick", 264.0), []);
    let tees = press.order("Tees", None, Fabric::Cotton, &[(Size::M, 3)]);
    assert_eq!(found(&press, tees, "Brick", 320.0), []);
    let totes = press.order("Totes", None, Fabric::Canvas, &[(Size::One, 3)]);
    assert_eq!(found(&press, totes, "Brick", 320.0), [(LimitName::DyeMigration, f(265.0), LimitState::Unknown)]);
    // The ink's sheet ends at 350 °F; an infrared reading clears nothing, a probe counts.
    sheet(&mut press, 320.0, 90.0);
    assert_eq!(found(&press, tees, "brick", 355.0), [(LimitName::InkHighest, f(350.0), LimitState::Exceeded)]);
    let tunnel = dryer(&mut press, "Tunnel");
    measured_with(&mut press, tunnel, 270.0, 250.0, SensorMethod::Infrared);
    assert_eq!(found(&press, jerseys, "Other", 270.0), [dye]);
    measured(&mut press, tunnel, 270.0, 250.0);
    assert_eq!(found(&press, jerseys, "Other", 270.0), []);
    measured(&mut press, tunnel, 260.0, 268.0);
    assert_eq!(found(&press, jerseys, "Other", 260.0), [dye], "eight degrees hotter than set");
}
