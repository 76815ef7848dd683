//! Matching a pot to its target: what to add, and what corrections teach.

use crate::shop::{DrawdownBench, g, hump, said};
use lastpull_core::colour::correction::Outcome;
use lastpull_core::colour::{DifferenceDirection, Lab, ciede2000};
use lastpull_core::facts::{Fact, LotField, RunField};
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    ComponentField, ComponentKind, InkFact, MatchView, NextDrawdown, NoAdvice, PhotoSample, PotField, PourStep, ReadBy,
    ReadOn, RecipeField, RecordedLayer, Share, approve_facts, component_colour, cover_runs, reading_facts, reading_now,
    reading_of, with_reading,
};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::units::Grams;
use uuid::Uuid;

#[test]
fn a_pot_that_lacks_red_gets_advice_in_words_and_grams() {
    let (mut bench, pot, meant) = DrawdownBench::violet(Some(900.0));
    let view = bench.view(pot);
    let difference = view.difference.clone().unwrap();
    assert!(view.is_read && !difference.near && difference.de2000 > 3.0 && difference.cmc > 1.0);
    assert!(
        difference.words.iter().any(|word| word.direction == DifferenceDirection::Greener),
        "{:?}",
        difference.words
    );
    let advice = view.advice.unwrap();
    assert_eq!((advice.outcome, advice.from_reading, advice.headroom_known), (Outcome::GetsThere, true, true));
    assert!((advice.before - difference.de2000).abs() < 0.05, "{} {}", advice.before, difference.de2000);
    let way = &advice.ways[0];
    assert_eq!(way.rows.len(), 1);
    assert_eq!(way.rows[0].component, bench.red);
    // 8 g by construction; to the scale's tenth of a gram, and less where near enough does.
    assert!((6.0..=8.6).contains(&way.rows[0].grams.grams()), "{:?}", way.rows);
    assert_eq!(way.rows[0].grams.milligrams() % 100, 0);
    // Done as advised, the true pot is what was predicted.
    let grams = way.rows[0].grams.grams();
    let truly = bench.look(&[meant[0], meant[1], (bench.red, 4.0 + grams)]);
    assert!(ciede2000(truly, way.look) < 0.4, "{}", ciede2000(truly, way.look));
    bench.pour(pot, bench.red, grams, PourStep::Correction);
    let view = bench.view(pot);
    assert!(!view.is_read, "what was read was before the red went in");
    assert_eq!(view.reading.as_ref().unwrap().since, 1);
    assert!(view.difference.unwrap().near);
    bench.read(pot, truly);
    let view = bench.view(pot);
    assert!(view.is_read && view.difference.unwrap().near);
    assert_eq!(view.advice.unwrap().outcome, Outcome::AlreadyThere);
}

#[test]
fn advice_stays_within_the_pot_the_stock_and_the_data_sheet() {
    let red_of = |view: &MatchView, red: Subject| {
        let advice = view.advice.clone().unwrap();
        let rows = advice.ways.last().map(|way| way.rows.clone()).unwrap_or_default();
        (rows.iter().find(|row| row.component == red).map_or(0.0, |row| row.grams.grams()), advice)
    };
    // Four grams fit, of the eight that would do.
    let (bench, pot, _) = DrawdownBench::violet(Some(518.0));
    let (red, advice) = red_of(&bench.view(pot), bench.red);
    assert!(red > 3.0 && red <= 4.0, "{red}");
    assert_eq!(advice.outcome, Outcome::OnlyCloser);
    assert!(advice.ways.last().unwrap().total <= g(518.0));
    // As many are left to what the scale bears, with the vessel on it.
    let (mut bench, pot, _) = DrawdownBench::violet(Some(900.0));
    let fact = InkFact::ScaleSet { step: Grams::from_milligrams(100), most: Some(g(568.0)) };
    bench.event(fact);
    said(&mut bench.press, pot, InkFact::PotSet(vec![PotField::Tare(Some(g(50.0)))]));
    let (red, advice) = red_of(&bench.view(pot), bench.red);
    assert!(red > 3.0 && red <= 4.0 && advice.headroom == g(4.0), "{red}");
    // Two and a half are on the shelf: weighed after the four had gone in.
    let (mut bench, pot, _) = DrawdownBench::violet(None);
    let counted = InkFact::Counted { component: bench.red, grams: g(2.5), by: None };
    bench.event(counted);
    let (red, advice) = red_of(&bench.view(pot), bench.red);
    assert!(red > 2.0 && red <= 2.5, "{red}");
    assert!(!advice.headroom_known);
    // The sheet allows one percent of it.
    let (mut bench, pot, _) = DrawdownBench::violet(None);
    let most = InkFact::ComponentSet(vec![ComponentField::Most(Some(Share::from_percent(1.0)))]);
    said(&mut bench.press, bench.red, most);
    let (red, advice) = red_of(&bench.view(pot), bench.red);
    let total = advice.ways.last().unwrap().total.grams();
    assert!(red > 0.5 && (4.0 + red) / total <= 0.010_001, "{red} of {total}");
    // The base's sheet bears less pigment than is in: no more of it goes in than white with it.
    let (mut bench, pot, _) = DrawdownBench::violet(None);
    let most = InkFact::ComponentSet(vec![ComponentField::MostPigment(Some(Share::from_percent(2.0)))]);
    said(&mut bench.press, bench.white, most);
    let way = bench.view(pot).advice.unwrap().ways.last().cloned().unwrap();
    let pigment = |id: Subject| [bench.blue, bench.red, bench.yellow].contains(&id);
    let added: f64 = way.rows.iter().filter(|row| pigment(row.component)).map(|row| row.grams.grams()).sum();
    assert!((14.0 + added) / way.total.grams() <= 14.0 / 514.0 + 1e-6, "{way:?}");
}

