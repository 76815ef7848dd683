//! The card of one failure.

use super::print::PrintSketch;
use super::rows::{FailureRow, row, stop_of};
use crate::facts::{ScreenState, Size, Verdict};
use crate::failure::form::max_since;
use crate::failure::pieces::uninspected_of;
use crate::failure::{Failure, RunPieces, run_pieces};
use crate::ids::{JobId, Subject};
use crate::plan::{RailVerdict, WorkCalendar, closing_today, rail};
use crate::run::{Goal, forecast, run_goal};
use crate::screen::{LabelMatch, StepRow, burn_steps, replacement_wait, screens_of};
use crate::shop::Shop;
use crate::time::{Estimate, Millis, WallClock, WallTime};

/// Pieces of one size that are suspect or have been inspected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct JudgeRow {
    /// The size.
    pub size: Option<Size>,
    /// Not inspected yet.
    pub suspect: u32,
    /// Inspected and good.
    pub good: u32,
    /// Inspected and spoiled.
    pub spoiled: u32,
}

/// The screen that replaces the failed one.
#[derive(Clone, Debug, PartialEq)]
pub struct ReplacementView {
    /// The screen.
    pub screen: Subject,
    /// Its label.
    pub label: String,
    /// Its state.
    pub state: ScreenState,
    /// Its steps, done and to do.
    pub steps: Vec<StepRow>,
    /// Wall time at which it can print; `None` if it can print already.
    pub ready: Option<WallTime>,
    /// Wall time at which pulling can continue, including set-up; `None` if the press does not wait for it.
    pub pulls_at: Option<WallTime>,
}

/// When the run is expected to be out of the dryer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FinishForecast {
    /// When the last piece is out of the dryer.
    pub finish: Estimate<WallTime>,
    /// Whether its time in the dryer is unknown and not in `finish`.
    pub ends_at_press: bool,
    /// What it must be in time for; `None` on a day off for a job without a due time.
    pub goal: Option<Goal>,
}

/// The card of a failure.
#[derive(Clone, Debug, PartialEq)]
pub struct FailureCard {
    /// Its row: when, what, downtime so far, pieces.
    pub row: FailureRow,
    /// The failure: mark, notes, who found it.
    pub failure: Failure,
    /// The run's job and its title.
    pub job: Option<(JobId, String)>,
    /// The print, for marking the place on it.
    pub print: PrintSketch,
    /// Whether the press is still stopped for it.
    pub is_stopped: bool,
    /// Whether the run is on the press.
    pub on_press: bool,
    /// The screens that the run names, for choosing the failed one.
    pub screens: Vec<LabelMatch>,
    /// Most pieces that can be suspect: those counted before it was found.
    pub most: u32,
    /// Suspect and inspected pieces by size.
    pub sizes: Vec<JudgeRow>,
    /// The pieces of the whole run.
    pub pieces: RunPieces,
    /// The screen that replaces the failed one.
    pub replacement: Option<ReplacementView>,
    /// The new finish of the run; `None` if all pieces are pulled, and while its pace is not known.
    pub finish: Option<FinishForecast>,
    /// The state of the day; `None` if the run is not on the press.
    pub day: Option<RailVerdict>,
    /// Number of its photos.
    pub photos: u32,
}

/// The card of a failure at the time of the clock; `None` if there is no such failure.
pub fn failure_card(shop: &Shop, id: Subject, clock: WallClock) -> Option<FailureCard> {
    let failure = shop.failures.live(id)?;
    let now = clock.now;
    let run = failure.run;
    let replacement = failure.replacement.and_then(|screen| {
        let found = shop.screens.live(screen)?;
        let steps = burn_steps(found, &shop.screens.times, now);
        let left: Millis = steps.iter().map(|step| step.left).sum();
        let wait = run.map_or(Millis::ZERO, |run| replacement_wait(shop, run, now));
        Some(ReplacementView {
            screen,
            label: found.label.clone(),
            state: found.state,
            steps,
            ready: (!found.state.can_print()).then_some(now + left),
            pulls_at: (wait > Millis::ZERO).then_some(now + wait),
        })
    });
    let on_press = run.and_then(|run| shop.run(run)).is_some_and(|run| run.progress.is_on_press());
    let finish = run.filter(|run| shop.pieces_left(*run) > 0).and_then(|run| {
        let forecast = forecast(shop, run, now)?;
        let calendar = WorkCalendar::of(shop, clock, on_press);
        let finish = forecast.finish(forecast.press_time(), &calendar);
        let due = shop.job_of(run).and_then(|(_, job)| job.due).map(|due| clock.due_moment(due));
        let closing = closing_today(&shop.closings, clock);
        let goal = run_goal(&forecast, finish, closing, due, &calendar, clock);
        Some(FinishForecast { finish, ends_at_press: forecast.ends_at_press, goal })
    });
    let print = run.and_then(|run| shop.run(run)).map(|run| PrintSketch {
        location: run.location,
        garment: run.lot.and_then(|lot| shop.lot(lot)).and_then(|lot| lot.colour),
        ink: run.ink_colour,
    });
    Some(FailureCard {
        row: row(shop, id, failure, now),
        job: run.and_then(|run| shop.job_of(run)).map(|(id, job)| (id, job.title.clone())),
        print: print.unwrap_or_default(),
        on_press,
        is_stopped: stop_of(shop, failure).is_some_and(|stop| stop.to.is_none()),
        screens: run.map(|run| screens_of(shop, run)).unwrap_or_default(),
        most: max_since(shop, failure),
        sizes: failure
            .sizes()
            .into_iter()
            .map(|size| JudgeRow {
                size,
                suspect: uninspected_of(shop, failure, size),
                good: failure.judged_of(size, Verdict::Good),
                spoiled: failure.judged_of(size, Verdict::Spoiled),
            })
            .collect(),
        pieces: run.map(|run| run_pieces(shop, run)).unwrap_or_default(),
        replacement,
        finish,
        day: on_press.then(|| rail(shop, clock).verdict),
        photos: shop.photos.of(id).len() as u32,
        failure: failure.clone(),
    })
}
