//! The stored fields of a trial of a cure. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::facts::{Fabric, Flash, is_belt_speed, is_machine_time, is_shop_temperature};
use crate::units::{BeltSpeed, Seconds, Temperature};
use serde::{Deserialize, Serialize};

/// The shop's verdict on a trial. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum TrialVerdict {
    /// Not decided yet.
    #[default]
    Open,
    /// Print it this way.
    Keep,
    /// Nearly right: change something and try again.
    Adjust,
    /// Not this way.
    Reject,
}

/// A field of a trial. **Frozen**: stored.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum TrialField {
    /// The ink's name.
    Ink(String),
    /// The fabric.
    Fabric(Fabric),
    /// Mesh count in threads per inch.
    Mesh(Option<u16>),
    /// Number of strokes that print ink.
    Hits(u8),
    /// Flash settings; `None` if not flashed.
    Flash(Option<Flash>),
    /// Dryer setting.
    Dryer(Option<Temperature>),
    /// Belt speed.
    Belt(Option<BeltSpeed>),
    /// Dwell: time in the heat for one pass.
    Dwell(Option<Seconds>),
    /// Passes through the dryer.
    Passes(u8),
    /// Outcome, in the shop's words.
    Outcome(String),
    /// The shop's verdict.
    Verdict(TrialVerdict),
    /// Free notes.
    Notes(String),
    /// Name of the person who ran the trial, if entered.
    By(Option<String>),
}

impl TrialField {
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Ink(text) => is_name(text),
            Self::By(by) => by.iter().all(|text| is_name(text)),
            Self::Outcome(text) | Self::Notes(text) => is_note(text),
            Self::Flash(flash) => flash.is_none_or(|flash| is_machine_time(flash.seconds)),
            Self::Dryer(temperature) => temperature.is_none_or(is_shop_temperature),
            Self::Belt(speed) => speed.is_none_or(is_belt_speed),
            Self::Dwell(time) => time.is_none_or(is_machine_time),
            Self::Fabric(_) | Self::Mesh(_) | Self::Hits(_) | Self::Passes(_) | Self::Verdict(_) => true,
        }
    }
}
