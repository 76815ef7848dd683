//! Whether an ink keeps to the data sheets of its components.

use crate::facts::ComponentKind;
use crate::ids::Subject;
use crate::shop::Shop;

/// Kind of a data sheet limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitOf {
    /// The largest share of this component in an ink.
    Component,
    /// The largest share of all pigment in an ink made with this base.
    Pigment,
}

/// A data sheet limit that an ink exceeds.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitBroken {
    /// The component whose data sheet it is.
    pub component: Subject,
    /// Its name.
    pub name: String,
    /// Kind of the limit.
    pub limit: LimitOf,
    /// The actual share, in percent of the whole.
    pub percent: f64,
    /// The largest share allowed, in percent.
    pub most: f64,
}

/// Excess up to this, in percentage points, is rounding. Our own.
const ROUNDING: f64 = 0.01;

/// The limits that an ink with these percentages exceeds, in the order of its components.
pub fn limits_broken(shop: &Shop, percentages: &[(Subject, f64)]) -> Vec<LimitBroken> {
    let known = |id: Subject| shop.ink.component(id);
    let pigment: f64 = percentages
        .iter()
        .filter(|(id, _)| known(*id).is_some_and(|component| component.kind == ComponentKind::Pigment))
        .map(|(_, percent)| percent)
        .sum();
    let mut broken = Vec::new();
    for (id, percent) in percentages {
        let Some(component) = known(*id) else { continue };
        let has_base = component.kind == ComponentKind::Base && *percent > 0.0;
        let limits = [
            (LimitOf::Component, component.most, *percent),
            (LimitOf::Pigment, component.most_pigment.filter(|_| has_base), pigment),
        ];
        for (limit, most, percent) in limits {
            if let Some(most) = most.map(crate::facts::Share::percent).filter(|most| percent > most + ROUNDING) {
                broken.push(LimitBroken { component: *id, name: component.name.clone(), limit, percent, most });
            }
        }
    }
    broken
}
