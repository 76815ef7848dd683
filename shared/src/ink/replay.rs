//! What each pot holds, from the story of its pours.
//!
//! Nothing of it is stored: events are played in the order of the journal, so that a pour taken back, or one
//! that arrives late from another phone, changes everything after it as if it had always been so.

use super::{Contents, InkEvent, InkFact, PourStep};
use crate::journal::Subject;
use crate::quantity::Grams;
use crate::shop::Shop;
use crate::sorted::sort_by_key;
use crate::table::Table;

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
    /// The revision it holds as written; none after anything was added to it that is not of that revision.
    pub holds: Option<Subject>,
    /// The revision it began as, or was last saved as.
    pub base: Option<Subject>,
    /// How many times it was changed since.
    pub changes: u32,
    /// The event by which it matches; none after another change.
    pub matched: Option<Subject>,
    /// The event by which it is approved; none after another change.
    pub approved: Option<Subject>,
}

impl PotState {
    fn change(&mut self) {
        self.holds = None;
        self.changes += 1;
        (self.matched, self.approved) = (None, None);
    }

    fn take(&mut self, grams: Grams) -> Contents {
        let taken = self.contents.take(grams);
        self.short = self.short.plus(grams.minus(taken.total()).or_nothing());
        taken
    }
}

/// What is seen of the story as it is played: the pot, the event, and the pot after it.
pub(super) type Watch<'a> = &'a mut dyn FnMut(Subject, Subject, &PotState);

/// Plays the story of these pots, and of every pot that was poured into them. Events taken back are left out.
pub(super) fn replay(shop: &Shop, pots: &[Subject], watch: Watch<'_>) -> Table<PotState> {
    let log = &shop.ink;
    let mut states = Table::default();
    let mut ask: Vec<Subject> = pots.to_vec();
    let mut events: Vec<(Subject, &InkEvent)> = Vec::new();
    while let Some(pot) = ask.pop() {
        if states.contains_key(&pot) {
            continue;
        }
        let base = log.pot(pot).and_then(|pot| pot.revision);
        states.insert(pot, PotState { holds: base, base, ..PotState::default() });
        for (id, event) in log.events_of(pot).into_iter().filter(|(_, event)| !event.deleted) {
            if let InkFact::Moved { from, .. } = event.fact {
                ask.push(from);
            }
            events.push((id, event));
        }
    }
    sort_by_key(&mut events, |(id, event)| (event.rank, *id));
    events.dedup_by_key(|(id, _)| *id);
    for (id, event) in events {
        play(&mut states, id, &event.fact, watch);
    }
    states
}

fn play(states: &mut Table<PotState>, id: Subject, fact: &InkFact, watch: Watch<'_>) {
    if let InkFact::Moved { from, to, grams, .. } = fact {
        return pour_over(states, id, (*from, *to, *grams), watch);
    }
    let Some(pot) = pot_of(fact) else { return };
    let Some(state) = states.get_mut(&pot) else { return };
    match fact {
        InkFact::Poured { component, grams, step, .. } => {
            state.contents.pour(*component, *grams);
            state.came_in = state.came_in.plus(*grams);
            match step {
                PourStep::WeighIn => (state.matched, state.approved) = (None, None),
                PourStep::Correction => state.change(),
                PourStep::TopUp => {}
            }
        }
        InkFact::Accepted { .. } => state.change(),
        InkFact::Wasted { grams, .. } => {
            let taken = state.take(*grams).total();
            state.wasted = state.wasted.plus(taken);
        }
        InkFact::Used { grams, .. } => {
            let taken = state.take(*grams).total();
            state.used = state.used.plus(taken);
        }
        InkFact::Matched { .. } => state.matched = Some(id),
        InkFact::Approved { .. } => state.approved = Some(id),
        InkFact::RevisionSaved { .. } => {
            (state.holds, state.base, state.changes) = (Some(id), Some(id), 0);
        }
        _ => {}
    }
    watch(pot, id, state);
}

fn pour_over(
    states: &mut Table<PotState>,
    id: Subject,
    (from, to, grams): (Subject, Subject, Grams),
    watch: Watch<'_>,
) {
    let Some(source) = states.get_mut(&from).filter(|_| from != to) else { return };
    let taken = source.take(grams);
    source.moved_out = source.moved_out.plus(taken.total());
    let came = source.clone();
    watch(from, id, source);
    let Some(state) = states.get_mut(&to) else { return };
    if !state.contents.total().is_some() && state.base.is_none() {
        // A pot split off another is what that one is.
        (state.holds, state.base, state.changes) = (came.holds, came.base, came.changes);
        (state.matched, state.approved) = (came.matched, came.approved);
    } else if state.holds.is_none() || state.holds != came.holds {
        state.change();
    }
    state.contents.pour_all(&taken);
    state.came_in = state.came_in.plus(taken.total());
    watch(to, id, state);
}

/// The pot an event happened to.
pub(super) fn pot_of(fact: &InkFact) -> Option<Subject> {
    match fact {
        InkFact::Poured { pot, .. }
        | InkFact::Resized { pot, .. }
        | InkFact::Accepted { pot, .. }
        | InkFact::Wasted { pot, .. }
        | InkFact::Used { pot, .. }
        | InkFact::SwatchRead { pot, .. }
        | InkFact::Matched { pot, .. } => Some(*pot),
        InkFact::RevisionSaved { pot, .. } | InkFact::Approved { pot, .. } => *pot,
        _ => None,
    }
}

/// A pot as it stands now; an empty one where nothing is known of it.
pub fn pot_state(shop: &Shop, pot: Subject) -> PotState {
    replay(shop, &[pot], &mut |_, _, _| {}).remove(&pot).unwrap_or_default()
}
