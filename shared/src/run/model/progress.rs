//! What has happened to a run on the press: counts, misprints, stops and times.

use super::{Pace, PaceSummary, Pull, Stop, UNMARKED_PAUSE_SECONDS, WorkGap, work_gaps};
use crate::bounds::pieces;
use crate::codec::Encode;
use crate::collections::Table;
use crate::facts::{MisprintCause, Size, StopCause};
use crate::ids::DeviceId;
use crate::time::{Millis, WallTime};
use std::collections::BTreeMap;

/// An action that undo can take back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub(crate) enum UndoableAct {
    Pulled { pieces: i32, size: Option<Size> },
    Misprinted { pieces: i32, size: Option<Size>, cause: MisprintCause, was_counted: bool },
}

/// Most actions per device that undo can take back.
const UNDO_DEPTH: usize = 40;

/// What has happened to a run on the press.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Progress {
    /// Good pieces by size; the key is `None` if sizes are not counted. Sums of signed facts.
    pub(crate) good: BTreeMap<Option<Size>, i64>,
    /// Misprints by size and cause. Sums of signed facts.
    pub(crate) misprints: BTreeMap<(Option<Size>, MisprintCause), i64>,
    /// Every pull not taken back, the oldest first. Cleared when the job is finished.
    pub(crate) pulls: Vec<Pull>,
    /// Every stop, the oldest first.
    pub(crate) stops: Vec<Stop>,
    /// Wall time of the first garment on the platen.
    pub(crate) started: Option<WallTime>,
    /// When it last left the press; `None` while on it.
    pub(crate) ended: Option<WallTime>,
    /// Wall time of the latest fact from the press.
    pub(crate) last_activity: Option<WallTime>,
    /// Its summary when it last left the press, if its pulls were not archived since.
    pub(crate) final_pace: Option<Box<PaceSummary>>,
    /// The summary of the archived pulls.
    pub(crate) archived_pace: Option<Box<PaceSummary>>,
    /// Time of unmarked pauses among the archived pulls.
    pub(crate) archived_pause: Millis,
    /// Wall time up to which work was added to the tally.
    pub(crate) tallied_until: Option<WallTime>,
    /// Actions that undo can take back, by device, the latest last.
    pub(crate) undoable: Table<Vec<UndoableAct>>,
}

impl Progress {
    /// Good pieces of all sizes, never negative.
    pub fn good(&self) -> u32 {
        pieces(self.good.values().sum())
    }

    /// Good pieces of one size.
    pub fn good_of(&self, size: Option<Size>) -> u32 {
        pieces(self.good.get(&size).copied().unwrap_or(0))
    }

    /// Spoiled pieces.
    pub fn misprints(&self) -> u32 {
        pieces(self.misprints.values().sum())
    }

    /// Spoiled pieces of one size.
    pub fn misprints_of(&self, size: Option<Size>) -> u32 {
        pieces(self.misprints.iter().filter(|((of, _), _)| *of == size).map(|(_, n)| n).sum())
    }

    /// Spoiled pieces by cause, without causes of zero.
    pub fn misprint_causes(&self) -> BTreeMap<MisprintCause, u32> {
        let mut causes: BTreeMap<MisprintCause, u32> = BTreeMap::new();
        for ((_, cause), sum) in self.misprints.iter().filter(|(_, sum)| **sum > 0) {
            let of_cause = causes.entry(*cause).or_default();
            *of_cause = of_cause.saturating_add(pieces(*sum));
        }
        causes
    }

    /// The pulls not taken back, the oldest first.
    pub fn pulls(&self) -> &[Pull] {
        &self.pulls
    }

    /// The stops, the oldest first.
    pub fn stops(&self) -> &[Stop] {
        &self.stops
    }

    /// Wall time of the last thing that happened to it on the press; `None` if it was never there.
    pub fn last_activity(&self) -> Option<WallTime> {
        self.last_activity
    }

    /// Wall time of the first garment on the platen.
    pub fn started(&self) -> Option<WallTime> {
        self.started
    }

    /// When it last left the press; `None` while on it or before.
    pub fn ended(&self) -> Option<WallTime> {
        self.ended
    }

    /// Whether it is on the press: started and not ended.
    pub fn is_on_press(&self) -> bool {
        self.started.is_some() && self.ended.is_none()
    }

    /// The stop in progress: since when and why.
    pub fn current_stop(&self) -> Option<(WallTime, StopCause)> {
        self.stops.last().filter(|stop| stop.to.is_none()).and_then(|stop| Some((stop.from, stop.cause?)))
    }

    /// The pace of all pulls so far, including archived ones.
    pub fn pace(&self) -> Option<Pace> {
        self.summary()?.pace()
    }