#[test]
fn a_pot_too_dark_to_correct_within_its_capacity_is_reported() {
    let mut bench = DrawdownBench::characterised();
    let target = bench.look(&[(bench.white, 1_000.0), (bench.blue, 1.0)]);
    let (_, revision) = bench.recipe("Sky", &[(bench.white, 90.0), (bench.blue, 10.0)], Some(target));
    let pot = bench.pot(revision, Some(110.0));
    bench.pour(pot, bench.white, 90.0, PourStep::WeighIn);
    bench.pour(pot, bench.blue, 10.0, PourStep::WeighIn);
    let view = bench.view(pot);
    assert!(!view.is_read && view.reading.is_none() && view.look.is_some());
    let advice = view.advice.unwrap();
    assert_eq!((advice.outcome, advice.from_reading), (Outcome::OnlyCloser, false));
    let way = advice.ways.last().unwrap();
    assert!(way.after.de2000 < advice.before && !way.after.near && way.total <= g(110.0));
}

#[test]
fn components_without_drawdowns_are_named_and_advice_in_words_remains() {
    let mut bench = DrawdownBench::new();
    let (_, revision) = bench.recipe("Rose", &[(bench.white, 99.0), (bench.red, 1.0)], Some(Lab::new(70.0, 30.0, 5.0)));
    let pot = bench.pot(revision, None);
    assert_eq!(bench.view(pot).advice, Err(NoAdvice::Empty));
    bench.pour(pot, bench.white, 99.0, PourStep::WeighIn);
    bench.pour(pot, bench.red, 1.0, PourStep::WeighIn);
    bench.read(pot, Lab::new(62.0, 30.0, 5.0));
    let view = bench.view(pot);
    let Err(NoAdvice::Uncharacterised(rows)) = view.advice else { panic!("{:?}", view.advice) };
    let names: Vec<_> = rows.iter().map(|row| (row.name.as_str(), row.next.clone())).collect();
    assert_eq!(names, [("White", Some(NextDrawdown::OverBlack)), ("Red", Some(NextDrawdown::Straight))]);
    assert_eq!(view.difference.unwrap().words[0].direction, DifferenceDirection::Darker);
    // No target: nothing to say but that.
    let fact = InkFact::RecipeSet(vec![RecipeField::Target(None)]);
    let recipe = view.recipe.unwrap();
    said(&mut bench.press, recipe, fact);
    assert_eq!(bench.view(pot).advice, Err(NoAdvice::NoTarget));
}

