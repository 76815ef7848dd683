//! Price of an ink.

use crate::ids::Subject;
use crate::shop::Shop;

/// A price, and how much of the ink it leaves out.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct InkCost {
    /// Price of a kilogram in hundredths of the shop's currency, of the components whose price is known.
    pub per_kilogram: f64,
    /// Percent of the ink whose price is unknown.
    pub unpriced: f64,
}

/// The price of a kilogram of an ink with these percentages of components.
pub fn ink_cost(shop: &Shop, percentages: &[(Subject, f64)]) -> InkCost {
    let mut cost = InkCost::default();
    for (component, percent) in percentages {
        match shop.ink.component(*component).and_then(|component| component.cost) {
            Some(price) => cost.per_kilogram += f64::from(price) * percent / 100.0,
            None => cost.unpriced += percent,
        }
    }
    cost
}
