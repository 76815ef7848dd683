//! View of one pot: what it holds, and the ledger of how that came about.

use super::label::{PotLabel, label_of};
use crate::facts::{ColourReading, InkFact, PourStep};
use crate::ids::{JobId, RunId, Subject};
use crate::ink::pot::replay::replay;
use crate::ink::recipe::revisions::{holds_as_written, in_order};
use crate::ink::recipe::rows::{component_name, pot_name};
use crate::ink::{
    InkCost, InkEvent, LimitBroken, PotStage, PotState, RevisionName, ink_cost, limits_broken, pot_stage,
    revision_name, weigh_in,
};
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::Grams;

/// Kind of a line in the ledger.
#[derive(Clone, Debug, PartialEq)]
pub enum LedgerKind {
    /// A component was poured in.
    Poured {
        /// The component.
        component: Subject,
        /// Its name.
        name: String,
        /// Purpose of the pour.
        step: PourStep,
    },
    /// The weigh-in was resized to this whole.
    Resized(Grams),
    /// The weight poured of a component was accepted.
    Accepted {
        /// The component.
        component: Subject,
        /// Its name.
        name: String,
    },
    /// Ink from another pot was added.
    MovedIn {
        /// Id of the pot.
        pot: Subject,
        /// Its name.
        name: String,
    },
    /// Ink was moved to another pot.
    MovedOut {
        /// The other pot.
        pot: Subject,
        /// Its name.
        name: String,
    },
    /// Ink was thrown away.
    Wasted,
    /// Ink was used for printing.
    Used {
        /// The run, if known.
        run: Option<RunId>,
        /// Number of pieces.
        pieces: u32,
    },
    /// A swatch was read.
    SwatchRead,
    /// It was found to match.
    Matched,
    /// The client approved it.
    Approved {
        /// The revision approved.
        revision: Option<RevisionName>,
        /// The client's name.
        client: String,
    },
    /// Its contents were saved as this revision.
    Saved(Option<RevisionName>),
}

/// A line of the ledger.
#[derive(Clone, Debug, PartialEq)]
pub struct LedgerLine {
    /// Its event: photos refer to it, deleting it undoes the line.
    pub event: Subject,
    /// Wall time.
    pub at: WallTime,
    /// Who recorded it, if known.
    pub by: Option<String>,
    /// What happened.
    pub what: LedgerKind,
    /// Weight recorded as added (above zero) or taken out (below zero).
    pub grams: Grams,
    /// The note.
    pub note: String,
    /// Reading of a swatch.
    pub reading: Option<ColourReading>,
    /// Number of photos of it.
    pub photos: u32,
    /// Whether it was undone; it then changed nothing.
    pub deleted: bool,
    /// Weight in the pot after it.
    pub total: Grams,
    /// Contents after it, in percent, in the order of the pot's rows.
    pub percentages: Vec<(Subject, f64)>,
}

/// A component in a pot.
#[derive(Clone, Debug, PartialEq)]
pub struct PotRow {
    /// Id of the component.
    pub component: Subject,
    /// Its name.
    pub name: String,
    /// Weight to add.
    pub grams: Grams,
    /// Percent of what is in the pot.
    pub percent: f64,
    /// Its percent in the revision the pot started as; `None` if the pot has no revision.
    pub began: Option<f64>,
}

/// A pot's card.
#[derive(Clone, Debug, PartialEq)]
pub struct PotCard {
    /// Id of the pot.
    pub id: Subject,
    /// Its label: name, revision, approval, date, job, percentages.
    pub label: PotLabel,
    /// Its recipe.
    pub recipe: Option<Subject>,
    /// The run it is for, and that run's job.
    pub run: Option<(RunId, Option<JobId>)>,
    /// How far it has come.
    pub stage: PotStage,
    /// Wall time since which it matches, if nothing was changed since.
    pub matched: Option<WallTime>,
    /// Whether it holds its revision as written: all of it weighed in and nothing else added.
    pub as_written: bool,
    /// Whether its weigh-in was started and is not complete.
    pub unfinished: bool,
    /// Its components.
    pub rows: Vec<PotRow>,
    /// Weight that the scale shows with the pot on it.
    pub on_scale: Grams,
    /// Weight that still fits; `None` if its capacity is unknown.
    pub headroom: Option<Grams>,
    /// Weight recorded as taken out beyond its contents: a pour was not recorded.
    pub shortfall: Grams,
    /// Weight used for printing.
    pub used: Grams,
    /// Weight wasted.
    pub wasted: Grams,
    /// Data sheet limits that it exceeds.
    pub limits: Vec<LimitBroken>,
    /// Price of its ink.
    pub cost: InkCost,
    /// Its history, oldest first, undone events included.
    pub ledger: Vec<LedgerLine>,
}

