//! Notices of what was done, with undo.

use super::Store;
use crate::platform::clock;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use leptos::prelude::*;
use std::time::Duration;

/// A text about an action, and the facts that undo it.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// The text.
    pub text: String,
    /// The facts that undo records; empty if there is no undo.
    pub undo: Vec<(Subject, Fact)>,
}

/// How long a notice is shown: long enough to read it and to reach the undo button with inky hands.
const NOTICE_DURATION: Duration = Duration::from_secs(10);

impl Store {
    /// Shows a notice.
    pub fn notify(self, text: impl Into<String>) {
        self.notify_with_undo(text, Vec::new());
    }

    /// Shows a notice with undo.
    pub fn notify_with_undo(self, text: impl Into<String>, undo: Vec<(Subject, Fact)>) {
        let notice = Notice { text: text.into(), undo };
        self.notice.set(Some(notice.clone()));
        clock::after(NOTICE_DURATION, move || {
            if self.notice.with_untracked(|shown| shown.as_ref() == Some(&notice)) {
                self.notice.set(None);
            }
        });
    }

    /// Undoes the action of the notice.
    pub fn undo_notice(self) {
        if let Some(notice) = self.notice.get_untracked() {
            self.notice.set(None);
            self.record_all(notice.undo);
        }
    }
}
