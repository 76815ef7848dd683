//! Overview of the ink: recipes, pots, and what the day's runs need.

use super::label::{HeldRevision, label_of};
use super::stock::stock_of;
use crate::collections::sort_by_key;
use crate::colour::Colour;
use crate::ids::{RunId, Subject};
use crate::ink::batch::needs::{needed_of, open_pots, recipe_of};
use crate::ink::{InkNeeded, PotStage, PotState, RevisionName, approvals_of, pot_stage, revision_name, revisions_of};
use crate::shop::Shop;
use crate::text::lowercase_latin;
use crate::time::WallTime;
use crate::units::Grams;

/// A recipe in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct RecipeLine {
    /// Id of the recipe.
    pub id: Subject,
    /// Name of the ink.
    pub name: String,
    /// Its colour.
    pub colour: Option<Colour>,
    /// Its latest revision; `None` if it has none.
    pub latest: Option<RevisionName>,
    /// The revision approved last, and the client's name.
    pub approved: Option<(RevisionName, String)>,
    /// Number of components in the latest revision.
    pub components: u32,
    /// Weight of it in open pots.
    pub in_pots: Grams,
}

/// A pot in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct PotLine {
    /// Id of the pot.
    pub id: Subject,
    /// The name written on it.
    pub name: String,
    /// Name of the ink.
    pub ink: String,
    /// Its colour.
    pub colour: Option<Colour>,
    /// The revision it holds.
    pub holds: HeldRevision,
    /// How far it has come.
    pub stage: PotStage,
    /// Weight of its contents.
    pub grams: Grams,
    /// Its capacity.
    pub capacity: Option<Grams>,
    /// The run it is for.
    pub run: Option<RunId>,
    /// That run's job's title; empty if it is for no run.
    pub job: String,
    /// Wall time at which it was made.
    pub made: WallTime,
}

/// Overview of the shop's ink.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct InkShelf {
    /// What the open runs need, in the order of the day.
    pub needed: Vec<InkNeeded>,
    /// The open pots: those being weighed first, then the newest.
    pub pots: Vec<PotLine>,
    /// The recipes, by name.
    pub recipes: Vec<RecipeLine>,
    /// Number of components that are low.
    pub low: u32,
    /// Number of components.
    pub components: u32,
}

/// The current overview of the shop's ink.
pub fn ink_shelf(shop: &Shop) -> InkShelf {
    let open = open_pots(shop);
    let mut pots: Vec<PotLine> = open.iter().filter_map(|(id, state)| pot_line(shop, *id, state)).collect();
    sort_by_key(&mut pots, |pot| (pot.stage != PotStage::Weighing, std::cmp::Reverse(pot.made), pot.id));
    let mut recipes: Vec<RecipeLine> = Vec::new();
    for (id, recipe) in shop.ink.recipes() {
        let latest = revisions_of(shop, id).last().copied();
        let approved = approvals_of(shop, id).into_iter().next();
        let of_it = open.values().filter(|state| recipe_of(shop, state) == Some(id));
        recipes.push(RecipeLine {
            id,
            name: recipe.name.clone(),
            colour: recipe.colour,
            latest: latest.and_then(|revision| revision_name(shop, revision.id)),
            approved: approved.map(|approval| (approval.revision, approval.client)),
            components: latest.map_or(0, |revision| revision.parts.len() as u32),
            in_pots: of_it.map(|state| state.contents.total()).sum(),
        });
    }
    sort_by_key(&mut recipes, |recipe| (lowercase_latin(&recipe.name), recipe.id));
    let needed = needed_of(shop, &open);
    let low = stock_of(shop, needed.clone()).low;
    InkShelf { needed, pots, recipes, low, components: shop.ink.components().count() as u32 }
}

pub(crate) fn pot_line(shop: &Shop, id: Subject, state: &PotState) -> Option<PotLine> {
    let pot = shop.ink.pot(id)?;
    let label = label_of(shop, id, state)?;
    Some(PotLine {
        id,
        name: label.pot,
        ink: label.name,
        colour: label.colour,
        holds: label.holds,
        stage: pot_stage(shop, id, state),
        grams: label.grams,
        capacity: pot.capacity,
        run: pot.run,
        job: label.job,
        made: label.made,
    })
}
