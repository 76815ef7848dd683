//! The form and the card of a component.

use crate::shop::{Published, g, published};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::ink::{
    ComponentField, ComponentForm, ComponentKind, InkFact, PourStep, StockChange, component_card, pot_card, stock_line,
};
use lastpull_core::units::{NumberProblem, Units};

#[test]
fn a_component_can_be_created_edited_and_deleted() {
    let Published { mut press, yellow, first, .. } = published();
    let form = ComponentForm {
        name: "Deep red".into(),
        kind: ComponentKind::Pigment,
        colour: "#aa1122".into(),
        density: "1,18".into(),
        cost: "42.50".into(),
        most: "12".into(),
        most_pigment: "15".into(),
        low_at: "3.5".into(),
        tub: "8".into(),
        ..ComponentForm::default()
    };
    let fields = form.check(&press.shop(), None, Units::US.with_ounces()).unwrap();
    assert!(fields.contains(&ComponentField::MostPigment(None)), "only a base has such a limit");
    let red = press.id();
    press.record_ink(red, InkFact::ComponentSet(fields));
    let shop = press.shop();
    let component = shop.ink.component(red).unwrap();
    assert_eq!((component.density, component.cost), (Some(1_180), Some(4_250)));
    let metric = ComponentForm::of(component, Units::METRIC);
    assert_eq!(metric.check(&shop, Some(red), Units::METRIC).unwrap(), []);
    let problems = ComponentForm { name: " yellow".into(), most: "101".into(), ..metric.clone() }
        .check(&shop, Some(red), Units::METRIC)
        .unwrap_err();
    assert_eq!(problems["name"], FormProblem::Taken);
    assert_eq!(problems["most"], FormProblem::Number(NumberProblem::TooHigh { most: 100.0 }));

    // Deleted, it leaves the lists; what is in pots and recipes of it stays.
    let pot = press.pot(Some(first), 500.0);
    press.pour(pot, yellow, 100.0, PourStep::WeighIn);
    press.record(yellow, Fact::Deleted);
    let shop = press.shop();
    assert!(shop.ink.components().all(|(id, _)| id != yellow));
    assert_eq!(pot_card(&shop, pot).unwrap().rows[0].name, "Yellow");
    press.record(yellow, Fact::Restored);
    assert!(press.shop().ink.components().any(|(id, _)| id == yellow));
}

#[test]
fn a_component_lists_its_deliveries_its_pours_and_its_recipes() {
    let Published { mut press, yellow, blue, recipe, first, .. } = published();
    press.ink_event(InkFact::Counted { component: yellow, grams: g(50.0), by: Some("Moss".into()) });
    let pot = press.pot(Some(first), 500.0);
    let pour = press.pour(pot, yellow, 20.0, PourStep::WeighIn);
    press.ink_event(InkFact::Delivered { component: yellow, grams: g(500.0), note: "lot 7".into(), by: None });
    let card = component_card(&press.shop(), yellow).unwrap();
    let lines: Vec<_> =
        card.changes.iter().map(|(event, left)| stock_line(&press.shop(), *event, *left).unwrap()).collect();
    let grams: Vec<_> = lines.iter().map(|line| (line.grams, line.left)).collect();
    assert_eq!(grams, [(g(500.0), Some(g(530.0))), (g(20.0), Some(g(30.0))), (g(50.0), Some(g(50.0)))]);
    let poured = StockChange::Poured { pot, name: "Pot".into(), step: PourStep::WeighIn };
    assert_eq!(lines[1].what, poured);
    assert_eq!((lines[1].event, card.stock.left), (pour, Some(g(530.0))));
    assert_eq!(stock_line(&press.shop(), first, None), None, "a version of a recipe is no change of stock");
    assert_eq!(card.used_in.iter().map(|row| row.recipe).collect::<Vec<_>>(), [recipe]);
    assert_eq!(component_card(&press.shop(), blue).unwrap().used_in, []);
    press.record(pour, Fact::Deleted);
    let card = component_card(&press.shop(), yellow).unwrap();
    assert_eq!((card.changes.len(), card.stock.left), (2, Some(g(550.0))));
    press.record(yellow, Fact::Deleted);
    assert_eq!(component_card(&press.shop(), yellow), None);
}
