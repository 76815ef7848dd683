//! The state of exposures and the reclaim bath, folded from the facts.

use super::{Bath, Emulsion, KnownExposure, Lamp};
use crate::codec::Encode;
use crate::collections::Table;
use crate::deletion::{DeleteById, Deletion, deletable};
use crate::facts::{MIN_GOAL, StencilFact};
use crate::ids::Subject;
use crate::time::WallTime;

/// The lamps, emulsions, known exposures and the reclaim bath of the shop.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct ExposureLog {
    lamps: Table<Lamp>,
    emulsions: Table<Emulsion>,
    exposures: Table<KnownExposure>,
    goal: Option<u8>,
    /// The reclaim bath.
    pub bath: Bath,
}

impl ExposureLog {
    /// A lamp, also if it was deleted.
    pub fn lamp(&self, id: Subject) -> Option<&Lamp> {
        self.lamps.get(&id)
    }

    /// All lamps, including deleted ones.
    pub fn lamps(&self) -> impl Iterator<Item = (Subject, &Lamp)> {
        self.lamps.iter().map(|(id, lamp)| (*id, lamp))
    }

    /// An emulsion, also if it was deleted.
    pub fn emulsion(&self, id: Subject) -> Option<&Emulsion> {
        self.emulsions.get(&id)
    }

    /// All emulsions, including deleted ones.
    pub fn emulsions(&self) -> impl Iterator<Item = (Subject, &Emulsion)> {
        self.emulsions.iter().map(|(id, emulsion)| (*id, emulsion))
    }

    /// A known exposure, also if it was deleted.
    pub fn exposure(&self, id: Subject) -> Option<&KnownExposure> {
        self.exposures.get(&id)
    }

    /// The known exposures that were not deleted.
    pub fn exposures(&self) -> impl Iterator<Item = (Subject, &KnownExposure)> {
        self.exposures.iter().filter(|(_, known)| !known.deleted).map(|(id, known)| (*id, known))
    }

    /// The step of the 21-step guide that should stay solid: the shop's own goal, or [`MIN_GOAL`].
    pub fn goal(&self) -> u8 {
        self.goal.unwrap_or(MIN_GOAL)
    }

    /// Folds a fact in.
    pub(crate) fn apply(&mut self, subject: Subject, at: WallTime, fact: &StencilFact) {
        match fact {
            StencilFact::Lamp(fields) => {
                let lamp = self.lamps.get_or_insert_with(subject, || Lamp { created: at, ..Lamp::default() });
                fields.iter().for_each(|field| lamp.set(field));
            }
            StencilFact::Emulsion(fields) => {
                let emulsion =
                    self.emulsions.get_or_insert_with(subject, || Emulsion { created: at, ..Emulsion::default() });
                fields.iter().for_each(|field| emulsion.set(field));
            }
            StencilFact::Exposure(fact) => {
                // A second fact with the same id is a correction: it keeps the time of the first.
                let before = self.exposures.get(&subject);
                let (at, deleted) = before.map_or((at, false), |known| (known.at, known.deleted));
                self.exposures.insert(subject, KnownExposure { fact: fact.clone(), at, deleted });
            }
            StencilFact::Goal(step) => self.goal = Some(*step),
            StencilFact::Bath(fields) => fields.iter().for_each(|field| self.bath.set(field)),
            StencilFact::BathCharged { chemistry, by } => self.bath.charge(subject, at, chemistry, by.as_deref()),
            StencilFact::BatchIn { screens, count } => self.bath.put_in(subject, at, screens, *count),
            StencilFact::BatchOut { time, count } => self.bath.take_out(subject, at, *time, *count),
        }
    }
}

deletable!(Lamp, Emulsion, KnownExposure);

impl DeleteById for ExposureLog {
    fn delete(&mut self, id: Subject, deletion: Deletion) -> bool {
        self.lamps.delete(id, deletion)
            || self.emulsions.delete(id, deletion)
            || self.exposures.delete(id, deletion)
            || self.bath.delete(id, deletion)
    }
}
