//! Chart of the bath's minutes per screen.

use crate::i18n;
use lastpull_core::screen::{BathChart, BathView, bath_chart};
use leptos::prelude::*;

/// Size of the chart's view box.
const WIDTH: f64 = 340.0;
const HEIGHT: f64 = 150.0;
/// Margin for the marks at the edges.
const EDGE: f64 = 7.0;

/// The chart of this charge's batches. Renders nothing if there are fewer than two.
#[component]
pub fn Chart(bath: Memo<BathView>) -> impl IntoView {
    let chart = Memo::new(move |_| bath.with(|bath| bath_chart(&bath.points, bath.recharge_at)));
    move || {
        let fresh = bath.with(|bath| bath.pace.map(|pace| pace.fresh));
        chart.get().map(|chart| draw(&chart, fresh))
    }
}

fn across(x: f64) -> f64 {
    EDGE + x * (WIDTH - 2.0 * EDGE)
}

fn up(y: f64) -> f64 {
    HEIGHT - EDGE - y * (HEIGHT - 2.0 * EDGE)
}

fn draw(chart: &BathChart, fresh_minutes: Option<f64>) -> AnyView {
    let list: Vec<String> = chart.batches.iter().map(|batch| i18n::bath_time(batch.minutes)).collect();
    let mut label = i18n::bath_chart_label(list.join(", "));
    let level = |y: f64, class: &'static str| {
        view! { <line class=class x1="0" x2=WIDTH y1=up(y) y2=up(y)></line> }
    };
    let mark = |y: f64, text: String, class: &'static str| {
        view! { <span class=class style:top=format!("{:.1}%", up(y) / HEIGHT * 100.0)>{text}</span> }
    };
    let fresh =
        chart.fresh.zip(fresh_minutes).map(|(y, minutes)| (y, i18n::bath_chart_fresh(i18n::bath_time(minutes))));
    let limit =
        chart.limit.zip(chart.limit_minutes).map(|(y, minutes)| (y, i18n::bath_chart_limit(i18n::bath_time(minutes))));
    for (_, words) in fresh.iter().chain(&limit) {
        label = format!("{label} {words}.");
    }
    view! {
        <figure class="stencil-chart-figure" id="bath-chart">
            <figcaption>{i18n::bath_each()}</figcaption>
            <div class="stencil-chart">
                <svg viewBox=format!("0 0 {WIDTH} {HEIGHT}") role="img" aria-label=label>
                    {chart.limit.map(|y| level(y, "stencil-limit"))}
                    {chart.fresh.map(|y| level(y, "stencil-fresh"))}
                    {chart.line.map(|[(x1, y1), (x2, y2)]| view! {
                        <line class="stencil-trend" x1=across(x1) y1=up(y1) x2=across(x2) y2=up(y2)></line>
                    })}
                    {chart.batches.iter().map(|batch| view! {
                        <circle class="stencil-dot" cx=across(batch.x) cy=up(batch.y) r="4.5"></circle>
                    }).collect_view()}
                </svg>
                {limit.map(|(y, text)| mark(y, text, "stencil-mark limit"))}
                {fresh.map(|(y, text)| mark(y, text, "stencil-mark fresh"))}
            </div>
            <p class="stencil-axis" aria-hidden="true"><span>{i18n::bath_chart_oldest()}</span><span>{i18n::bath_chart_latest()}</span></p>
            {chart.batches.iter().any(|batch| batch.beyond).then(|| view! { <p class="quiet-line">{i18n::bath_chart_beyond()}</p> })}
        </figure>
    }.into_any()
}
