//! What was recorded, so that the end of a history can be compared with it.

use lastpull_core::facts::{Entry, Fact, Journal};
use lastpull_core::ids::Subject;
use std::collections::BTreeSet;
use uuid::Uuid;

/// Every fact that must be there in the end, as a line of a file. Without its device: facts that a cloned device has
/// recorded may be filed under another id. No two facts are of the same millisecond, so no two lines are equal.
#[derive(Default)]
pub struct Ledger {
    facts: BTreeSet<String>,
    /// How many of them were acknowledged to the person who recorded them.
    pub acknowledged: u64,
}

fn line_of(entry: &Entry) -> String {
    Entry { device: Uuid::nil(), ..entry.clone() }.to_line()
}

impl Ledger {
    /// Facts of which the app has said that they are saved.
    pub fn acknowledge(&mut self, entries: &[Entry]) {
        self.acknowledged += entries.len() as u64;
        self.write_down(entries);
    }

    fn write_down(&mut self, entries: &[Entry]) {
        for entry in entries {
            assert!(self.facts.insert(line_of(entry)), "a fact is stored once: {entry:?}");
        }
    }

    /// The app was stopped while it recorded these facts: on the disk there are all of them or none.
    pub fn find(&mut self, facts: &[(Subject, Fact)], stored: &[Entry]) {
        let mut new: Vec<Entry> =
            stored.iter().filter(|entry| !self.facts.contains(&line_of(entry))).cloned().collect();
        if new.is_empty() {
            return;
        }
        new.sort_by_key(|entry| entry.seq);
        let found: Vec<_> = new.iter().map(|entry| (entry.subject, entry.fact.clone())).collect();
        assert_eq!(found, facts, "all of a transaction, or none");
        self.write_down(&new);
    }

    /// Whether these entries are exactly all of them, each once.
    pub fn expect(&self, stored: Vec<Entry>) {
        let journal = Journal::stored(stored);
        let lines: Vec<String> = journal.entries().map(line_of).collect();
        assert_eq!(lines.len(), self.facts.len(), "as many facts as were recorded");
        assert_eq!(lines.into_iter().collect::<BTreeSet<_>>(), self.facts, "and each as it was recorded");
        let entries: Vec<&Entry> = journal.entries().collect();
        // An id that is derived from a forked device's holds facts of several devices.
        let is_device = |id: Uuid| id.get_version_num() != 8;
        let rises = |pair: &[&Entry]| {
            pair[0].device != pair[1].device || !is_device(pair[0].device) || pair[0].stamp < pair[1].stamp
        };
        assert!(entries.windows(2).all(rises), "what a device records later is later");
    }
}
