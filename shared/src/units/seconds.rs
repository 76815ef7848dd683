//! Times set on a machine: dwell, flash.

use super::quantity::{Spelling, parse_quantity};
use super::{NumberProblem, Quantity};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A time set on a machine, stored in milliseconds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode, Default)]
#[serde(transparent)]
pub struct Seconds {
    milliseconds: u32,
}

/// Units of time as they may be typed, in milliseconds.
const SPELLINGS: [Spelling; 2] = [(&["s", "sec", "secs", "seg"], 1e3), (&["min", "mins"], 6e4)];

impl Seconds {
    /// From seconds, rounded to a millisecond; 0 if negative.
    pub fn new(seconds: f64) -> Self {
        Self { milliseconds: (seconds * 1000.0).round() as u32 }
    }

    /// In seconds.
    pub fn seconds(self) -> f64 {
        f64::from(self.milliseconds) / 1000.0
    }

    /// In milliseconds.
    pub fn milliseconds(self) -> u32 {
        self.milliseconds
    }

    /// From milliseconds.
    pub fn from_milliseconds(milliseconds: u32) -> Self {
        Self { milliseconds }
    }

    /// Parses a time between `least` and `most` seconds: a number of seconds, or with its unit.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number, has another unit or is out of bounds.
    pub fn parse(text: &str, least: f64, most: f64) -> Result<Self, NumberProblem> {
        let milliseconds = parse_quantity(text, Quantity::Time, &SPELLINGS, 1e3, [least * 1e3, most * 1e3])?;
        Ok(Self { milliseconds: milliseconds.round() as u32 })
    }
}
