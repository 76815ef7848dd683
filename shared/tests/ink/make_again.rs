//! A recipe made again.

use super::{ordered, plain_print};
use crate::shop::{Published, g, published};
use lastpull_core::form::FormProblem;
use lastpull_core::ink::{BatchSize, BatchSizeForm, InkFact, PotField};
use lastpull_core::job::Fabric;
use lastpull_core::units::{Grams, NumberProblem, Units};

#[test]
fn a_batch_to_make_again_is_a_weight_or_the_pieces_of_a_run() {
    let Published { mut press, recipe, first, .. } = published();
    let metric = Units::METRIC;
    assert_eq!(BatchSizeForm::of(&press.shop(), recipe, metric), BatchSizeForm::default());
    assert_eq!(BatchSizeForm::default().size(&press.shop(), metric).unwrap_err()["grams"], FormProblem::Missing);
    press.pot(Some(first), 250.0);
    assert_eq!(BatchSizeForm::of(&press.shop(), recipe, metric).grams, "250", "as much as last time");

    let run = ordered(&mut press, "Tour tees", "Brick", Fabric::Cotton, 100);
    let asked = BatchSizeForm { by_pieces: true, ..BatchSizeForm::of(&press.shop(), recipe, metric) };
    assert_eq!((asked.run, asked.pieces.as_str()), (Some(run), "100"));
    assert!(asked.size(&press.shop(), metric).unwrap_err().contains_key("run"), "nobody knows what a print takes");
    let (print, _) = plain_print().check(metric).unwrap();
    press.record_ink(run, InkFact::PrintSet(Some(print)));
    let shop = press.shop();
    // By hand: 2 g a print, a tenth more for losses; the empty pot holds none of it.
    assert_eq!(BatchSizeForm::of(&shop, recipe, metric).grams, "220");
    // 7.76 ounces, by the definition of the ounce.
    assert_eq!(BatchSizeForm::of(&shop, recipe, Units::US.with_ounces()).grams, "7.8");
    let asked = BatchSizeForm { pieces: "80".into(), ..asked };
    let made = asked.size(&shop, metric).unwrap();
    assert_eq!((made.size, made.batch.unwrap().pieces), (BatchSize::Whole(g(176.0)), 80));
    let fields = asked.pot(&shop, first, metric).unwrap();
    assert!(fields.contains(&PotField::Name("Brick, Tour tees".into())));
    assert!(fields.contains(&PotField::Size(Some(BatchSize::Whole(g(176.0))))));
    assert!(fields.contains(&PotField::Revision(Some(first))) && fields.contains(&PotField::Run(Some(run))));
    // Typed in ounces; by the definition of the ounce.
    let ounces = BatchSizeForm { grams: "20".into(), of_ink: true, ..BatchSizeForm::default() };
    let size = ounces.size(&shop, Units::US.with_ounces()).unwrap().size;
    assert_eq!(size, BatchSize::Ink(Grams::from_milligrams(566_990)));
}

#[test]
fn a_batch_made_again_gets_a_pot_like_the_last_with_its_own_name() {
    let Published { mut press, recipe, first, .. } = published();
    let metric = Units::METRIC;
    let before = BatchSizeForm::of(&press.shop(), recipe, metric);
    assert_eq!((before.capacity.as_str(), before.tare.as_str()), ("", ""));
    let pot = press.pot(Some(first), 500.0);
    let fields =
        vec![PotField::Name("Brick".into()), PotField::Capacity(Some(g(600.0))), PotField::Tare(Some(g(48.0)))];
    press.record_ink(pot, InkFact::PotSet(fields));
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
