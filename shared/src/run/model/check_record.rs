//! A check that was made.

use crate::codec::Encode;
use crate::facts::{CheckItem, CheckOutcome, Expected};
use crate::ids::Subject;
use crate::time::WallTime;
use crate::units::BeltSpeed;

/// Number of other expected values whose measurement is kept. Our own.
const MAX_EARLIER: usize = 4;

/// A check that was made.
#[derive(Clone, Debug, PartialEq, Encode)]
pub struct CheckRecord {
    /// The expected value when it was made.
    pub expected: Expected,
    /// Outcome.
    pub outcome: CheckOutcome,
    /// Name of the person who made it, if entered.
    pub by: Option<String>,
    /// Wall time.
    pub at: WallTime,
    /// What was last measured against this expected value, also if the check was taken back, skipped or ticked since.
    pub measured: Option<i64>,
    /// The hottest reading by infrared since then.
    pub infrared: Option<i64>,
    /// How the run went through the dryer then.
    pub dryer: DryerUse,
    /// The last records for other expected values that something was measured against, the latest last.
    pub earlier: Vec<CheckRecord>,
}

/// The dryer chosen for a run, and its belt speed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Encode)]
pub struct DryerUse {
    /// The dryer; `None` if none was chosen.
    pub dryer: Option<Subject>,
    /// The belt speed.
    pub belt: Option<BeltSpeed>,
}

impl CheckRecord {
    /// A check of which no measurement is known.
    pub(crate) fn new(
        expected: Expected,
        outcome: CheckOutcome,
        by: Option<String>,
        at: WallTime,
        dryer: DryerUse,
    ) -> Self {
        Self { expected, outcome, by, at, measured: None, infrared: None, dryer, earlier: Vec::new() }
    }

    /// This check, made after an earlier one of the same item.
    ///
    /// A measurement stays known until the next one, also while another value is expected. A dryer that was timed until
    /// it had settled is no longer as hot as it was measured on its way; one measured at its setting, within the
    /// tolerance, shows nothing new on its display.
    #[must_use]
    pub(crate) fn after(self, earlier: Option<&Self>, item: CheckItem) -> Self {
        let mut others = earlier.map(|earlier| earlier.earlier.clone()).unwrap_or_default();
        if let Some(earlier) = earlier.filter(|earlier| earlier.measured.is_some() || earlier.infrared.is_some()) {
            others.push(Self { earlier: Vec::new(), ..earlier.clone() });
        }
        let same = others.iter().rposition(|other| other.expected == self.expected).map(|place| others.remove(place));
        if others.len() > MAX_EARLIER {
            others.remove(0);
        }
        let (measured, infrared) = same.map_or((None, None), |same| (same.measured, same.infrared));
        let is_close = |value: &i64| self.expected.is_close(item, *value);
        let (measured, infrared) = match self.outcome {
            CheckOutcome::Measured(value) => (Some(value), None),
            CheckOutcome::ReadByInfrared(value) => (measured, infrared.max(Some(value))),
            CheckOutcome::Settled => (measured.filter(is_close), infrared.filter(is_close)),
            CheckOutcome::Ticked | CheckOutcome::Skipped | CheckOutcome::Cleared => (measured, infrared),
        };
        Self { measured, infrared, earlier: others, ..self }
    }

    /// The record of the time when this value was expected; `None` if it still is, or nothing was measured then.
    pub(crate) fn earlier_for(&self, expected: &Expected) -> Option<&Self> {
        self.earlier.iter().find(|record| record.expected == *expected)
    }
}
