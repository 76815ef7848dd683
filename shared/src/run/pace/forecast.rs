//! When will this run be out of the dryer, and does that make closing?

use super::finish::{PieceTime, TimeLeft};
use super::history::history_for;
use crate::heat::dryer_transit;
use crate::ids::RunId;
use crate::screen::replacement_wait;
use crate::shop::Shop;
use crate::time::{Millis, WallTime};
use crate::units::Seconds;

/// What a forecast is based on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ForecastBasis {
    /// The run's own counts.
    ThisRun {
        /// Number of gaps between counts.
        gaps: u32,
    },
    /// Earlier runs of the shop.
    History {
        /// Number of runs.
        runs: u32,
        /// Whether they have the same location, fabric, hits and flash.
        alike: bool,
    },
    /// The printer's guess.
    Guess,
}

/// Forecast of when the remaining pieces are out of the dryer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Forecast {
    /// What it is based on.
    pub basis: ForecastBasis,
    /// What is known about the time of one piece.
    pub piece_time: PieceTime,
    /// Pieces left.
    pub left: u32,
    /// Seconds until pulling can continue while a screen is burned again and set up; 0 otherwise.
    pub wait: f64,
    /// Seconds from now until the last piece is out of the dryer, including wait, dryer and expected stops:
    /// an 80 % interval.
    pub time: TimeLeft,
    /// Seconds of work since the last pull, already spent on the piece on the platen.
    pub spent_on_piece: f64,
    /// Expected seconds of stop per second of work.
    pub stop_rate: f64,
    /// Seconds the last piece takes through the dryer.
    pub transit: f64,
}

/// Number of gaps from which a run's own pace is used.
const MIN_GAPS: u32 = 5;
/// Confidence of every interval shown: 80 %.
pub(crate) const CONFIDENCE: f64 = 0.8;
/// Standard deviation assumed for a guess, as a fraction of it. Our own caution.
const GUESS_ERROR: f64 = 0.25;

/// The forecast of a run as of `now`. `stop_rate` is in seconds of stop per second of work. `None` if nothing
/// is known about its pace.
pub fn forecast(shop: &Shop, id: RunId, now: WallTime, stop_rate: f64) -> Option<Forecast> {
    let run = shop.run(id)?;
    let left = shop.pieces_left(id);
    let own = run.progress.pace();
    let own_time = own.as_ref().and_then(PieceTime::of);
    let this_run =
        || own.zip(own_time).map(|(pace, piece_time)| (ForecastBasis::ThisRun { gaps: pace.gaps }, piece_time));
    let history =
        || history_for(shop, id).map(|h| (ForecastBasis::History { runs: h.runs, alike: h.alike }, h.piece_time));
    let guess = || {
        let mean = run.guess?.seconds();
        let piece_time =
            PieceTime { mean, sd: GUESS_ERROR * mean, mean_error: GUESS_ERROR * mean, degrees_of_freedom: 4.0 };
        Some((ForecastBasis::Guess, piece_time))
    };
    let enough = own.is_some_and(|pace| pace.gaps >= MIN_GAPS);
    let (basis, piece_time) = if enough { this_run() } else { history().or_else(guess).or_else(this_run) }?;
    // However long the piece on the platen takes, it is one piece.
    let spent_on_piece = spent_since_last_pull(run, now).min(piece_time.mean);
    let transit = dryer_transit(shop, id).map_or(0.0, Seconds::seconds);
    let wait = if left == 0 { 0.0 } else { replacement_wait(shop, id, now).seconds() };
    let time = if left == 0 {
        let since = run.progress.pulls.last().map_or(transit, |last| now.since(last.at).seconds());
        let rest = (transit - since).max(0.0);
        TimeLeft { expected: rest, low: rest, high: rest }
    } else {
        time_left(&piece_time, left, spent_on_piece, stop_rate, wait + transit)
    };
    Some(Forecast { basis, piece_time, left, wait, time, spent_on_piece, stop_rate, transit })
}

fn time_left(piece_time: &PieceTime, left: u32, spent_on_piece: f64, stop_rate: f64, besides: f64) -> TimeLeft {
    let bare = TimeLeft::predict(piece_time, left, CONFIDENCE);
    // However long the piece on the platen has taken, the others still take their time.
    let least = f64::from(left - 1) / f64::from(left);
    let from_now = |seconds: f64| (seconds - spent_on_piece).max(seconds * least) * (1.0 + stop_rate) + besides;
    TimeLeft { expected: from_now(bare.expected), low: from_now(bare.low), high: from_now(bare.high) }
}

/// Seconds of work since the last pull, without stops; 0 while the run is off the press.
fn spent_since_last_pull(run: &crate::run::Run, now: WallTime) -> f64 {
    let Some(last) = run.progress.pulls.last().filter(|_| run.progress.is_on_press()) else { return 0.0 };
    let stood: Millis = run.progress.stops.iter().map(|stop| stop.overlap(last.at, now)).sum();
    (now.since(last.at) - stood).seconds()
}

impl Forecast {
    /// Probability that the last piece is out of the dryer within `seconds` from now.
    pub fn chance_within(&self, seconds: f64) -> f64 {
        if self.left == 0 {
            return if self.time.expected <= seconds { 1.0 } else { 0.0 };
        }
        let work = (seconds - self.wait - self.transit) / (1.0 + self.stop_rate);
        if work <= 0.0 { 0.0 } else { TimeLeft::chance_within(&self.piece_time, self.left, work + self.spent_on_piece) }
    }

    /// Pieces per hour needed to have the last one out of the dryer within `seconds` from now; `None` if
    /// there is no time left.
    pub fn needed_per_hour(&self, seconds: f64) -> Option<f64> {
        let work = (seconds - self.wait - self.transit) / (1.0 + self.stop_rate);
        (work > 0.0).then(|| f64::from(self.left) / work * 3600.0)
    }

    /// Number of the remaining pieces expected out of the dryer within `seconds` from now.
    pub fn pieces_within(&self, seconds: f64) -> u32 {
        let work = (seconds - self.wait - self.transit) / (1.0 + self.stop_rate);
        if work <= 0.0 {
            return 0;
        }
        (super::finish::pieces_within(&self.piece_time, work + self.spent_on_piece).floor() as u32).min(self.left)
    }
}
