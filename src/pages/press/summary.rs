//! The summary of a finished run, and what comes next.

use super::heading::Heading;
use crate::components::{GarmentChip, Icon, Page};
use crate::i18n::{self, Term};
use crate::pages::heat::RunTests;
use crate::pages::help::Help;
use crate::pages::ink::RunInkRows;
use crate::pages::shared::{FailureBar, finish_job};
use crate::route::{JobsRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::RunId;
use lastpull_core::job::{Size, job_card};
use lastpull_core::plan::rail;
use lastpull_core::run::{RunSummary, run_summary};
use lastpull_core::screen::{ScreenState, ScreensOffPress, facts_on_start, move_facts, off_press};
use leptos::prelude::*;

/// The summary of a run.
#[component]
pub fn FinishedRun(id: RunId, heading: Heading) -> impl IntoView {
    let store = Store::from_context();
    let state = Memo::new(move |_| store.shop.with(|shop| run_summary(shop, id)));
    let next = Memo::new(move |_| {
        store.shop.with(|shop| {
            rail(shop, store.clock.get_untracked()).runs.into_iter().map(|run| run.id).find(|run| *run != id)
        })
    });
    let again = move |_| {
        let mut facts = vec![(id, Fact::RunStarted)];
        facts.extend(store.shop.with_untracked(|shop| facts_on_start(shop, id, store.operator().as_deref())));
        store.record_all(facts);
    };
    let job = heading.job;
    // A job that is short is finished on its own page, which asks.
    let can_finish = Memo::new(move |_| {
        store.shop.with(|shop| job_card(shop, job).is_some_and(|card| card.complete && card.job.finished.is_none()))
    });
    let title = heading.title.clone();
    let aside = move || view! { <a class="button quiet" href=JobsRoute::Job(job).hash()>{i18n::to_job()}</a> };
    view! {
        <Page title=Signal::derive(move || title.clone()) up=Route::Day aside class="ended">
            <p class="run-under"><GarmentChip garment=heading.garment ink=heading.ink/><span>{heading.print.clone()}</span></p>
            <h2>{i18n::ended_title()}</h2>
            {move || figures(&state.get())}
            <ScreensAfterRun id/>
            <RunInkRows id after=true/>
            <section class="heat-rows"><RunTests id/></section>
            <div class="button-row">
                {move || next.get().map(|next| view! { <a class="button primary with-icon" href=Route::Run(next).hash()><Icon name="next"/>{i18n::ended_next()}</a> })}
                {move || can_finish.get().then(|| view! {
                    <button type="button" class="button with-icon" id="finish-job" on:click=move |_| finish_job(store, job)><Icon name="check"/>{i18n::job_finish()}</button>
                })}
                <button type="button" class="button with-icon" id="again" on:click=again><Icon name="repeat"/>{i18n::ended_again()}</button>
            </div>
        </Page>
    }
}

/// What happens to its screens, with a button for the alternative.
#[component]
fn ScreensAfterRun(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let off = Memo::new(move |_| store.shop.with(|shop| off_press(shop, id)));
    move || {
        off.get().map(|ScreensOffPress { screens, labels, kept }| {
            let (text, other, to) = if kept {
                (i18n::screens_kept(&labels), i18n::screens_let_go(), ScreenState::ToReclaim)
            } else {
                (i18n::screens_gone(&labels), i18n::screens_keep(), ScreenState::Ready)
            };
            let choose = move |_| {
                let by = store.operator();
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
    rows.iter().map(|(size, pieces)| format!("{} × {pieces}", i18n::size(*size))).collect::<Vec<_>>().join(" · ")
}

fn figures(state: &RunSummary) -> AnyView {
    let span = state.span.as_ref().map(|span| i18n::ended_span(i18n::between(span.start, span.end)));
    let failed = !state.failures.is_empty();
    let suspects = (state.suspect > 0).then(|| by_size(&state.suspects));
    let short = (!state.short.is_empty()).then(|| by_size(&state.short));
    let over = (!state.over.is_empty()).then(|| by_size(&state.over));
    let replace = (!state.replace.is_empty()).then(|| by_size(&state.replace));
    let causes = state
        .causes
        .iter()
        .map(|(cause, pieces)| format!("{} × {pieces}", i18n::misprint_cause(*cause)))
        .collect::<Vec<_>>()
        .join(" · ");
    let skipped = (state.skipped > 0).then(|| i18n::checks_skipped(state.skipped));
    view! {
        <dl class="figures">
            <div><dd id="ended-good">{i18n::of_pieces(state.good, state.planned)}</dd><dt>{i18n::ended_good()}</dt></div>
            {failed.then(|| view! { <div><dd id="ended-suspect">{state.suspect}</dd><dt>{i18n::failure_suspect()}</dt></div> })}
            {failed.then(|| view! { <div><dd id="ended-spoiled">{state.spoiled}</dd><dt>{i18n::failure_spoiled()}</dt></div> })}
            <div><dd id="ended-active">{i18n::duration(state.active)}</dd><dt>{i18n::ended_active()}</dt></div>
            <div><dd id="ended-stood">{i18n::duration(state.stopped)}</dd><dt>{i18n::ended_stopped()}</dt></div>
            {state.per_hour.map(|rate| view! { <div><dd id="ended-rate">{i18n::number(rate, 0)}</dd><dt>{i18n::per_hour("")}</dt></div> })}
        </dl>
        {suspects.map(|sizes| view! { <p class="failure-suspects" id="ended-look"><Icon name="alert"/>{i18n::failures_suspect(state.suspect)}" "{sizes}</p> })}
        {failed.then(|| view! {
            <section class="failures">
                <h3>{i18n::failures_title()}</h3>
                {state.failures.iter().map(|notice| view! { <FailureBar notice=notice.clone()/> }).collect_view()}
            </section>
        })}
        {span.map(|span| view! { <p class="quiet-line">{span}</p> })}
        <dl class="lines">
            {short.map(|short| view! { <div class="tight"><dt>{i18n::ended_short()}</dt><dd>{short}</dd></div> })}
            {over.map(|over| view! { <div class="tight"><dt>{i18n::ended_over()}</dt><dd id="over">{over}</dd></div> })}
            {replace.map(|replace| view! { <div><dt>{i18n::ended_replace()}</dt><dd id="replace">{replace}</dd></div> })}
            {(!causes.is_empty()).then(|| view! { <div><dt>{i18n::ended_misprints()}</dt><dd>{causes}</dd></div> })}
        </dl>
        {skipped.map(|skipped| view! { <p class="badge tight"><Icon name="skip"/>{skipped}</p> })}
        <div class="help-row"><p class="caution"><Icon name="heat"/>{i18n::ended_wash()}</p><Help term=Term::WashTest/></div>
    }.into_any()
}
