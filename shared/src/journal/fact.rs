//! Everything that can happen in the shop, as far as this version knows.
//!
//! **Frozen**: the names are a file format (`journal.ndjson`) and the order of the variants is a
//! disk format (segments). Variants and fields are added at the end and never changed, renamed,
//! reordered or removed; a changed meaning is a new variant. The rows in `facts/frozen` hold the bytes.

use crate::failure::FailureFact;
use crate::heat::HeatFact;
use crate::ink::{Colour, InkFact};
use crate::job::Size;
use crate::job::{Due, Fabric, SizePieces};
use crate::pack::Pack;
use crate::photo::PhotoFact;
use crate::plan::Day;
use crate::quantity::{BeltSpeed, Length, Seconds, Temperature};
use crate::run::{CheckItem, CheckOutcome, Expected, Flash, Location, MisprintCause, StopCause};
use crate::screen::{ScreenFact, StencilFact};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use serde_json::value::RawValue;
use uuid::Uuid;

/// Something that happened. Which job, lot, run or device it happened to is the entry's subject.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Fact {
    /// The shop was given its name.
    ShopNamed(String),
    /// These are the people who work here.
    CrewNamed(Vec<String>),
    /// Usual closing, minutes after midnight, Monday first; none on a day off.
    WeekClosing([Option<u16>; 7]),
    /// Closing on one day differs from its weekday's.
    DayClosing {
        /// The day.
        day: Day,
        /// Minutes after midnight.
        minutes: u16,
    },
    /// Usual time from one run's end to the next one's first pull.
    SetUpAllowance(Seconds),
    /// A device was given its name; the subject is the device.
    DeviceNamed(String),
    /// The order in which the shop means to print its open runs.
    RunsOrdered(Vec<Uuid>),
    /// Fields of a job were set; the job comes to be with the first.
    JobSet(Vec<JobField>),
    /// Fields of a garment lot were set.
    LotSet(Vec<LotField>),
    /// Fields of a run were set.
    RunSet(Vec<RunField>),
    /// The job, lot or run was deleted.
    Deleted,
    /// The deletion was taken back.
    Restored,
    /// Everything of the job is printed and packed.
    JobFinished,
    /// The job is open again.
    JobReopened,
    /// A check before the first pull was made, skipped or taken back.
    CheckMade {
        /// Which check.
        item: CheckItem,
        /// What the set-up asked for when it was made.
        expected: Expected,
        /// What came of it.
        outcome: CheckOutcome,
        /// Who made it, where the shop has named its crew.
        by: Option<String>,
    },
    /// The run's first garment went on the platen, or the run was taken up again after its end.
    RunStarted,
    /// Pieces were pulled; negative when a count was taken back.
    Pulled {
        /// How many.
        pieces: i32,
        /// Of which size, where sizes are counted.
        size: Option<Size>,
    },
    /// Pieces were spoiled; negative when that was taken back.
    Misprinted {
        /// How many.
        pieces: i32,
        /// Of which size.
        size: Option<Size>,
        /// Why.
        cause: MisprintCause,
        /// Whether they stood in the count already, and so leave it.
        was_counted: bool,
    },
    /// The press stopped.
    Stopped(StopCause),
    /// The press goes on.
    Resumed,
    /// The run left the press.
    RunEnded,
    /// Something about dryers, flash units, inks' limits, tests of a cure, or the room.
    Heat(HeatFact),
    /// Something about a screen.
    Screen(ScreenFact),
    /// Something about exposing stencils, or about the reclaim bath.
    Stencil(StencilFact),
    /// Something that failed on the press.
    Failure(FailureFact),
    /// Something about a photo; the subject is what it shows.
    Photo(PhotoFact),
    /// Something at the ink bench.
    Ink(InkFact),
    /// A fact of a newer version: kept and carried on, byte for byte.
    #[serde(skip)]
    Unknown {
        /// Its name.
        kind: String,
        /// Its JSON, as it came.
        body: String,
    },
}

/// A field of a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum JobField {
    /// Who ordered it.
    Client(String),
    /// What it is called in the shop.
    Title(String),
    /// When it is due, in the shop's local time.
    Due(Option<Due>),
    /// Anything else to know.
    Notes(String),
    /// Whether its sale is exempt from tax.
    Exempt(bool),
    /// The job it repeats.
    RepeatOf(Uuid),
}

