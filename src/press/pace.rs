//! The pace against closing: in words, and as a line with its fan.

use crate::store::Store;
use crate::words;
use lastpull_core::run::{ChartPoint, CountView, PaceChart, PaceView, pace_chart};
use lastpull_view::view;
use leptos::prelude::*;

/// The pace. Moves on with each count and every few seconds.
#[component]
pub fn Pace(count: Memo<CountView>) -> impl IntoView {
    let store = Store::from_context();
    let chart = Memo::new(move |_| count.with(|count| pace_chart(count, store.clock.get_untracked().now)));
    view! {
        <section class="pace">
            <div class="pace-words">
                {move || count.with(|count| match &count.pace {
                    None => view! { <p class="pace-lead">{words::pace_none()}</p> }.into_any(),
                    Some(pace) => pace_words(pace, count).into_any(),
                })}
            </div>
            {move || chart.get().map(|chart| view! { <Chart chart label=count.with(summary)/> })}
        </section>
    }
}

fn pace_words(pace: &PaceView, count: &CountView) -> impl IntoView + use<> {
    let [expected, early, late] = pace.finish;
    let tone = match pace.chance {
        Some(chance) if chance >= 0.9 => "good",
        Some(chance) if chance > 0.1 => "tight",
        Some(_) => "bad",
        None => "",
    };
    let needed = match (count.closing.is_some(), pace.needed_per_hour) {
        (true, Some(rate)) => Some(words::pace_needed(words::per_hour(words::number(rate.ceil(), 0)))),
        (true, None) => Some(words::pace_no_time().to_owned()),
        (false, _) => None,
    };
    let short = pace.chance.filter(|chance| *chance < 0.5).and(pace.by_closing).map(|good| words::pace_by_closing(good, count.planned));
    view! {
        <p class="pace-lead" id="finish">
            <strong>{words::pace_out_by(words::time(expected))}</strong>
            {pace.chance.map(|chance| view! { <span class=format!("badge {tone}") id="chance">{words::chance(chance)}</span> })}
        </p>
        <p class="pace-line">
            <span>{words::per_hour(words::number(pace.per_hour, 0))}</span>
            <span>{words::seconds_each(words::number(pace.seconds, 0))}</span>
            <span>{words::pace_left(words::duration((pace.time.expected * 1000.0) as u64))}</span>
        </p>
        <p class="pace-line muted">
            <span>{words::pace_between(words::time(early), words::time(late))}</span>
            {needed.map(|needed| view! { <span>{needed}</span> })}
            {short.map(|short| view! { <span>{short}</span> })}
            <span id="basis">{words::basis(pace.basis)}</span>
        </p>
    }
}

fn summary(count: &CountView) -> String {
    count.pace.as_ref().map(|pace| words::pace_out_by(words::time(pace.finish[0]))).unwrap_or_default()
}

/// The chart is drawn on this grid and stretched by the style sheet.
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
            <svg viewBox=format!("0 0 {WIDTH} {HEIGHT}") preserveAspectRatio="none" role="img" aria-label=words::chart_label(label)>
                <line class="chart-goal" x1="0" x2=WIDTH y1="0.500" y2="0.500"></line>
                <polygon class="chart-fan" points=points(&chart.fan)></polygon>
                <polyline class="chart-expected" points=points(&chart.expected)></polyline>
                <line class="chart-now" x1=now x2=now y1="0" y2=HEIGHT></line>
                <polyline class="chart-line" points=points(&chart.line)></polyline>
                {chart.closing.map(|x| view! { <line class="chart-closing" x1=x * WIDTH x2=x * WIDTH y1="0" y2=HEIGHT></line> })}
            </svg>
            {chart.closing.map(|x| view! { <span class="chart-mark" style:left=format!("{:.1}%", x * 100.0)>{words::chart_closing()}</span> })}
            {chart.closing_is_beyond.then(|| view! { <span class="chart-mark beyond">{words::chart_closing()}" →"</span> })}
        </div>
    }
}
