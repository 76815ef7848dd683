//! Which run is on the press.

use super::open_runs;
use crate::ids::RunId;
use crate::shop::Shop;

/// The run on the press, if it is the only one there.
pub fn only_on_press(shop: &Shop) -> Option<RunId> {
    let is_on_press = |id: &RunId| shop.run(*id).is_some_and(|run| run.progress.is_on_press());
    let mut on_press = open_runs(shop).into_iter().filter(is_on_press);
    on_press.next().filter(|_| on_press.next().is_none())
}