#[test]
fn corrections_read_before_and_after_teach_a_pigments_strength() {
    let mut bench = DrawdownBench::characterised();
    let strong = bench.truth[&bench.red].times(1.4);
    // The tub that came since is stronger than the one that was drawn down.
    bench.truth.insert(bench.red, strong);
    let (_, revision) = bench.recipe("Rose", &[(bench.white, 99.0), (bench.blue, 1.0)], None);
    for (round, red) in [6.0, 9.0, 7.0].into_iter().enumerate() {
        let pot = bench.pot(revision, None);
        bench.pour(pot, bench.white, 500.0, PourStep::WeighIn);
        bench.pour(pot, bench.blue, 4.0, PourStep::WeighIn);
        let before = bench.look(&[(bench.white, 500.0), (bench.blue, 4.0)]);
        bench.read(pot, before);
        bench.pour(pot, bench.red, red, PourStep::Correction);
        let after = bench.look(&[(bench.white, 500.0), (bench.blue, 4.0), (bench.red, red)]);
        bench.read(pot, after);
        let learned = component_colour(&bench.press.shop(), bench.red).unwrap().strength;
        assert_eq!(learned.samples as usize, round + 1);
    }
    let learned = component_colour(&bench.press.shop(), bench.red).unwrap().strength;
    assert!((1.15..1.4).contains(&learned.factor), "{learned:?}");
    let blue = component_colour(&bench.press.shop(), bench.blue).unwrap().strength;
    assert_eq!((blue.factor, blue.samples), (1.0, 0));
}

#[test]
fn a_large_correction_matched_by_eye_counts_as_reading_the_target() {
    let mut bench = DrawdownBench::characterised();
    bench.truth.insert(bench.red, bench.truth[&bench.red].times(1.4));
    let (white, red) = (bench.white, bench.red);
    let mut corrected = |grams: f64, matches: bool| {
        let target = bench.look(&[(white, 500.0), (red, grams)]);
        let (_, revision) = bench.recipe("Rose", &[(white, 100.0)], Some(target));
        let pot = bench.pot(revision, None);
        bench.pour(pot, white, 500.0, PourStep::WeighIn);
        bench.read(pot, bench.look(&[(white, 500.0)]));
        bench.pour(pot, red, grams, PourStep::Correction);
        if matches {
            said(
                &mut bench.press,
                Uuid::from_u128(0xE1E0 + grams as u128),
                InkFact::Matched { pot, reading: None, by: None },
            );
        }
        component_colour(&bench.press.shop(), red).unwrap().strength
    };
    assert_eq!(corrected(6.0, false).samples, 0, "nobody said how it came out");
    assert_eq!(corrected(0.05, true).samples, 0, "so small a move the eye does not judge");
    let learned = corrected(8.0, true);
    assert_eq!(learned.samples, 1);
    assert!((1.08..1.4).contains(&learned.factor), "{learned:?}");
}

#[test]
fn two_additions_at_once_teach_nothing() {
    let mut bench = DrawdownBench::characterised();
    let (_, revision) = bench.recipe("Rose", &[(bench.white, 99.0), (bench.blue, 1.0)], None);
    let pot = bench.pot(revision, None);
    bench.pour(pot, bench.white, 500.0, PourStep::WeighIn);
    bench.read(pot, bench.look(&[(bench.white, 500.0)]));
    bench.pour(pot, bench.red, 5.0, PourStep::Correction);
    bench.pour(pot, bench.blue, 5.0, PourStep::Correction);
    bench.read(pot, Lab::new(50.0, 10.0, -10.0));
    for pigment in [bench.red, bench.blue] {
        assert_eq!(component_colour(&bench.press.shop(), pigment).unwrap().strength.samples, 0);
    }
}

#[test]
fn a_recipe_read_on_the_garment_is_computed_on_the_garment() {
    let mut bench = DrawdownBench::characterised();
    let run = bench.press.order("Tees", None, Fabric::Cotton, &[(Size::L, 40)]);
    let lot = bench.press.shop().run(run).unwrap().lot.unwrap();
    let black = lastpull_core::colour::Colour { rgb: [30, 30, 34] };
    bench.press.record(lot, Fact::LotSet(vec![LotField::Colour(black), LotField::ColourName("Black".into())]));
    bench.press.record(run, Fact::RunSet(vec![RunField::Ink("violet ".into()), RunField::Hits(2)]));
    let (recipe, revision) =
        bench.recipe("Violet", &[(bench.clear, 95.0), (bench.blue, 5.0)], Some(Lab::new(30.0, 5.0, -20.0)));
    let pot = bench.pot(revision, None);
    bench.pour(pot, bench.clear, 95.0, PourStep::WeighIn);
    bench.pour(pot, bench.blue, 5.0, PourStep::WeighIn);
    let thick = bench.view(pot);
    assert_eq!((thick.on, thick.garment.as_ref().map(|garment| garment.read)), (ReadOn::Thick, Some(false)));
    said(&mut bench.press, recipe, InkFact::RecipeSet(vec![RecipeField::ReadOn(ReadOn::Garment)]));
    let printed = bench.view(pot);
    assert_eq!((printed.on, printed.hits), (ReadOn::Garment, 2));
    assert!(printed.look.unwrap().l < 18.0, "clear ink on black stays black: {:?}", printed.look);
    // The garment turns out to be lighter than its picture.
    let read = reading_of(Lab::new(60.0, 0.0, 0.0), ReadBy::Instrument);
    said(&mut bench.press, lot, InkFact::GarmentRead(Some(read)));
    let lighter = bench.view(pot);
    assert!(lighter.garment.as_ref().unwrap().read && lighter.look.unwrap().l > printed.look.unwrap().l + 5.0);
    let runs = cover_runs(&bench.press.shop(), recipe);
    assert_eq!((runs.len(), runs[0].pieces, runs[0].title.as_str()), (1, 40, "Tees"));
}

