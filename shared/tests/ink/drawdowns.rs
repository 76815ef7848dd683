//! From a component's drawdowns to what is to be added to a pot, and whether it will cover.
//!
//! The shop's true inks are invented by the theory of the core itself, which other tests hold against published
//! values; here it is asked whether a shop that only sees drawdowns and swatches finds its way back to them.
//! Limits and thresholds are our own.

use super::{ask, photographed};
use crate::shop::DrawdownBench;
use lastpull_core::colour::{Constants, Lab, Origin, Surface};
use lastpull_core::facts::Fact;
use lastpull_core::form::FormProblem;
use lastpull_core::ink::{
    ColourProvenance, ColourQuality, ColourReading, DrawdownForm, DrawdownRecord, Film, InkFact, LayerKind,
    NextDrawdown, PourStep, ReadBy, RecordedLayer, Share, SwatchMeasurement, component_colour, cover_view,
};

#[test]
fn a_new_component_asks_for_drawdowns_until_none_is_missing() {
    let mut bench = DrawdownBench::new();
    let (white, clear, blue) = (bench.white, bench.clear, bench.blue);
    assert_eq!((bench.good(white), bench.good(clear)), (ColourQuality::Unknown, ColourQuality::AssumedClear));
    // Without a white to let it down with, the pigment is asked for alone.
    assert_eq!(bench.next(blue), Some(NextDrawdown::Straight));
    assert_eq!(bench.next(white), Some(NextDrawdown::OverBlack));
    let film = |backing| RecordedLayer::Over { film: Film::Hits(1), backing };
    bench.draw(white, 100.0, None, film(SwatchMeasurement::CHART_BLACK), false);
    assert_eq!((bench.good(white), bench.next(white)), (ColourQuality::AbsorptionOnly, Some(NextDrawdown::OverWhite)));
    bench.draw(white, 100.0, None, film(SwatchMeasurement::CHART_WHITE), false);
    assert_eq!((bench.good(white), bench.next(white)), (ColourQuality::Good, None));
    let tint = NextDrawdown::Tint { rest: white, name: "White".into(), percent: 10.0 };
    assert_eq!(bench.next(blue), Some(tint));
    bench.draw(blue, 10.0, Some(white), RecordedLayer::Hiding, false);
    assert_eq!(bench.next(blue), Some(NextDrawdown::Straight));
    bench.draw(blue, 100.0, None, RecordedLayer::Hiding, false);
    let colour = component_colour(&bench.press.shop(), blue).unwrap();
    assert_eq!((colour.quality, colour.next, colour.origin), (ColourQuality::Good, None, Some(Origin::Measured)));
    assert!(colour.worst.unwrap() < 0.3 && colour.drawdowns.iter().all(|line| line.off.unwrap() < 0.3));
}

#[test]
fn drawdowns_read_as_colours_are_marked_as_reconstructed() {
    let mut bench = DrawdownBench::new();
    bench.over(bench.white);
    bench.draw(bench.blue, 10.0, Some(bench.white), RecordedLayer::Hiding, true);
    let colour = component_colour(&bench.press.shop(), bench.blue).unwrap();
    assert_eq!(colour.origin, Some(Origin::Reconstructed));
    assert!(colour.worst.unwrap() < 0.5);
}

#[test]
fn a_tint_needs_the_drawdown_of_its_white_first() {
    let mut bench = DrawdownBench::new();
    let (blue, white) = (bench.blue, bench.white);
    bench.draw(blue, 10.0, Some(white), RecordedLayer::Hiding, false);
    let colour = component_colour(&bench.press.shop(), blue).unwrap();
    assert_eq!((colour.quality, colour.drawdowns[0].off), (ColourQuality::Unknown, None));
    bench.over(white);
    assert!(bench.good(blue) > ColourQuality::Unknown);
    // Two that are let down with each other know nothing of each other.
    let mut bench = DrawdownBench::new();
    bench.draw(blue, 50.0, Some(bench.red), RecordedLayer::Hiding, false);
    bench.draw(bench.red, 50.0, Some(blue), RecordedLayer::Hiding, false);
    assert_eq!((bench.good(blue), bench.good(bench.red)), (ColourQuality::Unknown, ColourQuality::Unknown));
}

