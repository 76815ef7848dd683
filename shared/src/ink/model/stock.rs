//! What is left of each component.

use super::InkEvent;
use crate::codec::Encode;
use crate::facts::InkFact;
use crate::ids::Subject;
use crate::time::WallTime;
use crate::units::Grams;

/// What is left of a component after its events, in their order and without undone ones. Kept at each fact: of a white that
/// ten years of pots were mixed with, adding all pours up again at each reading of the scale would be felt.
#[derive(Clone, Copy, Debug, PartialEq, Default, Encode)]
pub(crate) struct Stock {
    /// The last weighing, plus deliveries and minus pours since. `None` until it was weighed or delivered for the first
    /// time. Below zero if more was poured than was recorded as delivered.
    pub left: Option<Grams>,
    /// Wall time of the last weighing.
    pub counted: Option<WallTime>,
    /// Rank of the last weighing, else of the first delivery: pours before it say nothing about what is left.
    since: u64,
}

/// How an event changes the stock of a component.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Change {
    Counted(Grams),
    Delivered(Grams),
    Poured(Grams),
}

/// The component whose stock an event changes, and how; `None` if it changes none, or was undone.
pub(super) fn change_by(event: &InkEvent) -> Option<(Subject, Change)> {
    let change = match &event.fact {
        InkFact::Counted { component, grams, .. } => (*component, Change::Counted(*grams)),
        InkFact::Delivered { component, grams, .. } => (*component, Change::Delivered(*grams)),
        InkFact::Poured { component, grams, .. } => (*component, Change::Poured(*grams)),
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
        | InkFact::DrawnDown(_) => return None,
    };
    Some(change).filter(|_| !event.deleted)
}

/// The weight that a change pours of this component; `None` if it changes its stock in another way.
pub(super) fn poured(change: Option<(Subject, Change)>, component: Subject) -> Option<Grams> {
    match change.filter(|(of, _)| *of == component) {
        None => Some(Grams::ZERO),
        Some((_, Change::Poured(grams))) => Some(grams),
        Some((_, Change::Counted(_) | Change::Delivered(_))) => None,
    }
}

impl Stock {
    /// Takes in the next event about the component. False if it does not change the stock.
    pub fn add(&mut self, component: Subject, event: &InkEvent) -> bool {
        let change = change_by(event).filter(|(of, _)| *of == component);
        match change {
            Some((_, Change::Counted(grams))) => {
                (self.left, self.counted, self.since) = (Some(grams), Some(event.at), event.rank);
            }
            Some((_, Change::Delivered(grams))) => {
                self.since = if self.left.is_none() { event.rank } else { self.since };
                self.left = Some(self.left.unwrap_or_default().saturating_add(grams));
            }
            Some((_, Change::Poured(grams))) => self.left = self.left.map(|left| left.saturating_sub(grams)),
            None => return false,
        }
        true
    }

    /// Says that a pour of this rank changed, which may be long ago.
    pub(super) fn change_pour(&mut self, rank: u64, before: Grams, after: Grams) {
        if rank > self.since {
            self.left = self.left.map(|left| left.saturating_add(before).saturating_sub(after));
        }
    }
}
