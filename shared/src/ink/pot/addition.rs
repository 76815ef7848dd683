//! What an addition would make of a pot, and what tops it up.

use super::replay::pot_state;
use crate::collections::sort_by_key;
use crate::facts::{ComponentKind, InkFact, PourStep};
use crate::ids::Subject;
use crate::ink::recipe::apportion::apportion;
use crate::ink::recipe::revisions::in_order;
use crate::ink::recipe::rows::part_rows;
use crate::ink::{LimitBroken, PartRow, limits_broken, stock_left};
use crate::shop::Shop;
use crate::text::lowercase_latin;
use crate::units::Grams;

/// A pot after an addition.
#[derive(Clone, Debug, PartialEq)]
pub struct AfterAddition {
    /// Its weight, without the vessel.
    pub total: Grams,
    /// Its components, in percent.
    pub parts: Vec<PartRow>,
    /// Weight beyond the pot's capacity; zero if it fits or the capacity is unknown.
    pub spills: Grams,
    /// Weight of each added component that is missing on the shelf.
    pub lacks: Vec<(Subject, Grams)>,
    /// Data sheet limits that it would exceed.
    pub limits: Vec<LimitBroken>,
}

/// What these additions would make of a pot.
pub fn after_addition(shop: &Shop, pot: Subject, additions: &[(Subject, Grams)]) -> AfterAddition {
    let mut state = pot_state(shop, pot);
    let mut lacks = Vec::new();
    for (component, grams) in additions {
        state.contents.pour(*component, *grams);
        let left = stock_left(shop, *component).unwrap_or(*grams).max_zero();
        if *grams > left {
            lacks.push((*component, grams.saturating_sub(left)));
        }
    }
    let percent = crate::ink::recipe::percentages::percent_of(&in_order(shop, &state.contents, state.base));
    let total = state.contents.total();
    let capacity = shop.ink.pot(pot).and_then(|pot| pot.capacity);
    AfterAddition {
        total,
        spills: capacity.map_or(Grams::ZERO, |capacity| total.saturating_sub(capacity).max_zero()),
        lacks,
        limits: limits_broken(shop, &percent),
        parts: part_rows(shop, &percent),
    }
}

/// Components that can be added to a pot: those in it, in its order, then the others of the shop, pigments first.
/// Deleted components are offered only if they are in the pot.
pub fn components_to_add(shop: &Shop, pot: Subject) -> Vec<PartRow> {
    let state = pot_state(shop, pot);
    let mut rows =
        part_rows(shop, &crate::ink::recipe::percentages::percent_of(&in_order(shop, &state.contents, state.base)));
    let others: Vec<(Subject, f64)> = shop.ink.components().map(|(id, _)| (id, 0.0)).collect();
    let mut others = part_rows(shop, &others);
    others.retain(|row| !rows.iter().any(|there| there.component == row.component));
    sort_by_key(&mut others, |row| {
        (row.kind != ComponentKind::Pigment, row.kind, lowercase_latin(&row.name), row.component)
    });
    rows.extend(others);
    rows
}

/// The component added last as a correction: the likely next one.
pub fn last_added(shop: &Shop, pot: Subject) -> Option<Subject> {
    shop.ink.events_of(pot).into_iter().rev().find_map(|(_, event)| {
        let InkFact::Poured { component, step: PourStep::Correction, .. } = event.fact else { return None };
        (!event.deleted).then_some(component)
    })
}

/// The grams of each component that top a pot up to `total`, in the proportions of its actual contents, rounded to the
/// scale. Empty for an empty pot, or one that holds as much already.
pub fn top_up(shop: &Shop, pot: Subject, total: Grams) -> Vec<(Subject, Grams)> {
    let state = pot_state(shop, pot);
    let more = total.saturating_sub(state.contents.total()).max_zero();
    let weights = in_order(shop, &state.contents, state.base);
    let only: Vec<i64> = weights.iter().map(|(_, weight)| *weight).collect();
    let step = shop.ink.scale.step;
    let grams =
        apportion(&only, more.milligrams()).into_iter().map(|part| Grams::from_milligrams(part).rounded_to(step));
    weights.iter().map(|(component, _)| *component).zip(grams).filter(|(_, grams)| grams.is_positive()).collect()
}
