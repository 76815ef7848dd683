//! Screens follow their run onto the press and off it.

use super::moves::moved;
use super::{ScreenFact, ScreenField, ScreenState, screens_of};
use crate::job::RunId;
use crate::journal::{Fact, Subject};
use crate::plan::open_runs;
use crate::shop::Shop;

/// The facts for the screens of a run that goes on the press: whatever was noted of them before, they
/// are there now, with its art. One that failed stays failed.
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

/// Whether a run's screens had better be kept when it leaves the press: pieces of it are left, or
/// another open run names one of them.
pub fn keeps_ready(shop: &Shop, run: RunId) -> bool {
    shop.left_of(run) > 0 || screens_of(shop, run).iter().filter_map(|s| s.screen).any(|id| is_wanted(shop, run, id))
}

/// The facts for the screens of a run that leaves the press: ready for later, or to reclaim. One that
/// another open run names is kept ready in any case, and stays where it is while that run is on the press.
pub fn facts_on_end(shop: &Shop, run: RunId, keep: bool, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let mut facts = Vec::new();
    for id in screens_of(shop, run).into_iter().filter_map(|found| found.screen) {
        let on_press = |screen: &super::Screen| screen.state == ScreenState::OnPress;
        if !shop.screens.live(id).is_some_and(on_press) || others(shop, run, id).any(|(_, on_press)| on_press) {
            continue;
        }
        let to = if keep || is_wanted(shop, run, id) { ScreenState::Ready } else { ScreenState::ToReclaim };
        facts.push((id, moved(to, by)));
    }
    facts
}

fn is_wanted(shop: &Shop, run: RunId, id: Subject) -> bool {
    others(shop, run, id).next().is_some()
}

/// The other open runs that name a screen, and whether each is on the press.
fn others(shop: &Shop, run: RunId, id: Subject) -> impl Iterator<Item = (RunId, bool)> {
    open_runs(shop)
        .into_iter()
        .filter(move |other| *other != run && screens_of(shop, *other).iter().any(|found| found.screen == Some(id)))
        .map(|other| (other, shop.run(other).is_some_and(|run| run.progress.is_on_press())))
}
