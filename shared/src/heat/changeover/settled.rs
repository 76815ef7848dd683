//! What "the dryer has settled" records.

use super::status::ActiveSettling;
use crate::facts::{CheckItem, CheckOutcome, Expected, Fact, HeatFact};
use crate::ids::{RunId, Subject};
use crate::run::{CheckState, check_list};
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::Seconds;

/// What becomes of the time of a settling that ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SettledTime {
    /// It counts towards the dryer's pace.
    Counts,
    /// It is left out: the dryer is there, but how long it took is not known.
    LeftOut,
}

/// The facts recorded when somebody confirms that the dryer has settled: the time it took, zero if
/// it is left out, and, if it settled at the temperature this run needs, a ticked check of the run's dryer.
///
/// The display says less than a measurement: the check stays as measured if that is close to the setting, whether it
/// is right or breaches a limit or the cure.
pub fn settled_facts(
    shop: &Shop,
    run: RunId,
    settling: ActiveSettling,
    now: WallTime,
    time: SettledTime,
    by: Option<String>,
) -> Vec<(Subject, Fact)> {
    let took = match time {
        SettledTime::Counts => settling.at(now).elapsed,
        SettledTime::LeftOut => Seconds::default(),
    };
    let mut facts = vec![(settling.id, Fact::Heat(HeatFact::SettlingFinished(took)))];
    let list = check_list(shop, run);
    let dryer = list.rows().find(|row| row.item == CheckItem::Dryer);
    if let Some(row) = dryer.filter(|row| row.expected == Expected::Temperature(settling.to)) {
        let close = |value: i64| {
            let tolerance = row.expected.tolerance(row.item).unwrap_or(0);
            row.expected.value().is_some_and(|meant| (meant - value).abs() <= tolerance)
        };
        if !matches!(row.state, CheckState::Measured { value, .. } if close(value)) {
            let (item, expected, outcome) = (row.item, row.expected.clone(), CheckOutcome::Ticked);
            facts.push((run, Fact::CheckMade { item, expected, outcome, by }));
        }
    }
    facts
}
