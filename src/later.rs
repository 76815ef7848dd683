//! Parts of the app whose code comes when it is first needed.
//!
//! The press must be ready at once; forms, settings and the like may take a moment longer the first time.
//! The build puts each part named here into a WebAssembly file of its own. They are fetched soon after the
//! first screen is drawn, and once the service worker has stored the app they are on the device, so that a
//! part opens without a network too. A part that does not come says so and can be asked for again.

// Splitting puts functions behind imports, which Rust can only call as unsafe, and has every one of them
// give a result. Nothing else here is so.
#![allow(unsafe_code, clippy::unnecessary_wraps, clippy::unused_async)]

use crate::place::Place;
use crate::platform::files::Incoming;
use crate::platform::indexed_db::IndexedDb;
use crate::platform::{clock, dom, spawn_local, style};
use crate::store::{self, BringError, Brought, Folded, Ready, Store};
use crate::words;
use lastpull_core::journal::{DeviceId, Draft, Opened, StorageFault};
use lastpull_core::plan::WallClock;
use leptos::prelude::*;
use std::cell::Cell;
use std::pin::Pin;
use std::thread::LocalKey;
use std::time::Duration;

/// A part could not be fetched: there is no network, and the app is not stored for use without one yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotLoaded;

#[cfg(feature = "parts")]
impl From<wasm_split_helpers::SplitLoaderError> for NotLoaded {
    fn from(_: wasm_split_helpers::SplitLoaderError) -> Self {
        Self
    }
}

/// A way into a part. Built in one piece, as the browser tests are, it is there at once.
macro_rules! part {
    ($part:ident: fn $name:ident($($arg:ident: $of:ty),*) -> $gives:ty $body:block) => {
        #[cfg(feature = "parts")]
        #[wasm_split_helpers::wasm_split($part, fallible)]
        fn $name($($arg: $of),*) -> $gives $body

        #[cfg(not(feature = "parts"))]
        async fn $name($($arg: $of),*) -> $gives $body
    };
}

/// How a screen of a part is drawn.
type Draw = fn(Place) -> AnyView;
/// A part on its way.
type Coming = Pin<Box<dyn Future<Output = Result<Draw, NotLoaded>>>>;

/// A part of the app that draws screens.
pub struct Part {
    load: fn() -> Coming,
    here: &'static LocalKey<Cell<Option<Draw>>>,
}

thread_local! {
    static OFFICE_HERE: Cell<Option<Draw>> = const { Cell::new(None) };
    static WORKSHOP_HERE: Cell<Option<Draw>> = const { Cell::new(None) };
    static BENCH_HERE: Cell<Option<Draw>> = const { Cell::new(None) };
}

/// Jobs, forms, settings.
pub static OFFICE: Part = Part { load: || Box::pin(split_office()), here: &OFFICE_HERE };
/// A run before and after its count, screens, heat, and what fails on the press.
pub static WORKSHOP: Part = Part { load: || Box::pin(split_workshop()), here: &WORKSHOP_HERE };
/// The ink bench.
pub static BENCH: Part = Part { load: || Box::pin(split_bench()), here: &BENCH_HERE };

part! {
    office: fn split_office() -> Result<Draw, NotLoaded> {
        Ok(crate::shell::office)
    }
}

part! {
    workshop: fn split_workshop() -> Result<Draw, NotLoaded> {
        Ok(crate::shell::workshop)
    }
}

part! {
    bench: fn split_bench() -> Result<Draw, NotLoaded> {
        Ok(crate::shell::bench)
    }
}

/// Work of a part.
type Work<T> = Pin<Box<dyn Future<Output = T>>>;

part! {
    archive: fn split_make_backup(store: Store) -> Result<Work<Option<Ready>>, NotLoaded> {
        Ok(Box::pin(store.make_backup()))
    }
}

part! {
    archive: fn split_bring_backup(store: Store, file: Incoming) -> Result<Work<Result<Brought, BringError>>, NotLoaded> {
        Ok(Box::pin(store.bring_backup(file)))
    }
}

