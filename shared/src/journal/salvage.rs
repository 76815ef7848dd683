//! What can still be read of a damaged journal: value by value, so that one that does not decode costs no other.
//!
//! # Decisions
//!
//! - **What does not decode is carried along** (2026-11-29). A backup is made value by value (`RawJournal::salvage`),
//!   says how many of the stored facts are in it, has the undecodable values in `unreadable/`, and is read back
//!   before it is offered. Only a whole one counts as a backup.

use super::record::BytesProblem;
use super::segment::Segment;
use super::{Coverage, Head, JournalFact, Packed, Packer, RawJournal, StorageFault, StoredValue, record};

/// What a damaged or whole journal still holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Salvage<F> {
    /// The entries that decode: those of the tail first.
    pub facts: Packed<F>,
    /// Which facts were stored; `None` if the head does not decode.
    pub stored: Option<Coverage>,
    /// The values that do not decode, as they are stored; with them the checkpoint, which holds what they added up to.
    pub unreadable: Vec<StoredValue>,
    /// The first fault while fetching the values.
    pub fault: Option<StorageFault>,
}

impl RawJournal {
    /// Decodes every value that can be decoded.
    pub fn salvage<F: JournalFact>(self) -> Salvage<F> {
        let (mut packer, mut unreadable) = (Packer::<F>::default(), Vec::new());
        for (name, bytes) in self.tail {
            match record::decode::<F>(&bytes) {
                Ok(entry) => packer.push(&entry),
                Err(BytesProblem::Newer(_) | BytesProblem::Damaged) => unreadable.push((format!("tail-{name}"), bytes)),
            }
        }
        let mut segments = packer.finish().into_segments();
        for (name, bytes) in self.segments {
            match Segment::of::<F>(bytes) {
                Ok(segment) => segments.push(segment),
                Err((BytesProblem::Newer(_) | BytesProblem::Damaged, bytes)) => {
                    unreadable.push((format!("segment-{name}"), bytes));
                }
            }
        }
        let facts = Packed::of_segments(segments);
        let head = self.head.as_deref().map(Head::from_bytes);
        // No head at all is a journal without a fact.
        let stored = match head {
            None if self.fault.is_none() => Some(Coverage::default()),
            None => None,
            Some(head) => head.ok().map(|head| head.coverage),
        };
        if stored.is_none() {
            unreadable.extend(self.head.map(|bytes| ("head".to_owned(), bytes)));
        }
        let whole = Salvage::<F> { facts, stored, unreadable, fault: self.fault };
        let checkpoint = self.checkpoint.filter(|_| !whole.is_whole());
        let unreadable =
            whole.unreadable.into_iter().chain(checkpoint.map(|bytes| ("checkpoint".to_owned(), bytes))).collect();
        Salvage { unreadable, ..whole }
    }
}

impl<F> Salvage<F> {
    /// Number of facts that were stored; `None` if that does not read either.
    pub fn facts_stored(&self) -> Option<u64> {
        self.stored.as_ref().map(Coverage::len)
    }

    /// Number of facts read, each counted once.
    pub fn facts_read(&self) -> u64 {
        self.facts.coverage().len()
    }

    /// Whether every stored fact was read.
    pub fn is_whole(&self) -> bool {
        let Some(stored) = &self.stored else { return false };
        self.fault.is_none() && self.unreadable.is_empty() && self.facts.coverage().contains(stored)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Fact;
    use crate::journal::{Entry, Stamp};
    use crate::time::wall;
    use uuid::Uuid;

    const DEVICE: Uuid = Uuid::from_u128(7);

    fn pulled(seq: u64) -> Entry<Fact> {
        let stamp = Stamp { wall: wall(1_000 + seq), counter: 0 };
        let fact = Fact::Pulled { pieces: 1, size: None };
        Entry { device: DEVICE, seq, stamp, at: stamp.wall, subject: Uuid::from_u128(2), fact }
    }

    /// Facts 1 to 4 in a segment, 5 to 7 as records.
    fn journal() -> RawJournal {
        let all: Vec<Entry<Fact>> = (1..=7).map(pulled).collect();
        let mut head = Head::default();
        head.coverage.add_all(&all);
        RawJournal {
            head: Some(head.to_bytes()),
            tail: all[4..].iter().map(|entry| (entry.seq.to_string(), record::encode(entry))).collect(),
            segments: Packed::sorted(&all[..4])
                .segments()
                .iter()
                .map(|packed| ("1".into(), packed.bytes.to_vec()))
                .collect(),
            checkpoint: Some(vec![6, 1]),
            fault: None,
        }
    }

    fn names(salvage: &Salvage<Fact>) -> Vec<&str> {
        salvage.unreadable.iter().map(|(name, _)| name.as_str()).collect()
    }

    #[test]
    fn a_whole_journal_is_read_whole_without_its_checkpoint() {
        let salvage = journal().salvage::<Fact>();
        assert!(salvage.is_whole());
        assert_eq!((salvage.facts_read(), salvage.facts_stored()), (7, Some(7)));
        assert_eq!(names(&salvage), [""; 0]);
    }

    #[test]
    fn a_journal_without_a_head_is_an_empty_one() {
        let salvage = RawJournal::default().salvage::<Fact>();
        assert!(salvage.is_whole());
        assert_eq!(salvage.facts_stored(), Some(0));
    }

    #[test]
    fn a_damaged_record_costs_no_other() {
        let mut raw = journal();
        raw.tail[1].1.pop();
        let damaged = raw.tail[1].1.clone();
        let salvage = raw.salvage::<Fact>();
        assert!(!salvage.is_whole());
        assert_eq!((salvage.facts_read(), salvage.facts_stored()), (6, Some(7)));
        assert_eq!(names(&salvage), ["tail-6", "checkpoint"]);
        assert_eq!(salvage.unreadable[0].1, damaged);
    }

    #[test]
    fn a_damaged_or_newer_segment_costs_no_record() {
        for change in [(0, 9), (1, 0xFF)] {
            let mut raw = journal();
            if change.0 == 0 {
                raw.segments[0].1[0] = change.1;
            } else {
                raw.segments[0].1.pop();
            }
            let salvage = raw.salvage::<Fact>();
            assert_eq!((salvage.facts_read(), salvage.facts_stored()), (3, Some(7)));
            assert_eq!(names(&salvage), ["segment-1", "checkpoint"]);
        }
    }

    #[test]
    fn a_damaged_head_says_how_many_facts_are_read_not_how_many_are_stored() {
        let mut raw = journal();
        raw.head = Some(vec![1, 99]);
        let salvage = raw.salvage::<Fact>();
        assert_eq!((salvage.facts_read(), salvage.facts_stored(), salvage.is_whole()), (7, None, false));
        assert_eq!(names(&salvage), ["head", "checkpoint"]);
    }

    #[test]
    fn facts_that_the_head_knows_and_nothing_holds_are_missed() {
        let mut raw = journal();
        raw.tail.pop();
        let salvage = raw.salvage::<Fact>();
        assert_eq!((salvage.facts_read(), salvage.facts_stored(), salvage.is_whole()), (6, Some(7), false));
        assert_eq!(names(&salvage), ["checkpoint"]);
    }

    #[test]
    fn a_fault_while_fetching_is_never_a_whole_journal() {
        let mut raw = journal();
        raw.fault = Some(StorageFault::Closed);
        assert!(!raw.salvage::<Fact>().is_whole());
        let nothing = RawJournal { fault: Some(StorageFault::Closed), ..RawJournal::default() };
        assert_eq!(nothing.salvage::<Fact>().facts_stored(), None);
    }
}
