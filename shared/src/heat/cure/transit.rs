//! How long a piece takes through the dryer.

use super::dryer_choice::dryer_of;
use super::run_heat::dwell_of;
use crate::ids::RunId;
use crate::shop::Shop;
use crate::units::Seconds;

/// Time that a run's last piece spends in the dryer, over all passes. Where the set dwell and the one from belt speed
/// and heated length differ, the longer counts: a finish must not depend on the shorter. `None` if neither is known.
pub fn dryer_transit(shop: &Shop, id: RunId) -> Option<Seconds> {
    let run = shop.run(id)?;
    let dwell = dwell_of(run, dryer_of(shop, id).map(|(_, heater, _)| heater));
    let longest = dwell.set.max(dwell.from_belt)?;
    Some(Seconds::from_milliseconds(longest.milliseconds().saturating_mul(u32::from(run.set_up.passes.max(1)))))
}