part! {
    archive: fn split_read_whole(storage: IndexedDb, opened: Opened) -> Result<Work<Result<Folded, StorageFault>>, NotLoaded> {
        Ok(Box::pin(store::read_whole(storage, opened)))
    }
}

part! {
    archive: fn split_tidy(store: Store, long: bool) -> Result<Work<()>, NotLoaded> {
        Ok(Box::pin(store.tidy_up(long)))
    }
}

/// The facts of a demo shop: as of when, recorded by which device, and what that is called.
pub type DemoFacts = fn(WallClock, DeviceId, &str) -> Vec<Draft>;

fn demo_facts(clock: WallClock, device: DeviceId, name: &str) -> Vec<Draft> {
    lastpull_core::demo::demo_facts(clock, device, name, crate::platform::ids::new_id)
}

part! {
    office: fn split_demo_facts() -> Result<DemoFacts, NotLoaded> {
        Ok(demo_facts)
    }
}

/// Fetches what is likely to be wanted next, while nothing else is to be done.
pub fn fetch_ahead() {
    spawn_local(async {
        // One that does not come is asked for again when it is wanted.
        let _ = WORKSHOP.fetch().await;
        let _ = BENCH.fetch().await;
        let _ = OFFICE.fetch().await;
    });
}

impl Part {
    async fn fetch(&'static self) -> Result<Draw, NotLoaded> {
        let style = style::later();
        let draw = (self.load)().await?;
        if !style.await {
            return Err(NotLoaded);
        }
        self.here.set(Some(draw));
        Ok(draw)
    }

    /// Draws one of its screens, now or as soon as it is here.
    pub fn draw(&'static self, place: Place) -> AnyView {
        if let Some(draw) = self.here.get() {
            return draw(place);
        }
        let loaded = RwSignal::new(None::<Result<Draw, NotLoaded>>);
        let load = move || {
            loaded.set(None);
            spawn_local(async move {
                loaded.set(Some(self.fetch().await));
                // Once it is drawn: readers announce the screen, and the keyboard goes on from its top.
                clock::after(Duration::ZERO, || dom::focus("heading"));
            });
        };
        load();
        (move || match loaded.get() {
            Some(Ok(draw)) => draw(place).into_any(),
            Some(Err(NotLoaded)) => view! {
                <article class="page failed" role="alert">
                    <h1 id="heading" tabindex="-1">{words::part_failed_title()}</h1>
                    <p>{words::part_failed_text()}</p>
                    <button type="button" class="button primary" on:click=move |_| load()>{words::try_again()}</button>
                </article>
            }
            .into_any(),
            None => view! { <p class="opening" role="status">{words::opening()}</p> }.into_any(),
        })
        .into_any()
    }
}

/// Makes the backup file.
///
/// # Errors
/// [`NotLoaded`] when its part could not be fetched.
pub async fn make_backup(store: Store) -> Result<Option<Ready>, NotLoaded> {
    Ok(split_make_backup(store).await?.await)
}

/// Takes in a backup file.
///
/// # Errors
/// [`NotLoaded`] when its part could not be fetched.
pub async fn bring_backup(store: Store, file: Incoming) -> Result<Result<Brought, BringError>, NotLoaded> {
    Ok(split_bring_backup(store, file).await?.await)
}

/// Folds everything that is stored.
///
/// # Errors
/// [`NotLoaded`] when its part could not be fetched.
pub async fn read_whole(storage: IndexedDb, opened: Opened) -> Result<Result<Folded, StorageFault>, NotLoaded> {
    Ok(split_read_whole(storage, opened).await?.await)
}

/// Packs the tail where it is long, and forgets photos that nothing shows.
///
/// # Errors
/// [`NotLoaded`] when its part could not be fetched.
pub async fn tidy(store: Store, long: bool) -> Result<(), NotLoaded> {
    split_tidy(store, long).await?.await;
    Ok(())
}

/// What makes the facts of a demo shop.
///
/// # Errors
/// [`NotLoaded`] when its part could not be fetched.
pub async fn demo_facts_later() -> Result<DemoFacts, NotLoaded> {
    split_demo_facts().await
}
