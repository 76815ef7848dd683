//! What starting a run records about checks that were left open.

use super::status::Changeover;
use crate::facts::{CheckItem, Expected};
use crate::run::{CheckList, CheckRow};

/// The checks that starting now records as skipped: the open ones, and if ink should have been held off the screen, the
/// dryer's, even if it was ticked, and what was measured and holds it.
pub fn checks_skipped_at_start(list: &CheckList, change: Option<&Changeover>) -> Vec<(CheckItem, Expected)> {
    let held = change.filter(|change| change.hold_ink());
    let holds = |row: &CheckRow| held.is_some() && (row.item == CheckItem::Dryer || row.breach().is_some());
    let mut left: Vec<(CheckItem, Expected)> = list
        .rows()
        .filter(|row| row.state.is_open() || holds(row))
        .map(|row| (row.item, row.expected.clone()))
        .collect();
    // Without a dryer setting there is no dryer check: record the current temperature as skipped.
    if let Some((current, _)) = held.filter(|change| change.setting_missing).and_then(|change| change.current) {
        left.push((CheckItem::Dryer, Expected::Temperature(current)));
    }
    left
}
