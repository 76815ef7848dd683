//! The shop's screens as the facts leave them.

use super::{ScreenFact, ScreenField};
use crate::journal::Subject;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A screen.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Screen {
    /// What is written on the frame.
    pub label: String,
}

/// All screens of the shop.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Screens {
    all: BTreeMap<Subject, Screen>,
}

impl Screens {
    /// A screen.
    pub fn get(&self, id: Subject) -> Option<&Screen> {
        self.all.get(&id)
    }

    pub(crate) fn take(&mut self, subject: Subject, _at: u64, fact: &ScreenFact) {
        match fact {
            ScreenFact::Set(fields) => {
                let screen = self.all.entry(subject).or_default();
                for field in fields {
                    match field {
                        ScreenField::Label(label) => screen.label.clone_from(label),
                    }
                }
            }
        }
    }
}