    /// The gaps between all pulls, the oldest first; of archived ones, one for each stretch of the run.
    pub(crate) fn gaps(&self) -> Vec<WorkGap> {
        let mut gaps = self.archived_pace.as_ref().map(|archived| archived.as_gaps()).unwrap_or_default();
        gaps.extend(work_gaps(&self.pulls, &self.stops));
        gaps
    }

    /// By how many the archived gaps are fewer in [`gaps`](Self::gaps) than they were.
    pub(crate) fn condensed_gaps(&self) -> u32 {
        let Some(archived) = &self.archived_pace else { return 0 };
        let stretches = archived.stretches.iter().filter(|stretch| stretch.pieces > 0).count() as u32;
        archived.gaps.saturating_sub(stretches)
    }

    /// Seconds of each stop for trouble that is over.
    pub(crate) fn trouble(&self) -> Vec<f64> {
        let trouble = self.stops.iter().filter(|stop| stop.is_trouble());
        trouble.filter_map(|stop| Some(stop.to?.since(stop.from).seconds())).collect()
    }

    /// The run in some numbers as it is now; `None` before it has started.
    pub(crate) fn summary(&self) -> Option<PaceSummary> {
        self.started?;
        let mut summary = self.archived_pace.as_deref().copied().unwrap_or_default();
        summary.add_gaps(&work_gaps(&self.pulls, &self.stops));
        summary.set_trouble(&self.trouble(), self.good(), self.misprints());
        Some(summary)
    }

    /// The summary when it last left the press; `None` before and while it is on the press.
    pub(crate) fn ended_summary(&self) -> Option<&PaceSummary> {
        self.final_pace.as_deref().or(self.archived_pace.as_deref()).filter(|_| !self.is_on_press())
    }

    /// Time stopped between the start and `now`, including unmarked pauses.
    pub fn stopped(&self, now: WallTime) -> Millis {
        let Some(started) = self.started else { return Millis::ZERO };
        let marked: Millis =
            self.stops.iter().filter(|stop| stop.cause.is_some()).map(|stop| stop.overlap(started, now)).sum();
        marked + self.unmarked_pauses()
    }

    /// Time of work between the start and `now` (or the end), without stops.
    pub fn active(&self, now: WallTime) -> Millis {
        let Some(started) = self.started else { return Millis::ZERO };
        let end = self.ended.unwrap_or(now);
        let off_press: Millis =
            self.stops.iter().filter(|stop| stop.cause.is_none()).map(|stop| stop.overlap(started, end)).sum();
        end.since(started) - off_press - self.stopped(end)
    }

    fn unmarked_pauses(&self) -> Millis {
        let mut pulls = self.pulls.clone();
        // A forgotten end is a pause too.
        pulls.extend(self.ended.filter(|_| !self.pulls.is_empty()).map(|at| Pull { at, pieces: 1, size: None }));
        let here: Millis = work_gaps(&pulls, &self.stops)
            .iter()
            .filter(|gap| gap.is_pause)
            .map(|gap| Millis::from_ms((gap.seconds * 1000.0).round() as u64))
            .sum();
        self.archived_pause + here
    }

    pub(crate) fn start(&mut self, at: WallTime) {
        self.started.get_or_insert(at);
        if self.ended.take().is_some() {
            self.close_stop(at);
        }
        self.last_activity = Some(at);
    }

    pub(crate) fn end(&mut self, at: WallTime) {
        if !self.is_on_press() {
            self.last_activity = Some(at);
            return;
        }
        self.close_stop(at);
        self.final_pace = self.summary().map(Box::new);
        self.ended = Some(at);
        self.stops.push(Stop { from: at, to: None, cause: None });
        self.last_activity = Some(at);
    }

    pub(crate) fn stop(&mut self, at: WallTime, cause: StopCause) {
        if self.is_on_press() && self.current_stop().is_none() {
            let pulled_since = |to: WallTime| self.pulls.last().is_some_and(|last| last.at >= to);
            match self.stops.last().filter(|last| last.cause == Some(cause)).and_then(|last| last.to) {
                // The zone was touched by accident: nothing was pulled since, so the press never resumed.
                Some(to) if !pulled_since(to) => self.stops.last_mut().into_iter().for_each(|last| last.to = None),
                _ => self.stops.push(Stop { from: at, to: None, cause: Some(cause) }),
            }
        }
        self.last_activity = Some(at);
    }

    pub(crate) fn resume(&mut self, at: WallTime) {
        if self.current_stop().is_some() {
            self.close_stop(at);
        }
        self.last_activity = Some(at);
    }

    fn close_stop(&mut self, at: WallTime) {
        if let Some(stop) = self.stops.last_mut().filter(|stop| stop.to.is_none()) {
            stop.to = Some(at.max(stop.from));
        }
    }

