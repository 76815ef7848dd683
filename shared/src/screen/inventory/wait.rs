//! How long does the press wait for the replacement screen?

use super::burn_steps::remaining_steps;
use crate::facts::{Remedy, ScreenState};
use crate::ids::RunId;
use crate::plan::set_up_time;
use crate::shop::Shop;

/// Milliseconds from wall time `now` until pulling can continue: the remaining steps of the replacement
/// screen and the set-up after them. 0 if the press is pulling or waits for no screen. A step that takes
/// longer than usual counts as almost done, so the wait never becomes shorter than the steps still to come.
pub fn replacement_wait(shop: &Shop, run: RunId, now: u64) -> u64 {
    let stands = shop.run(run).is_some_and(|run| run.progress.is_on_press() && run.progress.current_stop().is_some());
    if !stands {
        return 0;
    }
    let replacements = shop
        .failures
        .iter()
        .filter(|(_, failure)| failure.run == Some(run) && failure.remedy == Some(Remedy::BurnAgain))
        .filter_map(|(_, failure)| shop.screens.live(failure.replacement?))
        .filter(|screen| screen.state != ScreenState::OnPress);
    let set_up = || (set_up_time(shop).0 * 1000.0) as u64;
    replacements
        .map(|screen| {
            if screen.state == ScreenState::Ready {
                // Set-up began when the screen was ready.
                return set_up().saturating_sub(now.saturating_sub(screen.since));
            }
            let steps = remaining_steps(screen, &shop.screens.times, now);
            steps.iter().map(|(_, left)| left).sum::<u64>() + set_up()
        })
        .max()
        .unwrap_or(0)
}
