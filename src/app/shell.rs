//! The frame around every page: banners, notices, navigation, and the page itself.

use super::banner::Banner;
use super::dispatch;
use super::nav::Nav;
use super::notices::Notices;
use super::save_error_banner::SaveErrorBanner;
use crate::i18n;
use crate::pages::welcome::Welcome;
use crate::platform::dom;
use crate::route::{MoreRoute, Route};
use crate::store::{LoadError, Loading, Progress, Store};
use leptos::prelude::*;

#[component]
pub fn Shell(route: RwSignal<Route>) -> impl IntoView {
    let store = Store::from_context();
    let on_backup = move || route.get() == Route::More(MoreRoute::Backup);
    let welcome = Memo::new(move |_| {
        store.shop.with(|shop| shop.fact_count() == 0)
            && match store.loading.get() {
                Loading::Failed(_) => false,
                Loading::DataGone => !on_backup(),
                Loading::Reading | Loading::Ready => {
                    store.settings.with(|settings| !settings.started && !settings.demo)
                }
            }
    });
    let counting = Memo::new(move |_| matches!(route.get(), Route::Run(_) | Route::Press));
    view! {
        <a class="skip" href="#content" on:click=move |event| { event.prevent_default(); dom::focus("heading"); }>{i18n::skip_to_content()}</a>
        <div class="shell" class:bare=move || welcome.get() class:press-shell=counting>
            <div class="top"><Banner/><SaveErrorBanner/></div>
            <main id="content">
                {move || match store.loading.get() {
                    Loading::Reading => view! { <p class="opening" role="status">{i18n::opening()}</p><Folding/> }.into_any(),
                    // The data can be taken out of a shop that does not open.
                    Loading::Failed(_) if on_backup() => dispatch::page(route.get()),
                    Loading::Failed(error) => view! { <Failed error/> }.into_any(),
                    Loading::Ready | Loading::DataGone if welcome.get() => view! { <Welcome/> }.into_any(),
                    Loading::Ready | Loading::DataGone => dispatch::page(route.get()),
                }}
            </main>
            <Notices/>
            {move || (!welcome.get()).then(|| view! { <Nav route/> })}
        </div>
    }
}

/// How far a worker is that folds the whole journal, before the shop opens.
#[component]
fn Folding() -> impl IntoView {
    let store = Store::from_context();
    move || {
        store.progress.get().map(|Progress { share, .. }| {
            let words = i18n::work_folding(i18n::number(share.done as f64, 0), i18n::facts(share.of as u32));
            view! { <p class="opening" id="folding">{words}<progress max=share.of value=share.done></progress></p> }
        })
    }
}

/// Shown if the journal cannot be opened.
#[component]
fn Failed(error: LoadError) -> impl IntoView {
    let store = Store::from_context();
    let text = match error {
        LoadError::Storage(fault) => i18n::storage_fault(&fault),
        LoadError::ChunkNotLoaded => i18n::fault_other(i18n::chunk_failed_text()),
    };
    view! {
        <article class="page failed" role="alert">
            <h1 id="heading" tabindex="-1">{i18n::load_failed_title()}</h1>
            <p>{text}</p>
            <p>{i18n::load_failed_safe()}</p>
            <div class="button-row">
                <button type="button" class="button primary" on:click=move |_| store.open()>{i18n::try_again()}</button>
                <a class="button" href=MoreRoute::Backup.hash()>{i18n::take_data_out()}</a>
            </div>
        </article>
    }
}
