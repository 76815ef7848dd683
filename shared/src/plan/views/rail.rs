//! The day's rail: open runs one after another from now to closing.

use crate::colour::Colour;
use crate::facts::{Fabric, Fact, Location, RECORDED_ORDER};
use crate::ids::{JobId, RunId};
use crate::plan::{closing_today, open_runs, set_up_time};
use crate::run::{Forecast, ForecastBasis, forecast, stop_rate};
use crate::screen::{readiness, replacement_wait};
use crate::shop::Shop;
use crate::time::{Due, Estimate, Millis, WallClock, WallTime};

/// Whether a run is out of the dryer in time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RunFit {
    /// Out of the dryer before closing and before it is due, with a probability of at least 0.9.
    Fits,
    /// Expected in time, but with a probability below 0.9.
    Tight,
    /// Late for its own due time.
    MissesDue,
    /// Not out of the dryer by closing.
    MissesClosing,
    /// Runs past closing, but is not due today.
    Later,
    /// Its pace is unknown.
    Unknown,
}

/// A run on the rail.
#[derive(Clone, Debug, PartialEq)]
pub struct RailRun {
    /// The run.
    pub id: RunId,
    /// Its job.
    pub job: JobId,
    /// The job's title.
    pub title: String,
    /// The client.
    pub client: String,
    /// Print location.
    pub location: Location,
    /// The garment.
    pub garment: String,
    /// Its fabric.
    pub fabric: Fabric,
    /// Its colour.
    pub garment_colour: Option<Colour>,
    /// Name of the ink.
    pub ink: String,
    /// Its colour.
    pub ink_colour: Option<Colour>,
    /// Good pieces.
    pub good: u32,
    /// Pieces ordered.
    pub planned: u32,
    /// When the job is due.
    pub due: Option<Due>,
    /// Whether it is on the press now.
    pub on_press: bool,
    /// What its forecast is based on; `None` if its pace is unknown.
    pub basis: Option<ForecastBasis>,
    /// When the press is free for it.
    pub press_free: WallTime,
    /// Until when it waits for a screen after the press is free (on the press: until pulling can continue);
    /// `None` if it does not wait.
    pub waits_until: Option<WallTime>,
    /// When its set-up can begin: the press is free and its screens are ready.
    pub set_up_begins: WallTime,
    /// When it is out of the dryer, with an 80 % interval; `None` if its pace is unknown.
    pub finish: Option<Estimate<WallTime>>,
    /// Whether a run before it has no known pace, so that its own times are the earliest possible.
    pub is_earliest_possible: bool,
    /// Whether it is in time.
    pub fit: RunFit,
    /// Probability of being out of the dryer by closing, 0 to 1.
    pub chance: Option<f64>,
}

/// Verdict on the whole rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum RailVerdict {
    /// There is nothing to print.
    #[default]
    Empty,
    /// Everything due today makes closing with a probability of at least 0.9.
    Fits {
        /// When the last of it is out of the dryer.
        finish: WallTime,
        /// Time left until closing.
        spare: Millis,
    },
    /// Everything due today is expected to make closing, but with a probability below 0.9.
    Tight {
        /// When the last of it is expected out of the dryer.
        finish: WallTime,
    },
    /// Some runs due today do not make closing.
    Misses {
        /// Number of runs.
        runs: u32,
        /// How long after closing the last of them ends.
        over: Millis,
    },
    /// Some runs are late for their own due time, though not for closing.
    Late {
        /// Number of runs.
        runs: u32,
    },
    /// Some runs have no known pace.
    Unknown {
        /// Number of runs.
        runs: u32,
    },
    /// The shop is closed today, or has closed.
    Closed {
        /// Number of open runs.
        runs: u32,
    },
}

