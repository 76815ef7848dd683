//! How long to expose, read from a test.

use crate::facts::{GUIDE_STEPS, LONGEST, SHORTEST};
use crate::units::Seconds;

/// How many times the light one step of the guide is: 10^0.15, densities 0.15 apart. Source: "How to
/// Use the 21 Wedge", Cape Fear Press.
const STEP: f64 = 1.412_537_544_622_754;
/// Correction of more steps than this is tested once more: our own rule.
const FAR: i8 = 2;
/// Columns of a common calculator film, in percent of the test's light. Four of them published in
/// "Using the Exposure Calculator, Part II" (2019); 50 is common practice, no source.
pub const CALCULATOR_COLUMNS: [u8; 5] = [100, 70, 50, 33, 25];

/// What a test says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TestReading {
    /// How long to expose.
    pub time: Seconds,
    /// How many times the test's time that is.
    pub factor: f64,
    /// What to do before it is trusted.
    pub advice: TestAdvice,
}

/// What to do before a reading is trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TestAdvice {
    /// Expose for the new time and look once at the stencil.
    Confirm,
    /// The correction is large: test again at the new time.
    TestAgain,
    /// The best column is the longest: the right time may be longer still. Test with more.
    TestLonger,
    /// The best column is the shortest: the right time may be shorter still. Test with less.
    TestShorter,
}

/// Why a test says nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoReading {
    /// Not even the first step held: expose much longer.
    NothingHeld,
    /// All steps held, so that the last one that would is not to be seen: expose much shorter.
    AllHeld,
    /// The time it comes to is none that a lamp is set to.
    OutOfReach,
}

/// How long to expose so that the guide's `goal` becomes the last solid step, when a test of `test`
/// seconds left step `solid` as the last: `test × 10^(0.15 (goal − solid))`. Steps 1 to 21.
///
/// # Errors
/// [`NoReading`] when no step or every step held, or the time is out of [`SHORTEST`] to [`LONGEST`].
///
/// Source: densities 0.15 apart, "How to Use the 21 Wedge", Cape Fear Press.
pub fn from_step_guide(test: Seconds, solid: u8, goal: u8) -> Result<TestReading, NoReading> {
    match solid {
        0 => return Err(NoReading::NothingHeld),
        GUIDE_STEPS.. => return Err(NoReading::AllHeld),
        _ => {}
    }
    let steps = goal.min(GUIDE_STEPS) as i8 - solid as i8;
    let light = (0..steps.unsigned_abs()).fold(1.0, |light, _| light * STEP);
    let factor = if steps < 0 { 1.0 / light } else { light };
    let advice = if steps.abs() > FAR { TestAdvice::TestAgain } else { TestAdvice::Confirm };
    reading(test, factor, advice)
}

/// How long to expose when a column of a calculator film looked best: its share of the light times
/// the test's seconds. The best is the first column, from most light to least, whose colour no longer
/// changes and whose detail is all there.
///
/// # Errors
/// [`NoReading::OutOfReach`] when the time is out of [`SHORTEST`] to [`LONGEST`].
///
/// Source: "Using the Exposure Calculator, Part II" (2019): factor × test time.
pub fn from_columns(test: Seconds, percent: u8) -> Result<TestReading, NoReading> {
    let advice = match percent {
        100.. => TestAdvice::TestLonger,
        0..=25 => TestAdvice::TestShorter,
        _ => TestAdvice::Confirm,
    };
    reading(test, f64::from(percent) / 100.0, advice)
}

fn reading(test: Seconds, factor: f64, advice: TestAdvice) -> Result<TestReading, NoReading> {
    let seconds = test.seconds() * factor;
    if !(SHORTEST..=LONGEST).contains(&seconds) {
        return Err(NoReading::OutOfReach);
    }
    Ok(TestReading { time: Seconds::new(seconds), factor, advice })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn minutes(minutes: f64) -> Seconds {
        Seconds::new(minutes * 60.0)
    }

    /// Source: `exposure_step_guide.csv`, column `time_factor_to_move_this_many_steps_up`.
    #[test]
    fn moving_by_steps_agrees_with_the_guides_densities() {
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
    fn the_guides_steps_and_half_stops_stay_within_two_and_a_half_percent() {
        for row in include_str!("../../../tests/data/exposure_step_guide.csv").lines().skip(1) {
            let cells: Vec<&str> = row.split(',').collect();
            let ours = from_step_guide(Seconds::new(10.0), 1, cells[0].parse().unwrap()).unwrap().factor;
            let half_stops: f64 = cells[7].parse().unwrap();
            assert!((half_stops / ours - 1.0).abs() < 0.025, "{row}");
        }
    }

    /// Source: `exposure_calculator_5col.csv`; and 0.7 × 10 min = 7 min as published.
    #[test]
    fn a_columns_time_is_its_share_of_the_tests() {
        let rows = include_str!("../../../tests/data/exposure_calculator_5col.csv");
        let mut read = Vec::new();
        for row in rows.lines().skip(1) {
            let cells: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
            let percent = (cells[0] * 100.0).round() as u8;
            let reading = from_columns(Seconds::new(cells[1]), percent).unwrap();
            assert!((reading.time.seconds() - cells[2]).abs() < 0.001, "{row}");
            read.push(percent);
        }
        assert_eq!(read, CALCULATOR_COLUMNS);
        assert_eq!(from_columns(minutes(10.0), 70).unwrap().time, minutes(7.0));
    }

    #[test]
    fn a_best_column_at_either_end_asks_for_another_test() {
        assert_eq!(from_columns(minutes(2.0), 100).unwrap().advice, TestAdvice::TestLonger);
        assert_eq!(from_columns(minutes(2.0), 50).unwrap().advice, TestAdvice::Confirm);
        assert_eq!(from_columns(minutes(2.0), 25).unwrap().advice, TestAdvice::TestShorter);
    }

    #[test]
    fn a_guide_of_which_nothing_or_everything_held_gives_no_time() {
        assert_eq!(from_step_guide(minutes(2.0), 0, 7), Err(NoReading::NothingHeld));
        assert_eq!(from_step_guide(minutes(2.0), 21, 7), Err(NoReading::AllHeld));
        assert_eq!(from_step_guide(minutes(200.0), 1, 21), Err(NoReading::OutOfReach));
    }

    #[test]
    fn a_step_or_two_is_confirmed_and_a_long_way_is_tested_again() {
        assert_eq!(from_step_guide(minutes(2.0), 5, 7).unwrap().advice, TestAdvice::Confirm);
        assert_eq!(from_step_guide(minutes(2.0), 3, 7).unwrap().advice, TestAdvice::TestAgain);
        let stays = from_step_guide(minutes(2.0), 7, 7).unwrap();
        assert_eq!((stays.time, stays.advice), (minutes(2.0), TestAdvice::Confirm));
    }
}
