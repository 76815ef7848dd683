//! A chunk of pages: loaded when one of its pages is first drawn.

use crate::i18n;
use crate::lazy::ChunkLoadError;
use crate::platform::{clock, dom, spawn_local, stylesheet};
use crate::route::Route;
use leptos::prelude::*;
use std::cell::Cell;
use std::pin::Pin;
use std::thread::LocalKey;
use std::time::Duration;

/// Draws a page of a chunk.
pub type Draw = fn(Route) -> AnyView;
type Loading = Pin<Box<dyn Future<Output = Result<Draw, ChunkLoadError>>>>;

/// A chunk that draws pages.
pub struct Chunk {
    load: fn() -> Loading,
    loaded: &'static LocalKey<Cell<Option<Draw>>>,
}

impl Chunk {
    /// A chunk that `load` fetches; `loaded` holds its drawing function from then on.
    pub const fn new(load: fn() -> Loading, loaded: &'static LocalKey<Cell<Option<Draw>>>) -> Self {
        Self { load, loaded }
    }

    /// Fetches the chunk and the style sheet of its pages.
    ///
    /// # Errors
    /// [`ChunkLoadError`] if either fails; a later call tries again.
    pub async fn fetch(&'static self) -> Result<Draw, ChunkLoadError> {
        let style = stylesheet::load_lazy();
        let draw = (self.load)().await?;
        if !style.await {
            return Err(ChunkLoadError);
        }
        self.loaded.set(Some(draw));
        Ok(draw)
    }

    /// Draws one of its pages, now or as soon as it is loaded. If loading fails, an error with a retry button is shown.
    pub fn draw(&'static self, route: Route) -> AnyView {
        if let Some(draw) = self.loaded.get() {
            return draw(route);
        }
        let loaded = RwSignal::new(None::<Result<Draw, ChunkLoadError>>);
        let load = move || {
            loaded.set(None);
            spawn_local(async move {
                loaded.set(Some(self.fetch().await));
                // Once the page is drawn: screen readers announce it, and the keyboard focus starts at its top.
                clock::after(Duration::ZERO, || dom::focus("heading"));
            });
        };
        load();
        (move || match loaded.get() {
            Some(Ok(draw)) => draw(route),
            Some(Err(ChunkLoadError)) => view! {
                <article class="page failed" role="alert">
                    <h1 id="heading" tabindex="-1">{i18n::chunk_failed_title()}</h1>
                    <p>{i18n::chunk_failed_text()}</p>
                    <button type="button" class="button primary" on:click=move |_| load()>{i18n::try_again()}</button>
                </article>
            }
            .into_any(),
            None => view! { <p class="opening" role="status">{i18n::opening()}</p> }.into_any(),
        })
        .into_any()
    }
}
