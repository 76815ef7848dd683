//! A batch of an existing recipe: which revision, and the grams for any size.

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

/// A component of the batch.
#[derive(Clone, Debug, PartialEq)]
pub struct MakeRow {
    /// The component.
    pub part: PartRow,
    /// Weight the recipe asks for, to the milligram.
    pub exact: Grams,
    /// Weight to weigh out.
    pub grams: Grams,
    /// Relative error from rounding to the scale: above zero for too much, below for too little.
    pub error: f64,
    /// Weight that is missing on the shelf, as far as the stock is known.
    pub lacks: Grams,
}

/// A batch of a recipe.
#[derive(Clone, Debug, PartialEq)]
pub struct MakeAgain {
    /// The recipe.
    pub recipe: Subject,
    /// Name of the ink.
    pub name: String,
    /// The revision of these grams.
    pub revision: RevisionName,
    /// The client's latest approval of this revision; `None` if it has none.
    pub approval: Option<Approval>,
    /// The latest approval, if it is of another revision.
    pub approved: Option<Approval>,
    /// Revisions saved after this one, oldest first: they are used only if they are chosen.
    pub newer: Vec<RevisionName>,
    /// The components, in the order of the recipe.
    pub rows: Vec<MakeRow>,
    /// Target weight of the batch, on-top parts included.
    pub whole: Grams,
    /// Its weight as rounded to the scale.
    pub total: Grams,
    /// Largest relative rounding error of any component, as an absolute value.
    pub worst: f64,
    /// The smallest batch in which no component is rounded by more than a hundredth of itself.
    pub accurate_batch: Grams,
    /// Data sheet limits that it exceeds.
    pub limits: Vec<LimitBroken>,
}

/// A batch of a recipe: of the revision chosen, else of the one approved last, else of the latest. `None` if the recipe
/// has no revision.
pub fn make_again(shop: &Shop, recipe: Subject, choice: Option<Subject>, size: BatchSize) -> Option<MakeAgain> {
    let name = shop.ink.recipe(recipe)?.name.clone();
    let id = choice.or_else(|| best_revision(shop, recipe))?;
    let revision = shop.ink.revision(id).filter(|revision| revision.recipe == recipe)?;
    let approvals = approvals_of(shop, recipe);
    let (of_it, others): (Vec<Approval>, Vec<Approval>) =
        approvals.into_iter().partition(|approval| approval.revision.id == id);
    let approval = of_it.into_iter().next();
    // Another approval counts if it is later, or this revision has none.
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
        accurate_batch: scaled.accurate_batch,
        limits: limits_broken(shop, &percent),
    })
}
