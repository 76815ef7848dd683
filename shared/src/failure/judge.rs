//! Looking at suspect pieces.

use super::{FailureFact, Verdict};
use crate::job::Size;
use crate::journal::{Fact, Subject};
use crate::shop::Shop;

/// The facts that judge suspect pieces of one size: as many as are still suspect at most. Spoiled ones
/// leave the count, so that they are to be printed again and their garments replaced. Negative pieces
/// take judgements back, as many as were made at most.
pub fn judge_facts(
    shop: &Shop,
    id: Subject,
    size: Option<Size>,
    pieces: i32,
    verdict: Verdict,
    by: Option<&str>,
) -> Vec<(Subject, Fact)> {
    let Some(failure) = shop.failures.live(id) else { return Vec::new() };
    // A count taken back since then took its suspects with it.
    let there = failure.run.and_then(|run| shop.run(run)).map_or(0, |run| run.progress.good_of(size));
    let most = if pieces > 0 { failure.open_of(size).min(there) } else { failure.judged_of(size, verdict) };
    let pieces = pieces.signum() * pieces.unsigned_abs().min(most).cast_signed();
    if pieces == 0 {
        return Vec::new();
    }
    let by = by.map(str::to_owned);
    let mut facts = vec![(id, Fact::Failure(FailureFact::Judged { pieces, size, verdict, by }))];
    if let Some(run) = failure.run.filter(|_| verdict == Verdict::Spoiled) {
        let cause = failure.kind.unwrap_or(super::FailureKind::Other).spoils_as();
        facts.push((run, Fact::Misprinted { pieces, size, cause, was_counted: true }));
    }
    facts
}

/// The facts that judge all that is still suspect.
pub fn judge_all_facts(shop: &Shop, id: Subject, verdict: Verdict, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let Some(failure) = shop.failures.live(id) else { return Vec::new() };
    let sizes = failure.sizes().into_iter();
    let open = |size| failure.open_of(size).min(i32::MAX as u32).cast_signed();
    sizes.flat_map(|size| judge_facts(shop, id, size, open(size), verdict, by)).collect()
}
