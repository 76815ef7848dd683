//! The components on the shelf of the demo.

use super::pots::{DAY, HOUR, record, record_event};
use crate::colour::Colour;
use crate::demo::language::{APRICOT, BONE, EMPTY, FERN, INES, JERSEY_WHITE, MOSS, Text, text};
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
    pub(crate) jersey_white: Subject,
    /// Being corrected.
    pub(crate) fern: Subject,
    /// Its pot.
    pub(crate) fern_pot: Subject,
    /// Today's pot of apricot.
    pub(crate) apricot_pot: Subject,
}

/// A component, as in its row of the table.
pub(crate) struct ComponentRow {
    name: Text,
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

pub(crate) const fn pigment(name: Text, colour: &'static str, cost: u32, weights: [f64; 3]) -> ComponentRow {
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
        name: text("Base, clear", "Base transparente"),
        kind: ComponentKind::Base,
        colour: None,
        hiding: Hiding::Transparent,
        density: 1_030,
        cost: 1_450,
        most: Some(15.0),
        weights: [500.0, 5_000.0, 132.0],
    },
    ComponentRow {
        name: text("Base, white-filled", "Base con carga blanca"),
        kind: ComponentKind::Base,
        colour: Some("#f4f1e8"),
        hiding: Hiding::Opaque,
        density: 1_290,
        cost: 1_980,
        most: Some(10.0),
        weights: [800.0, 5_000.0, 3_120.0],
    },
    pigment(text("Yellow", "Amarillo"), "#f0b400", 6_200, [100.0, 500.0, 61.0]),
    pigment(text("Brick red", "Rojo ladrillo"), "#cf3a28", 7_100, [80.0, 500.0, 214.0]),
    pigment(text("Blue", "Azul"), "#1d4d9e", 6_800, [80.0, 500.0, 342.0]),
    pigment(text("Black", "Negro"), "#1b1b1d", 5_400, [60.0, 500.0, 287.0]),
    ComponentRow {
        name: text("Base, dense white", "Base blanca densa"),
        kind: ComponentKind::Base,
        colour: Some("#faf9f5"),
        hiding: Hiding::Opaque,
        density: 1_620,
        cost: 3_300,
        most: Some(5.0),
        weights: [300.0, 1_000.0, 780.0],
    },
    ComponentRow {
        name: text("Retarder", "Retardante"),
        kind: ComponentKind::Additive,
        colour: None,
        hiding: Hiding::Transparent,
        density: 1_060,
        cost: 2_200,
        most: Some(5.0),
        weights: [50.0, 500.0, 410.0],
    },
    ComponentRow {
        name: text("Bonding additive", "Aditivo fijador"),
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
    let language = maker.language;
    let (start, weighed) = (maker.clock.now - 15 * DAY, maker.clock.now - 2 * DAY);
    let [clear, filled, yellow, red, blue, black, white, retarder, bonder] = SHELF.map(|row| {
        let id = maker.id();
        let [low, tub, left] = row.weights.map(Grams::from_grams);
        let share = row.most.map(Share::from_percent);
        let is_base = row.kind == ComponentKind::Base;
        let fields = vec![
            ComponentField::Name(language.say(row.name)),
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
        let counted = InkFact::Counted { component: id, grams: left, by: Some(language.say(MOSS)) };
        record_event(maker, weighed, counted);
        id
    });
    let delivered = |component, grams| InkFact::Delivered {
        component,
        grams: Grams::from_grams(grams),
        note: language.say(text("Came with the tees, on the pallet", "Llegó con las camisetas, en la tarima")),
        by: Some(language.say(INES)),
    };
    record_event(maker, start + HOUR, delivered(filled, 5_000.0));
    record_event(maker, start + HOUR, delivered(white, 1_000.0));
    let mut recipe = |name: Text, colour: &str, note: Text| {
        let id = maker.id();
        let fields = vec![
            RecipeField::Name(language.say(name)),
            RecipeField::Colour(Colour::from_hex(colour)),
            RecipeField::Note(language.say(note)),
        ];
        record(maker, start, id, InkFact::RecipeSet(fields));
        id
    };
    let flash = text("Flash between strokes, or it sticks.", "Flash entre una mano y otra; si no, se pega.");
    let apricot = recipe(APRICOT, "#f2a65a", flash);
    let bone = recipe(BONE, "#ece4d2", EMPTY);
    let same_day = text(
        "Mix in the bonding additive on the day you print.",
        "El aditivo fijador se agrega el mismo día que se imprime.",
    );
    let jersey_white = recipe(JERSEY_WHITE, "#f7f5ef", same_day);
    let fern = recipe(FERN, "#3f6b3a", EMPTY);
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
        jersey_white,
        fern,
        fern_pot,
        apricot_pot,
    }
}
