//! The card of one screen, with everything known about it.

use super::board::{ScreenRow, screen_row};
use crate::facts::{BurnStep, ScreenState};
use crate::failure::{FailureRow, failures_of_screen};
use crate::ids::Subject;
use crate::screen::inventory::carried::runs_by_screen;
use crate::screen::{Screen, StepRow, burn_steps};
use crate::shop::Shop;
use crate::time::WallTime;

/// The card of one screen.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreenCard {
    /// Its id, which is also the subject of its photos.
    pub id: Subject,
    /// The screen, including its latest changes.
    pub screen: Screen,
    /// Its row on the board: age, warning, assigned runs.
    pub row: ScreenRow,
    /// The steps to a screen that can print, done and to do.
    pub steps: Vec<StepRow>,
    /// The next step; `None` if it can print.
    pub next_step: Option<BurnStep>,
    /// The states it can move to, the usual one first.
    pub next: Vec<ScreenState>,
    /// Its failures, the latest first.
    pub failures: Vec<FailureRow>,
    /// The screen it replaces: id and label.
    pub replaces: Option<(Subject, String)>,
    /// The screen that replaces it: id and label.
    pub replaced_by: Option<(Subject, String)>,
    /// Number of its photos.
    pub photos: u32,
}

/// The card of a screen at wall time `now`; `None` if it is not in the shop's list.
pub fn screen_card(shop: &Shop, id: Subject, now: WallTime) -> Option<ScreenCard> {
    let screen = shop.screens.live(id)?;
    let steps = burn_steps(screen, &shop.screens.times, now);
    let label = |id: Subject| shop.screens.live(id).map(|other| (id, other.label.clone()));
    let replaced_by = shop.screens.iter().find(|(_, other)| other.replaces == Some(id)).map(|(id, _)| id);
    Some(ScreenCard {
        id,
        row: screen_row(shop, id, screen, &runs_by_screen(shop), now),
        next_step: steps.iter().find(|row| !row.done).map(|row| row.step),
        steps,
        next: screen.state.next().to_vec(),
        failures: failures_of_screen(shop, id, now),
        replaces: screen.replaces.and_then(label),
        replaced_by: replaced_by.and_then(label),
        photos: shop.photos.of(id).len() as u32,
        screen: screen.clone(),
    })
}
