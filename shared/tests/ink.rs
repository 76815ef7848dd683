//! The ink bench: recipes in both conventions, weigh-ins and over-pours, corrections, approvals, stock.
//! Grams are checked by hand or against `ink_recipe_by_weight.csv`; limits and thresholds are our own.

use crate::shop::{PHONE, Press, TABLET};
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::form::FormProblem;
use lastpull_core::heat::ink_key;
use lastpull_core::ids::PhotoId;
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    BatchSize, BatchSizeForm, ColourReading, ComponentField, ComponentForm, ComponentKind, EventNoteForm, InkFact,
    LedgerKind, LimitOf, LowReason, Part, PartForm, PhotoSample, PotField, PotForm, PotStage, PourForm, PourStep,
    PrintForm, ReadBy, ReadingForm, RecipeField, RecipeForm, RemovalForm, Repair, SaveAs, Scale, ScaleEntry, ScaleForm,
    Share, Similarity, StepState, StockChange, StockForm, SumErrorCause, SumRepair, WeighInView, after_addition,
    amend_reading_facts, approvals_of, approve_facts, best_revision, check_scale_entry, component_card, headroom_of,
    ink_needed, ink_shelf, last_added, likely_run, make_again, new_pot_for_revision, new_pot_for_run, over_pour,
    percentages, pot_card, pot_label, pot_stage, pot_state, recipe_card, recipe_named, repair_facts, revision_fact,
    revision_name, revisions_of, runs_for_pot, save_as, save_facts, save_pot, stock_left, stock_view, suggested_batch,
    top_up, weigh_in, weigh_in_view,
};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::journal::JournalFact;
use lastpull_core::photo::PhotoFact;
use lastpull_core::screen::{InkUseForm, MeshCount, MeshSheet, ScreenFact, ScreenField};
use lastpull_core::shop::Shop;
use lastpull_core::units::{Grams, Length, NumberProblem, Units};
use std::collections::BTreeMap;
use uuid::Uuid;

fn g(grams: f64) -> Grams {
    Grams::from_grams(grams)
}

trait Bench {
    fn ink(&mut self, subject: Subject, fact: InkFact) -> &mut Self;
    fn all(&mut self, facts: Vec<(Subject, Fact)>) -> &mut Self;
    fn component(&mut self, name: &str, kind: ComponentKind) -> Subject;
    fn recipe(&mut self, name: &str, parts: &[(Subject, f64)]) -> (Subject, Subject);
    fn pot(&mut self, revision: Option<Subject>, size: f64) -> Subject;
    fn pour(&mut self, pot: Subject, component: Subject, grams: f64, step: PourStep) -> Subject;
    fn event(&mut self, fact: InkFact) -> Subject;
}

impl Bench for Press {
    fn ink(&mut self, subject: Subject, fact: InkFact) -> &mut Self {
        self.all(vec![(subject, Fact::Ink(fact))])
    }

    fn all(&mut self, facts: Vec<(Subject, Fact)>) -> &mut Self {
        for (subject, fact) in facts {
            assert!(fact.in_bounds(), "{fact:?}");
            self.say(subject, fact);
        }
        self
    }

    fn component(&mut self, name: &str, kind: ComponentKind) -> Subject {
        let id = self.id();
        let fields = vec![ComponentField::Name(name.into()), ComponentField::Kind(kind)];
        self.ink(id, InkFact::ComponentSet(fields));
        id
    }

    /// A recipe of parts of the whole, and its first revision.
    fn recipe(&mut self, name: &str, parts: &[(Subject, f64)]) -> (Subject, Subject) {
        let recipe = self.id();
        self.ink(recipe, InkFact::RecipeSet(vec![RecipeField::Name(name.into())]));
        let part = |(component, percent): &(Subject, f64)| Part {
            component: *component,
            share: Share::from_percent(*percent),
            on_top: false,
        };
        let fact = revision_fact(&self.shop(), recipe, parts.iter().map(part).collect(), None, None, "", Some("Ines"));
        (recipe, self.event(fact))
    }

    fn pot(&mut self, revision: Option<Subject>, size: f64) -> Subject {
        let pot = self.id();
        let size = (size > 0.0).then(|| BatchSize::Whole(g(size)));
        let fields = vec![PotField::Name("Pot".into()), PotField::Revision(revision), PotField::Size(size)];
        self.ink(pot, InkFact::PotSet(fields));
        pot
    }

    fn pour(&mut self, pot: Subject, component: Subject, grams: f64, step: PourStep) -> Subject {
        let (note, grams) = (String::new(), g(grams));
        self.event(InkFact::Poured { pot, component, grams, step, note, reading: None, by: None })
    }

    fn event(&mut self, fact: InkFact) -> Subject {
        let id = self.id();
        self.ink(id, fact);
        id
    }
}

/// Yellow, white and clear at 20, 30 and 50 percent: the published recipe; and blue beside it.
struct Published {
    press: Press,
    yellow: Subject,
    white: Subject,
    clear: Subject,
    blue: Subject,
    recipe: Subject,
    first: Subject,
}

fn published() -> Published {
    let mut press = Press::new();
    let yellow = press.component("Yellow", ComponentKind::Pigment);
    let white = press.component("Tinting white", ComponentKind::Pigment);
    let clear = press.component("Mixing clear", ComponentKind::Base);
    let blue = press.component("Blue", ComponentKind::Pigment);
    let (recipe, first) = press.recipe("Brick", &[(yellow, 20.0), (white, 30.0), (clear, 50.0)]);
    Published { press, yellow, white, clear, blue, recipe, first }
}

fn view(press: &Press, pot: Subject) -> WeighInView {
    weigh_in_view(&press.shop(), pot, None).unwrap()
}

fn percent_in(shop: &Shop, pot: Subject, component: Subject) -> f64 {
    let percent = pot_state(shop, pot).contents.percentages();
    percent.iter().find(|(id, _)| *id == component).map_or(0.0, |(_, percent)| *percent)
}

#[test]
fn a_recipe_is_weighed_corrected_matched_approved_and_made_again_to_the_grams_of_the_ledger() {
    let Published { mut press, yellow, white, clear, blue, recipe, first } = published();
    let pot = press.pot(Some(first), 500.0);
    press.ink(pot, InkFact::PotSet(vec![PotField::Capacity(Some(g(600.0))), PotField::Tare(Some(g(48.0)))]));

    press.pour(pot, yellow, 100.0, PourStep::WeighIn);
    let now = view(&press, pot);
    assert_eq!(now.rows[now.now.unwrap()].name, "Tinting white");
    assert_eq!(now.on_scale, g(148.0));
    assert_eq!(now.rows[1].scale_target, Some(g(298.0)));

    // Six grams too much of the white, read off the scale with the pot on it.
    let form = PourForm { component: Some(white), grams: "304".into(), total: true, ..PourForm::default() };
    let fact = form.check(&press.shop(), pot, PourStep::WeighIn, Some("Ines"), Units::Metric).unwrap();
    press.event(fact);
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
    press.all(facts);
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
        press.event(form.check(&press.shop(), pot, PourStep::Correction, None, Units::Metric).unwrap());
    }
    let card = pot_card(&press.shop(), pot).unwrap();
    assert_eq!((card.label.holds.revision.as_ref().unwrap().number, card.label.holds.changes), (1, 2));
    assert_eq!(card.stage, PotStage::Mixed);

    press.event(InkFact::Matched { pot, reading: None, by: None });
    assert_eq!(pot_card(&press.shop(), pot).unwrap().stage, PotStage::Matched);
    let facts = approve_facts(&press.shop(), pot, "", "Harbour Choir", Some("Moss"), &mut id);
    assert_eq!(facts.len(), 2, "the pot is no revision as written, so it becomes one");
    press.all(facts);

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
    press.event(later);
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

