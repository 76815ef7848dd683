//! The drafts of a form: texts that are not saved yet.

use std::sync::Arc;

/// How a draft ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DraftEnd {
    /// The form was saved.
    Saved,
    /// The user wants the form as it was.
    Discarded,
}

/// The drafts of a form. A clone ends the same ones, also when the page with the form was left.
#[derive(Clone, Default)]
pub struct Drafts {
    ends: Vec<Arc<dyn Fn(DraftEnd) + Send + Sync>>,
}

impl Drafts {
    /// Number of drafts.
    pub fn count(&self) -> usize {
        self.ends.len()
    }

    /// Adds one, with what ends it.
    pub fn add(&mut self, end: impl Fn(DraftEnd) + Send + Sync + 'static) {
        self.ends.push(Arc::new(end));
    }

    /// Ends all drafts: they were saved, or are discarded.
    pub fn end(&self, how: DraftEnd) {
        self.ends.iter().for_each(|end| end(how));
    }
}
