//! Facts that move screens from state to state, one screen or several at once.

use crate::facts::{BurnStep, Fact, ScreenFact, ScreenField, ScreenState};
use crate::ids::{RunId, Subject};
use crate::shop::Shop;

/// The states that every one of the selected screens can move to, the usual next state of the first screen
/// first. Empty if no screen is selected.
pub fn next_states(shop: &Shop, ids: &[Subject]) -> Vec<ScreenState> {
    let states: Vec<ScreenState> =
        ids.iter().filter_map(|id| shop.screens.live(*id)).map(|screen| screen.state).collect();
    let Some(first) = states.first() else { return Vec::new() };
    let all_go = |to: &ScreenState| states.iter().all(|state| state.next().contains(to));
    first.next().iter().copied().filter(all_go).collect()
}

/// The facts that move screens to a state. Screens that are already in it, or not in the shop, are left
/// out. A screen that becomes clean also loses its run and its colour.
pub fn move_facts(shop: &Shop, ids: &[Subject], to: ScreenState, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let mut facts = Vec::new();
    for (index, id) in ids.iter().enumerate() {
        let Some(screen) = shop.screens.live(*id).filter(|screen| screen.state != to) else { continue };
        if ids[..index].contains(id) {
            continue;
        }
        facts.push((*id, moved(to, by)));
        if to == ScreenState::Clean && (screen.run.is_some() || !screen.colour.is_empty()) {
            let empty = vec![ScreenField::Run(None), ScreenField::Colour(String::new())];
            facts.push((*id, Fact::Screen(ScreenFact::Set(empty))));
        }
    }
    facts
}

/// The fact that records a step of a screen as done.
pub fn step_done(step: BurnStep, by: Option<&str>) -> Fact {
    match step {
        BurnStep::Reclaim => moved(ScreenState::Clean, by),
        BurnStep::Coat => moved(ScreenState::Coated, by),
        BurnStep::Expose => moved(ScreenState::Exposed, by),
        BurnStep::Tape => moved(ScreenState::Ready, by),
        BurnStep::Dry | BurnStep::WashDry => dried(true, by),
    }
}

/// The facts that record a step as done for several screens. An exposure for a run also assigns the run to
/// the screens; reclaiming removes it.
pub fn tick_facts(
    shop: &Shop,
    ids: &[Subject],
    step: BurnStep,
    run: Option<RunId>,
    by: Option<&str>,
) -> Vec<(Subject, Fact)> {
    if step == BurnStep::Reclaim {
        return move_facts(shop, ids, ScreenState::Clean, by);
    }
    let mut facts = Vec::new();
    for id in ids {
        facts.push((*id, step_done(step, by)));
        if step == BurnStep::Expose && run.is_some() {
            facts.push((*id, Fact::Screen(ScreenFact::Set(vec![ScreenField::Run(run)]))));
        }
    }
    facts
}

pub(crate) fn moved(to: ScreenState, by: Option<&str>) -> Fact {
    Fact::Screen(ScreenFact::Moved { to, by: by.map(str::to_owned) })
}

fn dried(dry: bool, by: Option<&str>) -> Fact {
    Fact::Screen(ScreenFact::Dried { dry, by: by.map(str::to_owned) })
}
