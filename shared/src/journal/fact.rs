//! Every fact this version knows.
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

/// Something that happened. Its job, lot, run or device is the entry's subject.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Fact {
    /// The shop was given its name.
    ShopNamed(String),
    /// The names of the crew were set.
    CrewNamed(Vec<String>),
    /// Usual closing times were set: minutes after midnight, Monday first; `None` on a day off.
    WeekClosing([Option<u16>; 7]),
    /// The closing time of one day was set.
    DayClosing {
        /// The day.
        day: Day,
        /// Minutes after midnight.
        minutes: u16,
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

/// A field of a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum JobField {
    /// The client.
    Client(String),
    /// The job's title.
    Title(String),
    /// Due day and time in the shop's local time.
    Due(Option<Due>),
    /// Free notes.
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
    /// The garment.
    Garment(String),
    /// Its fabric.
    Fabric(Fabric),
    /// Its colour.
    Colour(Colour),
    /// Name of that colour.
    ColourName(String),
    /// Number of pieces of each size.
    Pieces(Vec<SizePieces>),
}

/// A field of a run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum RunField {
    /// The lot it prints on.
    Lot(Uuid),
    /// Print location.
    Location(Location),
    /// The ink's name.
    Ink(String),
    /// The ink's colour.
    InkColour(Colour),
    /// Labels of the screens.
    Screens(String),
    /// Mesh count in threads per inch.
    Mesh(Option<u16>),
    /// The flash settings; `None` for no flash.
    Flash(Option<Flash>),
    /// Number of strokes that print ink; flashes between them are not counted.
    Hits(u8),
    /// Dryer setting.
    Dryer(Option<Temperature>),
    /// Belt speed.
    Belt(Option<BeltSpeed>),
    /// Dwell: time in the heat for one pass.
    Dwell(Option<Seconds>),
    /// Passes through the dryer.
    Passes(u8),
    /// The squeegee.
    Squeegee(String),
    /// Off-contact: gap between screen and garment.
    OffContact(Option<Length>),
    /// Distance from the bottom of the collar seam to the top of the print.
    BelowCollar(Option<Length>),
    /// Other notes on placement.
    Placement(String),
    /// The printer's guess of the time per piece, used before there is a count or a history.
    Guess(Option<Seconds>),
}

/// Longest name, in characters.
pub(crate) const NAME: usize = 160;
/// Longest note, in characters.
pub(crate) const NOTE: usize = 4_000;
/// Most people, sizes or fields in one list.
pub(crate) const LIST: usize = 64;
/// Most runs in one order of the day.
const ORDER: usize = 2_000;
/// Most pieces in one fact.
pub(crate) const PIECES: i32 = 1_000_000;

/// Whether a text is short enough for a name.
pub(crate) fn is_name(text: &str) -> bool {
    text.chars().count() <= NAME
}

/// Whether a text is short enough for a note.
pub(crate) fn is_note(text: &str) -> bool {
    text.chars().count() <= NOTE
}

impl Fact {
    /// The fact as JSON. An unknown fact is returned as it was received.
    pub fn to_json(&self) -> Box<RawValue> {
        let text = if let Self::Unknown { body, .. } = self {
            body.clone()
        } else {
            serde_json::to_string(self).unwrap_or_else(|_| "null".into())
        };
        RawValue::from_string(text).unwrap_or_default()
    }

    /// Parses a fact. A kind or field that this version does not know makes it [`Fact::Unknown`]. `None` if
    /// the JSON does not have the shape of a fact.
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

    /// Whether every name, list and number is within what a device records. Facts from files are checked
    /// before anything is stored.
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
