//! How long to wait for the dryer, and the timer that measures the shop's own settling time.

use super::end_settling::{Doubted, end_settling};
use crate::components::Icon;
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{
    ActiveSettling, Changeover, HeatFact, HeaterField, HeaterKind, SettledTime, Wait, settling_doubt,
};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// The waiting time, or the running timer. An end that is doubtful is put into `doubted`, which asks.
#[component]
pub fn Settle(id: RunId, change: Memo<Option<Changeover>>, doubted: RwSignal<Option<Doubted>>) -> impl IntoView {
    let store = Store::from_context();
    let going = Memo::new(move |_| change.with(|change| change.as_ref().and_then(Changeover::settling_to_setting)));
    let wait = Memo::new(move |_| change.with(|change| change.as_ref().and_then(|change| change.wait)));
    let dryer = Memo::new(move |_| change.with(|change| change.as_ref().and_then(|change| change.dryer)));
    move || match (going.get(), wait.get()) {
        (Some(going), _) => timer(store, id, going, doubted),
        (None, Some(wait)) => start(store, wait, dryer.get()),
        (None, None) => ().into_any(),
    }
}

fn start(store: Store, wait: Wait, dryer: Option<Subject>) -> AnyView {
    let begin = move |_| {
        let mut facts = Vec::new();
        let dryer = dryer.unwrap_or_else(|| {
            // A shop that has entered no dryer still has one: create it.
            let new = ids::new_id();
            let fields = vec![HeaterField::Kind(HeaterKind::Dryer), HeaterField::Name(i18n::unit_dryer().into())];
            facts.push((new, Fact::Heat(HeatFact::HeaterSet(fields))));
            store.notify(i18n::unit_made());
            new
        });
        let started = HeatFact::SettlingStarted { dryer, from: wait.from, to: wait.to };
        facts.push((ids::new_id(), Fact::Heat(started)));
        store.record_all(facts);
    };
    let allow = if wait.cold { i18n::wait_cold(wait.minutes) } else { i18n::wait_allow(wait.minutes) };
    view! {
        <div class="heat-wait">
            <p id="heat-wait"><Icon name="clock"/><span><strong>{allow}</strong><small>{i18n::wait_basis(wait.basis)}</small></span></p>
            <button type="button" class="button huge primary" id="settle-start" on:click=begin>
                {i18n::settle_start(i18n::temperature(wait.to))}
            </button>
        </div>
    }.into_any()
}

fn timer(store: Store, id: RunId, going: ActiveSettling, doubted: RwSignal<Option<Doubted>>) -> AnyView {
    let now = Memo::new(move |_| going.at(store.clock.get().now));
    let done = move |_| {
        let at = store.clock.get_untracked().now;
        match store.shop.with_untracked(|shop| settling_doubt(shop, going, at)) {
            Some(doubt) => doubted.set(Some((going, doubt))),
            None => end_settling(store, id, going, SettledTime::Counts),
        }
    };
    let drop_it = move |_| {
        store.delete_with_undo(going.id, i18n::settle_dropped());
    };
    view! {
        <div class="heat-wait going">
            <p id="settling">
                <Icon name="clock"/>
                <span>
                    <strong>{i18n::settle_going(i18n::temperature(going.to))}" "{move || i18n::stopwatch(now.get().elapsed.into())}</strong>
                    <small>{move || match now.get().left.milliseconds() {
                        0 => i18n::settle_should().to_owned(),
                        left => i18n::about_left(i18n::duration(Millis::from_ms(left.into()))),
                    }}</small>
                </span>
            </p>
            <div class="button-row">
                <button type="button" class="button huge primary" id="settle-done" on:click=done>
                    <Icon name="check"/>{i18n::settle_done(i18n::temperature(going.to))}
                </button>
                <button type="button" class="button quiet" id="settle-drop" on:click=drop_it>{i18n::settle_drop()}</button>
            </div>
        </div>
    }.into_any()
}
