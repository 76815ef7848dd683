//! Ink components, recipes, pots and events, as the facts leave them.

use super::pot_lists::{ListedPot, PotLists};
use super::stock::{Change, Stock, change_by, poured};
use super::{Component, InkEvent, Pot, Recipe};
use crate::codec::Encode;
use crate::collections::{Table, sort_by_key};
use crate::deletion::{Deletable, DeleteById, Deletion, deletable};
use crate::facts::{ColourReading, InkFact, Part, PrintUse};
use crate::ids::{LotId, RunId, Subject};
use crate::time::{LeftOut, WallTime};
use crate::units::Grams;

/// The scale ink is weighed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub struct Scale {
    /// Its smallest step.
    pub step: Grams,
    /// Its capacity, including the vessel.
    pub most: Option<Grams>,
}

impl Default for Scale {
    /// Steps of 0.1 g, until the shop has set its own: common practice, no source.
    fn default() -> Self {
        Self { step: Grams::from_milligrams(100), most: None }
    }
}

/// A revision of a recipe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Revision<'a> {
    /// Id of the revision.
    pub id: Subject,
    /// The recipe it belongs to.
    pub recipe: Subject,
    /// Its number when it was saved.
    pub number: u16,
    /// Its parts.
    pub parts: &'a [Part],
    /// The revision it was derived from.
    pub parent: Option<Subject>,
    /// The pot whose contents it records.
    pub pot: Option<Subject>,
    /// Why it differs from its parent.
    pub note: &'a str,
    /// The event that saved it.
    pub event: &'a InkEvent,
}

/// Components, recipes, pots, and all their events.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct InkLog {
    components: Table<Component>,
    recipes: Table<Recipe>,
    pots: Table<Pot>,
    pot_lists: PotLists,
    events: Table<InkEvent>,
    /// The ids of the events about each thing, in the order in which they were first recorded.
    about: Table<Vec<Subject>>,
    /// What is left of each component that has events about its stock.
    stocks: Table<Stock>,
    prints: Table<PrintUse>,
    /// The colours read of lots' garments.
    garments: Table<ColourReading>,
    /// The events of ink used for printing, in the order in which they were first recorded.
    used: Vec<Subject>,
    /// The scale ink is weighed on.
    pub scale: Scale,
}

impl InkLog {
    /// A component, deleted or not.
    pub fn component(&self, id: Subject) -> Option<&Component> {
        self.components.get(&id)
    }

    /// The components that were not deleted.
    pub fn components(&self) -> impl Iterator<Item = (Subject, &Component)> {
        self.components.iter().filter(|(_, component)| !component.deleted).map(|(id, component)| (*id, component))
    }

    /// A recipe, deleted or not.
    pub fn recipe(&self, id: Subject) -> Option<&Recipe> {
        self.recipes.get(&id)
    }

    /// The recipes that were not deleted.
    pub fn recipes(&self) -> impl Iterator<Item = (Subject, &Recipe)> {
        self.recipes.iter().filter(|(_, recipe)| !recipe.deleted).map(|(id, recipe)| (*id, recipe))
    }

    /// A pot, deleted or not.
    pub fn pot(&self, id: Subject) -> Option<&Pot> {
        self.pots.get(&id)
    }

    /// The pots that are neither closed nor deleted, in the order of their ids.
    pub(crate) fn open_pots(&self) -> impl Iterator<Item = Subject> {
        self.pot_lists.open.keys().copied()
    }

    /// The pots that were not deleted, closed ones included.
    pub fn pots(&self) -> impl Iterator<Item = (Subject, &Pot)> {
        self.pots.iter().filter(|(_, pot)| !pot.deleted).map(|(id, pot)| (*id, pot))
    }

    /// The pot of a recipe made last among those that have a size and were not deleted.
    pub(crate) fn last_sized_pot(&self, recipe: Subject) -> Option<&Pot> {
        let of_it = |id: Subject| self.revision(id).is_some_and(|revision| revision.recipe == recipe);
        let mut last: Option<(WallTime, Subject)> = None;
        for (revision, _) in self.events_of(recipe).into_iter().filter(|(id, _)| of_it(*id)) {
            let newest = self.pot_lists.sized.get(revision).map_or(Ok(None), |pots| pots.newest(|_| true));
            let found = newest.unwrap_or_else(|LeftOut| {
                self.latest_pot(|pot| pot.size.is_some() && pot.revision == Some(revision)).map(|(id, _)| id)
            });
            last = last.max(found.and_then(|id| Some((self.pots.get(&id)?.created, id))));
        }
        self.pots.get(&last?.1)
    }