    /// Counts pieces, or takes them back if negative. Returns the time of work the pull completes.
    pub(crate) fn pull(&mut self, device: DeviceId, at: WallTime, pieces: i32, size: Option<Size>) -> Millis {
        if pieces > 0 {
            // Counting shows that the press runs; taking back does not.
            self.start(at);
            self.resume(at);
        }
        self.last_activity = Some(at);
        *self.good.entry(size).or_default() += i64::from(pieces);
        if pieces > 0 {
            self.push_undoable(device, UndoableAct::Pulled { pieces, size });
            self.pulls.push(Pull { at, pieces: pieces as u32, size });
            self.latest_gap()
        } else {
            self.remove_undoable(
                device,
                |act| matches!(act, UndoableAct::Pulled { pieces: n, size: of } if *n == -pieces && *of == size),
            );
            self.remove_pieces(pieces.unsigned_abs(), size);
            Millis::ZERO
        }
    }

    /// Records spoiled pieces, or takes them back if negative. Returns the time of work completed.
    pub(crate) fn misprint(
        &mut self,
        device: DeviceId,
        at: WallTime,
        pieces: i32,
        size: Option<Size>,
        cause: MisprintCause,
        was_counted: bool,
    ) -> Millis {
        // A misprint found while packing does not put the run back on the press.
        if pieces > 0 && self.ended.is_none() {
            self.start(at);
        }
        self.last_activity = Some(at);
        *self.misprints.entry((size, cause)).or_default() += i64::from(pieces);
        if was_counted {
            *self.good.entry(size).or_default() -= i64::from(pieces);
        }
        if pieces > 0 {
            self.push_undoable(device, UndoableAct::Misprinted { pieces, size, cause, was_counted });
            if !was_counted && self.ended.is_none() {
                // A spoiled piece took time on the press like any other.
                self.pulls.push(Pull { at, pieces: pieces as u32, size });
                return self.latest_gap();
            }
        } else {
            let taken = UndoableAct::Misprinted { pieces: -pieces, size, cause, was_counted };
            self.remove_undoable(device, |act| *act == taken);
            if !was_counted {
                self.remove_pieces(pieces.unsigned_abs(), size);
            }
        }
        Millis::ZERO
    }

    /// Drops what only an open job needs: single pulls and undo.
    pub(crate) fn archive_pulls(&mut self) {
        self.archived_pace = self.summary().map(Box::new);
        self.final_pace = None;
        self.archived_pause = self.unmarked_pauses();
        self.pulls = Vec::new();
        self.undoable = Table::default();
    }

    fn push_undoable(&mut self, device: DeviceId, act: UndoableAct) {
        let undoable = self.undoable.get_or_insert_default(device);
        if undoable.len() == UNDO_DEPTH {
            undoable.remove(0);
        }
        undoable.push(act);
    }

    fn remove_undoable(&mut self, device: DeviceId, is_it: impl Fn(&UndoableAct) -> bool) {
        if let Some(undoable) = self.undoable.get_mut(&device) {
            if let Some(at) = undoable.iter().rposition(is_it) {
                undoable.remove(at);
            }
        }
    }

    /// Removes pieces from the latest pulls, those of the same size first.
    fn remove_pieces(&mut self, mut pieces: u32, size: Option<Size>) {
        for same_size in [true, false] {
            let mut at = self.pulls.len();
            while pieces > 0 && at > 0 {
                at -= 1;
                if (self.pulls[at].size == size) != same_size {
                    continue;
                }
                let taken = pieces.min(self.pulls[at].pieces);
                self.pulls[at].pieces -= taken;
                pieces -= taken;
                if self.pulls[at].pieces == 0 {
                    self.pulls.remove(at);
                }
            }
        }
    }

    /// Time of work between the last two pulls; zero if that was a pause.
    fn latest_gap(&mut self) -> Millis {
        let Some(last) = self.pulls.last().copied() else { return Millis::ZERO };
        // The time of a piece taken back is already in the tally.
        let handed = self.tallied_until.replace(last.at).unwrap_or_default();
        let [.., before, _] = self.pulls.as_slice() else { return Millis::ZERO };
        let from = before.at.max(handed);
        let since = |stop: &&Stop| stop.to.is_none_or(|to| to > from);
        let stood: Millis = self.stops.iter().rev().take_while(since).map(|stop| stop.overlap(from, last.at)).sum();
        let worked = last.at.since(from) - stood;
        let longest = UNMARKED_PAUSE_SECONDS * f64::from(last.pieces.max(1));
        if worked.seconds() < longest { worked } else { Millis::ZERO }
    }
}