#[test]
fn a_drawdown_with_the_wrong_share_is_asked_for_again() {
    let mut bench = DrawdownBench::characterised();
    let (blue, white) = (bench.blue, bench.white);
    let at = |percent: f64| Share::from_percent(percent);
    let ink = Constants::mix(&[(0.3, &bench.truth[&blue]), (0.7, &bench.truth[&white])]).unwrap();
    let seen = SwatchMeasurement::of_curve(&ink.in_bulk(Surface::NONE));
    let made = |share, seen: &SwatchMeasurement| DrawdownRecord {
        component: blue,
        share,
        rest: Some(white),
        lay: RecordedLayer::Hiding,
        seen: seen.clone(),
        note: String::new(),
        by: None,
    };
    let wrong = bench.event(InkFact::DrawnDown(made(at(3.0), &seen)));
    let colour = component_colour(&bench.press.shop(), blue).unwrap();
    assert_eq!(colour.quality, ColourQuality::Contradictory);
    assert!(matches!(colour.next, Some(NextDrawdown::Again(_))));
    let form = DrawdownForm::next(&bench.press.shop(), blue);
    assert_eq!(form.rest, Some(white));
    bench.press.record(wrong, Fact::Deleted);
    assert_eq!(bench.good(blue), ColourQuality::Good);
}

#[test]
fn a_colour_based_on_photos_is_marked_and_so_is_what_is_computed_from_it() {
    let mut bench = DrawdownBench::new();
    let (white, clear, blue, red) = (bench.white, bench.clear, bench.blue, bench.red);
    let on = |bench: &DrawdownBench, id| component_colour(&bench.press.shop(), id).unwrap().provenance;
    assert_eq!(on(&bench, blue), ColourProvenance::default());
    bench.over(white);
    bench.over(clear);
    bench.draw(blue, 10.0, Some(white), RecordedLayer::Hiding, true);
    bench.draw(red, 10.0, Some(white), RecordedLayer::Hiding, true);
    bench.draw(red, 100.0, None, RecordedLayer::Hiding, true);
    assert_eq!(on(&bench, blue), ColourProvenance { drawdowns: 1, photos: 0, through: false });
    let look = bench.look(&[(blue, 0.1), (white, 0.9)]);
    let (tinted, revision) = bench.recipe("Pale", &[(blue, 10.0), (white, 90.0)], Some(look));
    let (plain, _) = bench.recipe("Rose", &[(red, 10.0), (white, 90.0)], None);
    let pot = bench.pot(revision, Some(900.0));
    bench.pour(pot, blue, 20.0, PourStep::WeighIn);
    bench.pour(pot, white, 80.0, PourStep::WeighIn);
    let ask = ask(Lab::new(20.0, 0.0, 0.0), 40);
    let covers = |bench: &DrawdownBench, id| cover_view(&bench.press.shop(), id, &ask).unwrap().by_photo;
    assert!(!covers(&bench, tinted) && !bench.view(pot).advice.unwrap().by_photo);
    let photo = photographed(&mut bench, blue, 100.0, None);
    assert_eq!(on(&bench, blue), ColourProvenance { drawdowns: 2, photos: 1, through: false });
    assert!(covers(&bench, tinted) && bench.view(pot).advice.unwrap().by_photo);
    assert!(!covers(&bench, plain), "what holds no such component rests on no photo");
    bench.press.record(photo, Fact::Deleted);
    assert!(!on(&bench, blue).any_photo());
    // A white read from a photo is behind every tint made with it.
    photographed(&mut bench, white, 100.0, None);
    assert_eq!(on(&bench, red), ColourProvenance { drawdowns: 2, photos: 0, through: true });
    assert!(covers(&bench, plain));
}

#[test]
fn the_drawdown_form_is_checked() {
    let bench = DrawdownBench::characterised();
    let shop = bench.press.shop();
    let mut form = DrawdownForm { seen: None, share: "5".into(), ..DrawdownForm::next(&shop, bench.blue) };
    let problems = form.check(bench.blue, None).unwrap_err();
    assert_eq!(problems.get("seen"), Some(&FormProblem::Missing));
    assert_eq!(problems.get("rest"), Some(&FormProblem::Missing));
    form.rest = Some(bench.blue);
    assert!(form.check(bench.blue, None).unwrap_err().contains_key("rest"));
    form.rest = Some(bench.clear);
    form.seen = Some(SwatchMeasurement::Colour(ColourReading::from_lab([40.0, 0.0, -30.0], ReadBy::Instrument)));
    (form.lay, form.bar, form.wet, form.a_hit) = (LayerKind::OverWhite, true, "100".into(), "40".into());
    let Ok(InkFact::DrawnDown(made)) = form.check(bench.blue, Some("Ines")) else { panic!() };
    let film = Film::Wet { um: 100, a_hit: 40 };
    assert_eq!(made.lay, RecordedLayer::Over { film, backing: SwatchMeasurement::CHART_WHITE });
    assert_eq!((made.share, made.rest), (Share::from_percent(5.0), Some(bench.clear)));
}
