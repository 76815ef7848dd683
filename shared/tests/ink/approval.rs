//! Which revision a pot is, and which one the client approved.

use crate::shop::{Published, TABLET, TestShop, g, published};
use lastpull_core::facts::Fact;
use lastpull_core::ids::{SHOP, Subject};
use lastpull_core::ink::{
    BatchSize, InkFact, Part, PotField, PotStage, PourStep, RecipeField, SaveAs, Share, approvals_of, approve_facts,
    best_revision, make_again, pot_card, pot_label, pot_state, recipe_named, revision_fact, revision_name,
    revisions_of, save_as, save_facts, top_up, weigh_in_view,
};
use uuid::Uuid;

#[test]
fn an_approval_is_for_one_revision_and_a_later_change_is_not_approved() {
    let Published { mut press, yellow, white, clear, blue, recipe, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    assert_eq!(approve_facts(&press.shop(), pot, "", "Moss", None, Uuid::nil), []);
    for (component, grams) in [(yellow, 100.0), (white, 150.0), (clear, 250.0)] {
        press.pour(pot, component, grams, PourStep::WeighIn);
    }
    let mut ids = 0x9000;
    let mut id = || {
        ids += 1;
        Uuid::from_u128(ids)
    };
    let facts = approve_facts(&press.shop(), pot, "", " Harbour Choir ", None, &mut id);
    assert_eq!(facts.len(), 1, "it is the first revision as written");
    let yes = facts[0].0;
    press.record_all(facts);
    assert_eq!(best_revision(&press.shop(), recipe), Some(first));
    let label = pot_label(&press.shop(), pot).unwrap();
    assert_eq!(label.approval.unwrap().client, "Harbour Choir");
    press.pour(pot, blue, 1.0, PourStep::Correction);
    let label = pot_label(&press.shop(), pot).unwrap();
    assert!(label.approval.is_none() && label.holds.changes == 1);
    assert_eq!(approvals_of(&press.shop(), recipe).len(), 1, "the yes to the revision stands");
    press.record(yes, Fact::Deleted);
    assert!(approvals_of(&press.shop(), recipe).is_empty());

    // A pot mixed by eye becomes a recipe of its own with the client's yes.
    let loose = press.pot(None, 0.0);
    press.record_ink(loose, InkFact::PotSet(vec![PotField::Name("Violet by eye".into())]));
    press.pour(loose, blue, 30.0, PourStep::Correction);
    press.pour(loose, white, 10.0, PourStep::Correction);
    let facts = approve_facts(&press.shop(), loose, "", "Moss", None, &mut id);
    press.record_all(facts);
    let shop = press.shop();
    let (violet, _) = recipe_named(&shop, "VIOLET by eye").unwrap();
    let again = make_again(&shop, violet, None, BatchSize::Whole(g(100.0))).unwrap();
    assert_eq!(again.rows.iter().map(|row| row.grams).collect::<Vec<_>>(), [75.0, 25.0].map(g));
    assert_eq!(pot_state(&shop, loose).holds, Some(again.revision.id));
}

#[test]
fn approving_a_half_weighed_pot_approves_its_actual_contents() {
    let Published { mut press, yellow, white, first, recipe, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    press.pour(pot, yellow, 100.0, PourStep::WeighIn);
    press.pour(pot, white, 100.0, PourStep::WeighIn);
    let card = pot_card(&press.shop(), pot).unwrap();
    assert!(card.unfinished && !card.as_written);
    let mut ids = 0x9100;
    let mut id = || {
        ids += 1;
        Uuid::from_u128(ids)
    };
    let facts = approve_facts(&press.shop(), pot, "", "Moss", Some("Ines"), &mut id);
    press.record_all(facts);
    let shop = press.shop();
    let again = make_again(&shop, recipe, None, BatchSize::Whole(g(100.0))).unwrap();
    assert_ne!(again.revision.id, first);
    assert_eq!(again.rows.iter().map(|row| row.grams).collect::<Vec<_>>(), [50.0, 50.0].map(g));
    assert_eq!(save_facts(&shop, Uuid::from_u128(0x77), "", "", None, &mut id), []);
    let label = pot_label(&shop, pot).unwrap();
    assert_eq!(label.by.as_deref(), Some("Ines"), "the first who is named");
}

/// What is in the pot decides what it is called, not the order in which it was recorded.
#[test]
fn a_pot_holds_its_revision_only_while_its_contents_match_it() {
    let Published { mut press, yellow, white, clear, blue, recipe, first } = published();
    let mut ids = 0x9200;
    let mut id = || {
        ids += 1;
        Uuid::from_u128(ids)
    };
    let called = |press: &TestShop, pot: Subject| {
        let holds = pot_label(&press.shop(), pot).unwrap().holds;
        (holds.revision.map_or(0, |revision| revision.number), holds.changes, holds.as_written)
    };

    // Half of it is in, and poured out in part.
    let pot = press.pot(Some(first), 500.0);
    press.pour(pot, yellow, 100.0, PourStep::WeighIn);
    press.pour(pot, white, 150.0, PourStep::WeighIn);
    let half = press.pot(None, 0.0);
    press.ink_event(InkFact::Moved { from: pot, to: half, grams: g(50.0), by: None });
    assert_eq!((called(&press, pot), called(&press, half)), ((1, 0, false), (1, 0, false)));
    assert_eq!(pot_state(&press.shop(), half).holds, None);
    assert!(!pot_card(&press.shop(), half).unwrap().as_written);
    // Back in, and saved as it is: that is a revision as written, and a yes is to it.
    press.ink_event(InkFact::Moved { from: half, to: pot, grams: g(50.0), by: None });
    let facts = save_facts(&press.shop(), pot, "", "", None, &mut id);
    let second = facts[0].0;
    press.record_all(facts);
    assert_eq!((called(&press, pot), pot_state(&press.shop(), pot).holds), ((2, 0, true), Some(second)));
    let card = pot_card(&press.shop(), pot).unwrap();
    assert!(card.as_written && card.unfinished);
    assert_eq!(approve_facts(&press.shop(), pot, "", "Moss", None, &mut id).len(), 1);
    // Weighed on it is that revision no more.
    press.pour(pot, clear, 250.0, PourStep::WeighIn);
    assert_eq!((called(&press, pot), pot_state(&press.shop(), pot).holds), ((2, 1, false), None));
    let shop = press.shop();
    let weighing = weigh_in_view(&shop, pot, None).unwrap().holds.revision;
    assert_eq!(weighing.map(|revision| revision.id), Some(first), "it is weighed by the first all the same");

    // A correction before the yes is taken back: what was approved is not in the pot.
    let pot = press.pot(Some(first), 500.0);
    for (component, grams) in [(yellow, 100.0), (white, 150.0), (clear, 250.0)] {
        press.pour(pot, component, grams, PourStep::WeighIn);
    }
    let touch = press.pour(pot, blue, 2.6, PourStep::Correction);
    let facts = approve_facts(&press.shop(), pot, "", "Moss", None, &mut id);
    let third = facts[0].0;
    press.record_all(facts);
    assert_eq!((called(&press, pot), pot_state(&press.shop(), pot).holds), ((3, 0, true), Some(third)));
    assert!(pot_label(&press.shop(), pot).unwrap().approval.is_some());
    press.record(touch, Fact::Deleted);
    assert_eq!((called(&press, pot), pot_state(&press.shop(), pot).holds), ((3, 0, false), None));
    assert_eq!(pot_card(&press.shop(), pot).unwrap().stage, PotStage::Mixed);
    assert!(pot_label(&press.shop(), pot).unwrap().approval.is_none());
    assert_eq!(approvals_of(&press.shop(), recipe).len(), 1, "the yes to the revision stands");
    press.record(touch, Fact::Restored);
    assert!(pot_label(&press.shop(), pot).unwrap().approval.is_some());

    // The revision itself is taken back.
    press.record(third, Fact::Deleted);
    let label = pot_label(&press.shop(), pot).unwrap();
    assert_eq!((label.approval, called(&press, pot)), (None, (1, 1, false)));
}

#[test]
fn rounding_topping_up_and_removals_do_not_change_a_pots_revision() {
    let Published { mut press, yellow, white, clear, first, .. } = published();
    press.record_ink(SHOP, InkFact::ScaleSet { step: g(2.0), most: None });
    let pots = [0, 1, 2].map(|_| {
        let pot = press.pot(Some(first), 25.0);
        // By hand: 5, 7.5 and 12.5 g in steps of 2 g.
        for (component, grams) in [(yellow, 4.0), (white, 8.0), (clear, 12.0)] {
            press.pour(pot, component, grams, PourStep::WeighIn);
        }
        pot
    });
    let [pot, ..] = pots;
    for from in &pots[1..] {
        press.ink_event(InkFact::Moved { from: *from, to: pot, grams: g(24.0), by: None });
    }
    for _ in 0..3 {
        let total = pot_state(&press.shop(), pot).contents.total();
        for (component, grams) in top_up(&press.shop(), pot, total.saturating_add(g(11.0))) {
            press.pour(pot, component, grams.grams(), PourStep::TopUp);
        }
        press.ink_event(InkFact::Used { pot, run: None, grams: g(33.333), pieces: 1, paper: None, by: None });
        assert_eq!(pot_state(&press.shop(), pot).holds, Some(first));
    }
}

#[test]
fn a_pot_mixed_by_eye_is_saved_to_the_recipe_of_its_name_unless_renamed() {
    let Published { mut press, blue, recipe, first, .. } = published();
    let mut ids = 0x9400;
    let mut id = || {
        ids += 1;
        Uuid::from_u128(ids)
    };
    let pot = press.pot(None, 0.0);
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Name("brick".into())]));
    press.pour(pot, blue, 30.0, PourStep::Correction);
    let shop = press.shop();
    let named = SaveAs::Named { recipe, name: "Brick".into(), number: 2 };
    assert_eq!((save_as(&shop, pot, ""), save_as(&shop, pot, " BRICK ")), (named.clone(), named));
    assert_eq!(save_as(&shop, pot, " Brick, dark "), SaveAs::New("Brick, dark".into()));
    let apart = save_facts(&shop, pot, "Brick, dark", "", None, &mut id);
    assert!(
        matches!(&apart[0].1, Fact::Ink(InkFact::RecipeSet(fields)) if *fields == [RecipeField::Name("Brick, dark".into())])
    );
    let facts = approve_facts(&shop, pot, "", "Moss", None, &mut id);
    assert!(
        matches!(&facts[0].1, Fact::Ink(InkFact::RevisionSaved { recipe: of, number: 2, parent: None, .. }) if *of == recipe)
    );
    let second = facts[0].0;
    press.record_all(facts);
    let shop = press.shop();
    assert_eq!(shop.ink.recipes().count(), 1);
    assert_eq!(
        (recipe_named(&shop, "brick").map(|(id, _)| id), best_revision(&shop, recipe)),
        (Some(recipe), Some(second))
    );
    assert_eq!((save_as(&shop, pot, "Other"), revisions_of(&shop, recipe)[0].id), (SaveAs::Own(recipe), first));
}

