//! A pot's ledger: pours, transfers, corrections, and what is taken back.

use crate::shop::{PHONE, Published, TABLET, TestShop, g, published};
use lastpull_core::facts::{Fact, FactsWithUndo};
use lastpull_core::form::FormProblem;
use lastpull_core::ids::{PhotoId, Subject};
use lastpull_core::ink::{
    ColourReading, EventNoteForm, InkFact, LedgerKind, PhotoSample, PotField, PotStage, PourStep, ReadBy, RemovalForm,
    after_addition, amend_reading_facts, headroom_of, ink_shelf, last_added, pot_card, pot_stage, pot_state, save_pot,
    top_up,
};
use lastpull_core::photo::PhotoFact;
use lastpull_core::shop::Shop;
use lastpull_core::units::{Grams, NumberProblem, Units};
use uuid::Uuid;

fn percent_in(shop: &Shop, pot: Subject, component: Subject) -> f64 {
    let percent = pot_state(shop, pot).contents.percentages();
    percent.iter().find(|(id, _)| *id == component).map_or(0.0, |(_, percent)| *percent)
}

#[test]
fn the_ledger_shows_the_recipe_after_every_line_and_what_was_undone() {
    let Published { mut press, yellow, white, clear, blue, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    for (component, grams) in [(yellow, 100.0), (white, 150.0), (clear, 250.0)] {
        press.pour(pot, component, grams, PourStep::WeighIn);
    }
    let slip = press.pour(pot, blue, 50.0, PourStep::Correction);
    press.record(slip, Fact::Deleted);
    let touch = press.pour(pot, blue, 5.0, PourStep::Correction);
    press.record(touch, Fact::Photo(PhotoFact::Taken { photo: PhotoId([1; 32]), width: 9, height: 9, bytes: 9 }));
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

    // Recorded again under its id, a line is corrected where it stands.
    let corrected = InkFact::Poured {
        pot,
        component: blue,
        grams: g(6.0),
        step: PourStep::Correction,
        note: "read wrong".into(),
        reading: Some(ColourReading::from_lab([50.0, 1.0, -2.0], ReadBy::Photo)),
        by: None,
    };
    press.record_ink(touch, corrected);
    let card = pot_card(&press.shop(), pot).unwrap();
    assert_eq!((card.ledger.len(), card.ledger[4].total), (5, g(506.0)));
    assert_eq!(card.ledger[4].note, "read wrong");
}

#[test]
fn undoing_a_pour_changes_what_was_moved_to_another_pot() {
    let Published { mut press, yellow, white, .. } = published();
    let [one, two] = [0, 1].map(|_| press.pot(None, 0.0));
    press.pour(one, yellow, 100.0, PourStep::Correction);
    let slip = press.pour(one, white, 100.0, PourStep::Correction);
    press.ink_event(InkFact::Moved { from: one, to: two, grams: g(50.0), by: None });
    assert_eq!(pot_state(&press.shop(), two).contents.of(white), g(25.0));
    press.record(slip, Fact::Deleted);
    let shop = press.shop();
    assert_eq!(pot_state(&shop, two).contents.rows(), [(yellow, g(50.0))]);
    assert_eq!(pot_state(&shop, one).contents.total(), g(50.0));
}

#[test]
fn a_match_is_void_once_an_earlier_pour_is_undone_or_corrected() {
    let Published { mut press, yellow, white, blue, .. } = published();
    let [pot, other] = [0, 1].map(|_| press.pot(None, 0.0));
    press.pour(pot, yellow, 100.0, PourStep::Correction);
    let slip = press.pour(pot, blue, 5.0, PourStep::Correction);
    press.record(slip, Fact::Deleted);
    let touch = press.pour(pot, white, 10.0, PourStep::Correction);
    let found = press.ink_event(InkFact::Matched { pot, reading: None, by: None });
    let matches = |press: &TestShop, pot| pot_state(&press.shop(), pot).matched;
    assert_eq!(matches(&press, pot), Some(found), "what was taken back before it was seen is no matter");

    press.record(touch, Fact::Deleted);
    assert_eq!(matches(&press, pot), None);
    press.record(touch, Fact::Restored);
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
    press.record_ink(touch, poured(10_000, "a touch"));
    assert_eq!(matches(&press, pot), Some(found), "a remark changes no ink");

    // What went over into another pot is the same ink, found to match or not.
    press.ink_event(InkFact::Moved { from: pot, to: other, grams: g(50.0), by: None });
    assert_eq!(matches(&press, other), Some(found));
    press.record_ink(touch, poured(12_000, "it was twelve"));
    assert_eq!((matches(&press, pot), matches(&press, other)), (None, None));
    let again = press.ink_event(InkFact::Matched { pot, reading: None, by: None });
    assert_eq!(matches(&press, pot), Some(again));
    // A correction after it that is taken back leaves what matched.
    let late = press.pour(pot, blue, 1.0, PourStep::Correction);
    assert_eq!(matches(&press, pot), None);
    press.record(late, Fact::Deleted);
    assert_eq!(matches(&press, pot), Some(again));
}

#[test]
fn splitting_a_pot_keeps_its_revision_and_mixing_two_does_not() {
    let Published { mut press, yellow, white, clear, blue, recipe, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    for (component, grams) in [(yellow, 100.0), (white, 150.0), (clear, 250.0)] {
        press.pour(pot, component, grams, PourStep::WeighIn);
    }
    press.ink_event(InkFact::Matched { pot, reading: None, by: None });
    let half = press.pot(None, 0.0);
    press.record_ink(half, InkFact::PotSet(vec![PotField::Capacity(Some(g(260.0)))]));
    let form = RemovalForm { grams: "300".into(), ..RemovalForm::default() };
    let problems = form.moved(&press.shop(), [pot, half], None, Units::METRIC).unwrap_err();
    assert_eq!(problems["grams"], FormProblem::Number(NumberProblem::TooHigh { most: 260.0 }));
    // What the scale shows of the first pot afterwards.
    let form = RemovalForm { grams: "250".into(), total: true, ..RemovalForm::default() };
    let fact = form.moved(&press.shop(), [pot, half], None, Units::METRIC).unwrap();
    press.ink_event(fact);
    let shop = press.shop();
    let state = pot_state(&shop, half);
    assert_eq!((state.holds, state.contents.of(white)), (Some(first), g(75.0)));
    assert_eq!(pot_stage(&shop, half, &state), PotStage::Matched);
    assert_eq!(headroom_of(&shop, half), Some(g(10.0)));

    // Merged again they are the same ink; a correction makes another of it.
    let back = press.ink_event(InkFact::Moved { from: half, to: pot, grams: g(50.0), by: None });
    assert_eq!(pot_state(&press.shop(), pot).holds, Some(first));
    press.record(back, Fact::Deleted);
    press.pour(half, blue, 1.0, PourStep::Correction);
    press.ink_event(InkFact::Moved { from: half, to: pot, grams: g(50.0), by: None });
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
    let saved = press.ink_event(saved);
    assert_eq!(pot_state(&press.shop(), pot).holds, Some(saved));
    assert_eq!(top_up(&press.shop(), Uuid::nil(), g(5.0)), []);
}

#[test]
fn removing_more_than_a_pot_holds_is_refused_or_shown_as_a_shortfall() {
    let Published { mut press, yellow, .. } = published();
    let pot = press.pot(None, 0.0);
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Tare(Some(g(40.0)))]));
    let form = RemovalForm { grams: "5".into(), ..RemovalForm::default() };
    assert!(form.wasted(&press.shop(), pot, None, Units::METRIC).unwrap_err().contains_key("grams"));
    press.pour(pot, yellow, 30.0, PourStep::Correction);
    let form = RemovalForm { grams: "31".into(), ..RemovalForm::default() };
    let problems = form.wasted(&press.shop(), pot, None, Units::METRIC).unwrap_err();
    assert_eq!(problems["grams"], FormProblem::Number(NumberProblem::TooHigh { most: 30.0 }));
    // A reading of the scale, or a rounded display of the contents, may be a little more than all of it.
    for (grams, units) in [("30.05", Units::METRIC), ("1.059 oz", Units::METRIC), ("1.059", Units::US.with_ounces())] {
        let form = RemovalForm { grams: grams.into(), ..RemovalForm::default() };
        let taken = form.wasted(&press.shop(), pot, None, units);
        assert!(matches!(taken, Ok(InkFact::Wasted { grams, .. }) if grams == g(30.0)), "{taken:?}");
    }
    let form = RemovalForm { grams: "39".into(), total: true, ..RemovalForm::default() };
    let problems = form.wasted(&press.shop(), pot, None, Units::METRIC).unwrap_err();
    assert_eq!(problems["grams"], FormProblem::Number(NumberProblem::TooLow { least: 40.0 }));
    // Two phones, each emptying it.
    for device in [PHONE, TABLET] {
        press.on(device);
        press.ink_event(InkFact::Wasted { pot, grams: g(20.0), note: "dried".into(), by: None });
    }
    let card = pot_card(&press.shop(), pot).unwrap();
    assert_eq!((card.wasted, card.shortfall, card.label.grams), (g(30.0), g(10.0), Grams::ZERO));
    assert_eq!((card.stage, card.on_scale), (PotStage::Empty, g(40.0)));
}

