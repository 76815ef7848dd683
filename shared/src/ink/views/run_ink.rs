//! The ink of a run: in which pot it is, by which recipe, or still to be mixed.

use super::shelf::pot_line;
use crate::ids::{RunId, Subject};
use crate::ink::batch::needs::{InkNeeded, needed_of, open_pots, recipe_named, recipe_of};
use crate::ink::{PotLine, PotStage};
use crate::shop::Shop;

/// The ink of a run.
#[derive(Clone, Debug, PartialEq)]
pub struct RunInk {
    /// The run's name for it.
    pub ink: String,
    /// The recipe with that name.
    pub recipe: Option<Subject>,
    /// What it needs, if the run is open.
    pub need: Option<InkNeeded>,
    /// Its open pots that are not empty, or are being weighed: the run's own first, then the newest.
    pub pots: Vec<PotLine>,
}

/// The ink of a run; `None` if the run names none, or neither a recipe nor a pot has that ink.
pub fn run_ink(shop: &Shop, run: RunId) -> Option<RunInk> {
    let ink = shop.run(run)?.ink.clone();
    let recipe = recipe_named(shop, &ink).map(|(recipe, _)| recipe);
    let open = open_pots(shop);
    let mut pots: Vec<PotLine> = Vec::new();
    for (id, state) in open.iter() {
        let own = shop.ink.pot(*id).is_some_and(|pot| pot.run == Some(run));
        if own || (recipe.is_some() && recipe_of(shop, state) == recipe) {
            pots.extend(pot_line(shop, *id, state).filter(|pot| pot.stage != PotStage::Empty));
        }
    }
    crate::collections::sort_by_key(&mut pots, |pot| (pot.run != Some(run), std::cmp::Reverse(pot.made), pot.id));
    if recipe.is_none() && pots.is_empty() {
        return None;
    }
    let need = needed_of(shop, &open).into_iter().find(|need| need.run == run);
    Some(RunInk { ink, recipe, need, pots })
}

/// Names of the shop's inks, sorted: those of its recipes, and every other name that one of its latest runs uses.
pub fn ink_names(shop: &Shop) -> Vec<String> {
    let mut names: Vec<String> = shop.ink.recipes().map(|(_, recipe)| recipe.name.clone()).collect();
    for (.., run) in shop.recent_runs() {
        if recipe_named(shop, &run.ink).is_none() {
            names.push(run.ink.clone());
        }
    }
    names.retain(|name| !name.is_empty());
    crate::collections::sort_by(&mut names, Ord::cmp);
    names.dedup();
    names
}
