//! One component: what is left of it, what happened to it, and what it is used in.

use super::stock::{StockRow, stock_view};
use crate::collections::sort_by_key;
use crate::colour::Colour;
use crate::facts::{InkFact, PourStep};
use crate::ids::Subject;
use crate::ink::{Component, best_revision};
use crate::shop::Shop;
use crate::units::Grams;

/// What happened to a component on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub enum StockWhat {
    /// It came in; with whatever was noted of it.
    Delivered(String),
    /// What is left was weighed.
    Counted,
    /// It was poured into a pot.
    Poured {
        /// Which pot.
        pot: Subject,
        /// Its name.
        name: String,
        /// What for.
        step: PourStep,
    },
}

/// A line of a component's story.
#[derive(Clone, Debug, PartialEq)]
pub struct StockLine {
    /// Its event: deleting it takes it back.
    pub event: Subject,
    /// Wall time.
    pub at: u64,
    /// By whom.
    pub by: Option<String>,
    /// What happened.
    pub what: StockWhat,
    /// How much came, went, or was left.
    pub grams: Grams,
    /// What was left after it; none before anything was known.
    pub left: Option<Grams>,
}

/// A recipe that has a component in it.
#[derive(Clone, Debug, PartialEq)]
pub struct UsedIn {
    /// The recipe.
    pub recipe: Subject,
    /// What the ink is called.
    pub name: String,
    /// Its colour.
    pub colour: Option<Colour>,
}

/// A component's card.
#[derive(Clone, Debug, PartialEq)]
pub struct ComponentCard {
    /// Which.
    pub id: Subject,
    /// Its fields.
    pub component: Component,
    /// What is left, whether that is low and why, what to buy; as the shelf has it.
    pub stock: StockRow,
    /// What happened to it, latest first, what was taken back left out.
    pub lines: Vec<StockLine>,
    /// The recipes that are mixed with it, by name.
    pub used_in: Vec<UsedIn>,
}

/// The card of a component; none where there is none, or it was deleted.
pub fn component_card(shop: &Shop, id: Subject) -> Option<ComponentCard> {
    let component = shop.ink.component(id).filter(|component| !component.deleted)?.clone();
    let stock = stock_view(shop).rows.into_iter().find(|row| row.component == id)?;
    let mut used_in: Vec<UsedIn> = Vec::new();
    for (recipe, fields) in shop.ink.recipes() {
        let revision = best_revision(shop, recipe).and_then(|revision| shop.ink.revision(revision));
        if revision.is_some_and(|revision| revision.parts.iter().any(|part| part.component == id)) {
            used_in.push(UsedIn { recipe, name: fields.name.clone(), colour: fields.colour });
        }
    }
    sort_by_key(&mut used_in, |row| (crate::text::lowercase_latin(&row.name), row.recipe));
    Some(ComponentCard { id, component, stock, lines: lines(shop, id), used_in })
}

fn lines(shop: &Shop, id: Subject) -> Vec<StockLine> {
    let mut lines = Vec::new();
    let mut left: Option<Grams> = None;
    for (event, row) in shop.ink.events_of(id).into_iter().filter(|(_, row)| !row.deleted) {
        let (what, grams) = match &row.fact {
            InkFact::Delivered { grams, note, .. } => {
                left = Some(left.unwrap_or_default().saturating_add(*grams));
                (StockWhat::Delivered(note.clone()), *grams)
            }
            InkFact::Counted { grams, .. } => {
                left = Some(*grams);
                (StockWhat::Counted, *grams)
            }
            InkFact::Poured { pot, grams, step, .. } => {
                left = left.map(|left| left.saturating_sub(*grams));
                let name = crate::ink::recipe::rows::pot_name(shop, *pot);
                (StockWhat::Poured { pot: *pot, name, step: *step }, *grams)
            }
            InkFact::ComponentSet(_)
            | InkFact::RecipeSet(_)
            | InkFact::PotSet(_)
            | InkFact::ScaleSet { .. }
            | InkFact::PrintSet(_)
            | InkFact::GarmentRead(_)
            | InkFact::RevisionSaved { .. }
            | InkFact::Resized { .. }
            | InkFact::Accepted { .. }
            | InkFact::Moved { .. }
            | InkFact::Wasted { .. }
            | InkFact::Used { .. }
            | InkFact::SwatchRead { .. }
            | InkFact::Matched { .. }
            | InkFact::Approved { .. }
            | InkFact::DrawnDown(_) => continue,
        };
        lines.push(StockLine { event, at: row.at, by: row.fact.by().map(str::to_owned), what, grams, left });
    }
    lines.reverse();
    lines
}
