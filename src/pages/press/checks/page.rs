//! The checks before the first pull: heat first, then what else differs from the previous run.

use super::check_row::CheckLine;
use crate::components::{GarmentChip, Icon, Page, Sheet};
use crate::forms::CrewPicker;
use crate::i18n;
use crate::pages::heat::{ChangeFirst, HoldSheet, RunHeatRows};
use crate::pages::ink::RunInkRows;
use crate::pages::press::heading::Heading;
use crate::route::{JobsRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{Changeover, changeover, checks_skipped_at_start};
use lastpull_core::ids::{RunId, Subject};
use lastpull_core::run::{CheckItem, CheckList, CheckOutcome, CheckRow, CheckState, check_list};
use lastpull_core::screen::facts_on_start;
use leptos::prelude::*;

/// The checks of a run, and the button that starts its count.
#[component]
pub fn Checks(id: RunId, heading: Heading) -> impl IntoView {
    let store = Store::from_context();
    let list = Memo::new(move |_| store.shop.with(|shop| check_list(shop, id)));
    let change = store.every_minute(move |shop, clock| changeover(shop, id, clock.now));
    let hold = Memo::new(move |_| change.with(|change| change.as_ref().is_some_and(Changeover::hold_ink)));
    let asking = RwSignal::new(false);
    let open = Memo::new(move |_| list.with(CheckList::open) as u32);
    let start = move |()| {
        asking.set(false);
        let facts =
            list.with_untracked(|list| change.with_untracked(|change| start_facts(id, list, change.as_ref(), store)));
        store.record_all(facts);
    };
    let close = Callback::new(move |()| asking.set(false));
    let title = heading.title.clone();
    let job = heading.job;
    let aside = move || view! { <a class="button quiet" href=JobsRoute::Job(job).hash()>{i18n::to_job()}</a> };
    let missing = move || {
        if hold.get() {
            return view! { <p class="hold-line" id="hold"><Icon name="alert"/>{i18n::hold_ink()}</p> }.into_any();
        }
        view! { <p class="quiet-line">{(open.get() > 0).then(|| i18n::checks_open(open.get()))}</p> }.into_any()
    };
    view! {
        <Page title=Signal::derive(move || title.clone()) up=Route::Day aside class="checks">
            <p class="run-under"><GarmentChip garment=heading.garment ink=heading.ink/><span>{heading.print.clone()}</span></p>
            <ChangeFirst id change/>
            <RunHeatRows id/>
            <RunInkRows id after=false/>
            <CrewPicker label=i18n::checked_by() name="crew"/>
            <CheckRows id list/>
            <p class="caution"><Icon name="heat"/>{i18n::checks_caution()}</p>
            <p class="caution"><Icon name="alert"/>{i18n::caution_around_heat()}</p>
            {move || list.with(|list| list.previous.is_none()).then(|| view! { <p class="quiet-line" id="first-run">{i18n::first_run_hint()}</p> })}
            <div class="start-bar" class:held=hold>
                {missing}
                <button
                    type="button"
                    class="button huge"
                    class:primary=move || !hold.get()
                    id="start"
                    on:click=move |_| { if hold.get_untracked() || open.get_untracked() > 0 { asking.set(true) } else { start(()) } }
                >
                    <Icon name="go"/>{i18n::start_count()}
                </button>
            </div>
            {move || asking.get().then(|| if hold.get() {
                view! { <HoldSheet change open start=Callback::new(start) on_close=close/> }.into_any()
            } else {
                view! {
                    <Sheet title=i18n::start_open_title() on_close=close>
                        <p>{i18n::start_open_text(open.get())}</p>
                        <div class="button-row">
                            <button type="button" class="button primary" id="start-anyway" on:click=move |_| start(())>{i18n::start_anyway()}</button>
                            <button type="button" class="button" on:click=move |_| asking.set(false)>{i18n::cancel()}</button>
                        </div>
                    </Sheet>
                }.into_any()
            })}
        </Page>
    }
}

/// The results of the checks, shown again during the run.
#[component]
pub fn ChecksDone(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let list = Memo::new(move |_| store.shop.with(|shop| check_list(shop, id)));
    view! {
        <CheckRows id list/>
        <RunHeatRows id/>
    }
}

/// The rows, changed values first.
#[component]
fn CheckRows(id: RunId, list: Memo<CheckList>) -> impl IntoView {
    let store = Store::from_context();
    let items = move |changes: bool| {
        list.with(|list| {
            let rows = if changes { &list.changes } else { &list.unchanged };
            rows.iter().map(|row| row.item).collect::<Vec<CheckItem>>()
        })
    };
    let changes = Memo::new(move |_| items(true));
    let same = Memo::new(move |_| items(false));
    let previous = Memo::new(move |_| {
        list.with(|list| list.previous)
            .and_then(|run| store.shop.with(|shop| shop.job_of(run).map(|(_, job)| job.title.clone())))
    });
    let is_open = |row: &&CheckRow| row.state == CheckState::Open && row.held.is_none();
    let open_same = Memo::new(move |_| list.with(|list| list.unchanged.iter().filter(is_open).count()));
    // Unchanged values can be confirmed all at once; each changed one needs its own answer.
    let all_right = move |_| {
        let by = store.operator();
        store.record_all(list.with_untracked(|list| {
            let ticked = |row: &CheckRow| made(id, row, CheckOutcome::Ticked, by.clone());
            list.unchanged.iter().filter(is_open).map(ticked).collect()
        }));
    };
    let same_title =
        move || if previous.with(Option::is_some) { i18n::checks_same_title() } else { i18n::checks_all_title() };
    view! {
        {move || (!changes.with(Vec::is_empty)).then(|| view! {
            <section class="check-group changes" id="changes">
                <h2>{i18n::checks_change_title()}</h2>
                {previous.get().map(|title| view! { <p class="quiet-line">{i18n::checks_change_after(title)}</p> })}
                <ol>
                    <For each=move || changes.get() key=|item| *item let:item><CheckLine id item list/></For>
                </ol>
            </section>
        })}
        <section class="check-group">
            <h2>{same_title}</h2>
            {move || (open_same.get() > 1).then(|| view! {
                <button type="button" class="button with-icon all-right" id="all-right" on:click=all_right><Icon name="check"/>{i18n::checks_all_right()}</button>
            })}
            <ol>
                <For each=move || same.get() key=|item| *item let:item><CheckLine id item list/></For>
            </ol>
        </section>
    }
}

fn made(id: RunId, row: &CheckRow, outcome: CheckOutcome, by: Option<String>) -> (Subject, Fact) {
    (id, Fact::CheckMade { item: row.item, expected: row.expected.clone(), outcome, by })
}

/// The facts of starting a run: open checks are recorded as skipped, and so is heat that was not ready.
fn start_facts(id: RunId, list: &CheckList, change: Option<&Changeover>, store: Store) -> Vec<(Subject, Fact)> {
    let by = store.operator();
    let skipped =
        |(item, expected)| (id, Fact::CheckMade { item, expected, outcome: CheckOutcome::Skipped, by: by.clone() });
    let mut facts: Vec<(Subject, Fact)> = checks_skipped_at_start(list, change).into_iter().map(skipped).collect();
    facts.push((id, Fact::RunStarted));
    facts.extend(store.shop.with_untracked(|shop| facts_on_start(shop, id, by.as_deref())));
    facts
}
