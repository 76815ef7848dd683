//! The latest cure tests of each ink.

use super::{CureTest, ink_key};
use crate::codec::Encode;
use crate::collections::Groups;
use crate::facts::{Fabric, TestKind, TestResult};
use crate::ids::id_of_name;
use crate::time::{NewestOfKinds, WallTime};
use uuid::Uuid;

/// Most tests kept of which the latest is asked for: some may be deleted. Our own.
const MOST: usize = 4;

/// What a test is of, beside its ink.
#[derive(Clone, Copy, Debug, PartialEq, Encode)]
pub(super) struct TestedKind {
    pub fabric: Fabric,
    pub kind: TestKind,
    pub result: TestResult,
}

/// The latest tests of each ink by the id of its [key](ink_key), without deleted ones.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(super) struct TestsByInk {
    inks: Groups<NewestOfKinds<TestedKind>>,
}

/// What the list needs to know of a test that is not deleted.
#[derive(Clone, Copy, PartialEq)]
pub(super) struct ListedTest {
    ink: Uuid,
    kind: TestedKind,
    at: WallTime,
}

impl ListedTest {
    /// `None` if it is deleted.
    pub(super) fn of(test: &CureTest) -> Option<Self> {
        let kind = TestedKind { fabric: test.fabric, kind: test.kind, result: test.result };
        let listed = Self { ink: id_of_name(&ink_key(&test.ink)), kind, at: test.result_at };
        Some(listed).filter(|_| !test.deleted)
    }
}

impl TestsByInk {
    pub(super) fn of(&self, ink_key: &str) -> Option<&NewestOfKinds<TestedKind>> {
        self.inks.get(id_of_name(ink_key))
    }

    pub(super) fn test_changed(&mut self, id: Uuid, before: Option<ListedTest>, after: Option<ListedTest>) {
        let [before, after] = [before, after].map(|test| test.map(|test| (test.ink, (test.kind, test.at))));
        self.inks.change(before, after, |tests, was, is| tests.replace_with_limit(MOST, id, was, is));
    }

    pub(super) fn rows_in_memory(&self) -> usize {
        self.inks.rows_in_memory()
    }
}
