//! What to suggest for a new pot: its revision, its run, and its size.

use super::needs::{InkNeeded, best_revision, ink_needed, recipe_named};
use super::suggested::{SuggestedBatch, suggested_batch};
use crate::colour::Colour;
use crate::ids::{RunId, Subject};
use crate::ink::recipe::rows::part_rows;
use crate::ink::{Approval, PartRow, RevisionName, approvals_of, percentages, revision_name, revisions_of};
use crate::shop::Shop;
use crate::text::lowercase_latin;
use crate::units::Grams;

/// A coming run that a new pot can be for.
#[derive(Clone, Debug, PartialEq)]
pub struct RunForPot {
    /// Ink it needs, and how much of it is in pots.
    pub need: InkNeeded,
    /// The batch suggested for its pieces left; `None` if it was not calculated how much ink a print takes.
    pub batch: Option<SuggestedBatch>,
}

/// A pot without the ink in it.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Vessel {
    /// Its capacity, including the vessel.
    pub capacity: Option<Grams>,
    /// Its empty weight.
    pub tare: Option<Grams>,
}

/// What is suggested for a new pot.
#[derive(Clone, Debug, PartialEq)]
pub struct NewPot {
    /// Name of the ink.
    pub ink: String,
    /// Its colour.
    pub colour: Option<Colour>,
    /// The recipe; `None` if the run's ink has none.
    pub recipe: Option<Subject>,
    /// The revision to weigh it by.
    pub revision: Option<RevisionName>,
    /// The client's latest approval of that revision.
    pub approval: Option<Approval>,
    /// The latest approval, if it is of another revision.
    pub approved: Option<Approval>,
    /// Whether another revision was saved later.
    pub newer: bool,
    /// Its components.
    pub parts: Vec<PartRow>,
    /// Whether any of them is written as percent on top of the ink.
    pub on_top: bool,
    /// A name that no open pot has.
    pub name: String,
    /// Coming runs of this ink in the order of the day; of a pot for a run only that run.
    pub runs: Vec<RunForPot>,
    /// The vessel of the last pot entered with a capacity: pots are bought in bulk.
    pub vessel: Vessel,
}

/// A new pot of a revision; `None` if there is no such revision.
pub fn new_pot_for_revision(shop: &Shop, revision: Subject) -> Option<NewPot> {
    let of = shop.ink.revision(revision)?;
    let recipe = of.recipe;
    let runs = ink_needed(shop).into_iter().filter(|need| need.recipe == Some(recipe)).collect();
    let mut view = NewPot { recipe: Some(recipe), ..bare(shop, runs) };
    apply_revision(shop, &mut view, revision);
    view.name = unused_pot_name(shop, &view.ink);
    Some(view)
}

/// A new pot for the ink that a run names, by the revision approved last, else the latest. `None` if there is no such
/// run.
pub fn new_pot_for_run(shop: &Shop, run: RunId) -> Option<NewPot> {
    let of = shop.run(run)?;
    let recipe = recipe_named(shop, &of.ink).map(|(id, _)| id);
    let runs = ink_needed(shop).into_iter().filter(|need| need.run == run).collect();
    let mut view = NewPot { ink: of.ink.clone(), colour: of.ink_colour, recipe, ..bare(shop, runs) };
    if let Some(revision) = recipe.and_then(|recipe| best_revision(shop, recipe)) {
        apply_revision(shop, &mut view, revision);
    }
    view.name = unused_pot_name(shop, &view.ink);
    Some(view)
}

impl NewPot {
    /// A new pot without a recipe: it is mixed by eye.
    pub fn by_eye(shop: &Shop) -> Self {
        bare(shop, Vec::new())
    }
}

fn bare(shop: &Shop, runs: Vec<InkNeeded>) -> NewPot {
    let batch = |need: &InkNeeded| {
        let print = shop.ink.print(need.run)?;
        Some(suggested_batch(shop, need.run, print, need.pieces))
    };
    NewPot {
        ink: String::new(),
        colour: None,
        recipe: None,
        revision: None,
        approval: None,
        approved: None,
        newer: false,
        parts: Vec::new(),
        on_top: false,
        name: String::new(),
        runs: runs.into_iter().map(|need| RunForPot { batch: batch(&need), need }).collect(),
        vessel: last_vessel(shop),
    }
}

/// The vessel of the last pot entered with a capacity.
pub(crate) fn last_vessel(shop: &Shop) -> Vessel {
    shop.ink.last_vessel().map(|pot| Vessel { capacity: pot.capacity, tare: pot.tare }).unwrap_or_default()
}

fn apply_revision(shop: &Shop, view: &mut NewPot, id: Subject) {
    let Some(revision) = shop.ink.revision(id) else { return };
    let (of_it, others): (Vec<Approval>, Vec<Approval>) =
        approvals_of(shop, revision.recipe).into_iter().partition(|approval| approval.revision.id == id);
    view.approval = of_it.into_iter().next();
    // Another approval counts if it is later, or this revision has none.
    let later = |other: &Approval| view.approval.as_ref().is_none_or(|own| own.at < other.at);
    view.approved = others.into_iter().next().filter(later);
    view.newer = revisions_of(shop, revision.recipe).iter().any(|other| other.event.rank > revision.event.rank);
    view.revision = revision_name(shop, id);
    view.on_top = revision.parts.iter().any(|part| part.on_top);
    view.parts = part_rows(shop, &percentages(revision.parts));
    if let Some(recipe) = shop.ink.recipe(revision.recipe) {
        view.ink.clone_from(&recipe.name);
        view.colour = recipe.colour.or(view.colour);
    }
}

/// The ink's name, with a number if an open pot has it.
pub(crate) fn unused_pot_name(shop: &Shop, ink: &str) -> String {
    let taken = |name: &str| {
        shop.ink
            .open_pots()
            .filter_map(|id| shop.ink.pot(id))
            .any(|pot| lowercase_latin(&pot.name) == lowercase_latin(name))
    };
    let numbered = (2..).map(|number| format!("{ink} {number}"));
    std::iter::once(ink.to_owned()).chain(numbered).find(|name| !taken(name)).unwrap_or_default()
}