#[test]
fn matching_with_twelve_pigments_is_fast() {
    // Not a bound on time: that is measured in the browser. Only that a full shelf gives an answer.
    let (mut bench, pot, _) = DrawdownBench::violet(None);
    for place in 0..9 {
        let id = bench.press.id();
        let fields = vec![ComponentField::Name(format!("P{place}")), ComponentField::Kind(ComponentKind::Pigment)];
        said(&mut bench.press, id, InkFact::ComponentSet(fields));
        bench.truth.insert(id, hump(f64::from(place) * 3.0, 4.0, 9.0, 0.1, 0.2));
        bench.draw(id, 10.0, Some(bench.white), RecordedLayer::Hiding, true);
        bench.draw(id, 100.0, None, RecordedLayer::Hiding, true);
    }
    let advice = bench.view(pot).advice.unwrap();
    assert_eq!(advice.candidates, 14);
    assert!(advice.ways.last().unwrap().after.de2000 <= advice.before);
}

#[test]
fn undoing_a_photo_that_set_the_target_removes_the_target() {
    let (mut bench, pot, _) = DrawdownBench::violet(None);
    let recipe = bench.view(pot).recipe.unwrap();
    let target = |bench: &DrawdownBench| bench.press.shop().ink.recipe(recipe).unwrap().target;
    for before in [None, target(&bench)] {
        said(&mut bench.press, recipe, InkFact::RecipeSet(vec![RecipeField::Target(before)]));
        let seen = |l| reading_of(Lab::new(l, 3.0, 4.0), ReadBy::Photo);
        let read = PhotoSample { sample: seen(40.0), target: Some(seen(42.0)) };
        let event = bench.press.id();
        let lastpull_core::facts::FactsWithUndo { facts, undo } =
            reading_facts(&bench.press.shop(), pot, event, read, Some("Ines"));
        for (subject, fact) in facts {
            bench.press.record(subject, fact);
        }
        assert_eq!(target(&bench), Some(seen(42.0)));
        assert_eq!(bench.view(pot).reading.unwrap().reading, seen(40.0));
        for (subject, fact) in undo {
            bench.press.record(subject, fact);
        }
        assert_eq!(target(&bench), before);
        assert_ne!(bench.view(pot).reading.map(|read| read.event), Some(event));
    }
}

#[test]
fn match_and_approval_record_the_reading_unless_ink_was_added_since() {
    let (mut bench, pot, _) = DrawdownBench::violet(None);
    let read = bench.view(pot).reading.unwrap();
    assert_eq!(reading_now(&bench.press.shop(), pot), Some(read.reading));
    let said_yes = |bench: &DrawdownBench| {
        let mut ids = 900_u128..;
        let facts =
            approve_facts(&bench.press.shop(), pot, "Violet", "Moss", None, || Uuid::from_u128(ids.next().unwrap()));
        let facts = with_reading(&bench.press.shop(), facts);
        let Some((_, Fact::Ink(InkFact::Approved { reading, .. }))) = facts.last() else { panic!("{facts:?}") };
        *reading
    };
    assert_eq!(said_yes(&bench), Some(read.reading));
    bench.event(InkFact::Matched { pot, reading: Some(read.reading), by: None });
    // The reading taken back is gone, though the match named it.
    bench.press.record(read.event, Fact::Deleted);
    assert_eq!((reading_now(&bench.press.shop(), pot), bench.view(pot).reading), (None, None));
    bench.press.record(read.event, Fact::Restored);
    bench.pour(pot, bench.red, 1.0, PourStep::Correction);
    assert_eq!((reading_now(&bench.press.shop(), pot), said_yes(&bench)), (None, None));
}
