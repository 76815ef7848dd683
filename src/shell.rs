//! The frame around every screen: places, banners, notices, and which screen is shown.

use crate::day::DayScreen;
use crate::demo::{Banner, Welcome};
use crate::failure::FailureScreen;
use crate::job::{JobFormScreen, JobScreen, JobsScreen, LotFormScreen, RunFormScreen};
use crate::more::{AboutScreen, BackupScreen, MoreScreen, SettingsScreen};
use crate::parts::{Faults, Icon, Notices};
use crate::place::{InkPlace, Place, ScreensPlace};
use crate::platform::dom;
use crate::platform::settings::Language;
use crate::press::{BesideCount, PressScreen, RunScreen};
use crate::store::{Loading, Store};
use crate::words::{self, Manner};
use leptos::prelude::*;

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    let store = Store::new();
    provide_context(store);
    store.start();
    let place = RwSignal::new(Place::of(&dom::hash()));
    let moved = window_event_listener_untyped("hashchange", move |_| {
        place.set(Place::of(&dom::hash()));
        dom::scroll_to_top();
        // Readers announce the new screen, and the keyboard goes on from its top.
        dom::focus("heading");
    });
    on_cleanup(move || moved.remove());
    let manner = Memo::new(move |_| store.settings.with(Manner::of));
    let theme = Memo::new(move |_| store.settings.with(|settings| settings.theme));
    Effect::new(move || {
        dom::set_root("data-theme", theme.get().name());
    });
    Effect::new(move || {
        dom::set_root(
            "lang",
            match manner.get().language {
                Language::English => "en",
                Language::Spanish => "es",
            },
        );
    });
    // Another language or other units: the page is opened anew, so that every word is. What waits to be
    // saved is saved first.
    manner.get_untracked().take();
    Effect::new(move |before: Option<Manner>| {
        let now = manner.get();
        if before.is_some_and(|before| before != now) {
            store.reopen_page();
        }
        now
    });
    view! { <Shell place/> }
}

#[component]
fn Shell(place: RwSignal<Place>) -> impl IntoView {
    let store = Store::from_context();
    let welcome = Memo::new(move |_| {
        store.shop.with(|shop| shop.facts() == 0) && store.settings.with(|settings| !settings.started && !settings.demo)
    });
    let counting = Memo::new(move |_| matches!(place.get(), Place::Run(_) | Place::Press));
    view! {
        <a class="skip" href="#content" on:click=move |event| { event.prevent_default(); dom::focus("heading"); }>{words::skip_to_content()}</a>
        <div class="shell" class:bare=move || welcome.get() class:press-shell=counting>
            <div class="top"><Banner/><Faults/></div>
            <main id="content">
                {move || match store.loading.get() {
                    Loading::Reading => view! { <p class="opening" role="status">{words::opening()}</p> }.into_any(),
                    Loading::Failed(fault) => view! { <Failed fault/> }.into_any(),
                    Loading::Ready if welcome.get() => view! { <Welcome/> }.into_any(),
                    Loading::Ready => screen(place.get()),
                }}
            </main>
            <Notices/>
            {move || (!welcome.get()).then(|| view! { <Places place/> })}
        </div>
    }
}

fn screen(place: Place) -> AnyView {
    match place {
        Place::Day => view! { <DayScreen/> }.into_any(),
        Place::Press => view! { <PressScreen/> }.into_any(),
        Place::Run(id) => view! { <RunScreen id/> }.into_any(),
        Place::Screens(_) | Place::Stencil(_) | Place::Failure(_) | Place::Heat(_) => {
            crate::later::WORKSHOP.draw(place)
        }
        Place::Ink(_) | Place::Pot(_) | Place::Colour(_) => crate::later::BENCH.draw(place),
        other => crate::later::OFFICE.draw(other),
    }
}

