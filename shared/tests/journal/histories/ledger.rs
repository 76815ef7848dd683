//! What was recorded, so that the end of a history can be compared with it.

use lastpull_core::facts::{Entry, Fact};
use lastpull_core::ids::{DeviceId, Subject};
use std::collections::BTreeMap;

/// Every fact that must be there in the end, by its device and number.
#[derive(Default)]
pub struct Ledger {
    facts: BTreeMap<(DeviceId, u64), Entry>,
    /// How many of them were acknowledged to the person who recorded them.
    pub acknowledged: u64,
}

impl Ledger {
    /// Facts of which the app has said that they are saved.
    pub fn acknowledge(&mut self, entries: &[Entry]) {
        self.acknowledged += entries.len() as u64;
        self.write_down(entries);
    }

    fn write_down(&mut self, entries: &[Entry]) {
        for entry in entries {
            let before = self.facts.insert((entry.device, entry.seq), entry.clone());
            assert_eq!(before, None, "a number is given once");
        }
    }

    /// The app was stopped while it recorded these facts: on the disk there are all of them or none.
    pub fn find(&mut self, facts: &[(Subject, Fact)], stored: &[Entry]) {
        let new: Vec<Entry> =
            stored.iter().filter(|entry| !self.facts.contains_key(&(entry.device, entry.seq))).cloned().collect();
        if new.is_empty() {
            return;
        }
        let mut found: Vec<_> = new.iter().map(|entry| (entry.seq, (entry.subject, entry.fact.clone()))).collect();
        found.sort_by_key(|(seq, _)| *seq);
        assert_eq!(found.into_iter().map(|(_, fact)| fact).collect::<Vec<_>>(), facts, "all of a transaction, or none");
        self.write_down(&new);
    }

    /// All of them, in the order of device and number.
    pub fn all(&self) -> Vec<Entry> {
        self.facts.values().cloned().collect()
    }

    /// Whether these entries are exactly all of them, each once.
    pub fn expect(&self, mut stored: Vec<Entry>) {
        stored.sort_by_key(|entry| (entry.device, entry.seq));
        let numbers = |entries: &[Entry]| entries.iter().map(|entry| (entry.device, entry.seq)).collect::<Vec<_>>();
        assert_eq!(numbers(&stored), self.facts.keys().copied().collect::<Vec<_>>(), "each fact once");
        assert!(stored.iter().eq(self.facts.values()), "and each as it was recorded");
        let rises = |pair: &[Entry]| pair[0].device != pair[1].device || pair[0].stamp < pair[1].stamp;
        assert!(stored.windows(2).all(rises), "what a device records later is later");
    }
}
