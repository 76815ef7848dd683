//! The form of a recipe.

use crate::shop::{Published, published};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    ComponentField, InkFact, PartForm, RecipeForm, Share, SumErrorCause, SumRepair, percentages, revision_fact,
    revision_name,
};
use lastpull_core::journal::JournalFact;
use uuid::Uuid;

#[test]
fn percentages_with_a_wrong_sum_are_explained_and_can_be_fixed() {
    let Published { press, yellow, white, clear, blue, .. } = published();
    let shop = press.shop();
    let rows = |percent: &[(Subject, &str)]| RecipeForm {
        name: "New".into(),
        parts: percent
            .iter()
            .map(|(component, percent)| PartForm {
                component: Some(*component),
                percent: (*percent).into(),
                on_top: false,
            })
            .collect(),
        ..RecipeForm::default()
    };
    for (typed, sum, why, fix) in [
        (vec![(yellow, "20"), (white, "30"), (clear, "45")], 95.0, SumErrorCause::TooLittle, SumRepair::Fill(2)),
        (vec![(yellow, "20"), (white, "35"), (clear, "50")], 105.0, SumErrorCause::TooMuch, SumRepair::Fill(2)),
        (vec![(yellow, "33.3"), (white, "33.3"), (clear, "33.3")], 99.9, SumErrorCause::Rounded, SumRepair::Scale),
        (vec![(clear, "100"), (yellow, "10"), (blue, "3")], 113.0, SumErrorCause::OnTop, SumRepair::OnTop),
        (vec![(yellow, "60"), (blue, "50")], 110.0, SumErrorCause::TooMuch, SumRepair::Scale),
    ] {
        let form = rows(&typed);
        let problem = form.check(&shop, None, &[]).unwrap_err().sum.unwrap();
        assert!((problem.percent - sum).abs() < 1e-9);
        assert_eq!((problem.cause, problem.repairs[0].repair), (why, fix), "{typed:?}");
        for offer in problem.repairs {
            let mended = RecipeForm { parts: offer.parts, ..form.clone() };
            let checked = mended.check(&shop, None, &[]).unwrap();
            let parts = checked.parts.unwrap();
            assert!(Fact::Ink(revision_fact(&shop, Uuid::nil(), parts.clone(), None, None, "", None)).in_bounds());
            if offer.repair == SumRepair::Scale {
                let typed = |at: usize| typed[at].1.parse::<f64>().unwrap();
                let percent = percentages(&parts);
                assert!((percent[1].1 / percent[0].1 - typed(1) / typed(0)).abs() < 1e-4);
            }
        }
    }
}

#[test]
fn a_recipe_form_reports_problems_by_row_and_records_only_changes() {
    let Published { mut press, yellow, clear, recipe, first, .. } = published();
    let shop = press.shop();
    let row = |component, percent: &str, on_top| PartForm { component, percent: percent.into(), on_top };
    let form = RecipeForm {
        name: "brick ".into(),
        parts: vec![
            row(Some(clear), "100", false),
            row(Some(clear), "3", true),
            row(None, "2", true),
            row(Some(yellow), "", true),
            row(None, "", false),
        ],
        ..RecipeForm::default()
    };
    let problems = form.check(&shop, None, &[]).unwrap_err();
    assert_eq!(problems.fields["name"], FormProblem::Taken);
    assert_eq!(problems.rows, [(1, FormProblem::Taken), (2, FormProblem::Missing), (3, FormProblem::Missing)]);
    assert!(problems.sum.is_none());
    assert!(RecipeForm::default().check(&shop, None, &[]).unwrap_err().fields.contains_key("parts"));

    let parts = shop.ink.revision(first).unwrap().parts.to_vec();
    let form = RecipeForm::of(shop.ink.recipe(recipe).unwrap(), &parts);
    let checked = form.check(&shop, Some(recipe), &parts).unwrap();
    assert_eq!((checked.fields, checked.parts), (vec![], None));
    let form = RecipeForm { colour: "#a04030".into(), why: "brighter".into(), ..form };
    let mut moved = form.clone();
    (moved.parts[0].percent, moved.parts[2].percent) = ("21".into(), "49".into());
    let checked = moved.check(&shop, Some(recipe), &parts).unwrap();
    assert_eq!(checked.fields.len(), 1);
    let fact = revision_fact(&shop, recipe, checked.parts.unwrap(), Some(first), None, &checked.why, None);
    let second = press.ink_event(fact);
    assert_eq!(revision_name(&press.shop(), second).unwrap().number, 2);
}

#[test]
fn a_recipe_form_checks_data_sheet_limits_once_its_sum_is_right() {
    let Published { mut press, yellow, clear, .. } = published();
    press.record_ink(clear, InkFact::ComponentSet(vec![ComponentField::MostPigment(Some(Share::from_percent(10.0)))]));
    let row =
        |component, percent: &str| PartForm { component: Some(component), percent: percent.into(), on_top: false };
    let mut form = RecipeForm { parts: vec![row(clear, "80"), row(yellow, "12")], ..RecipeForm::default() };
    assert_eq!(form.limits(&press.shop()), [], "not before the ink is whole");
    form.parts[0].percent = "88".into();
    let limits = form.limits(&press.shop());
    assert_eq!((limits.len(), limits[0].component, limits[0].percent, limits[0].most), (1, clear, 12.0, 10.0));
}

#[test]
fn changing_the_convention_of_a_recipe_form_keeps_its_rows() {
    let Published { press, yellow, clear, .. } = published();
    let row =
        |component, percent: &str| PartForm { component: Some(component), percent: percent.into(), on_top: false };
    let mut form = RecipeForm { parts: vec![row(clear, "")], ..RecipeForm::default() };
    form.set_convention(true);
    assert_eq!(form.parts[0].percent, "100", "one ink, and what comes on top of it");
    assert_eq!(form.grams_with_on_top(), None);
    form.parts.push(PartForm { on_top: true, ..row(yellow, "10") });
    // The published 10 % on top of 500 g are 550 g.
    assert_eq!((form.grams_with_on_top(), form.sum(&press.shop())), (Some(110.0), None));
    form.set_convention(false);
    let off = form.sum(&press.shop()).unwrap();
    assert_eq!((form.parts.len(), off.percent, off.cause), (2, 110.0, SumErrorCause::OnTop));
    assert!(off.repairs[0].parts[1].on_top, "and back");
}
