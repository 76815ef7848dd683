//! The course of a run and the outlook for its rest, where the answer can be worked out or must have a shape.

use lastpull_core::run::{
    Course, CoursePrior, Outlook, OwnAndShared, PaceSummary, RunSimilarity, TroublePrior, WorkGap,
};
use lastpull_core::time::Estimate;

fn gap(seconds: f64) -> WorkGap {
    WorkGap { seconds, pieces: 1, changes: 0, is_pause: false }
}

/// Gaps of 40 s, up and down by a fifth.
fn uneven(count: usize, seconds: f64) -> Vec<WorkGap> {
    (0..count).map(|at| gap(seconds * [0.8, 1.2, 1.0, 0.9, 1.1, 1.2, 0.8][at % 7])).collect()
}

fn summary(gaps: &[WorkGap], stops: &[f64], misprints: u32) -> PaceSummary {
    PaceSummary::of(gaps, stops, gaps.len() as u32 - misprints, misprints)
}

fn learned(runs: &[PaceSummary]) -> (CoursePrior, TroublePrior) {
    let runs: Vec<&PaceSummary> = runs.iter().collect();
    (CoursePrior::learned(&runs, RunSimilarity::Alike), TroublePrior::learned(&runs))
}

/// What the shop expects of stops and misprints after twelve long runs without any.
fn no_trouble() -> TroublePrior {
    let calm = summary(&uneven(1_000, 40.0), &[], 0);
    TroublePrior::learned(&[&calm; 12])
}

fn outlook(prior: &CoursePrior, gaps: &[WorkGap], good: u32) -> Outlook {
    Outlook::of(&Course::of(prior, gaps).unwrap(), &no_trouble(), good, 0)
}

/// Source: rows with 80 % of `tests/data/pace_prediction_intervals.csv`, m·x̄ ± t·s·√(m + m²/n) from the gaps in
/// `pace_observed_gaps.csv`.
#[test]
fn with_nothing_else_known_it_is_close_to_the_plain_interval() {
    let gaps: Vec<WorkGap> = include_str!("../data/pace_observed_gaps.csv")
        .lines()
        .skip(1)
        .map(|row| gap(row.split(',').next().unwrap().parse().unwrap()))
        .collect();
    let mut read = 0;
    for row in include_str!("../data/pace_prediction_intervals.csv").lines().skip(1) {
        let cells: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
        if (cells[1] - 0.8).abs() > 1e-9 {
            continue;
        }
        let Estimate { expected: mean, low, high } =
            outlook(&CoursePrior::unknown(), &gaps, cells[0] as u32).interval(0.8);
        let width = (high - low) / (cells[5] - cells[4]);
        // The last gap was long, and the next may be like it.
        let near = if cells[0] > 5.0 { 0.02 } else { 0.06 };
        assert!((mean / cells[3] - 1.0).abs() < near, "{mean} {row}");
        assert!((0.9..1.6).contains(&width), "{width} {row}");
        read += 1;
    }
    assert_eq!(read, 4);
}

#[test]
fn nothing_is_said_before_anything_is_known() {
    let unknown = CoursePrior::unknown();
    assert_eq!(Course::of(&unknown, &[]), None);
    assert_eq!(Course::of(&unknown, &uneven(1, 40.0)), None);
    assert_eq!(Course::of(&unknown, &[gap(0.0), gap(0.0), gap(0.0)]), None);
    assert_eq!(Course::of(&unknown, &uneven(2, 40.0)).map(|course| course.gaps()), Some(2));
    assert_eq!(Course::of(&unknown.clone().with_guess(60.0), &[]).map(|course| course.gaps()), Some(0));
    assert_eq!(unknown.clone().with_guess(f64::NAN), unknown);
    assert_eq!(CoursePrior::learned(&[&PaceSummary::default()], RunSimilarity::Alike), unknown);
}

#[test]
fn the_finish_moves_little_with_a_gap_that_was_expected() {
    let alike: Vec<PaceSummary> = [36.0, 40.0, 44.0].map(|each| summary(&uneven(48, each), &[], 0)).to_vec();
    for (prior, from) in
        [(learned(&alike).0, 0), (CoursePrior::unknown().with_guess(40.0), 0), (CoursePrior::unknown(), 2)]
    {
        let mut gaps = uneven(from, 50.0);
        let mut finish = outlook(&prior, &gaps, 60 - from as u32).mean();
        for pulled in from + 1..40 {
            let next = outlook(&prior, &gaps, 1).mean();
            gaps.push(gap(next));
            let now = next + outlook(&prior, &gaps, 60 - pulled as u32).mean();
            assert!((now / finish - 1.0).abs() < 0.02, "at {pulled}: {finish} → {now}");
            finish = now - next;
        }
    }
}

