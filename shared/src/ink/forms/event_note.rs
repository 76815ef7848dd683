//! What is added to a pour afterwards: a note, and the reading of a swatch.

use crate::facts::{ColourReading, InkFact};
use crate::form::{Problems, TYPED_NOTE, collect, parse_text};
use crate::ids::Subject;
use crate::shop::Shop;

/// The form of a note.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct EventNoteForm {
    /// Why, as a note.
    pub note: String,
}

impl EventNoteForm {
    /// The form filled from a pour; `None` for another event.
    pub fn of(shop: &Shop, event: Subject) -> Option<Self> {
        let InkFact::Poured { note, .. } = &shop.ink.event(event)?.fact else { return None };
        Some(Self { note: note.clone() })
    }

    /// The pour with the new note, or what is wrong; `None` if nothing changed.
    ///
    /// # Errors
    /// [`Problems`] by field: `note`.
    pub fn check(&self, shop: &Shop, event: Subject) -> Result<Option<InkFact>, Problems> {
        let mut problems = Problems::new();
        let Some(typed) = collect(&mut problems, "note", parse_text(&self.note, TYPED_NOTE)) else {
            return Err(problems);
        };
        Ok(amended(shop, event, |fact| {
            if let InkFact::Poured { note, .. } = fact {
                *note = typed;
            }
        }))
    }
}

/// A pour or a reading, with what the swatch read; `None` if nothing changed, or it is another event. A reading cannot
/// lose its value.
pub(crate) fn amended_with_reading(shop: &Shop, event: Subject, read: Option<ColourReading>) -> Option<InkFact> {
    amended(shop, event, |fact| match (fact, read) {
        (InkFact::Poured { reading, .. }, read) => *reading = read,
        (InkFact::SwatchRead { reading, .. }, Some(read)) => *reading = read,
        _ => {}
    })
}

fn amended(shop: &Shop, event: Subject, change: impl FnOnce(&mut InkFact)) -> Option<InkFact> {
    let recorded = &shop.ink.event(event)?.fact;
    let mut again = recorded.clone();
    change(&mut again);
    (again != *recorded).then_some(again)
}
