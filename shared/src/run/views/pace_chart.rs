//! The pace line and its fan as chart points from 0 to 1 on both axes, time to the right and pieces up. A chart shows
//! one working day: it ends where today's work does.

use crate::run::{Fan, FanPoint};
use crate::time::{Millis, TimeOfDay, WallClock, WallTime};

/// A point: time from the left and pieces from the bottom, each 0 to 1.
pub type ChartPoint = (f64, f64);

/// The chart of a run.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct PaceChart {
    /// Pieces pulled on this working day.
    pub line: Vec<ChartPoint>,
    /// The median of the pieces to come.
    pub expected: Vec<ChartPoint>,
    /// Outline of the fan as a closed polygon.
    pub fan: Vec<ChartPoint>,
    /// The current time on the x axis.
    pub now: f64,
    /// Closing on the x axis, if it is on the chart.
    pub closing: Option<f64>,
    /// Whether closing is beyond the right edge, and no due time is near that edge.
    pub closing_is_beyond: bool,
    /// The job's due time on the x axis, if it is on the chart.
    pub due: Option<f64>,
    /// Pieces ordered, and their height.
    pub target: (u32, f64),
    /// Times on the x axis: round ones, a few.
    pub times: Vec<(WallTime, f64)>,
    /// Numbers of pieces on the y axis from 0 on, below the target: round ones, a few.
    pub pieces: Vec<(u32, f64)>,
}

/// What the chart is compared with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct ChartMarks {
    pub(super) closing: Option<WallTime>,
    pub(super) due: Option<WallTime>,
    /// Until when there is work today.
    pub(super) work_until: Option<WallTime>,
    pub(super) planned: u32,
    pub(super) good: u32,
}

/// The part of the chart that is left free at its right edge: one in so many.
const EDGE: u64 = 25;
/// Least time on the x axis.
const MIN_WIDTH: Millis = Millis::from_minutes(1);
/// Up to where on the x axis a due time leaves room for the word of closing at the right edge.
const ROOM_FOR_BOTH: f64 = 0.6;
/// Minutes between times on the x axis.
const TIME_STEPS: [u64; 11] = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720];
/// Most times and most numbers on an axis: a phone is 390 pixels wide.
const MOST_TIMES: u64 = 3;
const MOST_NUMBERS: u32 = 3;

/// The chart of a run; `None` if it has neither started nor pulled.
pub(super) fn pace_chart(
    fan: &Fan,
    started: Option<WallTime>,
    marks: ChartMarks,
    clock: WallClock,
) -> Option<PaceChart> {
    let is_today = |at: &WallTime| clock.work_day_of(*at) == clock.work_day();
    let started = started.map(|at| Some(at).filter(is_today).unwrap_or(clock.now));
    let from = fan.line.first().map(|point| point.at).or(started)?;
    let due = marks.due.filter(|due| Some(*due) != marks.closing);
    let goal = due.into_iter().chain(marks.closing).filter(|goal| *goal > clock.now).min();
    let work_until = marks.work_until.filter(|until| *until > clock.now);
    let end = end_of(fan, from, goal, clock.now);
    // Room for the line of closing.
    let end = work_until.map_or(end, |until| end.min(until + until.since(from) / EDGE));
    let most = f64::from(marks.planned.max(marks.good).max(1));
    let x = |at: WallTime| (at.since(from).seconds() / end.since(from).seconds()).clamp(0.0, 1.0);
    let points = |line: &[FanPoint]| clipped(line, end).map(|(at, pieces)| (x(at), pieces / most)).collect::<Vec<_>>();
    let today = work_until.map_or(end, |until| end.min(until));
    let to_come =
        |line: &[FanPoint]| clipped(line, today).map(|(at, pieces)| (x(at), pieces / most)).collect::<Vec<_>>();
    let mut edge = to_come(&fan.early);
    edge.extend(to_come(&fan.late).into_iter().rev());
    let on_chart = |moment: Option<WallTime>| moment.filter(|moment| (from..=end).contains(moment)).map(x);
    let due = on_chart(due);
    let closing_is_beyond = marks.closing.is_some_and(|closing| closing > end) && due.is_none_or(|x| x < ROOM_FOR_BOTH);
    Some(PaceChart {
        line: points(&fan.line),
        expected: to_come(&fan.expected),
        fan: edge,
        now: x(clock.now),
        closing: on_chart(marks.closing),
        closing_is_beyond,
        due,
        target: (marks.planned, f64::from(marks.planned) / most),
        times: round_times(from, end, clock).into_iter().map(|at| (at, x(at))).collect(),
        pieces: round_numbers(marks.planned).into_iter().map(|pieces| (pieces, f64::from(pieces) / most)).collect(),
    })
}

