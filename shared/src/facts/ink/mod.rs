//! What can happen at the ink bench. **Frozen** as [`crate::facts::Fact`] is.
//!
//! Components, recipes and pots have fields. All else is an event with an id of its own, its entry's
//! subject: to take it back is to delete that id, to correct it is to tell it again under it, and its photos
//! are photos of it.

use crate::bounds::{LIST, PIECES, is_name, is_note};
use crate::codec::Encode;
use crate::ids::{RunId, Subject};
use crate::units::Grams;
use serde::{Deserialize, Serialize};

mod component;
mod drawdown;
mod pot;
mod print_use;
mod reading;
mod recipe;
mod share;

pub(crate) use component::is_kept;
pub use component::{ComponentField, ComponentKind, Hiding};
pub use drawdown::{DrawdownMade, Film, Lay, SwatchSeen, lab_of, reading_of};
pub use pot::{BatchSize, PotField};
pub use print_use::PrintUse;
pub use reading::{ColourReading, ReadBy, ReadOn};
pub(crate) use recipe::is_whole;
pub use recipe::{Part, RecipeField};
pub use share::Share;

/// Something at the ink bench.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum InkFact {
    /// Fields of a component were set; it comes to be with the first. The subject is the component.
    ComponentSet(Vec<ComponentField>),
    /// Fields of a recipe were set; it comes to be with the first. The subject is the recipe.
    RecipeSet(Vec<RecipeField>),
    /// Fields of a pot were set; it comes to be with the first. The subject is the pot.
    PotSet(Vec<PotField>),
    /// The scale the shop weighs ink on.
    ScaleSet {
        /// The steps it reads in.
        step: Grams,
        /// The most it bears, pot and all.
        most: Option<Grams>,
    },
    /// What a print of a run takes, or none where that is not known any more; the subject is the run.
    PrintSet(Option<PrintUse>),
    /// A revision of a recipe was written down; the subject is the revision.
    RevisionSaved {
        /// The recipe it is of.
        recipe: Subject,
        /// Its number when it was saved. Two devices may give one number twice.
        number: u16,
        /// Its parts.
        parts: Vec<Part>,
        /// The revision it came from.
        parent: Option<Subject>,
        /// The pot whose contents it is.
        pot: Option<Subject>,
        /// Why it differs.
        note: String,
        /// By whom, where the crew is named.
        by: Option<String>,
    },
    /// A component was poured into a pot.
    Poured {
        /// Which pot.
        pot: Subject,
        /// What.
        component: Subject,
        /// How much.
        grams: Grams,
        /// What for.
        step: PourStep,
        /// Why, in words.
        note: String,
        /// What a swatch read with it in.
        reading: Option<ColourReading>,
        /// By whom.
        by: Option<String>,
    },
    /// A weigh-in goes on to another size, so that what was poured too much keeps its proportion.
    Resized {
        /// Which pot.
        pot: Subject,
        /// The recipe's whole from now on.
        whole: Grams,
        /// By whom.
        by: Option<String>,
    },
    /// A weigh-in takes what is in of a component as what was meant.
    Accepted {
        /// Which pot.
        pot: Subject,
        /// Of what.
        component: Subject,
        /// How much.
        grams: Grams,
        /// By whom.
        by: Option<String>,
    },
    /// Ink went from one pot into another.
    Moved {
        /// Out of this pot.
        from: Subject,
        /// Into this one.
        to: Subject,
        /// How much.
        grams: Grams,
        /// By whom.
        by: Option<String>,
    },
    /// Ink was thrown away, spilled, or dried in the pot.
    Wasted {
        /// Which pot.
        pot: Subject,
        /// How much.
        grams: Grams,
        /// Why, in words.
        note: String,
        /// By whom.
        by: Option<String>,
    },
    /// Ink was printed with.
    Used {
        /// Which pot.
        pot: Subject,
        /// On which run.
        run: Option<RunId>,
        /// How much.
        grams: Grams,
        /// On how many pieces.
        pieces: u32,
        /// What those pieces take on paper, were all the mesh holds to go over and nothing lost.
        paper: Option<Grams>,
        /// By whom.
        by: Option<String>,
    },
    /// A swatch of a pot was read.
    SwatchRead {
        /// Which pot.
        pot: Subject,
        /// What it read.
        reading: ColourReading,
        /// Anything to it.
        note: String,
        /// By whom.
        by: Option<String>,
    },
    /// A pot was found to match.
    Matched {
        /// Which pot.
        pot: Subject,
        /// What its swatch read.
        reading: Option<ColourReading>,
        /// By whom.
        by: Option<String>,
    },
    /// The client said yes to a print.
    Approved {
        /// To this revision of the recipe.
        revision: Subject,
        /// From which pot.
        pot: Option<Subject>,
        /// Who said yes.
        client: String,
        /// What the print read.
        reading: Option<ColourReading>,
        /// Who heard it.
        by: Option<String>,
    },
    /// A component came in.
    Delivered {
        /// Which.
        component: Subject,
        /// How much.
        grams: Grams,
        /// From where, which lot.
        note: String,
        /// By whom.
        by: Option<String>,
    },
    /// What is left of a component was weighed.
    Counted {
        /// Which.
        component: Subject,
        /// How much.
        grams: Grams,
        /// By whom.
        by: Option<String>,
    },
    /// A component was drawn down and looked at.
    DrawnDown(DrawdownMade),
    /// The colour of a lot's garments was read, or is not known any more; the subject is the lot.
    GarmentRead(Option<ColourReading>),
}

