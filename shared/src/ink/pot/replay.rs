//! What each pot holds, replayed from its events.
//!
//! Nothing of it is stored: events are replayed in the order of the journal, so that a pour that was undone, or one
//! that arrives late from another phone, changes everything after it as if it had always been so.

use super::contents::Contents;
use crate::collections::{Table, sort_by_key};
use crate::facts::{InkFact, Part, PourStep};
use crate::ids::Subject;
use crate::ink::InkEvent;
use crate::ink::recipe::percentages::weights;
use crate::shop::Shop;
use crate::units::Grams;

/// State of a pot at one moment.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct PotState {
    /// Its contents.
    pub contents: Contents,
    /// Weight poured into it from tubs and other pots.
    pub total_in: Grams,
    /// Weight used for printing.
    pub used: Grams,
    /// Weight wasted.
    pub wasted: Grams,
    /// Weight moved to other pots.
    pub moved_out: Grams,
    /// Weight recorded as taken out beyond its contents: a pour was not recorded.
    pub shortfall: Grams,
    /// The revision it holds as written: nothing else was added to it, and its contents are what that revision asks
    /// for, within the accuracy of the scale.
    pub holds: Option<Subject>,
    /// The revision it started as, or was last saved as.
    pub base: Option<Subject>,
    /// Number of changes since.
    pub changes: u32,
    /// The event that found it to match; `None` after another change, or if anything before it was undone or corrected
    /// since: that was not this ink.
    pub matched: Option<Subject>,
    /// The event that approved it; `None` after another change, or if its revision was undone or is not what the pot
    /// holds.
    pub approved: Option<Subject>,
    /// The revision it is weighed by.
    weighed_by: Option<Subject>,
    /// Rank of the last fact that made what was poured so far what it is recorded as now.
    content_rank: u64,
    /// Number of components topped up.
    topped_up: u32,
    /// Number of weighings of a whole recipe in it, each rounded to the scale's steps.
    weighings: u32,
}

/// Milligrams of a component that may be lost or left over by taking out whole milligrams: our own.
const ROUNDING_LOSS: f64 = 5.0;

impl PotState {
    fn change(&mut self) {
        self.changes += 1;
        (self.matched, self.approved) = (None, None);
    }

    fn take(&mut self, grams: Grams) -> Contents {
        let taken = self.contents.take(grams);
        self.shortfall = self.shortfall.saturating_add(grams.saturating_sub(taken.total()).max_zero());
        taken
    }

    /// Whether its contents are what these parts ask for, within the accuracy of a scale with these steps; true for an
    /// empty pot. Each component may be off by one step plus the tolerance of a target, once per weighing of the whole
    /// recipe, and by proportionally less after some was taken out. A component that is missing altogether does not
    /// count as rounded. Our own.
    pub(crate) fn matches_parts(&self, parts: &[Part], step: Grams) -> bool {
        let number = |grams: Grams| grams.milligrams() as f64;
        let (weights, total) = (weights(parts), number(self.contents.total()));
        let all: i64 = weights.iter().map(|(_, weight)| weight).sum();
        if total <= 0.0 || all <= 0 {
            return total <= 0.0;
        }
        let count = weights.len() as f64;
        let weighings = 1.0 + f64::from(self.weighings) + (f64::from(self.topped_up) / count).ceil();
        let left = total / number(self.total_in).max(total);
        let off = 1.5 * number(step) * weighings * left;
        let mut of_it = 0.0;
        for (component, weight) in &weights {
            let share = *weight as f64 / all as f64;
            let (here, asked) = (number(self.contents.of(*component)), share * total);
            // Errors of other components change the whole, and so the target of this one.
            let near = off * (1.0 + share * count) + asked / 250.0 + ROUNDING_LOSS;
            if (here - asked).abs() > near || (here <= 0.0 && asked > ROUNDING_LOSS) {
                return false;
            }
            of_it += here;
        }
        total - of_it <= ROUNDING_LOSS
    }

    /// Determines which revision it holds, and whether its approval is of that one.
    fn resolve_revision(&mut self, shop: &Shop) {
        let live = |id: Subject| shop.ink.revision(id).filter(|revision| !revision.event.deleted);
        let is = |id: Subject| live(id).is_some_and(|revision| self.matches_parts(revision.parts, shop.ink.scale.step));
        let holds = self.base.filter(|id| self.changes == 0 && is(*id));
        let approved = self.approved.filter(|yes| match shop.ink.event(*yes).map(|event| &event.fact) {
            Some(InkFact::Approved { revision, .. }) => is(*revision),
            _ => false,
        });
        (self.holds, self.approved) = (holds, approved);
    }
}

/// Called after each event of the replay with the pot, the event, and the pot's state after it.
pub(crate) type ReplayObserver<'a> = &'a mut dyn FnMut(Subject, Subject, &PotState);

/// Replays the events of these pots, and of every pot that was poured into them. Undone events are skipped;
/// they only mark when the contents last changed.
pub(crate) fn replay(shop: &Shop, pots: &[Subject], watch: ReplayObserver<'_>) -> Table<PotState> {
    let log = &shop.ink;
    let mut states = Table::default();
    let mut ask: Vec<Subject> = pots.to_vec();
    let mut events: Vec<(Subject, &InkEvent)> = Vec::new();
    while let Some(pot) = ask.pop() {
        if states.contains_key(&pot) {
            continue;
        }
        let base = log.pot(pot).and_then(|pot| pot.revision);
        states.insert(pot, PotState { base, weighed_by: base, ..PotState::default() });
        for (id, event) in log.events_of(pot) {
            if let InkFact::Moved { from, .. } = event.fact
                && !event.deleted
            {
                ask.push(from);
            }
            events.push((id, event));
        }
    }
    sort_by_key(&mut events, |(id, event)| (event.rank, *id));
    events.dedup_by_key(|(id, _)| *id);
    for (id, event) in events {
        if let Some(state) = event.fact.pours_into().and_then(|pot| states.get_mut(&pot)) {
            state.content_rank = state.content_rank.max(event.effective_rank);
        }
        if !event.deleted {
            apply_event(shop, &mut states, id, event, watch);
        }
    }
    for pot in states.keys().copied().collect::<Vec<Subject>>() {
        states.get_mut(&pot).into_iter().for_each(|state| state.resolve_revision(shop));
    }
    states
}

