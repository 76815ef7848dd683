//! Trials: a new ink on a fabric, how it was printed and with what result.

use crate::components::{Empty, Icon, Page, long_rows};
use crate::i18n;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::heat::{Trial, TrialFit, TrialVerdict, trial_log};
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The list.
#[component]
pub fn TrialsPage() -> impl IntoView {
    let store = Store::from_context();
    let trials = Memo::new(move |_| {
        store.shop.with(|shop| trial_log(shop).into_iter().map(|(id, trial)| (id, trial.clone())).collect::<Vec<_>>())
    });
    let add = || {
        view! { <a class="button primary with-icon" href=HeatRoute::NewTrial.hash()><Icon name="plus"/>{i18n::trial_add()}</a> }
    };
    view! {
        <Page title=Signal::derive(|| i18n::trials_title().to_owned()) up=Route::Heat(HeatRoute::Home) class="heat">
            {move || trials.with(|trials: &Vec<(Subject, Trial)>| if trials.is_empty() {
                view! { <Empty icon="edit" title=i18n::trials_none_title() text=i18n::trials_none_text()>{add()}</Empty> }.into_any()
            } else {
                view! {
                    {trial_rows(trials.iter().map(|(id, trial)| (*id, trial.clone(), None)).collect())}
                    {add()}
                }.into_any()
            })}
        </Page>
    }
}

/// Rows of trials; with a [`TrialFit`], how well each matches a run.
pub fn trial_rows(trials: Vec<(Subject, Trial, Option<TrialFit>)>) -> AnyView {
    long_rows("trials", "menu", trials, row)
}

fn row((id, trial, fit): &(Subject, Trial, Option<TrialFit>)) -> AnyView {
    let (tone, icon) = match trial.verdict {
        TrialVerdict::Open => ("", "clock"),
        TrialVerdict::Keep => ("good", "check"),
        TrialVerdict::Adjust => ("tight", "repeat"),
        TrialVerdict::Reject => ("bad", "cross"),
    };
    let mut how: Vec<String> = trial.dryer.map(i18n::temperature).into_iter().collect();
    how.extend(trial.dwell.map(i18n::seconds));
    how.extend(trial.flash.map(|flash| i18n::flash_for(i18n::seconds(flash.seconds))));
    how.extend(trial.mesh.map(i18n::mesh));
    how.push(i18n::hits_n(u32::from(trial.hits.max(1))));
    let fit = fit.map(|fit| match fit {
        TrialFit::InkAndFabric => i18n::trial_same(),
        TrialFit::Ink => i18n::trial_other_fabric(),
    });
    view! {
            <a class="menu-row" href=HeatRoute::Trial(*id).hash()>
                <span class="row-words">
                    <strong>{i18n::test_of(trial.ink.clone(), i18n::fabric_inside(trial.fabric))}</strong>
                    <span>{how.join(" · ")}</span>
                    {(!trial.outcome.is_empty()).then(|| view! { <span class="muted">{trial.outcome.clone()}</span> })}
                    {fit.map(|fit| view! { <small>{fit}</small> })}
                    <span><span class=format!("badge {tone}")><Icon name=icon/>{i18n::trial_verdict_of(trial.verdict)}</span></span>
                </span>
                <Icon name="next"/>
            </a>
    }.into_any()
}
