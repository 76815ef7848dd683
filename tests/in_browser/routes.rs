//! Every hash names a route; an unknown hash leads to the day.

use lastpull::route::{
    ColourRoute, ExposureRoute, HeatRoute, InkRoute, JobsRoute, MoreRoute, PotRoute, Route, ScreensRoute,
};
use uuid::Uuid;
use wasm_bindgen_test::wasm_bindgen_test;

/// An array with a route of every variant of an enum. Without one of them it does not compile.
macro_rules! every {
    ($routes:ident: $($variant:ident $(($($value:expr),+))?),+ $(,)?) => {{
        const _: fn($routes) = |route| match route {
            $($routes::$variant { .. } => (),)+
        };
        [$($routes::$variant $(($($value),+))?),+]
    }};
}

/// All routes of the area that a route belongs to.
fn area_of(route: Route) -> Vec<Route> {
    let (id, event) = (Uuid::from_u128(7), Uuid::from_u128(8));
    match route {
        Route::Day | Route::Press | Route::Run(_) | Route::Failure(_) => vec![route],
        Route::Jobs(_) => every!(
            JobsRoute: List, New, Job(id), Edit(id), Repeat(id), NewLot(id), EditLot(id), NewRun(id), EditRun(id),
        )
        .map(Route::Jobs)
        .into(),
        Route::Screens(_) => {
            every!(ScreensRoute: Home, New, NewForRun(id), Screen(id), Edit(id), Settings).map(Route::Screens).into()
        }
        Route::Exposure(_) => every!(
            ExposureRoute: Home, Time, TimeForScreen(id), NewTest, NewTestFrom(id), Test(id), Equipment, NewLamp,
            Lamp(id), NewEmulsion, Emulsion(id), Bath, BathSettings, Volume,
        )
        .map(Route::Exposure)
        .into(),
        Route::Heat(_) => every!(
            HeatRoute: Home, Climate, Dryers, NewDryer, Dryer(id), Measure(id), SettlingTimes, Sheets, NewSheet,
            NewSheetForRun(id), Sheet(id), Limits, Limit(5), Tests, NewTest, NewTestForRun(id), Test(id), Trials,
            NewTrial, NewTrialForRun(id), Trial(id),
        )
        .map(Route::Heat)
        .into(),
        Route::Ink(_) => every!(
            InkRoute: Home, NewRecipe, NewRecipeForRun(id), Recipe(id), EditRecipe(id), Revise(id), MakeAgain(id),
            Stock, NewComponent, Component(id), EditComponent(id), Scale,
        )
        .map(Route::Ink)
        .into(),
        Route::Pot(_) => every!(
            PotRoute: New, NewFromRevision(id), NewForRun(id), Pot(id), Add(id), Event(id, event), Edit(id), Label(id),
            PrintUse(id),
        )
        .map(Route::Pot)
        .into(),
        Route::Colour(_) => every!(ColourRoute: Match(id), Target(id), Cover(id), Component(id), NewDrawdown(id))
            .map(Route::Colour)
            .into(),
        Route::More(_) => every!(MoreRoute: Menu, Settings, Backup, Deleted, Storage, Glossary, GlossaryTerm(7))
            .map(Route::More)
            .into(),
    }
}

#[wasm_bindgen_test]
fn every_route_reads_back_from_its_hash() {
    let id = Uuid::from_u128(7);
    let areas = every!(
        Route: Day, Jobs(JobsRoute::List), Press, Run(id), Screens(ScreensRoute::Home), Exposure(ExposureRoute::Home),
        Failure(id), Heat(HeatRoute::Home), Ink(InkRoute::Home), Pot(PotRoute::New), Colour(ColourRoute::Match(id)),
        More(MoreRoute::Menu),
    );
    for route in areas.into_iter().flat_map(area_of) {
        assert_eq!(Route::from_hash(&route.hash()), route);
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
