//! The ink bench. Grams are checked by hand or against `ink_recipe_by_weight.csv`; limits and thresholds are our own.

use crate::shop::{DrawdownBench, TestShop, said};
use lastpull_core::colour::{Lab, LabourTimes};
use lastpull_core::facts::RunField;
use lastpull_core::ids::{RunId, Subject};
use lastpull_core::ink::{
    CoverageQuery, InkFact, KnownPatch, PrintForm, ReadBy, RecordedLayer, SwatchMeasurement, WeighInView, weigh_in_view,
};
use lastpull_core::job::{Fabric, Size};
use lastpull_core::screen::InkUseForm;

mod approval;
mod batch;
mod component;
mod cover;
mod drawdowns;
mod known_patches;
mod ledger;
mod make_again;
mod matching;
mod overpour;
mod properties;
mod recipe;
mod recipe_form;
mod stock;
mod weigh_in;
mod workflow;

/// The same drawdown as if read from a photo.
fn photographed(bench: &mut DrawdownBench, component: Subject, percent: f64, rest: Option<Subject>) -> Subject {
    let event = bench.draw(component, percent, rest, RecordedLayer::Hiding, true);
    let shop = bench.press.shop();
    let InkFact::DrawnDown(mut made) = shop.ink.event(event).unwrap().fact.clone() else { panic!() };
    let SwatchMeasurement::Colour(reading) = &mut made.seen else { panic!() };
    reading.by = ReadBy::Photo;
    said(&mut bench.press, event, InkFact::DrawnDown(made));
    event
}

fn names(patches: &[KnownPatch]) -> Vec<&str> {
    patches.iter().map(|patch| patch.name.as_str()).collect()
}

fn ask(garment: Lab, pieces: u32) -> CoverageQuery {
    CoverageQuery {
        garment,
        underbase: None,
        pieces,
        work: LabourTimes { hit_seconds: 6.0, flash_seconds: 12.0, screen_minutes: 30.0 },
    }
}

fn view(press: &TestShop, pot: Subject) -> WeighInView {
    weigh_in_view(&press.shop(), pot, None).unwrap()
}

/// Art of 250 by 200 mm, all of it printing, through a mesh of 40 cm³/m²: two grams a print at a density of 1.
fn plain_print() -> PrintForm {
    PrintForm {
        ink: InkUseForm { width: "25".into(), height: "20".into(), pieces: "100".into(), ..InkUseForm::default() },
        volume: "40".into(),
        ..PrintForm::default()
    }
}

fn ordered(press: &mut TestShop, title: &str, ink: &str, fabric: Fabric, pieces: u32) -> RunId {
    let run = press.order(title, None, fabric, &[(Size::M, pieces)]);
    press.set_up(run, vec![RunField::Ink(ink.into())]);
    run
}
