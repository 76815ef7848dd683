//! Journal entries: a fact with its device, sequence number, stamp, wall time and subject.

use super::stamp::LATEST_WALL;
use super::{JournalFact, Stamp};
use crate::bounds::LONGEST_LINE;
use crate::ids::{DeviceId, Subject};
use crate::time::WallTime;
use serde::{Deserialize, Serialize};

/// Sort key of entries in the fold.
pub type OrderKey = (Stamp, DeviceId, u64);

/// A fact in the journal. Entries never change. They leave the journal only when an import is taken back
/// ([`Storage::withdraw`](super::Storage::withdraw)).
#[derive(Clone, Debug, PartialEq)]
pub struct Entry<F> {
    /// The device that recorded it.
    pub device: DeviceId,
    /// Sequence number: 1, 2, 3 … for each device, without gaps.
    pub seq: u64,
    /// Time of recording by the hybrid clock. It gives the order, and nothing else is computed from it.
    pub stamp: Stamp,
    /// Wall time of recording by the device's own clock: what paces, stops, ages and days are computed from. Entries
    /// of version 1 have the wall time of their stamp.
    pub at: WallTime,
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
    /// Only if it is not the wall time of the stamp.
    #[serde(skip_serializing_if = "Option::is_none")]
    at: Option<WallTime>,
    subject: Subject,
    fact: &'a serde_json::value::RawValue,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct WireIn<'a> {
    device: DeviceId,
    seq: u64,
    stamp: Stamp,
    #[serde(default)]
    at: Option<WallTime>,
    subject: Subject,
    #[serde(borrow)]
    fact: &'a serde_json::value::RawValue,
}

impl<F> Entry<F> {
    /// Highest sequence number accepted: a thousand facts per second for a century.
    const HIGHEST_SEQ: u64 = 1 << 42;

    /// Sort key of the entry in the fold.
    pub fn key(&self) -> OrderKey {
        (self.stamp, self.device, self.seq)
    }
}

impl<F: JournalFact> Entry<F> {
    /// The entry with its fact as this version knows it. Reads the JSON of every kind of fact, so it is for loading,
    /// merging and folding whole journals, and not for appending.
    #[must_use]
    pub fn recognized(self) -> Self {
        Self { fact: self.fact.recognized(), ..self }
    }

    /// The entry with its fact as it is stored.
    #[must_use]
    pub fn stored_form(self) -> Self {
        Self { fact: self.fact.stored_form(), ..self }
    }

    /// Whether both are the same entry: equal, or equal as lines of a file. A fact that is known to this version is
    /// then the same as itself stored by a version that did not know it.
    pub fn is_same(&self, other: &Self) -> bool {
        self == other
            || (self.fact.as_unknown().is_some() || other.fact.as_unknown().is_some())
                && self.to_line() == other.to_line()
    }

    /// The entry as a line of `journal.ndjson`, without the line end.
    pub fn to_line(&self) -> String {
        let fact = self.fact.to_json();
        serde_json::to_string(&WireOut {
            device: self.device,
            seq: self.seq,
            stamp: self.stamp,
            at: (self.at != self.stamp.wall).then_some(self.at),
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
        let at = wire.at.unwrap_or(wire.stamp.wall);
        let in_bounds =
            (1..=Self::HIGHEST_SEQ).contains(&wire.seq) && wire.stamp.wall.max(at) <= LATEST_WALL && fact.in_bounds();
        if !in_bounds {
            return Err(EntryProblem::OutOfBounds);
        }
        Ok(Self { device: wire.device, seq: wire.seq, stamp: wire.stamp, at, subject: wire.subject, fact })
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
            at: wall(1_790_000_000_000),
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
    fn a_wall_time_other_than_that_of_the_stamp_is_a_field_of_its_own() {
        let line = sample().to_line().replace(r#""subject""#, r#""at":1789999000000,"subject""#);
        let entry = Entry { at: wall(1_789_999_000_000), ..sample() };
        assert_eq!(entry.to_line(), line);
        assert_eq!(Entry::from_line(&line), Ok(entry));
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
            (good.replace("\"subject\"", "\"at\":99999999999999999,\"subject\""), EntryProblem::OutOfBounds),
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
