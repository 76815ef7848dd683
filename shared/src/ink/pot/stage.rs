//! How far a pot has come, from weighing to closed.

use super::replay::PotState;
use super::weigh_in::weigh_in;
use crate::ids::Subject;
use crate::shop::Shop;

/// How far a pot has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PotStage {
    /// It is being weighed by its recipe.
    Weighing,
    /// It is mixed, but not found to match yet.
    Mixed,
    /// It was found to match.
    Matched,
    /// The client approved it.
    Approved,
    /// It is empty, and nothing is to be weighed.
    Empty,
    /// It is closed.
    Closed,
}

/// How far a pot has come. A weigh-in ends once all of it is in, or anything else was done with the pot.
pub fn pot_stage(shop: &Shop, id: Subject, state: &PotState) -> PotStage {
    let Some(pot) = shop.ink.pot(id) else { return PotStage::Empty };
    let taken = state.used.saturating_add(state.wasted).saturating_add(state.moved_out);
    let untouched = !taken.is_positive() && state.matched.is_none() && state.approved.is_none();
    if pot.closed {
        PotStage::Closed
    } else if untouched
        && weigh_in(shop, id).is_some_and(|weigh_in| !weigh_in.is_done() && !weigh_in.other.is_positive())
    {
        PotStage::Weighing
    } else if !state.contents.total().is_positive() {
        PotStage::Empty
    } else if state.approved.is_some() {
        PotStage::Approved
    } else if state.matched.is_some() {
        PotStage::Matched
    } else {
        PotStage::Mixed
    }
}
