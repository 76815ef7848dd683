//! Trials: a new ink on a fabric, with how it was printed and what came of it.

use super::HeatPlace;
use crate::parts::{Empty, Icon, Page};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{Trial, TrialFit, TrialVerdict, trial_log};
use lastpull_core::journal::Subject;
use leptos::prelude::*;

/// The list.
#[component]
pub fn TrialsScreen() -> impl IntoView {
    let store = Store::from_context();
    let trials = Memo::new(move |_| {
        store.shop.with(|shop| trial_log(shop).into_iter().map(|(id, trial)| (id, trial.clone())).collect::<Vec<_>>())
    });
    let add = || {
        view! { <a class="button primary with-icon" href=HeatPlace::NewTrial.hash()><Icon name="plus"/>{words::trial_add()}</a> }
    };
    view! {
        <Page title=Signal::derive(|| words::trials_title().to_owned()) up=Place::Heat(HeatPlace::Home) class="heat">
            {move || trials.with(|trials: &Vec<(Subject, Trial)>| if trials.is_empty() {
                view! { <Empty icon="edit" title=words::trials_none_title() text=words::trials_none_text()>{add()}</Empty> }.into_any()
            } else {
                view! {
                    {trial_rows(trials.iter().map(|(id, trial)| (*id, trial, None)).collect())}
                    {add()}
                }.into_any()
            })}
        </Page>
    }
}

/// Trials in rows, with how each fits a run where that is asked.
pub fn trial_rows(trials: Vec<(Subject, &Trial, Option<TrialFit>)>) -> AnyView {
    view! { <ul class="menu">{trials.into_iter().map(row).collect::<Vec<_>>()}</ul> }.into_any()
}

fn row((id, trial, fit): (Subject, &Trial, Option<TrialFit>)) -> AnyView {
    let (tone, icon) = match trial.verdict {
        TrialVerdict::Open => ("", "clock"),
        TrialVerdict::Keep => ("good", "check"),
        TrialVerdict::Adjust => ("tight", "repeat"),
        TrialVerdict::Reject => ("bad", "cross"),
    };
    let mut how: Vec<String> = trial.dryer.map(words::temperature).into_iter().collect();
    how.extend(trial.dwell.map(words::seconds));
    how.extend(trial.flash.map(|flash| words::flash_for(words::seconds(flash.seconds))));
    how.extend(trial.mesh.map(words::mesh));
    how.push(words::hits_n(u32::from(trial.hits.max(1))));
    let fit = fit.map(|fit| match fit {
        TrialFit::InkAndFabric => words::trial_same(),
        TrialFit::Ink => words::trial_other_fabric(),
    });
    view! {
        <li>
            <a class="menu-row" href=HeatPlace::Trial(id).hash()>
                <span class="row-words">
                    <strong>{words::test_of(trial.ink.clone(), words::fabric_inside(trial.fabric))}</strong>
                    <span>{how.join(" · ")}</span>
                    {(!trial.outcome.is_empty()).then(|| view! { <span class="muted">{trial.outcome.clone()}</span> })}
                    {fit.map(|fit| view! { <small>{fit}</small> })}
                    <span><span class=format!("badge {tone}")><Icon name=icon/>{words::trial_verdict_of(trial.verdict)}</span></span>
                </span>
                <Icon name="next"/>
            </a>
        </li>
    }.into_any()
}
