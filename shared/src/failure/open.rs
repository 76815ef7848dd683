//! Facts that open a failure with one tap, and that take it back.

use super::Failure;
use crate::facts::{Fact, FailureFact, FailureField, ScreenFact, ScreenField, ScreenState, StopCause, Verdict};
use crate::ids::{RunId, Subject};
use crate::screen::{LabelMatch, moved, screens_of};
use crate::shop::Shop;

/// The facts that open the failure `id` of a run. The press stops if it is pulling; the failed screen is
/// the run's, if the run names only one. Everything else is entered later.
pub fn open_facts(shop: &Shop, run: RunId, id: Subject, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let mut facts = stop_facts(shop, run);
    let mut fields = vec![FailureField::Run(run)];
    if let [LabelMatch { screen: Some(screen), .. }] = screens_of(shop, run).as_slice() {
        fields.push(FailureField::Screen(Some(*screen)));
    }
    fields.extend(by.map(|by| FailureField::By(Some(by.to_owned()))));
    facts.push((id, set_fact(fields)));
    facts
}

/// The facts that add a screen to the shop's list, under the id `screen`, if the run names it and the list
/// does not have it. It is on the press, assigned to the run, and is the one that failed.
pub fn add_screen_facts(
    shop: &Shop,
    id: Subject,
    label: &str,
    screen: Subject,
    by: Option<&str>,
) -> Vec<(Subject, Fact)> {
    let Some(run) = shop.failures.live(id).and_then(|failure| failure.run) else { return Vec::new() };
    let unknown = |found: &LabelMatch| found.label == label && found.screen.is_none();
    if !screens_of(shop, run).iter().any(unknown) {
        return Vec::new();
    }
    let fields = vec![ScreenField::Label(label.to_owned()), ScreenField::Run(Some(run))];
    vec![
        (screen, Fact::Screen(ScreenFact::Set(fields))),
        (screen, moved(ScreenState::OnPress, by)),
        (id, set_fact(vec![FailureField::Screen(Some(screen))])),
    ]
}

/// The fact that stops a run that is pulling; empty if the run is stopped or not on the press.
pub(super) fn stop_facts(shop: &Shop, run: RunId) -> Vec<(Subject, Fact)> {
    let pulls = shop.run(run).is_some_and(|run| run.progress.is_on_press() && run.progress.current_stop().is_none());
    if pulls { vec![(run, Fact::Stopped(StopCause::Screen))] } else { Vec::new() }
}

/// The facts that delete a failure opened by mistake: the pieces it spoiled go back into the count, and the
/// press continues if it is stopped for nothing else.
pub fn delete_facts(shop: &Shop, id: Subject) -> Vec<(Subject, Fact)> {
    let Some(failure) = shop.failures.live(id) else { return Vec::new() };
    let mut facts = vec![(id, Fact::Deleted)];
    facts.extend(recount_spoiled(failure, -1));
    if let Some(run) = failure.run.filter(|run| is_stopped_only_for(shop, *run, id, failure)) {
        facts.push((run, Fact::Resumed));
    }
    facts
}

/// The facts that undo [`delete_facts`], computed before the failure is deleted. If deleting it lets the
/// press continue, it stops again, as if it had not continued.
pub fn undo_delete_facts(shop: &Shop, id: Subject) -> Vec<(Subject, Fact)> {
    let Some(failure) = shop.failures.live(id) else { return Vec::new() };
    let mut facts = vec![(id, Fact::Restored)];
    facts.extend(recount_spoiled(failure, 1));
    if let Some(run) = failure.run.filter(|run| is_stopped_only_for(shop, *run, id, failure)) {
        facts.push((run, Fact::Stopped(StopCause::Screen)));
    }
    facts
}

fn recount_spoiled(failure: &Failure, sign: i32) -> Vec<(Subject, Fact)> {
    let Some(run) = failure.run else { return Vec::new() };
    let cause = failure.kind.unwrap_or(crate::facts::FailureKind::Other).misprint_cause();
    let row = |size| {
        let pieces = failure.judged_of(size, Verdict::Spoiled).cast_signed().max(0) * sign;
        (pieces != 0).then_some((run, Fact::Misprinted { pieces, size, cause, was_counted: true }))
    };
    failure.sizes().into_iter().filter_map(row).collect()
}

/// Whether the press has been stopped since this failure was opened, and no other failure was opened since.
fn is_stopped_only_for(shop: &Shop, run: RunId, id: Subject, failure: &Failure) -> bool {
    let standing = shop.run(run).and_then(|run| run.progress.current_stop());
    standing.is_some_and(|(since, cause)| {
        let other = |(other, row): &(Subject, &Failure)| *other != id && row.at >= since;
        cause == StopCause::Screen && failure.at == since && !shop.failures.of_run(run).iter().any(other)
    })
}

pub(super) fn set_fact(fields: Vec<FailureField>) -> Fact {
    Fact::Failure(FailureFact::Set(fields))
}
