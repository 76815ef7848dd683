//! The pace against closing time: in words, and as a line chart with its range.

use crate::components::Sheet;
use crate::i18n;
use crate::store::Store;
use lastpull_core::run::{ChartPoint, CountView, PaceChart, PaceView, pace_chart};
use lastpull_core::time::{Estimate, Millis};
use leptos::prelude::*;

/// The pace in two lines and a chart. A tap on the chart shows how the pace is computed.
#[component]
pub fn Pace(count: Memo<CountView>) -> impl IntoView {
    let store = Store::from_context();
    let chart = Memo::new(move |_| count.with(|count| pace_chart(count, store.clock.get_untracked().now)));
    let in_full = RwSignal::new(false);
    view! {
        <section class="pace">
            {move || count.with(|count| match &count.pace {
                None => view! { <p class="pace-lead">{i18n::pace_none()}</p> }.into_any(),
                Some(pace) => lead(pace, count.closing.is_some()),
            })}
            {move || chart.get().map(|chart| view! {
                <button type="button" class="pace-button" id="pace" on:click=move |_| in_full.set(true)>
                    <Chart chart label=count.with(summary)/>
                    <span class="visually-hidden">{i18n::pace_in_full()}</span>
                </button>
            })}
            {move || in_full.get().then(|| view! {
                <Sheet title=i18n::pace_title() on_close=Callback::new(move |()| in_full.set(false))>
                    {move || chart.get().map(|chart| view! { <Chart chart label=count.with(summary)/> })}
                    {move || count.with(in_words)}
                </Sheet>
            })}
        </section>
    }
}

/// When the run is finished and whether before closing; then the rate.
fn lead(pace: &PaceView, closes: bool) -> AnyView {
    let Estimate { expected, low: early, high: late } = pace.finish;
    let behind = pace.chance.is_some_and(|chance| chance < 0.5);
    view! {
        <p class="pace-lead" id="finish">
            <strong>{i18n::out_at(i18n::time(expected))}</strong>
            <small>{i18n::from_to(i18n::time(early), i18n::time(late))}</small>
            {pace.chance.map(|chance| view! { <span class=format!("badge {}", chance_tone(chance)) id="chance">{i18n::chance(chance)}</span> })}
        </p>
        <p class="pace-line">
            <span>{i18n::per_hour(i18n::number(pace.per_hour, 0))}</span>
            <span>{i18n::pace_left(i18n::duration(Millis::from_seconds(pace.time.expected)))}</span>
            {(closes && behind).then(|| view! { <span class="needed">{needed(pace)}</span> })}
        </p>
    }
    .into_any()
}

/// CSS class of the chance of finishing before closing.
pub fn chance_tone(chance: f64) -> &'static str {
    match chance {
        chance if chance >= 0.9 => "good",
        chance if chance > 0.1 => "tight",
        _ => "bad",
    }
}

fn needed(pace: &PaceView) -> String {
    match pace.needed_per_hour {
        Some(rate) => i18n::pace_needed(i18n::per_hour(i18n::number(rate.ceil(), 0))),
        None => i18n::pace_no_time().to_owned(),
    }
}

/// All details of the pace, one per line.
fn in_words(count: &CountView) -> AnyView {
    let mut lines: Vec<String> = Vec::new();
    if let Some(pace) = &count.pace {
        let Estimate { expected, low: early, high: late } = pace.finish;
        lines.push(i18n::pace_out_by(i18n::time(expected)));
        lines.push(i18n::pace_between(i18n::time(early), i18n::time(late)));
        lines.extend(pace.chance.map(i18n::chance));
        lines.push(i18n::seconds_each(i18n::number(pace.seconds, 0)));
        if count.closing.is_some() {
            lines.push(needed(pace));
        }
        lines.extend(pace.by_closing.map(|good| i18n::pace_by_closing(good, count.planned)));
        lines.push(i18n::pace_basis(i18n::basis(pace.basis)));
    } else {
        lines.push(i18n::pace_none().to_owned());
    }
    if count.over > 0 {
        lines.push(i18n::count_over(count.over));
    }
    if let Some(started) = count.started {
        lines.push(i18n::started_at(i18n::time(started)));
        lines.push(i18n::at_work(i18n::duration(count.active)));
        lines.push(i18n::stood(i18n::duration(count.stopped)));
    }
    view! { <ul class="plain" id="pace-words">{lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}</ul> }.into_any()
}

fn summary(count: &CountView) -> String {
    count.pace.as_ref().map(|pace| i18n::pace_out_by(i18n::time(pace.finish.expected))).unwrap_or_default()
}

/// Size of the chart's view box; the style sheet scales it.
const WIDTH: f64 = 320.0;
const HEIGHT: f64 = 100.0;

fn points(line: &[ChartPoint]) -> String {
    line.iter().map(|(x, y)| format!("{:.1},{:.1}", x * WIDTH, (1.0 - y) * HEIGHT)).collect::<Vec<_>>().join(" ")
}

#[component]
fn Chart(chart: PaceChart, #[prop(into)] label: String) -> impl IntoView {
    let now = chart.now * WIDTH;
    view! {
        <div class="pace-chart">
            <svg viewBox=format!("0 0 {WIDTH} {HEIGHT}") preserveAspectRatio="none" role="img" aria-label=i18n::chart_label(label)>
                <line class="chart-goal" x1="0" x2=WIDTH y1="0.500" y2="0.500"></line>
                <polygon class="chart-fan" points=points(&chart.fan)></polygon>
                <polyline class="chart-expected" points=points(&chart.expected)></polyline>
                <line class="chart-now" x1=now x2=now y1="0" y2=HEIGHT></line>
                <polyline class="chart-line" points=points(&chart.line)></polyline>
                {chart.closing.map(|x| view! { <line class="chart-closing" x1=x * WIDTH x2=x * WIDTH y1="0" y2=HEIGHT></line> })}
            </svg>
            {chart.closing.map(|x| view! { <span class="chart-mark" style:left=format!("{:.1}%", x * 100.0)>{i18n::chart_closing()}</span> })}
            {chart.closing_is_beyond.then(|| view! { <span class="chart-mark beyond">{i18n::chart_closing()}" →"</span> })}
        </div>
    }
}
