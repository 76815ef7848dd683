//! How much ink runs need, and which pot it is mixed in.

use super::{ordered, plain_print, view};
use crate::shop::{Published, TestShop, g, published};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::form::FormProblem;
use lastpull_core::heat::ink_key;
use lastpull_core::ink::{
    BatchSize, BatchSplit, ComponentField, InkFact, Part, PotField, PotForm, PourStep, PrintForm, RemovalForm, Repair,
    SCREEN_CHARGE, Share, Similarity, Vessel, likely_run, new_pot_for_revision, new_pot_for_run, recipe_named,
    repair_facts, revision_fact, runs_for_pot, suggested_batch, weigh_in,
};
use lastpull_core::job::Fabric;
use lastpull_core::journal::JournalFact;
use lastpull_core::screen::{MeshCount, MeshSheet, ScreenFact, ScreenField};
use lastpull_core::units::{Grams, Length, Units};
use uuid::Uuid;

#[test]
fn the_new_pot_form_offers_the_revision_the_runs_and_existing_pots() {
    let Published { mut press, yellow, clear, recipe, first, .. } = published();
    let run = ordered(&mut press, "Tour tees", "brick", Fabric::Cotton, 100);
    let other = ordered(&mut press, "Caps", "White", Fabric::Cotton, 10);
    let (print, _) = plain_print().check(Units::METRIC).unwrap();
    press.record_ink(run, InkFact::PrintSet(Some(print)));
    let pot = press.pot(Some(first), 80.0);
    let fields = vec![PotField::Capacity(Some(g(900.0))), PotField::Tare(Some(g(48.0)))];
    press.record_ink(pot, InkFact::PotSet(fields));
    press.pour(pot, yellow, 80.0, PourStep::Correction);

    let shop = press.shop();
    let new = new_pot_for_revision(&shop, first).unwrap();
    assert_eq!((new.ink.as_str(), new.recipe, new.newer), ("Brick", Some(recipe), false));
    assert_eq!(new.vessel, Vessel { capacity: Some(g(900.0)), tare: Some(g(48.0)) });
    assert_eq!((new.name.as_str(), new.on_top), ("Brick", false), "the open pot is called Pot");
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Name("BRICK".into())]));
    assert_eq!(new_pot_for_revision(&press.shop(), first).unwrap().name, "Brick 2");
    let [needs] = &new.runs[..] else { panic!("one run of this ink: {:?}", new.runs) };
    // By hand: 200 g and a tenth, less the 80 g in the pot.
    assert_eq!((needs.need.run, needs.need.to_mix), (run, Some(g(140.0))));
    assert_eq!(needs.batch.map(|batch| batch.grams), Some(g(220.0)));
    assert_eq!(new_pot_for_run(&shop, run).map(|new| new.revision), Some(new.revision.clone()));

    let none = new_pot_for_run(&shop, other).unwrap();
    assert_eq!((none.ink.as_str(), none.recipe, none.revision), ("White", None, None));
    assert!(none.runs[0].batch.is_none() && none.runs[0].need.pieces == 10);

    // A later revision without a yes does not take the place of the one approved.
    let yes = InkFact::Approved { revision: first, pot: None, client: "Moss".into(), reading: None, by: None };
    press.ink_event(yes);
    let parts = [(yellow, 40.0), (clear, 60.0)].map(|(component, percent)| Part {
        component,
        share: Share::from_percent(percent),
        on_top: false,
    });
    let fact = revision_fact(&press.shop(), recipe, parts.to_vec(), Some(first), None, "", None);
    let second = press.ink_event(fact);
    let shop = press.shop();
    let new = new_pot_for_run(&shop, run).unwrap();
    assert!(new.newer && new.approved.is_none() && new.revision.unwrap().id == first);
    let new = new_pot_for_revision(&shop, second).unwrap();
    assert!(!new.newer && new.approval.is_none());
    assert_eq!(new.approved.unwrap().revision.id, first);
    assert!(new_pot_for_revision(&shop, recipe).is_none() && new_pot_for_run(&shop, second).is_none());
}

