//! Which page a route shows, and which chunk holds its code.
//!
//! What the first page and the count need is in the first load; all other pages are in chunks. Only a chunk's own
//! function may name its pages here: a page named elsewhere would be in the first load. No match here has a wildcard
//! arm, so that a new route does not compile before it has a page.

use super::chunk::{Chunk, Draw};
use crate::lazy::{self, ChunkLoadError, chunk};
use crate::pages::day::DayPage;
use crate::pages::failure::FailurePage;
use crate::pages::press::{PickRunPage, RunBesideCount, RunPage};
use crate::pages::{heat, ink, jobs, screens, settings};
use crate::platform::spawn_local;
use crate::route::Route;
use leptos::prelude::*;
use std::cell::Cell;

thread_local! {
    static JOBS_AND_SETTINGS_DRAW: Cell<Option<Draw>> = const { Cell::new(None) };
    static SHOP_FLOOR_DRAW: Cell<Option<Draw>> = const { Cell::new(None) };
    static INK_DRAW: Cell<Option<Draw>> = const { Cell::new(None) };
}

/// Jobs, their forms, settings and backup.
static JOBS_AND_SETTINGS: Chunk = Chunk::new(|| Box::pin(split_jobs_and_settings()), &JOBS_AND_SETTINGS_DRAW);
/// A run before and after its count, screens, heat, and failures on the press.
static SHOP_FLOOR: Chunk = Chunk::new(|| Box::pin(split_shop_floor()), &SHOP_FLOOR_DRAW);
/// Recipes, pots and colour.
static INK: Chunk = Chunk::new(|| Box::pin(split_ink()), &INK_DRAW);

chunk! {
    jobs_and_settings: fn split_jobs_and_settings() -> Result<Draw, ChunkLoadError> {
        Ok(jobs_and_settings)
    }
}

chunk! {
    shop_floor: fn split_shop_floor() -> Result<Draw, ChunkLoadError> {
        Ok(shop_floor)
    }
}

chunk! {
    ink: fn split_ink() -> Result<Draw, ChunkLoadError> {
        Ok(ink_pages)
    }
}

/// Makes the chunks known to [`mod@lazy`]. Called once, before the first page is drawn.
pub fn register_chunks() {
    lazy::register(|route| chunk_of(route).draw(route), fetch_all);
}

/// Fetches all chunks in the background, those of the press first. One that fails is fetched again when it is needed.
fn fetch_all() {
    spawn_local(async {
        let _ = SHOP_FLOOR.fetch().await;
        let _ = INK.fetch().await;
        let _ = JOBS_AND_SETTINGS.fetch().await;
        let _ = crate::store::fetch_archive().await;
    });
}

/// Draws the page of a route.
pub fn page(route: Route) -> AnyView {
    match route {
        Route::Day => view! { <DayPage/> }.into_any(),
        Route::Press => view! { <PickRunPage/> }.into_any(),
        Route::Run(id) => view! { <RunPage id/> }.into_any(),
        route @ (Route::Jobs(_)
        | Route::Screens(_)
        | Route::Exposure(_)
        | Route::Failure(_)
        | Route::Heat(_)
        | Route::Ink(_)
        | Route::Pot(_)
        | Route::Colour(_)
        | Route::More(_)) => lazy::draw(route),
    }
}

/// The chunk that holds the page of a route; for a run, the chunk of its checks and summary.
fn chunk_of(route: Route) -> &'static Chunk {
    match route {
        Route::Run(_) | Route::Screens(_) | Route::Exposure(_) | Route::Failure(_) | Route::Heat(_) => &SHOP_FLOOR,
        Route::Ink(_) | Route::Pot(_) | Route::Colour(_) => &INK,
        Route::Jobs(_)
        | Route::More(_)
        // Drawn without a chunk.
        | Route::Day
        | Route::Press => &JOBS_AND_SETTINGS,
    }
}

fn jobs_and_settings(route: Route) -> AnyView {
    match route {
        Route::Jobs(route) => jobs::page(route),
        Route::More(route) => settings::page(route),
        Route::Day
        | Route::Press
        | Route::Run(_)
        | Route::Screens(_)
        | Route::Exposure(_)
        | Route::Failure(_)
        | Route::Heat(_)
        | Route::Ink(_)
        | Route::Pot(_)
        | Route::Colour(_) => ().into_any(),
    }
}

fn shop_floor(route: Route) -> AnyView {
    match route {
        Route::Screens(route) => screens::inventory::page(route),
        Route::Exposure(route) => screens::exposure::page(route),
        Route::Failure(id) => view! { <FailurePage id/> }.into_any(),
        Route::Heat(route) => heat::page(route),
        Route::Run(id) => view! { <RunBesideCount id/> }.into_any(),
        Route::Day
        | Route::Jobs(_)
        | Route::Press
        | Route::Ink(_)
        | Route::Pot(_)
        | Route::Colour(_)
        | Route::More(_) => ().into_any(),
    }
}

fn ink_pages(route: Route) -> AnyView {
    match route {
        Route::Ink(route) => ink::shelf::page(route),
        Route::Pot(route) => ink::pot::page(route),
        Route::Colour(route) => ink::colour::page(route),
        Route::Day
        | Route::Jobs(_)
        | Route::Press
        | Route::Run(_)
        | Route::Screens(_)
        | Route::Exposure(_)
        | Route::Failure(_)
        | Route::Heat(_)
        | Route::More(_) => ().into_any(),
    }
}
