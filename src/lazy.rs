//! Chunks: parts of the app whose code is fetched when it is first needed.
//!
//! The build puts each chunk into a WebAssembly file of its own; the service worker stores them with the rest of the
//! app. This module knows no page and no chunk: functions of a chunk are declared with `chunk!` beside what they
//! do, and the app registers how the pages of chunks are drawn.

use crate::route::Route;
use leptos::prelude::*;
use std::cell::OnceCell;
use std::pin::Pin;

/// A chunk could not be fetched: no network, and the app is not stored for offline use yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ChunkLoadError;

#[cfg(feature = "chunks")]
impl From<wasm_split_helpers::SplitLoaderError> for ChunkLoadError {
    fn from(_: wasm_split_helpers::SplitLoaderError) -> Self {
        Self
    }
}

/// Declares an async function whose body is in a chunk:
/// `chunk! { name: fn function() -> Result<T, ChunkLoadError> { … } }`.
/// Functions of one chunk may be declared in several modules. Without the feature `chunks`, as the browser tests
/// are built, there are no chunks and the function is an ordinary one.
macro_rules! chunk {
    ($chunk:ident: fn $name:ident($($arg:ident: $of:ty),*) -> $gives:ty $body:block) => {
        // A function of a chunk is called through an import, which is unsafe, and always returns a `Result`.
        #[cfg(feature = "chunks")]
        #[allow(unsafe_code, clippy::unnecessary_wraps)]
        #[wasm_split_helpers::wasm_split($chunk, fallible)]
        fn $name($($arg: $of),*) -> $gives $body

        #[cfg(not(feature = "chunks"))]
        #[allow(clippy::unnecessary_wraps, clippy::unused_async)]
        async fn $name($($arg: $of),*) -> $gives $body
    };
}
pub(crate) use chunk;

/// Work that a chunk does; boxed, since a function of a chunk cannot be async itself.
pub type Work<T> = Pin<Box<dyn Future<Output = T>>>;

struct Hooks {
    draw: fn(Route) -> AnyView,
    fetch_all: fn(),
}

thread_local! {
    static HOOKS: OnceCell<Hooks> = const { OnceCell::new() };
}

/// Registers how a route is drawn by its chunk, and how all chunks are fetched. Only the first call counts.
pub fn register(draw: fn(Route) -> AnyView, fetch_all: fn()) {
    HOOKS.with(|hooks| drop(hooks.set(Hooks { draw, fetch_all })));
}

/// Draws what the chunk of a route has for it: now, or as soon as the chunk is loaded.
pub fn draw(route: Route) -> AnyView {
    HOOKS.with(|hooks| hooks.get().map(|hooks| hooks.draw)).map_or_else(|| ().into_any(), |draw| draw(route))
}

/// Fetches all chunks in the background.
pub fn fetch_all() {
    if let Some(fetch_all) = HOOKS.with(|hooks| hooks.get().map(|hooks| hooks.fetch_all)) {
        fetch_all();
    }
}
