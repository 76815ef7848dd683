//! Facts that move a run's screens onto the press and off it with the run.

use super::labels::screens_of;
use super::moves::moved;
use crate::facts::{Fact, ScreenFact, ScreenField, ScreenState};
use crate::ids::{JobId, RunId, Subject};
use crate::plan::open_runs;
use crate::shop::Shop;

/// The facts for the screens of a run that goes on the press: whatever their state was, they are on the
/// press now, assigned to the run. A failed screen stays failed.
pub fn facts_on_start(shop: &Shop, run: RunId, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let mut facts = Vec::new();
    for id in screens_of(shop, run).into_iter().filter_map(|found| found.screen) {
        let Some(screen) = shop.screens.live(id).filter(|screen| screen.state != ScreenState::Failed) else { continue };
        if screen.state != ScreenState::OnPress {
            facts.push((id, moved(ScreenState::OnPress, by)));
        }
        if screen.run != Some(run) {
            facts.push((id, Fact::Screen(ScreenFact::Set(vec![ScreenField::Run(Some(run))]))));
        }
    }
    facts
}

/// Whether a run's screens should be kept when it leaves the press: it has pieces left, or another open run
/// names one of the screens.
pub fn should_keep_ready(shop: &Shop, run: RunId) -> bool {
    shop.pieces_left(run) > 0
        || screens_of(shop, run).iter().filter_map(|s| s.screen).any(|id| is_needed_elsewhere(shop, run, id))
}

/// The facts for the screens of a run that leaves the press: ready if `keep`, otherwise to reclaim. A
/// screen that another open run names is ready in any case, and stays on the press while that run is there.
pub fn facts_on_end(shop: &Shop, run: RunId, keep: bool, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let mut facts = Vec::new();
    for id in screens_of(shop, run).into_iter().filter_map(|found| found.screen) {
        let on_press = |screen: &crate::screen::Screen| screen.state == ScreenState::OnPress;
        if !shop.screens.live(id).is_some_and(on_press) || other_runs(shop, run, id).any(|(_, on_press)| on_press) {
            continue;
        }
        let to = if keep || is_needed_elsewhere(shop, run, id) { ScreenState::Ready } else { ScreenState::ToReclaim };
        facts.push((id, moved(to, by)));
    }
    facts
}

/// The facts for the screens of a job that is finished: the screens of its runs still on the press leave
/// it.
pub fn facts_on_finish(shop: &Shop, job: JobId, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let mut facts: Vec<(Subject, Fact)> = Vec::new();
    for (lot, _) in shop.lots_of(job) {
        for (run, of) in shop.runs_of(lot) {
            if of.progress.is_on_press() {
                facts.extend(
                    facts_on_end(shop, run, false, by)
                        .into_iter()
                        .filter(|fact| !facts.contains(fact))
                        .collect::<Vec<_>>(),
                );
            }
        }
    }
    facts
}

/// The screens of a run that has left the press.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ScreensOffPress {
    /// Screens that are off the press, still assigned to the run, and named by no other open run: the crew
    /// can choose to keep or reclaim them.
    pub screens: Vec<Subject>,
    /// Their labels, separated by commas.
    pub labels: String,
    /// Whether all of them are ready; otherwise their stencils may be removed.
    pub kept: bool,
}

/// The screens to decide about after a run has left the press; `None` if there are none.
pub fn off_press(shop: &Shop, run: RunId) -> Option<ScreensOffPress> {
    let mut off = ScreensOffPress { screens: Vec::new(), labels: String::new(), kept: true };
    for id in screens_of(shop, run).into_iter().filter_map(|found| found.screen) {
        let Some(screen) = shop.screens.live(id).filter(|screen| screen.run == Some(run)) else { continue };
        if !matches!(screen.state, ScreenState::Ready | ScreenState::ToReclaim) || is_needed_elsewhere(shop, run, id) {
            continue;
        }
        off.screens.push(id);
        off.kept &= screen.state == ScreenState::Ready;
        off.labels += if off.labels.is_empty() { "" } else { ", " };
        off.labels += &screen.label;
    }
    (!off.screens.is_empty()).then_some(off)
}

/// Labels of the run's screens that cannot print in their state; `None` if none of its screens is in the
/// shop's list.
pub fn not_ready(shop: &Shop, run: RunId) -> Option<Vec<String>> {
    let listed = screens_of(shop, run).into_iter().filter_map(|found| shop.screens.live(found.screen?));
    let mut any = false;
    let waiting = listed.inspect(|_| any = true).filter(|screen| !screen.state.can_print());
    let labels = waiting.map(|screen| screen.label.clone()).collect();
    any.then_some(labels)
}

fn is_needed_elsewhere(shop: &Shop, run: RunId, id: Subject) -> bool {
    other_runs(shop, run, id).next().is_some()
}

/// The other open runs that name a screen, and whether each is on the press.
fn other_runs(shop: &Shop, run: RunId, id: Subject) -> impl Iterator<Item = (RunId, bool)> {
    open_runs(shop)
        .into_iter()
        .filter(move |other| *other != run && screens_of(shop, *other).iter().any(|found| found.screen == Some(id)))
        .map(|other| (other, shop.run(other).is_some_and(|run| run.progress.is_on_press())))
}
