//! Everything that can happen in the shop, as far as this version knows.
//!
//! **Frozen**: the names are a file format (`journal.ndjson`) and the order of the variants is a
//! disk format (segments). Variants and fields are added at the end and never changed, renamed,
//! reordered or removed; a changed meaning is a new variant. The rows in [`frozen`] hold the bytes.

use crate::bounds::{LIST, LONGEST_LINE, PIECES, STORED_NAME, is_name, is_note};
use crate::codec::Encode;
use crate::journal;
use crate::journal::JournalFact;
use crate::time::{Day, TimeOfDay};
use crate::units::Seconds;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

mod check;
pub(crate) mod exposure;
mod failure;
#[doc(hidden)]
pub mod frozen;
pub(crate) mod heat;
pub(crate) mod ink;
mod job;
mod photo;
mod run;
pub(crate) mod screen;
mod with_undo;

pub use check::{CheckItem, CheckOutcome, Expected, ExpectedColour};
pub use exposure::*;
pub use failure::{FailureFact, FailureField, FailureKind, GridCell, Mark, Remedy, Suspects, Verdict};
pub use heat::*;
pub use ink::*;
pub use job::{Fabric, JobField, LotField, Size, SizePieces};
pub use photo::{MAX_ACCEPTED_BYTES, MAX_ACCEPTED_SIDE, PhotoFact};
pub use run::{Flash, Location, MisprintCause, RunField, StopCause};
pub use screen::*;
pub use with_undo::FactsWithUndo;

/// An entry of the shop's journal.
pub type Entry = journal::Entry<Fact>;
/// The shop's journal.
pub type Journal = journal::Journal<Fact>;
/// A fact of the shop that is to be appended.
pub type Draft = journal::Draft<Fact>;
/// What opening the shop's journal reads.
pub type Opened = journal::Opened<Fact>;
/// The shop's journal in memory.
pub type MemoryStorage = journal::MemoryStorage<Fact>;

/// Something that happened. Its job, lot, run or device is the entry's subject.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Fact {
    /// The shop was given its name.
    ShopNamed(String),
    /// The names of the crew were set.
    CrewNamed(Vec<String>),
    /// Usual closing times were set, Monday first; `None` on a day off.
    WeekClosing([Option<TimeOfDay>; 7]),
    /// The closing time of one day was set.
    DayClosing {
        /// The day.
        day: Day,
        /// Its closing time.
        #[serde(rename = "minutes")]
        time: TimeOfDay,
    },
    /// Usual time from one run's end to the next one's first pull was set.
    SetUpAllowance(Seconds),
    /// A device was given its name; the subject is the device.
    DeviceNamed(String),
    /// The order was set in which the shop means to print its open runs.
    RunsOrdered(Vec<Uuid>),
    /// Fields of a job were set, which creates it the first time.
    JobSet(Vec<JobField>),
    /// Fields of a garment lot were set, which creates it the first time.
    LotSet(Vec<LotField>),
    /// Fields of a run were set, which creates it the first time.
    RunSet(Vec<RunField>),
    /// The subject was deleted.
    Deleted,
    /// The deletion was taken back.
    Restored,
    /// Everything of the job is printed and packed.
    JobFinished,
    /// The job was reopened.
    JobReopened,
    /// A check before the first pull was made, skipped or taken back.
    CheckMade {
        /// The item that was checked.
        item: CheckItem,
        /// What the set-up required at that time.
        expected: Expected,
        /// Outcome.
        outcome: CheckOutcome,
        /// Name of the person who made it, if entered.
        by: Option<String>,
    },
    /// The run's first garment went on the platen, or the run was reopened after its end.
    RunStarted,
    /// Pieces were pulled, or with a negative number taken back.
    Pulled {
        /// Number of pieces.
        pieces: i32,
        /// Size of the pieces; `None` if sizes are not counted.
        size: Option<Size>,
    },
    /// Pieces were spoiled, or with a negative number taken back.
    Misprinted {
        /// Number of pieces.
        pieces: i32,
        /// Size of the pieces; `None` if sizes are not counted.
        size: Option<Size>,
        /// Cause.
        cause: MisprintCause,
        /// Whether they had been counted as good, and so leave the count.
        was_counted: bool,
    },
    /// The press stopped.
    Stopped(StopCause),
    /// The press resumed.
    Resumed,
    /// The run left the press.
    RunEnded,
    /// A fact about dryers, flash units, ink sheets, fabric limits, cure tests, trials or the shop's climate.
    Heat(HeatFact),
    /// A fact about a screen.
    Screen(ScreenFact),
    /// A fact about exposing stencils or the reclaim bath.
    Stencil(StencilFact),
    /// A fact about a failure on the press.
    Failure(FailureFact),
    /// A fact about a photo; the subject is what it shows.
    Photo(PhotoFact),
    /// A fact about ink components, recipes or pots.
    Ink(InkFact),
    /// A fact of a newer version, kept and passed on byte for byte.
    #[serde(skip)]
    Unknown {
        /// Its name in the JSON.
        kind: String,
        /// Its JSON as received.
        body: String,
    },
}
/// Most runs accepted in one order of the day.
const ORDER: usize = 2_000;
/// Most runs recorded in one order of the day: as many as fit into a line of a file.
pub(crate) const RECORDED_ORDER: usize = 1_600;

