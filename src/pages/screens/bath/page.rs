//! The page of the reclaim bath: its state, its contents, the waiting screens, its history.

use super::charge::ChargeSheet;
use super::chart::Chart;
use super::contents::{BatchInBath, WaitingScreens};
use super::dialog::Dialog;
use super::history::{Batches, Charges};
use super::put_in::PutIn;
use super::take_out::{NoteOut, TakeOut};
use crate::components::{Icon, Page};
use crate::i18n::{self, Term};
use crate::pages::help::Help;
use crate::route::{ExposureRoute, Route};
use crate::store::Store;
use lastpull_core::screen::{BathTrend, BathView, bath_view, waiting_screens};
use leptos::prelude::*;

/// The bath.
#[component]
pub fn BathPage() -> impl IntoView {
    let store = Store::from_context();
    let bath = store.every_minute(move |shop, clock| bath_view(shop, waiting_screens(shop), clock.now));
    let asking = RwSignal::new(None::<Dialog>);
    let close = Callback::new(move |()| asking.set(None));
    let aside = move || {
        view! {
            <Help term=Term::DipTank/>
            <a class="icon-button" href=ExposureRoute::BathSettings.hash() aria-label=i18n::bath_settings()><Icon name="gear"/></a>
        }
    };
    view! {
        <Page title=Signal::derive(|| i18n::stencil_bath().to_owned()) up=Route::Exposure(ExposureRoute::Home) aside class="stencil-bath">
            {move || bath.with(|bath| state(bath, asking))}
            <BatchInBath bath asking/>
            <WaitingScreens bath asking/>
            <p class="caution"><Icon name="alert"/>{i18n::bath_caution()}</p>
            <p class="caution"><Icon name="alert"/>{i18n::caution_washer()}</p>
            {move || bath.with(|bath| (!bath.note.is_empty()).then(|| view! { <p class="stencil-note">{bath.note.clone()}</p> }))}
            <Chart bath/>
            <div class="stencil-folds">
                <Batches bath/>
                <Charges bath asking/>
            </div>
            {move || bath.with(|bath| bath.charge.is_some() && bath.trend != Some(BathTrend::Recharge)).then(|| charge_button(asking, false))}
        </Page>
        {move || match asking.get() {
            None => ().into_any(),
            Some(Dialog::In) => view! { <PutIn close/> }.into_any(),
            Some(Dialog::Out(batch)) => view! { <TakeOut batch bath close/> }.into_any(),
            Some(Dialog::NoteOut) => view! { <NoteOut close/> }.into_any(),
            Some(Dialog::Charge(charge)) => view! { <ChargeSheet charge bath close/> }.into_any(),
        }}
    }
}

fn charge_button(asking: RwSignal<Option<Dialog>>, first: bool) -> AnyView {
    view! {
        <button type="button" class="button stencil-alone" class:primary=first id="charge" on:click=move |_| asking.set(Some(Dialog::Charge(None)))>{i18n::bath_charge()}</button>
    }.into_any()
}

/// The state of the bath in one line, and how certain it is.
fn state(bath: &BathView, asking: RwSignal<Option<Dialog>>) -> AnyView {
    let Some(trend) = bath.trend else {
        return view! {
            <div class="verdict stencil-verdict" id="bath-state"><Icon name="info"/><p>{i18n::bath_not_charged()}</p></div>
            {charge_button(asking, true)}
        }.into_any();
    };
    let (tone, icon) = match trend {
        BathTrend::TooFew { .. } => ("", "info"),
        BathTrend::Steady => ("good", "check"),
        BathTrend::Slowing(_) => ("tight", "clock"),
        BathTrend::Recharge => ("bad", "alert"),
    };
    let range = i18n::bath_trend_range(trend);
    let certain = match (range, bath.batches_left) {
        (Some(range), Some(batches)) => Some(format!("{range} {}.", i18n::bath_about_batches(batches))),
        (range, _) => range,
    };
    view! {
        <div class=format!("verdict stencil-verdict {tone}") id="bath-state">
            <Icon name=icon/>
            <div>
                <p>{i18n::bath_trend_words(trend)}</p>
                {certain.map(|certain| view! { <p class="stencil-certain">{certain}</p> })}
            </div>
        </div>
        {bath.pace.map(|pace| view! {
            <dl class="stencil-figures">
                <div><dt>{i18n::bath_now()}</dt><dd><strong id="bath-now">{i18n::bath_time(pace.now)}</strong>" "<span>{i18n::bath_min_a_screen()}</span></dd></div>
                <div><dt>{i18n::bath_fresh()}</dt><dd><strong>{i18n::bath_time(pace.fresh)}</strong>" "<span>{i18n::bath_min_a_screen()}</span></dd></div>
            </dl>
            {pace.sizes_differ.then(|| view! { <p class="quiet-line">{i18n::bath_sizes_differ()}</p> })}
        })}
        {(trend == BathTrend::Recharge).then(|| charge_button(asking, true))}
    }.into_any()
}
