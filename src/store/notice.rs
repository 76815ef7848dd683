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
    /// What it says.
    pub message: Message,
    /// The facts that undo records; empty if there is no undo.
    pub undo: Vec<(Subject, Fact)>,
}

/// What a notice says.
#[derive(Clone, Debug, PartialEq)]
pub enum Message {
    /// A text of the page that showed it.
    Text(String),
    /// Something that happened in the store.
    Event(StoreEvent),
}

/// What the store itself reports.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StoreEvent {
    /// A part of the app could not be fetched.
    ChunkNotLoaded,
    /// A fact was out of bounds, and nothing was recorded.
    OutOfBounds,
    /// A fact was too long for a file, and nothing that was recorded with it was kept.
    TooLong,
    /// Another tab changed the shop, and it could not be read again: what is shown may be old.
    NotReadAgain,
}

/// How long a notice is shown: long enough to read it and to reach the undo button with inky hands.
const NOTICE_DURATION: Duration = Duration::from_secs(10);

impl Store {
    /// Shows a notice.
    pub fn notify(self, text: impl Into<String>) {
        self.notify_with_undo(text, Vec::new());
    }

    /// Shows a notice about what was recorded already, with undo.
    pub fn notify_with_undo(self, text: impl Into<String>, undo: Vec<(Subject, Fact)>) {
        self.show(Notice { message: Message::Text(text.into()), undo });
    }

    /// Records facts and says so, with an undo that records `undo`. Nothing is said if nothing was recorded.
    pub fn record_with_undo(self, facts: Vec<(Subject, Fact)>, undo: Vec<(Subject, Fact)>, text: impl Into<String>) {
        if !facts.is_empty() && self.enqueue(facts) {
            self.notify_with_undo(text, undo);
        }
    }

    /// Records facts of which each has a subject of its own, and says so, with an undo that deletes them, the last first.
    pub fn record_new(self, facts: Vec<(Subject, Fact)>, text: impl Into<String>) {
        let undo = facts.iter().rev().map(|(subject, _)| (*subject, Fact::Deleted)).collect();
        self.record_with_undo(facts, undo, text);
    }

    /// Deletes something and says so, with an undo that restores it.
    pub fn delete_with_undo(self, subject: Subject, text: impl Into<String>) {
        self.record_with_undo(vec![(subject, Fact::Deleted)], vec![(subject, Fact::Restored)], text);
    }

    /// Shows an event of the store.
    pub(super) fn notify_event(self, event: StoreEvent) {
        self.show(Notice { message: Message::Event(event), undo: Vec::new() });
    }

    fn show(self, notice: Notice) {
        self.setters().notice.set(Some(notice.clone()));
        clock::after(NOTICE_DURATION, move || {
            if self.notice.with_untracked(|shown| shown.as_ref() == Some(&notice)) {
                self.setters().notice.set(None);
            }
        });
    }

    /// Records facts that undo an action. If the notice offers to undo the same one, it is taken away: each action is
    /// undone once, whichever button is used.
    pub fn record_undo(self, facts: Vec<(Subject, Fact)>) {
        let offered = self.notice.with_untracked(|notice| {
            notice.as_ref().is_some_and(|notice| notice.undo.iter().any(|of| facts.contains(of)))
        });
        if offered {
            self.setters().notice.set(None);
        }
        self.record_all(facts);
    }

    /// Undoes the action of the notice.
    pub fn undo_notice(self) {
        if let Some(notice) = self.notice.get_untracked() {
            self.setters().notice.set(None);
            self.record_all(notice.undo);
        }
    }
}
