//! Judging suspect pieces as good or spoiled: one by one by size, or all at once.

use super::record::record;
use crate::components::Icon;
use crate::i18n::{self, Term};
use crate::pages::help::Help;
use crate::store::Store;
use lastpull_core::failure::{FailureCard, JudgeRow, Verdict, judge_all_facts, judge_facts, undo_verdict_facts};
use lastpull_core::ids::Subject;
use lastpull_core::job::Size;
use leptos::prelude::*;

/// The suspect pieces by size. Renders nothing if there are none and were none.
#[component]
pub fn Judge(id: Subject, card: Memo<Option<FailureCard>>) -> impl IntoView {
    let store = Store::from_context();
    let rows = Memo::new(move |_| card.with(|card| card.as_ref().map(|card| card.sizes.clone()).unwrap_or_default()));
    let sizes = Memo::new(move |_| rows.with(|rows| rows.iter().map(|row| row.size).collect::<Vec<_>>()));
    let open = Memo::new(move |_| rows.with(|rows| rows.iter().map(|row| row.suspect).sum::<u32>()));
    let all = move |verdict: Verdict| {
        let by = store.operator();
        let pieces = open.get_untracked();
        let facts = store.shop.with_untracked(|shop| judge_all_facts(shop, id, verdict, by.as_deref()));
        let back = undo_verdict_facts(&facts);
        store.record_with_undo(facts, back, verdict_notice(verdict, pieces));
    };
    move || {
        if sizes.with(Vec::is_empty) {
            return ().into_any();
        }
        view! {
            <section class="failure-judge" id="judge">
                <div class="help-row"><h2>{i18n::failure_judge_title()}</h2><Help term=Term::SuspectPieces/></div>
                <p class="quiet-line">{i18n::failure_judge_hint()}</p>
                <For each=move || sizes.get() key=|size| *size let:size>
                    <JudgeSize id size rows/>
                </For>
                {move || if open.get() == 0 {
                    view! { <p class="failure-ready" role="status"><Icon name="check"/>{i18n::failure_judged()}</p> }.into_any()
                } else {
                    view! {
                        <div class="failure-all">
                            <button type="button" class="button" id="all-good" on:click=move |_| all(Verdict::Good)><Icon name="check"/>{i18n::failure_all_good()}</button>
                            <button type="button" class="button" id="all-spoiled" on:click=move |_| all(Verdict::Spoiled)><Icon name="cross"/>{i18n::failure_all_spoiled()}</button>
                        </div>
                    }.into_any()
                }}
            </section>
        }.into_any()
    }
}

fn verdict_notice(verdict: Verdict, pieces: u32) -> String {
    match verdict {
        Verdict::Good => i18n::failure_judged_good(pieces),
        Verdict::Spoiled => i18n::failure_judged_spoiled(pieces),
    }
}

/// One size: how many are good, how many spoiled.
#[component]
fn JudgeSize(id: Subject, size: Option<Size>, rows: Memo<Vec<JudgeRow>>) -> impl IntoView {
    let row = Memo::new(move |_| rows.with(|rows| rows.iter().find(|row| row.size == size).copied()));
    let open = Memo::new(move |_| row.get().map_or(0, |row| row.suspect));
    let good = Memo::new(move |_| row.get().map_or(0, |row| row.good));
    let spoiled = Memo::new(move |_| row.get().map_or(0, |row| row.spoiled));
    view! {
        <div class="failure-size" data-size=format!("{size:?}")>
            <h3>
                <span>{i18n::size(size)}</span>
                <small>{move || i18n::failure_size_open(open.get())}</small>
            </h3>
            <JudgeStep id size verdict=Verdict::Good open count=good/>
            <JudgeStep id size verdict=Verdict::Spoiled open count=spoiled/>
        </div>
    }
}

/// Buttons for one more and one less.
#[component]
fn JudgeStep(id: Subject, size: Option<Size>, verdict: Verdict, open: Memo<u32>, count: Memo<u32>) -> impl IntoView {
    let store = Store::from_context();
    let judge = move |pieces: i32| {
        let by = store.operator();
        record(store, store.shop.with_untracked(|shop| judge_facts(shop, id, size, pieces, verdict, by.as_deref())));
    };
    let named = i18n::size(size);
    let (name, more, less) = match verdict {
        Verdict::Good => (i18n::failure_good(), i18n::failure_one_good(&named), i18n::failure_one_less_good(&named)),
        Verdict::Spoiled => {
            (i18n::failure_spoiled(), i18n::failure_one_spoiled(&named), i18n::failure_one_less_spoiled(&named))
        }
    };
    view! {
        <div class="failure-judge-step" data-verdict=format!("{verdict:?}")>
            <span>{name}</span>
            <button type="button" class="button failure-plus" aria-label=less disabled=move || count.get() == 0 on:click=move |_| judge(-1)><Icon name="minus"/></button>
            <output>{count}</output>
            <button type="button" class="button failure-plus" aria-label=more disabled=move || open.get() == 0 on:click=move |_| judge(1)><Icon name="plus"/></button>
        </div>
    }
}
