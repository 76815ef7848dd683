//! What the facts about stencils add up to.

use super::StencilFact;
use crate::journal::Subject;
use serde::{Deserialize, Serialize};

/// How stencils are exposed, and the reclaim bath.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct StencilLog {
    /// When the bath was charged last.
    pub charged: Option<u64>,
}

impl StencilLog {
    pub(crate) fn take(&mut self, _subject: Subject, at: u64, fact: &StencilFact) {
        match fact {
            StencilFact::BathCharged => self.charged = Some(at),
        }
    }
}
