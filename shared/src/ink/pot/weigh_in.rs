//! The progress of a weigh-in: what is in, and what to pour next.

use super::replay::pot_state;
use crate::collections::Table;
use crate::facts::{BatchSize, InkFact, PourStep};
use crate::ids::Subject;
use crate::ink::Pot;
use crate::ink::recipe::apportion::apportion;
use crate::ink::recipe::percentages::weights;
use crate::ink::recipe::scaled::to_weigh;
use crate::shop::Shop;
use crate::units::Grams;

/// State of a component in a weigh-in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StepState {
    /// Not all of it is in.
    ToPour,
    /// As much is in as the target, within the tolerance.
    Done,
    /// More is in than the target.
    Over,
}

/// A component of a weigh-in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeighStep {
    /// Id of the component.
    pub component: Subject,
    /// Weight the recipe asks for, to the milligram.
    pub exact: Grams,
    /// Target weight at the scale.
    pub target: Grams,
    /// Weight poured.
    pub poured: Grams,
    /// Whether the weight poured was accepted as the target.
    pub accepted: bool,
    /// Its state.
    pub state: StepState,
}

impl WeighStep {
    /// Whether some of it is in, but not all.
    pub fn is_partly_in(&self) -> bool {
        self.state == StepState::ToPour && self.poured.is_positive()
    }

    /// Weight still to pour.
    pub fn to_go(&self) -> Grams {
        if self.state == StepState::ToPour { self.target.saturating_sub(self.poured).max_zero() } else { Grams::ZERO }
    }
}

/// A weigh-in.
#[derive(Clone, Debug, PartialEq)]
pub struct WeighIn {
    /// Weight of the whole recipe, as last resized.
    pub whole: Grams,
    /// Its components, in the order of the recipe.
    pub steps: Vec<WeighStep>,
    /// Weight of everything else in the pot: corrections and ink of other pots, minus what was taken out.
    pub other: Grams,
    /// Weight of everything in the pot.
    pub holds: Grams,
    /// The last pour, resize or acceptance, which undo reverses; `None` if there is none, or something else happened to
    /// the pot since.
    pub last: Option<Subject>,
}

impl WeighIn {
    /// Weight of everything that will be in the pot.
    pub fn total(&self) -> Grams {
        self.steps.iter().map(|step| step.target.max(step.poured)).sum::<Grams>().saturating_add(self.other)
    }

    /// Index of the next step; `None` if all are done.
    pub fn next(&self) -> Option<usize> {
        self.steps.iter().position(|step| step.state == StepState::ToPour)
    }

    /// Whether everything is in, and every over-pour was decided.
    pub fn is_done(&self) -> bool {
        self.steps.iter().all(|step| step.state == StepState::Done)
    }
}

/// How far a weight may be off its target: half a step of the scale, or a five-hundredth of the target if that is more.
/// Our own.
pub(crate) fn tolerance(target: Grams, step: Grams) -> Grams {
    Grams::from_milligrams((step.milligrams() / 2).max(target.milligrams() / 500))
}

fn state_of(target: Grams, poured: Grams, step: Grams) -> StepState {
    let tolerance = tolerance(target, step);
    if poured.saturating_sub(target) > tolerance {
        StepState::Over
    } else if target.saturating_sub(poured) > tolerance || (target.is_positive() && !poured.is_positive()) {
        StepState::ToPour
    } else {
        StepState::Done
    }
}

/// A pot with the size it is weighed to, if that was resized.
pub(crate) fn as_resized(shop: &Shop, pot: Subject) -> Option<Pot> {
    let mut vessel = shop.ink.pot(pot)?.clone();
    let revision = vessel.revision.and_then(|id| shop.ink.revision(id));
    if let Some((weighing, began)) = weigh_in(shop, pot).zip(vessel.size.zip(revision)) {
        let (size, revision) = began;
        if weighing.whole != size.whole(revision.parts) {
            vessel.size = Some(BatchSize::Whole(weighing.whole));
        }
    }
    Some(vessel)
}

/// Whether the weigh-in of a pot has events that were not undone.
pub(crate) fn is_weigh_in_started(shop: &Shop, pot: Subject) -> bool {
    let weighs = |fact: &InkFact| {
        matches!(
            fact,
            InkFact::Poured { step: PourStep::WeighIn, .. } | InkFact::Resized { .. } | InkFact::Accepted { .. }
        )
    };
    shop.ink.events_of(pot).into_iter().any(|(_, event)| !event.deleted && weighs(&event.fact))
}

/// The weigh-in of a pot by its revision; `None` if it has no revision or no size.
pub fn weigh_in(shop: &Shop, pot: Subject) -> Option<WeighIn> {
    let log = &shop.ink;
    let vessel = log.pot(pot)?;
    let parts = log.revision(vessel.revision?)?.parts;
    let (mut whole, mut poured, mut accepted) = (vessel.size?.whole(parts), Table::default(), Table::default());
    let mut last = None;
    for (id, event) in log.events_of(pot).into_iter().filter(|(_, event)| !event.deleted) {
        match &event.fact {
            InkFact::Poured { component, grams, step: PourStep::WeighIn, .. } => {
                let here: &mut Grams = poured.get_or_insert_default(*component);
                *here = here.saturating_add(*grams);
                last = Some(id);
            }
            InkFact::Resized { whole: now, .. } => (whole, last) = (*now, Some(id)),
            InkFact::Accepted { component, grams, .. } => {
                accepted.insert(*component, *grams);
                last = Some(id);
            }
            InkFact::SwatchRead { .. } => {}
            InkFact::ComponentSet(_)
            | InkFact::RecipeSet(_)
            | InkFact::PotSet(_)
            | InkFact::ScaleSet { .. }
            | InkFact::PrintSet(_)
            | InkFact::GarmentRead(_)
            | InkFact::RevisionSaved { .. }
            | InkFact::Poured { .. }
            | InkFact::Moved { .. }
            | InkFact::Wasted { .. }
            | InkFact::Used { .. }
            | InkFact::Matched { .. }
            | InkFact::Approved { .. }
            | InkFact::Delivered { .. }
            | InkFact::Counted { .. }
            | InkFact::DrawnDown(_) => last = None,
        }
    }
    let weights = weights(parts);
    let only: Vec<i64> = weights.iter().map(|(_, weight)| *weight).collect();
    let exact = apportion(&only, whole.milligrams());
    let scale = log.scale.step;
    let steps: Vec<WeighStep> = weights
        .iter()
        .zip(exact)
        .map(|((component, _), exact)| {
            let (exact, taken) = (Grams::from_milligrams(exact), accepted.get(component).copied());
            let poured = poured.get(component).copied().unwrap_or_default();
            // More of an accepted component is accepted as well.
            let target = taken.map_or_else(|| to_weigh(exact, scale), |taken| taken.max(poured));
            let state = state_of(target, poured, scale);
            WeighStep { component: *component, exact, target, poured, accepted: taken.is_some(), state }
        })
        .collect();
    let holds = pot_state(shop, pot).contents.total();
    let other = holds.saturating_sub(steps.iter().map(|step| step.poured).sum());
    Some(WeighIn { whole, steps, other, holds, last })
}
