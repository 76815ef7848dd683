//! The run on the press, as the counting screen shows it.

use crate::facts::{Fact, MisprintCause, Size, StopCause};
use crate::ids::{DeviceId, RunId};
use crate::plan::closing_of;
use crate::run::model::progress::Act;
use crate::run::{Basis, Fan, Forecast, Progress, TimeLeft, fan, forecast, stop_rate};
use crate::shop::Shop;
use crate::time::WallClock;
use std::borrow::Cow;

/// Something that happened to a run and is not stored yet.
#[derive(Clone, Debug, PartialEq)]
pub struct Pending {
    /// The run.
    pub run: RunId,
    /// Wall time.
    pub at: u64,
    /// What happened.
    pub fact: Fact,
}

impl Pending {
    /// How many pieces it moves, whichever way.
    fn pieces(&self) -> u32 {
        let (Fact::Pulled { pieces, .. } | Fact::Misprinted { pieces, .. }) = self.fact else { return 0 };
        pieces.unsigned_abs()
    }
}

/// Whether the press pulls, stands, or is done with the run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Standing {
    /// Not started.
    #[default]
    Waiting,
    /// Pulling.
    Running,
    /// Standing.
    Stopped {
        /// Since when.
        since: u64,
        /// Why.
        cause: StopCause,
    },
    /// Off the press.
    Ended,
}

impl Standing {
    /// How a run stands, from what has happened to it.
    pub fn of(progress: &Progress) -> Self {
        match (progress.started, progress.ended, progress.standing()) {
            (None, ..) => Self::Waiting,
            (_, Some(_), _) => Self::Ended,
            (_, _, Some((since, cause))) => Self::Stopped { since, cause },
            _ => Self::Running,
        }
    }
}

/// One size of the run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SizeCount {
    /// The size; none for pieces counted without one.
    pub size: Option<Size>,
    /// Pieces ordered.
    pub planned: u32,
    /// Good pieces, those not stored yet included.
    pub good: u32,
    /// Spoiled pieces.
    pub misprints: u32,
}

impl SizeCount {
    /// Pieces still to pull.
    pub fn left(&self) -> u32 {
        self.planned.saturating_sub(self.good)
    }
}

/// The pace against closing.
#[derive(Clone, Debug, PartialEq)]
pub struct PaceView {
    /// What it rests on.
    pub basis: Basis,
    /// Pieces an hour.
    pub per_hour: f64,
    /// Seconds a piece.
    pub seconds: f64,
    /// Seconds until the last piece is out of the dryer.
    pub time: TimeLeft,
    /// Wall times of that: expected, early, late.
    pub finish: [u64; 3],
    /// Pieces an hour needed to make closing; none after closing or without one.
    pub needed_per_hour: Option<f64>,
    /// Chance of making closing; none without one.
    pub chance: Option<f64>,
    /// Good pieces to expect by closing.
    pub by_closing: Option<u32>,
}

/// The counting screen.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct CountView {
    /// Good pieces, those not stored yet included.
    pub good: u32,
    /// Pieces touched in but not stored yet, whatever their sign.
    pub unsaved: u32,
    /// Pieces ordered.
    pub planned: u32,
    /// Pieces still to pull.
    pub left: u32,
    /// Pieces pulled past the order.
    pub over: u32,
    /// Spoiled pieces.
    pub misprints: u32,
    /// By size, where the lot has sizes.
    pub sizes: Vec<SizeCount>,
    /// The first size with pieces left, which counting goes on with.
    pub next_size: Option<Size>,
    /// Whether the press pulls.
    pub standing: Standing,
    /// When it started.
    pub started: Option<u64>,
    /// Milliseconds at work.
    pub active: u64,
    /// Milliseconds stood.
    pub stopped: u64,
    /// Pace and forecast; none while nothing is known.
    pub pace: Option<PaceView>,
    /// The line and its fan.
    pub fan: Fan,
    /// Closing today.
    pub closing: Option<u64>,
    /// What undo on this device takes back.
    pub undo: Option<UndoView>,
}

impl CountView {
    /// Which of three screens the run is on: a stop is part of the count.
    pub fn phase(&self) -> Standing {
        match self.standing {
            Standing::Stopped { .. } | Standing::Running => Standing::Running,
            standing @ (Standing::Waiting | Standing::Ended) => standing,
        }
    }
}

