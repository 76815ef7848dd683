//! How long does the press wait for the replacement screen?

use super::burn_steps::remaining_steps;
use crate::facts::{Remedy, ScreenState};
use crate::ids::RunId;
use crate::plan::set_up_time;
use crate::shop::Shop;
use crate::time::{Millis, WallTime};

/// Time from wall time `now` until pulling can continue: the remaining steps of the replacement screen and the
/// set-up after them. Zero if the press is pulling or waits for no screen. A step that takes longer than usual
/// counts as almost done, so the wait never becomes shorter than the steps still to come.
pub fn replacement_wait(shop: &Shop, run: RunId, now: WallTime) -> Millis {
    let stands = shop.run(run).is_some_and(|run| run.progress.is_on_press() && run.progress.current_stop().is_some());
    if !stands {
        return Millis::ZERO;
    }
    let replacements = shop
        .failures
        .iter()
        .filter(|(_, failure)| failure.run == Some(run) && failure.remedy == Some(Remedy::BurnAgain))
        .filter_map(|(_, failure)| shop.screens.live(failure.replacement?))
        .filter(|screen| screen.state != ScreenState::OnPress);
    let set_up = || Millis::from_seconds(set_up_time(shop).seconds);
    replacements
        .map(|screen| {
            if screen.state == ScreenState::Ready {
                // Set-up began when the screen was ready.
                return set_up() - now.since(screen.since);
            }
            let steps = remaining_steps(screen, &shop.screens.times, now);
            steps.iter().map(|(_, left)| *left).sum::<Millis>() + set_up()
        })
        .max()
        .unwrap_or_default()
}
