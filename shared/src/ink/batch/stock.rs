//! How much of a component is left.

use crate::ids::Subject;
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::Grams;

/// Weight left of a component: the last weighing, plus deliveries and minus pours since. `None` until it was weighed or
/// delivered for the first time. Below zero if more was poured than was recorded as delivered.
pub fn stock_left(shop: &Shop, component: Subject) -> Option<Grams> {
    shop.ink.stock(component).left
}

/// Wall time of the last weighing of a component.
pub(crate) fn counted_at(shop: &Shop, component: Subject) -> Option<WallTime> {
    shop.ink.stock(component).counted
}
