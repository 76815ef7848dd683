//! A pot: its composition, what can be done with it, its ledger.

use super::actions::{Asking, Sheets, Steps};
use super::ledger::{LastLine, Ledger};
use super::ledger_text::scale_step;
use super::weigh_in::WeighIn;
use crate::components::{Icon, NotHere, Page, Swatch};
use crate::i18n;
use crate::route::{InkRoute, JobsRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{PotCard, PotRow, PotStage, pot_card, weigh_in_view};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// A pot; the weigh-in while it is being weighed in.
#[component]
pub fn PotPage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let card = Memo::new(move |_| {
        store.shop.with(|shop| pot_card(shop, id).filter(|_| shop.ink.pot(id).is_some_and(|pot| !pot.deleted)))
    });
    let stage = Memo::new(move |_| card.with(|card| card.as_ref().map(|card| card.stage)));
    // Whether the user left or resumed the weigh-in.
    let by_hand = RwSignal::new(None::<bool>);
    let weighing = Memo::new(move |_| by_hand.get().unwrap_or(stage.get() == Some(PotStage::Weighing)));
    Effect::new(move |before: Option<Option<PotStage>>| {
        let now = stage.get();
        if before == Some(Some(PotStage::Weighing)) && now.is_some_and(|now| now != PotStage::Weighing) {
            by_hand.set(None);
            notify_all_in(store, id);
        }
        now
    });
    move || match (stage.get(), weighing.get()) {
        (None, _) => view! { <NotHere/> }.into_any(),
        (_, true) => view! { <WeighIn id leave=Callback::new(move |()| by_hand.set(Some(false)))/> }.into_any(),
        _ => view! { <PotContents id card go_on=Callback::new(move |()| by_hand.set(Some(true)))/> }.into_any(),
    }
}

/// Shows the notice that all components are in, with undo of the last pour.
fn notify_all_in(store: Store, id: Subject) {
    let last = store.shop.with_untracked(|shop| weigh_in_view(shop, id, None)).filter(|view| view.done);
    if let Some(view) = last {
        let undo = view.undo.map(|event| (event, Fact::Deleted)).into_iter().collect();
        store.notify_with_undo(i18n::pot_all_in(i18n::pot_weight(view.holds_grams, view.scale_step)), undo);
    }
}

#[component]
fn PotContents(id: Subject, card: Memo<Option<PotCard>>, go_on: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let asking = RwSignal::new(None::<Asking>);
    let title =
        Signal::derive(move || card.with(|card| card.as_ref().map(|card| card.label.name.clone()).unwrap_or_default()));
    let aside = move || {
        view! {
            <a class="icon-button" href=Route::Pot(PotRoute::Label(id)).hash() aria-label=i18n::pot_label()><Icon name="label"/></a>
            <a class="icon-button" href=Route::Pot(PotRoute::Edit(id)).hash() aria-label=i18n::edit()><Icon name="edit"/></a>
        }
    };
    view! {
        <Page title up=Route::Ink(InkRoute::Home) aside class="pot">
            {move || card.get().map(|card| view! { <Holds card step=scale_step(store)/> })}
            <LastLine id card/>
            <Steps id card asking go_on/>
            <Ledger id card/>
            <Sheets id card asking/>
        </Page>
    }
}

