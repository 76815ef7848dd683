//! Every hash names a route; an unknown hash leads to the day.

use lastpull::route::{ExposureRoute, HeatRoute, JobsRoute, MoreRoute, Route};
use uuid::Uuid;
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test]
fn every_route_reads_back_from_its_hash() {
    let id = Uuid::from_u128(7);
    for route in [
        Route::Day,
        Route::Jobs(JobsRoute::List),
        Route::Jobs(JobsRoute::New),
        Route::Jobs(JobsRoute::Job(id)),
        Route::Jobs(JobsRoute::Edit(id)),
        Route::Jobs(JobsRoute::Repeat(id)),
        Route::Jobs(JobsRoute::NewLot(id)),
        Route::Jobs(JobsRoute::EditLot(id)),
        Route::Jobs(JobsRoute::NewRun(id)),
        Route::Jobs(JobsRoute::EditRun(id)),
        Route::Press,
        Route::Run(id),
        Route::More(MoreRoute::Menu),
        Route::More(MoreRoute::Settings),
        Route::More(MoreRoute::Backup),
        Route::More(MoreRoute::Deleted),
        Route::More(MoreRoute::Storage),
    ] {
        assert_eq!(Route::from_hash(&route.hash()), route);
    }
}

#[wasm_bindgen_test]
fn every_route_of_heat_reads_back_from_its_hash() {
    let id = Uuid::from_u128(7);
    for route in [
        HeatRoute::Home,
        HeatRoute::Climate,
        HeatRoute::Dryers,
        HeatRoute::NewDryer,
        HeatRoute::Dryer(id),
        HeatRoute::Measure(id),
        HeatRoute::SettlingTimes,
        HeatRoute::Sheets,
        HeatRoute::NewSheet,
        HeatRoute::NewSheetForRun(id),
        HeatRoute::Sheet(id),
        HeatRoute::Limits,
        HeatRoute::Limit(5),
        HeatRoute::Tests,
        HeatRoute::NewTest,
        HeatRoute::NewTestForRun(id),
        HeatRoute::Test(id),
        HeatRoute::Trials,
        HeatRoute::NewTrial,
        HeatRoute::NewTrialForRun(id),
        HeatRoute::Trial(id),
    ] {
        assert_eq!(Route::from_hash(&Route::Heat(route).hash()), Route::Heat(route));
    }
}

#[wasm_bindgen_test]
fn every_route_of_exposure_and_bath_reads_back_from_its_hash() {
    let id = Uuid::from_u128(7);
    for route in [
        ExposureRoute::Home,
        ExposureRoute::Time,
        ExposureRoute::TimeForScreen(id),
        ExposureRoute::NewTest,
        ExposureRoute::NewTestFrom(id),
        ExposureRoute::Test(id),
        ExposureRoute::Equipment,
        ExposureRoute::NewLamp,
        ExposureRoute::Lamp(id),
        ExposureRoute::NewEmulsion,
        ExposureRoute::Emulsion(id),
        ExposureRoute::Bath,
        ExposureRoute::BathSettings,
        ExposureRoute::Volume,
    ] {
        assert_eq!(Route::from_hash(&route.hash()), Route::Exposure(route));
    }
}

#[wasm_bindgen_test]
fn an_invalid_hash_leads_to_the_day() {
    for hash in
        ["", "#", "#/nowhere", "#/job/7", "#/press/<script>", "#/heat/limit/900", "#/heat/test/7", "#/more/nowhere"]
    {
        assert_eq!(Route::from_hash(hash), Route::Day, "{hash}");
    }
}
