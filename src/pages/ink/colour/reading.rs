//! A colour as it is being entered.

use super::photo_subject::Taken;
use lastpull_core::form::{FormProblem, Problems};
use lastpull_core::ink::{ColourReading, PhotoSample, ReadBy, ReadingForm};
use serde::{Deserialize, Serialize};

/// The value of a reading field.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(from = "ReadingDraft", into = "ReadingDraft")]
pub struct Reading {
    /// The colour; `None` while nothing is entered.
    pub value: Option<ColourReading>,
    /// What a photo showed of the target, if the target was not known.
    pub target: Option<ColourReading>,
    /// The three numbers as they were typed.
    pub typed: ReadingForm,
    /// Whether the entered text is not a colour.
    pub wrong: bool,
    /// The picture it was read from.
    pub photo: Option<Taken>,
    /// What was beside it in the photo, unless that follows from the subject of the reading.
    pub beside: Option<String>,
}

/// What is kept of a reading that is not saved yet: what was typed or picked. One from a photo is not kept, since its
/// picture is not.
#[derive(Default, Serialize, Deserialize)]
#[serde(default)]
struct ReadingDraft {
    value: Option<ColourReading>,
    typed: ReadingForm,
    wrong: bool,
}

impl From<Reading> for ReadingDraft {
    fn from(reading: Reading) -> Self {
        if reading.value.is_some_and(|value| value.by == ReadBy::Photo) {
            return Self::default();
        }
        Self { value: reading.value, typed: reading.typed, wrong: reading.wrong }
    }
}

impl From<ReadingDraft> for Reading {
    fn from(draft: ReadingDraft) -> Self {
        Self { value: draft.value, typed: draft.typed, wrong: draft.wrong, ..Self::default() }
    }
}

/// A reading with a colour.
#[derive(Clone, Debug, PartialEq)]
pub struct CompleteReading {
    /// The colour, and what a photo showed of the target.
    pub sample: PhotoSample,
    /// The picture it was read from.
    pub photo: Option<Taken>,
}

impl Reading {
    /// The reading; a problem of `field` if the colour is missing or invalid.
    pub fn check(&self, field: &'static str) -> Result<CompleteReading, Problems> {
        let sample = self.colour().ok_or_else(|| Problems::from([(field, FormProblem::Missing)]))?;
        Ok(CompleteReading { sample: PhotoSample { sample, target: self.target }, photo: self.photo.clone() })
    }

    /// The entered colour; `None` if it is missing or invalid.
    pub fn colour(&self) -> Option<ColourReading> {
        self.value.filter(|_| !self.wrong)
    }

    /// A field with an initial colour.
    pub fn of(value: Option<ColourReading>) -> Self {
        Self { value, ..Self::default() }
    }
}
