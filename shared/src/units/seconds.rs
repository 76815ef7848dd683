//! Times set on a machine: dwell, flash.

use super::{NumberProblem, parse_number};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A time set on a machine, stored in milliseconds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode, Default)]
#[serde(transparent)]
pub struct Seconds {
    milliseconds: u32,
}

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

    /// Parses a time in seconds between `least` and `most`.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number or out of bounds.
    pub fn parse(text: &str, least: f64, most: f64) -> Result<Self, NumberProblem> {
        parse_number(text, least, most).map(Self::new)
    }
}