/// The card of a pot; `None` if there is no such pot.
pub fn pot_card(shop: &Shop, id: Subject) -> Option<PotCard> {
    let pot = shop.ink.pot(id)?;
    let mut after: Vec<(Subject, PotState)> = Vec::new();
    let mut watch = |of: Subject, event: Subject, state: &PotState| {
        if of == id {
            after.push((event, state.clone()));
        }
    };
    let state = replay(shop, &[id], &mut watch).remove(&id).unwrap_or_default();
    let label = label_of(shop, id, &state)?;
    let mut ledger = Vec::new();
    let mut before = PotState::default();
    for (event_id, event) in shop.ink.events_of(id) {
        let found = after.iter().position(|(event, _)| *event == event_id);
        if let Some(at) = found.filter(|_| !event.deleted) {
            before = after.swap_remove(at).1;
        }
        ledger.extend(line(shop, id, event_id, event, &before));
    }
    let began = state.base.and_then(|base| shop.ink.revision(base));
    let began = began.map(|revision| crate::ink::percentages(revision.parts));
    let rows = label.parts.iter().map(|part| PotRow {
        component: part.component,
        name: part.name.clone(),
        grams: state.contents.of(part.component),
        percent: part.percent,
        began: began.as_ref().map(|began| {
            began.iter().find(|(component, _)| *component == part.component).map_or(0.0, |(_, percent)| *percent)
        }),
    });
    let percent = state.contents.percentages();
    let total = state.contents.total();
    Some(PotCard {
        id,
        recipe: crate::ink::batch::needs::recipe_of(shop, &state),
        run: pot.run.map(|run| (run, shop.job_of(run).map(|(job, _)| job))),
        stage: pot_stage(shop, id, &state),
        matched: state.matched.and_then(|event| shop.ink.event(event)).map(|event| event.at),
        as_written: holds_as_written(shop, id, &state).is_some(),
        unfinished: weigh_in(shop, id).is_some_and(|weigh_in| !weigh_in.is_done()),
        rows: rows.collect(),
        on_scale: total.saturating_add(pot.tare.unwrap_or_default()),
        headroom: pot.capacity.map(|capacity| capacity.saturating_sub(total)),
        shortfall: state.shortfall,
        used: state.used,
        wasted: state.wasted,
        limits: limits_broken(shop, &percent),
        cost: ink_cost(shop, &percent),
        label,
        ledger,
    })
}

fn line(shop: &Shop, pot: Subject, id: Subject, event: &InkEvent, after: &PotState) -> Option<LedgerLine> {
    let out = |grams: &Grams| Grams::ZERO.saturating_sub(*grams);
    let name = |component: &Subject| component_name(shop, *component);
    let (what, grams) = match &event.fact {
        InkFact::Poured { component, grams, step, .. } => {
            (LedgerKind::Poured { component: *component, name: name(component), step: *step }, *grams)
        }
        InkFact::Accepted { component, .. } => {
            (LedgerKind::Accepted { component: *component, name: name(component) }, Grams::ZERO)
        }
        InkFact::Resized { whole, .. } => (LedgerKind::Resized(*whole), Grams::ZERO),
        InkFact::Moved { from, to, grams, .. } if *to == pot => {
            (LedgerKind::MovedIn { pot: *from, name: pot_name(shop, *from) }, *grams)
        }
        InkFact::Moved { to, grams, .. } => (LedgerKind::MovedOut { pot: *to, name: pot_name(shop, *to) }, out(grams)),
        InkFact::Wasted { grams, .. } => (LedgerKind::Wasted, out(grams)),
        InkFact::Used { run, grams, pieces, .. } => (LedgerKind::Used { run: *run, pieces: *pieces }, out(grams)),
        InkFact::SwatchRead { .. } => (LedgerKind::SwatchRead, Grams::ZERO),
        InkFact::Approved { revision, client, .. } => {
            let revision = revision_name(shop, *revision);
            (LedgerKind::Approved { revision, client: client.clone() }, Grams::ZERO)
        }
        InkFact::RevisionSaved { .. } => (LedgerKind::Saved(revision_name(shop, id)), Grams::ZERO),
        InkFact::Matched { .. } => (LedgerKind::Matched, Grams::ZERO),
        // Nothing that happens to a pot.
        InkFact::ComponentSet(_)
        | InkFact::RecipeSet(_)
        | InkFact::PotSet(_)
        | InkFact::ScaleSet { .. }
        | InkFact::PrintSet(_)
        | InkFact::GarmentRead(_)
        | InkFact::Delivered { .. }
        | InkFact::Counted { .. }
        | InkFact::DrawnDown(_) => return None,
    };
    let (note, reading) = match &event.fact {
        InkFact::Poured { note, reading, .. } => (note.clone(), *reading),
        InkFact::SwatchRead { note, reading, .. } => (note.clone(), Some(*reading)),
        InkFact::Matched { reading, .. } | InkFact::Approved { reading, .. } => (String::new(), *reading),
        InkFact::Wasted { note, .. } | InkFact::RevisionSaved { note, .. } => (note.clone(), None),
        InkFact::ComponentSet(_)
        | InkFact::RecipeSet(_)
        | InkFact::PotSet(_)
        | InkFact::ScaleSet { .. }
        | InkFact::PrintSet(_)
        | InkFact::GarmentRead(_)
        | InkFact::Resized { .. }
        | InkFact::Accepted { .. }
        | InkFact::Moved { .. }
        | InkFact::Used { .. }
        | InkFact::Delivered { .. }
        | InkFact::Counted { .. }
        | InkFact::DrawnDown(_) => (String::new(), None),
    };
    Some(LedgerLine {
        event: id,
        at: event.at,
        by: event.fact.by().map(str::to_owned),
        what,
        grams,
        note,
        reading,
        photos: shop.photos.of(id).len() as u32,
        deleted: event.deleted,
        total: after.contents.total(),
        percentages: crate::ink::recipe::percentages::percent_of(&in_order(shop, &after.contents, after.base)),
    })
}
