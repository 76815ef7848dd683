//! What starting a run records about checks that were left open.

use super::status::Changeover;
use crate::facts::{CheckItem, Expected};
use crate::run::{CheckList, CheckState};

/// The checks that starting now records as skipped: the open ones, and the dryer's if ink should have been
/// held off the screen, even if it was ticked.
pub fn checks_skipped_at_start(list: &CheckList, change: Option<&Changeover>) -> Vec<(CheckItem, Expected)> {
    let held = change.filter(|change| change.hold_ink());
    let mut left: Vec<(CheckItem, Expected)> = list
        .rows()
        .filter(|row| row.state == CheckState::Open || (held.is_some() && row.item == CheckItem::Dryer))
        .map(|row| (row.item, row.expected.clone()))
        .collect();
    // Without a dryer setting there is no dryer check: record the current temperature as skipped.
    if let Some((current, _)) = held.filter(|change| change.setting_missing).and_then(|change| change.current) {
        left.push((CheckItem::Dryer, Expected::Temperature(current)));
    }
    left
}
