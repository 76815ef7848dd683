//! The shop's screens, folded from the facts.

use super::timed_state::{ScreenEvent, TimedState};
use crate::codec::Encode;
use crate::collections::Table;
use crate::deletion::{DeleteById, Deletion, deletable};
use crate::facts::{AgeLimits, Coats, MeshSheet, ScreenFact, ScreenField, ScreenState, StepTimes};
use crate::ids::{RunId, Subject};
use crate::time::WallTime;

/// A screen.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Screen {
    /// The label on the frame.
    pub label: String,
    /// Its mesh.
    pub mesh: Option<MeshSheet>,
    /// Its tension at the last measurement, in tenths of N/cm.
    pub tension: Option<u16>,
    /// The emulsion on it, or the last one that was.
    pub emulsion: String,
    /// How it is coated.
    pub coats: Option<Coats>,
    /// Free notes.
    pub notes: String,
    /// The run whose art is on it.
    pub run: Option<RunId>,
    /// The colour of the art that it prints.
    pub colour: String,
    /// The screen it was burned to replace.
    pub replaces: Option<Subject>,
    /// Its state.
    pub state: ScreenState,
    /// Wall time since when it has been in that state.
    pub since: WallTime,
    /// Wall time at which its coat or its stencil was found dry.
    pub dry: Option<WallTime>,
    /// Wall time at which the image now on it was exposed.
    pub exposed: Option<WallTime>,
    /// Its latest changes, oldest first; older ones are dropped.
    pub log: Vec<ScreenChange>,
    /// Wall time at which it was created; `None` if only other facts about it have arrived.
    pub created: Option<WallTime>,
    /// Whether it was deleted.
    pub deleted: bool,
}

/// A change of a screen.
#[derive(Clone, Debug, PartialEq, Eq, Encode)]
pub struct ScreenChange {
    /// When, as wall time.
    pub at: WallTime,
    /// The change.
    pub what: ScreenEvent,
    /// Who did it.
    pub by: Option<String>,
}

/// Number of changes kept for each screen: about three cycles of coating and reclaiming.
const MAX_CHANGES: usize = 24;

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

    fn change(&mut self, at: WallTime, what: ScreenEvent, by: Option<&String>) {
        self.restore(self.timed_state().after(at, what));
        if self.log.len() == MAX_CHANGES {
            self.log.remove(0);
        }
        self.log.push(ScreenChange { at, what, by: by.cloned() });
    }

    /// Whether it is in the shop's list: created and not deleted.
    pub fn is_live(&self) -> bool {
        self.created.is_some() && !self.deleted
    }
}

/// All screens of the shop.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Screens {
    all: Table<Screen>,
    /// Number of days after which the shop wants a warning.
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
    /// A screen, also if it was deleted.
    pub fn get(&self, id: Subject) -> Option<&Screen> {
        self.all.get(&id)
    }

    /// A screen in the shop's list.
    pub fn live(&self, id: Subject) -> Option<&Screen> {
        self.all.get(&id).filter(|screen| screen.is_live())
    }

    /// The screens in the shop's list.
    pub fn iter(&self) -> impl Iterator<Item = (Subject, &Screen)> {
        self.all.iter().filter(|(_, screen)| screen.is_live()).map(|(id, screen)| (*id, screen))
    }

    /// Folds a fact in.
    pub(crate) fn apply(&mut self, subject: Subject, at: WallTime, fact: &ScreenFact) {
        match fact {
            ScreenFact::AgeLimits(limits) => self.limits = *limits,
            ScreenFact::StepTimes(times) => self.times = *times,
            ScreenFact::Set(_) | ScreenFact::Moved { .. } | ScreenFact::Dried { .. } | ScreenFact::Undone { .. } => {
                let screen = self.all.get_or_insert_with(subject, || Screen { since: at, ..Screen::default() });
                match fact {
                    ScreenFact::Set(fields) => {
                        screen.created.get_or_insert(at);
                        fields.iter().for_each(|field| screen.set(field));
                    }
                    ScreenFact::Moved { to, by } => screen.change(at, ScreenEvent::To(*to), by.as_ref()),
                    ScreenFact::Dried { dry, by } => screen.change(at, ScreenEvent::Dry(*dry), by.as_ref()),
                    ScreenFact::Undone { to, since, dry, exposed } => {
                        let [since, dry, exposed] =
                            [Some(*since), *dry, *exposed].map(|time| time.map(|time| time.min(at)));
                        let since = since.unwrap_or(at);
                        screen.restore(TimedState { state: *to, since, dry, exposed });
                        let last = dry.map_or(since, |dry| dry.max(since));
                        screen.log.retain(|change| change.at <= last);
                    }
                    ScreenFact::AgeLimits(_) | ScreenFact::StepTimes(_) => {}
                }
            }
        }
    }
}

impl Screen {
    pub(crate) fn timed_state(&self) -> TimedState {
        TimedState { state: self.state, since: self.since, dry: self.dry, exposed: self.exposed }
    }

    pub(crate) fn restore(&mut self, standing: TimedState) {
        (self.state, self.since, self.dry, self.exposed) =
            (standing.state, standing.since, standing.dry, standing.exposed);
    }

    /// The state before the latest change; `None` if there are no changes.
    pub(crate) fn before_latest(&self) -> Option<TimedState> {
        let (_, earlier) = self.log.split_last()?;
        Some(earlier.iter().fold(self.initial_state(), |standing, change| standing.after(change.at, change.what)))
    }

    pub(crate) fn initial_state(&self) -> TimedState {
        TimedState { since: self.created.unwrap_or(self.since), ..TimedState::default() }
    }
}
