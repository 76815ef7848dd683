//! The form at the shelf: a delivery, or what is left.

use crate::facts::InkFact;
use crate::form::{Problems, TYPED_NOTE, collect, parse_required, parse_text};
use crate::ids::Subject;
use crate::units::{Grams, Units};
use serde::{Deserialize, Serialize};

/// The form of a delivery, or of a weighing of what is left. Weights are in the units of the device.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct StockForm {
    /// The weight.
    pub grams: String,
    /// Free note of a delivery: from where, which lot.
    pub note: String,
}

impl StockForm {
    /// The fact of a delivery, or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field: `grams`, `note`.
    pub fn delivered(&self, component: Subject, by: Option<&str>, units: Units) -> Result<InkFact, Problems> {
        let mut problems = Problems::new();
        let least = Grams::from_grams(1.0);
        let grams = collect(
            &mut problems,
            "grams",
            parse_required(&self.grams, |text| Grams::parse(text, least, Grams::MOST, units)),
        );
        let note = collect(&mut problems, "note", parse_text(&self.note, TYPED_NOTE));
        match (grams, note) {
            (Some(grams), Some(note)) => Ok(InkFact::Delivered { component, grams, note, by: by.map(str::to_owned) }),
            _ => Err(problems),
        }
    }

    /// The fact of what is left, or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field: `grams`.
    pub fn counted(&self, component: Subject, by: Option<&str>, units: Units) -> Result<InkFact, Problems> {
        let mut problems = Problems::new();
        let read = parse_required(&self.grams, |text| Grams::parse(text, Grams::ZERO, Grams::MOST, units));
        match collect(&mut problems, "grams", read) {
            Some(grams) => Ok(InkFact::Counted { component, grams, by: by.map(str::to_owned) }),
            None => Err(problems),
        }
    }
}
