//! How long must a screen be exposed, according to a test?

use crate::facts::{GUIDE_STEPS, LONGEST, SHORTEST};
use crate::units::Seconds;

/// Ratio of the light of one step of the guide to the next: 10^0.15, because the densities are 0.15 apart.
/// Source: "How to Use the 21 Wedge", Cape Fear Press.
const STEP_RATIO: f64 = 1.412_537_544_622_754;
/// A correction by more steps than this should be tested again. Our own.
const MAX_CONFIRMED_STEPS: i8 = 2;
/// Light through each column of a film with columns of graded density, in percent of the test's light. Four of them are
/// published in "Using the Exposure Calculator, Part II" (2019); 50 is common practice, no source.
pub const COLUMN_SHARES: [u8; 5] = [100, 70, 50, 33, 25];

/// The result of a test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TestResult {
    /// The exposure time.
    pub time: Seconds,
    /// That time as a multiple of the test's time.
    pub factor: f64,
    /// What to do before relying on it.
    pub advice: TestAdvice,
}

/// What to do before relying on a result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TestAdvice {
    /// Expose a screen for the new time and check the stencil once.
    Confirm,
    /// The correction is large: test again with the new time.
    TestAgain,
    /// The best column is the longest one: the right time may be longer still. Test with more light.
    TestLonger,
    /// The best column is the shortest one: the right time may be shorter still. Test with less light.
    TestShorter,
}

/// Why a test gives no result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoTestResult {
    /// Not even the first step stayed solid: expose much longer.
    NothingHeld,
    /// All steps stayed solid, so the last solid step cannot be seen: expose much shorter.
    AllHeld,
    /// The computed time is outside [`SHORTEST`] to [`LONGEST`].
    OutOfReach,
}

/// The exposure time for which step `goal` of the guide is the last solid one, if a test exposure of `test`
/// left step `solid` as the last: `test × 10^(0.15 (goal − solid))`. Steps are 1 to 21.
///
/// ```
/// use lastpull_core::units::Seconds;
/// use lastpull_core::screen::{NoTestResult, TestAdvice, from_step_guide};
///
/// let reading = from_step_guide(Seconds::new(120.0), 5, 7).unwrap();
/// assert!((reading.factor - 1.995262).abs() < 1e-6);
/// assert_eq!(reading.advice, TestAdvice::Confirm);
/// assert_eq!(from_step_guide(Seconds::new(120.0), 0, 7), Err(NoTestResult::NothingHeld));
/// ```
///
/// # Errors
/// [`NoTestResult`] if no step or every step stayed solid, or if the time is outside [`SHORTEST`] to
/// [`LONGEST`].
///
/// Source: densities 0.15 apart, "How to Use the 21 Wedge", Cape Fear Press.
pub fn from_step_guide(test: Seconds, solid: u8, goal: u8) -> Result<TestResult, NoTestResult> {
    match solid {
        0 => return Err(NoTestResult::NothingHeld),
        GUIDE_STEPS.. => return Err(NoTestResult::AllHeld),
        _ => {}
    }
    let steps = goal.min(GUIDE_STEPS) as i8 - solid as i8;
    let light = (0..steps.unsigned_abs()).fold(1.0, |light, _| light * STEP_RATIO);
    let factor = if steps < 0 { 1.0 / light } else { light };
    let advice = if steps.abs() > MAX_CONFIRMED_STEPS { TestAdvice::TestAgain } else { TestAdvice::Confirm };
    reading(test, factor, advice)
}

/// The exposure time from the best column of a film with columns of graded density: its share of the light,
/// `percent`, times the test's time. The best column is the one with the least light whose colour is the same as with
/// more light, and which keeps all details.
///
/// ```
/// use lastpull_core::units::Seconds;
/// use lastpull_core::screen::from_columns;
///
/// let reading = from_columns(Seconds::new(600.0), 70).unwrap();
/// assert_eq!(reading.time, Seconds::new(420.0));
/// ```
///
/// # Errors
/// [`NoTestResult::OutOfReach`] if the time is outside [`SHORTEST`] to [`LONGEST`].
///
/// Source: "Using the Exposure Calculator, Part II" (2019): factor × test time.
pub fn from_columns(test: Seconds, percent: u8) -> Result<TestResult, NoTestResult> {
    let advice = match percent {
        100.. => TestAdvice::TestLonger,
        0..=25 => TestAdvice::TestShorter,
        _ => TestAdvice::Confirm,
    };
    reading(test, f64::from(percent) / 100.0, advice)
}

