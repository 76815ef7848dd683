//! A new pot: of which revision, for which run, and how much of it?

use super::needs::{InkNeeded, best_revision, ink_needed, recipe_for};
use super::suggested::{SuggestedBatch, suggested_batch};
use crate::colour::Colour;
use crate::ids::{RunId, Subject};
use crate::ink::recipe::rows::part_rows;
use crate::ink::{Approval, PartRow, RevisionName, approvals_of, percentages, revision_name, revisions_of};
use crate::shop::Shop;
use crate::text::lowercase_latin;
use crate::units::Grams;

/// A coming run that a new pot may be for.
#[derive(Clone, Debug, PartialEq)]
pub struct PotFor {
    /// What it needs, and what pots hold of it.
    pub need: InkNeeded,
    /// The batch suggested for its pieces left; none where what a print takes was not worked out.
    pub batch: Option<SuggestedBatch>,
}

/// What a new pot is made of and for.
#[derive(Clone, Debug, PartialEq)]
pub struct NewPot {
    /// What the ink is called.
    pub ink: String,
    /// Its colour.
    pub colour: Option<Colour>,
    /// The recipe; none where the run's ink has none.
    pub recipe: Option<Subject>,
    /// The revision it will be weighed by.
    pub revision: Option<RevisionName>,
    /// The client's latest yes to that revision.
    pub approval: Option<Approval>,
    /// The revision a client said yes to last, where that is another one.
    pub approved: Option<Approval>,
    /// Whether a revision was saved after it.
    pub newer: bool,
    /// What it is mixed of.
    pub parts: Vec<PartRow>,
    /// Whether any of it is written as percent on top of the ink.
    pub on_top: bool,
    /// A name for it that no open pot bears.
    pub name: String,
    /// The coming runs of this ink, in the order of the day; the run asked for is among them, whatever it is.
    pub runs: Vec<PotFor>,
    /// Capacity and empty weight of the pot the shop entered last, where it told them: pots are bought by the sleeve.
    pub vessel: [Option<Grams>; 2],
}

/// A new pot by a revision.
pub fn new_pot_of(shop: &Shop, revision: Subject) -> Option<NewPot> {
    let of = shop.ink.revision(revision)?;
    let recipe = of.recipe;
    let runs = ink_needed(shop).into_iter().filter(|need| need.recipe == Some(recipe)).collect();
    let mut view = NewPot { recipe: Some(recipe), ..bare(shop, runs) };
    take_revision(shop, &mut view, revision);
    view.name = free_name(shop, &view.ink);
    Some(view)
}

/// A new pot for the ink a run names, by the revision approved last, else the latest. None where there is no
/// such run.
pub fn new_pot_for(shop: &Shop, run: RunId) -> Option<NewPot> {
    let of = shop.run(run)?;
    let recipe = recipe_for(shop, &of.ink).map(|(id, _)| id);
    let runs = ink_needed(shop).into_iter().filter(|need| need.run == run).collect();
    let mut view = NewPot { ink: of.ink.clone(), colour: of.ink_colour, recipe, ..bare(shop, runs) };
    if let Some(revision) = recipe.and_then(|recipe| best_revision(shop, recipe)) {
        take_revision(shop, &mut view, revision);
    }
    view.name = free_name(shop, &view.ink);
    Some(view)
}

impl NewPot {
    /// A new pot without a recipe: whatever goes in is what it is.
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
        runs: runs.into_iter().map(|need| PotFor { batch: batch(&need), need }).collect(),
        vessel: last_vessel(shop),
    }
}

/// Capacity and empty weight of the pot the shop entered last, where it told them.
pub(crate) fn last_vessel(shop: &Shop) -> [Option<Grams>; 2] {
    let last = shop.ink.pots().filter(|(_, pot)| pot.capacity.is_some()).max_by_key(|(id, pot)| (pot.created, *id));
    last.map_or([None; 2], |(_, pot)| [pot.capacity, pot.tare])
}

fn take_revision(shop: &Shop, view: &mut NewPot, id: Subject) {
    let Some(revision) = shop.ink.revision(id) else { return };
    let (of_it, others): (Vec<Approval>, Vec<Approval>) =
        approvals_of(shop, revision.recipe).into_iter().partition(|approval| approval.revision.id == id);
    view.approval = of_it.into_iter().next();
    // Another one counts where it is the later yes, or this one has none.
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

/// The ink's name, numbered where an open pot bears it.
pub(crate) fn free_name(shop: &Shop, ink: &str) -> String {
    let taken = |name: &str| {
        shop.ink.pots().any(|(_, pot)| pot.is_open() && lowercase_latin(&pot.name) == lowercase_latin(name))
    };
    let numbered = (2..).map(|number| format!("{ink} {number}"));
    std::iter::once(ink.to_owned()).chain(numbered).find(|name| !taken(name)).unwrap_or_default()
}
