//! What was done today, compared with a usual day.

use crate::job::Job;
use crate::plan::TallyRow;
use crate::shop::Shop;
use crate::time::{Millis, WallClock};

/// Today's work.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct DoneToday {
    /// Jobs finished.
    pub jobs: u32,
    /// Good pieces, spoiled pieces and working time of today.
    pub row: TallyRow,
    /// A usual working day; `None` before there were three.
    pub usual: Option<Usual>,
}

/// Means over earlier working days.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Usual {
    /// Number of days.
    pub days: u32,
    /// Good pieces per day.
    pub pieces: f64,
    /// Spoiled pieces per day.
    pub misprints: f64,
    /// Time of work per day.
    pub active: Millis,
}

/// Fewest days for a usual day.
const MIN_DAYS: usize = 3;
/// Most days used for a usual day.
const MAX_DAYS: usize = 20;

/// Today's work, and the means of up to twenty working days before.
pub fn done_today(shop: &Shop, clock: WallClock) -> DoneToday {
    let today = clock.work_day();
    let days = shop.tally().days(clock);
    let row = days.get(&today).copied().unwrap_or_default();
    let finished = |job: &Job| job.finished.is_some_and(|at| clock.work_day_of(at) == today);
    let counts = |job: &&Job| !job.deleted && finished(job);
    let jobs = match shop.links.finished_jobs.since(|at| clock.work_day_of(at) < today) {
        Some(since) => since.filter_map(|id| shop.job(id)).filter(counts).count(),
        None => shop.jobs().map(|(_, job)| job).filter(counts).count(),
    } as u32;
    let earlier: Vec<TallyRow> = days
        .iter()
        .rev()
        .filter(|(day, row)| **day < today && row.pieces > 0)
        .map(|(_, row)| *row)
        .take(MAX_DAYS)
        .collect();
    let usual = (earlier.len() >= MIN_DAYS).then(|| {
        let n = earlier.len() as f64;
        let mean = |of: &dyn Fn(&TallyRow) -> f64| earlier.iter().map(of).sum::<f64>() / n;
        Usual {
            days: earlier.len() as u32,
            pieces: mean(&|row| row.pieces as f64),
            misprints: mean(&|row| row.misprints as f64),
            active: Millis::from_seconds(mean(&|row| row.active.seconds())),
        }
    });
    DoneToday { jobs, row, usual }
}