/// The right edge: the late end of the fan and a little more. A goal (due time or closing) hours away would squeeze the
/// run against the left edge: it gets half the chart at most. Past the goal nothing is drawn but a sixth of the chart.
fn end_of(fan: &Fan, from: WallTime, goal: Option<WallTime>, now: WallTime) -> WallTime {
    let expected_end = fan.expected.last().map_or(now, |point| point.at);
    let late_end = fan.late.last().map_or(now, |point| point.at);
    let reach = late_end.max(expected_end + expected_end.since(from) / 2).max(from + MIN_WIDTH);
    let end = match goal.filter(|goal| *goal <= reach) {
        Some(goal) => late_end.clamp(goal, goal + goal.since(from) / 6),
        None => late_end,
    };
    let end = end.max(now).max(from + MIN_WIDTH);
    end + end.since(from) / EDGE
}

/// The points up to `end`, the last one where the line crosses it.
fn clipped(line: &[FanPoint], end: WallTime) -> impl Iterator<Item = (WallTime, f64)> + '_ {
    let inside = line.iter().take_while(move |point| point.at <= end).map(|point| (point.at, f64::from(point.pieces)));
    let crossing = line.windows(2).find(|pair| pair[0].at <= end && pair[1].at > end).map(|pair| {
        let part = end.since(pair[0].at).seconds() / pair[1].at.since(pair[0].at).seconds();
        let [before, after] = [pair[0].pieces, pair[1].pieces].map(f64::from);
        (end, before + (after - before) * part)
    });
    inside.chain(crossing)
}

/// Round local times between two moments.
fn round_times(from: WallTime, end: WallTime, clock: WallClock) -> Vec<WallTime> {
    let minutes = end.since(from).whole_minutes();
    let step = TIME_STEPS.into_iter().find(|step| minutes / step <= MOST_TIMES).unwrap_or(24 * 60);
    let midnight = clock.moment(clock.day_of(from), TimeOfDay::MIDNIGHT);
    let first = midnight + Millis::from_minutes((from.since(midnight).whole_minutes() / step + 1) * step);
    // None at the very edge, where its label would stick out.
    let edge = end.since(from) / 16;
    let times = (0..=MOST_TIMES).map(|at| first + Millis::from_minutes(at * step));
    times.filter(|at| *at >= from + edge && *at + edge <= end).collect()
}

/// Round numbers from 0 on, well below the target.
fn round_numbers(target: u32) -> Vec<u32> {
    let steps = (0..9).flat_map(|power| [1, 2, 5].map(|digit| digit * 10_u32.pow(power)));
    let step = steps.into_iter().find(|step| target / step <= MOST_NUMBERS).unwrap_or(target.max(1));
    (0..=MOST_NUMBERS).map(|at| at * step).take_while(|pieces| *pieces == 0 || pieces + step / 2 < target).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;

    const CLOCK: WallClock = WallClock::fixed(wall(1_795_611_600_000), -300);

    #[test]
    fn both_axes_have_few_and_round_labels() {
        for (minutes, step) in [(3, 1), (7, 2), (19, 5), (37, 10), (56, 15), (110, 30), (230, 60), (1_300, 360)] {
            let from = CLOCK.now + Millis::from_minutes(7);
            let times = round_times(from, from + Millis::from_minutes(minutes), CLOCK);
            assert!((1..=4).contains(&times.len()), "{minutes}: {times:?}");
            assert!(
                times.iter().all(|at| CLOCK.time_of_day(*at).minutes().is_multiple_of(step)),
                "{minutes}: {times:?}"
            );
        }
        assert_eq!(round_numbers(36), [0, 10, 20, 30]);
        assert_eq!(round_numbers(144), [0, 50, 100]);
        assert_eq!(round_numbers(3), [0, 1, 2]);
        assert_eq!(round_numbers(0), [0]);
    }

    #[test]
    fn a_line_beyond_the_edge_ends_where_it_crosses_it() {
        let point = |minutes: u64, pieces: u32| FanPoint { at: CLOCK.now + Millis::from_minutes(minutes), pieces };
        let line = [point(0, 10), point(10, 20), point(30, 40)];
        let end = CLOCK.now + Millis::from_minutes(20);
        let clipped: Vec<_> = clipped(&line, end).collect();
        assert_eq!(clipped, [(line[0].at, 10.0), (line[1].at, 20.0), (end, 30.0)]);
    }

    #[test]
    fn work_that_takes_until_the_night_is_drawn_to_closing_and_not_beyond() {
        let point = |hours: u64, pieces: u32| FanPoint { at: CLOCK.now + Millis::from_hours(hours), pieces };
        let edge = vec![point(0, 0), point(14, 2_000)];
        let fan = Fan { line: Vec::new(), early: edge.clone(), expected: edge.clone(), late: edge };
        let closing = CLOCK.now + Millis::from_hours(9);
        let marks =
            ChartMarks { closing: Some(closing), due: None, work_until: Some(closing), planned: 2_000, good: 0 };
        let chart = pace_chart(&fan, Some(CLOCK.now), marks, CLOCK).unwrap();
        assert!(chart.closing.is_some_and(|x| x > 0.95), "{chart:?}");
        // Nine of fourteen hours.
        let (x, y) = *chart.expected.last().unwrap();
        assert!(Some(x) == chart.closing && (y - 9.0 / 14.0).abs() < 1e-6, "{chart:?}");
        assert!(chart.fan.iter().all(|(x, _)| Some(*x) <= chart.closing), "{chart:?}");
    }
}