    /// The pot made last among those that have a capacity and were not deleted.
    pub(crate) fn last_vessel(&self) -> Option<&Pot> {
        match self.pot_lists.vessels.newest(|_| true) {
            Ok(id) => self.pots.get(&id?),
            Err(LeftOut) => self.latest_pot(|pot| pot.capacity.is_some()).map(|(_, pot)| pot),
        }
    }

    /// The pot that is meant and was made last, found by going through all that were not deleted.
    fn latest_pot(&self, is_meant: impl Fn(&Pot) -> bool) -> Option<(Subject, &Pot)> {
        self.pots().filter(|(_, pot)| is_meant(pot)).max_by_key(|(id, pot)| (pot.created, *id))
    }

    /// Number of pots, events and what belongs to them that were decoded or changed. Tests count them.
    pub(crate) fn rows_in_memory(&self) -> usize {
        let things = self.components.rows_in_memory() + self.recipes.rows_in_memory() + self.pots.rows_in_memory();
        let runs = self.prints.rows_in_memory() + self.garments.rows_in_memory();
        let events = self.events.rows_in_memory() + self.about.rows_in_memory() + self.stocks.rows_in_memory();
        things + runs + self.pot_lists.rows_in_memory() + events
    }

    /// How much ink a print of a run takes, if it was calculated.
    pub fn print(&self, run: RunId) -> Option<&PrintUse> {
        self.prints.get(&run)
    }

    /// The colour of a lot's garments, if it was read.
    pub fn garment(&self, lot: LotId) -> Option<ColourReading> {
        self.garments.get(&lot).copied()
    }

    /// The lots whose garments' colour was read, deleted lots included.
    pub fn garments(&self) -> impl Iterator<Item = (LotId, ColourReading)> {
        self.garments.iter().map(|(id, reading)| (*id, *reading))
    }

    /// An event, undone or not.
    pub fn event(&self, id: Subject) -> Option<&InkEvent> {
        self.events.get(&id)
    }

    /// Every event about a component, recipe, revision, pot or run, undone ones included, in the order of the journal.
    pub fn events_of(&self, about: Subject) -> Vec<(Subject, &InkEvent)> {
        let ids = self.about.get(&about).into_iter().flatten();
        let mut events: Vec<_> = ids.filter_map(|id| Some((*id, self.events.get(id)?))).collect();
        sort_by_key(&mut events, |(id, event)| (event.rank, *id));
        events
    }

    /// What is left of a component.
    pub(crate) fn stock(&self, component: Subject) -> Stock {
        self.stocks.get(&component).copied().unwrap_or_default()
    }

    /// The latest events of ink used for printing, at most `most`, latest first, without undone ones.
    pub(crate) fn last_used(&self, most: usize) -> impl Iterator<Item = &InkEvent> {
        let live = self.used.iter().rev().filter_map(|id| self.events.get(id)).filter(|event| !event.deleted);
        live.take(most)
    }

