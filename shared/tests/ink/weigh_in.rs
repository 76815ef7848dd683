//! The weigh-in at the scale.

use super::view;
use crate::shop::{Published, TestShop, g, published};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::ids::SHOP;
use lastpull_core::ink::{
    BatchSize, InkFact, PotField, PotForm, PourForm, PourStep, Repair, Scale, ScaleEntry, ScaleForm, StepState,
    check_scale_entry, make_again, pot_state, repair_facts, weigh_in, weigh_in_view,
};
use lastpull_core::units::{Grams, NumberProblem, Units};
use uuid::Uuid;

#[test]
fn targets_are_rounded_to_the_shops_scale_and_the_error_is_shown() {
    let Published { mut press, first, .. } = published();
    let form = ScaleForm { step: "2".into(), most: "400".into() };
    press.record_ink(SHOP, form.check().unwrap());
    let pot = press.pot(Some(first), 333.0);
    let now = view(&press, pot);
    // By hand: 66.6, 99.9 and 166.5 g in steps of 2 g.
    assert_eq!(now.rows.iter().map(|row| row.step.target).collect::<Vec<_>>(), [66.0, 100.0, 166.0].map(g));
    assert!((now.worst - 0.6 / 66.6).abs() < 1e-9);
    assert_eq!(now.overloads, Grams::ZERO);
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Tare(Some(g(100.0))), PotField::Capacity(Some(g(300.0)))]));
    let now = view(&press, pot);
    assert_eq!((now.overloads, now.spills), (g(32.0), g(32.0)));
    assert_eq!(ScaleForm::of(&press.shop().ink.scale), form);
    assert_eq!(ScaleForm::default().check().unwrap_err()["step"], FormProblem::Missing);
    assert_eq!(Scale::default().step, g(0.1));
}

/// By hand: 0.01 % of 300 g are 30 mg, which a scale of tenths cannot show.
#[test]
fn a_weight_too_small_for_the_scale_is_asked_for_and_marked() {
    let Published { mut press, yellow, clear, blue, .. } = published();
    let (recipe, tinted) = press.recipe("Hint", &[(clear, 99.0), (yellow, 0.99), (blue, 0.01)]);
    let pot = press.pot(Some(tinted), 300.0);
    press.pour(pot, clear, 297.0, PourStep::WeighIn);
    press.pour(pot, yellow, 3.0, PourStep::WeighIn);
    let now = view(&press, pot);
    let row = &now.rows[now.now.unwrap()];
    assert_eq!((row.name.as_str(), row.step.exact, row.step.to_go()), ("Blue", g(0.03), g(0.1)));
    assert!(!now.done && (now.worst - 0.07 / 0.03).abs() < 1e-9);
    // Half of a tenth is a hundredth of 5 g, and 5 g are a ten-thousandth of 50 kg.
    assert_eq!(row.accurate_batch, Some(g(50_000.0)));
    assert!(now.rows[..2].iter().all(|row| row.accurate_batch.is_none()));
    let again = make_again(&press.shop(), recipe, None, BatchSize::Whole(g(300.0))).unwrap();
    assert_eq!((again.rows[2].grams, again.accurate_batch), (g(0.1), g(50_000.0)), "the same as will be asked for");

    // Left out, it is another recipe; poured, it is this one as near as the scale weighs.
    let out = press.ink_event(InkFact::Accepted { pot, component: blue, grams: Grams::ZERO, by: None });
    assert!(view(&press, pot).done);
    assert_eq!(pot_state(&press.shop(), pot).holds, None);
    press.record(out, Fact::Deleted);
    press.pour(pot, blue, 0.1, PourStep::WeighIn);
    assert!(view(&press, pot).done);
    assert_eq!(pot_state(&press.shop(), pot).holds, Some(tinted));
}