impl JournalFact for Fact {
    fn unknown(kind: String, body: String) -> Self {
        Self::Unknown { kind, body }
    }

    fn as_unknown(&self) -> Option<(&String, &String)> {
        if let Self::Unknown { kind, body } = self { Some((kind, body)) } else { None }
    }

    fn in_bounds(&self) -> bool {
        let name = |text: &String| is_name(text);
        let note = |text: &String| is_note(text);
        match self {
            Self::ShopNamed(text) | Self::DeviceNamed(text) => name(text),
            Self::CrewNamed(names) => names.len() <= LIST && names.iter().all(name),
            Self::WeekClosing(week) => week.iter().flatten().all(|time| time.is_on_clock()),
            Self::DayClosing { time, .. } => time.is_on_clock(),
            Self::RunsOrdered(runs) => runs.len() <= ORDER,
            Self::JobSet(fields) => {
                fields.len() <= LIST
                    && fields.iter().all(|field| match field {
                        JobField::Client(text) | JobField::Title(text) => name(text),
                        JobField::Notes(text) => note(text),
                        JobField::Due(_) | JobField::Exempt(_) | JobField::RepeatOf(_) => true,
                    })
            }
            Self::LotSet(fields) => {
                fields.len() <= LIST
                    && fields.iter().all(|field| match field {
                        LotField::Garment(text) | LotField::ColourName(text) => name(text),
                        LotField::Pieces(pieces) => {
                            pieces.len() <= LIST && pieces.iter().all(|row| row.pieces <= PIECES as u32)
                        }
                        LotField::Job(_) | LotField::Fabric(_) | LotField::Colour(_) => true,
                    })
            }
            Self::RunSet(fields) => {
                fields.len() <= LIST
                    && fields.iter().all(|field| match field {
                        RunField::Ink(text) | RunField::Screens(text) | RunField::Squeegee(text) => name(text),
                        RunField::Placement(text) => note(text),
                        RunField::Lot(_)
                        | RunField::Location(_)
                        | RunField::InkColour(_)
                        | RunField::Mesh(_)
                        | RunField::Flash(_)
                        | RunField::Hits(_)
                        | RunField::Dryer(_)
                        | RunField::Belt(_)
                        | RunField::Dwell(_)
                        | RunField::Passes(_)
                        | RunField::OffContact(_)
                        | RunField::BelowCollar(_)
                        | RunField::Guess(_) => true,
                    })
            }
            Self::CheckMade { expected, by, .. } => by.iter().all(name) && expected.in_bounds(),
            Self::Pulled { pieces, .. } | Self::Misprinted { pieces, .. } => pieces.abs() <= PIECES,
            Self::Heat(fact) => fact.in_bounds(),
            Self::Screen(fact) => fact.in_bounds(),
            Self::Stencil(fact) => fact.in_bounds(),
            Self::Failure(fact) => fact.in_bounds(),
            Self::Photo(fact) => fact.in_bounds(),
            Self::Ink(fact) => fact.in_bounds(),
            Self::Unknown { kind, body } => kind.len() <= STORED_NAME && body.len() <= LONGEST_LINE,
            Self::SetUpAllowance(_)
            | Self::Deleted
            | Self::Restored
            | Self::JobFinished
            | Self::JobReopened
            | Self::RunStarted
            | Self::Stopped(_)
            | Self::Resumed
            | Self::RunEnded => true,
        }
    }
}

impl journal::contract::SampleFact for Fact {
    fn pull(pieces: i32) -> Self {
        Self::Pulled { pieces, size: None }
    }
}
