//! Journal entries: a fact with its device, sequence number, stamp and subject.

use super::{JournalFact, Stamp};
use crate::bounds::LONGEST_LINE;
use crate::ids::{DeviceId, Subject};
use crate::time::WallTime;
use serde::{Deserialize, Serialize};

/// Sort key of entries in the fold.
pub type OrderKey = (Stamp, DeviceId, u64);

/// A fact in the journal. Entries never change and are never removed.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry<F> {
    /// The device that recorded it.
    pub device: DeviceId,
    /// Sequence number: 1, 2, 3 … for each device, without gaps.
    pub seq: u64,
    /// Time of recording by the hybrid clock.
    pub stamp: Stamp,
    /// What it is about.
    pub subject: Subject,
    /// The fact.
    pub fact: F,
}

/// Why a line of a journal file is not an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EntryProblem {
    /// The text is not an entry.
    NotAnEntry,
    /// The sequence number, a name, a list or a number is outside the bounds of what a device records.
    OutOfBounds,
}

#[derive(Serialize)]
struct WireOut<'a> {
    device: DeviceId,
    seq: u64,
    stamp: Stamp,
    subject: Subject,
    fact: &'a serde_json::value::RawValue,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct WireIn<'a> {
    device: DeviceId,
    seq: u64,
    stamp: Stamp,
    subject: Subject,
    #[serde(borrow)]
    fact: &'a serde_json::value::RawValue,
}

impl<F> Entry<F> {
    /// Highest sequence number accepted: a thousand facts per second for a century.
    const HIGHEST_SEQ: u64 = 1 << 42;

    /// Latest moment accepted: the year 2500.
    const LATEST_WALL: WallTime = WallTime::from_unix_ms(16_725_225_600_000);

    /// Sort key of the entry in the fold.
    pub fn key(&self) -> OrderKey {
        (self.stamp, self.device, self.seq)
    }
}

impl<F: JournalFact> Entry<F> {
    /// The entry as a line of `journal.ndjson`, without the line end.
    pub fn to_line(&self) -> String {
        let fact = self.fact.to_json();
        serde_json::to_string(&WireOut {
            device: self.device,
            seq: self.seq,
            stamp: self.stamp,
            subject: self.subject,
            fact: &fact,
        })
        .unwrap_or_default()
    }

    /// Parses a line of `journal.ndjson`. A fact of an unknown kind is kept unchanged.
    ///
    /// # Errors
    /// [`EntryProblem`] if the line is not an entry, or no device could have recorded it.
    pub fn from_line(line: &str) -> Result<Self, EntryProblem> {
        if line.len() > LONGEST_LINE {
            return Err(EntryProblem::OutOfBounds);
        }
        let wire: WireIn = serde_json::from_str(line).map_err(|_| EntryProblem::NotAnEntry)?;
        let fact = F::from_json(wire.fact.get()).ok_or(EntryProblem::NotAnEntry)?;
        let in_bounds =
            (1..=Self::HIGHEST_SEQ).contains(&wire.seq) && wire.stamp.wall <= Self::LATEST_WALL && fact.in_bounds();
        if !in_bounds {
            return Err(EntryProblem::OutOfBounds);
        }
        Ok(Self { device: wire.device, seq: wire.seq, stamp: wire.stamp, subject: wire.subject, fact })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::{Fact, JobField};
    use crate::time::wall;
    use uuid::Uuid;

    type Entry = super::Entry<Fact>;

    fn sample() -> Entry {
        Entry {
            device: Uuid::from_u128(0xd1),
            seq: 3,
            stamp: Stamp { wall: wall(1_790_000_000_000), counter: 2 },
            subject: Uuid::from_u128(0x50b),
            fact: Fact::JobSet(vec![JobField::Title("Reunion tees".into())]),
        }
    }

    /// The line is a file format read by other devices: it must not change.
    #[test]
    fn the_line_of_an_entry_is_frozen() {
        let line = r#"{"device":"00000000-0000-0000-0000-0000000000d1","seq":3,"stamp":[1790000000000,2],"subject":"00000000-0000-0000-0000-00000000050b","fact":{"job_set":[{"title":"Reunion tees"}]}}"#;
        assert_eq!(sample().to_line(), line);
        assert_eq!(Entry::from_line(line), Ok(sample()));
    }

    #[test]
    fn a_fact_of_a_newer_version_round_trips_unchanged() {
        let line = sample()
            .to_line()
            .replace(r#"{"job_set":[{"title":"Reunion tees"}]}"#, r#"{"laser_engraved":{"depth":[1,2,{"x":null}]}}"#);
        let entry = Entry::from_line(&line).unwrap();
        assert!(matches!(&entry.fact, Fact::Unknown { kind, .. } if kind == "laser_engraved"));
        assert_eq!(entry.to_line(), line);
    }

    #[test]
    fn a_known_fact_with_a_newer_field_is_kept_whole() {
        let line =
            sample().to_line().replace(r#"{"title":"Reunion tees"}"#, r#"{"title":"Reunion tees"},{"rush":true}"#);
        let entry = Entry::from_line(&line).unwrap();
        assert!(matches!(entry.fact, Fact::Unknown { .. }));
        assert_eq!(entry.to_line(), line);
    }

    #[test]
    fn hostile_lines_are_refused() {
        let good = sample().to_line();
        for (bad, why) in [
            (good.replace("\"seq\":3", "\"seq\":0"), EntryProblem::OutOfBounds),
            (good.replace("\"seq\":3", "\"seq\":18446744073709551615"), EntryProblem::OutOfBounds),
            (good.replace("\"seq\":3", "\"seq\":-1"), EntryProblem::NotAnEntry),
            (good.replace("1790000000000", "99999999999999999"), EntryProblem::OutOfBounds),
            (good.replace("Reunion", &"x".repeat(5_000)), EntryProblem::OutOfBounds),
            (good.replace("Reunion", &"x".repeat(70_000)), EntryProblem::OutOfBounds),
            (good[..40].to_owned(), EntryProblem::NotAnEntry),
            ("[".repeat(60_000), EntryProblem::NotAnEntry),
            (good.replace("\"seq\":3", "\"seq\":3,\"sudo\":1"), EntryProblem::NotAnEntry),
        ] {
            assert_eq!(Entry::from_line(&bad), Err(why), "{}", &bad[..bad.len().min(120)]);
        }
    }
}
