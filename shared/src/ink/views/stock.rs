//! Stock on the shelf, what the coming runs need of it, and what to buy.

use crate::collections::{Table, sort_by_key};
use crate::colour::Colour;
use crate::facts::{BatchSize, ComponentKind};
use crate::ids::{RunId, Subject};
use crate::ink::batch::stock::counted_at;
use crate::ink::{Component, InkNeeded, ink_needed, scaled, stock_left};
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::Grams;

/// Why a component is low.
#[derive(Clone, Debug, PartialEq)]
pub enum LowReason {
    /// It is not enough for a coming run.
    ForRun {
        /// The first run it is not enough for.
        run: RunId,
        /// Its job's title.
        title: String,
        /// Weight missing for all coming runs together.
        short: Grams,
    },
    /// Less is left than the limit that the shop has set.
    BelowLimit,
}

/// What to buy of a component.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ToBuy {
    /// Weight to buy, in whole tubs if the tub's weight is known.
    pub grams: Grams,
    /// Number of tubs; `None` if the tub's weight is unknown.
    pub tubs: Option<u32>,
    /// Its cost in hundredths of the shop's currency; `None` if the price is unknown.
    pub cost: Option<u64>,
}

/// A component on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct StockRow {
    /// Id of the component.
    pub component: Subject,
    /// Its name.
    pub name: String,
    /// Role of the component in an ink.
    pub kind: ComponentKind,
    /// Its colour.
    pub colour: Option<Colour>,
    /// Weight left; `None` until it was weighed or delivered.
    pub left: Option<Grams>,
    /// Wall time of its last weighing.
    pub counted: Option<WallTime>,
    /// Weight that the coming runs need, as far as their need is known.
    pub required: Grams,
    /// Whether it is low, and why.
    pub low: Option<LowReason>,
    /// What to buy.
    pub buy: Option<ToBuy>,
}

/// The stock on the shelf.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct StockView {
    /// The components: those that are low first, then by kind and name.
    pub rows: Vec<StockRow>,
    /// How many are low.
    pub low: u32,
    /// Cost of everything to buy, in hundredths of the shop's currency, as far as prices are known.
    pub cost: u64,
    /// Number of things to buy without a price.
    pub unpriced: u32,
    /// Coming runs whose need is unknown: there is no recipe with their ink's name, or it was not calculated how much
    /// ink a print takes.
    pub unknown: Vec<InkNeeded>,
}

/// The stock compared with what the coming runs need.
pub fn stock_view(shop: &Shop) -> StockView {
    stock_of(shop, ink_needed(shop))
}

pub(crate) fn stock_of(shop: &Shop, needed: Vec<InkNeeded>) -> StockView {
    // For each component, what every coming run needs, in the order of the day.
    let mut required: Table<Vec<(usize, Grams)>> = Table::default();
    for (at, need) in needed.iter().enumerate() {
        let revision = need.revision.and_then(|id| shop.ink.revision(id));
        let (Some(revision), Some(grams)) = (revision, need.to_mix.filter(|grams| grams.is_positive())) else {
            continue;
        };
        for part in scaled(revision.parts, BatchSize::Whole(grams), shop.ink.scale.step).parts {
            required.get_or_insert_default(part.component).push((at, part.exact));
        }
    }
    let mut view = StockView::default();
    for (id, component) in shop.ink.components() {
        let takes = required.get(&id).map_or(&[][..], Vec::as_slice);
        let row = row(shop, id, component, takes, &needed);
        view.low += u32::from(row.low.is_some());
        if let Some(buy) = row.buy {
            view.cost = view.cost.saturating_add(buy.cost.unwrap_or(0));
            view.unpriced += u32::from(buy.cost.is_none());
        }
        view.rows.push(row);
    }
    sort_by_key(&mut view.rows, |row| {
        (row.low.is_none(), row.kind, crate::text::lowercase_latin(&row.name), row.component)
    });
    view.unknown = needed.into_iter().filter(|need| need.grams.is_none() || need.revision.is_none()).collect();
    view
}

fn row(shop: &Shop, id: Subject, component: &Component, takes: &[(usize, Grams)], needed: &[InkNeeded]) -> StockRow {
    let left = stock_left(shop, id);
    let required: Grams = takes.iter().map(|(_, grams)| *grams).sum();
    let here = left.unwrap_or_default().max_zero();
    let mut rest = here;
    let mut first = None;
    for (at, grams) in takes {
        rest = rest.saturating_sub(*grams);
        if rest < Grams::ZERO && first.is_none() {
            first = needed.get(*at);
        }
    }
    let short = required.saturating_sub(here).max_zero();
    let low = match (left, first) {
        // What was never weighed is not known to be low.
        (None, _) => None,
        (_, Some(need)) => Some(LowReason::ForRun { run: need.run, title: need.title.clone(), short }),
        (Some(left), None) => component.low_at.filter(|limit| left < *limit).map(|_| LowReason::BelowLimit),
    };
    // Enough for the coming runs, with the limit left after them.
    let lacks = required.saturating_add(component.low_at.unwrap_or_default()).saturating_sub(here);
    let buy = low.as_ref().map(|_| to_buy(component, lacks.max(Grams::from_milligrams(1))));
    StockRow {
        component: id,
        name: component.name.clone(),
        kind: component.kind,
        colour: component.colour,
        left,
        counted: counted_at(shop, id),
        required,
        low,
        buy,
    }
}

fn to_buy(component: &Component, lacks: Grams) -> ToBuy {
    let tubs = component.tub.filter(|tub| tub.is_positive()).map(|tub| {
        let (lacks, tub) = (lacks.milligrams(), tub.milligrams());
        (lacks.saturating_add(tub - 1) / tub, tub)
    });
    let grams = tubs.map_or(lacks, |(tubs, tub)| Grams::from_milligrams(tubs.saturating_mul(tub)));
    let cost = component.cost.map(|cost| (grams.grams() / 1000.0 * f64::from(cost)).round() as u64);
    ToBuy { grams, tubs: tubs.map(|(tubs, _)| tubs as u32), cost }
}
