//! When will this run be out of the dryer?

use super::course::{Course, Outlook, TroublePrior, Work};
use super::experience::{Experience, PaceSource};
use crate::bounds::total;
use crate::heat::dryer_transit;
use crate::ids::RunId;
use crate::plan::WorkCalendar;
use crate::run::Run;
use crate::screen::replacement_wait;
use crate::shop::Shop;
use crate::time::{Estimate, Millis, WallTime};
use crate::units::Seconds;

/// What a forecast is based on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ForecastBasis {
    /// Gaps between the run's own counts.
    pub gaps: u32,
    /// What was expected before them; it fades as they come.
    pub source: PaceSource,
}

/// Gaps from which a run that began with a guess tells enough of itself.
const ENOUGH_GAPS: u32 = 5;

impl ForecastBasis {
    /// Whether it rests on hardly more than the printer's guess.
    pub fn is_only_guess(&self) -> bool {
        self.source == PaceSource::Guess && self.gaps < ENOUGH_GAPS
    }

    /// Whether runs alike tell of slow starts and of getting slower, which a run's own first gaps cannot.
    pub fn has_runs_alike(&self) -> bool {
        matches!(self.source, PaceSource::Alike { .. })
    }
}

/// Forecast of when the remaining pieces are out of the dryer. Times are in seconds of work.
#[derive(Clone, Debug, PartialEq)]
pub struct Forecast {
    /// What it is based on.
    pub basis: ForecastBasis,
    /// Pieces left.
    pub left: u32,
    /// Seconds until pulling can continue while a screen is burned again and set up; 0 otherwise.
    pub wait: f64,
    /// The time of the pieces left, counted from the latest pull on, with stops and misprints to come.
    pub rest: Outlook,
    /// Seconds of work since the last pull, already spent on the piece on the platen.
    pub spent_on_piece: f64,
    /// Seconds that the last piece still takes through the dryer after it was pulled; 0 if that is unknown.
    pub in_dryer: f64,
    /// Whether the time in the dryer is unknown: every time of this forecast then ends at the press.
    pub ends_at_press: bool,
    /// Changes of size among the pieces left.
    changes: u32,
    course: Course,
    trouble: TroublePrior,
}

/// Confidence of every interval shown: 80 %.
pub(crate) const CONFIDENCE: f64 = 0.8;

/// The forecast of a run as of `now`. `None` if nothing is known about its pace.
pub fn forecast(shop: &Shop, id: RunId, now: WallTime) -> Option<Forecast> {
    forecast_from(&Experience::of(shop), shop, id, now)
}

/// Like [`forecast`], with the experience collected already.
pub(crate) fn forecast_from(experience: &Experience<'_>, shop: &Shop, id: RunId, now: WallTime) -> Option<Forecast> {
    let run = shop.run(id)?;
    let progress = &run.progress;
    let (prior, source) = experience.course(id, run);
    let gaps = progress.gaps();
    let course = Course::of(&prior, &gaps)?;
    let pulled = total(gaps.iter().map(|gap| gap.pieces));
    let trouble = experience.trouble(id).after(&progress.trouble(), pulled, progress.good(), progress.misprints());
    let left = shop.pieces_left(id);
    let changes = changes_left(shop, run);
    let rest = Outlook::of(&course, &trouble, left, changes);
    let each = course.work(1.0, 0.0).mean;
    let known_transit = dryer_transit(shop, id);
    let transit = known_transit.map_or(0.0, Seconds::seconds);
    let in_dryer = match progress.pulls.last() {
        Some(last) if left == 0 => (transit - now.since(last.at).seconds()).max(0.0),
        _ => transit,
    };
    Some(Forecast {
        basis: ForecastBasis { gaps: course.gaps() + progress.condensed_gaps(), source },
        left,
        wait: if left == 0 { 0.0 } else { replacement_wait(shop, id, now).seconds() },
        rest,
        // However long the piece on the platen takes, it is one piece.
        spent_on_piece: spent_since_last_pull(run, now).min(each),
        in_dryer,
        ends_at_press: known_transit.is_none(),
        changes,
        course,
        trouble,
    })
}

/// Sizes that are still to come after the one that was pulled last.
fn changes_left(shop: &Shop, run: &Run) -> u32 {
    let Some(lot) = run.lot.and_then(|lot| shop.lot(lot)) else { return 0 };
    let last = run.progress.pulls.last();
    if last.is_some_and(|last| last.size.is_none()) {
        return 0;
    }
    let open = lot.pieces.iter().filter(|(size, planned)| run.progress.good_of(Some(**size)) < **planned);
    let others = open.filter(|(size, _)| last.is_none_or(|last| last.size != Some(**size))).count() as u32;
    // The first pile of a run is there already.
    if last.is_none() { others.saturating_sub(1) } else { others }
}

