//! What is noted when a run starts although something was left open.

use super::status::Changeover;
use crate::facts::{CheckItem, Expected};
use crate::run::{CheckList, CheckState};

/// The checks that starting now notes as skipped: those that are open, and the dryer's where ink should
/// have been held off the screen, whatever was said of it before.
pub fn left_out_at_start(list: &CheckList, change: Option<&Changeover>) -> Vec<(CheckItem, Expected)> {
    let held = change.filter(|change| change.hold_ink());
    let mut left: Vec<(CheckItem, Expected)> = list
        .rows()
        .filter(|row| row.state == CheckState::Open || (held.is_some() && row.item == CheckItem::Dryer))
        .map(|row| (row.item, row.expected.clone()))
        .collect();
    // A run that says nothing of its dryer has no check of it: what was left out is the heat it stood at.
    if let Some((stands, _)) = held.filter(|change| change.setting_missing).and_then(|change| change.stands) {
        left.push((CheckItem::Dryer, Expected::Temperature(stands)));
    }
    left
}
