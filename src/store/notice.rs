//! A line that tells what was done, with a way back.

use super::Store;
use crate::platform::clock;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use leptos::prelude::*;
use std::time::Duration;

/// What was done, and the facts that take it back.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// In words.
    pub text: String,
    /// What undo records; empty where there is no way back.
    pub undo: Vec<(Subject, Fact)>,
}

/// How long a notice stays. Long enough to read it and reach for undo with inky hands.
const STAYS: Duration = Duration::from_secs(10);

impl Store {
    /// Shows what was done.
    pub fn notify(self, text: impl Into<String>) {
        self.notify_with_undo(text, Vec::new());
    }

    /// Shows what was done, with undo.
    pub fn notify_with_undo(self, text: impl Into<String>, undo: Vec<(Subject, Fact)>) {
        let notice = Notice { text: text.into(), undo };
        self.notice.set(Some(notice.clone()));
        clock::after(STAYS, move || {
            if self.notice.with_untracked(|shown| shown.as_ref() == Some(&notice)) {
                self.notice.set(None);
            }
        });
    }

    /// Takes back what the notice tells of.
    pub fn undo_notice(self) {
        if let Some(notice) = self.notice.get_untracked() {
            self.notice.set(None);
            self.record_all(notice.undo);
        }
    }
}
