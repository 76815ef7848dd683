//! Known patches to lay beside a drawdown.

use super::{names, photographed};
use crate::shop::{DrawdownBench, said};
use lastpull_core::colour::{Lab, Surface, ciede2000};
use lastpull_core::facts::{Fact, LotField};
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    ColourReading, InkFact, LayerKind, PatchSource, ReadBy, RecipeField, RecordedLayer, Share, known_patches, lab_of,
};
use lastpull_core::job::{Fabric, Size};

#[test]
fn known_patches_are_the_components_own_readings_then_the_nearest() {
    let mut bench = DrawdownBench::new();
    assert!(known_patches(&bench.press.shop(), bench.blue).is_empty());
    let (blue, red, white) = (bench.blue, bench.red, bench.white);
    bench.over(white);
    let red_alone = bench.draw(red, 100.0, None, RecordedLayer::Hiding, true);
    let tint = bench.draw(blue, 10.0, Some(white), RecordedLayer::Hiding, true);
    let alone = bench.draw(blue, 100.0, None, RecordedLayer::Hiding, false);
    let near_blue = bench.look(&[(blue, 0.95), (red, 0.05)]);
    let (violet, _) = bench.recipe("Violet", &[(blue, 95.0), (red, 5.0)], Some(near_blue));
    let patches = known_patches(&bench.press.shop(), blue);
    let ids: Vec<Subject> = patches.iter().take(3).map(|patch| patch.id).collect();
    assert_eq!(ids, [alone, tint, violet], "its latest, the one before, then what looks most like it");
    assert_eq!(
        patches[1].of,
        PatchSource::Drawdown { share: Share::from_percent(10.0), rest: "White".into(), lay: LayerKind::Hiding }
    );
    assert_eq!(patches[2].of, PatchSource::Target);
    assert!(patches.iter().any(|patch| patch.id == red_alone));
    // A curve is as good as three numbers.
    let of_curve = bench.truth[&blue].in_bulk(Surface::NONE).lab();
    assert!(patches[0].reading.by == ReadBy::Instrument && ciede2000(lab_of(patches[0].reading), of_curve) < 0.2);
    // What was taken back, or belongs to what is gone, lies on no table.
    bench.press.record(alone, Fact::Deleted);
    bench.press.record(red, Fact::Deleted);
    bench.press.record(violet, Fact::Deleted);
    assert_eq!(names(&known_patches(&bench.press.shop(), blue)), ["Blue", "White", "White"]);
}

#[test]
fn a_garment_read_by_instrument_is_offered_once_for_its_lots() {
    let mut bench = DrawdownBench::new();
    let job = bench.press.job("Tea", None);
    let read = |bench: &mut DrawdownBench, lab, by| {
        let lot = bench.press.lot(job, Fabric::Cotton, &[(Size::M, 12)]);
        bench.press.record(lot, Fact::LotSet(vec![LotField::ColourName("sand".into())]));
        said(&mut bench.press, lot, InkFact::GarmentRead(Some(ColourReading::from_lab(lab, by))));
        lot
    };
    let sand = read(&mut bench, [80.0, 2.0, 12.0], ReadBy::Instrument);
    read(&mut bench, [80.0, 2.0, 12.0], ReadBy::Instrument);
    read(&mut bench, [81.0, 2.0, 12.0], ReadBy::Photo);
    read(&mut bench, [82.0, 2.0, 12.0], ReadBy::Screen);
    let patches = known_patches(&bench.press.shop(), bench.blue);
    assert_eq!(names(&patches), ["Tee, sand"]);
    assert_eq!((patches[0].id, &patches[0].of), (sand, &PatchSource::Garment));
    bench.press.record(job, Fact::Deleted);
    assert!(known_patches(&bench.press.shop(), bench.blue).is_empty());
}

#[test]
fn colours_from_photos_or_screens_are_never_offered_as_known_patches() {
    let mut bench = DrawdownBench::new();
    let (blue, red) = (bench.blue, bench.red);
    photographed(&mut bench, blue, 100.0, None);
    photographed(&mut bench, red, 100.0, None);
    for (name, by) in [("Seen", ReadBy::Photo), ("Shown", ReadBy::Screen)] {
        let (recipe, _) = bench.recipe(name, &[(blue, 100.0)], None);
        let target = RecipeField::Target(Some(ColourReading::from_lab([40.0, 5.0, -20.0], by)));
        said(&mut bench.press, recipe, InkFact::RecipeSet(vec![target]));
    }
    assert_eq!(known_patches(&bench.press.shop(), blue), []);
    assert_eq!(known_patches(&bench.press.shop(), red), []);
}

#[test]
fn the_number_of_known_patches_offered_is_limited() {
    let mut bench = DrawdownBench::new();
    let (blue, red) = (bench.blue, bench.red);
    for _ in 0..9 {
        bench.draw(blue, 100.0, None, RecordedLayer::Hiding, true);
    }
    for place in 0..20 {
        let level = 5.0 + 4.0 * f64::from(place);
        bench.recipe(&format!("Ink {place}"), &[(red, 100.0)], Some(Lab::new(level, 0.0, 0.0)));
    }
    let patches = known_patches(&bench.press.shop(), blue);
    assert_eq!(patches.len(), 12);
    assert_eq!(patches.iter().filter(|patch| patch.name == "Blue").count(), 5);
}
