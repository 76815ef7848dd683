//! The stored fields of a trial of a cure. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::facts::{Fabric, Flash, is_belt, is_met, is_set};
use crate::units::{BeltSpeed, Seconds, Temperature};
use serde::{Deserialize, Serialize};

/// What the shop makes of a trial. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum TrialVerdict {
    /// Not decided yet.
    #[default]
    Open,
    /// Print it this way.
    Keep,
    /// Nearly: change something and try again.
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
    /// Threads an inch.
    Mesh(Option<u16>),
    /// Strokes that lay ink.
    Hits(u8),
    /// Flash, or none.
    Flash(Option<Flash>),
    /// What the dryer was set to.
    Dryer(Option<Temperature>),
    /// How fast its belt ran.
    Belt(Option<BeltSpeed>),
    /// Time in the heat, one pass.
    Dwell(Option<Seconds>),
    /// Passes.
    Passes(u8),
    /// What came of it.
    Outcome(String),
    /// What the shop makes of it.
    Verdict(TrialVerdict),
    /// Anything else to know.
    Notes(String),
    /// Who tried it.
    By(Option<String>),
}

impl TrialField {
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Ink(text) => is_name(text),
            Self::By(by) => by.iter().all(|text| is_name(text)),
            Self::Outcome(text) | Self::Notes(text) => is_note(text),
            Self::Flash(flash) => flash.is_none_or(|flash| is_set(flash.seconds)),
            Self::Dryer(temperature) => temperature.is_none_or(is_met),
            Self::Belt(speed) => speed.is_none_or(is_belt),
            Self::Dwell(time) => time.is_none_or(is_set),
            Self::Fabric(_) | Self::Mesh(_) | Self::Hits(_) | Self::Passes(_) | Self::Verdict(_) => true,
        }
    }
}
