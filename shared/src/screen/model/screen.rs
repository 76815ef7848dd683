//! The shop's screens as the facts leave them.

use super::standing::ScreenStanding;
use crate::codec::Encode;
use crate::collections::Table;
use crate::deletion::{DeleteById, Deletion, deletable};
use crate::facts::{AgeLimits, Coats, MeshSheet, ScreenFact, ScreenField, ScreenState, StepTimes};
use crate::ids::{RunId, Subject};
use serde::{Deserialize, Serialize};

/// A screen.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Encode)]
pub struct Screen {
    /// What is written on the frame.
    pub label: String,
    /// Its mesh.
    pub mesh: Option<MeshSheet>,
    /// Its tension when last measured, in tenths of N/cm.
    pub tension: Option<u16>,
    /// The emulsion on it, or last on it.
    pub emulsion: String,
    /// How it is coated.
    pub coats: Option<Coats>,
    /// Anything else to know.
    pub notes: String,
    /// The run whose art is on it.
    pub run: Option<RunId>,
    /// Which colour of the art it prints.
    pub colour: String,
    /// The screen it was burned to replace.
    pub replaces: Option<Subject>,
    /// Where it stands.
    pub state: ScreenState,
    /// Wall time since when.
    pub since: u64,
    /// Wall time at which its coat or its stencil was found dry.
    pub dry: Option<u64>,
    /// Wall time at which the image now on it was exposed.
    pub exposed: Option<u64>,
    /// What happened to it, oldest first; only the latest are kept.
    pub log: Vec<ScreenChange>,
    /// Wall time of its first fields; none while only other facts about it have arrived.
    pub created: Option<u64>,
    /// Whether it was deleted.
    pub deleted: bool,
}

/// Something that happened to a screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
pub struct ScreenChange {
    /// Wall time.
    pub at: u64,
    /// What.
    pub what: ScreenEvent,
    /// By whom.
    pub by: Option<String>,
}

/// What can happen to a screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
pub enum ScreenEvent {
    /// It went into this state.
    To(ScreenState),
    /// It was found dry, or not dry after all.
    Dry(bool),
}

/// Changes kept of each screen: about three lives of a stencil.
const LOG: usize = 24;

deletable!(Screen);

impl Screen {
    fn set(&mut self, field: &ScreenField) {
        match field {
            ScreenField::Label(label) => self.label.clone_from(label),
            ScreenField::Mesh(mesh) => self.mesh = *mesh,
            ScreenField::Tension(tension) => self.tension = *tension,
            ScreenField::Emulsion(emulsion) => self.emulsion.clone_from(emulsion),
            ScreenField::Coats(coats) => self.coats = *coats,
            ScreenField::Notes(notes) => self.notes.clone_from(notes),
            ScreenField::Run(run) => self.run = *run,
            ScreenField::Colour(colour) => self.colour.clone_from(colour),
            ScreenField::Replaces(screen) => self.replaces = *screen,
        }
    }

    fn go(&mut self, at: u64, what: ScreenEvent, by: Option<&String>) {
        self.stand(self.standing().after(at, what));
        if self.log.len() == LOG {
            self.log.remove(0);
        }
        self.log.push(ScreenChange { at, what, by: by.cloned() });
    }

    /// Whether it is in the shop: entered, and not deleted.
    pub fn is_live(&self) -> bool {
        self.created.is_some() && !self.deleted
    }
}

/// All screens of the shop.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Screens {
    all: Table<Screen>,
    /// After how many days the shop wants to be warned.
    pub limits: AgeLimits,
    /// How long each step to a new stencil takes.
    pub times: StepTimes,
}

impl DeleteById for Screens {
    fn delete(&mut self, id: Subject, deletion: Deletion) -> bool {
        self.all.delete(id, deletion)
    }
}

impl Screens {
    /// A screen, deleted or not.
    pub fn get(&self, id: Subject) -> Option<&Screen> {
        self.all.get(&id)
    }

    /// A screen that is in the shop.
    pub fn live(&self, id: Subject) -> Option<&Screen> {
        self.all.get(&id).filter(|screen| screen.is_live())
    }

    /// The screens in the shop.
    pub fn iter(&self) -> impl Iterator<Item = (Subject, &Screen)> {
        self.all.iter().filter(|(_, screen)| screen.is_live()).map(|(id, screen)| (*id, screen))
    }

    /// Folds a fact in.
    pub(crate) fn take(&mut self, subject: Subject, at: u64, fact: &ScreenFact) {
        match fact {
            ScreenFact::AgeLimits(limits) => self.limits = *limits,
            ScreenFact::StepTimes(times) => self.times = *times,
            ScreenFact::Set(_) | ScreenFact::Moved { .. } | ScreenFact::Dried { .. } | ScreenFact::Undone { .. } => {
                let screen = self.all.or_insert_with(subject, || Screen { since: at, ..Screen::default() });
                match fact {
                    ScreenFact::Set(fields) => {
                        screen.created.get_or_insert(at);
                        fields.iter().for_each(|field| screen.set(field));
                    }
                    ScreenFact::Moved { to, by } => screen.go(at, ScreenEvent::To(*to), by.as_ref()),
                    ScreenFact::Dried { dry, by } => screen.go(at, ScreenEvent::Dry(*dry), by.as_ref()),
                    ScreenFact::Undone { to, since, dry, exposed } => {
                        let [since, dry, exposed] =
                            [Some(*since), *dry, *exposed].map(|time| time.map(|time| time.min(at)));
                        let since = since.unwrap_or(at);
                        screen.stand(ScreenStanding { state: *to, since, dry, exposed });
                        let last = dry.map_or(since, |dry| dry.max(since));
                        screen.log.retain(|change| change.at <= last);
                    }
                    ScreenFact::AgeLimits(_) | ScreenFact::StepTimes(_) => {}
                }
            }
        }
    }
}