/// Screens of the office.
pub fn office(place: Place) -> AnyView {
    match place {
        Place::Jobs => view! { <JobsScreen/> }.into_any(),
        Place::NewJob => view! { <JobFormScreen job=None/> }.into_any(),
        Place::Job(id) => view! { <JobScreen id/> }.into_any(),
        Place::EditJob(id) => view! { <JobFormScreen job=id/> }.into_any(),
        Place::NewLot(job) => view! { <LotFormScreen job=job lot=None/> }.into_any(),
        Place::EditLot(lot) => view! { <LotFormScreen job=None lot=lot/> }.into_any(),
        Place::NewRun(lot) => view! { <RunFormScreen lot=lot run=None/> }.into_any(),
        Place::EditRun(run) => view! { <RunFormScreen lot=None run=run/> }.into_any(),
        Place::More => view! { <MoreScreen/> }.into_any(),
        Place::Settings => view! { <SettingsScreen/> }.into_any(),
        Place::Exchange => view! { <BackupScreen/> }.into_any(),
        Place::About => view! { <AboutScreen/> }.into_any(),
        _ => ().into_any(),
    }
}

/// Screens of the workshop.
pub fn workshop(place: Place) -> AnyView {
    match place {
        Place::Screens(place) => crate::screen::screen(place),
        Place::Stencil(place) => crate::stencil::screen(place),
        Place::Failure(id) => view! { <FailureScreen id/> }.into_any(),
        Place::Heat(place) => crate::heat::screen(place),
        Place::Run(id) => view! { <BesideCount id/> }.into_any(),
        _ => ().into_any(),
    }
}

/// Screens of the ink bench.
pub fn bench(place: Place) -> AnyView {
    match place {
        Place::Ink(place) => crate::ink::screen(place),
        Place::Pot(place) => crate::pot::screen(place),
        Place::Colour(place) => crate::colour::screen(place),
        _ => ().into_any(),
    }
}

/// The bar of places.
#[component]
fn Places(place: RwSignal<Place>) -> impl IntoView {
    let link = move |to: Place, icon: &'static str, words: &'static str, here: fn(Place) -> bool| {
        view! {
            <a href=to.hash() class="place" aria-current=move || here(place.get()).then_some("page")>
                <Icon name=icon/><span>{words}</span>
            </a>
        }
    };
    view! {
        <nav class="places" aria-label=words::places()>
            {link(Place::Day, "day", words::place_day(), |place| matches!(place, Place::Day | Place::Jobs | Place::NewJob | Place::Job(_) | Place::EditJob(_) | Place::NewLot(_) | Place::EditLot(_) | Place::NewRun(_) | Place::EditRun(_)))}
            {link(Place::Press, "press", words::place_press(), |place| matches!(place, Place::Press | Place::Run(_) | Place::Failure(_)))}
            {link(Place::Ink(InkPlace::Home), "ink", words::place_ink(), |place| matches!(place, Place::Ink(_) | Place::Pot(_) | Place::Colour(_)))}
            {link(Place::Screens(ScreensPlace::Home), "screens", words::place_screens(), |place| matches!(place, Place::Screens(_) | Place::Stencil(_)))}
            {link(Place::More, "more", words::place_more(), |place| matches!(place, Place::More | Place::Settings | Place::Exchange | Place::About | Place::Heat(_)))}
        </nav>
    }
}

/// The journal does not open.
#[component]
fn Failed(fault: lastpull_core::journal::StorageFault) -> impl IntoView {
    let store = Store::from_context();
    view! {
        <article class="page failed" role="alert">
            <h1 id="heading" tabindex="-1">{words::load_failed_title()}</h1>
            <p>{words::storage_fault(&fault)}</p>
            <p>{words::load_failed_safe()}</p>
            <div class="button-row">
                <button type="button" class="button primary" on:click=move |_| store.open()>{words::try_again()}</button>
                <button type="button" class="button" on:click=move |_| store.rescue()>{words::take_data_out()}</button>
            </div>
        </article>
    }
}
