//! Several dryers, flash units, and deleted ones.

use super::{cotton_at_340, dryer, heat, of_run};
use crate::shop::TestShop;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{DryerChoice, HeatFact, HeaterField, HeaterKind};
use lastpull_core::job::Size;
use uuid::Uuid;

#[test]
fn the_chosen_dryer_is_used_and_a_deleted_one_is_not() {
    let (mut press, run, tunnel) = cotton_at_340();
    let small = dryer(&mut press, "Small");
    let used = |press: &TestShop| of_run(press, run).dryer.map(|used| (used.id, used.choice)).unwrap();
    assert_eq!(used(&press), (tunnel, DryerChoice::Assumed));
    heat(&mut press, run, HeatFact::DryerChosen(Some(small)));
    assert_eq!(used(&press), (small, DryerChoice::Chosen));
    press.record(small, Fact::Deleted);
    assert_eq!(used(&press), (tunnel, DryerChoice::Only));
    press.record(small, Fact::Restored);
    assert_eq!(used(&press), (small, DryerChoice::Chosen));
    heat(&mut press, run, HeatFact::DryerChosen(None));
    assert_eq!(used(&press), (tunnel, DryerChoice::Assumed));
}

#[test]
fn a_flash_unit_is_not_used_as_a_dryer() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 1)]);
    let id = press.id();
    let fields = vec![HeaterField::Kind(HeaterKind::Flash), HeaterField::Name("Flash".into())];
    heat(&mut press, id, HeatFact::HeaterSet(fields));
    assert_eq!(of_run(&press, run).dryer, None);
}

#[test]
fn a_dryer_deleted_before_its_first_fact_arrived_stays_deleted() {
    let (mut press, run) = TestShop::with_run(&[(Size::M, 1)]);
    let id = Uuid::from_u128(0xd0);
    press.record(id, Fact::Deleted);
    heat(&mut press, id, HeatFact::HeaterSet(vec![HeaterField::Name("Tunnel".into())]));
    assert_eq!(of_run(&press, run).dryer, None);
    press.record(id, Fact::Restored);
    assert_eq!(of_run(&press, run).dryer.unwrap().name, "Tunnel");
}