/// The rail of open runs.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Rail {
    /// Runs in printing order.
    pub runs: Vec<RailRun>,
    /// Wall time of today's closing; `None` on a day off.
    pub closing: Option<WallTime>,
    /// The verdict.
    pub verdict: RailVerdict,
    /// Seconds between runs used for the rail.
    pub set_up: f64,
    /// Whether these were learned from the shop's own days.
    pub set_up_learned: bool,
}
/// The normal quantile at 0.9: half the width of an 80 % interval in standard errors.
const Z_90: f64 = 1.281_551_565_544_6;

/// The rail as of the clock.
pub fn rail(shop: &Shop, clock: WallClock) -> Rail {
    let closing = closing_today(&shop.closings, clock);
    let set_up = set_up_time(shop);
    let rate = stop_rate(shop);
    // In milliseconds of Unix time: fractions of one add up over the runs.
    let now = clock.now.unix_ms() as f64;
    let moment = |ms: f64| WallTime::from_unix_ms(ms as u64);
    let mut cursor = now;
    let mut variance = 0.0;
    let mut unknown_before = false;
    let mut runs = Vec::new();
    for id in open_runs(shop) {
        let (Some(run), Some((job_id, job))) = (shop.run(id), shop.job_of(id)) else { continue };
        let Some(lot) = run.lot.and_then(|lot| shop.lot(lot)) else { continue };
        let press_free = moment(cursor);
        let on_press = run.progress.is_on_press();
        let waits_until;
        if on_press {
            // Its forecast includes the wait.
            let wait = replacement_wait(shop, id, clock.now);
            waits_until = (wait > Millis::ZERO).then_some(clock.now + wait);
        } else {
            waits_until = readiness(shop, id, clock.now).map(|left| left.ready).filter(|ready| *ready > press_free);
            cursor = waits_until.map_or(cursor, |ready| ready.unix_ms() as f64);
        }
        let set_up_begins = moment(cursor);
        if !on_press {
            cursor += set_up.seconds * 1000.0;
        }
        let forecast = forecast(shop, id, clock.now, rate);
        let mut finish = None;
        let mut chance = None;
        if let Some(forecast) = &forecast {
            let (out, error) = advance(forecast, &mut cursor, &mut variance);
            let reach = Z_90 * error;
            finish = Some(Estimate { expected: out, low: (out - reach).max(now), high: out + reach }.map(moment));
            chance = closing.map(|closing| probability_by(closing.unix_ms() as f64, out, error));
        }
        let fit = fit_of(finish, clock, closing, job.due, chance);
        runs.push(RailRun {
            id,
            job: job_id,
            title: job.title.clone(),
            client: job.client.clone(),
            location: run.location,
            garment: lot.garment.clone(),
            fabric: lot.fabric,
            garment_colour: lot.colour,
            ink: run.ink.clone(),
            ink_colour: run.ink_colour,
            good: run.progress.good(),
            planned: lot.total(),
            due: job.due,
            on_press,
            basis: forecast.map(|forecast| forecast.basis),
            press_free,
            waits_until,
            set_up_begins,
            finish,
            is_earliest_possible: unknown_before,
            fit,
            chance,
        });
        unknown_before |= forecast.is_none();
    }
    let verdict = verdict(&runs, clock, closing);
    Rail { runs, closing, verdict, set_up: set_up.seconds, set_up_learned: set_up.is_learned }
}

/// Advances the rail by a run. Returns when it is out of the dryer, in milliseconds of Unix time, and the
/// standard error in milliseconds.
fn advance(forecast: &Forecast, cursor: &mut f64, variance: &mut f64) -> (f64, f64) {
    let dryer = if forecast.left == 0 { forecast.time.expected } else { forecast.transit };
    let press = (forecast.time.expected - dryer).max(0.0) * 1000.0;
    let own = (forecast.time.high - forecast.time.expected) / Z_90 * 1000.0;
    *cursor += press;
    *variance += own * own;
    (*cursor + dryer * 1000.0, variance.sqrt())
}

