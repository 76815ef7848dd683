//! Recipes in both conventions, and the limits of data sheets.

use crate::shop::{Published, TestShop, g, published};
use lastpull_core::form::FormProblem;
use lastpull_core::ink::{
    BatchSize, ComponentField, ComponentKind, InkFact, LimitOf, PartForm, PotForm, PourStep, RecipeForm, Share,
    after_addition, make_again, pot_card, recipe_card, revision_fact, weigh_in,
};
use lastpull_core::units::{NumberProblem, Units};

/// Source: `ink_recipe_by_weight.csv`: 500 g and 10 % and 3 % on top weigh 565 g.
#[test]
fn percentages_on_top_are_weighed_as_in_the_published_example() {
    let mut press = TestShop::new();
    let ink = press.component("Ready ink", ComponentKind::Base);
    let [one, two] = ["One", "Two"].map(|name| press.component(name, ComponentKind::Additive));
    let form = RecipeForm {
        name: "Soft".into(),
        parts: [(ink, "100", false), (one, "10", true), (two, "3", true)]
            .map(|(component, percent, on_top)| PartForm {
                component: Some(component),
                percent: percent.into(),
                on_top,
            })
            .to_vec(),
        ..RecipeForm::default()
    };
    let checked = form.check(&press.shop(), None, &[]).unwrap();
    let recipe = press.id();
    press.record_ink(recipe, InkFact::RecipeSet(checked.fields));
    let fact = revision_fact(&press.shop(), recipe, checked.parts.unwrap(), None, None, "", None);
    let revision = press.ink_event(fact);
    let again = make_again(&press.shop(), recipe, None, BatchSize::Ink(g(500.0))).unwrap();
    assert_eq!(again.rows.iter().map(|row| row.grams).collect::<Vec<_>>(), [500.0, 50.0, 15.0].map(g));
    assert_eq!((again.whole, again.total, again.worst), (g(565.0), g(565.0), 0.0));
    assert!(recipe_card(&press.shop(), recipe).unwrap().revisions[0].on_top);

    let form = PotForm {
        name: "Soft 1".into(),
        size: "500".into(),
        of_ink: true,
        capacity: "550".into(),
        ..PotForm::default()
    };
    let problems = form.check(&press.shop(), None, Some(revision), None, Units::METRIC).unwrap_err();
    assert_eq!(problems["size"], FormProblem::Number(NumberProblem::TooHigh { most: 550.0 }));
    let form = PotForm { capacity: "600".into(), ..form };
    let fields = form.check(&press.shop(), None, Some(revision), None, Units::METRIC).unwrap();
    let pot = press.id();
    press.record_ink(pot, InkFact::PotSet(fields));
    let weighing = weigh_in(&press.shop(), pot).unwrap();
    assert_eq!(weighing.steps.iter().map(|step| step.target).collect::<Vec<_>>(), [500.0, 50.0, 15.0].map(g));
    let shop = press.shop();
    let same = PotForm::of(shop.ink.pot(pot).unwrap(), Units::US.with_ounces());
    assert_eq!(same.check(&shop, Some(pot), Some(revision), None, Units::US.with_ounces()).unwrap(), []);
}

#[test]
fn data_sheet_limits_are_checked_for_recipe_pot_and_addition() {
    let Published { mut press, yellow, white, clear, blue, recipe, first } = published();
    let most = |percent| Some(Share::from_percent(percent));
    press.record_ink(clear, InkFact::ComponentSet(vec![ComponentField::MostPigment(most(50.0))]));
    press.record_ink(blue, InkFact::ComponentSet(vec![ComponentField::Most(most(2.0))]));
    let again = make_again(&press.shop(), recipe, None, BatchSize::Whole(g(500.0))).unwrap();
    assert_eq!(again.limits, []);
    let pot = press.pot(Some(first), 500.0);
    for (component, grams) in [(yellow, 100.0), (white, 150.0), (clear, 250.0)] {
        press.pour(pot, component, grams, PourStep::WeighIn);
    }
    let after = after_addition(&press.shop(), pot, &[(blue, g(15.0))]);
    let limits: Vec<_> = after.limits.iter().map(|limit| (limit.component, limit.limit)).collect();
    assert_eq!(limits, [(clear, LimitOf::Pigment), (blue, LimitOf::Component)]);
    assert!((after.limits[1].percent - 15.0 / 515.0 * 100.0).abs() < 1e-9);
    assert_eq!(after.lacks, []);
    press.ink_event(InkFact::Counted { component: blue, grams: g(4.0), by: None });
    assert_eq!(after_addition(&press.shop(), pot, &[(blue, g(15.0))]).lacks, [(blue, g(11.0))]);
    press.pour(pot, blue, 15.0, PourStep::Correction);
    assert_eq!(pot_card(&press.shop(), pot).unwrap().limits.len(), 2);
}
