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
mod tests;
