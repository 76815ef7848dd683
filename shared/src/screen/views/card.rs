//! One screen, with all that is known of it.

use super::board::{ScreenRow, screen_row};
use crate::facts::{BurnStep, ScreenState};
use crate::failure::{FailureRow, failures_of_screen};
use crate::ids::Subject;
use crate::screen::inventory::carried::naming;
use crate::screen::{Screen, StepRow, burn_steps};
use crate::shop::Shop;

/// A screen's card.
#[derive(Clone, Debug, PartialEq)]
pub struct ScreenCard {
    /// Its id; photos of it are kept under it.
    pub id: Subject,
    /// The screen, its log of changes with it.
    pub screen: Screen,
    /// Its line on the board: age, warning, what it carries.
    pub row: ScreenRow,
    /// The steps to a screen that can print, done and to do.
    pub steps: Vec<StepRow>,
    /// The step to do next; none when it can print.
    pub next_step: Option<BurnStep>,
    /// Where it can go from here, the usual way first.
    pub next: Vec<ScreenState>,
    /// What failed of it, the latest first.
    pub failures: Vec<FailureRow>,
    /// The screen it replaces: id and label.
    pub replaces: Option<(Subject, String)>,
    /// The screen that replaces it: id and label.
    pub replaced_by: Option<(Subject, String)>,
    /// Photos of it.
    pub photos: u32,
}

/// The card of a screen; none when it is not in the shop.
pub fn screen_card(shop: &Shop, id: Subject, now: u64) -> Option<ScreenCard> {
    let screen = shop.screens.live(id)?;
    let steps = burn_steps(screen, &shop.screens.times, now);
    let label = |id: Subject| shop.screens.live(id).map(|other| (id, other.label.clone()));
    let replaced_by = shop.screens.iter().find(|(_, other)| other.replaces == Some(id)).map(|(id, _)| id);
    Some(ScreenCard {
        id,
        row: screen_row(shop, id, screen, &naming(shop), now),
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
