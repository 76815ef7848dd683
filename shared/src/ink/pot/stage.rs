//! How far is a pot?

use super::replay::PotState;
use super::weigh_in::weigh_in;
use crate::ids::Subject;
use crate::shop::Shop;

/// How far a pot is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PotStage {
    /// It is being weighed by its recipe.
    Weighing,
    /// It is mixed, and not yet found to match.
    Mixed,
    /// It matches.
    Matched,
    /// The client said yes to it.
    Approved,
    /// Nothing is in it, and nothing is to be weighed.
    Empty,
    /// It is done with.
    Closed,
}

/// How far a pot is. A weigh-in is over once all of it is in, or anything else was done with the pot.
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
