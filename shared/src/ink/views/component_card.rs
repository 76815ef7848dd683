//! View of one component: its stock, its stock changes, and the recipes that use it. Of the changes only those that are
//! on screen are worked out.

use super::stock::{StockRow, stock_view};
use crate::collections::sort_by_key;
use crate::colour::Colour;
use crate::facts::{InkFact, PourStep};
use crate::ids::Subject;
use crate::ink::model::Stock;
use crate::ink::{Component, best_revision};
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::Grams;

/// A change of a component's stock.
#[derive(Clone, Debug, PartialEq)]
pub enum StockChange {
    /// It was delivered, with this note.
    Delivered(String),
    /// The remaining stock was weighed.
    Counted,
    /// It was poured into a pot.
    Poured {
        /// The pot.
        pot: Subject,
        /// The pot's name.
        name: String,
        /// Purpose of the pour.
        step: PourStep,
    },
}

/// A line of a component's stock history.
#[derive(Clone, Debug, PartialEq)]
pub struct StockLine {
    /// Its event; deleting it undoes the change.
    pub event: Subject,
    /// Wall time.
    pub at: WallTime,
    /// Who recorded it, if known.
    pub by: Option<String>,
    /// The change.
    pub what: StockChange,
    /// Weight delivered, poured or left.
    pub grams: Grams,
    /// Stock after the change; `None` until the stock is known.
    pub left: Option<Grams>,
}

/// A recipe that uses a component.
#[derive(Clone, Debug, PartialEq)]
pub struct UsedIn {
    /// The recipe.
    pub recipe: Subject,
    /// Name of the ink.
    pub name: String,
    /// Colour of the ink.
    pub colour: Option<Colour>,
}

/// A component's card.
#[derive(Clone, Debug, PartialEq)]
pub struct ComponentCard {
    /// Id of the component.
    pub id: Subject,
    /// Its fields.
    pub component: Component,
    /// What is left, whether that is low and why, and what to buy, as in the stock list.
    pub stock: StockRow,
    /// The events that changed its stock and what was left after each, the latest first, without undone ones. There may be
    /// thousands: [`stock_line`] says what a row shows.
    pub changes: Vec<(Subject, Option<Grams>)>,
    /// The recipes that use it, by name.
    pub used_in: Vec<UsedIn>,
}

/// The card of a component; `None` if there is no such component or it was deleted.
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
    Some(ComponentCard { id, component, stock, changes: changes(shop, id), used_in })
}

/// The events that changed a component's stock and what was left after each, the latest first, without undone ones.
fn changes(shop: &Shop, id: Subject) -> Vec<(Subject, Option<Grams>)> {
    let (mut changes, mut stock) = (Vec::new(), Stock::default());
    for (event, row) in shop.ink.events_of(id) {
        if stock.add(id, row) {
            changes.push((event, stock.left));
        }
    }
    changes.reverse();
    changes
}

/// A line of a component's stock history: of this event, after which so much was left. `None` if there is no such event,
/// or it changed no stock.
pub fn stock_line(shop: &Shop, event: Subject, left: Option<Grams>) -> Option<StockLine> {
    let row = shop.ink.event(event)?;
    let (what, grams) = match &row.fact {
        InkFact::Delivered { grams, note, .. } => (StockChange::Delivered(note.clone()), *grams),
        InkFact::Counted { grams, .. } => (StockChange::Counted, *grams),
        InkFact::Poured { pot, grams, step, .. } => {
            let name = crate::ink::recipe::rows::pot_name(shop, *pot);
            (StockChange::Poured { pot: *pot, name, step: *step }, *grams)
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
        | InkFact::DrawnDown(_) => return None,
    };
    Some(StockLine { event, at: row.at, by: row.fact.by().map(str::to_owned), what, grams, left })
}
