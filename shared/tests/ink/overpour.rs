//! What to do after pouring too much.

use super::view;
use crate::shop::{Published, g, published};
use lastpull_core::ink::{InkFact, PotField, PourStep, Repair, over_pour, pot_state, repair_facts, weigh_in};
use lastpull_core::units::Grams;
use uuid::Uuid;

#[test]
fn both_fixes_of_an_over_pour_are_computed_with_pot_and_stock() {
    let Published { mut press, yellow, white, clear, first, .. } = published();
    press.ink_event(InkFact::Counted { component: clear, grams: g(255.0), by: None });
    press.ink_event(InkFact::Counted { component: yellow, grams: g(900.0), by: None });
    let pot = press.pot(Some(first), 500.0);
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Capacity(Some(g(510.0)))]));
    press.pour(pot, yellow, 100.0, PourStep::WeighIn);
    press.pour(pot, white, 156.0, PourStep::WeighIn);
    let over = view(&press, pot).over.unwrap();
    // By hand: 156 g are 30 % of 520 g.
    let scaled = &over.scale_rest;
    assert_eq!((scaled.total, scaled.more, scaled.spills), (g(520.0), g(20.0), g(10.0)));
    assert_eq!(scaled.rows.iter().map(|row| row.to_pour).collect::<Vec<_>>(), [4.0, 0.0, 260.0].map(g));
    assert_eq!(scaled.rows.iter().map(|row| row.lacks).collect::<Vec<_>>(), [0.0, 0.0, 5.0].map(g));
    assert!(!scaled.is_possible() && scaled.off < 1e-9);
    let kept = &over.accept;
    assert_eq!((kept.total, kept.spills), (g(506.0), Grams::ZERO));
    assert!(kept.is_possible());
    assert!((kept.rows[1].percent - 156.0 / 506.0 * 100.0).abs() < 1e-9);
    assert!((kept.off - (156.0 / 506.0 * 100.0 - 30.0)).abs() < 1e-9);
    assert_eq!(view(&press, pot).now, None, "the choice comes first");

    let weighing = weigh_in(&press.shop(), pot).unwrap();
    let id = press.id();
    let facts = repair_facts(&press.shop(), pot, &weighing, Repair::Accept, Some("Ines"), || id);
    press.record_all(facts);
    let now = view(&press, pot);
    assert_eq!((now.now, now.undo), (Some(2), Some(id)));
    press.pour(pot, clear, 250.0, PourStep::WeighIn);
    let now = view(&press, pot);
    assert!(now.done && now.over.is_none());
    let state = pot_state(&press.shop(), pot);
    assert_eq!((state.holds, state.base, state.changes), (None, Some(first), 1));
    let weighing = weigh_in(&press.shop(), pot).unwrap();
    assert!(over_pour(&press.shop(), pot, &weighing).is_none());
    assert_eq!(repair_facts(&press.shop(), pot, &weighing, Repair::Accept, None, Uuid::nil), []);
}

#[test]
fn ink_missing_before_an_over_pour_does_not_block_the_fix() {
    let Published { mut press, yellow, clear, first, .. } = published();
    press.ink_event(InkFact::Counted { component: clear, grams: g(240.0), by: None });
    press.ink_event(InkFact::Counted { component: yellow, grams: g(900.0), by: None });
    let pot = press.pot(Some(first), 500.0);
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Capacity(Some(g(505.0)))]));
    press.pour(pot, yellow, 101.0, PourStep::WeighIn);
    let over = view(&press, pot).over.unwrap();
    // By hand: 250 g of the clear were to go in, of which 240 are there; scaled they are 252.5.
    let clear_row = |rows: &[lastpull_core::ink::RepairRow]| (rows[2].lacks, rows[2].lacks_more);
    assert_eq!(clear_row(&over.accept.rows), (g(10.0), Grams::ZERO));
    assert!(over.accept.is_possible());
    assert_eq!(clear_row(&over.scale_rest.rows), (g(12.5), g(2.5)));
    assert!(!over.scale_rest.is_possible() && !over.scale_rest.spills.is_positive());
    // A pot that is too small anyway is no reason against what makes it no fuller.
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Capacity(Some(g(450.0)))]));
    let over = view(&press, pot).over.unwrap();
    assert_eq!((over.accept.spills, over.accept.spills_more), (g(51.0), g(1.0)));
}