#[test]
fn a_batch_is_suggested_by_formula_until_similar_runs_were_weighed() {
    let Published { mut press, yellow, recipe, first, .. } = published();
    let run = ordered(&mut press, "Tour tees", "Brick", Fabric::Cotton, 100);
    let (print, pieces) = plain_print().check(Units::METRIC).unwrap();
    press.record_ink(run, InkFact::PrintSet(Some(print)));
    let shop = press.shop();
    // By hand: 0.05 m² × 40 cm³/m² × 1 g/cm³ × 100 pieces, and a tenth.
    let batch = suggested_batch(&shop, run, &print, pieces);
    assert_eq!((batch.printed, batch.loss, batch.grams), (g(200.0), g(20.0), g(220.0)));
    assert!(batch.experience.is_none() && !batch.is_charge());
    assert_eq!(batch.split(shop.ink.scale.step), BatchSplit { printed: g(200.0), extra: g(20.0) });
    // 36 pieces take 72 g and 7.2 g. On a scale of 5 g the two still add up to what is mixed.
    let few = suggested_batch(&shop, run, &print, 36);
    assert_eq!((few.used, few.split(g(5.0))), (g(79.2), BatchSplit { printed: g(70.0), extra: g(9.2) }));

    // An earlier run took 150 g for 50 pieces: half as much again as the 100 g on paper.
    let earlier = ordered(&mut press, "Earlier", "brick", Fabric::Cotton, 50);
    press.record_ink(earlier, InkFact::PrintSet(Some(print)));
    let pot = press.pot(Some(first), 0.0);
    press.pour(pot, yellow, 400.0, PourStep::Correction);
    let form = RemovalForm { grams: "150".into(), pieces: "50".into(), ..RemovalForm::default() };
    let fact = form.used(&press.shop(), pot, Some(earlier), None, Units::METRIC).unwrap();
    assert!(matches!(fact, InkFact::Used { paper: Some(paper), .. } if paper == g(100.0)));
    let weighed = press.ink_event(fact);
    // Without a mesh in the set-up they are alike in fabric only.
    let learned = suggested_batch(&press.shop(), run, &print, 100);
    assert_eq!(learned.experience.unwrap().similarity, Similarity::Fabric);
    assert_eq!(learned.grams, g(300.0));
    for id in [run, earlier] {
        press.set_up(id, vec![RunField::Mesh(Some(160))]);
    }
    let other = ordered(&mut press, "Other", "White", Fabric::Polyester, 50);
    press.record_ink(other, InkFact::PrintSet(Some(print)));
    let form = RemovalForm { grams: "60".into(), ..form };
    let fact = form.used(&press.shop(), pot, Some(other), None, Units::METRIC).unwrap();
    press.ink_event(fact);
    let learned = suggested_batch(&press.shop(), run, &print, 100);
    let experience = learned.experience.unwrap();
    assert_eq!((experience.similarity, experience.weighings), (Similarity::Ink, 1));
    assert!((experience.ratio - 1.5).abs() < 1e-9);
    press.record(weighed, Fact::Deleted);
    let learned = suggested_batch(&press.shop(), run, &print, 100);
    assert_eq!((learned.experience.unwrap().similarity, learned.grams), (Similarity::Any, g(150.0)));
    assert_eq!(learned.used, g(120.0));
    assert_eq!(recipe_named(&press.shop(), " b r i c k").unwrap().0, recipe);
    assert_eq!(ink_key("B rick"), ink_key("brick"));
}

