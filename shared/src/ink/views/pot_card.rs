//! One pot: what it holds, and the ledger of how it came to.

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
use crate::units::Grams;

/// What a line of the ledger tells.
#[derive(Clone, Debug, PartialEq)]
pub enum LedgerWhat {
    /// A component went in.
    Poured {
        /// Which.
        component: Subject,
        /// Its name.
        name: String,
        /// What for.
        step: PourStep,
    },
    /// The weigh-in went on to this whole.
    Resized(Grams),
    /// What is in of a component was accepted.
    Accepted {
        /// Which.
        component: Subject,
        /// Its name.
        name: String,
    },
    /// Ink of another pot went in.
    MovedIn {
        /// Which pot.
        pot: Subject,
        /// Its name.
        name: String,
    },
    /// Ink went into another pot.
    MovedOut {
        /// Which pot.
        pot: Subject,
        /// Its name.
        name: String,
    },
    /// Ink was thrown away.
    Wasted,
    /// Ink was printed with.
    Used {
        /// On which run.
        run: Option<RunId>,
        /// On how many pieces.
        pieces: u32,
    },
    /// A swatch was read.
    SwatchRead,
    /// It matches.
    Matched,
    /// The client said yes.
    Approved {
        /// To this revision.
        revision: Option<RevisionName>,
        /// Who.
        client: String,
    },
    /// What it held was saved as a revision.
    Saved(Option<RevisionName>),
}

/// A line of the ledger.
#[derive(Clone, Debug, PartialEq)]
pub struct LedgerLine {
    /// Its event: photos are of it, deleting it takes it back.
    pub event: Subject,
    /// Wall time.
    pub at: u64,
    /// By whom.
    pub by: Option<String>,
    /// What happened.
    pub what: LedgerWhat,
    /// What it was told to put in (above nothing) or take out (below).
    pub grams: Grams,
    /// Why, in words.
    pub note: String,
    /// What a swatch read.
    pub reading: Option<ColourReading>,
    /// How many photos there are of it.
    pub photos: u32,
    /// Whether it was taken back; it then changed nothing.
    pub deleted: bool,
    /// What the pot held after it.
    pub total: Grams,
    /// The recipe it held after it, in percent, in the order of the pot's rows.
    pub percentages: Vec<(Subject, f64)>,
}

/// What is in a pot of one component.
#[derive(Clone, Debug, PartialEq)]
pub struct PotRow {
    /// Which.
    pub component: Subject,
    /// Its name.
    pub name: String,
    /// How much.
    pub grams: Grams,
    /// Percent of what is in the pot.
    pub percent: f64,
    /// Percent in the revision it began as; none where it is of none.
    pub began: Option<f64>,
}

/// A pot's card.
#[derive(Clone, Debug, PartialEq)]
pub struct PotCard {
    /// Which.
    pub id: Subject,
    /// What is written on it: name, revision, yes, date, job, percentages.
    pub label: PotLabel,
    /// Its recipe.
    pub recipe: Option<Subject>,
    /// The run it is for, and that run's job.
    pub run: Option<(RunId, Option<JobId>)>,
    /// How far it is.
    pub stage: PotStage,
    /// Wall time since when it matches, while nothing was changed since.
    pub matched: Option<u64>,
    /// Whether it holds its revision as written, all of it weighed in and nothing else added.
    pub as_written: bool,
    /// Whether its weigh-in was begun and not all of it is in.
    pub unfinished: bool,
    /// What is in it.
    pub rows: Vec<PotRow>,
    /// What the scale shows with it on.
    pub on_scale: Grams,
    /// How much more it takes; none where its size is not known.
    pub room: Option<Grams>,
    /// What was told to be taken out beyond what was in it: some pour was not noted.
    pub short: Grams,
    /// What was printed from it.
    pub used: Grams,
    /// What was thrown away.
    pub wasted: Grams,
    /// Data sheets' limits that it passes.
    pub limits: Vec<LimitBroken>,
    /// What it costs.
    pub cost: InkCost,
    /// How it came to, oldest first, what was taken back too.
    pub ledger: Vec<LedgerLine>,
}

/// The card of a pot; none where there is no such pot.
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
        room: pot.capacity.map(|capacity| capacity.saturating_sub(total)),
        short: state.short,
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
            (LedgerWhat::Poured { component: *component, name: name(component), step: *step }, *grams)
        }
        InkFact::Accepted { component, .. } => {
            (LedgerWhat::Accepted { component: *component, name: name(component) }, Grams::ZERO)
        }
        InkFact::Resized { whole, .. } => (LedgerWhat::Resized(*whole), Grams::ZERO),
        InkFact::Moved { from, to, grams, .. } if *to == pot => {
            (LedgerWhat::MovedIn { pot: *from, name: pot_name(shop, *from) }, *grams)
        }
        InkFact::Moved { to, grams, .. } => (LedgerWhat::MovedOut { pot: *to, name: pot_name(shop, *to) }, out(grams)),
        InkFact::Wasted { grams, .. } => (LedgerWhat::Wasted, out(grams)),
        InkFact::Used { run, grams, pieces, .. } => (LedgerWhat::Used { run: *run, pieces: *pieces }, out(grams)),
        InkFact::SwatchRead { .. } => (LedgerWhat::SwatchRead, Grams::ZERO),
        InkFact::Approved { revision, client, .. } => {
            let revision = revision_name(shop, *revision);
            (LedgerWhat::Approved { revision, client: client.clone() }, Grams::ZERO)
        }
        InkFact::RevisionSaved { .. } => (LedgerWhat::Saved(revision_name(shop, id)), Grams::ZERO),
        InkFact::Matched { .. } => (LedgerWhat::Matched, Grams::ZERO),
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
