//! Pieces over time as a chart: the line of those pulled, the range of those to come, and what they must meet.

use crate::i18n;
use lastpull_core::run::{ChartPoint, PaceChart};
use leptos::prelude::*;

/// Size of the chart's view box; the style sheet scales it.
const WIDTH: f64 = 320.0;
const HEIGHT: f64 = 100.0;

/// The chart. The large one has numbers of pieces beside it and says what its lines are.
#[component]
pub fn Chart(chart: PaceChart, #[prop(into)] label: String, is_large: bool) -> impl IntoView {
    let (ordered, target) = chart.target;
    let y = (1.0 - target) * HEIGHT;
    view! {
        <div class="pace-chart" class:large=is_large>
            <div class="chart-plot">
                <svg viewBox=format!("0 0 {WIDTH} {HEIGHT}") preserveAspectRatio="none" role="img" aria-label=i18n::chart_label(label)>
                    {chart.times.iter().map(|(_, x)| upright("chart-grid", *x)).collect_view()}
                    <polygon class="chart-fan" points=points(&chart.fan)></polygon>
                    <line class="chart-goal" x1="0" x2=WIDTH y1=y y2=y></line>
                    {upright("chart-now", chart.now)}
                    <polyline class="chart-expected" points=points(&chart.expected)></polyline>
                    <polyline class="chart-line" points=points(&chart.line)></polyline>
                    {chart.due.map(|x| upright("chart-due", x))}
                    {chart.closing.map(|x| upright("chart-closing", x))}
                </svg>
                <div class="chart-pieces" aria-hidden="true">
                    <span class="chart-target" style:bottom=percent(target)>{i18n::chart_ordered(ordered)}</span>
                    {is_large.then(|| chart.pieces.iter().map(|(pieces, y)| view! {
                        <span style:bottom=percent(*y)>{i18n::number(f64::from(*pieces), 0)}</span>
                    }).collect_view())}
                </div>
                {chart.due.map(|x| view! { <span class="chart-mark" style:left=percent(x)>{i18n::chart_due()}</span> })}
                {chart.closing.map(|x| view! { <span class="chart-mark closes" style:left=percent(x)>{i18n::chart_closing()}</span> })}
                {chart.closing_is_beyond.then(|| view! { <span class="chart-mark beyond">{i18n::chart_closing()}" →"</span> })}
            </div>
            <div class="chart-times" aria-hidden="true">
                {chart.times.iter().map(|(at, x)| view! { <span style=("--at", percent(*x))>{i18n::time(*at)}</span> }).collect_view()}
            </div>
            {is_large.then(|| view! {
                <p class="chart-legend">
                    <span class="pulled">{i18n::chart_pulled()}</span>
                    <span class="expected">{i18n::chart_expected()}</span>
                    <span class="range">{i18n::chart_range()}</span>
                    <span class="now">{i18n::chart_now()}</span>
                </p>
            })}
        </div>
    }
}

/// A vertical line.
fn upright(class: &'static str, x: f64) -> impl IntoView {
    let x = x * WIDTH;
    view! { <line class=class x1=x x2=x y1="0" y2=HEIGHT></line> }
}

fn percent(part: f64) -> String {
    format!("{:.1}%", part * 100.0)
}

fn points(line: &[ChartPoint]) -> String {
    line.iter().map(|(x, y)| format!("{:.1},{:.1}", x * WIDTH, (1.0 - y) * HEIGHT)).collect::<Vec<_>>().join(" ")
}
