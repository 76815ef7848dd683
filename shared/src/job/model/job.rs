//! The job: one client's order.

use crate::codec::Encode;
use crate::deletion::deletable;
use crate::facts::JobField;
use crate::ids::JobId;
use crate::time::{Due, WallTime};

/// A client's order, folded from the facts.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Job {
    /// Who ordered it.
    pub client: String,
    /// The job's name in the shop.
    pub title: String,
    /// When it is due.
    pub due: Option<Due>,
    /// Free notes.
    pub notes: String,
    /// Whether the sale is exempt from tax.
    pub exempt: bool,
    /// The job that it repeats.
    pub repeat_of: Option<JobId>,
    /// Wall time of its first fact.
    pub created: WallTime,
    /// Wall time at which it was finished; `None` while it is open.
    pub finished: Option<WallTime>,
    /// Whether it was deleted.
    pub deleted: bool,
}

deletable!(Job);

impl Job {
    pub(crate) fn set(&mut self, field: &JobField) {
        match field {
            JobField::Client(client) => self.client.clone_from(client),
            JobField::Title(title) => self.title.clone_from(title),
            JobField::Due(due) => self.due = *due,
            JobField::Notes(notes) => self.notes.clone_from(notes),
            JobField::Exempt(exempt) => self.exempt = *exempt,
            JobField::RepeatOf(job) => self.repeat_of = Some(*job),
        }
    }

    /// Whether it is neither finished nor deleted.
    pub fn is_open(&self) -> bool {
        !self.deleted && self.finished.is_none()
    }
}