/// What undo takes back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UndoView {
    /// Counted pieces.
    Pulled {
        /// How many; negative when taken off.
        pieces: i32,
        /// Of which size.
        size: Option<Size>,
    },
    /// A misprint.
    Misprinted {
        /// How many.
        pieces: i32,
        /// Of which size.
        size: Option<Size>,
        /// Why.
        cause: MisprintCause,
        /// Whether it had been counted before.
        was_counted: bool,
    },
}

/// The counting screen of a run on this device, as of the clock.
pub fn count_view(shop: &Shop, id: RunId, device: DeviceId, clock: WallClock, pending: &[Pending]) -> CountView {
    let Some(saved) = shop.run(id) else { return CountView::default() };
    // What is not stored yet is folded onto a copy, by the same rules.
    let mut run = Cow::Borrowed(saved);
    let mine = || pending.iter().filter(|waiting| waiting.run == id);
    for waiting in mine() {
        run.to_mut().take(device, waiting.at, &waiting.fact);
    }
    let lot = run.lot.and_then(|lot| shop.lot(lot));
    let progress = &run.progress;
    let row = |size: Option<Size>, planned: u32| SizeCount {
        size,
        planned,
        good: progress.good_of(size),
        misprints: progress.misprints_of(size),
    };
    let mut sizes: Vec<SizeCount> = lot
        .map(|lot| lot.pieces.iter().map(|(size, planned)| row(Some(*size), *planned)).collect())
        .unwrap_or_default();
    for size in progress.good.keys().chain(progress.misprints.keys().map(|(size, _)| size)) {
        // Counted under a size that has left the order since: still shown, with none ordered.
        if !sizes.iter().any(|known| known.size == *size) {
            sizes.push(row(*size, 0));
        }
    }
    sizes.retain(|size| size.planned > 0 || size.good > 0 || size.misprints > 0);
    let good = progress.good();
    let planned = lot.map_or(0, crate::job::Lot::total);
    let standing = Standing::of(progress);
    let closing = closing_of(&shop.closings, clock);
    let forecast = forecast(shop, id, clock.now, stop_rate(shop)).filter(|_| standing != Standing::Ended);
    let unsized_good = sizes.iter().filter(|row| row.size.is_none()).map(|row| row.good).sum();
    let left = sizes.iter().map(SizeCount::left).sum::<u32>().saturating_sub(unsized_good);
    CountView {
        good,
        unsaved: mine().map(Pending::pieces).sum(),
        planned,
        left,
        over: (good + left).saturating_sub(planned),
        misprints: progress.misprints(),
        next_size: sizes.iter().find(|size| size.left() > 0).or(sizes.last()).and_then(|size| size.size),
        sizes,
        standing,
        started: progress.started,
        active: progress.active_ms(clock.now),
        stopped: progress.stopped_ms(clock.now.min(progress.ended.unwrap_or(clock.now))),
        fan: fan(progress, forecast.as_ref(), clock.now),
        pace: forecast.map(|forecast| pace_view(&forecast, clock.now, closing, good, left)),
        closing,
        undo: progress.acts.get(&device).and_then(|acts| acts.last()).map(|act| match *act {
            Act::Pulled { pieces, size } => UndoView::Pulled { pieces, size },
            Act::Misprinted { pieces, size, cause, was_counted } => {
                UndoView::Misprinted { pieces, size, cause, was_counted }
            }
        }),
    }
}

fn pace_view(forecast: &Forecast, now: u64, closing: Option<u64>, good: u32, left: u32) -> PaceView {
    let at = |seconds: f64| now + (seconds * 1000.0) as u64;
    let until = closing.map(|closing| (closing as f64 - now as f64) / 1000.0);
    PaceView {
        basis: forecast.basis,
        per_hour: 3600.0 / forecast.spread.mean,
        seconds: forecast.spread.mean,
        time: forecast.time,
        finish: [at(forecast.time.expected), at(forecast.time.low), at(forecast.time.high)],
        needed_per_hour: until.and_then(|seconds| forecast.needed_per_hour(seconds)),
        chance: until.map(|seconds| forecast.chance_within(seconds)),
        by_closing: until.map(|seconds| good + forecast.pieces_within(seconds).min(left)),
    }
}
