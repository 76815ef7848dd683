//! One failure, in the order of a real emergency: kind, photos, position, number of pieces, remedy;
//! then the press continues, and the pieces are judged.

use super::affected_range::AffectedRange;
use super::footer::Footer;
use super::judge::Judge;
use super::kind::Kind;
use super::mark::MarkPlace;
use super::outlook::Outlook;
use super::record::record;
use super::remedy::Remedies;
use super::step::{Next, Step, StepRow};
use super::summary_bar::SummaryBar;
use crate::components::{Icon, NotHere, Page};
use crate::i18n;
use crate::route::Route;
use crate::store::Store;
use lastpull_core::failure::{FailureCard, failure_card, resume_facts};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use leptos::prelude::*;
use uuid::Uuid;

/// The page of one failure.
#[component]
pub fn FailurePage(id: Uuid) -> impl IntoView {
    let store = Store::from_context();
    let card = Memo::new(move |_| store.shop.with(|shop| failure_card(shop, id, store.clock.get())));
    let here = Memo::new(move |_| card.with(Option::is_some));
    move || {
        if !here.get() {
            return view! { <NotHere/> }.into_any();
        }
        let title = Signal::derive(move || {
            card.with(|card| {
                card.as_ref()
                    .map_or_else(String::new, |card| i18n::failure_name(card.failure.kind, card.row.screen.as_ref()))
            })
        });
        let run = card.with_untracked(|card| card.as_ref().and_then(|card| card.failure.run));
        let stopped = Memo::new(move |_| card.with(|card| card.as_ref().is_some_and(|card| card.is_stopped)));
        let job = Memo::new(move |_| {
            card.with(|card| card.as_ref().and_then(|card| card.job.clone()).map(|(_, title)| title))
        });
        view! {
            <Page title up=run.map_or(Route::Day, Route::Run) class="failure">
                <p class="muted failure-job">{job}</p>
                <SummaryBar card/>
                {move || stopped.get().then(|| view! { <p class="caution"><Icon name="heat"/>{i18n::caution_stopped()}</p> })}
                <Outlook card/>
                <Steps id card/>
                <RestartPress id run card/>
                <Judge id card/>
                <Footer id run card/>
            </Page>
        }
        .into_any()
    }
}

/// The five steps.
#[component]
fn Steps(id: Subject, card: Memo<Option<FailureCard>>) -> impl IntoView {
    let current = RwSignal::new(card.with_untracked(|card| card.as_ref().and_then(Step::first)));
    let answer = move |words: fn(&FailureCard) -> Option<String>| {
        Signal::derive(move || card.with(|card| card.as_ref().and_then(words)))
    };
    let next =
        move |step: Step| Callback::new(move |()| card.with_untracked(|card| step.leave(card.as_ref(), current)));
    view! {
        <ol class="failure-steps">
            <StepRow
                step=Step::Kind
                title=i18n::failure_step_kind()
                answer=answer(|card| card.failure.kind.map(|kind| i18n::failure_name(Some(kind), card.row.screen.as_ref())))
                current
                body=move || view! { <Kind id card current/> }
            />
            <StepRow
                step=Step::Photos
                title=i18n::photos_title()
                answer=answer(|card| (card.photos > 0).then(|| i18n::photos_n(card.photos)))
                current
                body=move || view! { <crate::pages::photos::Photos subject=id/> <Next on_next=next(Step::Photos)/> }
            />
            <StepRow
                step=Step::Mark
                title=i18n::failure_step_mark()
                answer=answer(|card| card.failure.mark.map(|mark| super::mark::in_words(Some(mark)).to_owned()))
                current
                body=move || view! { <MarkPlace id card/> <Next on_next=next(Step::Mark)/> }
            />
            <StepRow
                step=Step::Since
                title=i18n::failure_step_since()
                answer=answer(super::affected_range::in_words)
                current
                body=move || view! { <AffectedRange id card/> <Next on_next=next(Step::Since)/> }
            />
            <StepRow
                step=Step::Remedy
                title=i18n::failure_step_remedy()
                answer=answer(super::remedy::in_words)
                current
                body=move || view! { <Remedies id card current/> }
            />
        </ol>
    }
}

/// The button that restarts the press, always within reach of the thumb.
#[component]
fn RestartPress(id: Subject, run: Option<RunId>, card: Memo<Option<FailureCard>>) -> impl IntoView {
    let store = Store::from_context();
    // Whether the press is stopped, whether restarting is the next thing to do, and whether there is a count.
    let state = Memo::new(move |_| {
        card.with(|card| {
            card.as_ref().map_or((false, false, false), |card| {
                let waits = card.replacement.as_ref().is_some_and(|screen| screen.ready.is_some());
                (card.is_stopped, card.failure.remedy.is_some() && !waits, card.on_press)
            })
        })
    });
    let go_on = move |_| {
        let by = store.operator();
        record(store, store.shop.with_untracked(|shop| resume_facts(shop, id, by.as_deref())));
        run.map_or(Route::Day, Route::Run).replace();
    };
    view! {
        <div class="start-bar" id="failure-foot" tabindex="-1">
            {move || match state.get() {
                (true, now, _) => view! {
                    <button type="button" class="button huge" class:primary=now id="go-on" on:click=go_on><Icon name="go"/>{i18n::failure_go_on()}</button>
                }.into_any(),
                (false, _, true) => view! {
                    <a class="button huge" href=run.map_or(Route::Day, Route::Run).hash()><Icon name="next"/>{i18n::failure_to_count()}</a>
                }.into_any(),
                _ => ().into_any(),
            }}
        </div>
    }
}
