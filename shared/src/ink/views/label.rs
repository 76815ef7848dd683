//! The text on a pot's label.

use crate::colour::Colour;
use crate::ids::Subject;
use crate::ink::batch::needs::recipe_of;
use crate::ink::recipe::revisions::in_order;
use crate::ink::recipe::rows::part_rows;
use crate::ink::{Approval, PartRow, PotState, RevisionName, approval, pot_state, revision_name};
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::Grams;

/// The revision that a pot holds.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct HeldRevision {
    /// The revision it started as or was last saved as; `None` for a pot without one.
    pub revision: Option<RevisionName>,
    /// Number of changes since.
    pub changes: u32,
    /// Whether it holds that revision as written; also true for a pot without one, and for an empty one.
    pub as_written: bool,
}

/// A pot's label.
#[derive(Clone, Debug, PartialEq)]
pub struct PotLabel {
    /// Name of the ink: of its recipe, or else of the pot.
    pub name: String,
    /// The pot's own name.
    pub pot: String,
    /// The colour of its recipe.
    pub colour: Option<Colour>,
    /// The revision it holds.
    pub holds: HeldRevision,
    /// The client's approval of what it holds, if nothing was changed since.
    pub approval: Option<Approval>,
    /// Wall time at which it was made.
    pub made: WallTime,
    /// Who poured the first component, if known.
    pub by: Option<String>,
    /// The job's title; empty if it is for no job.
    pub job: String,
    /// The client's name.
    pub client: String,
    /// The run's name for the ink; empty if it is for no run.
    pub ink: String,
    /// Weight of its contents, without the vessel.
    pub grams: Grams,
    /// Its components, in percent.
    pub parts: Vec<PartRow>,
}

/// The label of a pot; `None` if there is no such pot.
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

pub(crate) fn holds_of(shop: &Shop, state: &PotState) -> HeldRevision {
    let of_it =
        |id| shop.ink.revision(id).is_none_or(|revision| state.matches_parts(revision.parts, shop.ink.scale.step));
    HeldRevision {
        revision: state.base.and_then(|id| revision_name(shop, id)),
        changes: state.changes,
        as_written: state.changes == 0 && state.base.is_none_or(of_it),
    }
}

/// Who poured the first component.
fn made_by(shop: &Shop, pot: Subject) -> Option<String> {
    let events = shop.ink.events_of(pot);
    let mut live = events.into_iter().filter(|(_, event)| !event.deleted);
    live.find_map(|(_, event)| event.fact.by()).map(str::to_owned)
}
