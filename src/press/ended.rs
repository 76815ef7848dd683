//! A run off the press: what came of it, and what comes next.

use super::run::Heading;
use crate::failure::FailureBar;
use crate::heat::TestsStand;
use crate::ink::RunInkRows;
use crate::parts::{GarmentChip, Icon, Page};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::job::{RunId, Size};
use lastpull_core::journal::Fact;
use lastpull_core::plan::rail;
use lastpull_core::run::{EndedView, ended_view};
use lastpull_core::screen::{OffPress, ScreenState, facts_on_start, move_facts, off_press};
use leptos::prelude::*;

/// The summary of a run.
#[component]
pub fn Ended(id: RunId, heading: Heading) -> impl IntoView {
    let store = Store::from_context();
    let state = Memo::new(move |_| store.shop.with(|shop| ended_view(shop, id)));
    let next = Memo::new(move |_| {
        store.shop.with(|shop| {
            rail(shop, store.clock.get_untracked()).runs.into_iter().map(|run| run.id).find(|run| *run != id)
        })
    });
    let again = move |_| {
        let mut facts = vec![(id, Fact::RunStarted)];
        facts.extend(store.shop.with_untracked(|shop| facts_on_start(shop, id, store.crew().as_deref())));
        store.record_all(facts);
    };
    let job = heading.job;
    let title = heading.title.clone();
    let aside = move || view! { <a class="button quiet" href=Place::Job(job).hash()>{words::to_job()}</a> };
    view! {
        <Page title=Signal::derive(move || title.clone()) up=Place::Day aside class="ended">
            <p class="run-under"><GarmentChip garment=heading.garment ink=heading.ink/><span>{heading.print.clone()}</span></p>
            <h2>{words::ended_title()}</h2>
            {move || figures(&state.get())}
            <OffScreens id/>
            <RunInkRows id after=true/>
            <section class="heat-rows"><TestsStand id/></section>
            <div class="button-row">
                {move || next.get().map(|next| view! { <a class="button primary with-icon" href=Place::Run(next).hash()><Icon name="next"/>{words::ended_next()}</a> })}
                <a class="button with-icon" href=Place::Job(job).hash()><Icon name="check"/>{words::ended_finish_job()}</a>
                <button type="button" class="button with-icon" id="again" on:click=again><Icon name="repeat"/>{words::ended_again()}</button>
            </div>
        </Page>
    }
}

/// Where its screens went, and the other way in one touch.
#[component]
fn OffScreens(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let off = Memo::new(move |_| store.shop.with(|shop| off_press(shop, id)));
    move || {
        off.get().map(|OffPress { screens, labels, kept }| {
            let (text, other, to) = if kept {
                (words::screens_kept(&labels), words::screens_let_go(), ScreenState::ToReclaim)
            } else {
                (words::screens_gone(&labels), words::screens_keep(), ScreenState::Ready)
            };
            let choose = move |_| {
                let by = store.crew();
                store.record_all(store.shop.with_untracked(|shop| move_facts(shop, &screens, to, by.as_deref())));
            };
            view! {
                <p class="ended-screens" id="ended-screens">
                    <Icon name="screens"/>
                    <span>{text}</span>
                    <button type="button" class="button quiet" on:click=choose>{other}</button>
                </p>
            }
        })
    }
}

fn by_size(rows: &[(Option<Size>, u32)]) -> String {
    rows.iter().map(|(size, pieces)| format!("{} × {pieces}", words::size(*size))).collect::<Vec<_>>().join(" · ")
}

fn figures(state: &EndedView) -> AnyView {
    let span = state.span.map(|(from, to)| words::ended_from_to(words::moment(from), words::time(to)));
    let failed = !state.failures.is_empty();
    let suspects = (state.suspect > 0).then(|| by_size(&state.suspects));
    let short = (!state.short.is_empty()).then(|| by_size(&state.short));
    let replace = (!state.replace.is_empty()).then(|| by_size(&state.replace));
    let causes = state
        .causes
        .iter()
        .map(|(cause, pieces)| format!("{} × {pieces}", words::misprint_cause(*cause)))
        .collect::<Vec<_>>()
        .join(" · ");
    let skipped = (state.skipped > 0).then(|| words::checks_skipped(state.skipped));
    view! {
        <dl class="figures">
            <div><dd id="ended-good">{words::of_pieces(state.good, state.planned)}</dd><dt>{words::ended_good()}</dt></div>
            {failed.then(|| view! { <div><dd id="ended-suspect">{state.suspect}</dd><dt>{words::failure_suspect()}</dt></div> })}
            {failed.then(|| view! { <div><dd id="ended-spoiled">{state.spoiled}</dd><dt>{words::failure_spoiled()}</dt></div> })}
            <div><dd id="ended-active">{words::duration(state.active)}</dd><dt>{words::ended_active()}</dt></div>
            <div><dd id="ended-stood">{words::duration(state.stopped)}</dd><dt>{words::ended_stopped()}</dt></div>
            {state.per_hour.map(|rate| view! { <div><dd id="ended-rate">{words::number(rate, 0)}</dd><dt>{words::per_hour("")}</dt></div> })}
        </dl>
        {suspects.map(|sizes| view! { <p class="failure-suspects" id="ended-look"><Icon name="alert"/>{words::failures_suspect(state.suspect)}" "{sizes}</p> })}
        {failed.then(|| view! {
            <section class="failures">
                <h3>{words::failures_title()}</h3>
                {state.failures.iter().map(|notice| view! { <FailureBar notice=notice.clone()/> }).collect_view()}
            </section>
        })}
        {span.map(|span| view! { <p class="quiet-line">{span}</p> })}
        <dl class="lines">
            {short.map(|short| view! { <div class="tight"><dt>{words::ended_short()}</dt><dd>{short}</dd></div> })}
            {replace.map(|replace| view! { <div><dt>{words::ended_replace()}</dt><dd id="replace">{replace}</dd></div> })}
            {(!causes.is_empty()).then(|| view! { <div><dt>{words::ended_misprints()}</dt><dd>{causes}</dd></div> })}
        </dl>
        {skipped.map(|skipped| view! { <p class="badge tight"><Icon name="skip"/>{skipped}</p> })}
        <p class="caution"><Icon name="heat"/>{words::ended_wash()}</p>
    }.into_any()
}
