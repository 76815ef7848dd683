//! What "the dryer has settled" records, and how it is taken back.

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
/// it is left out, and, if it settled at the temperature this run needs, that the run's dryer is right by its display.
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
        let is_close = |value: i64| row.expected.is_close(row.item, value);
        if !matches!(row.state, CheckState::Measured { value, .. } if is_close(value)) {
            let (item, expected, outcome) = (row.item, row.expected.clone(), CheckOutcome::Settled);
            facts.push((run, Fact::CheckMade { item, expected, outcome, by }));
        }
    }
    facts
}

/// The facts that take back what [`settled_facts`] gave for `shop`, the shop before they were recorded: the settling is
/// deleted, and the dryer's check is as it was, with what had been measured.
pub fn settled_undo(shop: &Shop, settled: &[(Subject, Fact)]) -> Vec<(Subject, Fact)> {
    let mut undo = Vec::new();
    for (subject, fact) in settled {
        let Fact::CheckMade { item, expected, by, .. } = fact else {
            undo.push((*subject, Fact::Deleted));
            continue;
        };
        let before = shop.run(*subject).and_then(|run| run.checks.get(item)).filter(|was| was.expected == *expected);
        let known = before.map(|was| {
            let measured = was.measured.map(CheckOutcome::Measured);
            [measured, was.infrared.map(CheckOutcome::ReadByInfrared), Some(was.outcome)]
        });
        let mut outcomes: Vec<CheckOutcome> = known.into_iter().flatten().flatten().collect();
        outcomes.dedup();
        if outcomes.is_empty() {
            outcomes.push(CheckOutcome::Cleared);
        }
        undo.extend(outcomes.into_iter().map(|outcome| {
            let (item, expected, by) = (*item, expected.clone(), by.clone());
            (*subject, Fact::CheckMade { item, expected, outcome, by })
        }));
    }
    undo
}
