//! What "the dryer has settled" records.

use super::status::ActiveSettling;
use crate::facts::{CheckItem, CheckOutcome, Expected, Fact, HeatFact};
use crate::ids::{RunId, Subject};
use crate::run::{CheckState, check_list};
use crate::shop::Shop;
use crate::time::WallTime;

/// The facts recorded when somebody confirms that the dryer has settled: the time it took and, if it settled at
/// the temperature this run needs, a ticked check of the run's dryer.
pub fn settled_facts(
    shop: &Shop,
    run: RunId,
    settling: ActiveSettling,
    now: WallTime,
    by: Option<String>,
) -> Vec<(Subject, Fact)> {
    let mut facts = vec![(settling.id, Fact::Heat(HeatFact::SettlingFinished(settling.at(now).elapsed)))];
    let list = check_list(shop, run);
    let dryer = list.rows().find(|row| row.item == CheckItem::Dryer);
    if let Some(row) = dryer.filter(|row| row.expected == Expected::Temperature(settling.to)) {
        // A measured temperature says more than a look at the display.
        if !matches!(row.state, CheckState::Measured { within: true, .. }) {
            let (item, expected, outcome) = (row.item, row.expected.clone(), CheckOutcome::Ticked);
            facts.push((run, Fact::CheckMade { item, expected, outcome, by }));
        }
    }
    facts
}