fn probability_by(moment: f64, out: f64, error: f64) -> f64 {
    if error <= 0.0 {
        return if out <= moment { 1.0 } else { 0.0 };
    }
    // With many degrees of freedom Student's t is the normal distribution.
    crate::run::t_cdf((moment - out) / error, 1e6)
}

fn fit_of(
    finish: Option<Estimate<WallTime>>,
    clock: WallClock,
    closing: Option<WallTime>,
    due: Option<Due>,
    chance: Option<f64>,
) -> RunFit {
    let Some(Estimate { expected, high: late, .. }) = finish else { return RunFit::Unknown };
    let due_today = due.is_none_or(|due| due.day <= clock.work_day());
    if due.map(|due| clock.due_moment(due)).is_some_and(|moment| expected > moment) {
        return if closing.is_some_and(|closing| expected > closing) && due_today {
            RunFit::MissesClosing
        } else {
            RunFit::MissesDue
        };
    }
    let Some(closing) = closing else { return if due_today { RunFit::Fits } else { RunFit::Later } };
    let due_before = due.map(|due| clock.due_moment(due)).filter(|moment| *moment < closing);
    match chance {
        _ if expected > closing => {
            if due_today {
                RunFit::MissesClosing
            } else {
                RunFit::Later
            }
        }
        Some(chance) if chance < 0.9 && due_today => RunFit::Tight,
        _ if due_before.is_some_and(|moment| late > moment) => RunFit::Tight,
        _ => RunFit::Fits,
    }
}

fn verdict(runs: &[RailRun], clock: WallClock, closing: Option<WallTime>) -> RailVerdict {
    let count = |fit: RunFit| runs.iter().filter(|run| run.fit == fit).count() as u32;
    let today = |run: &&RailRun| run.due.is_none_or(|due| due.day <= clock.work_day());
    let open = runs.len() as u32;
    if open == 0 {
        return RailVerdict::Empty;
    }
    let Some(closing) = closing.filter(|closing| *closing > clock.now) else {
        return RailVerdict::Closed { runs: open };
    };
    let last =
        runs.iter().filter(today).filter_map(|run| run.finish).map(|finish| finish.expected).max().unwrap_or(clock.now);
    if count(RunFit::MissesClosing) > 0 {
        return RailVerdict::Misses { runs: count(RunFit::MissesClosing), over: last.since(closing) };
    }
    if count(RunFit::MissesDue) > 0 {
        return RailVerdict::Late { runs: count(RunFit::MissesDue) };
    }
    // An unknown pace matters only if the run is due today or comes before one that is.
    let until = runs.iter().rposition(|run| today(&run)).map_or(0, |last| last + 1);
    let unknown = runs[..until].iter().filter(|run| run.fit == RunFit::Unknown).count() as u32;
    if unknown > 0 {
        return RailVerdict::Unknown { runs: unknown };
    }
    if count(RunFit::Tight) > 0 {
        return RailVerdict::Tight { finish: last };
    }
    RailVerdict::Fits { finish: last, spare: closing.since(last) }
}

/// The fact that the shop means to print its runs in this order. Runs after the first sixteen hundred follow as they come.
pub fn order_fact(order: &[RunId]) -> Fact {
    Fact::RunsOrdered(order.iter().take(RECORDED_ORDER).copied().collect())
}

/// The order after a run is moved to position `index` among the open runs (0 is first). Nothing moves in
/// front of a run on the press. `None` if the run is not open.
pub fn reordered(shop: &Shop, id: RunId, index: usize) -> Option<Vec<RunId>> {
    let mut order = open_runs(shop);
    let on_press = |id: &RunId| shop.run(*id).is_some_and(|run| run.progress.is_on_press());
    let first = order.iter().filter(|id| on_press(id)).count();
    if on_press(&id) {
        return Some(order);
    }
    let from = order.iter().position(|other| *other == id)?;
    let run = order.remove(from);
    order.insert(index.max(first).min(order.len()), run);
    Some(order)
}
