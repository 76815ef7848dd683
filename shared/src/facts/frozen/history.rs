//! A made-up journal that holds every row, so that a change of the fold shows.

use super::fact::subject_of;
use super::prelude::*;
use super::rows;
use crate::time::{Millis, WallTime};
use uuid::Uuid;

/// When the made-up journal begins.
const BEGINS: WallTime = WallTime::from_unix_ms(1_790_000_000_000);
/// Between two of its entries.
const STEP: Millis = Millis::from_ms(40_000);
/// The first id of what was deleted before its first fact.
const GONE: u128 = 0x1000;

/// A run on the press, with every way in which its clock starts and stops.
fn at_the_press() -> Vec<(Subject, Fact)> {
    let pulled = |pieces| Fact::Pulled { pieces, size: Some(Size::M) };
    let spoiled = Fact::Misprinted { pieces: 1, size: Some(Size::M), cause: MisprintCause::InkLay, was_counted: true };
    let facts = [
        Fact::RunStarted,
        pulled(1),
        pulled(1),
        Fact::Stopped(StopCause::Break),
        Fact::Resumed,
        pulled(1),
        spoiled,
        pulled(-1),
        pulled(3),
        Fact::RunEnded,
        Fact::RunStarted,
        pulled(2),
    ];
    let facts = facts.into_iter().map(|fact| (RUN, fact));
    facts.chain([(JOB, Fact::JobFinished), (JOB, Fact::JobReopened)]).collect()
}

/// The made-up journal of two devices, in the order of the fold: each row about what it is made for; a run on the
/// press; each row about something that was deleted before, every third of those then restored; what the first
/// rows were about deleted, and every second of that restored; a fact of a newer version.
pub fn history() -> Vec<Entry> {
    let rows = rows();
    let mut story: Vec<(Subject, Fact)> = rows.iter().map(|row| (subject_of(&row.fact), row.fact.clone())).collect();
    let mut subjects: Vec<Subject> = story.iter().map(|(subject, _)| *subject).collect();
    subjects.sort_unstable();
    subjects.dedup();
    story.extend(at_the_press());
    for (at, row) in rows.iter().enumerate() {
        let gone = Uuid::from_u128(GONE + at as u128);
        story.extend([(gone, Fact::Deleted), (gone, row.fact.clone())]);
        story.extend((at % 3 == 0).then_some((gone, Fact::Restored)));
    }
    for (at, subject) in subjects.into_iter().enumerate() {
        story.push((subject, Fact::Deleted));
        story.extend((at % 2 == 0).then_some((subject, Fact::Restored)));
    }
    story.push((
        SHOP,
        Fact::Unknown { kind: "laser_engraved".into(), body: r#"{"laser_engraved":{"depth":7}}"#.into() },
    ));
    let entry = |(at, (subject, fact)): (usize, (Subject, Fact))| {
        let at = at as u64;
        let stamp = Stamp { wall: BEGINS + at * STEP, counter: (at % 3) as u32 };
        Entry { device: Uuid::from_u128(1 + u128::from(at % 2)), seq: at / 2 + 1, stamp, at: stamp.wall, subject, fact }
    };
    story.into_iter().enumerate().map(entry).collect()
}