#[test]
fn earlier_runs_fade_as_the_run_goes() {
    let alike: Vec<PaceSummary> =
        [38.0, 40.0, 42.0, 41.0, 39.0].map(|each| summary(&uneven(48, each), &[], 0)).to_vec();
    let (prior, _) = learned(&alike);
    let each = |count: usize| outlook(&prior, &vec![gap(60.0); count], 20).mean() / 20.0;
    assert!((each(0) - 40.0).abs() < 1.0, "{}", each(0));
    let course = [0, 3, 5, 6, 10, 40].map(each);
    assert!(course.windows(2).all(|pair| pair[0] < pair[1]), "{course:?}");
    assert!((each(40) - 60.0).abs() < 3.0, "{}", each(40));
}

#[test]
fn a_guess_stands_in_for_the_level_of_other_runs_and_keeps_their_shape() {
    let slow_start = |count: usize, each: f64| {
        let mut gaps = uneven(count, each);
        gaps[..5].iter_mut().for_each(|gap| gap.seconds *= 1.8);
        gaps
    };
    let others = [20.0, 90.0, 40.0, 70.0, 30.0, 60.0].map(|each| summary(&slow_start(60, each), &[], 0));
    let runs: Vec<&PaceSummary> = others.iter().collect();
    let prior = CoursePrior::learned(&runs, RunSimilarity::Other).with_guess(45.0);
    let five = outlook(&prior, &[], 5).mean();
    let fifty = outlook(&prior, &slow_start(10, 45.0), 50).mean();
    assert!(five > 5.0 * 45.0 * 1.3 && five < 5.0 * 45.0 * 1.9, "{five}");
    assert!((fifty / (50.0 * 45.0) - 1.0).abs() < 0.1, "{fifty}");
    // Other runs say less of the level than a guess does.
    let width = |prior: &CoursePrior| {
        let Estimate { expected, low, high } = outlook(prior, &[], 50).interval(0.8);
        (high - low) / expected
    };
    assert!(width(&prior) < width(&CoursePrior::learned(&runs, RunSimilarity::Other)));
}

#[test]
fn changes_of_pile_ahead_take_the_time_that_they_took() {
    let piles = |count: usize| -> Vec<WorkGap> {
        let mut gaps = uneven(count, 40.0);
        gaps.iter_mut()
            .skip(11)
            .step_by(12)
            .for_each(|gap| *gap = WorkGap { seconds: gap.seconds + 60.0, changes: 1, ..*gap });
        gaps
    };
    let alike: Vec<PaceSummary> = (0..6).map(|_| summary(&piles(72), &[], 0)).collect();
    let course = Course::of(&learned(&alike).0, &piles(24)).unwrap();
    let [without, with] = [0, 2].map(|changes| Outlook::of(&course, &no_trouble(), 30, changes).mean());
    assert!((with - without - 120.0).abs() < 15.0, "{without} {with}");
}

#[test]
fn stops_and_misprints_lengthen_and_widen_the_outlook() {
    let runs = |stops: &[f64], misprints: u32| -> Vec<PaceSummary> {
        (0..8).map(|_| summary(&uneven(100, 40.0), stops, misprints)).collect()
    };
    let time = |stops: &[f64], misprints: u32| {
        let (prior, trouble) = learned(&runs(stops, misprints));
        let outlook = Outlook::of(&Course::of(&prior, &uneven(30, 40.0)).unwrap(), &trouble, 100, 0);
        (outlook.mean(), outlook.interval(0.8))
    };
    let width = |(_, interval): (f64, Estimate<f64>)| interval.high - interval.low;
    let (calm, stops, misprints) = (time(&[], 0), time(&[120.0, 600.0], 0), time(&[], 6));
    // Two stops of 720 s together, and 100 · 6/94 pieces of 40 s.
    assert!((stops.0 - calm.0 - 720.0).abs() < 90.0, "{calm:?} {stops:?}");
    assert!((misprints.0 - calm.0 - 255.0).abs() < 40.0, "{calm:?} {misprints:?}");
    assert!(width(stops) > 1.5 * width(calm) && width(misprints) > width(calm), "{calm:?} {stops:?} {misprints:?}");
}

