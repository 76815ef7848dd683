//! A hash names a place, and nonsense leads to the day.

use lastpull::place::{HeatPlace, Place, StencilPlace};
use uuid::Uuid;
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
fn every_place_reads_back_from_its_hash() {
    let id = Uuid::from_u128(7);
    for place in [
        Place::Day,
        Place::Jobs,
        Place::NewJob,
        Place::Job(id),
        Place::EditJob(id),
        Place::NewLot(id),
        Place::EditLot(id),
        Place::NewRun(id),
        Place::EditRun(id),
        Place::Press,
        Place::Run(id),
        Place::More,
        Place::Settings,
        Place::Exchange,
        Place::About,
    ] {
        assert_eq!(Place::of(&place.hash()), place);
    }
}

#[wasm_bindgen_test]
fn every_place_of_heat_reads_back_from_its_hash() {
    let id = Uuid::from_u128(7);
    for place in [
        HeatPlace::Home,
        HeatPlace::Room,
        HeatPlace::Units,
        HeatPlace::NewUnit,
        HeatPlace::Unit(id),
        HeatPlace::Measure(id),
        HeatPlace::Settlings,
        HeatPlace::Sheets,
        HeatPlace::NewSheet,
        HeatPlace::SheetOf(id),
        HeatPlace::Sheet(id),
        HeatPlace::Limits,
        HeatPlace::Limit(5),
        HeatPlace::Tests,
        HeatPlace::NewTest,
        HeatPlace::TestOf(id),
        HeatPlace::Test(id),
        HeatPlace::Trials,
        HeatPlace::NewTrial,
        HeatPlace::TrialOf(id),
        HeatPlace::Trial(id),
    ] {
        assert_eq!(Place::of(&Place::Heat(place).hash()), Place::Heat(place));
    }
}

#[wasm_bindgen_test]
fn every_place_of_exposure_and_bath_reads_back_from_its_hash() {
    let id = Uuid::from_u128(7);
    for place in [
        StencilPlace::Home,
        StencilPlace::Exposure,
        StencilPlace::ExposureOf(id),
        StencilPlace::Find,
        StencilPlace::FindFrom(id),
        StencilPlace::Found(id),
        StencilPlace::Kit,
        StencilPlace::NewLamp,
        StencilPlace::Lamp(id),
        StencilPlace::NewEmulsion,
        StencilPlace::Emulsion(id),
        StencilPlace::Bath,
        StencilPlace::BathSettings,
        StencilPlace::Volume,
    ] {
        assert_eq!(Place::of(&place.hash()), Place::Stencil(place));
    }
}

#[wasm_bindgen_test]
fn nonsense_leads_to_the_day() {
    for hash in ["", "#", "#/nowhere", "#/job/7", "#/press/<script>", "#/heat/limit/900", "#/heat/test/7"] {
        assert_eq!(Place::of(hash), Place::Day, "{hash}");
    }
}