#[test]
fn revisions_with_the_same_number_from_two_phones_are_distinguished() {
    let Published { mut press, yellow, clear, recipe, first, .. } = published();
    let alone = press.shop();
    let parts = |yellow_share: f64| {
        [(yellow, yellow_share), (clear, 100.0 - yellow_share)]
            .map(|(component, percent)| Part { component, share: Share::from_percent(percent), on_top: false })
            .to_vec()
    };
    let on_phone = revision_fact(&alone, recipe, parts(10.0), Some(first), None, "", None);
    let on_tablet = revision_fact(&alone, recipe, parts(12.0), Some(first), None, "", None);
    let one = press.ink_event(on_phone);
    press.on(TABLET);
    let two = press.ink_event(on_tablet);
    let names = [one, two].map(|id| revision_name(&press.shop(), id).unwrap());
    assert_eq!([names[0].number, names[1].number], [2, 2]);
    assert!(names.iter().all(|name| name.shares_number) && names[0].mark != names[1].mark);
    assert!(!revision_name(&press.shop(), first).unwrap().shares_number);
    press.record(two, Fact::Deleted);
    assert!(!revision_name(&press.shop(), one).unwrap().shares_number);
    let next = revision_fact(&press.shop(), recipe, parts(5.0), None, None, "", None);
    assert!(matches!(next, InkFact::RevisionSaved { number: 3, .. }));
    assert_eq!(revisions_of(&press.shop(), recipe).len(), 2);
}
