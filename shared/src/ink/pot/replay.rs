//! What each pot holds, from the story of its pours.
//!
//! Nothing of it is stored: events are played in the order of the journal, so that a pour taken back, or one
//! that arrives late from another phone, changes everything after it as if it had always been so.

use super::contents::Contents;
use crate::collections::{Table, sort_by_key};
use crate::facts::{InkFact, Part, PourStep};
use crate::ids::Subject;
use crate::ink::InkEvent;
use crate::ink::recipe::percentages::weights;
use crate::shop::Shop;
use crate::units::Grams;

/// A pot at some moment.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct PotState {
    /// What is in it.
    pub contents: Contents,
    /// Everything that was poured into it, out of tubs and other pots.
    pub came_in: Grams,
    /// What was printed from it.
    pub used: Grams,
    /// What was thrown away.
    pub wasted: Grams,
    /// What went into other pots.
    pub moved_out: Grams,
    /// What was said to be taken out beyond what was in it: some pour was not noted.
    pub short: Grams,
    /// The revision it holds as written: nothing was added to it that is not of that revision, and what is in it
    /// is what that revision asks for, as near as the scale weighs.
    pub holds: Option<Subject>,
    /// The revision it began as, or was last saved as.
    pub base: Option<Subject>,
    /// How many times it was changed since.
    pub changes: u32,
    /// The event by which it matches; none after another change, nor where anything before it was taken back or told
    /// otherwise since: it was not this ink that was found to match.
    pub matched: Option<Subject>,
    /// The event by which it is approved: none after another change, nor where its revision was taken back, or is
    /// not what the pot holds.
    pub approved: Option<Subject>,
    /// The revision it is weighed by.
    weighed_by: Option<Subject>,
    /// The place among all facts of the last by which what was poured so far came to be as it is told now.
    told: u64,
    /// How many components were topped up.
    topped_up: u32,
    /// How many weighings of a whole recipe are in it, each rounded to the scale's steps.
    weighings: u32,
}

/// What taking out of a pot in whole milligrams may have cost or left of a component: our own.
const LOST: f64 = 5.0;

impl PotState {
    fn change(&mut self) {
        self.changes += 1;
        (self.matched, self.approved) = (None, None);
    }

    fn take(&mut self, grams: Grams) -> Contents {
        let taken = self.contents.take(grams);
        self.short = self.short.saturating_add(grams.saturating_sub(taken.total()).max_zero());
        taken
    }

    /// Whether what is in it is what these parts ask for, as near as a scale of these steps weighs; so is an empty
    /// pot. Of each component a step and what counts as on target may be too much or too little, once for each
    /// weighing of the whole recipe, and less of it once some was taken out; and a component that is not in at all is
    /// none that was rounded. Our own.
    pub(crate) fn is_of(&self, parts: &[Part], step: Grams) -> bool {
        let number = |grams: Grams| grams.milligrams() as f64;
        let (weights, total) = (weights(parts), number(self.contents.total()));
        let all: i64 = weights.iter().map(|(_, weight)| weight).sum();
        if total <= 0.0 || all <= 0 {
            return total <= 0.0;
        }
        let count = weights.len() as f64;
        let weighings = 1.0 + f64::from(self.weighings) + (f64::from(self.topped_up) / count).ceil();
        let left = total / number(self.came_in).max(total);
        let off = 1.5 * number(step) * weighings * left;
        let mut of_it = 0.0;
        for (component, weight) in &weights {
            let share = *weight as f64 / all as f64;
            let (here, asked) = (number(self.contents.of(*component)), share * total);
            // What others are off by changes the whole, and with it what is asked of this one.
            let near = off * (1.0 + share * count) + asked / 250.0 + LOST;
            if (here - asked).abs() > near || (here <= 0.0 && asked > LOST) {
                return false;
            }
            of_it += here;
        }
        total - of_it <= LOST
    }

    /// Works out which revision it holds, and whether the yes it has is to that.
    fn settle(&mut self, shop: &Shop) {
        let live = |id: Subject| shop.ink.revision(id).filter(|revision| !revision.event.deleted);
        let is = |id: Subject| live(id).is_some_and(|revision| self.is_of(revision.parts, shop.ink.scale.step));
        let holds = self.base.filter(|id| self.changes == 0 && is(*id));
        let approved = self.approved.filter(|yes| match shop.ink.event(*yes).map(|event| &event.fact) {
            Some(InkFact::Approved { revision, .. }) => is(*revision),
            _ => false,
        });
        (self.holds, self.approved) = (holds, approved);
    }
}

/// What is seen of the story as it is played: the pot, the event, and the pot after it.
pub(crate) type Watch<'a> = &'a mut dyn FnMut(Subject, Subject, &PotState);

/// Plays the story of these pots, and of every pot that was poured into them. Of an event taken back there remains
/// when that was.
pub(crate) fn replay(shop: &Shop, pots: &[Subject], watch: Watch<'_>) -> Table<PotState> {
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
            state.told = state.told.max(event.changed);
        }
        if !event.deleted {
            play(shop, &mut states, id, event, watch);
        }
    }
    states.iter_mut().for_each(|(_, state)| state.settle(shop));
    states
}

fn play(shop: &Shop, states: &mut Table<PotState>, id: Subject, event: &InkEvent, watch: Watch<'_>) {
    let fact = &event.fact;
    if let InkFact::Moved { from, to, grams, .. } = fact {
        return pour_over(shop, states, id, (*from, *to, *grams), watch);
    }
    let Some(pot) = pot_of(fact) else { return };
    let Some(state) = states.get_mut(&pot) else { return };
    match fact {
        InkFact::Poured { component, grams, step, .. } => {
            state.contents.pour(*component, *grams);
            state.came_in = state.came_in.saturating_add(*grams);
            match step {
                // What was saved before all was in is another recipe than what is weighed on.
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
        InkFact::Matched { .. } => state.matched = (state.told <= event.rank).then_some(id),
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

fn pour_over(
    shop: &Shop,
    states: &mut Table<PotState>,
    id: Subject,
    (from, to, grams): (Subject, Subject, Grams),
    watch: Watch<'_>,
) {
    let Some(source) = states.get_mut(&from).filter(|_| from != to) else { return };
    source.settle(shop);
    let came = source.clone();
    let taken = source.take(grams);
    source.moved_out = source.moved_out.saturating_add(taken.total());
    watch(from, id, source);
    let Some(state) = states.get_mut(&to) else { return };
    state.told = state.told.max(came.told);
    if !state.contents.total().is_positive() && state.base.is_none() {
        // A pot split off another is what that one is.
        (state.base, state.changes) = (came.base, came.changes);
        (state.matched, state.approved) = (came.matched, came.approved);
        (state.weighings, state.topped_up) = (came.weighings, came.topped_up);
    } else {
        state.settle(shop);
        if state.base.is_none() || state.base != came.base || state.changes > 0 || came.changes > 0 {
            state.change();
        } else if state.holds.is_none() || came.holds.is_none() {
            // Of one recipe, of which not all is in yet.
            (state.matched, state.approved) = (None, None);
        }
        state.weighings += 1 + came.weighings;
        state.topped_up += came.topped_up;
    }
    state.contents.pour_all(&taken);
    state.came_in = state.came_in.saturating_add(taken.total());
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

/// A pot as it stands now; an empty one where nothing is known of it.
pub fn pot_state(shop: &Shop, pot: Subject) -> PotState {
    replay(shop, &[pot], &mut |_, _, _| {}).remove(&pot).unwrap_or_default()
}