/// Seconds of work since the last pull, without stops; 0 while the run is off the press.
fn spent_since_last_pull(run: &Run, now: WallTime) -> f64 {
    let Some(last) = run.progress.pulls.last().filter(|_| run.progress.is_on_press()) else { return 0.0 };
    let stood: Millis = run.progress.stops.iter().map(|stop| stop.overlap(last.at, now)).sum();
    (now.since(last.at) - stood).seconds()
}

impl Forecast {
    /// Whether pieces are left and their time rests on hardly more than the printer's guess.
    pub fn is_only_guess(&self) -> bool {
        self.left > 0 && self.basis.is_only_guess()
    }

    /// Seconds of work until the last piece is pulled: an 80 % interval around the median.
    pub fn press_time(&self) -> Estimate<f64> {
        self.time_for(&self.rest, self.left)
    }

    /// Seconds of work until `more` pieces are pulled; at most [`left`](Self::left).
    pub(crate) fn time_of(&self, more: u32) -> Estimate<f64> {
        self.time_for(&self.outlook(more), more)
    }

    fn time_for(&self, outlook: &Outlook, pieces: u32) -> Estimate<f64> {
        if pieces == 0 {
            return Estimate::default();
        }
        // However long the piece on the platen has taken, the others still take their time.
        let least = f64::from(pieces - 1) / f64::from(pieces);
        let from_now = |seconds: f64| (seconds - self.spent_on_piece).max(seconds * least) + self.wait;
        outlook.interval(CONFIDENCE).map(from_now)
    }

    fn outlook(&self, more: u32) -> Outlook {
        let changes = self.changes * more / self.left.max(1);
        Outlook::of(&self.course, &self.trouble, more, changes)
    }

    /// When the last piece is out of the dryer, from the [`press_time`](Self::press_time).
    pub fn finish(&self, press_time: Estimate<f64>, calendar: &WorkCalendar<'_>) -> Estimate<WallTime> {
        press_time.map(|seconds| calendar.after(seconds) + Millis::from_seconds(self.in_dryer))
    }

    /// Probability that the last piece is out of the dryer by a moment.
    pub fn chance_by(&self, moment: WallTime, calendar: &WorkCalendar<'_>) -> f64 {
        let work = self.work_until(moment, calendar);
        if self.left == 0 {
            return if work >= 0.0 { 1.0 } else { 0.0 };
        }
        if work <= 0.0 { 0.0 } else { self.rest.chance_within(work + self.spent_on_piece) }
    }

    /// Pieces per hour needed to have the last one out of the dryer by a moment, without a stop; `None` if there is no
    /// time left.
    pub fn needed_per_hour(&self, moment: WallTime, calendar: &WorkCalendar<'_>) -> Option<f64> {
        let work = self.work_until(moment, calendar);
        (work > 0.0).then(|| f64::from(self.left) / work * 3600.0)
    }

    /// Number of the remaining pieces that are out of the dryer by a moment as often as not.
    pub fn pieces_by(&self, moment: WallTime, calendar: &WorkCalendar<'_>) -> u32 {
        let work = self.work_until(moment, calendar) + self.wait;
        // The largest number whose median is within the time.
        let (mut some, mut too_many) = (0, self.left);
        if work <= self.wait {
            return 0;
        }
        if self.time_for_half(self.left) <= work {
            return self.left;
        }
        while too_many - some > 1 {
            let middle = u32::midpoint(some, too_many);
            if self.time_for_half(middle) <= work { some = middle } else { too_many = middle }
        }
        some
    }

    fn time_for_half(&self, more: u32) -> f64 {
        (self.outlook(more).quantile(0.5) - self.spent_on_piece).max(0.0) + self.wait
    }

    /// Seconds of work until a piece must be pulled to be out of the dryer by a moment, after the wait.
    fn work_until(&self, moment: WallTime, calendar: &WorkCalendar<'_>) -> f64 {
        calendar.work_until(moment - Millis::from_seconds(self.in_dryer)) - self.wait
    }

    /// Expected seconds of work for one of the pieces left; of one more if none is.
    pub fn seconds_each(&self) -> f64 {
        let pieces = self.left.max(1);
        let Work { mean, .. } = self.course.work(f64::from(pieces), f64::from(self.changes));
        mean / f64::from(pieces)
    }
}
