//! A dryer whose settling was timed has settled.

use super::status::SettlingNow;
use crate::facts::{CheckItem, CheckOutcome, Expected, Fact, HeatFact};
use crate::ids::{RunId, Subject};
use crate::run::{CheckState, check_list};
use crate::shop::Shop;

/// What is recorded when somebody says that the dryer has settled: how long it took; and, where it settled
/// at what the run asks for, that the run's dryer was looked at and is right, since that is what was said.
pub fn settled_facts(
    shop: &Shop,
    run: RunId,
    settling: SettlingNow,
    now: u64,
    by: Option<String>,
) -> Vec<(Subject, Fact)> {
    let mut facts = vec![(settling.id, Fact::Heat(HeatFact::SettlingFinished(settling.at(now).so_far)))];
    let list = check_list(shop, run);
    let dryer = list.rows().find(|row| row.item == CheckItem::Dryer);
    if let Some(row) = dryer.filter(|row| row.expected == Expected::Temperature(settling.to)) {
        // A temperature that was measured says more than a look at the display.
        if !matches!(row.state, CheckState::Measured { within: true, .. }) {
            let (item, expected, outcome) = (row.item, row.expected.clone(), CheckOutcome::Ticked);
            facts.push((run, Fact::CheckMade { item, expected, outcome, by }));
        }
    }
    facts
}
