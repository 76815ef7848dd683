//! The totals on which all three implementations must agree.

use std::collections::BTreeMap;
use uuid::Uuid;

/// The pieces of every run.
pub type Totals = BTreeMap<Uuid, RunTotal>;

/// The pieces of one run.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct RunTotal {
    /// Good pieces.
    pub good: i64,
    /// Misprinted pieces.
    pub misprinted: i64,
}

impl RunTotal {
    /// Adds an event.
    pub fn add(&mut self, kind: &str, pieces: i64, counted: bool) {
        match kind {
            "pulled" => self.good += pieces,
            "misprinted" => {
                self.misprinted += pieces;
                self.good -= if counted { pieces } else { 0 };
            }
            _ => {}
        }
    }

    /// Adds a note of the run's log.
    pub fn add_note(&mut self, text: &str) {
        let kind = text.split(' ').next().unwrap_or_default();
        self.add(kind, 1, text.ends_with(" counted"));
    }
}
