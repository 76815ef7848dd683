//! Whether an ink covers a garment.

use super::ask;
use crate::shop::DrawdownBench;
use lastpull_core::colour::Lab;
use lastpull_core::ink::{CoverForm, NoCover, cover_view};

#[test]
fn a_transparent_ink_needs_an_underbase_on_violet() {
    let mut bench = DrawdownBench::characterised();
    let shirt = Lab::new(32.0, 30.0, -40.0);
    let target = bench.look(&[(bench.white, 60.0), (bench.yellow, 4.0)]);
    let (recipe, _) = bench.recipe("Lemon", &[(bench.clear, 94.0), (bench.yellow, 6.0)], Some(target));
    let view = cover_view(&bench.press.shop(), recipe, &ask(shirt, 60)).unwrap();
    assert_eq!(view.rows.len(), 5);
    assert_eq!((view.underbase.as_ref().unwrap().1.as_str(), view.whites.len()), ("White", 1));
    let off = |hits, underbase| {
        view.rows.iter().find(|row| (row.look.way.hits, row.look.way.underbase) == (hits, underbase)).unwrap().look.off
    };
    assert!(off(3, 0) > 20.0 && off(1, 1) < off(3, 0) / 2.0, "{:?}", view.rows);
    assert!(view.cheapest.is_none_or(|place| view.rows[place].look.way.underbase == 1));
    // 60 pieces of 6 s; and a hit and a flash of 12 s more each with another screen of 30 min.
    assert!((view.rows[0].minutes - 6.0).abs() < 1e-9 && (view.rows[3].minutes - 54.0).abs() < 1e-9);
    assert!((view.rows[1].minutes - 24.0).abs() < 1e-9);
}

#[test]
fn an_opaque_ink_needs_fewer_hits_on_a_light_shirt() {
    let mut bench = DrawdownBench::characterised();
    let parts = [(bench.white, 97.0), (bench.blue, 3.0)];
    let (recipe, _) = bench.recipe("Sky", &parts, None);
    let cover = |garment| cover_view(&bench.press.shop(), recipe, &ask(garment, 30)).unwrap();
    let (light, dark) = (cover(Lab::new(90.0, 0.0, 2.0)), cover(Lab::new(12.0, 0.0, 0.0)));
    assert!(light.rows[0].look.off < dark.rows[0].look.off - 2.0, "{:?} {:?}", light.rows, dark.rows);
    assert!(light.cheapest.is_some() && light.cheapest <= dark.cheapest && !light.is_target);
    for view in [&light, &dark] {
        assert!(view.rows.windows(2).take(2).all(|two| two[0].look.contrast_ratio < two[1].look.contrast_ratio));
    }
}

#[test]
fn cover_says_what_is_missing() {
    let mut bench = DrawdownBench::new();
    let (recipe, _) = bench.recipe("Lemon", &[(bench.clear, 94.0), (bench.yellow, 6.0)], None);
    let Err(NoCover::Uncharacterised(rows)) = cover_view(&bench.press.shop(), recipe, &ask(Lab::default(), 1)) else {
        panic!()
    };
    assert_eq!(rows.iter().map(|row| row.name.as_str()).collect::<Vec<_>>(), ["Yellow"]);
    let nowhere = bench.press.id();
    assert_eq!(cover_view(&bench.press.shop(), nowhere, &ask(Lab::default(), 1)), Err(NoCover::NoParts));
}

#[test]
fn the_labour_times_of_the_cover_form_are_checked() {
    let bench = DrawdownBench::new();
    let form = CoverForm::of(&bench.press.shop(), None);
    let (pieces, work) = form.check().unwrap();
    assert_eq!((pieces, work.hit_seconds, work.screen_minutes), (48, 6.0, 30.0));
    let problems = CoverForm { pieces: String::new(), flash: "-1".into(), ..form }.check().unwrap_err();
    assert!(problems.contains_key("pieces") && problems.contains_key("flash"));
}
