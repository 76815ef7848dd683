//! What is said of a pour afterwards: why, and what a swatch read with it in.

use super::component_form::NOTE;
use super::{InkFact, ReadingForm};
use crate::job::{Problems, keep, name};
use crate::journal::Subject;
use crate::shop::Shop;

/// The form of note and reading.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct RemarkForm {
    /// Why, in words.
    pub note: String,
    /// What a swatch read.
    pub reading: ReadingForm,
}

impl RemarkForm {
    /// The form of a pour as it was told; none where the event is none.
    pub fn of(shop: &Shop, event: Subject) -> Option<Self> {
        match &shop.ink.event(event)?.fact {
            InkFact::Poured { note, reading, .. } => {
                Some(Self { note: note.clone(), reading: ReadingForm::of(*reading) })
            }
            _ => None,
        }
    }

    /// The pour told again with these, or what is wrong; none where they are as they were.
    ///
    /// # Errors
    /// [`Problems`] by field: `note`, `l`, `a`, `b`.
    pub fn check(&self, shop: &Shop, event: Subject) -> Result<Option<InkFact>, Problems> {
        let mut problems = Problems::new();
        let typed = keep(&mut problems, "note", name(&self.note, NOTE));
        let read = self.reading.check(&mut problems);
        let (Some(typed), true) = (typed, problems.is_empty()) else { return Err(problems) };
        let told = shop.ink.event(event).map(|event| &event.fact);
        let mut again = told.cloned();
        if let Some(InkFact::Poured { note, reading, .. }) = &mut again {
            (*note, *reading) = (typed, read);
        }
        Ok(again.filter(|again| Some(again) != told))
    }
}
