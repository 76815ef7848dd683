//! The latest cure tests of each ink.

use super::{CureTest, ink_key};
use crate::codec::Encode;
use crate::collections::Table;
use crate::facts::{Fabric, TestKind, TestResult};
use crate::ids::id_of_name;
use crate::time::{NewestOfKinds, WallTime};
use uuid::Uuid;

/// Most tests kept of which the latest is asked for: some may be deleted. Our own.
const MOST: usize = 4;

/// What a test is of, beside its ink.
pub(super) type TestedKind = (Fabric, (TestKind, TestResult));

/// The latest tests of each ink by the id of its [key](ink_key), without deleted ones.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(super) struct TestsByInk {
    inks: Table<NewestOfKinds<TestedKind>>,
}

/// What the list needs to know of a test that is not deleted.
pub(super) type TestStanding = Option<(Uuid, (TestedKind, WallTime))>;

pub(super) fn standing_of(test: &CureTest) -> TestStanding {
    let ink = id_of_name(&ink_key(&test.ink));
    (!test.deleted).then_some((ink, ((test.fabric, (test.kind, test.result)), test.result_at)))
}

impl TestsByInk {
    pub(super) fn of(&self, ink_key: &str) -> Option<&NewestOfKinds<TestedKind>> {
        self.inks.get(&id_of_name(ink_key))
    }

    pub(super) fn test_changed(&mut self, id: Uuid, before: TestStanding, after: TestStanding) {
        if before == after {
            return;
        }
        if let Some((ink, was)) = before {
            let left = self.inks.get_or_insert_default(ink);
            left.replace_among(MOST, id, Some(was), None);
            if left.is_empty() {
                self.inks.remove(&ink);
            }
        }
        if let Some((ink, is)) = after {
            self.inks.get_or_insert_default(ink).replace_among(MOST, id, None, Some(is));
        }
    }

    pub(super) fn rows_in_memory(&self) -> usize {
        self.inks.rows_in_memory()
    }
}