/// A field of a garment lot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LotField {
    /// The job it belongs to.
    Job(Uuid),
    /// What garment.
    Garment(String),
    /// Of which fabric.
    Fabric(Fabric),
    /// In which colour.
    Colour(Colour),
    /// What that colour is called.
    ColourName(String),
    /// How many of each size.
    Pieces(Vec<SizePieces>),
}

/// A field of a run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum RunField {
    /// The lot it prints on.
    Lot(Uuid),
    /// Where on the garment.
    Location(Location),
    /// The ink's name.
    Ink(String),
    /// The ink's colour.
    InkColour(Colour),
    /// The screens' labels.
    Screens(String),
    /// Threads an inch.
    Mesh(Option<u16>),
    /// The flash, or none.
    Flash(Option<Flash>),
    /// Strokes that lay ink, flash between them not counted.
    Hits(u8),
    /// What the dryer is set to.
    Dryer(Option<Temperature>),
    /// How fast its belt runs.
    Belt(Option<BeltSpeed>),
    /// How long a garment is in the heat, one pass.
    Dwell(Option<Seconds>),
    /// How many times it goes through.
    Passes(u8),
    /// Which squeegee.
    Squeegee(String),
    /// Gap between screen and garment.
    OffContact(Option<Length>),
    /// From the bottom of the collar seam to the top of the print.
    BelowCollar(Option<Length>),
    /// Anything else about where it goes.
    Placement(String),
    /// The printer's own guess of a piece's time, used before there is a count or a history.
    Guess(Option<Seconds>),
}

/// Longest name, in characters.
pub(crate) const NAME: usize = 160;
/// Longest note.
pub(crate) const NOTE: usize = 4_000;
/// Most people, sizes or fields in one list.
pub(crate) const LIST: usize = 64;
/// Most runs in one order of the day.
const ORDER: usize = 2_000;
/// Most pieces one fact moves.
pub(crate) const PIECES: i32 = 1_000_000;

/// Whether a text is of a name's length.
pub(crate) fn is_name(text: &str) -> bool {
    text.chars().count() <= NAME
}

/// Whether a text is of a note's length.
pub(crate) fn is_note(text: &str) -> bool {
    text.chars().count() <= NOTE
}

impl Fact {
    /// The fact as JSON. An unknown fact comes out as it went in.
    pub fn to_json(&self) -> Box<RawValue> {
        let text = if let Self::Unknown { body, .. } = self {
            body.clone()
        } else {
            serde_json::to_string(self).unwrap_or_else(|_| "null".into())
        };
        RawValue::from_string(text).unwrap_or_default()
    }

    /// Reads a fact. A kind this version does not know, or knows with fewer fields, is kept as
    /// [`Fact::Unknown`]. None when the JSON is not of a fact's shape at all.
    pub fn from_json(json: &str) -> Option<Self> {
        if let Ok(known) = serde_json::from_str(json) {
            return Some(known);
        }
        let kind = match serde_json::from_str(json).ok()? {
            Value::String(kind) => kind,
            Value::Object(map) if map.len() == 1 => map.into_iter().next()?.0,
            Value::Null | Value::Bool(_) | Value::Number(_) | Value::Array(_) | Value::Object(_) => return None,
        };
        Some(Self::Unknown { kind, body: json.to_owned() })
    }

    /// Whether every name, list and number is of a size that a device records. Files from
    /// elsewhere are held to it before anything is stored.
    pub fn in_bounds(&self) -> bool {
        let name = |text: &String| is_name(text);
        let note = |text: &String| is_note(text);
        let minutes = |minutes: &u16| *minutes < 24 * 60;
        match self {
            Self::ShopNamed(text) | Self::DeviceNamed(text) => name(text),
            Self::CrewNamed(names) => names.len() <= LIST && names.iter().all(name),
            Self::WeekClosing(week) => week.iter().flatten().all(minutes),
            Self::DayClosing { minutes: at, .. } => minutes(at),
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
            Self::Unknown { kind, body } => kind.len() <= NAME && body.len() <= super::Entry::LONGEST_LINE,
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
