//! The ink bench: recipes in both conventions, weigh-ins and over-pours, corrections, approvals, stock.
//! Grams are checked by hand or against `ink_recipe_by_weight.csv`; limits and thresholds are our own.

use super::view;
use crate::shop::{Published, g, published};
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    BatchSize, InkFact, PotField, PotStage, PourForm, PourStep, ReadBy, ReadingForm, Repair, approve_facts, make_again,
    pot_card, pot_state, recipe_card, repair_facts, save_pot, weigh_in,
};
use lastpull_core::units::{Grams, Units};
use uuid::Uuid;

#[test]
fn a_recipe_is_made_matched_approved_and_made_again_to_the_gram() {
    let Published { mut press, yellow, white, clear, blue, recipe, first } = published();
    let pot = press.pot(Some(first), 500.0);
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Capacity(Some(g(600.0))), PotField::Tare(Some(g(48.0)))]));

    press.pour(pot, yellow, 100.0, PourStep::WeighIn);
    let now = view(&press, pot);
    assert_eq!(now.rows[now.now.unwrap()].name, "Tinting white");
    assert_eq!(now.on_scale, g(148.0));
    assert_eq!(now.rows[1].scale_target, Some(g(298.0)));

    // Six grams too much of the white, read off the scale with the pot on it.
    let form = PourForm { component: Some(white), grams: "304".into(), total: true, ..PourForm::default() };
    let fact = form.check(&press.shop(), pot, PourStep::WeighIn, Some("Ines"), Units::METRIC).unwrap();
    press.ink_event(fact);
    let over = view(&press, pot).over.unwrap();
    assert_eq!((over.component, over.by), (white, g(6.0)));
    assert_eq!(over.scale_rest.total, g(520.0));
    let weighing = weigh_in(&press.shop(), pot).unwrap();
    let mut ids = 0x9000;
    let mut id = || {
        ids += 1;
        Uuid::from_u128(ids)
    };
    let facts = repair_facts(&press.shop(), pot, &weighing, Repair::ScaleRest, None, &mut id);
    press.record_all(facts);
    let now = view(&press, pot);
    assert!(now.over.is_none() && !now.done);
    assert_eq!((now.rows[0].step.to_go(), now.rows[2].step.to_go()), (g(4.0), g(260.0)));
    press.pour(pot, yellow, 4.0, PourStep::WeighIn);
    press.pour(pot, clear, 260.0, PourStep::WeighIn);
    assert!(view(&press, pot).done);
    let state = pot_state(&press.shop(), pot);
    assert_eq!((state.holds, state.changes, state.contents.total()), (Some(first), 0, g(520.0)));

    // Two corrections, each with its why.
    for (grams, why) in [(2.6, "a touch of blue"), (1.3, "a little more")] {
        let form = PourForm {
            component: Some(blue),
            grams: grams.to_string(),
            note: why.into(),
            reading: ReadingForm { l: "52".into(), a: "41".into(), b: "30.5".into(), by: ReadBy::Instrument },
            ..PourForm::default()
        };
        press.ink_event(form.check(&press.shop(), pot, PourStep::Correction, None, Units::METRIC).unwrap());
    }
    let card = pot_card(&press.shop(), pot).unwrap();
    assert_eq!((card.label.holds.revision.as_ref().unwrap().number, card.label.holds.changes), (1, 2));
    assert_eq!(card.stage, PotStage::Mixed);

    press.ink_event(InkFact::Matched { pot, reading: None, by: None });
    assert_eq!(pot_card(&press.shop(), pot).unwrap().stage, PotStage::Matched);
    let facts = approve_facts(&press.shop(), pot, "", "Harbour Choir", Some("Moss"), &mut id);
    assert_eq!(facts.len(), 2, "the pot is no revision as written, so it becomes one");
    press.record_all(facts);

    // By hand, from what was poured.
    let poured: [(Subject, f64); 4] = [(yellow, 104.0), (white, 156.0), (clear, 260.0), (blue, 2.6 + 1.3)];
    let all: f64 = poured.iter().map(|(_, grams)| grams).sum();
    let shop = press.shop();
    let again = make_again(&shop, recipe, None, BatchSize::Whole(g(750.0))).unwrap();
    assert_eq!(again.revision.number, 2);
    assert_eq!(again.approval.as_ref().unwrap().client, "Harbour Choir");
    assert!(again.approved.is_none() && again.newer.is_empty());
    assert_eq!(again.rows.len(), 4);
    for ((component, grams), row) in poured.iter().zip(&again.rows) {
        let by_hand = grams / all * 750.0;
        assert_eq!(row.part.component, *component);
        assert!((row.exact.grams() - by_hand).abs() <= 0.0011, "{row:?} {by_hand}");
        assert!((row.grams.grams() - by_hand).abs() <= 0.0511, "{row:?} {by_hand}");
    }
    assert_eq!(again.rows.iter().map(|row| row.exact).sum::<Grams>(), g(750.0));

    // A revision that nobody said yes to does not step in its place.
    let later = save_pot(&shop, pot, recipe, "warmer", None).unwrap();
    press.ink_event(later);
    let again = make_again(&press.shop(), recipe, None, BatchSize::Whole(g(750.0))).unwrap();
    assert_eq!(again.revision.number, 2);
    assert_eq!(again.newer.iter().map(|name| name.number).collect::<Vec<_>>(), [3]);
    let third = again.newer[0].id;
    let chosen = make_again(&press.shop(), recipe, Some(third), BatchSize::Whole(g(750.0))).unwrap();
    assert!(chosen.approval.is_none());
    assert_eq!(chosen.approved.unwrap().revision.number, 2);
    let card = recipe_card(&press.shop(), recipe).unwrap();
    assert!(card.newer_unapproved);
    let ancestry: Vec<_> =
        card.revisions.iter().map(|row| (row.name.number, row.parent.as_ref().map(|name| name.number))).collect();
    assert_eq!(ancestry, [(3, Some(2)), (2, Some(1)), (1, None)]);
}
