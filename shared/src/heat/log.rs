//! What the facts about heat add up to.

use super::HeatFact;
use crate::journal::Subject;
use crate::quantity::Temperature;
use serde::{Deserialize, Serialize};

/// What the shop knows of its heat.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct HeatLog {
    /// The last reading of the room: when, temperature, humidity in percent.
    pub room: Option<(u64, Temperature, u8)>,
}

impl HeatLog {
    pub(crate) fn take(&mut self, _subject: Subject, at: u64, fact: &HeatFact) {
        match fact {
            HeatFact::RoomRead { temperature, humidity } => self.room = Some((at, *temperature, *humidity)),
        }
    }
}
