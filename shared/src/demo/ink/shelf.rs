//! The components on the shelf of the demo.

use super::pots::{DAY, HOUR, record, record_event};
use crate::colour::Colour;
use crate::demo::maker::Maker;
use crate::facts::{ComponentField, ComponentKind, Hiding, InkFact, RecipeField, Share};
use crate::ids::Subject;
use crate::units::Grams;
use uuid::Uuid;

/// The ids of the ink data, for other parts of the demo.
pub(crate) struct DemoInks {
    pub(crate) clear: Subject,
    pub(crate) filled: Subject,
    pub(crate) yellow: Subject,
    pub(crate) red: Subject,
    pub(crate) blue: Subject,
    pub(crate) black: Subject,
    pub(crate) white: Subject,
    pub(crate) retarder: Subject,
    pub(crate) bonder: Subject,
    /// Mixed, printed and approved.
    pub(crate) apricot: Subject,
    /// Approved, with a newer revision that nobody has approved.
    pub(crate) bone: Subject,
    /// On the scale now; not approved yet.
    pub(crate) signal: Subject,
    /// Being corrected.
    pub(crate) fern: Subject,
    /// Its pot.
    pub(crate) fern_pot: Subject,
    /// Today's pot of apricot.
    pub(crate) apricot_pot: Subject,
}

/// A component, as in its row of the table.
pub(crate) struct ComponentRow {
    name: &'static str,
    kind: ComponentKind,
    colour: Option<&'static str>,
    hiding: Hiding,
    density: u16,
    cost: u32,
    /// Percent: of itself, or of pigment in a base.
    most: Option<f64>,
    /// Grams: the limit for low stock, the amount bought, the amount weighed two days ago.
    weights: [f64; 3],
}

pub(crate) const fn pigment(name: &'static str, colour: &'static str, cost: u32, weights: [f64; 3]) -> ComponentRow {
    ComponentRow {
        name,
        kind: ComponentKind::Pigment,
        colour: Some(colour),
        hiding: Hiding::Transparent,
        density: 1_120,
        cost,
        most: Some(8.0),
        weights,
    }
}

/// The components. Names, prices and data sheets are invented.
pub(crate) const SHELF: [ComponentRow; 9] = [
    ComponentRow {
        name: "Base, clear",
        kind: ComponentKind::Base,
        colour: None,
        hiding: Hiding::Transparent,
        density: 1_030,
        cost: 1_450,
        most: Some(15.0),
        weights: [500.0, 5_000.0, 132.0],
    },
    ComponentRow {
        name: "Base, white-filled",
        kind: ComponentKind::Base,
        colour: Some("#f4f1e8"),
        hiding: Hiding::Opaque,
        density: 1_290,
        cost: 1_980,
        most: Some(10.0),
        weights: [800.0, 5_000.0, 3_120.0],
    },
    pigment("Yellow", "#f0b400", 6_200, [100.0, 500.0, 61.0]),
    pigment("Brick red", "#cf3a28", 7_100, [80.0, 500.0, 214.0]),
    pigment("Blue", "#1d4d9e", 6_800, [80.0, 500.0, 342.0]),
    pigment("Black", "#1b1b1d", 5_400, [60.0, 500.0, 287.0]),
    ComponentRow {
        name: "Base, dense white",
        kind: ComponentKind::Base,
        colour: Some("#faf9f5"),
        hiding: Hiding::Opaque,
        density: 1_620,
        cost: 3_300,
        most: Some(5.0),
        weights: [300.0, 1_000.0, 780.0],
    },
    ComponentRow {
        name: "Retarder",
        kind: ComponentKind::Additive,
        colour: None,
        hiding: Hiding::Transparent,
        density: 1_060,
        cost: 2_200,
        most: Some(5.0),
        weights: [50.0, 500.0, 410.0],
    },
    ComponentRow {
        name: "Bonding additive",
        kind: ComponentKind::Additive,
        colour: None,
        hiding: Hiding::Transparent,
        density: 1_080,
        cost: 8_900,
        most: Some(4.0),
        weights: [20.0, 100.0, 64.0],
    },
];

pub(crate) fn shelf<N: FnMut() -> Uuid>(maker: &mut Maker<N>) -> DemoInks {
    let (start, weighed) = (maker.clock.now - 15 * DAY, maker.clock.now - 2 * DAY);
    let [clear, filled, yellow, red, blue, black, white, retarder, bonder] = SHELF.map(|row| {
        let id = maker.id();
        let [low, tub, left] = row.weights.map(Grams::from_grams);
        let share = row.most.map(Share::from_percent);
        let is_base = row.kind == ComponentKind::Base;
        let fields = vec![
            ComponentField::Name(row.name.into()),
            ComponentField::Kind(row.kind),
            ComponentField::Colour(row.colour.and_then(Colour::from_hex)),
            ComponentField::Hiding(row.hiding),
            ComponentField::Density(Some(row.density)),
            ComponentField::Cost(Some(row.cost)),
            if is_base { ComponentField::MostPigment(share) } else { ComponentField::Most(share) },
            ComponentField::LowAt(Some(low)),
            ComponentField::Tub(Some(tub)),
        ];
        record(maker, start, id, InkFact::ComponentSet(fields));
        let counted = InkFact::Counted { component: id, grams: left, by: Some("Moss".into()) };
        record_event(maker, weighed, counted);
        id
    });
    let delivered = |component, grams| InkFact::Delivered {
        component,
        grams: Grams::from_grams(grams),
        note: "With the tees, on the pallet".into(),
        by: Some("Ines".into()),
    };
    record_event(maker, start + HOUR, delivered(filled, 5_000.0));
    record_event(maker, start + HOUR, delivered(white, 1_000.0));
    let mut recipe = |name: &str, colour: &str, note: &str| {
        let id = maker.id();
        let fields = vec![
            RecipeField::Name(name.into()),
            RecipeField::Colour(Colour::from_hex(colour)),
            RecipeField::Note(note.into()),
        ];
        record(maker, start, id, InkFact::RecipeSet(fields));
        id
    };
    let apricot = recipe("Apricot", "#f2a65a", "Flash between hits, or it drags.");
    let bone = recipe("Bone", "#ece4d2", "");
    let signal = recipe("Jersey white", "#f7f5ef", "Bonding additive on the day: it works for eight hours.");
    let fern = recipe("Fern", "#3f6b3a", "");
    let [fern_pot, apricot_pot] = [maker.id(), maker.id()];
    DemoInks {
        clear,
        filled,
        yellow,
        red,
        blue,
        black,
        white,
        retarder,
        bonder,
        apricot,
        bone,
        signal,
        fern,
        fern_pot,
        apricot_pot,
    }
}
