//! How to repair a weigh-in in which too much of a component was poured.

use super::weigh_in::{StepState, WeighIn};
use crate::facts::{Fact, InkFact};
use crate::ids::Subject;
use crate::ink::recipe::apportion::apportion;
use crate::ink::recipe::percentages::{percent_of, weights};
use crate::ink::recipe::scaled::to_weigh;
use crate::ink::stock_left;
use crate::shop::Shop;
use crate::units::Grams;
use uuid::Uuid;

/// A way to repair an over-pour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Repair {
    /// Scale the rest to what was poured: the recipe stays, the batch grows.
    ScaleRest,
    /// Accept what was poured: the rest stays as planned, the recipe changes.
    Accept,
}

/// A component after a repair.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RepairRow {
    /// Id of the component.
    pub component: Subject,
    /// Weight that will be in the pot, to the milligram.
    pub exact: Grams,
    /// Weight to reach at the scale.
    pub target: Grams,
    /// Weight still to pour.
    pub to_pour: Grams,
    /// Its share of the weight in the pot, in percent.
    pub percent: f64,
    /// The share that the recipe asks for, in percent.
    pub asked: f64,
    /// Weight that is missing on the shelf, as far as the stock is known.
    pub lacks: Grams,
    /// How much of that is missing only because of this repair.
    pub lacks_more: Grams,
}

/// Result of a repair.
#[derive(Clone, Debug, PartialEq)]
pub struct RepairPlan {
    /// Weight of the whole recipe after it.
    pub whole: Grams,
    /// Weight in the pot after it.
    pub total: Grams,
    /// Weight beyond what was planned.
    pub more: Grams,
    /// Weight beyond the pot's capacity; zero if it fits or the capacity is unknown.
    pub spills: Grams,
    /// How much of that is too much only because of this repair.
    pub spills_more: Grams,
    /// The components, in the order of the recipe.
    pub rows: Vec<RepairRow>,
    /// Largest deviation from the recipe, in percentage points.
    pub off: f64,
    /// Whether the batch would be larger than allowed; the figures are then those of the largest batch.
    pub too_large: bool,
}

impl RepairPlan {
    /// Whether pot and shelf allow it, as far as they are known, and the batch is not too large. A shortage that
    /// existed before rules out neither repair: it is shown, but must not block the weigh-in.
    pub fn is_possible(&self) -> bool {
        !self.too_large && !self.spills_more.is_positive() && self.rows.iter().all(|row| !row.lacks_more.is_positive())
    }
}

/// An over-pour, and both ways to repair it.
#[derive(Clone, Debug, PartialEq)]
pub struct OverPour {
    /// The component; of several, the one furthest beyond its proportion.
    pub component: Subject,
    /// Weight in excess.
    pub by: Grams,
    /// Result of scaling the rest.
    pub scale_rest: RepairPlan,
    /// Result of accepting what was poured.
    pub accept: RepairPlan,
}

/// The over-pour of a weigh-in, with both repairs; `None` if nothing is over-poured.
///
/// Scaling the rest: with `p` poured of a component whose share of the recipe is `w`, the whole becomes the largest `p
/// / w`, so that nothing has to be taken out; each other component is then poured up to its share of that. Components
/// that were accepted before stay as they are.
pub fn over_pour(shop: &Shop, pot: Subject, weigh_in: &WeighIn) -> Option<OverPour> {
    let parts = shop.ink.revision(shop.ink.pot(pot)?.revision?)?.parts;
    let weights = weights(parts);
    let only: Vec<i64> = weights.iter().map(|(_, weight)| *weight).collect();
    let sum: i64 = only.iter().sum();
    let over = |at: usize| weigh_in.steps.get(at).is_some_and(|step| step.state == StepState::Over);
    // The whole in which the weight poured of a component is in proportion.
    let wanted = |at: usize| -> i64 {
        let (poured, weight) = (i128::from(weigh_in.steps[at].poured.milligrams()), i128::from(only[at].max(1)));
        i64::try_from((poured * i128::from(sum) + weight - 1) / weight).unwrap_or(i64::MAX)
    };
    let driver = (0..weigh_in.steps.len()).filter(|at| over(*at)).max_by_key(|at| wanted(*at))?;
    let whole = wanted(driver).max(weigh_in.whole.milligrams());
    let too_large = whole > Grams::MOST.milligrams();
    let whole = whole.min(Grams::MOST.milligrams());
    let exact = apportion(&only, whole);
    let step = shop.ink.scale.step;
    let scaled: Vec<[Grams; 2]> = weigh_in
        .steps
        .iter()
        .zip(exact)
        .map(|(row, exact)| {
            let exact = Grams::from_milligrams(exact);
            if row.accepted { [row.target; 2] } else { [exact, to_weigh(exact, step).max(row.poured)] }
        })
        .collect();
    let kept: Vec<[Grams; 2]> = weigh_in
        .steps
        .iter()
        .map(|row| if row.state == StepState::Over { [row.poured; 2] } else { [row.exact, row.target] })
        .collect();
    let of = &weigh_in.steps[driver];
    Some(OverPour {
        component: of.component,
        by: of.poured.saturating_sub(of.target),
        scale_rest: RepairPlan { too_large, ..plan(shop, pot, weigh_in, Grams::from_milligrams(whole), scaled) },
        accept: plan(shop, pot, weigh_in, weigh_in.whole, kept),
    })
}

