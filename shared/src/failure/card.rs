//! One failure, as its screen shows it.

use super::rows::{row, stop_of};
use super::{Failure, FailureRow, RunPieces, Verdict, run_pieces, wait_for_screen};
use crate::job::{JobId, Size};
use crate::journal::Subject;
use crate::plan::WallClock;
use crate::run::{forecast, stop_rate};
use crate::screen::{LabelMatch, ScreenState, StepRow, burn_steps, screens_of};
use crate::shop::Shop;

/// Suspect and judged pieces of a size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct JudgeRow {
    /// The size.
    pub size: Option<Size>,
    /// Still suspect.
    pub suspect: u32,
    /// Judged good.
    pub good: u32,
    /// Judged spoiled.
    pub spoiled: u32,
}

/// The screen that is burned in place of the failed one.
#[derive(Clone, Debug, PartialEq)]
pub struct ReplacementView {
    /// The screen.
    pub screen: Subject,
    /// Its label.
    pub label: String,
    /// Where it stands.
    pub state: ScreenState,
    /// Its steps, done and to do.
    pub steps: Vec<StepRow>,
    /// Wall time at which it can print; none once it can.
    pub ready: Option<u64>,
    /// Wall time at which pulling can go on, set-up included; none where the press does not wait for it.
    pub pulls: Option<u64>,
}

/// A failure's card.
#[derive(Clone, Debug, PartialEq)]
pub struct FailureCard {
    /// Its line: when, what, downtime so far, pieces.
    pub row: FailureRow,
    /// The failure: mark, notes, who found it.
    pub failure: Failure,
    /// The run's job, and its title.
    pub job: Option<(JobId, String)>,
    /// Whether the press still stands.
    pub stands: bool,
    /// The run's screens, to choose the failed one from.
    pub screens: Vec<LabelMatch>,
    /// By size: suspect, good, spoiled.
    pub sizes: Vec<JudgeRow>,
    /// The run as a whole.
    pub pieces: RunPieces,
    /// The screen burned again.
    pub replacement: Option<ReplacementView>,
    /// Wall times at which the run is out of the dryer: expected, early, late.
    pub finish: Option<[u64; 3]>,
    /// Photos of it.
    pub photos: u32,
}

/// The card of a failure as of the clock; none when there is no such failure.
pub fn failure_card(shop: &Shop, id: Subject, clock: WallClock) -> Option<FailureCard> {
    let failure = shop.failures.live(id)?;
    let now = clock.now;
    let run = failure.run;
    let replacement = failure.replacement.and_then(|screen| {
        let found = shop.screens.live(screen)?;
        let steps = burn_steps(found, &shop.screens.times, now);
        let left: u64 = steps.iter().map(|step| step.left).sum();
        let wait = run.map_or(0, |run| wait_for_screen(shop, run, now));
        Some(ReplacementView {
            screen,
            label: found.label.clone(),
            state: found.state,
            steps,
            ready: (!found.state.can_print()).then_some(now + left),
            pulls: (wait > 0).then_some(now + wait),
        })
    });
    let finish = run.filter(|run| shop.left_of(*run) > 0).and_then(|run| {
        let time = forecast(shop, run, now, stop_rate(shop))?.time;
        Some([time.expected, time.low, time.high].map(|seconds| now + (seconds * 1000.0) as u64))
    });
    Some(FailureCard {
        row: row(shop, id, failure, now),
        job: run.and_then(|run| shop.job_of(run)).map(|(id, job)| (id, job.title.clone())),
        stands: stop_of(shop, failure).is_some_and(|stop| stop.to.is_none()),
        screens: run.map(|run| screens_of(shop, run)).unwrap_or_default(),
        sizes: failure
            .sizes()
            .into_iter()
            .map(|size| JudgeRow {
                size,
                suspect: failure.open_of(size),
                good: failure.judged_of(size, Verdict::Good),
                spoiled: failure.judged_of(size, Verdict::Spoiled),
            })
            .collect(),
        pieces: run.map(|run| run_pieces(shop, run)).unwrap_or_default(),
        replacement,
        finish,
        photos: shop.photos.of(id).len() as u32,
        failure: failure.clone(),
    })
}
