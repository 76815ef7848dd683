//! Opening a failure with one tap, and taking it back.

use super::Failure;
use crate::facts::{Fact, FailureFact, FailureField, ScreenFact, ScreenField, ScreenState, StopCause, Verdict};
use crate::ids::{RunId, Subject};
use crate::screen::{LabelMatch, moved, screens_of};
use crate::shop::Shop;

/// The facts that open the failure `id` of a run: the press stops, where it pulls, and the screen is
/// the run's, where it names one only. Everything else is told later.
pub fn open_facts(shop: &Shop, run: RunId, id: Subject, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let mut facts = stop_facts(shop, run);
    let mut fields = vec![FailureField::Run(run)];
    if let [LabelMatch { screen: Some(screen), .. }] = screens_of(shop, run).as_slice() {
        fields.push(FailureField::Screen(Some(*screen)));
    }
    fields.extend(by.map(|by| FailureField::By(Some(by.to_owned()))));
    facts.push((id, set(fields)));
    facts
}

/// The facts that put a screen on the shop's list that a run names and the list does not, as `screen`:
/// it is on the press with the run's art, and it is the one that failed.
pub fn list_screen_facts(
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
        (id, set(vec![FailureField::Screen(Some(screen))])),
    ]
}

/// The stop of a run that pulls; nothing where the press stands or the run is not on it.
pub(super) fn stop_facts(shop: &Shop, run: RunId) -> Vec<(Subject, Fact)> {
    let pulls = shop.run(run).is_some_and(|run| run.progress.is_on_press() && run.progress.standing().is_none());
    if pulls { vec![(run, Fact::Stopped(StopCause::Screen))] } else { Vec::new() }
}

/// The facts that delete a failure opened by mistake: what it spoiled goes back into the count, and the
/// press goes on where it stands for nothing else.
pub fn delete_facts(shop: &Shop, id: Subject) -> Vec<(Subject, Fact)> {
    let Some(failure) = shop.failures.live(id) else { return Vec::new() };
    let mut facts = vec![(id, Fact::Deleted)];
    facts.extend(spoiled_again(failure, -1));
    if let Some(run) = failure.run.filter(|run| stands_for_it_alone(shop, *run, id, failure)) {
        facts.push((run, Fact::Resumed));
    }
    facts
}

/// The facts that will take [`delete_facts`] back, asked for before it is done: the press stands again
/// where that made it go on, as if it never had.
pub fn undelete_facts(shop: &Shop, id: Subject) -> Vec<(Subject, Fact)> {
    let Some(failure) = shop.failures.live(id) else { return Vec::new() };
    let mut facts = vec![(id, Fact::Restored)];
    facts.extend(spoiled_again(failure, 1));
    if let Some(run) = failure.run.filter(|run| stands_for_it_alone(shop, *run, id, failure)) {
        facts.push((run, Fact::Stopped(StopCause::Screen)));
    }
    facts
}

fn spoiled_again(failure: &Failure, sign: i32) -> Vec<(Subject, Fact)> {
    let Some(run) = failure.run else { return Vec::new() };
    let cause = failure.kind.unwrap_or(crate::facts::FailureKind::Other).spoils_as();
    let row = |size| {
        let pieces = failure.judged_of(size, Verdict::Spoiled).cast_signed().max(0) * sign;
        (pieces != 0).then_some((run, Fact::Misprinted { pieces, size, cause, was_counted: true }))
    };
    failure.sizes().into_iter().filter_map(row).collect()
}

/// Whether the press stands since this failure was opened, and no other failure was opened since.
fn stands_for_it_alone(shop: &Shop, run: RunId, id: Subject, failure: &Failure) -> bool {
    let standing = shop.run(run).and_then(|run| run.progress.standing());
    standing.is_some_and(|(since, cause)| {
        let other = |(other, row): &(Subject, &Failure)| *other != id && row.at >= since;
        cause == StopCause::Screen && failure.at == since && !shop.failures.of_run(run).iter().any(other)
    })
}

pub(super) fn set(fields: Vec<FailureField>) -> Fact {
    Fact::Failure(FailureFact::Set(fields))
}
