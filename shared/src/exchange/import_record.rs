//! What the last import brought, kept beside the journal so that it can be taken back later.

use crate::codec::{Encode, from_bytes};
use crate::ids::PhotoId;
use crate::journal::Coverage;
use crate::time::WallTime;

/// The version written.
const VERSION: u8 = 1;

/// What an import brought.
///
/// Stored as one byte `1` and the fields in postcard. **Frozen**; a change is a new version with a decoder of its own.
#[derive(Clone, Debug, PartialEq, Encode)]
pub struct ImportRecord {
    /// The facts, by the ids that they are stored under.
    pub facts: Coverage,
    /// The photos that were not here before.
    pub photos: Vec<PhotoId>,
    /// Wall time of the import.
    pub at: WallTime,
}

impl ImportRecord {
    /// The bytes to store.
    pub fn to_bytes(&self) -> Vec<u8> {
        let mut out = vec![VERSION];
        self.encode(&mut out);
        out
    }

    /// Reads what [`Self::to_bytes`] wrote; `None` for anything else. The import cannot be taken back then.
    pub fn from_bytes(bytes: &[u8]) -> Option<Self> {
        let (&version, rest) = bytes.split_first()?;
        if version == VERSION { from_bytes(rest) } else { None }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::{Entry, Fact};
    use crate::journal::Stamp;
    use crate::time::wall;
    use uuid::Uuid;

    fn record() -> ImportRecord {
        let entry = |seq| Entry {
            device: Uuid::from_u128(7),
            seq,
            stamp: Stamp { wall: wall(10), counter: 0 },
            at: wall(10),
            subject: Uuid::from_u128(1),
            fact: Fact::RunStarted,
        };
        let mut facts = Coverage::default();
        facts.add_all(&[entry(3), entry(4)]);
        ImportRecord { facts, photos: vec![PhotoId([9; 32])], at: wall(300) }
    }

    /// These bytes are stored on users' devices.
    #[test]
    fn the_bytes_of_version_1_are_frozen() {
        let mut frozen = vec![1, 1, 16, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7, 1, 3, 4, 1];
        frozen.extend([9; 32]);
        frozen.extend([0xac, 0x02]);
        assert_eq!(record().to_bytes(), frozen);
        assert_eq!(ImportRecord::from_bytes(&frozen), Some(record()));
    }

    #[test]
    fn other_versions_and_truncated_bytes_are_no_record() {
        let good = record().to_bytes();
        for cut in 0..good.len() {
            assert_eq!(ImportRecord::from_bytes(&good[..cut]), None, "{cut}");
        }
        let mut newer = good;
        newer[0] = 2;
        assert_eq!(ImportRecord::from_bytes(&newer), None);
    }
}
