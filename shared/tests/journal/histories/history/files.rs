//! What a history's devices write into files and take from them.

use super::{History, record_on_disk};
use lastpull_core::exchange::{BackupWriter, read_backup};
use lastpull_core::facts::{Entry, Journal};
use pollster::block_on;
use rand::Rng;

impl History {
    /// Everything on a device as a file, or a part of it.
    pub(super) fn write_file(&mut self, at: usize) {
        let whole = self.random.random_range(0..3) > 0;
        let stored = self.devices[at].stored();
        let file = stored.into_iter().filter(|_| whole || self.random.random());
        let lines = file.map(|entry| Entry::from_line(&entry.to_line()).unwrap());
        let file = lines.collect();
        self.files.push(file);
    }

    /// One of the files so far arrives. It may have arrived before, and it may arrive again; most are never taken in
    /// everywhere.
    pub(super) fn read_file(&mut self, at: usize) {
        if self.files.is_empty() {
            return;
        }
        let file = self.files[self.random.random_range(0..self.files.len())].clone();
        // Now and then another tab counts meanwhile.
        let mut beside = if self.random.random_range(0..4) == 0 { Some(self.facts()) } else { None };
        let mut saved = Vec::new();
        let taken = self.devices[at].take_in(&file, |device| {
            if let Some(facts) = beside.take() {
                saved = record_on_disk(device, &facts);
            }
        });
        self.ledger.acknowledge(&saved);
        // What an import brought is known once it is stored; the next one makes it forgotten.
        self.brought.remove(&at);
        match taken {
            Ok(brought) => {
                self.brought.insert(at, brought);
                if let Err(failed) = self.devices[at].show(&saved) {
                    self.restart(at, &failed);
                }
            }
            Err(failed) => self.restart(at, &failed),
        }
    }

    /// Facts that a device cannot save go into a file.
    pub(super) fn rescue(&mut self, at: usize) {
        let facts = self.facts();
        let entries = self.devices[at].rescued(&facts, self.ids.next());
        self.ledger.acknowledge(&entries);
        self.files.push(entries.clone());
        self.unsaved.push((at, entries));
    }

    /// The device saves them after all. Their file may be here by now.
    pub(super) fn save_rescued(&mut self, at: usize) {
        let Some(first) = self.unsaved.iter().position(|(device, _)| *device == at) else { return };
        let (_, entries) = self.unsaved.remove(first);
        let before = self.devices[at].stored();
        let saved = self.devices[at].adopt(&entries);
        let stored = self.devices[at].stored();
        let new: Vec<Entry> = entries.into_iter().filter(|entry| !before.contains(entry)).collect();
        let found = new.iter().filter(|entry| stored.contains(entry)).count();
        assert_eq!(stored.len(), before.len() + found, "each once, and nothing else");
        match saved {
            Ok(()) => assert_eq!(found, new.len(), "what is saved is stored"),
            Err(failed) => {
                assert!(found == 0 || found == new.len(), "all of them are saved, or none");
                self.restart(at, &failed);
            }
        }
    }

    /// An import is taken back. What it brought is still in its file.
    pub(super) fn take_back(&mut self, at: usize) {
        let Some(brought) = self.brought.remove(&at) else { return };
        let before = self.devices[at].stored();
        let taken_back = self.devices[at].take_back(&brought);
        let stored = self.devices[at].stored();
        let left: Vec<&Entry> = before.iter().filter(|entry| !brought.holds(entry.device, entry.seq)).collect();
        let is_gone = stored.iter().eq(left);
        match taken_back {
            Ok(()) => assert!(is_gone, "what the import brought is gone, and nothing else"),
            Err(failed) => {
                assert!(is_gone || stored == before, "all of it is gone, or nothing");
                self.restart(at, &failed);
            }
        }
    }

    /// A file that was damaged on the way is refused, or is found to hold what was written.
    pub(super) fn read_damaged_file(&mut self, at: usize) {
        let stored = self.devices[at].stored();
        let (out, mut bytes) = BackupWriter::new(&stored, self.devices[at].now).unwrap();
        bytes.extend(out.finish());
        let flip = self.random.random_range(0..bytes.len());
        if self.random.random() {
            bytes[flip] ^= 1 << self.random.random_range(0..8);
        } else {
            bytes.truncate(flip);
        }
        if let Ok(backup) = block_on(read_backup(bytes.as_slice())) {
            assert_eq!(
                Journal::stored(backup.facts.entries().collect()),
                Journal::stored(stored),
                "what is read is what was written"
            );
        }
    }
}
