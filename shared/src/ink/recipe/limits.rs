//! Does an ink keep to the data sheets of what is in it?

use crate::facts::ComponentKind;
use crate::ids::Subject;
use crate::shop::Shop;

/// Which limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitOf {
    /// The most of this component in an ink.
    Component,
    /// The most pigment, all together, in an ink of this base.
    Pigment,
}

/// A data sheet's limit that an ink passes.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitBroken {
    /// Whose data sheet.
    pub component: Subject,
    /// Its name.
    pub name: String,
    /// Which limit.
    pub limit: LimitOf,
    /// What is in, in percent of the whole.
    pub percent: f64,
    /// The most the sheet allows, in percent.
    pub most: f64,
}

/// Beyond a limit by less than this is rounding: a hundredth of a point. Our own.
const ROUNDING: f64 = 0.01;

/// The limits that an ink of these percentages passes, in the order of its components.
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
