//! What is known of a run's heat, in rows that expand: computed cure, tests, earlier trials.

use super::cure_on_paper::ComputedCure;
use crate::i18n;
use crate::pages::heat::changeover::to_heat;
use crate::pages::heat::folding_row::folding_row;
use crate::pages::heat::tests::RunTests;
use crate::pages::heat::trials::trial_rows;
use crate::route::HeatRoute;
use crate::store::Store;
use lastpull_core::heat::{Trial, TrialFit, trials_for};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The rows of a run.
#[component]
pub fn RunHeatRows(id: RunId) -> impl IntoView {
    view! {
        <section class="heat-rows" id="heat-rows" aria-label=i18n::heat_title()>
            <ComputedCure id/>
            <RunTests id/>
            <EarlierTrials id/>
            <p class="heat-row-links">
                <a class="button quiet" href=HeatRoute::NewTrialForRun(id).hash()>{i18n::trial_add()}</a>
                {to_heat()}
            </p>
        </section>
    }
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
                let line = i18n::trials_with_ink(trials.len() as u32);
                let rows = trials.iter().map(|(id, trial, fit)| (*id, trial.clone(), Some(*fit))).collect();
                folding_row("calm", "info", "run-trials", line, trial_rows(rows))
            })
        })
    }
}