#[test]
fn a_small_run_gets_the_charge_of_its_screen() {
    let Published { mut press, .. } = published();
    let run = ordered(&mut press, "Tour tees", "Brick", Fabric::Cotton, 36);
    let (print, _) = plain_print().check(Units::METRIC).unwrap();
    let batch = |press: &TestShop, pieces: u32| suggested_batch(&press.shop(), run, &print, pieces);
    let few = batch(&press, 36);
    assert_eq!((few.used, few.grams, few.is_charge()), (g(79.2), SCREEN_CHARGE, true));
    // By hand: 68 pieces use 149.6 g, 69 use 151.8 g.
    assert_eq!([68, 69].map(|pieces| batch(&press, pieces).grams), [SCREEN_CHARGE, g(151.8)]);
    let none = batch(&press, 0);
    assert_eq!((none.grams, none.is_charge()), (Grams::ZERO, false));
    // To the steps of the scale, as every weight to mix.
    press.record_ink(Uuid::nil(), InkFact::ScaleSet { step: g(4.0), most: None });
    assert_eq!((batch(&press, 36).used, batch(&press, 36).grams), (g(80.0), g(152.0)));
}

#[test]
fn a_pot_is_likely_printed_on_its_own_run_or_else_on_the_one_on_the_press() {
    let Published { mut press, yellow, first, .. } = published();
    let pot = press.pot(Some(first), 0.0);
    press.pour(pot, yellow, 100.0, PourStep::Correction);
    let likely = |press: &TestShop| likely_run(&runs_for_pot(&press.shop(), pot));
    let [waits, prints] = ["Waits", "Prints"].map(|title| ordered(&mut press, title, "brick", Fabric::Cotton, 10));
    let other = ordered(&mut press, "Other ink", "White", Fabric::Cotton, 10);
    press.start_at(10, other);
    assert_eq!(likely(&press), None, "nothing says on which");
    press.start_at(20, prints);
    assert_eq!(likely(&press), Some(prints));
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Run(Some(waits))]));
    assert_eq!(likely(&press), Some(prints), "its own has not begun");
    press.end_at(30, prints);
    assert_eq!(likely(&press), Some(waits));
    press.start_at(40, waits);
    assert_eq!(likely(&press), Some(waits));
}

#[test]
fn a_batch_beyond_the_limit_is_refused() {
    let Published { mut press, clear, blue, .. } = published();
    let (_, tinted) = press.recipe("Hint", &[(clear, 99.99), (blue, 0.01)]);
    let pot = press.pot(Some(tinted), 300.0);
    // By hand: 150 g are a ten-thousandth of a tonne and a half.
    press.pour(pot, blue, 150.0, PourStep::WeighIn);
    let over = view(&press, pot).over.unwrap();
    assert!(over.scale_rest.too_large && !over.scale_rest.is_possible() && over.accept.is_possible());
    assert_eq!(over.scale_rest.whole, Grams::MOST);
    let weighing = weigh_in(&press.shop(), pot).unwrap();
    assert_eq!(repair_facts(&press.shop(), pot, &weighing, Repair::ScaleRest, None, Uuid::nil), []);
    for _ in 0..2 {
        press.pour(pot, blue, 900_000.0, PourStep::WeighIn);
    }
    let weighing = weigh_in(&press.shop(), pot).unwrap();
    let facts = repair_facts(&press.shop(), pot, &weighing, Repair::Accept, None, Uuid::nil);
    assert!(facts.len() == 1 && facts.iter().all(|(_, fact)| fact.in_bounds()), "{facts:?}");

    // The most that can be typed in ounces is no more than the most that is kept.
    let form = PotForm { name: "Pot".into(), size: "35273.9619".into(), ..PotForm::default() };
    let fields = form.check(&press.shop(), None, Some(tinted), None, Units::US.with_ounces()).unwrap();
    assert!(Fact::Ink(InkFact::PotSet(fields)).in_bounds());
    let parts = [(clear, 100.0, false), (blue, 400.0, true)].map(|(component, percent, on_top)| Part {
        component,
        share: Share::from_percent(percent),
        on_top,
    });
    assert_eq!(BatchSize::Ink(Grams::MOST).whole(&parts), Grams::MOST);
}