/// The composition, large.
#[component]
fn Holds(card: PotCard, step: Grams) -> impl IntoView {
    let label = &card.label;
    let grams = |grams: Grams| i18n::pot_weight(grams, step);
    let held = view! { <strong id="revision">{i18n::pot_holds(&label.holds)}</strong> };
    let held = match card.recipe {
        Some(recipe) => {
            view! { <a class="pot-recipe" id="to-recipe" href=Route::Ink(InkRoute::Recipe(recipe)).hash()>{held}<Icon name="next"/></a> }.into_any()
        }
        None => held.into_any(),
    };
    let other_name = (label.pot != label.name).then(|| label.pot.clone());
    let job = [label.job.clone(), label.client.clone()].into_iter().filter(|text| !text.is_empty());
    let job = job.collect::<Vec<_>>().join(", ");
    let differs = card.rows.iter().any(|row| row.began.is_some_and(|began| (row.percent - began).abs() >= 0.05));
    view! {
        <section class="pot-holds" id="holds">
            <p class="pot-marks">
                <Swatch colour=label.colour/>
                {held}
                {stage_badge(&card)}
            </p>
            {other_name.map(|name| view! { <p>{name}</p> })}
            {(!job.is_empty()).then(|| view! {
                <p>{match card.run {
                    Some((_, Some(id))) => view! { <a href=JobsRoute::Job(id).hash()>{i18n::pot_for(job)}</a> }.into_any(),
                    _ => view! { <span>{i18n::pot_for(job)}</span> }.into_any(),
                }}</p>
            })}
            <p class="pot-total"><strong id="held">{grams(label.grams)}</strong><span>{i18n::pot_in_it()}</span></p>
            <p class="quiet-line">{i18n::pot_on_scale(grams(card.on_scale))}{card.headroom.map(|room| format!(" · {}", room_words(room, step)))}</p>
            {if card.rows.is_empty() { ().into_any() } else { view! {
                <table class="pot-parts" id="parts">
                    <thead class="visually-hidden"><tr><th scope="col">{i18n::pot_component()}</th><th scope="col">{i18n::pot_percent_head()}</th><th scope="col">{i18n::pot_grams_head()}</th></tr></thead>
                    <tbody>{card.rows.iter().zip(&label.parts).map(|(row, part)| part_row(row, part.colour, step, differs)).collect::<Vec<_>>()}</tbody>
                </table>
            }.into_any()}}
            {differs.then(|| view! { <p class="quiet-line">{i18n::pot_began_hint()}</p> })}
            {card.shortfall.is_positive().then(|| view! { <p class="caution"><Icon name="alert"/>{i18n::pot_short_of(grams(card.shortfall))}</p> })}
            {card.limits.iter().map(|limit| view! { <p class="caution"><Icon name="alert"/>{i18n::pot_limit(limit)}</p> }).collect::<Vec<_>>()}
        </section>
    }
}

fn room_words(room: Grams, step: Grams) -> String {
    if room >= Grams::ZERO {
        i18n::pot_room(i18n::pot_weight(room, step))
    } else {
        i18n::pot_too_full(i18n::pot_weight(Grams::ZERO.saturating_sub(room), step))
    }
}

fn stage_badge(card: &PotCard) -> AnyView {
    let (tone, icon) = match card.stage {
        PotStage::Weighing => ("tight", "ink"),
        PotStage::Mixed => ("calm", "drop"),
        PotStage::Matched => ("good", "check"),
        PotStage::Approved => ("good", "check"),
        PotStage::Empty | PotStage::Closed => ("calm", "box"),
    };
    let line = match &card.label.approval {
        Some(approval) if !approval.client.is_empty() => i18n::pot_stage_approved_by(&approval.client),
        _ => i18n::pot_stage(card.stage).to_owned(),
    };
    view! { <span class=format!("badge {tone}") id="stage" data-stage=format!("{:?}", card.stage)><Icon name=icon/>{line}</span> }.into_any()
}

fn part_row(row: &PotRow, colour: Option<lastpull_core::colour::Colour>, step: Grams, differs: bool) -> AnyView {
    let now = i18n::pot_percent(row.percent);
    let began = row.began.filter(|_| differs).map(i18n::pot_percent).filter(|began| *began != now);
    let began = began.map(|began| view! { <small>{i18n::pot_was(began)}</small> });
    view! {
        <tr>
            <th scope="row"><Swatch colour/>{row.name.clone()}</th>
            <td class="pot-parts-percent">{now}{began}</td>
            <td>{i18n::pot_weight(row.grams, step)}</td>
        </tr>
    }
    .into_any()
}
