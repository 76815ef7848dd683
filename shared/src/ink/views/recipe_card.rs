//! View of one recipe: its revisions, their ancestry, its pots and its runs.

use super::shelf::{PotLine, pot_line};
use crate::ids::{RunId, Subject};
use crate::ink::batch::needs::{open_pots, recipe_of};
use crate::ink::recipe::rows::part_rows;
use crate::ink::{
    Approval, InkCost, LimitBroken, PartRow, Recipe, RevisionName, approvals_of, best_revision, density_of, ink_cost,
    limits_broken, percentages, recipe_named, revision_name, revisions_of,
};
use crate::plan::open_runs;
use crate::shop::Shop;
use crate::time::WallTime;

/// A revision on the card.
#[derive(Clone, Debug, PartialEq)]
pub struct RevisionRow {
    /// Name of the revision.
    pub name: RevisionName,
    /// Wall time at which it was saved.
    pub at: WallTime,
    /// Who saved it, if known.
    pub by: Option<String>,
    /// Why it differs from its parent.
    pub note: String,
    /// The revision it was derived from.
    pub parent: Option<RevisionName>,
    /// The pot whose contents it is, and its name.
    pub pot: Option<(Subject, String)>,
    /// Its components, in percent of the whole.
    pub parts: Vec<PartRow>,
    /// Whether any of them is written as percent on top of the ink.
    pub on_top: bool,
    /// Its latest approval.
    pub approval: Option<Approval>,
    /// Its price.
    pub cost: InkCost,
    /// Its density in g/cm³, if that of every component is known.
    pub density: Option<f64>,
    /// Data sheet limits that it exceeds.
    pub limits: Vec<LimitBroken>,
}

/// A recipe's card.
#[derive(Clone, Debug, PartialEq)]
pub struct RecipeCard {
    /// Id of the recipe.
    pub id: Subject,
    /// Its fields.
    pub recipe: Recipe,
    /// Its revisions, latest first.
    pub revisions: Vec<RevisionRow>,
    /// The revision to mix it by: the one approved last, else the latest.
    pub best: Option<Subject>,
    /// Whether a revision was saved after the one approved last.
    pub newer_unapproved: bool,
    /// The open pots of it.
    pub pots: Vec<PotLine>,
    /// The open runs that use its ink, in the order of the day.
    pub runs: Vec<RunId>,
}

/// The card of a recipe; `None` if there is no such recipe.
pub fn recipe_card(shop: &Shop, id: Subject) -> Option<RecipeCard> {
    let recipe = shop.ink.recipe(id)?.clone();
    let approvals = approvals_of(shop, id);
    let mut revisions: Vec<RevisionRow> = Vec::new();
    for revision in revisions_of(shop, id).into_iter().rev() {
        let percent = percentages(revision.parts);
        let Some(name) = revision_name(shop, revision.id) else { continue };
        revisions.push(RevisionRow {
            name,
            at: revision.event.at,
            by: revision.event.fact.by().map(str::to_owned),
            note: revision.note.to_owned(),
            parent: revision.parent.and_then(|parent| revision_name(shop, parent)),
            pot: revision.pot.map(|pot| (pot, crate::ink::recipe::rows::pot_name(shop, pot))),
            on_top: revision.parts.iter().any(|part| part.on_top),
            approval: approvals.iter().find(|approval| approval.revision.id == revision.id).cloned(),
            cost: ink_cost(shop, &percent),
            density: density_of(shop, &percent),
            limits: limits_broken(shop, &percent),
            parts: part_rows(shop, &percent),
        });
    }
    let best = best_revision(shop, id);
    let pots = open_pots(shop);
    let runs = open_runs(shop).into_iter();
    Some(RecipeCard {
        id,
        recipe,
        best,
        newer_unapproved: !approvals.is_empty() && revisions.first().is_some_and(|latest| Some(latest.name.id) != best),
        revisions,
        pots: pots
            .iter()
            .filter(|(_, state)| recipe_of(shop, state) == Some(id))
            .filter_map(|(pot, state)| pot_line(shop, *pot, state))
            .collect(),
        runs: runs
            .filter(|run| {
                let named = shop.run(*run).and_then(|run| recipe_named(shop, &run.ink));
                named.is_some_and(|(recipe, _)| recipe == id)
            })
            .collect(),
    })
}
