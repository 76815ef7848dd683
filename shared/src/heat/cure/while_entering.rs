//! The limits that a dryer setting exceeds, while it is being entered for a run.

use super::dryer_choice::dryer_of;
use super::limits::LimitOrigin;
use super::on_paper::{LimitCheck, LimitState, check_limits};
use super::sensor::set_temperature_for_limits;
use super::sheets::sheet_for;
use crate::ids::{LotId, RunId};
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::Temperature;

/// The limits of a lot's fabric and of the ink that a dryer setting exceeds, the lowest first, and the limit of
/// polyester canvas if the fabric is canvas: its state is then unknown. `run` is `None` while the run is new; it then
/// goes through the shop's oldest dryer.
pub fn limits_while_entering(
    shop: &Shop,
    lot: LotId,
    run: Option<RunId>,
    ink: &str,
    setting: Temperature,
    now: WallTime,
) -> Vec<LimitCheck> {
    let fabric = shop.lot(lot).map(|lot| lot.fabric);
    let figures = sheet_for(shop, ink).map(|(_, sheet)| &sheet.figures);
    let heater = dryer_of(shop, run.unwrap_or_default()).map(|(_, heater, _)| heater);
    let at_print = set_temperature_for_limits(heater, Some(setting), now);
    let mut limits = check_limits(shop, fabric, figures, at_print);
    limits.retain(|limit| {
        let canvas = limit.origin == LimitOrigin::IfPolyester && limit.state == LimitState::Unknown;
        canvas || limit.state == LimitState::Exceeded
    });
    crate::collections::sort_by(&mut limits, |one, other| one.limit.cmp(&other.limit));
    limits
}
