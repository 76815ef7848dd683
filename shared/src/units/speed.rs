//! Belt speed of a dryer.

use super::length::shortest;
use super::quantity::{Spelling, parse_quantity};
use super::{LengthUnit, NumberProblem, Quantity, Units};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A belt speed, stored in micrometres per second.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct BeltSpeed {
    micrometres_per_second: u32,
}

/// One foot per minute in micrometres per second: what dryers in the US show.
const FOOT_PER_MINUTE: f64 = 304_800.0 / 60.0;
/// One centimetre per minute in micrometres per second.
const CENTIMETRE_PER_MINUTE: f64 = 10_000.0 / 60.0;

/// Units of belt speed as they may be typed, in micrometres per second.
const SPELLINGS: [Spelling; 4] = [
    (&["ft/min", "fpm", "pies/min", "pie/min"], FOOT_PER_MINUTE),
    (&["in/min", "ipm", "pulg/min"], FOOT_PER_MINUTE / 12.0),
    (&["cm/min"], CENTIMETRE_PER_MINUTE),
    (&["m/min"], CENTIMETRE_PER_MINUTE * 100.0),
];

impl BeltSpeed {
    fn scale(units: Units) -> f64 {
        match units.length {
            LengthUnit::Inches => FOOT_PER_MINUTE,
            LengthUnit::Centimetres => CENTIMETRE_PER_MINUTE,
        }
    }

    /// In feet or centimetres per minute.
    pub fn in_units(self, units: Units) -> f64 {
        f64::from(self.micrometres_per_second) / Self::scale(units)
    }

    /// From feet or centimetres per minute.
    pub fn from_units(value: f64, units: Units) -> Self {
        Self { micrometres_per_second: (value * Self::scale(units)).round() as u32 }
    }

    /// From inches per minute.
    pub fn from_inches_per_minute(inches: f64) -> Self {
        Self { micrometres_per_second: (inches * FOOT_PER_MINUTE / 12.0).round() as u32 }
    }

    /// In inches per minute.
    pub fn inches_per_minute(self) -> f64 {
        f64::from(self.micrometres_per_second) / FOOT_PER_MINUTE * 12.0
    }

    /// As form text, in feet or centimetres per minute, with as many decimals as the same speed needs to read back.
    pub fn text(self, units: Units) -> String {
        shortest(self.in_units(units), |value| Self::from_units(value, units) == self)
    }

    /// In micrometres per second.
    pub fn micrometres_per_second(self) -> u32 {
        self.micrometres_per_second
    }

    /// From micrometres per second.
    pub fn from_micrometres_per_second(micrometres_per_second: u32) -> Self {
        Self { micrometres_per_second }
    }

    /// Parses a belt speed of 0.06 to 33.46 feet, or 1.8 to 1,020 centimetres, per minute: a little more than the 2 cm to
    /// 400 in that earlier versions accepted.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number, has another unit or is out of bounds.
    pub fn parse(text: &str, units: Units) -> Result<Self, NumberProblem> {
        Self::parse_between(text, [300.0, 170_000.0], units)
    }

    /// Parses a belt speed within bounds in micrometres per second: a number in the device's unit, or with its unit.
    ///
    /// # Errors
    /// As [`parse`](Self::parse).
    pub fn parse_between(text: &str, bounds: [f64; 2], units: Units) -> Result<Self, NumberProblem> {
        let speed = parse_quantity(text, Quantity::BeltSpeed, &SPELLINGS, Self::scale(units), bounds)?;
        Ok(Self { micrometres_per_second: speed.round() as u32 })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_hundredth_of_a_foot_a_minute_reads_back_as_it_was_typed() {
        for hundredths in 6..3_347 {
            let typed = (f64::from(hundredths) / 100.0).to_string();
            let kept = BeltSpeed::parse(&typed, Units::US).unwrap();
            assert_eq!(kept.text(Units::US), typed);
        }
        assert_eq!(BeltSpeed::from_units(61.0, Units::METRIC).text(Units::METRIC), "61");
    }

    #[test]
    fn every_stored_speed_reads_back_as_it_is() {
        for speed in (300..=170_000).step_by(7).map(BeltSpeed::from_micrometres_per_second) {
            for units in [Units::US, Units::METRIC] {
                assert_eq!(BeltSpeed::parse(&speed.text(units), units), Ok(speed), "{}", speed.text(units));
            }
        }
    }

    #[test]
    fn a_belt_that_an_earlier_version_accepted_reads_back_and_a_reported_bound_is_accepted() {
        let metric = [2.0, 1000.0].map(|speed| BeltSpeed::from_units(speed, Units::METRIC));
        let us = [1.0, 396.0, 400.0].map(BeltSpeed::from_inches_per_minute);
        for units in [Units::US, Units::METRIC] {
            for speed in metric.into_iter().chain(us) {
                assert_eq!(BeltSpeed::parse(&speed.text(units), units), Ok(speed), "{}", speed.text(units));
            }
            let (least, most) = match ["0.01", "5000"].map(|text| BeltSpeed::parse(text, units)) {
                [Err(NumberProblem::TooLow { least }), Err(NumberProblem::TooHigh { most })] => (least, most),
                other => panic!("{other:?}"),
            };
            let expected = if units == Units::US { (0.06, 33.46) } else { (1.8, 1020.0) };
            assert_eq!((least, most), expected);
            assert!([least, most].iter().all(|bound| BeltSpeed::parse(&bound.to_string(), units).is_ok()));
        }
    }

    #[test]
    fn a_belt_of_two_feet_a_minute_is_one_of_twenty_four_inches() {
        let belt = BeltSpeed::from_inches_per_minute(24.0);
        assert_eq!(belt, BeltSpeed::from_units(2.0, Units::US));
        assert!((belt.inches_per_minute() - 24.0).abs() < 1e-9);
    }
}
