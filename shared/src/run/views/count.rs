//! View state of the counting page.

use crate::bounds::total;
use crate::facts::{Fact, MisprintCause, Size, StopCause};
use crate::ids::{DeviceId, RunId};
use crate::run::Progress;
use crate::run::model::progress::UndoableAct;
use crate::shop::Shop;
use crate::time::{Millis, WallClock, WallTime};

/// A fact about a run that is not stored yet.
#[derive(Clone, Debug, PartialEq)]
pub struct UnsavedFact {
    /// The run.
    pub run: RunId,
    /// Wall time.
    pub at: WallTime,
    /// The fact.
    pub fact: Fact,
}

impl UnsavedFact {
    /// Number of pieces it adds or takes off, without sign.
    fn pieces(&self) -> u32 {
        let (Fact::Pulled { pieces, .. } | Fact::Misprinted { pieces, .. }) = self.fact else { return 0 };
        pieces.unsigned_abs()
    }
}

/// Phase of a run on the press.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum RunPhase {
    /// Not started.
    #[default]
    Waiting,
    /// On the press and running.
    Running,
    /// On the press and stopped.
    Stopped {
        /// When it stopped.
        since: WallTime,
        /// Cause of the stop.
        cause: StopCause,
    },
    /// Off the press.
    Ended,
}

impl RunPhase {
    /// The phase of a run's progress.
    pub fn of(progress: &Progress) -> Self {
        match (progress.started, progress.ended, progress.current_stop()) {
            (None, ..) => Self::Waiting,
            (_, Some(_), _) => Self::Ended,
            (_, _, Some((since, cause))) => Self::Stopped { since, cause },
            _ => Self::Running,
        }
    }
}

/// Counts of one size of the run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SizeCount {
    /// The size; `None` for pieces counted without one.
    pub size: Option<Size>,
    /// Pieces ordered.
    pub planned: u32,
    /// Good pieces, including those not stored yet.
    pub good: u32,
    /// Spoiled pieces.
    pub misprints: u32,
}

impl SizeCount {
    /// Pieces still to pull.
    pub fn left(&self) -> u32 {
        self.planned.saturating_sub(self.good)
    }

    /// Good pieces beyond the order; 0 for pieces counted without a size, which may be of any.
    pub fn over(&self) -> u32 {
        if self.size.is_none() { 0 } else { self.good.saturating_sub(self.planned) }
    }
}

/// View state of the counting page.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct CountView {
    /// Good pieces, including those not stored yet.
    pub good: u32,
    /// Pieces not stored yet, counted without sign.
    pub unsaved: u32,
    /// Pieces ordered.
    pub planned: u32,
    /// Pieces still to pull.
    pub left: u32,
    /// Pieces pulled beyond the order.
    pub over: u32,
    /// Spoiled pieces.
    pub misprints: u32,
    /// Counts by size, if the lot has sizes.
    pub sizes: Vec<SizeCount>,
    /// The size that the next count goes to: the first with pieces left, else the last.
    pub next_size: Option<Size>,
    /// Phase of the run.
    pub phase: RunPhase,
    /// When it started.
    pub started: Option<WallTime>,
    /// Time of work.
    pub active: Millis,
    /// Time stopped.
    pub stopped: Millis,
    /// The action that undo on this device takes back.
    pub undo: Option<UndoView>,
}

impl CountView {
    /// The phase that selects the page: as `phase`, but a stop counts as running.
    pub fn page_phase(&self) -> RunPhase {
        match self.phase {
            RunPhase::Stopped { .. } | RunPhase::Running => RunPhase::Running,
            phase @ (RunPhase::Waiting | RunPhase::Ended) => phase,
        }
    }
}

/// The action that undo takes back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UndoView {
    /// Counted pieces.
    Pulled {
        /// Number of pieces; negative if they were taken off.
        pieces: i32,
        /// Size of the pieces; `None` if sizes are not counted.
        size: Option<Size>,
    },
    /// A misprint.
    Misprinted {
        /// Number of pieces.
        pieces: i32,
        /// Size of the pieces; `None` if sizes are not counted.
        size: Option<Size>,
        /// Cause.
        cause: MisprintCause,
        /// Whether they had been counted as good before.
        was_counted: bool,
    },
}

/// View state of the counting page for a run on this device. `pending` facts are folded on top of the saved
/// ones. Default if the run is unknown.
pub fn count_view(shop: &Shop, id: RunId, device: DeviceId, clock: WallClock, pending: &[UnsavedFact]) -> CountView {
    let mine = || pending.iter().filter(|waiting| waiting.run == id);
    let unsaved = mine().map(|waiting| (waiting.at, &waiting.fact));
    let Some(run) = shop.run_with(id, device, unsaved) else { return CountView::default() };
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
        // A size that has left the order but has counts: keep it, with none ordered.
        if !sizes.iter().any(|known| known.size == *size) {
            sizes.push(row(*size, 0));
        }
    }
    sizes.retain(|size| size.planned > 0 || size.good > 0 || size.misprints > 0);
    let good = progress.good();
    let planned = lot.map_or(0, crate::job::Lot::total);
    let phase = RunPhase::of(progress);
    let unsized_good = progress.good_of(None);
    let left = total(sizes.iter().map(SizeCount::left)).saturating_sub(unsized_good);
    CountView {
        good,
        unsaved: mine().map(UnsavedFact::pieces).sum(),
        planned,
        left,
        over: good.saturating_add(left).saturating_sub(planned),
        misprints: progress.misprints(),
        next_size: sizes.iter().find(|size| size.left() > 0).or(sizes.last()).and_then(|size| size.size),
        sizes,
        phase,
        started: progress.started,
        active: progress.active(clock.now),
        stopped: progress.stopped(clock.now.min(progress.ended.unwrap_or(clock.now))),
        undo: progress.undoable.get(&device).and_then(|undoable| undoable.last()).map(|act| match *act {
            UndoableAct::Pulled { pieces, size } => UndoView::Pulled { pieces, size },
            UndoableAct::Misprinted { pieces, size, cause, was_counted } => {
                UndoView::Misprinted { pieces, size, cause, was_counted }
            }
        }),
    }
}