#[test]
fn the_ledger_tells_the_recipe_after_every_line_and_what_was_taken_back() {
    let Published { mut press, yellow, white, clear, blue, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    for (component, grams) in [(yellow, 100.0), (white, 150.0), (clear, 250.0)] {
        press.pour(pot, component, grams, PourStep::WeighIn);
    }
    let slip = press.pour(pot, blue, 50.0, PourStep::Correction);
    press.say(slip, Fact::Deleted);
    let touch = press.pour(pot, blue, 5.0, PourStep::Correction);
    press.say(touch, Fact::Photo(PhotoFact::Taken { photo: PhotoId([1; 32]), width: 9, height: 9, bytes: 9 }));
    let card = pot_card(&press.shop(), pot).unwrap();
    assert_eq!(card.ledger.len(), 5);
    let totals: Vec<Grams> = card.ledger.iter().map(|line| line.total).collect();
    assert_eq!(totals, [100.0, 250.0, 500.0, 500.0, 505.0].map(g));
    let line = &card.ledger[4];
    assert!(matches!(&line.what, LedgerKind::Poured { name, step: PourStep::Correction, .. } if name == "Blue"));
    assert_eq!((line.photos, line.deleted, card.ledger[3].deleted), (1, false, true));
    assert!((line.percentages[3].1 - 5.0 / 505.0 * 100.0).abs() < 1e-9);
    assert!((line.percentages.iter().map(|(_, percent)| percent).sum::<f64>() - 100.0).abs() < 1e-9);
    let blue_row = card.rows.iter().find(|row| row.component == blue).unwrap();
    assert_eq!((blue_row.grams, blue_row.began), (g(5.0), Some(0.0)));

    // Told again under its id, a line is corrected where it stands.
    let told = InkFact::Poured {
        pot,
        component: blue,
        grams: g(6.0),
        step: PourStep::Correction,
        note: "read wrong".into(),
        reading: Some(ColourReading::from_lab([50.0, 1.0, -2.0], ReadBy::Photo)),
        by: None,
    };
    press.ink(touch, told);
    let card = pot_card(&press.shop(), pot).unwrap();
    assert_eq!((card.ledger.len(), card.ledger[4].total), (5, g(506.0)));
    assert_eq!(card.ledger[4].note, "read wrong");
}

#[test]
fn percentages_that_are_off_are_explained_and_mended() {
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
fn a_recipe_form_answers_beside_its_rows_and_records_only_what_changed() {
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
    let second = press.event(fact);
    assert_eq!(revision_name(&press.shop(), second).unwrap().number, 2);
}

/// Source: `ink_recipe_by_weight.csv`: 500 g and 10 % and 3 % on top weigh 565 g.
#[test]
fn percent_on_top_of_five_hundred_grams_is_weighed_as_published() {
    let mut press = Press::new();
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
    press.ink(recipe, InkFact::RecipeSet(checked.fields));
    let fact = revision_fact(&press.shop(), recipe, checked.parts.unwrap(), None, None, "", None);
    let revision = press.event(fact);
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
    let problems = form.check(&press.shop(), None, Some(revision), None, Units::Metric).unwrap_err();
    assert_eq!(problems["size"], FormProblem::Number(NumberProblem::TooHigh { most: 550.0 }));
    let form = PotForm { capacity: "600".into(), ..form };
    let fields = form.check(&press.shop(), None, Some(revision), None, Units::Metric).unwrap();
    let pot = press.id();
    press.ink(pot, InkFact::PotSet(fields));
    let weighing = weigh_in(&press.shop(), pot).unwrap();
    assert_eq!(weighing.steps.iter().map(|step| step.target).collect::<Vec<_>>(), [500.0, 50.0, 15.0].map(g));
    let shop = press.shop();
    let same = PotForm::of(shop.ink.pot(pot).unwrap(), Units::UsCustomary);
    assert_eq!(same.check(&shop, Some(pot), Some(revision), None, Units::UsCustomary).unwrap(), []);
}

#[test]
fn the_scale_of_the_shop_rounds_the_targets_and_says_what_that_costs() {
    let Published { mut press, first, .. } = published();
    let form = ScaleForm { step: "2".into(), most: "400".into() };
    press.ink(Uuid::nil(), form.check().unwrap());
    let pot = press.pot(Some(first), 333.0);
    let now = view(&press, pot);
    // By hand: 66.6, 99.9 and 166.5 g in steps of 2 g.
    assert_eq!(now.rows.iter().map(|row| row.step.target).collect::<Vec<_>>(), [66.0, 100.0, 166.0].map(g));
    assert!((now.worst - 0.6 / 66.6).abs() < 1e-9);
    assert_eq!(now.overloads, Grams::ZERO);
    press.ink(pot, InkFact::PotSet(vec![PotField::Tare(Some(g(100.0))), PotField::Capacity(Some(g(300.0)))]));
    let now = view(&press, pot);
    assert_eq!((now.overloads, now.spills), (g(32.0), g(32.0)));
    assert_eq!(ScaleForm::of(&press.shop().ink.scale), form);
    assert_eq!(ScaleForm::default().check().unwrap_err()["step"], FormProblem::Missing);
    assert_eq!(Scale::default().step, g(0.1));
}

/// By hand: 0.01 % of 300 g are 30 mg, which a scale of tenths cannot show.
#[test]
fn what_is_too_little_for_the_scale_is_asked_for_all_the_same_and_said_to_be() {
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
    let out = press.event(InkFact::Accepted { pot, component: blue, grams: Grams::ZERO, by: None });
    assert!(view(&press, pot).done);
    assert_eq!(pot_state(&press.shop(), pot).holds, None);
    press.say(out, Fact::Deleted);
    press.pour(pot, blue, 0.1, PourStep::WeighIn);
    assert!(view(&press, pot).done);
    assert_eq!(pot_state(&press.shop(), pot).holds, Some(tinted));
}

#[test]
fn another_size_holds_at_the_scale_after_the_rest_was_scaled() {
    let Published { mut press, yellow, white, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    let edit = |press: &Press, typed: &str, id: u128| {
        let shop = press.shop();
        let form = PotForm { size: typed.into(), ..PotForm::to_edit(&shop, pot, Units::Metric).unwrap() };
        form.edit(&shop, pot, Some("Ines"), Units::Metric, || Uuid::from_u128(id)).unwrap()
    };
    // Nothing is in yet: the pot has another size.
    let facts = edit(&press, "400", 0x9300);
    assert_eq!(facts, [(pot, Fact::Ink(InkFact::PotSet(vec![PotField::Size(Some(BatchSize::Whole(g(400.0))))])))]);
    press.pour(pot, yellow, 104.0, PourStep::WeighIn);
    let weighing = weigh_in(&press.shop(), pot).unwrap();
    let id = press.id();
    let facts = repair_facts(&press.shop(), pot, &weighing, Repair::ScaleRest, None, || id);
    press.all(facts);
    assert_eq!(PotForm::to_edit(&press.shop(), pot, Units::Metric).unwrap().size, "520");
    assert_eq!(edit(&press, "520", 0x9301), [], "as it is");

    let facts = edit(&press, "600", 0x9302);
    assert!(matches!(&facts[..], [(_, Fact::Ink(InkFact::Resized { whole, .. }))] if *whole == g(600.0)));
    press.all(facts);
    let now = view(&press, pot);
    assert_eq!(now.rows.iter().map(|row| row.step.target).collect::<Vec<_>>(), [120.0, 180.0, 300.0].map(g));
    assert_eq!(now.undo, Some(Uuid::from_u128(0x9302)));
    press.say(Uuid::from_u128(0x9302), Fact::Deleted);
    assert_eq!(view(&press, pot).rows[1].step.target, g(156.0));
    assert_eq!(weigh_in(&press.shop(), pot).unwrap().steps[1].component, white);
}

#[test]
fn a_weigh_in_goes_one_component_at_a_time_in_any_order_and_back() {
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
    press.say(last, Fact::Deleted);
    let now = view(&press, pot);
    assert_eq!((now.rows[1].step.poured, now.holds_grams), (g(90.0), g(90.0)));
    press.say(last, Fact::Restored);
    assert_eq!(view(&press, pot).holds_grams, g(150.0));

    let form = PourForm { component: Some(yellow), grams: "150".into(), total: true, ..PourForm::default() };
    let problems = form.check(&press.shop(), pot, PourStep::WeighIn, None, Units::Metric).unwrap_err();
    assert_eq!(problems["grams"], FormProblem::Number(NumberProblem::TooLow { least: 150.001 }));
    let empty = PourForm::default().check(&press.shop(), pot, PourStep::WeighIn, None, Units::Metric).unwrap_err();
    assert_eq!((empty["component"], empty["grams"]), (FormProblem::Missing, FormProblem::Missing));
    assert!(weigh_in_view(&press.shop(), Uuid::nil(), None).is_none());
    let loose = press.pot(None, 0.0);
    assert!(weigh_in_view(&press.shop(), loose, None).is_none());
}

#[test]
fn both_ways_on_from_an_over_pour_are_worked_out_with_pot_and_shelf() {
    let Published { mut press, yellow, white, clear, first, .. } = published();
    press.event(InkFact::Counted { component: clear, grams: g(255.0), by: None });
    press.event(InkFact::Counted { component: yellow, grams: g(900.0), by: None });
    let pot = press.pot(Some(first), 500.0);
    press.ink(pot, InkFact::PotSet(vec![PotField::Capacity(Some(g(510.0)))]));
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
    press.all(facts);
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
fn what_the_shelf_lacked_before_an_over_pour_is_said_and_stands_in_no_way() {
    let Published { mut press, yellow, clear, first, .. } = published();
    press.event(InkFact::Counted { component: clear, grams: g(240.0), by: None });
    press.event(InkFact::Counted { component: yellow, grams: g(900.0), by: None });
    let pot = press.pot(Some(first), 500.0);
    press.ink(pot, InkFact::PotSet(vec![PotField::Capacity(Some(g(505.0)))]));
    press.pour(pot, yellow, 101.0, PourStep::WeighIn);
    let over = view(&press, pot).over.unwrap();
    // By hand: 250 g of the clear were to go in, of which 240 are there; scaled they are 252.5.
    let clear_row = |rows: &[lastpull_core::ink::RepairRow]| (rows[2].lacks, rows[2].lacks_more);
    assert_eq!(clear_row(&over.accept.rows), (g(10.0), Grams::ZERO));
    assert!(over.accept.is_possible());
    assert_eq!(clear_row(&over.scale_rest.rows), (g(12.5), g(2.5)));
    assert!(!over.scale_rest.is_possible() && !over.scale_rest.spills.is_positive());
    // A pot that is too small anyway is no reason against what makes it no fuller.
    press.ink(pot, InkFact::PotSet(vec![PotField::Capacity(Some(g(450.0)))]));
    let over = view(&press, pot).over.unwrap();
    assert_eq!((over.accept.spills, over.accept.spills_more), (g(51.0), g(1.0)));
}

#[test]
fn a_pour_taken_back_changes_what_went_over_into_another_pot() {
    let Published { mut press, yellow, white, .. } = published();
    let [one, two] = [0, 1].map(|_| press.pot(None, 0.0));
    press.pour(one, yellow, 100.0, PourStep::Correction);
    let slip = press.pour(one, white, 100.0, PourStep::Correction);
    press.event(InkFact::Moved { from: one, to: two, grams: g(50.0), by: None });
    assert_eq!(pot_state(&press.shop(), two).contents.of(white), g(25.0));
    press.say(slip, Fact::Deleted);
    let shop = press.shop();
    assert_eq!(pot_state(&shop, two).contents.rows(), [(yellow, g(50.0))]);
    assert_eq!(pot_state(&shop, one).contents.total(), g(50.0));
}

#[test]
fn ink_that_was_found_to_match_no_longer_does_when_a_pour_before_it_is_taken_back_or_was_of_other_grams() {
    let Published { mut press, yellow, white, blue, .. } = published();
    let [pot, other] = [0, 1].map(|_| press.pot(None, 0.0));
    press.pour(pot, yellow, 100.0, PourStep::Correction);
    let slip = press.pour(pot, blue, 5.0, PourStep::Correction);
    press.say(slip, Fact::Deleted);
    let touch = press.pour(pot, white, 10.0, PourStep::Correction);
    let found = press.event(InkFact::Matched { pot, reading: None, by: None });
    let matches = |press: &Press, pot| pot_state(&press.shop(), pot).matched;
    assert_eq!(matches(&press, pot), Some(found), "what was taken back before it was seen is no matter");

    press.say(touch, Fact::Deleted);
    assert_eq!(matches(&press, pot), None);
    press.say(touch, Fact::Restored);
    assert_eq!(matches(&press, pot), Some(found));
    let poured = |milligrams, note: &str| InkFact::Poured {
        pot,
        component: white,
        grams: Grams::from_milligrams(milligrams),
        step: PourStep::Correction,
        note: note.into(),
        reading: None,
        by: None,
    };
    press.ink(touch, poured(10_000, "a touch"));
    assert_eq!(matches(&press, pot), Some(found), "a remark changes no ink");

    // What went over into another pot is the same ink, found to match or not.
    press.event(InkFact::Moved { from: pot, to: other, grams: g(50.0), by: None });
    assert_eq!(matches(&press, other), Some(found));
    press.ink(touch, poured(12_000, "it was twelve"));
    assert_eq!((matches(&press, pot), matches(&press, other)), (None, None));
    let again = press.event(InkFact::Matched { pot, reading: None, by: None });
    assert_eq!(matches(&press, pot), Some(again));
    // A correction after it that is taken back leaves what matched.
    let late = press.pour(pot, blue, 1.0, PourStep::Correction);
    assert_eq!(matches(&press, pot), None);
    press.say(late, Fact::Deleted);
    assert_eq!(matches(&press, pot), Some(again));
}

#[test]
fn a_pot_split_stays_its_revision_and_one_mixed_with_another_does_not() {
    let Published { mut press, yellow, white, clear, blue, recipe, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    for (component, grams) in [(yellow, 100.0), (white, 150.0), (clear, 250.0)] {
        press.pour(pot, component, grams, PourStep::WeighIn);
    }
    press.event(InkFact::Matched { pot, reading: None, by: None });
    let half = press.pot(None, 0.0);
    press.ink(half, InkFact::PotSet(vec![PotField::Capacity(Some(g(260.0)))]));
    let form = RemovalForm { grams: "300".into(), ..RemovalForm::default() };
    let problems = form.moved(&press.shop(), [pot, half], None, Units::Metric).unwrap_err();
    assert_eq!(problems["grams"], FormProblem::Number(NumberProblem::TooHigh { most: 260.0 }));
    // What the scale shows of the first pot afterwards.
    let form = RemovalForm { grams: "250".into(), total: true, ..RemovalForm::default() };
    let fact = form.moved(&press.shop(), [pot, half], None, Units::Metric).unwrap();
    press.event(fact);
    let shop = press.shop();
    let state = pot_state(&shop, half);
    assert_eq!((state.holds, state.contents.of(white)), (Some(first), g(75.0)));
    assert_eq!(pot_stage(&shop, half, &state), PotStage::Matched);
    assert_eq!(headroom_of(&shop, half), Some(g(10.0)));

    // Merged again they are the same ink; a correction makes another of it.
    let back = press.event(InkFact::Moved { from: half, to: pot, grams: g(50.0), by: None });
    assert_eq!(pot_state(&press.shop(), pot).holds, Some(first));
    press.say(back, Fact::Deleted);
    press.pour(half, blue, 1.0, PourStep::Correction);
    press.event(InkFact::Moved { from: half, to: pot, grams: g(50.0), by: None });
    let shop = press.shop();
    let state = pot_state(&shop, pot);
    assert_eq!((state.holds, state.matched, state.changes), (None, None, 1));

    // What it holds can be topped up, in its own proportions.
    let more = top_up(&shop, pot, g(600.0));
    let before: Vec<f64> = [yellow, white, clear, blue].map(|id| percent_in(&shop, pot, id)).to_vec();
    assert!((more.iter().map(|(_, grams)| *grams).sum::<Grams>().grams() - 300.0).abs() < 0.2);
    let after = after_addition(&shop, pot, &more);
    for (part, before) in after.parts.iter().zip(&before) {
        assert!((part.percent - before).abs() < 0.02, "{part:?} {before}");
    }
    for (component, grams) in more {
        press.pour(pot, component, grams.grams(), PourStep::TopUp);
    }
    assert_eq!(pot_state(&press.shop(), pot).changes, 1);
    let saved = save_pot(&press.shop(), pot, recipe, "", None).unwrap();
    let saved = press.event(saved);
    assert_eq!(pot_state(&press.shop(), pot).holds, Some(saved));
    assert_eq!(top_up(&press.shop(), Uuid::nil(), g(5.0)), []);
}

#[test]
fn more_than_a_pot_holds_is_not_taken_out_and_is_told() {
    let Published { mut press, yellow, .. } = published();
    let pot = press.pot(None, 0.0);
    press.ink(pot, InkFact::PotSet(vec![PotField::Tare(Some(g(40.0)))]));
    let form = RemovalForm { grams: "5".into(), ..RemovalForm::default() };
    assert!(form.wasted(&press.shop(), pot, None, Units::Metric).unwrap_err().contains_key("grams"));
    press.pour(pot, yellow, 30.0, PourStep::Correction);
    let form = RemovalForm { grams: "31".into(), ..RemovalForm::default() };
    let problems = form.wasted(&press.shop(), pot, None, Units::Metric).unwrap_err();
    assert_eq!(problems["grams"], FormProblem::Number(NumberProblem::TooHigh { most: 30.0 }));
    let form = RemovalForm { grams: "39".into(), total: true, ..RemovalForm::default() };
    let problems = form.wasted(&press.shop(), pot, None, Units::Metric).unwrap_err();
    assert_eq!(problems["grams"], FormProblem::Number(NumberProblem::TooLow { least: 40.0 }));
    // Two phones, each emptying it.
    for device in [PHONE, TABLET] {
        press.on(device);
        press.event(InkFact::Wasted { pot, grams: g(20.0), note: "dried".into(), by: None });
    }
    let card = pot_card(&press.shop(), pot).unwrap();
    assert_eq!((card.wasted, card.shortfall, card.label.grams), (g(30.0), g(10.0), Grams::ZERO));
    assert_eq!((card.stage, card.on_scale), (PotStage::Empty, g(40.0)));
}

#[test]
fn a_client_says_yes_to_one_revision_and_a_change_after_it_is_none() {
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
    press.all(facts);
    assert_eq!(best_revision(&press.shop(), recipe), Some(first));
    let label = pot_label(&press.shop(), pot).unwrap();
    assert_eq!(label.approval.unwrap().client, "Harbour Choir");
    press.pour(pot, blue, 1.0, PourStep::Correction);
    let label = pot_label(&press.shop(), pot).unwrap();
    assert!(label.approval.is_none() && label.holds.changes == 1);
    assert_eq!(approvals_of(&press.shop(), recipe).len(), 1, "the yes to the revision stands");
    press.say(yes, Fact::Deleted);
    assert!(approvals_of(&press.shop(), recipe).is_empty());

    // A pot mixed by eye becomes a recipe of its own with the client's yes.
    let loose = press.pot(None, 0.0);
    press.ink(loose, InkFact::PotSet(vec![PotField::Name("Violet by eye".into())]));
    press.pour(loose, blue, 30.0, PourStep::Correction);
    press.pour(loose, white, 10.0, PourStep::Correction);
    let facts = approve_facts(&press.shop(), loose, "", "Moss", None, &mut id);
    press.all(facts);
    let shop = press.shop();
    let (violet, _) = recipe_named(&shop, "VIOLET by eye").unwrap();
    let again = make_again(&shop, violet, None, BatchSize::Whole(g(100.0))).unwrap();
    assert_eq!(again.rows.iter().map(|row| row.grams).collect::<Vec<_>>(), [75.0, 25.0].map(g));
    assert_eq!(pot_state(&shop, loose).holds, Some(again.revision.id));
}

#[test]
fn a_yes_to_a_pot_that_was_weighed_in_by_half_is_to_what_is_in_it() {
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
    press.all(facts);
    let shop = press.shop();
    let again = make_again(&shop, recipe, None, BatchSize::Whole(g(100.0))).unwrap();
    assert_ne!(again.revision.id, first);
    assert_eq!(again.rows.iter().map(|row| row.grams).collect::<Vec<_>>(), [50.0, 50.0].map(g));
    assert_eq!(save_facts(&shop, Uuid::from_u128(0x77), "", "", None, &mut id), []);
    let label = pot_label(&shop, pot).unwrap();
    assert_eq!(label.by.as_deref(), Some("Ines"), "the first who is named");
}

/// What is in the pot decides what it is called, not the order in which it was told.
#[test]
fn a_pot_is_its_revision_as_written_only_while_it_holds_what_that_asks_for() {
    let Published { mut press, yellow, white, clear, blue, recipe, first } = published();
    let mut ids = 0x9200;
    let mut id = || {
        ids += 1;
        Uuid::from_u128(ids)
    };
    let called = |press: &Press, pot: Subject| {
        let holds = pot_label(&press.shop(), pot).unwrap().holds;
        (holds.revision.map_or(0, |revision| revision.number), holds.changes, holds.as_written)
    };

    // Half of it is in, and poured out in part.
    let pot = press.pot(Some(first), 500.0);
    press.pour(pot, yellow, 100.0, PourStep::WeighIn);
    press.pour(pot, white, 150.0, PourStep::WeighIn);
    let half = press.pot(None, 0.0);
    press.event(InkFact::Moved { from: pot, to: half, grams: g(50.0), by: None });
    assert_eq!((called(&press, pot), called(&press, half)), ((1, 0, false), (1, 0, false)));
    assert_eq!(pot_state(&press.shop(), half).holds, None);
    assert!(!pot_card(&press.shop(), half).unwrap().as_written);
    // Back in, and saved as it is: that is a revision as written, and a yes is to it.
    press.event(InkFact::Moved { from: half, to: pot, grams: g(50.0), by: None });
    let facts = save_facts(&press.shop(), pot, "", "", None, &mut id);
    let second = facts[0].0;
    press.all(facts);
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
    press.all(facts);
    assert_eq!((called(&press, pot), pot_state(&press.shop(), pot).holds), ((3, 0, true), Some(third)));
    assert!(pot_label(&press.shop(), pot).unwrap().approval.is_some());
    press.say(touch, Fact::Deleted);
    assert_eq!((called(&press, pot), pot_state(&press.shop(), pot).holds), ((3, 0, false), None));
    assert_eq!(pot_card(&press.shop(), pot).unwrap().stage, PotStage::Mixed);
    assert!(pot_label(&press.shop(), pot).unwrap().approval.is_none());
    assert_eq!(approvals_of(&press.shop(), recipe).len(), 1, "the yes to the revision stands");
    press.say(touch, Fact::Restored);
    assert!(pot_label(&press.shop(), pot).unwrap().approval.is_some());

    // The revision itself is taken back.
    press.say(third, Fact::Deleted);
    let label = pot_label(&press.shop(), pot).unwrap();
    assert_eq!((label.approval, called(&press, pot)), (None, (1, 1, false)));
}

#[test]
fn a_pot_stays_its_revision_through_rounding_topping_up_and_taking_out() {
    let Published { mut press, yellow, white, clear, first, .. } = published();
    press.ink(Uuid::nil(), InkFact::ScaleSet { step: g(2.0), most: None });
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
        press.event(InkFact::Moved { from: *from, to: pot, grams: g(24.0), by: None });
    }
    for _ in 0..3 {
        let total = pot_state(&press.shop(), pot).contents.total();
        for (component, grams) in top_up(&press.shop(), pot, total.saturating_add(g(11.0))) {
            press.pour(pot, component, grams.grams(), PourStep::TopUp);
        }
        press.event(InkFact::Used { pot, run: None, grams: g(33.333), pieces: 1, paper: None, by: None });
        assert_eq!(pot_state(&press.shop(), pot).holds, Some(first));
    }
}

#[test]
fn a_pot_mixed_by_eye_joins_the_recipe_of_its_name_unless_it_is_called_otherwise() {
    let Published { mut press, blue, recipe, first, .. } = published();
    let mut ids = 0x9400;
    let mut id = || {
        ids += 1;
        Uuid::from_u128(ids)
    };
    let pot = press.pot(None, 0.0);
    press.ink(pot, InkFact::PotSet(vec![PotField::Name("brick".into())]));
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
    press.all(facts);
    let shop = press.shop();
    assert_eq!(shop.ink.recipes().count(), 1);
    assert_eq!(
        (recipe_named(&shop, "brick").map(|(id, _)| id), best_revision(&shop, recipe)),
        (Some(recipe), Some(second))
    );
    assert_eq!((save_as(&shop, pot, "Other"), revisions_of(&shop, recipe)[0].id), (SaveAs::Own(recipe), first));
}

#[test]
fn what_is_typed_at_the_scale_is_short_on_or_over_before_it_is_told() {
    let Published { mut press, yellow, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    press.ink(pot, InkFact::PotSet(vec![PotField::Tare(Some(g(48.0)))]));
    let typed = |press: &Press, text: &str, total: bool| {
        let now = view(press, pot);
        check_scale_entry(&now, &now.rows[now.now.unwrap()], text, total, Units::Metric)
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
fn a_pour_is_told_again_with_why_and_what_a_swatch_read() {
    let Published { mut press, yellow, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    let event = press.pour(pot, yellow, 2.5, PourStep::Correction);
    let mut form = EventNoteForm::of(&press.shop(), event).unwrap();
    assert_eq!(form.check(&press.shop(), event), Ok(None), "as it was");
    form.note = " a touch ".into();
    let fact = form.check(&press.shop(), event).unwrap().unwrap();
    press.ink(event, fact);
    form.note = "x".repeat(20_000);
    assert!(form.check(&press.shop(), event).unwrap_err().contains_key("note"));
    let sample = |l| ColourReading::from_lab([l, 1.0, -2.0], ReadBy::Instrument);
    let read = |l| Some(PhotoSample { sample: sample(l), target: None });
    let again = |press: &Press, event, read| amend_reading_facts(&press.shop(), pot, event, read);
    let line = |press: &Press, at: usize| pot_card(&press.shop(), pot).unwrap().ledger[at].clone();
    assert_eq!(again(&press, event, None), [vec![], vec![]], "as it was");
    let [facts, undo] = again(&press, event, read(40.0));
    press.all(facts);
    assert_eq!(pot_card(&press.shop(), pot).unwrap().ledger.len(), 1, "told again, it is the same line");
    let told = line(&press, 0);
    assert_eq!((told.grams, told.note.as_str(), told.reading), (g(2.5), "a touch", Some(sample(40.0))));
    press.all(undo);
    assert_eq!(line(&press, 0).reading, None);
    let swatch = press.event(InkFact::SwatchRead { pot, reading: sample(50.0), note: String::new(), by: None });
    assert_eq!(again(&press, swatch, None), [vec![], vec![]], "a reading without one is none");
    let [facts, _] = again(&press, swatch, read(51.0));
    press.all(facts);
    assert_eq!(line(&press, 1).reading, Some(sample(51.0)));
    assert_eq!(again(&press, pot, read(1.0)), [vec![], vec![]]);
    assert_eq!(last_added(&press.shop(), pot), Some(yellow));
    press.say(event, Fact::Deleted);
    assert_eq!(last_added(&press.shop(), pot), None);
    assert_eq!(EventNoteForm::of(&press.shop(), pot), None);
}

#[test]
fn a_new_pot_knows_its_revision_its_runs_and_the_pots_the_shop_has() {
    let Published { mut press, yellow, clear, recipe, first, .. } = published();
    let run = ordered(&mut press, "Tour tees", "brick", Fabric::Cotton, 100);
    let other = ordered(&mut press, "Caps", "White", Fabric::Cotton, 10);
    let (print, _) = plain_print().check(Units::Metric).unwrap();
    press.ink(run, InkFact::PrintSet(Some(print)));
    let pot = press.pot(Some(first), 80.0);
    let fields = vec![PotField::Capacity(Some(g(900.0))), PotField::Tare(Some(g(48.0)))];
    press.ink(pot, InkFact::PotSet(fields));
    press.pour(pot, yellow, 80.0, PourStep::Correction);

    let shop = press.shop();
    let new = new_pot_for_revision(&shop, first).unwrap();
    assert_eq!((new.ink.as_str(), new.recipe, new.newer), ("Brick", Some(recipe), false));
    assert_eq!(new.vessel, [Some(g(900.0)), Some(g(48.0))]);
    assert_eq!((new.name.as_str(), new.on_top), ("Brick", false), "the open pot is called Pot");
    press.ink(pot, InkFact::PotSet(vec![PotField::Name("BRICK".into())]));
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
    press.event(yes);
    let parts = [(yellow, 40.0), (clear, 60.0)].map(|(component, percent)| Part {
        component,
        share: Share::from_percent(percent),
        on_top: false,
    });
    let fact = revision_fact(&press.shop(), recipe, parts.to_vec(), Some(first), None, "", None);
    let second = press.event(fact);
    let shop = press.shop();
    let new = new_pot_for_run(&shop, run).unwrap();
    assert!(new.newer && new.approved.is_none() && new.revision.unwrap().id == first);
    let new = new_pot_for_revision(&shop, second).unwrap();
    assert!(!new.newer && new.approval.is_none());
    assert_eq!(new.approved.unwrap().revision.id, first);
    assert!(new_pot_for_revision(&shop, recipe).is_none() && new_pot_for_run(&shop, second).is_none());
}

#[test]
fn two_phones_that_number_a_revision_alike_are_told_apart_by_its_mark() {
    let Published { mut press, yellow, clear, recipe, first, .. } = published();
    let alone = press.shop();
    let parts = |yellow_share: f64| {
        [(yellow, yellow_share), (clear, 100.0 - yellow_share)]
            .map(|(component, percent)| Part { component, share: Share::from_percent(percent), on_top: false })
            .to_vec()
    };
    let on_phone = revision_fact(&alone, recipe, parts(10.0), Some(first), None, "", None);
    let on_tablet = revision_fact(&alone, recipe, parts(12.0), Some(first), None, "", None);
    let one = press.event(on_phone);
    press.on(TABLET);
    let two = press.event(on_tablet);
    let names = [one, two].map(|id| revision_name(&press.shop(), id).unwrap());
    assert_eq!([names[0].number, names[1].number], [2, 2]);
    assert!(names.iter().all(|name| name.shares_number) && names[0].mark != names[1].mark);
    assert!(!revision_name(&press.shop(), first).unwrap().shares_number);
    press.say(two, Fact::Deleted);
    assert!(!revision_name(&press.shop(), one).unwrap().shares_number);
    let next = revision_fact(&press.shop(), recipe, parts(5.0), None, None, "", None);
    assert!(matches!(next, InkFact::RevisionSaved { number: 3, .. }));
    assert_eq!(revisions_of(&press.shop(), recipe).len(), 2);
}

#[test]
fn what_is_left_on_the_shelf_follows_from_weighings_deliveries_and_pours() {
    let Published { mut press, yellow, white, .. } = published();
    let pot = press.pot(None, 0.0);
    press.pour(pot, yellow, 10.0, PourStep::Correction);
    assert_eq!(stock_left(&press.shop(), yellow), None);
    let form = StockForm { grams: "2".into(), note: "lot 7".into() };
    // Two ounces, by the definition of the ounce.
    press.event(form.delivered(yellow, None, Units::UsCustomary).unwrap());
    assert_eq!(stock_left(&press.shop(), yellow), Some(Grams::from_milligrams(56_699)));
    press.event(StockForm { grams: "500".into(), ..form.clone() }.counted(yellow, None, Units::Metric).unwrap());
    let pour = press.pour(pot, yellow, 120.0, PourStep::Correction);
    press.event(StockForm { grams: "1000".into(), ..form }.delivered(yellow, None, Units::Metric).unwrap());
    assert_eq!(stock_left(&press.shop(), yellow), Some(g(1_380.0)));
    press.say(pour, Fact::Deleted);
    assert_eq!(stock_left(&press.shop(), yellow), Some(g(1_500.0)));
    assert_eq!(StockForm::default().counted(white, None, Units::Metric).unwrap_err()["grams"], FormProblem::Missing);
    assert!(StockForm::default().delivered(white, None, Units::Metric).is_err());
}

/// Art of 250 by 200 mm, all of it printing, through a mesh of 40 cm³/m²: two grams a print at a density of 1.
fn plain_print() -> PrintForm {
    PrintForm {
        ink: InkUseForm { width: "25".into(), height: "20".into(), pieces: "100".into(), ..InkUseForm::default() },
        volume: "40".into(),
        ..PrintForm::default()
    }
}

fn ordered(press: &mut Press, title: &str, ink: &str, fabric: Fabric, pieces: u32) -> RunId {
    let run = press.order(title, None, fabric, &[(Size::M, pieces)]);
    press.set_up(run, vec![RunField::Ink(ink.into())]);
    run
}

#[test]
fn a_batch_is_suggested_by_formula_and_then_by_what_such_runs_used() {
    let Published { mut press, yellow, recipe, first, .. } = published();
    let run = ordered(&mut press, "Tour tees", "Brick", Fabric::Cotton, 100);
    let (print, pieces) = plain_print().check(Units::Metric).unwrap();
    press.ink(run, InkFact::PrintSet(Some(print)));
    let shop = press.shop();
    // By hand: 0.05 m² × 40 cm³/m² × 1 g/cm³ × 100 pieces, and a tenth.
    let batch = suggested_batch(&shop, run, &print, pieces);
    assert_eq!((batch.printed, batch.loss, batch.grams), (g(200.0), g(20.0), g(220.0)));
    assert!(batch.experience.is_none());

    // An earlier run took 150 g for 50 pieces: half as much again as the 100 g on paper.
    let earlier = ordered(&mut press, "Earlier", "brick", Fabric::Cotton, 50);
    press.ink(earlier, InkFact::PrintSet(Some(print)));
    let pot = press.pot(Some(first), 0.0);
    press.pour(pot, yellow, 400.0, PourStep::Correction);
    let form = RemovalForm { grams: "150".into(), pieces: "50".into(), ..RemovalForm::default() };
    let fact = form.used(&press.shop(), pot, Some(earlier), None, Units::Metric).unwrap();
    assert!(matches!(fact, InkFact::Used { paper: Some(paper), .. } if paper == g(100.0)));
    let weighed = press.event(fact);
    // Without a mesh in the set-up they are alike in fabric only.
    let learned = suggested_batch(&press.shop(), run, &print, 100);
    assert_eq!(learned.experience.unwrap().similarity, Similarity::Fabric);
    assert_eq!(learned.grams, g(300.0));
    for id in [run, earlier] {
        press.set_up(id, vec![RunField::Mesh(Some(160))]);
    }
    let other = ordered(&mut press, "Other", "White", Fabric::Polyester, 50);
    press.ink(other, InkFact::PrintSet(Some(print)));
    let form = RemovalForm { grams: "60".into(), ..form };
    let fact = form.used(&press.shop(), pot, Some(other), None, Units::Metric).unwrap();
    press.event(fact);
    let learned = suggested_batch(&press.shop(), run, &print, 100);
    let experience = learned.experience.unwrap();
    assert_eq!((experience.similarity, experience.weighings), (Similarity::Ink, 1));
    assert!((experience.ratio - 1.5).abs() < 1e-9);
    press.say(weighed, Fact::Deleted);
    let learned = suggested_batch(&press.shop(), run, &print, 100);
    assert_eq!((learned.experience.unwrap().similarity, learned.grams), (Similarity::Any, g(120.0)));
    assert_eq!(recipe_named(&press.shop(), " b r i c k").unwrap().0, recipe);
    assert_eq!(ink_key("B rick"), ink_key("brick"));
}

#[test]
fn a_pot_is_likely_printed_on_its_own_run_or_else_on_the_one_on_the_press() {
    let Published { mut press, yellow, first, .. } = published();
    let pot = press.pot(Some(first), 0.0);
    press.pour(pot, yellow, 100.0, PourStep::Correction);
    let likely = |press: &Press| likely_run(&runs_for_pot(&press.shop(), pot));
    let [waits, prints] = ["Waits", "Prints"].map(|title| ordered(&mut press, title, "brick", Fabric::Cotton, 10));
    let other = ordered(&mut press, "Other ink", "White", Fabric::Cotton, 10);
    press.start_at(10, other);
    assert_eq!(likely(&press), None, "nothing says on which");
    press.start_at(20, prints);
    assert_eq!(likely(&press), Some(prints));
    press.ink(pot, InkFact::PotSet(vec![PotField::Run(Some(waits))]));
    assert_eq!(likely(&press), Some(prints), "its own has not begun");
    press.end_at(30, prints);
    assert_eq!(likely(&press), Some(waits));
    press.start_at(40, waits);
    assert_eq!(likely(&press), Some(waits));
}

#[test]
fn a_batch_larger_than_any_is_refused_before_it_is_told() {
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
    let fields = form.check(&press.shop(), None, Some(tinted), None, Units::UsCustomary).unwrap();
    assert!(Fact::Ink(InkFact::PotSet(fields)).in_bounds());
    let parts = [(clear, 100.0, false), (blue, 400.0, true)].map(|(component, percent, on_top)| Part {
        component,
        share: Share::from_percent(percent),
        on_top,
    });
    assert_eq!(BatchSize::Ink(Grams::MOST).whole(&parts), Grams::MOST);
}

#[test]
fn absurd_weighings_teach_nothing_and_no_batch_is_suggested_beyond_bounds() {
    let Published { mut press, .. } = published();
    let run = ordered(&mut press, "Tour tees", "Brick", Fabric::Cotton, 100);
    let (print, _) = plain_print().check(Units::Metric).unwrap();
    press.ink(run, InkFact::PrintSet(Some(print)));
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
        press.event(used(paper));
        assert!(suggested_batch(&press.shop(), run, &print, 100).experience.is_none(), "{paper} mg on paper");
    }
    press.event(used(100_000));
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
fn the_print_form_begins_with_what_the_shop_knows_of_the_run() {
    let Published { mut press, yellow, white, clear, .. } = published();
    let run = ordered(&mut press, "Tour tees", "Brick", Fabric::Cotton, 60);
    let screen = press.id();
    let sheet = MeshSheet {
        open_area_permille: Some(400),
        thickness_um: Some(100),
        ..MeshSheet::of_count(MeshCount::PerInch(160))
    };
    let fields = vec![ScreenField::Label("A1".into()), ScreenField::Mesh(Some(sheet))];
    press.say(screen, Fact::Screen(ScreenFact::Set(fields)));
    press.set_up(run, vec![RunField::Screens("A1".into()), RunField::Hits(2)]);
    let form = PrintForm::of(&press.shop(), run, Units::Metric);
    // Source: theoretical ink volume is open area by thickness: 0.4 × 100 µm.
    assert_eq!((form.volume.as_str(), form.ink.hits.as_str(), form.ink.pieces.as_str()), ("40", "2", "60"));
    assert_eq!(form.ink.density, "1", "no density of a component is known");
    for (component, density) in [(yellow, 1_250), (white, 2_000), (clear, 1_000)] {
        press.ink(component, InkFact::ComponentSet(vec![ComponentField::Density(Some(density))]));
    }
    // By hand: 100 g are 16 + 15 + 50 cm³.
    assert_eq!(PrintForm::of(&press.shop(), run, Units::Metric).ink.density, "1.23");
    let mut typed = plain_print();
    typed.ink.pieces = "60".into();
    let (print, _) = typed.check(Units::Metric).unwrap();
    assert_eq!(print.width, Length::from_millimetres(250.0));
    press.ink(run, InkFact::PrintSet(Some(print)));
    assert_eq!(PrintForm::of(&press.shop(), run, Units::Metric), typed);
    press.ink(run, InkFact::PrintSet(None));
    assert_eq!(PrintForm::of(&press.shop(), run, Units::Metric).volume, "40");
    let empty = ordered(&mut press, "Not counted out yet", "Brick", Fabric::Cotton, 0);
    assert_eq!(PrintForm::of(&press.shop(), empty, Units::Metric).ink.pieces, "1", "then it is told for one");
    let problems = PrintForm::default().check(Units::Metric).unwrap_err();
    assert_eq!((problems["width"], problems["volume"]), (FormProblem::Missing, FormProblem::Missing));
}

#[test]
fn coming_runs_share_the_pots_and_say_what_is_low_and_what_to_buy() {
    let Published { mut press, yellow, white, clear, first, .. } = published();
    let (print, _) = plain_print().check(Units::Metric).unwrap();
    let runs = [("First", 100), ("Second", 200)].map(|(title, pieces)| {
        let run = ordered(&mut press, title, "Brick", Fabric::Cotton, pieces);
        press.ink(run, InkFact::PrintSet(Some(print)));
        run
    });
    let unknown = ordered(&mut press, "Third", "Teal", Fabric::Cotton, 10);
    press.say(Uuid::nil(), Fact::RunsOrdered(vec![runs[0], runs[1], unknown]));
    let pot = press.pot(Some(first), 300.0);
    for (component, grams) in [(yellow, 60.0), (white, 90.0), (clear, 150.0)] {
        press.pour(pot, component, grams, PourStep::WeighIn);
    }
    // By hand: 220 g and 440 g are needed, a pot holds 300 g, so the second run lacks 360 g: 72, 108, 180.
    let needed = ink_needed(&press.shop());
    let row = |at: usize| (needed[at].run, needed[at].grams, needed[at].in_pots, needed[at].to_mix);
    assert_eq!(row(0), (runs[0], Some(g(220.0)), g(220.0), Some(Grams::ZERO)));
    assert_eq!(row(1), (runs[1], Some(g(440.0)), g(80.0), Some(g(360.0))));
    assert_eq!(row(2), (unknown, None, Grams::ZERO, None));

    press.event(InkFact::Counted { component: yellow, grams: g(50.0), by: None });
    press.event(InkFact::Counted { component: white, grams: g(150.0), by: None });
    press.event(InkFact::Counted { component: clear, grams: g(190.0), by: None });
    press.ink(
        yellow,
        InkFact::ComponentSet(vec![ComponentField::Tub(Some(g(20.0))), ComponentField::Cost(Some(5_000))]),
    );
    press.ink(white, InkFact::ComponentSet(vec![ComponentField::LowAt(Some(g(200.0)))]));
    let view = stock_view(&press.shop());
    let of = |id: Subject| view.rows.iter().find(|row| row.component == id).unwrap();
    assert_eq!(of(yellow).low, Some(LowReason::ForRun { run: runs[1], title: "Second".into(), short: g(22.0) }));
    // Two tubs of 20 g for 22 g, at 50.00 a kilogram.
    let buy = of(yellow).buy.unwrap();
    assert_eq!((buy.grams, buy.tubs, buy.cost), (g(40.0), Some(2), Some(200)));
    assert_eq!((of(white).required, of(white).low.clone()), (g(108.0), Some(LowReason::BelowLimit)));
    let buy = of(white).buy.unwrap();
    assert_eq!((buy.grams, buy.tubs, buy.cost), (g(158.0), None, None));
    assert_eq!((of(clear).low.clone(), of(clear).buy), (None, None));
    assert_eq!((view.low, view.cost, view.unpriced), (2, 200, 1));
    assert!(view.rows[0].low.is_some() && view.rows[1].low.is_some());
    assert_eq!(view.unknown.iter().map(|need| need.run).collect::<Vec<_>>(), [unknown]);
    let shelf = ink_shelf(&press.shop());
    assert_eq!((shelf.low, shelf.components, shelf.pots.len(), shelf.needed.len()), (2, 4, 1, 3));
    assert_eq!(shelf.recipes[0].in_pots, g(300.0));

    // A pot meant for the second run is not given to the first.
    press.ink(pot, InkFact::PotSet(vec![PotField::Run(Some(runs[1]))]));
    let needed = ink_needed(&press.shop());
    assert_eq!((needed[0].in_pots, needed[1].in_pots), (Grams::ZERO, g(300.0)));
    let label = pot_label(&press.shop(), pot).unwrap();
    assert_eq!((label.job.as_str(), label.ink.as_str(), label.name.as_str()), ("Second", "Brick", "Brick"));
}

#[test]
fn the_limits_of_data_sheets_are_held_against_recipe_pot_and_addition() {
    let Published { mut press, yellow, white, clear, blue, recipe, first } = published();
    let most = |percent| Some(Share::from_percent(percent));
    press.ink(clear, InkFact::ComponentSet(vec![ComponentField::MostPigment(most(50.0))]));
    press.ink(blue, InkFact::ComponentSet(vec![ComponentField::Most(most(2.0))]));
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
    press.event(InkFact::Counted { component: blue, grams: g(4.0), by: None });
    assert_eq!(after_addition(&press.shop(), pot, &[(blue, g(15.0))]).lacks, [(blue, g(11.0))]);
    press.pour(pot, blue, 15.0, PourStep::Correction);
    assert_eq!(pot_card(&press.shop(), pot).unwrap().limits.len(), 2);
}

#[test]
fn a_component_is_typed_in_edited_and_deleted() {
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
    let fields = form.check(&press.shop(), None, Units::UsCustomary).unwrap();
    assert!(fields.contains(&ComponentField::MostPigment(None)), "only a base has such a limit");
    let red = press.id();
    press.ink(red, InkFact::ComponentSet(fields));
    let shop = press.shop();
    let component = shop.ink.component(red).unwrap();
    assert_eq!((component.density, component.cost), (Some(1_180), Some(4_250)));
    let metric = ComponentForm::of(component, Units::Metric);
    assert_eq!(metric.check(&shop, Some(red), Units::Metric).unwrap(), []);
    let problems = ComponentForm { name: " yellow".into(), most: "101".into(), ..metric.clone() }
        .check(&shop, Some(red), Units::Metric)
        .unwrap_err();
    assert_eq!(problems["name"], FormProblem::Taken);
    assert_eq!(problems["most"], FormProblem::Number(NumberProblem::TooHigh { most: 100.0 }));

    // Deleted, it leaves the lists; what is in pots and recipes of it stays.
    let pot = press.pot(Some(first), 500.0);
    press.pour(pot, yellow, 100.0, PourStep::WeighIn);
    press.say(yellow, Fact::Deleted);
    let shop = press.shop();
    assert!(shop.ink.components().all(|(id, _)| id != yellow));
    assert_eq!(pot_card(&shop, pot).unwrap().rows[0].name, "Yellow");
    press.say(yellow, Fact::Restored);
    assert!(press.shop().ink.components().any(|(id, _)| id == yellow));
}

#[test]
fn a_component_tells_what_came_and_went_and_what_it_is_in() {
    let Published { mut press, yellow, blue, recipe, first, .. } = published();
    press.event(InkFact::Counted { component: yellow, grams: g(50.0), by: Some("Moss".into()) });
    let pot = press.pot(Some(first), 500.0);
    let pour = press.pour(pot, yellow, 20.0, PourStep::WeighIn);
    press.event(InkFact::Delivered { component: yellow, grams: g(500.0), note: "lot 7".into(), by: None });
    let card = component_card(&press.shop(), yellow).unwrap();
    let lines: Vec<_> = card.lines.iter().map(|line| (line.grams, line.left)).collect();
    assert_eq!(lines, [(g(500.0), Some(g(530.0))), (g(20.0), Some(g(30.0))), (g(50.0), Some(g(50.0)))]);
    let poured = StockChange::Poured { pot, name: "Pot".into(), step: PourStep::WeighIn };
    assert_eq!(card.lines[1].what, poured);
    assert_eq!((card.lines[1].event, card.stock.left), (pour, Some(g(530.0))));
    assert_eq!(card.used_in.iter().map(|row| row.recipe).collect::<Vec<_>>(), [recipe]);
    assert_eq!(component_card(&press.shop(), blue).unwrap().used_in, []);
    press.say(pour, Fact::Deleted);
    let card = component_card(&press.shop(), yellow).unwrap();
    assert_eq!((card.lines.len(), card.stock.left), (2, Some(g(550.0))));
    press.say(yellow, Fact::Deleted);
    assert_eq!(component_card(&press.shop(), yellow), None);
}

#[test]
fn how_much_to_make_again_is_a_weight_or_the_pieces_of_a_run_and_becomes_a_pot() {
    let Published { mut press, recipe, first, .. } = published();
    let metric = Units::Metric;
    assert_eq!(BatchSizeForm::of(&press.shop(), recipe, metric), BatchSizeForm::default());
    assert_eq!(BatchSizeForm::default().size(&press.shop(), metric).unwrap_err()["grams"], FormProblem::Missing);
    press.pot(Some(first), 250.0);
    assert_eq!(BatchSizeForm::of(&press.shop(), recipe, metric).grams, "250", "as much as last time");

    let run = ordered(&mut press, "Tour tees", "Brick", Fabric::Cotton, 100);
    let asked = BatchSizeForm { by_pieces: true, ..BatchSizeForm::of(&press.shop(), recipe, metric) };
    assert_eq!((asked.run, asked.pieces.as_str()), (Some(run), "100"));
    assert!(asked.size(&press.shop(), metric).unwrap_err().contains_key("run"), "nobody knows what a print takes");
    let (print, _) = plain_print().check(metric).unwrap();
    press.ink(run, InkFact::PrintSet(Some(print)));
    let shop = press.shop();
    // By hand: 2 g a print, a tenth more for losses; the empty pot holds none of it.
    assert_eq!(BatchSizeForm::of(&shop, recipe, metric).grams, "220");
    // 7.76 ounces, by the definition of the ounce.
    assert_eq!(BatchSizeForm::of(&shop, recipe, Units::UsCustomary).grams, "7.8");
    let asked = BatchSizeForm { pieces: "50".into(), ..asked };
    let made = asked.size(&shop, metric).unwrap();
    assert_eq!((made.size, made.batch.unwrap().pieces), (BatchSize::Whole(g(110.0)), 50));
    let fields = asked.pot(&shop, first, metric).unwrap();
    assert!(fields.contains(&PotField::Name("Brick, Tour tees".into())));
    assert!(fields.contains(&PotField::Size(Some(BatchSize::Whole(g(110.0))))));
    assert!(fields.contains(&PotField::Revision(Some(first))) && fields.contains(&PotField::Run(Some(run))));
    // Typed in ounces; by the definition of the ounce.
    let ounces = BatchSizeForm { grams: "20".into(), of_ink: true, ..BatchSizeForm::default() };
    let size = ounces.size(&shop, Units::UsCustomary).unwrap().size;
    assert_eq!(size, BatchSize::Ink(Grams::from_milligrams(566_990)));
}

#[test]
fn a_batch_made_again_goes_into_a_pot_like_the_last_with_a_name_of_its_own() {
    let Published { mut press, recipe, first, .. } = published();
    let metric = Units::Metric;
    let before = BatchSizeForm::of(&press.shop(), recipe, metric);
    assert_eq!((before.capacity.as_str(), before.tare.as_str()), ("", ""));
    let pot = press.pot(Some(first), 500.0);
    let fields =
        vec![PotField::Name("Brick".into()), PotField::Capacity(Some(g(600.0))), PotField::Tare(Some(g(48.0)))];
    press.ink(pot, InkFact::PotSet(fields));
    let shop = press.shop();
    let again = BatchSizeForm::of(&shop, recipe, metric);
    assert_eq!((again.capacity.as_str(), again.tare.as_str()), ("600", "48"));
    let fields = again.pot(&shop, first, metric).unwrap();
    for field in [
        PotField::Name("Brick 2".into()),
        PotField::Capacity(Some(g(600.0))),
        PotField::Tare(Some(g(48.0))),
        PotField::Size(Some(BatchSize::Whole(g(500.0)))),
    ] {
        assert!(fields.contains(&field), "{field:?} in {fields:?}");
    }
    let more = BatchSizeForm { grams: "750".into(), ..again };
    let low = FormProblem::Number(NumberProblem::TooLow { least: 750.0 });
    assert_eq!(more.pot(&shop, first, metric).unwrap_err()["capacity"], low);
    assert!(BatchSizeForm { capacity: String::new(), ..more }.pot(&shop, first, metric).is_ok());
}

#[test]
fn a_recipe_form_holds_its_parts_against_the_data_sheets_once_they_are_whole() {
    let Published { mut press, yellow, clear, .. } = published();
    press.ink(clear, InkFact::ComponentSet(vec![ComponentField::MostPigment(Some(Share::from_percent(10.0)))]));
    let row =
        |component, percent: &str| PartForm { component: Some(component), percent: percent.into(), on_top: false };
    let mut form = RecipeForm { parts: vec![row(clear, "80"), row(yellow, "12")], ..RecipeForm::default() };
    assert_eq!(form.limits(&press.shop()), [], "not before the ink is whole");
    form.parts[0].percent = "88".into();
    let limits = form.limits(&press.shop());
    assert_eq!((limits.len(), limits[0].component, limits[0].percent, limits[0].most), (1, clear, 12.0, 10.0));
}

#[test]
fn a_recipe_form_changes_its_convention_and_loses_no_row() {
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

/// What is known late is folded as if it had been known: pours before their pot, a deletion before its pour.
#[test]
fn facts_about_what_is_not_known_yet_are_not_lost() {
    let Published { mut press, yellow, .. } = published();
    let (pot, gone) = (press.id(), press.id());
    press.pour(pot, yellow, 10.0, PourStep::Correction);
    press.say(gone, Fact::Deleted);
    let fact = |grams| InkFact::Poured {
        pot,
        component: yellow,
        grams: g(grams),
        step: PourStep::Correction,
        note: String::new(),
        reading: None,
        by: None,
    };
    press.ink(gone, fact(5.0));
    assert!(pot_card(&press.shop(), pot).is_none());
    assert_eq!(pot_state(&press.shop(), pot).contents.total(), g(10.0));
    press.ink(pot, InkFact::PotSet(vec![PotField::Name("Late".into())]));
    let card = pot_card(&press.shop(), pot).unwrap();
    assert_eq!((card.ledger.len(), card.label.grams), (2, g(10.0)));
    press.say(pot, Fact::Deleted);
    assert!(ink_shelf(&press.shop()).pots.is_empty());
}

mod properties {
    use super::*;
    use lastpull_core::facts::Journal;
    use proptest::prelude::*;
    use proptest::sample::Index;

    const POTS: usize = 3;

    #[derive(Clone, Debug)]
    enum Step {
        Pour(usize, usize, i64),
        Move(usize, usize, i64),
        Waste(usize, i64),
        Use(usize, i64),
        TakeBack(Index),
    }

    fn any_step() -> impl Strategy<Value = Step> {
        let pot = 0..POTS;
        let mg = 1..300_000i64;
        prop_oneof![
            6 => (pot.clone(), 0..4usize, mg.clone()).prop_map(|(pot, component, mg)| Step::Pour(pot, component, mg)),
            2 => (pot.clone(), pot.clone(), mg.clone()).prop_map(|(from, to, mg)| Step::Move(from, to, mg)),
            1 => (pot.clone(), mg.clone()).prop_map(|(pot, mg)| Step::Waste(pot, mg)),
            1 => (pot, mg).prop_map(|(pot, mg)| Step::Use(pot, mg)),
            2 => any::<Index>().prop_map(Step::TakeBack),
        ]
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(120))]

        /// By another hand: plain numbers, played again from what was not taken back.
        #[test]
        fn grams_in_are_grams_in_the_pots_and_the_history_replays_to_them(
            steps in prop::collection::vec(any_step(), 1..30),
            halves in prop::collection::vec(any::<bool>(), 60),
        ) {
            let mut press = Press::new();
            let pots: Vec<Subject> = (0..POTS).map(|_| press.pot(None, 0.0)).collect();
            let parts: Vec<Subject> = (0..4).map(|n| press.component(&n.to_string(), ComponentKind::Pigment)).collect();
            let mut told: Vec<(Subject, Step)> = Vec::new();
            for (at, step) in steps.iter().enumerate() {
                press.on(if at % 2 == 0 { PHONE } else { TABLET });
                let mg = |mg: &i64| Grams::from_milligrams(*mg);
                let fact = match step {
                    Step::Pour(pot, component, grams) => InkFact::Poured {
                        pot: pots[*pot],
                        component: parts[*component],
                        grams: mg(grams),
                        step: PourStep::Correction,
                        note: String::new(),
                        reading: None,
                        by: None,
                    },
                    Step::Move(from, to, grams) =>
                        InkFact::Moved { from: pots[*from], to: pots[*to], grams: mg(grams), by: None },
                    Step::Waste(pot, grams) =>
                        InkFact::Wasted { pot: pots[*pot], grams: mg(grams), note: String::new(), by: None },
                    Step::Use(pot, grams) => InkFact::Used {
                        pot: pots[*pot], run: None, grams: mg(grams), pieces: 1, paper: None, by: None,
                    },
                    Step::TakeBack(index) => {
                        if !told.is_empty() {
                            let (id, _) = told.remove(index.index(told.len()));
                            press.say(id, Fact::Deleted);
                        }
                        continue;
                    }
                };
                told.push((press.event(fact), step.clone()));
            }
            let mut model = vec![[0.0f64; 4]; POTS];
            let (mut poured, mut gone) = (0.0, 0.0);
            let take = |pot: &mut [f64; 4], mg: i64| {
                let sum: f64 = pot.iter().sum();
                let part = if sum > 0.0 { (mg as f64).min(sum) / sum } else { 0.0 };
                let taken = pot.map(|here| here * part);
                pot.iter_mut().zip(taken).for_each(|(here, out)| *here -= out);
                taken
            };
            for (_, step) in &told {
                match step {
                    Step::Pour(pot, component, mg) => {
                        model[*pot][*component] += *mg as f64;
                        poured += *mg as f64;
                    }
                    Step::Move(from, to, mg) if from != to => {
                        let taken = take(&mut model[*from], *mg);
                        model[*to].iter_mut().zip(taken).for_each(|(here, more)| *here += more);
                    }
                    Step::Waste(pot, mg) | Step::Use(pot, mg) =>
                        gone += take(&mut model[*pot], *mg).iter().sum::<f64>(),
                    _ => {}
                }
            }
            let shop = press.shop();
            let mut all = Grams::ZERO;
            for (pot, expected) in pots.iter().zip(&model) {
                let state = pot_state(&shop, *pot);
                for (component, expected) in parts.iter().zip(expected) {
                    let off = state.contents.of(*component).milligrams() as f64 - expected;
                    // Each line rounds to a milligram; what is moved on carries it.
                    prop_assert!(off.abs() <= 2.0 * told.len() as f64 + 1.0, "{off}");
                }
                let held = state.contents.total();
                prop_assert_eq!(state.total_in, held.saturating_add(state.used).saturating_add(state.wasted).saturating_add(state.moved_out));
                let percent: f64 = state.contents.percentages().iter().map(|(_, percent)| percent).sum();
                prop_assert!(!held.is_positive() || (percent - 100.0).abs() <= 1e-9);
                all = all.saturating_add(held).saturating_add(state.used).saturating_add(state.wasted);
            }
            prop_assert_eq!(all, Grams::from_milligrams(poured as i64), "{}", gone);

            // The same story out of two files that overlap, the later first.
            let entries = press.entries();
            let part = |keep: bool| -> Vec<_> {
                let kept = entries.iter().zip(halves.iter().cycle()).filter(|(_, half)| **half == keep);
                kept.map(|(entry, _)| entry.clone()).collect()
            };
            let mut journal = Journal::default();
            journal.absorb(part(true)).unwrap();
            journal.absorb(part(false)).unwrap();
            journal.absorb(entries.iter().rev().take(9).cloned().collect()).unwrap();
            let merged = Shop::fold(&journal);
            for pot in &pots {
                prop_assert_eq!(pot_state(&merged, *pot), pot_state(&shop, *pot));
            }
        }

        #[test]
        fn scaling_the_rest_of_an_over_pour_keeps_the_proportions(
            weights in prop::collection::vec(1..1_000u32, 2..7),
            size in 50..3_000u32,
            step in prop::sample::select(vec![10i64, 100, 1_000]),
            over in any::<Index>(),
            by in 1..400i64,
        ) {
            let mut press = Press::new();
            let sum: u32 = weights.iter().sum();
            let ids: Vec<Subject> = (0..weights.len()).map(|n| press.component(&n.to_string(), ComponentKind::Base)).collect();
            let mut left = Share::WHOLE.billionths();
            let parts: Vec<Part> = ids.iter().zip(&weights).enumerate().map(|(at, (component, weight))| {
                let share = if at + 1 == ids.len() { left } else { (u64::from(*weight) * 1_000_000_000 / u64::from(sum)) as u32 };
                left -= share;
                Part { component: *component, share: Share::from_billionths(share), on_top: false }
            }).collect();
            let recipe = press.id();
            press.ink(Uuid::nil(), InkFact::ScaleSet { step: Grams::from_milligrams(step), most: None });
            press.ink(recipe, InkFact::RecipeSet(vec![RecipeField::Name("Any".into())]));
            let fact = revision_fact(&press.shop(), recipe, parts.clone(), None, None, "", None);
            let revision = press.event(fact);
            let pot = press.pot(Some(revision), f64::from(size));
            let before = weigh_in(&press.shop(), pot).unwrap();
            let over = over.index(ids.len());
            for (at, row) in before.steps.iter().enumerate().take(over + 1) {
                // By more than counts as on target.
                let more = if at == over { by * step + row.target.milligrams() / 100 / step * step } else { 0 };
                let grams = row.target.saturating_add(Grams::from_milligrams(more));
                if grams.is_positive() {
                    press.pour(pot, row.component, grams.grams(), PourStep::WeighIn);
                }
            }
            let weighing = weigh_in(&press.shop(), pot).unwrap();
            prop_assert_eq!(weighing.steps[over].state, StepState::Over);
            let plan = over_pour(&press.shop(), pot, &weighing).unwrap();
            prop_assert_eq!(plan.component, ids[over]);
            let rest = plan.scale_rest;
            prop_assert!(rest.whole >= before.whole);
            for (row, part) in rest.rows.iter().zip(&parts) {
                let ideal = rest.whole.milligrams() as f64 * f64::from(part.share.billionths()) / 1e9;
                prop_assert!((row.exact.milligrams() as f64 - ideal).abs() <= 1.0);
                // Of what is less than half a step, one step is weighed.
                let rounded = (row.target.milligrams() - row.exact.milligrams()).abs() <= step / 2 + 1;
                prop_assert!(rounded || row.target.milligrams() == step || row.to_pour == Grams::ZERO);
            }
            for (row, was) in rest.rows.iter().zip(&weighing.steps) {
                prop_assert!(row.target >= was.poured, "nothing has to come out again");
            }
            // Done as told, the pot holds the recipe, to what the scale can show.
            let mut id = 0x9000;
            let facts = repair_facts(&press.shop(), pot, &weighing, Repair::ScaleRest, None, || {
                id += 1;
                Uuid::from_u128(id)
            });
            press.all(facts);
            let resized = weigh_in(&press.shop(), pot).unwrap();
            prop_assert!(resized.steps.iter().all(|row| row.state != StepState::Over));
            for row in resized.steps.iter().filter(|row| row.to_go().is_positive()) {
                press.pour(pot, row.component, row.to_go().grams(), PourStep::WeighIn);
            }
            let shop = press.shop();
            let done = weigh_in(&shop, pot).unwrap();
            prop_assert!(done.is_done() && done.steps.iter().all(|row| row.poured.is_positive()));
            prop_assert_eq!(pot_state(&shop, pot).holds, Some(revision));
            let total = done.holds.milligrams() as f64;
            for (row, part) in done.steps.iter().zip(&parts) {
                let off = row.poured.milligrams() as f64 - total * f64::from(part.share.billionths()) / 1e9;
                let slack = (step as f64).max(row.target.milligrams() as f64 / 500.0 + 1.0);
                prop_assert!(off.abs() <= slack * (ids.len() as f64 + 1.0), "{row:?} {off}");
            }
            let same: BTreeMap<_, _> = done.steps.iter().map(|row| (row.component, row.poured)).collect();
            prop_assert_eq!(pot_state(&shop, pot).contents.rows(), same.into_iter().filter(|(_, grams)| grams.is_positive()).collect::<Vec<_>>());
        }
    }
}