fn plan(shop: &Shop, pot: Subject, weigh_in: &WeighIn, whole: Grams, targets: Vec<[Grams; 2]>) -> RepairPlan {
    let asked: Vec<(Subject, i64)> =
        weigh_in.steps.iter().map(|step| (step.component, step.exact.milligrams())).collect();
    let asked = percent_of(&asked);
    let after: Vec<(Subject, i64)> =
        weigh_in.steps.iter().zip(&targets).map(|(step, [_, target])| (step.component, target.milligrams())).collect();
    let after = percent_of(&after);
    let mut rows = Vec::new();
    for (at, (step, [exact, target])) in weigh_in.steps.iter().zip(targets).enumerate() {
        let to_pour = target.saturating_sub(step.poured).max_zero();
        let left = stock_left(shop, step.component);
        let lacks =
            |to_pour: Grams| left.map_or(Grams::ZERO, |left| to_pour.saturating_sub(left.max_zero()).max_zero());
        rows.push(RepairRow {
            component: step.component,
            exact,
            target,
            to_pour,
            percent: after.get(at).map_or(0.0, |(_, percent)| *percent),
            asked: asked.get(at).map_or(0.0, |(_, percent)| *percent),
            lacks: lacks(to_pour),
            lacks_more: lacks(to_pour).saturating_sub(lacks(step.to_go())).max_zero(),
        });
    }
    let total = rows.iter().map(|row| row.target).sum::<Grams>().saturating_add(weigh_in.other);
    let capacity = shop.ink.pot(pot).and_then(|pot| pot.capacity);
    let spills = |total: Grams| capacity.map_or(Grams::ZERO, |capacity| total.saturating_sub(capacity).max_zero());
    let planned = weigh_in.steps.iter().map(|step| step.target).sum::<Grams>().saturating_add(weigh_in.other);
    RepairPlan {
        whole,
        total,
        more: total.saturating_sub(planned),
        spills: spills(total),
        spills_more: spills(total).saturating_sub(spills(planned)).max_zero(),
        off: rows.iter().map(|row| (row.percent - row.asked).abs()).fold(0.0, f64::max),
        too_large: false,
        rows,
    }
}

/// The facts of the repair chosen: a resize of the weigh-in, or an acceptance of everything over-poured. Empty if
/// nothing is over-poured, or the batch would be larger than allowed.
pub fn repair_facts(
    shop: &Shop,
    pot: Subject,
    weigh_in: &WeighIn,
    repair: Repair,
    by: Option<&str>,
    mut new_id: impl FnMut() -> Uuid,
) -> Vec<(Subject, Fact)> {
    let by = || by.map(str::to_owned);
    let Some(over) = over_pour(shop, pot, weigh_in) else { return Vec::new() };
    match repair {
        Repair::ScaleRest if over.scale_rest.too_large => Vec::new(),
        Repair::ScaleRest => {
            vec![(new_id(), Fact::Ink(InkFact::Resized { pot, whole: over.scale_rest.whole, by: by() }))]
        }
        Repair::Accept => weigh_in
            .steps
            .iter()
            .filter(|step| step.state == StepState::Over)
            .map(|step| {
                let (component, grams) = (step.component, step.poured.min(Grams::MOST));
                (new_id(), Fact::Ink(InkFact::Accepted { pot, component, grams, by: by() }))
            })
            .collect(),
    }
}
