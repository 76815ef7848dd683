//! The pace line and its fan as points on a chart from 0 to 1 both ways, time to the right and pieces
//! up.

use super::count::CountView;
use crate::run::FanPoint;

/// A point: time from the left, pieces from the bottom, each 0 to 1.
pub type ChartPoint = (f64, f64);

/// The chart of a run.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct PaceChart {
    /// What was pulled.
    pub line: Vec<ChartPoint>,
    /// What is expected.
    pub expected: Vec<ChartPoint>,
    /// The edge of the fan, all the way round.
    pub fan: Vec<ChartPoint>,
    /// Now.
    pub now: f64,
    /// Closing, when it lies on the chart.
    pub closing: Option<f64>,
    /// Whether closing lies further right than the chart goes.
    pub closing_is_beyond: bool,
}

/// The chart of a counting screen; none before there is anything to draw.
pub fn pace_chart(count: &CountView, now: u64) -> Option<PaceChart> {
    let fan = &count.fan;
    let from = fan.line.first().map(|point| point.at).or(count.started)?;
    let expected_end = fan.expected.last().map_or(now, |point| point.at);
    let late_end = fan.late.last().map_or(now, |point| point.at);
    // Closing hours away would press the run flat against the left edge: it gets half the chart at most.
    let reach = late_end.max(expected_end + (expected_end.saturating_sub(from)) / 2).max(from + 60_000);
    let end = count
        .closing
        .filter(|closing| *closing > from && *closing <= reach)
        .map_or(late_end, |closing| closing.max(late_end));
    let end = end.max(from + 60_000);
    let end = end + (end - from) / 25;
    let most = f64::from(count.planned.max(count.good).max(1));
    let x = |at: u64| (at.saturating_sub(from) as f64 / (end - from) as f64).clamp(0.0, 1.0);
    let points =
        |line: &[FanPoint]| line.iter().map(|point| (x(point.at), f64::from(point.pieces) / most)).collect::<Vec<_>>();
    let mut edge = points(&fan.early);
    edge.extend(points(&fan.late).into_iter().rev());
    Some(PaceChart {
        line: points(&fan.line),
        expected: points(&fan.expected),
        fan: edge,
        now: x(now),
        closing: count.closing.filter(|closing| (from..=end).contains(closing)).map(x),
        closing_is_beyond: count.closing.is_some_and(|closing| closing > end),
    })
}