#[test]
fn absurd_weighings_are_ignored_and_suggestions_stay_within_bounds() {
    let Published { mut press, .. } = published();
    let run = ordered(&mut press, "Tour tees", "Brick", Fabric::Cotton, 100);
    let (print, _) = plain_print().check(Units::METRIC).unwrap();
    press.record_ink(run, InkFact::PrintSet(Some(print)));
    let pot = press.pot(None, 0.0);
    let used = |paper: i64| InkFact::Used {
        pot,
        run: Some(run),
        grams: g(150.0),
        pieces: 1,
        paper: Some(Grams::from_milligrams(paper)),
        by: None,
    };
    for paper in [1, 7_000, 2_000_000] {
        press.ink_event(used(paper));
        assert!(suggested_batch(&press.shop(), run, &print, 100).experience.is_none(), "{paper} mg on paper");
    }
    press.ink_event(used(100_000));
    let learned = suggested_batch(&press.shop(), run, &print, 100).experience.unwrap();
    assert!((learned.ratio - 1.5).abs() < 1e-9 && learned.weighings == 1);
    // A banner of two metres, through the coarsest mesh, a hundred thousand times.
    let most = lastpull_core::ink::PrintUse {
        width: Length::from_millimetres(2_000.0),
        height: Length::from_millimetres(2_000.0),
        coverage: 1_000,
        volume: 60_000,
        hits: 20,
        density: 9_000,
        ..print
    };
    assert_eq!(suggested_batch(&press.shop(), run, &most, 100_000).grams, Grams::MOST);
}

#[test]
fn the_print_form_starts_from_what_is_known_about_the_run() {
    let Published { mut press, yellow, white, clear, .. } = published();
    let run = ordered(&mut press, "Tour tees", "Brick", Fabric::Cotton, 60);
    let screen = press.id();
    let sheet = MeshSheet {
        open_area_permille: Some(400),
        thickness_um: Some(100),
        ..MeshSheet::of_count(MeshCount::PerInch(160))
    };
    let fields = vec![ScreenField::Label("A1".into()), ScreenField::Mesh(Some(sheet))];
    press.record(screen, Fact::Screen(ScreenFact::Set(fields)));
    press.set_up(run, vec![RunField::Screens("A1".into()), RunField::Hits(2)]);
    let form = PrintForm::of(&press.shop(), run, Units::METRIC);
    // Source: theoretical ink volume is open area by thickness: 0.4 × 100 µm.
    assert_eq!((form.volume.as_str(), form.ink.hits.as_str(), form.ink.pieces.as_str()), ("40", "2", "60"));
    assert_eq!(form.ink.density, "1", "no density of a component is known");
    for (component, density) in [(yellow, 1_250), (white, 2_000), (clear, 1_000)] {
        press.record_ink(component, InkFact::ComponentSet(vec![ComponentField::Density(Some(density))]));
    }
    // By hand: 100 g are 16 + 15 + 50 cm³.
    assert_eq!(PrintForm::of(&press.shop(), run, Units::METRIC).ink.density, "1.23");
    let mut typed = plain_print();
    typed.ink.pieces = "60".into();
    let (print, _) = typed.check(Units::METRIC).unwrap();
    assert_eq!(print.width, Length::from_millimetres(250.0));
    press.record_ink(run, InkFact::PrintSet(Some(print)));
    assert_eq!(PrintForm::of(&press.shop(), run, Units::METRIC), typed);
    press.record_ink(run, InkFact::PrintSet(None));
    assert_eq!(PrintForm::of(&press.shop(), run, Units::METRIC).volume, "40");
    let empty = ordered(&mut press, "Not counted out yet", "Brick", Fabric::Cotton, 0);
    assert_eq!(PrintForm::of(&press.shop(), empty, Units::METRIC).ink.pieces, "1", "then the use is for one");
    let problems = PrintForm::default().check(Units::METRIC).unwrap_err();
    assert_eq!((problems["width"], problems["volume"]), (FormProblem::Missing, FormProblem::Missing));
}
