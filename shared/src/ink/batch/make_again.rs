//! Make this again: grams for any size, and of which revision.

use super::needs::best_revision;
use crate::facts::BatchSize;
use crate::ids::Subject;
use crate::ink::recipe::rows::part_rows;
use crate::ink::{
    Approval, LimitBroken, PartRow, RevisionName, approvals_of, limits_broken, percentages, revision_name,
    revisions_of, scaled,
};
use crate::shop::Shop;
use crate::units::Grams;

/// A component of the batch to make.
#[derive(Clone, Debug, PartialEq)]
pub struct MakeRow {
    /// The component.
    pub part: PartRow,
    /// What the recipe asks for, to the milligram.
    pub exact: Grams,
    /// What is to be weighed.
    pub grams: Grams,
    /// What rounding to the scale makes of it, as a part of it: more above nothing, less below.
    pub error: f64,
    /// How much of it the shelf lacks, as far as the ledger knows.
    pub lacks: Grams,
}

/// A batch to make of a recipe.
#[derive(Clone, Debug, PartialEq)]
pub struct MakeAgain {
    /// The recipe.
    pub recipe: Subject,
    /// What the ink is called.
    pub name: String,
    /// The revision these grams are of.
    pub revision: RevisionName,
    /// The client's yes to this revision, the latest; none where it has none.
    pub approval: Option<Approval>,
    /// The revision a client said yes to last, where that is another one.
    pub approved: Option<Approval>,
    /// Revisions saved after this one, oldest first: whoever wants one of them must choose it.
    pub newer: Vec<RevisionName>,
    /// The components, in the order of the recipe.
    pub rows: Vec<MakeRow>,
    /// What the batch is to weigh, on-top parts included.
    pub whole: Grams,
    /// What it will weigh as rounded to the scale.
    pub total: Grams,
    /// The largest error that rounding makes of any component, whichever way.
    pub worst: f64,
    /// The smallest batch in which no component is rounded by more than a hundredth of itself.
    pub enough: Grams,
    /// Data sheets' limits that it passes.
    pub limits: Vec<LimitBroken>,
}

/// A batch of a recipe: of the revision chosen, else of the one approved last, else of the latest. None where
/// the recipe has no revision.
pub fn make_again(shop: &Shop, recipe: Subject, choice: Option<Subject>, size: BatchSize) -> Option<MakeAgain> {
    let name = shop.ink.recipe(recipe)?.name.clone();
    let id = choice.or_else(|| best_revision(shop, recipe))?;
    let revision = shop.ink.revision(id).filter(|revision| revision.recipe == recipe)?;
    let approvals = approvals_of(shop, recipe);
    let (of_it, others): (Vec<Approval>, Vec<Approval>) =
        approvals.into_iter().partition(|approval| approval.revision.id == id);
    let approval = of_it.into_iter().next();
    // Another one counts where it is the later yes, or this one has none.
    let approved = others.into_iter().next().filter(|other| approval.as_ref().is_none_or(|own| own.at < other.at));
    let newer = revisions_of(shop, recipe).into_iter().filter(|other| other.event.rank > revision.event.rank);
    let scaled = scaled(revision.parts, size, shop.ink.scale.step);
    let percent = percentages(revision.parts);
    let rows = scaled.parts.iter().zip(part_rows(shop, &percent)).map(|(scaled, part)| MakeRow {
        lacks: part.left.map_or(Grams::ZERO, |left| scaled.grams.saturating_sub(left.max_zero()).max_zero()),
        part,
        exact: scaled.exact,
        grams: scaled.grams,
        error: scaled.error(),
    });
    Some(MakeAgain {
        recipe,
        name,
        revision: revision_name(shop, id)?,
        approval,
        approved,
        newer: newer.filter_map(|other| revision_name(shop, other.id)).collect(),
        rows: rows.collect(),
        whole: size.whole(revision.parts),
        total: scaled.total,
        worst: scaled.worst,
        enough: scaled.enough,
        limits: limits_broken(shop, &percent),
    })
}
