//! The pace line and its fan as chart points from 0 to 1 on both axes, time to the right and pieces up.

use super::count::CountView;
use crate::run::FanPoint;
use crate::time::{Millis, WallTime};

/// A point: time from the left and pieces from the bottom, each 0 to 1.
pub type ChartPoint = (f64, f64);

/// The chart of a run.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct PaceChart {
    /// Pieces pulled so far.
    pub line: Vec<ChartPoint>,
    /// Expected course.
    pub expected: Vec<ChartPoint>,
    /// Outline of the fan as a closed polygon.
    pub fan: Vec<ChartPoint>,
    /// The current time on the x axis.
    pub now: f64,
    /// Closing on the x axis, if it is on the chart.
    pub closing: Option<f64>,
    /// Whether closing is beyond the right edge.
    pub closing_is_beyond: bool,
}

/// Least time on the x axis.
const MIN_WIDTH: Millis = Millis::from_minutes(1);

/// The chart of a counting page; `None` if the run has neither started nor pulled.
pub fn pace_chart(count: &CountView, now: WallTime) -> Option<PaceChart> {
    let fan = &count.fan;
    let from = fan.line.first().map(|point| point.at).or(count.started)?;
    let expected_end = fan.expected.last().map_or(now, |point| point.at);
    let late_end = fan.late.last().map_or(now, |point| point.at);
    // Closing hours away would squeeze the run against the left edge: it gets half the chart at most.
    let reach = late_end.max(expected_end + expected_end.since(from) / 2).max(from + MIN_WIDTH);
    let end = count
        .closing
        .filter(|closing| *closing > from && *closing <= reach)
        .map_or(late_end, |closing| closing.max(late_end));
    let end = end.max(from + MIN_WIDTH);
    let end = end + end.since(from) / 25;
    let most = f64::from(count.planned.max(count.good).max(1));
    let x = |at: WallTime| (at.since(from).seconds() / end.since(from).seconds()).clamp(0.0, 1.0);
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
