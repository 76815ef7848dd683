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

pub(crate) use component::is_storable_weight;
pub use component::{ComponentField, ComponentKind, Hiding};
pub use drawdown::{DrawdownRecord, Film, RecordedLayer, SwatchMeasurement, lab_of, reading_of};
pub use pot::{BatchSize, PotField};
pub use print_use::PrintUse;
pub(crate) use reading::MAX_LAB_AB;
pub use reading::{ColourReading, ReadBy, ReadOn};
pub(crate) use recipe::is_complete_recipe;
pub use recipe::{Part, RecipeField};
pub use share::Share;

/// A fact about ink.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum InkFact {
    /// Fields of a component were set; the first fact creates it. The subject is the component.
    ComponentSet(Vec<ComponentField>),
    /// Fields of a recipe were set; the first fact creates it. The subject is the recipe.
    RecipeSet(Vec<RecipeField>),
    /// Fields of a pot were set; the first fact creates it. The subject is the pot.
    PotSet(Vec<PotField>),
    /// The scale on which the shop weighs ink was set.
    ScaleSet {
        /// Its smallest step.
        step: Grams,
        /// Its capacity, including the vessel.
        most: Option<Grams>,
    },
    /// How much ink a print of a run takes; `None` if that is no longer known. The subject is the run.
    PrintSet(Option<PrintUse>),
    /// A revision of a recipe was saved; the subject is the revision.
    RevisionSaved {
        /// The recipe.
        recipe: Subject,
        /// Its number when it was saved. Two devices may give the same number.
        number: u16,
        /// Its parts.
        parts: Vec<Part>,
        /// The revision it was derived from.
        parent: Option<Subject>,
        /// The pot whose contents it records.
        pot: Option<Subject>,
        /// Why it differs from its parent.
        note: String,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// A component was poured into a pot.
    Poured {
        /// The pot.
        pot: Subject,
        /// The component.
        component: Subject,
        /// Weight poured.
        grams: Grams,
        /// Purpose of the pour.
        step: PourStep,
        /// Why, as a note.
        note: String,
        /// Reading of a swatch made after the pour.
        reading: Option<ColourReading>,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// A weigh-in continues to another size, so that an over-poured component keeps its proportion.
    Resized {
        /// The pot.
        pot: Subject,
        /// Weight of the whole recipe from now on.
        whole: Grams,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// In a weigh-in, the weight poured of a component is accepted as its target.
    Accepted {
        /// The pot.
        pot: Subject,
        /// The component.
        component: Subject,
        /// Weight accepted.
        grams: Grams,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// Ink went from one pot into another.
    Moved {
        /// The pot it was taken from.
        from: Subject,
        /// The pot it was poured into.
        to: Subject,
        /// Weight moved.
        grams: Grams,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// Ink was thrown away, spilled, or dried in the pot.
    Wasted {
        /// The pot.
        pot: Subject,
        /// Weight wasted.
        grams: Grams,
        /// Why, as a note.
        note: String,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// Ink was used for printing.
    Used {
        /// The pot.
        pot: Subject,
        /// The run, if known.
        run: Option<RunId>,
        /// Weight used.
        grams: Grams,
        /// Number of pieces printed.
        pieces: u32,
        /// Calculated weight for those pieces, if all ink of the mesh were transferred and nothing lost.
        paper: Option<Grams>,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// A swatch of a pot was read.
    SwatchRead {
        /// The pot.
        pot: Subject,
        /// The reading.
        reading: ColourReading,
        /// Free note.
        note: String,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// A pot was found to match its target.
    Matched {
        /// The pot.
        pot: Subject,
        /// Reading of its swatch.
        reading: Option<ColourReading>,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// The client approved a print.
    Approved {
        /// The revision approved.
        revision: Subject,
        /// The pot it was printed from.
        pot: Option<Subject>,
        /// The client's name.
        client: String,
        /// Reading of the print.
        reading: Option<ColourReading>,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// A component was delivered.
    Delivered {
        /// The component.
        component: Subject,
        /// Weight delivered.
        grams: Grams,
        /// Free note: from where, which lot.
        note: String,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// The remaining stock of a component was weighed.
    Counted {
        /// The component.
        component: Subject,
        /// Weight left.
        grams: Grams,
        /// Who recorded it, if known.
        by: Option<String>,
    },
    /// A component was drawn down and the drawdown read.
    DrawnDown(DrawdownRecord),
    /// The colour of a lot's garments was read; `None` if it is no longer known. The subject is the lot.
    GarmentRead(Option<ColourReading>),
}

/// Purpose of a pour. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum PourStep {
    /// Part of weighing in the recipe.
    WeighIn,
    /// Correction of the colour.
    Correction,
    /// More of the same, in the proportions of the pot.
    TopUp,
}

/// What was added to the contents of a pot.
#[derive(PartialEq)]
struct Pour {
    source: PourSource,
    into: Subject,
    grams: Grams,
}

/// Where it came from.
#[derive(PartialEq)]
enum PourSource {
    Component(Subject),
    Pot(Subject),
}

/// The things that an event is about.
pub(crate) type Touched = [Option<Subject>; 2];

impl InkFact {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        let poured = |grams: &Grams| grams.is_positive() && is_storable_weight(*grams);
        let person = |by: &Option<String>| by.iter().all(|text| is_name(text));
        let read = |reading: &Option<ColourReading>| reading.is_none_or(ColourReading::in_bounds);
        match self {
            Self::ComponentSet(fields) => fields.len() <= LIST && fields.iter().all(ComponentField::in_bounds),
            Self::RecipeSet(fields) => fields.len() <= LIST && fields.iter().all(RecipeField::in_bounds),
            Self::PotSet(fields) => fields.len() <= LIST && fields.iter().all(PotField::in_bounds),
            Self::ScaleSet { step, most } => {
                (1..=1_000_000).contains(&step.milligrams()) && most.is_none_or(is_storable_weight)
            }
            Self::PrintSet(print) => print.is_none_or(PrintUse::in_bounds),
            Self::RevisionSaved { parts, note, by, .. } => is_complete_recipe(parts) && is_note(note) && person(by),
            Self::Poured { grams, note, reading, by, .. } => {
                poured(grams) && is_note(note) && read(reading) && person(by)
            }
            Self::Resized { whole: grams, by, .. } | Self::Moved { grams, by, .. } => poured(grams) && person(by),
            Self::Accepted { grams, by, .. } | Self::Counted { grams, by, .. } => {
                is_storable_weight(*grams) && person(by)
            }
            Self::Wasted { grams, note, by, .. } | Self::Delivered { grams, note, by, .. } => {
                poured(grams) && is_note(note) && person(by)
            }
            Self::Used { grams, pieces, paper, by, .. } => {
                poured(grams) && *pieces <= PIECES as u32 && paper.is_none_or(is_storable_weight) && person(by)
            }
            Self::SwatchRead { reading, note, by, .. } => reading.in_bounds() && is_note(note) && person(by),
            Self::Matched { reading, by, .. } => read(reading) && person(by),
            Self::Approved { client, reading, by, .. } => is_name(client) && read(reading) && person(by),
            Self::DrawnDown(drawdown) => drawdown.in_bounds(),
            Self::GarmentRead(reading) => read(reading),
        }
    }

    /// The pots, components, recipes, revisions and runs whose history it is part of; `None` for a fact that is not an
    /// event.
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

    /// What it adds to the contents of a pot.
    fn pour(&self) -> Option<Pour> {
        match self {
            Self::Poured { pot, component, grams, .. } => {
                Some(Pour { source: PourSource::Component(*component), into: *pot, grams: *grams })
            }
            Self::Moved { from, to, grams, .. } => {
                Some(Pour { source: PourSource::Pot(*from), into: *to, grams: *grams })
            }
            Self::ComponentSet(_)
            | Self::RecipeSet(_)
            | Self::PotSet(_)
            | Self::ScaleSet { .. }
            | Self::PrintSet(_)
            | Self::GarmentRead(_)
            | Self::RevisionSaved { .. }
            | Self::Resized { .. }
            | Self::Accepted { .. }
            | Self::Wasted { .. }
            | Self::Used { .. }
            | Self::SwatchRead { .. }
            | Self::Matched { .. }
            | Self::Approved { .. }
            | Self::Delivered { .. }
            | Self::Counted { .. }
            | Self::DrawnDown(_) => None,
        }
    }

    /// The pot whose contents it adds to.
    pub(crate) fn pours_into(&self) -> Option<Subject> {
        self.pour().map(|pour| pour.into)
    }

    /// Whether it adds the same to the same pots as `other`: notes, readings and who recorded it do not count.
    pub(crate) fn pours_same_as(&self, other: &Self) -> bool {
        self.pour() == other.pour()
    }

    /// Who recorded it, if known.
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
mod tests;
