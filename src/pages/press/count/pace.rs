//! The pace against due time and closing, in words.

use super::pace_chart::Chart;
use crate::components::Sheet;
use crate::i18n::{self, Term};
use crate::pages::help::LazyHelp;
use crate::pages::shared::{GoalBadge, out_at};
use lastpull_core::run::{Goal, GoalKind, Likelihood, PaceView, RunPace};
use lastpull_core::time::Estimate;
use leptos::prelude::*;

/// The pace in two lines and a chart. A tap on the chart shows how the pace is computed.
#[component]
pub fn Pace(pace: Memo<RunPace>) -> impl IntoView {
    let in_full = RwSignal::new(false);
    let chart = move |is_large| {
        pace.with(|run| {
            let label = run.pace.as_ref().map(out_by).unwrap_or_default();
            run.chart.clone().map(|chart| view! { <Chart chart label is_large/> })
        })
    };
    view! {
        <section class="pace">
            {move || pace.with(|run| match &run.pace {
                None => view! { <p class="pace-lead">{i18n::pace_none()}</p> }.into_any(),
                Some(pace) => lead(pace),
            })}
            {move || chart(false).map(|chart| view! {
                <button type="button" class="pace-button" id="pace" on:click=move |_| in_full.set(true)>
                    {chart}
                    <span class="visually-hidden">{i18n::pace_in_full()}</span>
                </button>
            })}
            {move || in_full.get().then(|| view! {
                <Sheet title=i18n::pace_title() on_close=Callback::new(move |()| in_full.set(false))>
                    {move || chart(true)}
                    <div class="help-row"><span class="quiet-line">{i18n::chart_range()}</span><LazyHelp term=Term::Pace name=i18n::chart_range()/></div>
                    {move || pace.with(in_words)}
                </Sheet>
            })}
        </section>
    }
}

/// When the run is finished and whether in time; then the rate.
fn lead(pace: &PaceView) -> AnyView {
    let Estimate { expected, low: early, high: late } = pace.finish;
    let behind =
        |goal: &Goal| matches!(goal.chance.likelihood, Likelihood::Even | Likelihood::Unlikely | Likelihood::No);
    view! {
        <p class="pace-lead" id="finish">
            <strong>{out_at(i18n::moment(expected), pace.ends_at_press)}</strong>
            <small>{i18n::likely_between(i18n::between(early, late))}</small>
            {pace.goal.map(|goal| view! { <span id="chance"><GoalBadge goal/></span> })}
        </p>
        <p class="pace-line">
            <span>{i18n::per_hour(i18n::number(pace.per_hour, 0))}</span>
            <span>{i18n::pace_left(i18n::duration(pace.time_left))}</span>
            {pace.goal.filter(behind).and_then(needed).map(|needed| view! { <span class="needed">{needed}</span> })}
        </p>
    }
    .into_any()
}

/// When the run is out of the dryer, or printed if the time in the dryer is not known.
fn out_by(pace: &PaceView) -> String {
    let time = i18n::moment(pace.finish.expected);
    if pace.ends_at_press { i18n::pace_printed_by(time) } else { i18n::pace_out_by(time) }
}

/// The pace needed to be in time; `None` if it is too late.
fn needed(goal: Goal) -> Option<String> {
    let rate = i18n::per_hour(i18n::number(goal.needed_per_hour?.ceil(), 0));
    Some(match goal.kind {
        GoalKind::Closing => i18n::pace_needed_closing(rate),
        GoalKind::Due => i18n::pace_needed_due(rate),
    })
}

/// All details of the pace, one per line.
fn in_words(run: &RunPace) -> AnyView {
    let mut lines: Vec<String> = Vec::new();
    if let Some(pace) = &run.pace {
        let Estimate { low: early, high: late, .. } = pace.finish;
        lines.push(out_by(pace));
        lines.push(i18n::pace_between(i18n::moment(early), i18n::moment(late)));
        if let Some(goal) = pace.goal {
            if goal.kind == GoalKind::Due && !goal.is_past {
                lines.push(i18n::pace_due(i18n::moment(goal.at)));
            }
            lines.push(i18n::in_time(&goal));
            lines.extend(needed(goal));
        }
        lines.push(i18n::seconds_each(i18n::number(pace.seconds, 0)));
        lines.extend(pace.by_closing.map(|good| i18n::pace_by_closing(good, run.planned)));
        lines.push(i18n::pace_basis(i18n::basis(pace.basis)));
        if !pace.basis.has_runs_alike() {
            lines.push(i18n::pace_no_history().to_owned());
        }
    } else {
        lines.push(i18n::pace_none().to_owned());
    }
    if run.over > 0 {
        lines.push(i18n::count_over(run.over));
    }
    if let Some(started) = run.started {
        lines.push(i18n::started_at(i18n::moment(started)));
        lines.push(i18n::at_work(i18n::duration(run.active)));
        lines.push(i18n::stood(i18n::duration(run.stopped)));
    }
    view! { <ul class="plain" id="pace-words">{lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}</ul> }.into_any()
}
