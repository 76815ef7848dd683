//! When will this run have left the dryer, and does that make closing?

use super::finish::{Spread, TimeLeft};
use super::history::history_for;
use crate::ids::RunId;
use crate::screen::wait_for_screen;
use crate::shop::Shop;

/// What a forecast rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Basis {
    /// The run's own pulls.
    ThisRun {
        /// Gaps between them.
        gaps: u32,
    },
    /// The shop's earlier runs.
    History {
        /// How many.
        runs: u32,
        /// Whether they were alike in location, fabric, hits and flash.
        alike: bool,
    },
    /// The printer's own guess.
    Guess,
}

/// When the pieces that are left will be out of the dryer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Forecast {
    /// What it rests on.
    pub basis: Basis,
    /// What is known of a piece's seconds.
    pub spread: Spread,
    /// Pieces left.
    pub left: u32,
    /// Seconds until pulling can go on, while a screen is burned again and set up.
    pub wait: f64,
    /// Seconds from now, the wait, dryer and expected stops included: expected, and eight times in ten between.
    pub time: TimeLeft,
    /// Seconds of work since the last pull, already spent on the piece now on the platen.
    pub spent: f64,
    /// Seconds of stop expected for each second of work.
    pub stop_rate: f64,
    /// Seconds the last piece takes through the dryer.
    pub transit: f64,
}

/// Gaps after which a run speaks for itself.
const ENOUGH_GAPS: u32 = 5;
/// The confidence of every interval shown.
pub(crate) const EIGHT_IN_TEN: f64 = 0.8;
/// How far off a guess may be, as a part of it. Our own caution.
const GUESS_ERROR: f64 = 0.25;

/// The forecast of a run, as of wall time `now`; none when nothing is known of its pace.
pub fn forecast(shop: &Shop, id: RunId, now: u64, stop_rate: f64) -> Option<Forecast> {
    let run = shop.run(id)?;
    let left = shop.left_of(id);
    let own = run.progress.pace();
    let own_spread = own.as_ref().and_then(Spread::of);
    let this_run = || own.zip(own_spread).map(|(pace, spread)| (Basis::ThisRun { gaps: pace.gaps }, spread));
    let history = || history_for(shop, id).map(|h| (Basis::History { runs: h.runs, alike: h.alike }, h.spread));
    let guess = || {
        let mean = run.guess?.seconds();
        let spread = Spread { mean, sd: GUESS_ERROR * mean, mean_error: GUESS_ERROR * mean, freedom: 4.0 };
        Some((Basis::Guess, spread))
    };
    let enough = own.is_some_and(|pace| pace.gaps >= ENOUGH_GAPS);
    let (basis, spread) = if enough { this_run() } else { history().or_else(guess).or_else(this_run) }?;
    // However long the piece on the platen takes, it is one piece.
    let spent = spent_since_last_pull(run, now).min(spread.mean);
    let transit = run.set_up.dryer_transit();
    let wait = if left == 0 { 0.0 } else { wait_for_screen(shop, id, now) as f64 / 1000.0 };
    let time = if left == 0 {
        let since = run.progress.pulls.last().map_or(transit, |last| now.saturating_sub(last.at) as f64 / 1000.0);
        let rest = (transit - since).max(0.0);
        TimeLeft { expected: rest, low: rest, high: rest }
    } else {
        time_left(&spread, left, spent, stop_rate, wait + transit)
    };
    Some(Forecast { basis, spread, left, wait, time, spent, stop_rate, transit })
}

fn time_left(spread: &Spread, left: u32, spent: f64, stop_rate: f64, besides: f64) -> TimeLeft {
    let bare = TimeLeft::predict(spread, left, EIGHT_IN_TEN);
    // However long the piece on the platen has taken, the ones after it are still to come.
    let least = f64::from(left - 1) / f64::from(left);
    let from_now = |seconds: f64| (seconds - spent).max(seconds * least) * (1.0 + stop_rate) + besides;
    TimeLeft { expected: from_now(bare.expected), low: from_now(bare.low), high: from_now(bare.high) }
}

/// Work since the last pull, stops taken out, in seconds; nothing while off the press.
fn spent_since_last_pull(run: &crate::run::Run, now: u64) -> f64 {
    let Some(last) = run.progress.pulls.last().filter(|_| run.progress.is_on_press()) else { return 0.0 };
    let stood: u64 = run.progress.stops.iter().map(|stop| stop.within(last.at, now)).sum();
    now.saturating_sub(last.at).saturating_sub(stood) as f64 / 1000.0
}

impl Forecast {
    /// The chance that the last piece is out of the dryer `seconds` from now.
    pub fn chance_within(&self, seconds: f64) -> f64 {
        if self.left == 0 {
            return if self.time.expected <= seconds { 1.0 } else { 0.0 };
        }
        let work = (seconds - self.wait - self.transit) / (1.0 + self.stop_rate);
        if work <= 0.0 { 0.0 } else { TimeLeft::chance_within(&self.spread, self.left, work + self.spent) }
    }

    /// Pieces an hour needed to be out of the dryer `seconds` from now; none when there is no time.
    pub fn needed_per_hour(&self, seconds: f64) -> Option<f64> {
        let work = (seconds - self.wait - self.transit) / (1.0 + self.stop_rate);
        (work > 0.0).then(|| f64::from(self.left) / work * 3600.0)
    }

    /// Pieces to expect out of the dryer `seconds` from now, of those that are left.
    pub fn pieces_within(&self, seconds: f64) -> u32 {
        let work = (seconds - self.wait - self.transit) / (1.0 + self.stop_rate);
        if work <= 0.0 {
            return 0;
        }
        (super::finish::pieces_within(&self.spread, work + self.spent).floor() as u32).min(self.left)
    }
}
