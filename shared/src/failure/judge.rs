//! Facts that record the inspection of suspect pieces.

use super::Failure;
use super::pieces::uninspected_of;
use crate::facts::{Fact, FailureFact, Size, Verdict};
use crate::ids::{RunId, Subject};
use crate::shop::Shop;

/// The facts that record a verdict on suspect pieces of one size, at most as many as are still suspect.
/// Spoiled pieces leave the count, so that they are printed again and their garments replaced. A negative
/// number takes verdicts back, at most as many as were given.
pub fn judge_facts(
    shop: &Shop,
    id: Subject,
    size: Option<Size>,
    pieces: i32,
    verdict: Verdict,
    by: Option<&str>,
) -> Vec<(Subject, Fact)> {
    let Some(failure) = shop.failures.live(id) else { return Vec::new() };
    let most = if pieces > 0 { uninspected_of(shop, failure, size) } else { failure.judged_of(size, verdict) };
    let pieces = pieces.signum() * pieces.unsigned_abs().min(most).cast_signed();
    if pieces == 0 {
        return Vec::new();
    }
    let by = by.map(str::to_owned);
    let mut facts = vec![(id, Fact::Failure(FailureFact::Judged { pieces, size, verdict, by }))];
    if let Some(run) = failure.run.filter(|_| verdict == Verdict::Spoiled) {
        let cause = failure.kind.unwrap_or(crate::facts::FailureKind::Other).misprint_cause();
        facts.push((run, Fact::Misprinted { pieces, size, cause, was_counted: true }));
    }
    facts
}

/// The facts that give all pieces that are still suspect the same verdict.
pub fn judge_all_facts(shop: &Shop, id: Subject, verdict: Verdict, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let Some(failure) = shop.failures.live(id) else { return Vec::new() };
    let sizes = failure.sizes().into_iter();
    let open = |size| failure.uninspected_of(size).min(i32::MAX as u32).cast_signed();
    sizes.flat_map(|size| judge_facts(shop, id, size, open(size), verdict, by)).collect()
}

/// The facts that take back verdicts that were just given.
pub fn undo_verdict_facts(facts: &[(Subject, Fact)]) -> Vec<(Subject, Fact)> {
    let back = |(subject, fact): &(Subject, Fact)| {
        let mut fact = fact.clone();
        let (Fact::Failure(FailureFact::Judged { pieces, .. }) | Fact::Misprinted { pieces, .. }) = &mut fact else {
            return None;
        };
        *pieces = -*pieces;
        Some((*subject, fact))
    };
    facts.iter().filter_map(back).collect()
}

/// The fact that takes back the verdict from which a misprint of a run came; `None` if it came from no
/// verdict. Undo at the count takes back the misprint, and the verdict must not remain without it.
pub fn undo_verdict_of_misprint(shop: &Shop, run: RunId, misprint: &Fact) -> Option<(Subject, Fact)> {
    let Fact::Misprinted { pieces, size, cause, was_counted: true } = *misprint else { return None };
    let came_from = |failure: &Failure| {
        failure.kind.unwrap_or(crate::facts::FailureKind::Other).misprint_cause() == cause
            && failure.judged_of(size, Verdict::Spoiled) >= pieces.unsigned_abs()
    };
    let (id, _) = shop.failures.of_run(run).into_iter().rfind(|(_, failure)| came_from(failure))?;
    let pieces = -pieces.abs();
    Some((id, Fact::Failure(FailureFact::Judged { pieces, size, verdict: Verdict::Spoiled, by: None })))
}