#[test]
fn what_runs_share_adds_up_along_the_day() {
    let alike = [34.0, 46.0].map(|each| summary(&uneven(48, each), &[], 0));
    let (prior, trouble) = learned(&alike);
    let one = Outlook::of(&Course::of(&prior, &[]).unwrap(), &trouble, 40, 0);
    let five = (1..5).fold(one, |sum, _| sum.and(&one));
    let OwnAndShared { own, shared } = one.variances();
    let OwnAndShared { own: five_own, shared: five_shared } = five.variances();
    assert!((five.mean() - 5.0 * one.mean()).abs() < 1e-6);
    assert!(shared > 0.1 * own, "{own} {shared}");
    assert!((five_shared - 25.0 * shared).abs() < 1e-6 * five_shared, "{shared} {five_shared}");
    assert!((five_own - 5.0 * own).abs() < 1e-6 * five_own, "{own} {five_own}");
}

#[test]
fn intervals_are_ordered_and_chances_rise_for_odd_gaps_too() {
    let odd: [Vec<WorkGap>; 6] = [
        vec![gap(40.0); 30],
        vec![gap(0.0), gap(0.0), gap(0.001)],
        vec![gap(1.0), gap(290.0)],
        (0..40).map(|at| gap(if at % 2 == 0 { 1.0 } else { 200.0 })).collect(),
        vec![gap(10.0), WorkGap { is_pause: true, ..gap(5_000.0) }, gap(12.0), WorkGap { pieces: 0, ..gap(3.0) }],
        (0..6).map(|_| WorkGap { pieces: 24, ..gap(900.0) }).collect(),
    ];
    let alike = [30.0, 40.0, 50.0].map(|each| summary(&uneven(30, each), &[30.0], 1));
    let odd_runs: Vec<PaceSummary> = odd.iter().map(|gaps| summary(gaps, &[], 0)).collect();
    let (odd_prior, odd_trouble) = learned(&odd_runs);
    let (prior, trouble) = learned(&alike);
    for gaps in &odd {
        for (prior, trouble) in
            [(&prior, trouble), (&CoursePrior::unknown(), TroublePrior::learned(&[])), (&odd_prior, odd_trouble)]
        {
            let course = Course::of(prior, gaps).unwrap();
            let mut before = Estimate::default();
            for good in [1, 2, 7, 36, 400, 5_000] {
                let trouble = trouble.after(&[240.0], 40, 39, 1);
                let outlook = Outlook::of(&course, &trouble, good, good / 12);
                let interval = outlook.interval(0.8);
                let Estimate { expected: median, low, high } = interval;
                let mean = outlook.mean();
                assert!(0.0 <= low && low <= median && median <= high, "{good}: {interval:?} {gaps:?}");
                assert!(high.is_finite() && mean.is_finite(), "{good}: {interval:?} {gaps:?}");
                assert!(median >= before.expected && high >= before.high, "{good}: {before:?} {interval:?}");
                let chances = [0.0, 0.3, 0.9, 1.0, 1.1, 3.0, 30.0].map(|part| outlook.chance_within(part * mean));
                assert!(chances.windows(2).all(|pair| pair[0] <= pair[1] + 1e-12), "{chances:?}");
                assert!(chances.iter().all(|chance| (0.0..=1.0 + 1e-9).contains(chance)), "{chances:?}");
                let OwnAndShared { own, shared } = outlook.variances();
                let near = 1e-3 * (own + shared).sqrt();
                assert!(outlook.chance_within(median + near) >= 0.5, "{good}: {median} {interval:?}");
                assert!(median < near || outlook.chance_within(median - near) <= 0.5, "{good}: {median} {interval:?}");
                before = interval;
            }
        }
    }
}

#[test]
fn pieces_counted_by_the_dozen_are_as_certain_as_their_number() {
    let dozens: Vec<WorkGap> = uneven(84, 40.0)
        .chunks(12)
        .map(|dozen| WorkGap { pieces: 12, ..gap(dozen.iter().map(|gap| gap.seconds).sum()) })
        .collect();
    let alike: Vec<PaceSummary> = (0..4).map(|_| summary(&uneven(84, 40.0), &[], 0)).collect();
    let (prior, _) = learned(&alike);
    let [by_one, by_dozen] = [uneven(84, 40.0), dozens].map(|gaps| outlook(&prior, &gaps, 60).interval(0.8));
    assert!((by_one.expected / by_dozen.expected - 1.0).abs() < 0.02, "{by_one:?} {by_dozen:?}");
    let width = |interval: Estimate<f64>| interval.high - interval.low;
    assert!((0.6..1.6).contains(&(width(by_one) / width(by_dozen))), "{by_one:?} {by_dozen:?}");
}