fn reading(test: Seconds, factor: f64, advice: TestAdvice) -> Result<TestResult, NoTestResult> {
    let seconds = test.seconds() * factor;
    if !(SHORTEST..=LONGEST).contains(&seconds) {
        return Err(NoTestResult::OutOfReach);
    }
    Ok(TestResult { time: Seconds::new(seconds), factor, advice })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn minutes(minutes: f64) -> Seconds {
        Seconds::new(minutes * 60.0)
    }

    /// Source: `exposure_step_guide.csv`, column `time_factor_to_move_this_many_steps_up`.
    #[test]
    fn moving_by_steps_matches_the_guides_densities() {
        let rows = include_str!("../../../tests/data/exposure_step_guide.csv");
        let mut read = 0;
        for row in rows.lines().skip(1) {
            let cells: Vec<&str> = row.split(',').collect();
            let (step, factor): (u8, f64) = (cells[0].parse().unwrap(), cells[6].parse().unwrap());
            let up = from_step_guide(Seconds::new(10.0), 1, step).unwrap();
            assert!((up.factor / factor - 1.0).abs() < 1e-6, "{row}");
            assert!((up.time.seconds() - 10.0 * factor).abs() < 0.001, "{row}");
            if step < GUIDE_STEPS {
                let down = from_step_guide(Seconds::new(10_000.0), step, 1).unwrap();
                assert!((down.time.seconds() * factor / 10_000.0 - 1.0).abs() < 1e-4, "{row}");
            }
            read += 1;
        }
        assert_eq!(read, 21);
    }

    /// Source: the same file, `sqrt2_rule_factor`: 2.4 % apart after 20 steps.
    #[test]
    fn guide_steps_and_half_stops_differ_by_under_two_and_a_half_percent() {
        for row in include_str!("../../../tests/data/exposure_step_guide.csv").lines().skip(1) {
            let cells: Vec<&str> = row.split(',').collect();
            let ours = from_step_guide(Seconds::new(10.0), 1, cells[0].parse().unwrap()).unwrap().factor;
            let half_stops: f64 = cells[7].parse().unwrap();
            assert!((half_stops / ours - 1.0).abs() < 0.025, "{row}");
        }
    }

    /// Source: `exposure_calculator_5col.csv`; and 0.7 × 10 min = 7 min as published.
    #[test]
    fn a_columns_time_is_its_share_of_the_tests_time() {
        let rows = include_str!("../../../tests/data/exposure_calculator_5col.csv");
        let mut read = Vec::new();
        for row in rows.lines().skip(1) {
            let cells: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
            let percent = (cells[0] * 100.0).round() as u8;
            let reading = from_columns(Seconds::new(cells[1]), percent).unwrap();
            assert!((reading.time.seconds() - cells[2]).abs() < 0.001, "{row}");
            read.push(percent);
        }
        assert_eq!(read, COLUMN_SHARES);
        assert_eq!(from_columns(minutes(10.0), 70).unwrap().time, minutes(7.0));
    }

    #[test]
    fn a_best_column_at_either_end_asks_for_another_test() {
        assert_eq!(from_columns(minutes(2.0), 100).unwrap().advice, TestAdvice::TestLonger);
        assert_eq!(from_columns(minutes(2.0), 50).unwrap().advice, TestAdvice::Confirm);
        assert_eq!(from_columns(minutes(2.0), 25).unwrap().advice, TestAdvice::TestShorter);
    }

    #[test]
    fn a_guide_with_no_or_only_solid_steps_gives_no_time() {
        assert_eq!(from_step_guide(minutes(2.0), 0, 7), Err(NoTestResult::NothingHeld));
        assert_eq!(from_step_guide(minutes(2.0), 21, 7), Err(NoTestResult::AllHeld));
        assert_eq!(from_step_guide(minutes(200.0), 1, 21), Err(NoTestResult::OutOfReach));
    }

    #[test]
    fn a_small_correction_is_confirmed_and_a_large_one_tested_again() {
        assert_eq!(from_step_guide(minutes(2.0), 5, 7).unwrap().advice, TestAdvice::Confirm);
        assert_eq!(from_step_guide(minutes(2.0), 3, 7).unwrap().advice, TestAdvice::TestAgain);
        let stays = from_step_guide(minutes(2.0), 7, 7).unwrap();
        assert_eq!((stays.time, stays.advice), (minutes(2.0), TestAdvice::Confirm));
    }
}