/// What a pour is for. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum PourStep {
    /// The recipe's own.
    WeighIn,
    /// To bring the colour nearer.
    Correction,
    /// More of the same, in the proportions of the pot.
    TopUp,
}

/// The things an event is about.
pub(crate) type Touched = [Option<Subject>; 2];

impl InkFact {
    /// As [`super::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        let poured = |grams: &Grams| grams.is_positive() && is_kept(*grams);
        let person = |by: &Option<String>| by.iter().all(|text| is_name(text));
        let read = |reading: &Option<ColourReading>| reading.is_none_or(ColourReading::in_bounds);
        match self {
            Self::ComponentSet(fields) => fields.len() <= LIST && fields.iter().all(ComponentField::in_bounds),
            Self::RecipeSet(fields) => fields.len() <= LIST && fields.iter().all(RecipeField::in_bounds),
            Self::PotSet(fields) => fields.len() <= LIST && fields.iter().all(PotField::in_bounds),
            Self::ScaleSet { step, most } => (1..=1_000_000).contains(&step.milligrams()) && most.is_none_or(is_kept),
            Self::PrintSet(print) => print.is_none_or(PrintUse::in_bounds),
            Self::RevisionSaved { parts, note, by, .. } => is_whole(parts) && is_note(note) && person(by),
            Self::Poured { grams, note, reading, by, .. } => {
                poured(grams) && is_note(note) && read(reading) && person(by)
            }
            Self::Resized { whole: grams, by, .. } | Self::Moved { grams, by, .. } => poured(grams) && person(by),
            Self::Accepted { grams, by, .. } | Self::Counted { grams, by, .. } => is_kept(*grams) && person(by),
            Self::Wasted { grams, note, by, .. } | Self::Delivered { grams, note, by, .. } => {
                poured(grams) && is_note(note) && person(by)
            }
            Self::Used { grams, pieces, paper, by, .. } => {
                poured(grams) && *pieces <= PIECES as u32 && paper.is_none_or(is_kept) && person(by)
            }
            Self::SwatchRead { reading, note, by, .. } => reading.in_bounds() && is_note(note) && person(by),
            Self::Matched { reading, by, .. } => read(reading) && person(by),
            Self::Approved { client, reading, by, .. } => is_name(client) && read(reading) && person(by),
            Self::DrawnDown(drawdown) => drawdown.in_bounds(),
            Self::GarmentRead(reading) => read(reading),
        }
    }

    /// The pots, components, recipes, revisions and runs whose story it is part of; none for a fact that is no event.
    pub(crate) fn touches(&self) -> Option<Touched> {
        Some(match self {
            Self::ComponentSet(_)
            | Self::RecipeSet(_)
            | Self::PotSet(_)
            | Self::ScaleSet { .. }
            | Self::PrintSet(_)
            | Self::GarmentRead(_) => return None,
            Self::RevisionSaved { recipe, pot, .. } => [Some(*recipe), *pot],
            Self::Poured { pot, component, .. } => [Some(*pot), Some(*component)],
            Self::Moved { from, to, .. } => [Some(*from), Some(*to)],
            Self::Used { pot, run, .. } => [Some(*pot), *run],
            Self::Approved { revision, pot, .. } => [Some(*revision), *pot],
            Self::Resized { pot, .. }
            | Self::Accepted { pot, .. }
            | Self::Wasted { pot, .. }
            | Self::SwatchRead { pot, .. }
            | Self::Matched { pot, .. } => [Some(*pot), None],
            Self::Delivered { component, .. } | Self::Counted { component, .. } => [Some(*component), None],
            Self::DrawnDown(drawdown) => [Some(drawdown.component), drawdown.rest],
        })
    }

    /// The pot that holds something else by it.
    pub(crate) fn pours_into(&self) -> Option<Subject> {
        match self {
            Self::Poured { pot, .. } => Some(*pot),
            Self::Moved { to, .. } => Some(*to),
            _ => None,
        }
    }

    /// Whether pots hold the same by this as by the other: a remark, a reading, who did it make no difference.
    pub(crate) fn pours_as(&self, other: &Self) -> bool {
        match (self, other) {
            (
                Self::Poured { pot, component, grams, .. },
                Self::Poured { pot: other_pot, component: other_component, grams: other_grams, .. },
            ) => (pot, component, grams) == (other_pot, other_component, other_grams),
            (
                Self::Moved { from, to, grams, .. },
                Self::Moved { from: other_from, to: other_to, grams: other_grams, .. },
            ) => (from, to, grams) == (other_from, other_to, other_grams),
            _ => self.pours_into().is_none() && other.pours_into().is_none(),
        }
    }

    /// Who did it, where that is noted.
    pub fn by(&self) -> Option<&str> {
        match self {
            Self::ComponentSet(_)
            | Self::RecipeSet(_)
            | Self::PotSet(_)
            | Self::ScaleSet { .. }
            | Self::PrintSet(_)
            | Self::GarmentRead(_) => None,
            Self::RevisionSaved { by, .. }
            | Self::Poured { by, .. }
            | Self::Moved { by, .. }
            | Self::Used { by, .. }
            | Self::Approved { by, .. }
            | Self::Resized { by, .. }
            | Self::Accepted { by, .. }
            | Self::Wasted { by, .. }
            | Self::SwatchRead { by, .. }
            | Self::Matched { by, .. }
            | Self::Delivered { by, .. }
            | Self::Counted { by, .. } => by.as_deref(),
            Self::DrawnDown(drawdown) => drawdown.by.as_deref(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::journal::JournalFact;
    use crate::units::Length;
    use component::{ComponentKind, Hiding};
    use drawdown::{Film, Lay, SwatchSeen};
    use reading::{ReadBy, ReadOn};
    use share::Share;
    use uuid::Uuid;

    const POT: Subject = Uuid::from_u128(0x1);
    const RED: Subject = Uuid::from_u128(0x2);
    const ONE: &str = "00000000-0000-0000-0000-000000000001";
    const TWO: &str = "00000000-0000-0000-0000-000000000002";

    fn poured() -> InkFact {
        InkFact::Poured {
            pot: POT,
            component: RED,
            grams: Grams::from_grams(2.6),
            step: PourStep::Correction,
            note: "a touch".into(),
            reading: Some(ColourReading::from_lab([52.5, 41.0, -3.25], ReadBy::Photo)),
            by: Some("Ines".into()),
        }
    }

    fn saved() -> InkFact {
        InkFact::RevisionSaved {
            recipe: POT,
            number: 3,
            parts: vec![
                Part { component: RED, share: Share::WHOLE, on_top: false },
                Part { component: POT, share: Share::from_percent(2.5), on_top: true },
            ],
            parent: Some(RED),
            pot: None,
            note: String::new(),
            by: None,
        }
    }

    fn drawn(lay: Lay, seen: SwatchSeen) -> InkFact {
        InkFact::DrawnDown(DrawdownMade {
            component: RED,
            share: Share::from_percent(10.0),
            rest: Some(POT),
            lay,
            seen,
            note: String::new(),
            by: Some("Ines".into()),
        })
    }

    /// Lines like these are in people's backup files.
    #[test]
    fn the_names_of_ink_facts_are_a_file_format() {
        let grams = Grams::from_grams(1.0);
        let print = PrintUse {
            width: Length::from_millimetres(250.0),
            height: Length::from_millimetres(200.0),
            coverage: 500,
            volume: 4_000,
            hits: 1,
            transfer: 900,
            density: 1_050,
            loss: 100,
        };
        for (fact, json) in [
            (
                InkFact::ComponentSet(vec![
                    ComponentField::Kind(ComponentKind::Pigment),
                    ComponentField::Hiding(Hiding::Opaque),
                    ComponentField::Density(Some(1_180)),
                    ComponentField::Cost(None),
                    ComponentField::Most(Some(Share::from_percent(12.0))),
                    ComponentField::MostPigment(None),
                    ComponentField::LowAt(Some(grams)),
                    ComponentField::Tub(None),
                ]),
                r#"{"component_set":[{"kind":"pigment"},{"hiding":"opaque"},{"density":1180},{"cost":null},{"most":120000000},{"most_pigment":null},{"low_at":1000},{"tub":null}]}"#.to_owned(),
            ),
            (
                InkFact::RecipeSet(vec![RecipeField::Name("Brick".into()), RecipeField::Target(None)]),
                r#"{"recipe_set":[{"name":"Brick"},{"target":null}]}"#.to_owned(),
            ),
            (
                InkFact::PotSet(vec![
                    PotField::Revision(Some(RED)),
                    PotField::Size(Some(pot::BatchSize::Ink(grams))),
                    PotField::Capacity(None),
                    PotField::Tare(Some(grams)),
                    PotField::Closed(true),
                ]),
                format!(
                    r#"{{"pot_set":[{{"revision":"{TWO}"}},{{"size":{{"ink":1000}}}},{{"capacity":null}},{{"tare":1000}},{{"closed":true}}]}}"#
                ),
            ),
            (
                InkFact::ScaleSet { step: Grams::from_grams(0.1), most: None },
                r#"{"scale_set":{"step":100,"most":null}}"#.to_owned(),
            ),
            (
                InkFact::PrintSet(Some(print)),
                r#"{"print_set":{"width":250000,"height":200000,"coverage":500,"volume":4000,"hits":1,"transfer":900,"density":1050,"loss":100}}"#.to_owned(),
            ),
            (
                saved(),
                format!(
                    r#"{{"revision_saved":{{"recipe":"{ONE}","number":3,"parts":[{{"component":"{TWO}","share":1000000000,"on_top":false}},{{"component":"{ONE}","share":25000000,"on_top":true}}],"parent":"{TWO}","pot":null,"note":"","by":null}}}}"#
                ),
            ),
            (
                poured(),
                format!(
                    r#"{{"poured":{{"pot":"{ONE}","component":"{TWO}","grams":2600,"step":"correction","note":"a touch","reading":{{"l":52500,"a":41000,"b":-3250,"by":"photo"}},"by":"Ines"}}}}"#
                ),
            ),
            (
                InkFact::Resized { pot: POT, whole: grams, by: None },
                format!(r#"{{"resized":{{"pot":"{ONE}","whole":1000,"by":null}}}}"#),
            ),
            (
                InkFact::Accepted { pot: POT, component: RED, grams, by: None },
                format!(r#"{{"accepted":{{"pot":"{ONE}","component":"{TWO}","grams":1000,"by":null}}}}"#),
            ),
            (
                InkFact::Moved { from: POT, to: RED, grams, by: None },
                format!(r#"{{"moved":{{"from":"{ONE}","to":"{TWO}","grams":1000,"by":null}}}}"#),
            ),
            (
                InkFact::Wasted { pot: POT, grams, note: "dried".into(), by: None },
                format!(r#"{{"wasted":{{"pot":"{ONE}","grams":1000,"note":"dried","by":null}}}}"#),
            ),
            (
                InkFact::Used { pot: POT, run: Some(RED), grams, pieces: 9, paper: None, by: None },
                format!(r#"{{"used":{{"pot":"{ONE}","run":"{TWO}","grams":1000,"pieces":9,"paper":null,"by":null}}}}"#),
            ),
            (
                InkFact::SwatchRead {
                    pot: POT,
                    reading: ColourReading::from_lab([1.0, 2.0, 3.0], ReadBy::Instrument),
                    note: String::new(),
                    by: None,
                },
                format!(
                    r#"{{"swatch_read":{{"pot":"{ONE}","reading":{{"l":1000,"a":2000,"b":3000,"by":"instrument"}},"note":"","by":null}}}}"#
                ),
            ),
            (
                InkFact::Matched { pot: POT, reading: None, by: None },
                format!(r#"{{"matched":{{"pot":"{ONE}","reading":null,"by":null}}}}"#),
            ),
            (
                InkFact::Approved { revision: RED, pot: Some(POT), client: "Moss".into(), reading: None, by: None },
                format!(
                    r#"{{"approved":{{"revision":"{TWO}","pot":"{ONE}","client":"Moss","reading":null,"by":null}}}}"#
                ),
            ),
            (
                InkFact::Delivered { component: RED, grams, note: String::new(), by: None },
                format!(r#"{{"delivered":{{"component":"{TWO}","grams":1000,"note":"","by":null}}}}"#),
            ),
            (
                InkFact::Counted { component: RED, grams, by: None },
                format!(r#"{{"counted":{{"component":"{TWO}","grams":1000,"by":null}}}}"#),
            ),
            (
                drawn(Lay::Hiding, SwatchSeen::Colour(ColourReading::from_lab([1.0, 2.0, 3.0], ReadBy::Instrument))),
                format!(
                    r#"{{"drawn_down":{{"component":"{TWO}","share":100000000,"rest":"{ONE}","lay":"hiding","seen":{{"colour":{{"l":1000,"a":2000,"b":3000,"by":"instrument"}}}},"note":"","by":"Ines"}}}}"#
                ),
            ),
            (
                drawn(
                    Lay::Over { film: Film::Wet { um: 100, a_hit: 40 }, backing: SwatchSeen::CHART_BLACK },
                    SwatchSeen::Curve(vec![500; crate::colour::BANDS]),
                ),
                format!(
                    r#"{{"drawn_down":{{"component":"{TWO}","share":100000000,"rest":"{ONE}","lay":{{"over":{{"film":{{"wet":{{"um":100,"a_hit":40}}}},"backing":{{"flat":100}}}}}},"seen":{{"curve":[{}]}},"note":"","by":"Ines"}}}}"#,
                    ["500"; crate::colour::BANDS].join(",")
                ),
            ),
            (InkFact::GarmentRead(None), r#"{"garment_read":null}"#.to_owned()),
            (
                InkFact::RecipeSet(vec![RecipeField::ReadOn(ReadOn::Garment)]),
                r#"{"recipe_set":[{"read_on":"garment"}]}"#.to_owned(),
            ),
        ] {
            let fact = Fact::Ink(fact);
            assert!(fact.in_bounds(), "{fact:?}");
            let json = format!(r#"{{"ink":{json}}}"#);
            assert_eq!(fact.to_json().get(), json);
            assert_eq!(Fact::from_json(&json), Some(fact));
        }
    }

    /// Bytes like these are on people's phones.
    #[test]
    fn the_packed_bytes_of_ink_facts_are_frozen() {
        let id = |last: u8| [&[16][..], &[0; 15], &[last]].concat();
        let grams = [0xd0, 0x28];
        let reading = [1, 0xa8, 0xb4, 0x06, 0xd0, 0x80, 0x05, 0xe3, 0x32, 1];
        let frozen = [&[6][..], &id(1), &id(2), &grams, &[1, 7], b"a touch", &reading, &[1, 4], b"Ines"].concat();
        assert_eq!(postcard::to_allocvec(&poured()).unwrap(), frozen);
        assert_eq!(crate::codec::from_bytes::<InkFact>(&frozen), Some(poured()));
        let whole = [0x80, 0x94, 0xeb, 0xdc, 0x03];
        let top = [0xc0, 0xf0, 0xf5, 0x0b];
        let frozen =
            [&[5][..], &id(1), &[3, 2], &id(2), &whole, &[0], &id(1), &top, &[1], &[1], &id(2), &[0, 0, 0]].concat();
        assert_eq!(crate::codec::to_bytes(&saved()), frozen);
        assert_eq!(crate::codec::from_bytes::<InkFact>(&frozen), Some(saved()));
        let over = drawn(Lay::Over { film: Film::Hits(2), backing: SwatchSeen::CHART_WHITE }, SwatchSeen::Flat(1));
        let tenth = [0x80, 0xc2, 0xd7, 0x2f];
        let frozen =
            [&[17][..], &id(2), &tenth, &[1], &id(1), &[1, 0, 2, 2, 0xc0, 0x3e], &[2, 1, 0], &[1, 4], b"Ines"].concat();
        assert_eq!(crate::codec::to_bytes(&over), frozen);
        assert_eq!(postcard::to_allocvec(&over).unwrap(), frozen);
        assert_eq!(crate::codec::from_bytes::<InkFact>(&frozen), Some(over));
        assert_eq!(crate::codec::to_bytes(&InkFact::GarmentRead(None)), [18, 0]);
    }

    #[test]
    fn weights_and_recipes_that_no_device_records_are_out_of_bounds() {
        let pour = |grams| InkFact::Wasted { pot: POT, grams, note: String::new(), by: None };
        let too_much = Grams::MOST.saturating_add(Grams::from_milligrams(1));
        for (grams, taken) in
            [(Grams::MOST, true), (Grams::ZERO, false), (too_much, false), (Grams::from_grams(-1.0), false)]
        {
            assert_eq!(pour(grams).in_bounds(), taken);
        }
        let InkFact::RevisionSaved { recipe, number, parent, pot, note, by, .. } = saved() else { panic!() };
        let short = vec![Part { component: RED, share: Share::from_percent(99.0), on_top: false }];
        assert!(!InkFact::RevisionSaved { recipe, number, parts: short, parent, pot, note, by }.in_bounds());
        assert!(!InkFact::ScaleSet { step: Grams::ZERO, most: None }.in_bounds());
        let far = ColourReading { l: 0, a: 0, b: 200_000, by: ReadBy::Screen };
        assert!(!InkFact::Matched { pot: POT, reading: Some(far), by: None }.in_bounds());
        assert!(!InkFact::GarmentRead(Some(far)).in_bounds());
        assert!(!drawn(Lay::Hiding, SwatchSeen::Curve(vec![500; 30])).in_bounds());
        assert!(
            !drawn(Lay::Over { film: Film::Hits(0), backing: SwatchSeen::Flat(1) }, SwatchSeen::Flat(1)).in_bounds()
        );
    }
}
