//! The day's rail: open runs one after another from now to closing.

use super::fit::{RunTimes, run_fit};
use super::rail_run::RailRun;
use super::verdict::{RailVerdict, verdict};
use crate::facts::{Fact, RECORDED_ORDER};
use crate::ids::RunId;
use crate::plan::{WorkCalendar, closing_today, open_runs, set_up_time};
use crate::run::{CONFIDENCE, Chance, Experience, Forecast, Outlook, forecast_from};
use crate::screen::{not_ready, readiness, replacement_wait};
use crate::shop::Shop;
use crate::time::{Estimate, Millis, WallClock, WallTime};

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

impl Rail {
    /// Number of runs whose times end at the press, since their time in the dryer is unknown.
    pub fn ending_at_press(&self) -> u32 {
        self.runs.iter().filter(|run| run.ends_at_press).count() as u32
    }
}

/// The rail as of the clock.
///
/// Times are added up in seconds of work from now on: set-ups and waits as they are expected, and the runs' own times
/// with their doubt. What the runs' forecasts share, as they learned it from the same earlier runs, is off for all of
/// them at once (see [`Outlook::and`]).
pub fn rail(shop: &Shop, clock: WallClock) -> Rail {
    let closing = closing_today(&shop.closings, clock);
    let set_up = set_up_time(shop);
    let experience = Experience::of(shop);
    let open = open_runs(shop);
    let press_runs = open.iter().any(|id| shop.run(*id).is_some_and(|run| run.progress.is_on_press()));
    let calendar = WorkCalendar::of(shop, clock, press_runs);
    let mut ahead = Ahead::default();
    let mut unknown_before = false;
    let mut runs = Vec::new();
    for id in open {
        let (Some(run), Some((job_id, job))) = (shop.run(id), shop.job_of(id)) else { continue };
        let Some(lot) = run.lot.and_then(|lot| shop.lot(lot)) else { continue };
        let press_free = calendar.after(ahead.expected());
        let on_press = run.progress.is_on_press();
        let waits_until;
        if on_press {
            // Its forecast includes the wait.
            let wait = replacement_wait(shop, id, clock.now);
            waits_until = (wait > Millis::ZERO).then_some(clock.now + wait);
        } else {
            waits_until = readiness(shop, id, clock.now).map(|left| left.ready).filter(|ready| *ready > press_free);
            if let Some(ready) = waits_until {
                ahead.fixed += (calendar.work_until(ready) - ahead.expected()).max(0.0);
            }
        }
        let set_up_begins = waits_until.filter(|_| !on_press).unwrap_or(press_free);
        if !on_press {
            ahead.fixed += set_up.seconds;
        }
        let forecast = forecast_from(&experience, shop, id, clock.now);
        let due = job.due.map(|due| clock.due_moment(due));
        let mut finish = None;
        let mut chance_by = None;
        if let Some(forecast) = &forecast {
            ahead.add(forecast);
            let dryer = Millis::from_seconds(forecast.in_dryer);
            finish = Some(ahead.interval().map(|seconds| calendar.after(seconds) + dryer));
            let (ahead, calendar) = (&ahead, &calendar);
            chance_by = Some(move |moment: WallTime| ahead.chance_within(calendar.work_until(moment - dryer)));
        }
        let times = RunTimes { finish, closing, due, is_today: job.due.is_some_and(|due| due.day <= clock.work_day()) };
        let fit = run_fit(&times, unknown_before, chance_by.as_ref().map(|by| by as &dyn Fn(WallTime) -> Chance));
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
            basis: forecast.as_ref().map(|forecast| forecast.basis),
            press_free,
            waits_until,
            waits_for: waits_until.and_then(|_| not_ready(shop, id)).unwrap_or_default(),
            set_up_begins,
            finish,
            ends_at_press: forecast.as_ref().is_some_and(|forecast| forecast.ends_at_press),
            is_earliest_possible: unknown_before,
            fit,
            chance: closing.zip(chance_by).map(|(closing, by)| by(closing)),
        });
        unknown_before |= forecast.is_none();
    }
    let verdict = verdict(&runs, clock, closing, &calendar);
    Rail { runs, closing, verdict, set_up: set_up.seconds, set_up_learned: set_up.is_learned }
}

/// The work ahead, up to the end of some run, in seconds from now on.
#[derive(Default)]
struct Ahead {
    /// Set-ups and waits, less the time already spent on the piece on the platen.
    fixed: f64,
    /// The runs' own times.
    runs: Option<Outlook>,
    /// The median of these.
    middle: f64,
    /// Whether one of them rests on hardly more than a guess.
    is_only_guess: bool,
}

impl Ahead {
    fn add(&mut self, forecast: &Forecast) {
        if forecast.left == 0 {
            return;
        }
        self.fixed += forecast.wait - forecast.spent_on_piece;
        let runs = self.runs.as_ref().map_or(forecast.rest, |before| before.and(&forecast.rest));
        self.middle = runs.quantile(0.5);
        self.is_only_guess |= forecast.is_only_guess();
        self.runs = Some(runs);
    }

    fn expected(&self) -> f64 {
        (self.fixed + self.middle).max(0.0)
    }

    fn interval(&self) -> Estimate<f64> {
        let runs = self.runs.as_ref().map_or(Estimate::default(), |runs| runs.interval(CONFIDENCE));
        runs.map(|seconds| (self.fixed + seconds).max(0.0))
    }

    fn chance_within(&self, seconds: f64) -> Chance {
        let probability = match &self.runs {
            Some(runs) if seconds > 0.0 => runs.chance_within(seconds - self.fixed),
            None if seconds >= self.fixed => 1.0,
            _ => 0.0,
        };
        // What set-ups and waits alone take too long for is late whatever the pace.
        Chance::of(probability, self.is_only_guess && seconds > self.fixed.max(0.0))
    }
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
