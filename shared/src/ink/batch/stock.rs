//! How much of a component is left?

use crate::facts::InkFact;
use crate::ids::Subject;
use crate::shop::Shop;
use crate::units::Grams;

/// What is left of a component: what was weighed last, and what came and was poured since. None until it was
/// weighed, or came in, for the first time. Below nothing where more was poured than the ledger knows of.
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

/// The wall time at which a component was weighed last.
pub(crate) fn counted_at(shop: &Shop, component: Subject) -> Option<u64> {
    let events = shop.ink.events_of(component);
    let counted = |event: &crate::ink::InkEvent| !event.deleted && matches!(event.fact, InkFact::Counted { .. });
    events.into_iter().rev().find(|(_, event)| counted(event)).map(|(_, event)| event.at)
}