#[test]
fn a_recorded_pour_can_get_a_note_and_a_reading_later() {
    let Published { mut press, yellow, first, .. } = published();
    let pot = press.pot(Some(first), 500.0);
    let event = press.pour(pot, yellow, 2.5, PourStep::Correction);
    let mut form = EventNoteForm::of(&press.shop(), event).unwrap();
    assert_eq!(form.check(&press.shop(), event), Ok(None), "as it was");
    form.note = " a touch ".into();
    let fact = form.check(&press.shop(), event).unwrap().unwrap();
    press.record_ink(event, fact);
    form.note = "x".repeat(20_000);
    assert!(form.check(&press.shop(), event).unwrap_err().contains_key("note"));
    let sample = |l| ColourReading::from_lab([l, 1.0, -2.0], ReadBy::Instrument);
    let read = |l| Some(PhotoSample { sample: sample(l), target: None });
    let again = |press: &TestShop, event, read| amend_reading_facts(&press.shop(), pot, event, read);
    let line = |press: &TestShop, at: usize| pot_card(&press.shop(), pot).unwrap().ledger[at].clone();
    assert_eq!(again(&press, event, None), FactsWithUndo::default(), "as it was");
    let FactsWithUndo { facts, undo } = again(&press, event, read(40.0));
    press.record_all(facts);
    assert_eq!(pot_card(&press.shop(), pot).unwrap().ledger.len(), 1, "recorded again, it is the same line");
    let amended = line(&press, 0);
    assert_eq!((amended.grams, amended.note.as_str(), amended.reading), (g(2.5), "a touch", Some(sample(40.0))));
    press.record_all(undo);
    assert_eq!(line(&press, 0).reading, None);
    let swatch = press.ink_event(InkFact::SwatchRead { pot, reading: sample(50.0), note: String::new(), by: None });
    assert_eq!(again(&press, swatch, None), FactsWithUndo::default(), "a reading without one is none");
    let FactsWithUndo { facts, .. } = again(&press, swatch, read(51.0));
    press.record_all(facts);
    assert_eq!(line(&press, 1).reading, Some(sample(51.0)));
    assert_eq!(again(&press, pot, read(1.0)), FactsWithUndo::default());
    assert_eq!(last_added(&press.shop(), pot), Some(yellow));
    press.record(event, Fact::Deleted);
    assert_eq!(last_added(&press.shop(), pot), None);
    assert_eq!(EventNoteForm::of(&press.shop(), pot), None);
}

/// What is known late is folded as if it had been known: pours before their pot, a deletion before its pour.
#[test]
fn facts_about_things_not_known_yet_are_kept() {
    let Published { mut press, yellow, .. } = published();
    let (pot, gone) = (press.id(), press.id());
    press.pour(pot, yellow, 10.0, PourStep::Correction);
    press.record(gone, Fact::Deleted);
    let fact = |grams| InkFact::Poured {
        pot,
        component: yellow,
        grams: g(grams),
        step: PourStep::Correction,
        note: String::new(),
        reading: None,
        by: None,
    };
    press.record_ink(gone, fact(5.0));
    assert!(pot_card(&press.shop(), pot).is_none());
    assert_eq!(pot_state(&press.shop(), pot).contents.total(), g(10.0));
    press.record_ink(pot, InkFact::PotSet(vec![PotField::Name("Late".into())]));
    let card = pot_card(&press.shop(), pot).unwrap();
    assert_eq!((card.ledger.len(), card.label.grams), (2, g(10.0)));
    press.record(pot, Fact::Deleted);
    assert!(ink_shelf(&press.shop()).pots.is_empty());
}