#[test]
fn a_pots_size_can_be_edited_after_scaling_the_rest() {
    let Published { mut press, yellow, white, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    let edit = |press: &TestShop, typed: &str, id: u128| {
        let shop = press.shop();
        let form = PotForm { size: typed.into(), ..PotForm::to_edit(&shop, pot, Units::METRIC).unwrap() };
        form.edit(&shop, pot, Some("Ines"), Units::METRIC, || Uuid::from_u128(id)).unwrap()
    };
    // Nothing is in yet: the pot has another size.
    let facts = edit(&press, "400", 0x9300);
    assert_eq!(facts, [(pot, Fact::Ink(InkFact::PotSet(vec![PotField::Size(Some(BatchSize::Whole(g(400.0))))])))]);
    press.pour(pot, yellow, 104.0, PourStep::WeighIn);
    let weighing = weigh_in(&press.shop(), pot).unwrap();
    let id = press.id();
    let facts = repair_facts(&press.shop(), pot, &weighing, Repair::ScaleRest, None, || id);
    press.record_all(facts);
    assert_eq!(PotForm::to_edit(&press.shop(), pot, Units::METRIC).unwrap().size, "520");
    assert_eq!(edit(&press, "520", 0x9301), [], "as it is");

    let facts = edit(&press, "600", 0x9302);
    assert!(matches!(&facts[..], [(_, Fact::Ink(InkFact::Resized { whole, .. }))] if *whole == g(600.0)));
    press.record_all(facts);
    let now = view(&press, pot);
    assert_eq!(now.rows.iter().map(|row| row.step.target).collect::<Vec<_>>(), [120.0, 180.0, 300.0].map(g));
    assert_eq!(now.undo, Some(Uuid::from_u128(0x9302)));
    press.record(Uuid::from_u128(0x9302), Fact::Deleted);
    assert_eq!(view(&press, pot).rows[1].step.target, g(156.0));
    assert_eq!(weigh_in(&press.shop(), pot).unwrap().steps[1].component, white);
}

#[test]
fn a_weigh_in_takes_one_component_at_a_time_in_any_order_with_undo() {
    let Published { mut press, yellow, white, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    let picked = weigh_in_view(&press.shop(), pot, Some(white)).unwrap();
    assert_eq!((picked.now, picked.then), (Some(1), Some(0)));
    assert_eq!((picked.tare, picked.on_scale, picked.rows[1].scale_target), (None, Grams::ZERO, Some(g(150.0))));
    press.pour(pot, white, 90.0, PourStep::WeighIn);
    let last = press.pour(pot, white, 60.0, PourStep::WeighIn);
    let now = view(&press, pot);
    assert_eq!((now.now, now.then, now.undo), (Some(0), Some(2), Some(last)));
    assert_eq!(now.rows[1].step.state, StepState::Done);
    assert_eq!(now.rows[1].scale_target, None);
    press.record(last, Fact::Deleted);
    let now = view(&press, pot);
    assert_eq!((now.rows[1].step.poured, now.holds_grams), (g(90.0), g(90.0)));
    press.record(last, Fact::Restored);
    assert_eq!(view(&press, pot).holds_grams, g(150.0));

    let form = PourForm { component: Some(yellow), grams: "150".into(), total: true, ..PourForm::default() };
    let problems = form.check(&press.shop(), pot, PourStep::WeighIn, None, Units::METRIC).unwrap_err();
    assert_eq!(problems["grams"], FormProblem::Number(NumberProblem::TooLow { least: 150.001 }));
    let empty = PourForm::default().check(&press.shop(), pot, PourStep::WeighIn, None, Units::METRIC).unwrap_err();
    assert_eq!((empty["component"], empty["grams"]), (FormProblem::Missing, FormProblem::Missing));
    assert!(weigh_in_view(&press.shop(), Uuid::nil(), None).is_none());
    let loose = press.pot(None, 0.0);
    assert!(weigh_in_view(&press.shop(), loose, None).is_none());
}

#[test]
fn a_typed_weight_is_compared_with_the_target_before_it_is_recorded() {
    let Published { mut press, yellow, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Tare(Some(g(48.0)))]));
    let typed = |press: &TestShop, text: &str, total: bool| {
        let now = view(press, pot);
        check_scale_entry(&now, &now.rows[now.now.unwrap()], text, total, Units::METRIC)
    };
    assert_eq!(typed(&press, " ", true), ScaleEntry::Nothing);
    assert_eq!(typed(&press, "108,0", true), ScaleEntry::Short { poured: g(60.0), to_go: g(40.0) });
    assert_eq!(typed(&press, "60", false), ScaleEntry::Short { poured: g(60.0), to_go: g(40.0) });
    // Slack is a five-hundredth of 100 g.
    assert_eq!(typed(&press, "148.2", true), ScaleEntry::On { poured: g(100.2) });
    assert_eq!(typed(&press, "148.3", true), ScaleEntry::Over { poured: g(100.3), by: g(0.3) });
    assert_eq!(typed(&press, "48", true), ScaleEntry::Wrong(NumberProblem::TooLow { least: 48.001 }));
    assert_eq!(typed(&press, "1.2.3", true), ScaleEntry::Wrong(NumberProblem::NotANumber));
    press.pour(pot, yellow, 60.0, PourStep::WeighIn);
    assert_eq!(typed(&press, "40.1", false), ScaleEntry::On { poured: g(40.1) });
    assert_eq!(typed(&press, "108", true), ScaleEntry::Wrong(NumberProblem::TooLow { least: 108.001 }));
}

#[test]
fn a_component_a_little_short_is_partly_in_until_it_is_left_at_that() {
    let Published { mut press, yellow, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    assert!(!view(&press, pot).rows[0].step.is_partly_in(), "nothing is in");
    press.pour(pot, yellow, 99.6, PourStep::WeighIn);
    let step = view(&press, pot).rows[0].step;
    assert_eq!((step.is_partly_in(), step.to_go()), (true, g(0.4)));
    let enough = InkFact::Accepted { pot, component: yellow, grams: step.poured, by: None };
    press.ink_event(enough);
    let now = view(&press, pot);
    assert_eq!((now.rows[0].step.is_partly_in(), now.rows[0].step.state, now.now), (false, StepState::Done, Some(1)));
}
