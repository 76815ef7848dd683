//! Failures in the invented shop's earlier weeks, and how they were resolved.

use super::language::INES;
use super::maker::Maker;
use crate::facts::{Fact, FailureFact, FailureField, FailureKind, Mark, Remedy, Size, Suspects, Verdict};
use crate::ids::RunId;
use crate::time::{Millis, WallTime};
use uuid::Uuid;

/// Records a failure for which a run was stopped at `from`: entered within two minutes, and its suspect
/// pieces, size M, inspected within three. All were good.
pub(super) fn record_failure<N: FnMut() -> Uuid>(
    maker: &mut Maker<N>,
    run: RunId,
    from: WallTime,
    times_before: usize,
) {
    let (kind, remedy, mark, suspect) = match times_before % 3 {
        0 => (FailureKind::Pinhole, Remedy::Tape, Mark { x: 270, y: 180 }, 4),
        1 => (FailureKind::Clog, Remedy::Clean, Mark { x: 640, y: 820 }, 6),
        _ => (FailureKind::Spot, Remedy::BlockOut, Mark { x: 810, y: 430 }, 3),
    };
    let (size, by) = (Some(Size::M), Some(maker.language.say(INES)));
    let id = maker.id();
    let mut set = |seconds: u64, fields| {
        maker.record(from + seconds * Millis::from_ms(1_000), id, Fact::Failure(FailureFact::Set(fields)));
    };
    set(0, vec![FailureField::Run(run), FailureField::By(by.clone())]);
    set(8, vec![FailureField::Kind(kind)]);
    set(25, vec![FailureField::Mark(Some(mark))]);
    let suspects = vec![Suspects { size, pieces: suspect }];
    set(40, vec![FailureField::Since(Some(suspect)), FailureField::Suspects(suspects)]);
    set(70, vec![FailureField::Remedy(Some(remedy))]);
    let judged = FailureFact::Judged { pieces: suspect.cast_signed(), size, verdict: Verdict::Good, by };
    maker.record(from + Millis::from_ms(170_000), id, Fact::Failure(judged));
}