fn apply_event(shop: &Shop, states: &mut Table<PotState>, id: Subject, event: &InkEvent, watch: ReplayObserver<'_>) {
    let fact = &event.fact;
    if let InkFact::Moved { from, to, grams, .. } = fact {
        return apply_move(shop, states, id, (*from, *to, *grams), watch);
    }
    let Some(pot) = pot_of(fact) else { return };
    let Some(state) = states.get_mut(&pot) else { return };
    match fact {
        InkFact::Poured { component, grams, step, .. } => {
            state.contents.pour(*component, *grams);
            state.total_in = state.total_in.saturating_add(*grams);
            match step {
                // What was saved before everything was in is another recipe than the one being weighed.
                PourStep::WeighIn if state.base == state.weighed_by => (state.matched, state.approved) = (None, None),
                PourStep::WeighIn | PourStep::Correction => state.change(),
                PourStep::TopUp => state.topped_up += 1,
            }
        }
        InkFact::Accepted { .. } => state.change(),
        InkFact::Wasted { grams, .. } => {
            let taken = state.take(*grams).total();
            state.wasted = state.wasted.saturating_add(taken);
        }
        InkFact::Used { grams, .. } => {
            let taken = state.take(*grams).total();
            state.used = state.used.saturating_add(taken);
        }
        InkFact::Matched { .. } => state.matched = (state.content_rank <= event.rank).then_some(id),
        InkFact::Approved { .. } => state.approved = Some(id),
        InkFact::RevisionSaved { .. } => {
            (state.base, state.changes) = (Some(id), 0);
        }
        InkFact::Resized { .. } | InkFact::SwatchRead { .. } => {}
        // Poured over above, or nothing that happens to a pot.
        InkFact::Moved { .. }
        | InkFact::ComponentSet(_)
        | InkFact::RecipeSet(_)
        | InkFact::PotSet(_)
        | InkFact::ScaleSet { .. }
        | InkFact::PrintSet(_)
        | InkFact::GarmentRead(_)
        | InkFact::Delivered { .. }
        | InkFact::Counted { .. }
        | InkFact::DrawnDown(_) => return,
    }
    watch(pot, id, state);
}

fn apply_move(
    shop: &Shop,
    states: &mut Table<PotState>,
    id: Subject,
    (from, to, grams): (Subject, Subject, Grams),
    watch: ReplayObserver<'_>,
) {
    let Some(source) = states.get_mut(&from).filter(|_| from != to) else { return };
    source.resolve_revision(shop);
    let came = source.clone();
    let taken = source.take(grams);
    source.moved_out = source.moved_out.saturating_add(taken.total());
    watch(from, id, source);
    let Some(state) = states.get_mut(&to) else { return };
    state.content_rank = state.content_rank.max(came.content_rank);
    if !state.contents.total().is_positive() && state.base.is_none() {
        // A pot split off another one takes over its state.
        (state.base, state.changes) = (came.base, came.changes);
        (state.matched, state.approved) = (came.matched, came.approved);
        (state.weighings, state.topped_up) = (came.weighings, came.topped_up);
    } else {
        state.resolve_revision(shop);
        if state.base.is_none() || state.base != came.base || state.changes > 0 || came.changes > 0 {
            state.change();
        } else if state.holds.is_none() || came.holds.is_none() {
            // The same recipe, but one of the pots is incomplete.
            (state.matched, state.approved) = (None, None);
        }
        state.weighings += 1 + came.weighings;
        state.topped_up += came.topped_up;
    }
    state.contents.pour_all(&taken);
    state.total_in = state.total_in.saturating_add(taken.total());
    watch(to, id, state);
}

/// The pot an event happened to.
pub(crate) fn pot_of(fact: &InkFact) -> Option<Subject> {
    match fact {
        InkFact::Poured { pot, .. }
        | InkFact::Resized { pot, .. }
        | InkFact::Accepted { pot, .. }
        | InkFact::Wasted { pot, .. }
        | InkFact::Used { pot, .. }
        | InkFact::SwatchRead { pot, .. }
        | InkFact::Matched { pot, .. } => Some(*pot),
        InkFact::RevisionSaved { pot, .. } | InkFact::Approved { pot, .. } => *pot,
        InkFact::Moved { .. }
        | InkFact::ComponentSet(_)
        | InkFact::RecipeSet(_)
        | InkFact::PotSet(_)
        | InkFact::ScaleSet { .. }
        | InkFact::PrintSet(_)
        | InkFact::GarmentRead(_)
        | InkFact::Delivered { .. }
        | InkFact::Counted { .. }
        | InkFact::DrawnDown(_) => None,
    }
}

/// Current state of a pot; empty if nothing is known of it.
pub fn pot_state(shop: &Shop, pot: Subject) -> PotState {
    replay(shop, &[pot], &mut |_, _, _| {}).remove(&pot).unwrap_or_default()
}