    /// A revision, undone or not.
    pub fn revision(&self, id: Subject) -> Option<Revision<'_>> {
        let event = self.events.get(&id)?;
        let InkFact::RevisionSaved { recipe, number, parts, parent, pot, note, .. } = &event.fact else { return None };
        Some(Revision { id, recipe: *recipe, number: *number, parts, parent: *parent, pot: *pot, note, event })
    }

    /// Folds a fact in.
    pub(crate) fn apply(&mut self, id: Subject, at: WallTime, rank: u64, fact: &InkFact) {
        match fact {
            InkFact::ComponentSet(fields) => {
                let component = self.components.get_or_insert_default(id);
                component.created.set_once(at);
                fields.iter().for_each(|field| component.set(field));
            }
            InkFact::RecipeSet(fields) => {
                let recipe = self.recipes.get_or_insert_default(id);
                recipe.created.set_once(at);
                recipe.modified = at;
                fields.iter().for_each(|field| recipe.set(field));
            }
            InkFact::PotSet(fields) => {
                let mut before = None;
                let pot = self.pots.get_or_insert_with(id, || {
                    before = Some(ListedPot::default());
                    Pot::default()
                });
                let before = before.unwrap_or_else(|| ListedPot::of(pot));
                pot.created.set_once(at);
                fields.iter().for_each(|field| pot.set(field));
                self.pot_lists.pot_changed(id, before, ListedPot::of(pot));
            }
            InkFact::ScaleSet { step, most } => self.scale = Scale { step: *step, most: *most },
            InkFact::PrintSet(Some(print)) => self.prints.insert(id, *print),
            InkFact::PrintSet(None) => drop(self.prints.remove(&id)),
            InkFact::GarmentRead(Some(reading)) => self.garments.insert(id, *reading),
            InkFact::GarmentRead(None) => drop(self.garments.remove(&id)),
            InkFact::RevisionSaved { .. }
            | InkFact::Poured { .. }
            | InkFact::Resized { .. }
            | InkFact::Accepted { .. }
            | InkFact::Moved { .. }
            | InkFact::Wasted { .. }
            | InkFact::Used { .. }
            | InkFact::SwatchRead { .. }
            | InkFact::Matched { .. }
            | InkFact::Approved { .. }
            | InkFact::Delivered { .. }
            | InkFact::Counted { .. }
            | InkFact::DrawnDown(_) => self.record_event(id, at, rank, fact),
        }
    }

    fn delete_pot(&mut self, id: Subject, deletion: Deletion) -> bool {
        let Some(pot) = self.pots.get_mut(&id) else { return false };
        let before = ListedPot::of(pot);
        pot.mark(deletion);
        self.pot_lists.pot_changed(id, before, ListedPot::of(pot));
        true
    }

    fn record_event(&mut self, id: Subject, at: WallTime, rank: u64, fact: &InkFact) {
        let things = |fact: &InkFact| fact.touches().into_iter().flatten().flatten();
        match self.events.get_mut(&id) {
            // Recorded again it is a correction, and keeps its rank.
            Some(event) => {
                for thing in things(&event.fact).filter(|thing| !things(fact).any(|now| now == *thing)) {
                    if let Some(ids) = self.about.get_mut(&thing) {
                        ids.retain(|other| *other != id);
                    }
                }
                for thing in things(fact).filter(|thing| !things(&event.fact).any(|was| was == *thing)) {
                    push_once(self.about.get_or_insert_default(thing), id);
                }
                if !event.fact.pours_same_as(fact) {
                    (event.content_rank, event.effective_rank) = (rank, rank);
                }
                let (rank, was) = (event.rank, change_by(event));
                event.fact = fact.clone();
                let is = change_by(event);
                self.change_stock(rank, was, is);
            }
            None => {
                if matches!(fact, InkFact::Used { .. }) {
                    self.used.push(id);
                }
                things(fact).for_each(|thing| push_once(self.about.get_or_insert_default(thing), id));
                let fact = fact.clone();
                let event = InkEvent { fact, at, rank, deleted: false, effective_rank: rank, content_rank: rank };
                if let Some((component, _)) = change_by(&event) {
                    self.stocks.get_or_insert_default(component).add(component, &event);
                }
                self.events.insert(id, event);
            }
        }
    }

    fn delete_event(&mut self, id: Subject, deletion: Deletion) -> bool {
        let Some(event) = self.events.get_mut(&id) else { return false };
        let (rank, was) = (event.rank, change_by(event));
        event.mark(deletion);
        let is = change_by(event);
        self.change_stock(rank, was, is);
        true
    }

    /// Says that an event of this rank changes the stock of components in another way than before. A pour is one of
    /// thousands; all of them are gone through only for a weighing or a delivery.
    fn change_stock(&mut self, rank: u64, was: Option<(Subject, Change)>, is: Option<(Subject, Change)>) {
        if was == is {
            return;
        }
        let other = is.filter(|(component, _)| was.is_none_or(|(before, _)| before != *component));
        for (component, _) in was.into_iter().chain(other) {
            if let (Some(before), Some(after)) = (poured(was, component), poured(is, component)) {
                self.stocks.get_or_insert_default(component).change_pour(rank, before, after);
                continue;
            }
            let mut stock = Stock::default();
            for (_, event) in self.events_of(component) {
                stock.add(component, event);
            }
            self.stocks.insert(component, stock);
        }
    }
}

deletable!(Component, Recipe, Pot);

impl DeleteById for InkLog {
    fn delete(&mut self, id: Subject, deletion: Deletion) -> bool {
        self.components.delete(id, deletion)
            || self.recipes.delete(id, deletion)
            || self.delete_pot(id, deletion)
            || self.delete_event(id, deletion)
    }
}

/// A fact may name one thing twice (a pot poured into itself): its event is listed there once.
fn push_once(ids: &mut Vec<Subject>, id: Subject) {
    if ids.last() != Some(&id) {
        ids.push(id);
    }
}
