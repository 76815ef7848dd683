//! The form of the question whether an ink covers.

use crate::colour::LabourTimes;
use crate::form::{FormProblem, Problems, collect_number, parse_required, trim_number};
use crate::ids::RunId;
use crate::shop::Shop;
use crate::units::{parse_number, parse_whole};

/// The form of pieces and times for [`CoverView`](crate::ink::CoverView).
#[derive(Clone, Debug, PartialEq)]
pub struct CoverForm {
    /// Number of pieces.
    pub pieces: String,
    /// One stroke with its handling, in seconds.
    pub hit: String,
    /// One flash with its cooling, in seconds.
    pub flash: String,
    /// Burning, registering and taping one more screen, in minutes.
    pub screen: String,
}

/// Defaults until others are entered: seconds of cooling after a flash, of a hit and of a flash, minutes of another
/// screen, number of pieces. Our own.
const COOLING: f64 = 4.0;
const HIT: f64 = 6.0;
const FLASH: f64 = 8.0;
const SCREEN: f64 = 30.0;
const PIECES: u32 = 48;

impl CoverForm {
    /// The form for a run: its pieces left, its flash, and the shop's own time between runs for a screen.
    pub fn of(shop: &Shop, run: Option<RunId>) -> Self {
        let flash = run.and_then(|id| shop.run(id)).and_then(|run| run.set_up.flash);
        let flash = flash.map_or(FLASH, |flash| flash.seconds.seconds());
        let screen = shop.set_up_allowance.map_or(SCREEN, |set_up| set_up.seconds() / 60.0);
        let pieces = run.map_or(PIECES, |run| shop.pieces_left(run).max(1));
        Self {
            pieces: pieces.to_string(),
            hit: trim_number(HIT),
            flash: trim_number(flash + COOLING),
            screen: trim_number(screen),
        }
    }

    /// The number of pieces and the times.
    ///
    /// # Errors
    /// [`Problems`] by field: `pieces`, `hit`, `flash`, `screen`.
    pub fn check(&self) -> Result<(u32, LabourTimes), Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let pieces = parse_required(&self.pieces, |text| parse_whole(text, 1, 100_000));
        let pieces = pieces.map_err(|problem: FormProblem| p.insert("pieces", problem)).ok();
        let hit = collect_number(p, "hit", parse_number(&self.hit, 0.5, 600.0));
        let flash = collect_number(p, "flash", parse_number(&self.flash, 0.0, 600.0));
        let screen = collect_number(p, "screen", parse_number(&self.screen, 0.0, 1_000.0));
        match (pieces, hit, flash, screen) {
            (Some(pieces), Some(hit_seconds), Some(flash_seconds), Some(screen_minutes)) => {
                Ok((pieces, LabourTimes { hit_seconds, flash_seconds, screen_minutes }))
            }
            _ => Err(problems),
        }
    }
}
