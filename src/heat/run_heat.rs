//! What is known of a run's heat, in rows that open: cure on paper, tests, earlier trials.

use super::HeatPlace;
use super::changeover::to_heat;
use super::on_paper::OnPaper;
use super::run_tests::TestsStand;
use super::trials::trial_rows;
use crate::parts::Icon;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{Trial, TrialFit, trials_for};
use lastpull_core::job::RunId;
use lastpull_core::journal::Subject;
use leptos::prelude::*;

/// The rows of a run.
#[component]
pub fn RunHeatRows(id: RunId) -> impl IntoView {
    view! {
        <section class="heat-rows" id="heat-rows" aria-label=words::heat_title()>
            <OnPaper id/>
            <TestsStand id/>
            <EarlierTrials id/>
            <p class="heat-row-links">
                <a class="button quiet" href=HeatPlace::TrialOf(id).hash()>{words::trial_add()}</a>
                {to_heat()}
            </p>
        </section>
    }
}

/// A row that opens.
pub fn row(tone: &'static str, icon: &'static str, id: &'static str, line: String, within: AnyView) -> AnyView {
    view! {
        <details class=format!("heat-row {tone}") id=id>
            <summary><Icon name=icon/><span>{line}</span><Icon name="next"/></summary>
            <div class="heat-row-body">{within}</div>
        </details>
    }
    .into_any()
}

#[component]
fn EarlierTrials(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let trials = Memo::new(move |_| {
        store.shop.with(|shop| {
            trials_for(shop, id).into_iter().map(|(id, trial, fit)| (id, trial.clone(), fit)).collect::<Vec<_>>()
        })
    });
    move || {
        trials.with(|trials: &Vec<(Subject, Trial, TrialFit)>| {
            (!trials.is_empty()).then(|| {
                let line = words::trials_with_ink(trials.len() as u32);
                let rows = trials.iter().map(|(id, trial, fit)| (*id, trial, Some(*fit))).collect();
                row("calm", "info", "run-trials", line, trial_rows(rows))
            })
        })
    }
}
