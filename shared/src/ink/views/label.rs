//! What is written on a pot.

use crate::colour::Colour;
use crate::ids::Subject;
use crate::ink::batch::needs::recipe_of;
use crate::ink::recipe::revisions::in_order;
use crate::ink::recipe::rows::part_rows;
use crate::ink::{Approval, PartRow, PotState, RevisionName, approval, pot_state, revision_name};
use crate::shop::Shop;
use crate::units::Grams;

/// Which recipe a pot holds.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Holds {
    /// The revision it began as or was last saved as; none of a pot without one.
    pub revision: Option<RevisionName>,
    /// How many times it was changed since.
    pub changes: u32,
    /// Whether it is that revision as written; so is a pot without one, and an empty one.
    pub as_written: bool,
}

/// A pot's label.
#[derive(Clone, Debug, PartialEq)]
pub struct PotLabel {
    /// What the ink is called: its recipe's name, else the pot's own.
    pub name: String,
    /// The pot's own name.
    pub pot: String,
    /// The colour of its recipe.
    pub colour: Option<Colour>,
    /// Which revision.
    pub holds: Holds,
    /// The client's yes to what it holds, while nothing was changed since.
    pub approval: Option<Approval>,
    /// Wall time at which it was made.
    pub made: u64,
    /// Who poured the first of it, where the crew is named.
    pub by: Option<String>,
    /// The job's title; empty where it is for none.
    pub job: String,
    /// The client.
    pub client: String,
    /// The run's ink, where it is for a run.
    pub ink: String,
    /// What it holds, without the vessel.
    pub grams: Grams,
    /// What it is mixed of, in percent.
    pub parts: Vec<PartRow>,
}

/// The label of a pot; none where there is no such pot.
pub fn pot_label(shop: &Shop, pot: Subject) -> Option<PotLabel> {
    label_of(shop, pot, &pot_state(shop, pot))
}

pub(crate) fn label_of(shop: &Shop, id: Subject, state: &PotState) -> Option<PotLabel> {
    let pot = shop.ink.pot(id)?;
    let recipe = recipe_of(shop, state).and_then(|id| shop.ink.recipe(id));
    let job = pot.run.and_then(|run| shop.job_of(run)).map(|(_, job)| job);
    Some(PotLabel {
        name: recipe.map_or_else(|| pot.name.clone(), |recipe| recipe.name.clone()),
        pot: pot.name.clone(),
        colour: recipe.and_then(|recipe| recipe.colour),
        holds: holds_of(shop, state),
        approval: state.approved.and_then(|event| approval(shop, event)),
        made: pot.created,
        by: made_by(shop, id),
        job: job.map(|job| job.title.clone()).unwrap_or_default(),
        client: job.map(|job| job.client.clone()).unwrap_or_default(),
        ink: pot.run.and_then(|run| shop.run(run)).map(|run| run.ink.clone()).unwrap_or_default(),
        grams: state.contents.total(),
        parts: part_rows(
            shop,
            &crate::ink::recipe::percentages::percent_of(&in_order(shop, &state.contents, state.base)),
        ),
    })
}

pub(crate) fn holds_of(shop: &Shop, state: &PotState) -> Holds {
    let of_it = |id| shop.ink.revision(id).is_none_or(|revision| state.is_of(revision.parts, shop.ink.scale.step));
    Holds {
        revision: state.base.and_then(|id| revision_name(shop, id)),
        changes: state.changes,
        as_written: state.changes == 0 && state.base.is_none_or(of_it),
    }
}

/// Who poured the first of it.
fn made_by(shop: &Shop, pot: Subject) -> Option<String> {
    let events = shop.ink.events_of(pot);
    let mut live = events.into_iter().filter(|(_, event)| !event.deleted);
    live.find_map(|(_, event)| event.fact.by()).map(str::to_owned)
}
