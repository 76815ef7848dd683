//! How much of a component is left.

use crate::facts::InkFact;
use crate::ids::Subject;
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::Grams;

/// Weight left of a component: the last weighing, plus deliveries and minus pours since. `None` until it was weighed or
/// delivered for the first time. Below zero if more was poured than was recorded as delivered.
pub fn stock_left(shop: &Shop, component: Subject) -> Option<Grams> {
    let mut left: Option<Grams> = None;
    for (_, event) in shop.ink.events_of(component).into_iter().filter(|(_, event)| !event.deleted) {
        match &event.fact {
            InkFact::Counted { grams, .. } => left = Some(*grams),
            InkFact::Delivered { grams, .. } => left = Some(left.unwrap_or_default().saturating_add(*grams)),
            InkFact::Poured { grams, .. } => left = left.map(|left| left.saturating_sub(*grams)),
            InkFact::ComponentSet(_)
            | InkFact::RecipeSet(_)
            | InkFact::PotSet(_)
            | InkFact::ScaleSet { .. }
            | InkFact::PrintSet(_)
            | InkFact::GarmentRead(_)
            | InkFact::RevisionSaved { .. }
            | InkFact::Resized { .. }
            | InkFact::Accepted { .. }
            | InkFact::Moved { .. }
            | InkFact::Wasted { .. }
            | InkFact::Used { .. }
            | InkFact::SwatchRead { .. }
            | InkFact::Matched { .. }
            | InkFact::Approved { .. }
            | InkFact::DrawnDown(_) => {}
        }
    }
    left
}

/// Wall time of the last weighing of a component.
pub(crate) fn counted_at(shop: &Shop, component: Subject) -> Option<WallTime> {
    let events = shop.ink.events_of(component);
    let counted = |event: &crate::ink::InkEvent| !event.deleted && matches!(event.fact, InkFact::Counted { .. });
    events.into_iter().rev().find(|(_, event)| counted(event)).map(|(_, event)| event.at)
}
