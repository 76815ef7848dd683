//! A component as it is shown in lists.

use crate::colour::Colour;
use crate::facts::ComponentKind;
use crate::ids::Subject;
use crate::ink::stock_left;
use crate::shop::Shop;
use crate::units::Grams;

/// A component of an ink.
#[derive(Clone, Debug, PartialEq)]
pub struct PartRow {
    /// Id of the component.
    pub component: Subject,
    /// Its name; empty if nothing is known of it yet.
    pub name: String,
    /// Role of the component in an ink.
    pub kind: ComponentKind,
    /// Its colour.
    pub colour: Option<Colour>,
    /// Percent of the whole ink.
    pub percent: f64,
    /// Weight left on the shelf; `None` until it was weighed or delivered.
    pub left: Option<Grams>,
}

/// The components of these percentages, in their order.
pub(crate) fn part_rows(shop: &Shop, percentages: &[(Subject, f64)]) -> Vec<PartRow> {
    let row = |(id, percent): &(Subject, f64)| {
        let component = shop.ink.component(*id);
        PartRow {
            component: *id,
            name: component_name(shop, *id),
            kind: component.map(|component| component.kind).unwrap_or_default(),
            colour: component.and_then(|component| component.colour),
            percent: *percent,
            left: stock_left(shop, *id),
        }
    };
    percentages.iter().map(row).collect()
}

pub(crate) fn component_name(shop: &Shop, id: Subject) -> String {
    shop.ink.component(id).map(|component| component.name.clone()).unwrap_or_default()
}

pub(crate) fn pot_name(shop: &Shop, id: Subject) -> String {
    shop.ink.pot(id).map(|pot| pot.name.clone()).unwrap_or_default()
}
