//! Changeover at the dryer between two runs: what to change, in which order, and how long to wait.
//!
//! A dryer still set for cotton spoils polyester with the first garment, and the damage may show only days
//! later. So heat comes first, before ink touches the screen.

use super::settling::{SettlingBasis, settling_time};
use crate::collections::sort_by;
use crate::facts::{CheckItem, Fabric};
use crate::heat::cure::dryer_choice::dryer_of;
use crate::heat::cure::measured::measured_at_dryer;
use crate::heat::cure::on_paper::check_limits;
use crate::heat::cure::sensor::set_temperature_for_limits;
use crate::heat::{LimitCheck, LimitState, MeasuredBreach, Transition, sheet_for};
use crate::ids::{RunId, Subject};
use crate::run::{CheckList, CheckRow, CheckState, Run, check_list, check_list_after};
use crate::shop::Shop;
use crate::time::{Millis, WallTime};
use crate::units::{Seconds, Temperature, TemperatureDelta};

/// What the dryer's current temperature is based on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TemperatureSource {
    /// The setting of the previous run, which was printed at this dryer.
    PreviousRun,
    /// A settling that has finished.
    Settled,
    /// A settling in progress to a lower temperature: the temperature at which it started.
    CoolingDown,
    /// A settling in progress to a higher temperature: its target.
    HeatingUp,
    /// Measured for this run's dryer check.
    Measured,
    /// Read by infrared for this run's dryer check, and hotter than what is known otherwise.
    ReadByInfrared,
}

/// A dryer that is settling at another temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ActiveSettling {
    /// Which settling: what [`crate::facts::HeatFact::SettlingFinished`] is about.
    pub id: Subject,
    /// Target temperature.
    pub to: Temperature,
    /// When it started.
    pub since: WallTime,
    /// Time since the start, at most four hours. Recorded as the settling time if it ends now.
    pub elapsed: Seconds,
    /// Expected time left; zero if it should have settled by now.
    pub left: Seconds,
}

impl ActiveSettling {
    /// The same settling as of `now`, with elapsed and remaining time updated.
    pub fn at(self, now: WallTime) -> Self {
        let whole = self.elapsed.milliseconds().saturating_add(self.left.milliseconds());
        let elapsed = elapsed_since(self.since, now);
        let left = Seconds::from_milliseconds(whole.saturating_sub(elapsed.milliseconds()));
        Self { elapsed, left, ..self }
    }
}

/// By then somebody forgot to end a settling; the longest settling that can be stored.
const FORGOTTEN_AFTER: Millis = Millis::from_hours(4);

/// Time since a settling started, capped at four hours.
fn elapsed_since(since: WallTime, now: WallTime) -> Seconds {
    Seconds::from_milliseconds(now.since(since).min(FORGOTTEN_AFTER).ms() as u32)
}

/// Time to wait until the dryer has settled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wait {
    /// Temperature at which the settling starts.
    pub from: Temperature,
    /// Target temperature.
    pub to: Temperature,
    /// Time left to wait.
    pub seconds: Seconds,
    /// The same in whole minutes, rounded up.
    pub minutes: u32,
    /// What the estimate is based on.
    pub basis: SettlingBasis,
    /// Whether the dryer is assumed to be cold because nothing was printed for three hours.
    pub cold: bool,
}

/// Status of a changeover, the most urgent first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeatStatus {
    /// The run's own settings exceed a limit; waiting does not help.
    SetUpTooHot,
    /// The dryer's current temperature exceeds a limit.
    TooHot,
    /// The dryer was measured below the ink's cure temperature.
    TooCool,
    /// The time in the heat was measured shorter than the ink's cure takes.
    TooShort,
    /// A dryer or flash setting still has to be changed, or the dryer is still settling.
    ChangeFirst,
    /// No limit is exceeded; the dryer has to settle.
    Settle,
    /// Every step is done and verified.
    Verified,
    /// Nothing changes.
    Nothing,
}

/// What to do at the dryer and flash between two runs.
#[derive(Clone, Debug, PartialEq)]
pub struct Changeover {
    /// The previous run on the press.
    pub previous: Option<RunId>,
    /// Fabric of the previous run.
    pub from_fabric: Option<Fabric>,
    /// Fabric of this run.
    pub to_fabric: Option<Fabric>,
    /// The dryer this run uses.
    pub dryer: Option<Subject>,
    /// The dryer's current temperature and how it is known; `None` if unknown. If the dryer is cold, its last one.
    pub current: Option<(Temperature, TemperatureSource)>,
    /// When something was last printed or timed at the dryer before this run; `None` if never.
    pub last_used: Option<WallTime>,
    /// Whether the dryer is assumed to be cold because that is more than three hours ago, or never was.
    pub cold: bool,
    /// Limits exceeded by a garment that goes through at the current temperature. Show these first.
    pub danger: Vec<LimitCheck>,
    /// Limits exceeded at the run's own settings too: the set-up is wrong for this fabric or ink.
    pub exceeded_by_set_up: Vec<LimitCheck>,
    /// The dryer temperature this run needs.
    pub setting: Option<Temperature>,
    /// Whether this run's set-up has no dryer temperature.
    pub setting_missing: bool,
    /// Differences at dryer and flash, in working order: temperature, belt, passes, flash.
    pub steps: Vec<CheckRow>,
    /// Time to wait until the dryer has settled; `None` if there is no need to wait.
    pub wait: Option<Wait>,
    /// The settling in progress at this dryer, whatever its target.
    pub settling: Option<ActiveSettling>,
    /// Whether the dryer's temperature was checked for this run and found right.
    pub verified: bool,
    /// What was measured for this run breaches, however close it is to the set-up: the temperature, else the time.
    pub breach: Option<MeasuredBreach>,
}

impl Changeover {
    /// Whether ink must stay off the screen: a dryer or flash step is open, the dryer is still settling, a limit
    /// would be exceeded, or the ink would stay below its cure.
    pub fn hold_ink(&self) -> bool {
        let unseen = !self.verified && (!self.danger.is_empty() || self.settling.is_some());
        !self.exceeded_by_set_up.is_empty()
            || self.breach.is_some()
            || unseen
            || self.steps.iter().any(CheckRow::is_to_do)
    }

    /// The overall status.
    pub fn status(&self) -> HeatStatus {
        if !self.exceeded_by_set_up.is_empty() {
            HeatStatus::SetUpTooHot
        } else if !self.danger.is_empty() && !self.verified {
            HeatStatus::TooHot
        } else if let Some(breach) = self.breach {
            let is_time = matches!(breach, MeasuredBreach::ShortOfHold { .. });
            if is_time { HeatStatus::TooShort } else { HeatStatus::TooCool }
        } else if self.hold_ink() {
            HeatStatus::ChangeFirst
        } else if self.wait.is_some() {
            HeatStatus::Settle
        } else if !self.steps.is_empty() || !self.danger.is_empty() || self.settling.is_some() {
            HeatStatus::Verified
        } else {
            HeatStatus::Nothing
        }
    }

    /// The exceeded limits behind [`status`](Self::status); empty if the status is about something else.
    pub fn exceeded_limits(&self) -> &[LimitCheck] {
        match self.status() {
            HeatStatus::SetUpTooHot => &self.exceeded_by_set_up,
            HeatStatus::TooHot => &self.danger,
            HeatStatus::TooCool
            | HeatStatus::TooShort
            | HeatStatus::ChangeFirst
            | HeatStatus::Settle
            | HeatStatus::Verified
            | HeatStatus::Nothing => &[],
        }
    }

    /// The settling in progress, if its target is the temperature this run needs.
    pub fn settling_to_setting(&self) -> Option<ActiveSettling> {
        self.settling.filter(|settling| self.setting.is_none_or(|setting| setting == settling.to))
    }

    /// Number of dryer and flash steps that are still open.
    pub fn steps_to_do(&self) -> u32 {
        self.steps.iter().filter(|row| row.is_to_do()).count() as u32
    }

    /// How far the dryer's temperature must change; negative if it must cool.
    pub fn change(&self) -> Option<TemperatureDelta> {
        self.wait.map(|wait| TemperatureDelta::between(wait.from, wait.to))
    }
}

/// A dryer counts as cold after this long without a print. Our own.
const COLD_AFTER: Millis = Millis::from_hours(3);
/// Starting temperature of a cold dryer in milli-°C: 20 °C. Our own.
const COLD_START: i32 = 20_000;
/// A dryer this close to its target, in milli-°C, needs no settling: 1 °C. Our own.
const SETTLED_WITHIN: i32 = 1_000;

/// The changeover from the run that was last on the press to this run. `None` if the run is unknown.
pub fn changeover(shop: &Shop, run: RunId, now: WallTime) -> Option<Changeover> {
    build(shop, check_list(shop, run), run, now)
}

/// The changeover between any two runs, for planning a day; `before` is `None` for the first run of all.
/// `None` if the run is unknown.
pub fn changeover_between(shop: &Shop, before: Option<RunId>, run: RunId, now: WallTime) -> Option<Changeover> {
    build(shop, check_list_after(shop, before, run), run, now)
}

fn build(shop: &Shop, list: CheckList, id: RunId, now: WallTime) -> Option<Changeover> {
    let run = shop.run(id)?;
    let fabric_of = |run: &Run| run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric);
    let before = list.previous.and_then(|previous| shop.run(previous).map(|run| (previous, run)));
    let dryer = dryer_of(shop, id);
    let dryer_id = dryer.map(|(id, _, _)| id);
    let target = run.set_up.dryer;
    let same_dryer = |previous| dryer_of(shop, previous).map(|(id, _, _)| id) == dryer_id;
    let left_at = before
        .filter(|(previous, _)| same_dryer(*previous))
        .and_then(|(_, run)| run.set_up.dryer.map(|temperature| (temperature, TemperatureSource::PreviousRun)));
    // If the previous run is only planned, the dryer will be at that run's setting, whatever it does now.
    let went_on = before.map_or(WallTime::EPOCH, |(_, run)| run.progress.started.unwrap_or(WallTime::MAX));
    let latest = latest_settling(shop, dryer_id).filter(|latest| latest.at >= went_on);
    let at_dryer = measured_at_dryer(shop, id, run);
    let reckoned = latest.map(|latest| latest.current()).or(left_at);
    let measured = at_dryer.measured.map(|measured| (measured, TemperatureSource::Measured)).or(reckoned);
    // A reading by infrared shows that it is at least as hot, never that it is cooler than what is known.
    let read = at_dryer.infrared.map(|read| (read, TemperatureSource::ReadByInfrared));
    let current = measured.filter(|(known, _)| read.is_none_or(|(read, _)| *known >= read)).or(read);
    // What was measured at the print is compared as it is; a setting is corrected by the dryer's offset.
    let expected_at = |setting| set_temperature_for_limits(dryer.map(|(_, heater, _)| heater), setting, now);
    let known = at_dryer.measured.or_else(|| expected_at(reckoned.map(|(setting, _)| setting)));
    let at_print = known.max(at_dryer.infrared);
    let figures = sheet_for(shop, &run.ink).map(|(_, sheet)| &sheet.figures);
    let mut danger = check_limits(shop, fabric_of(run), figures, at_print);
    danger.retain(|finding| finding.state == LimitState::Exceeded);
    let mut exceeded_by_set_up = check_limits(shop, fabric_of(run), figures, expected_at(target));
    exceeded_by_set_up.retain(|finding| finding.state == LimitState::Exceeded);
    // Sort by limit: the lowest is exceeded first.
    sort_by(&mut danger, |one, other| one.limit.cmp(&other.limit));
    sort_by(&mut exceeded_by_set_up, |one, other| one.limit.cmp(&other.limit));
    let steps: Vec<CheckRow> = list.changes.iter().filter(|row| row.item.is_heat()).cloned().collect();
    let checked = list.rows().find(|row| row.item == CheckItem::Dryer);
    let verified = checked.is_some_and(|row| !row.is_to_do() && row.state != CheckState::Skipped);
    let of_time = list.rows().filter(|row| matches!(row.item, CheckItem::Belt | CheckItem::Dwell));
    let breach = checked.into_iter().chain(of_time).find_map(CheckRow::breach);
    let settling = latest.filter(|latest| latest.is_under_way(now)).and_then(|latest| {
        let elapsed = elapsed_since(latest.at, now);
        let (whole, _) = settling_time(shop, dryer_id, TemperatureDelta::between(latest.from, latest.to))?;
        let left = Seconds::from_milliseconds(whole.milliseconds().saturating_sub(elapsed.milliseconds()));
        Some(ActiveSettling { id: latest.id, to: latest.to, since: latest.at, elapsed, left })
    });
    let planned = before.is_some_and(|(_, run)| run.progress.last_activity.is_none());
    let touched = before.and_then(|(_, run)| run.progress.last_activity).max(latest.map(|latest| latest.at));
    let cold = !planned && touched.is_none_or(|touched| now.since(touched) > COLD_AFTER);
    let wait = target.filter(|_| !verified).and_then(|to| {
        let under_way = latest.filter(|latest| latest.is_under_way(now) && latest.to == to);
        let from = match (under_way, current) {
            (Some(latest), _) => latest.from,
            (None, Some((current, _))) => current,
            (None, None) => to,
        };
        let waited = under_way.and(settling).map_or(Seconds::default(), |settling| settling.elapsed);
        wait_for(shop, dryer_id, from, to, waited, cold)
    });
    Some(Changeover {
        previous: list.previous,
        from_fabric: before.and_then(|(_, run)| fabric_of(run)),
        to_fabric: fabric_of(run),
        dryer: dryer_id,
        current,
        last_used: touched,
        cold,
        danger,
        exceeded_by_set_up,
        setting: target,
        setting_missing: target.is_none(),
        steps,
        wait,
        settling,
        verified,
        breach,
    })
}

/// Time to settle from `from` to `to`, less the time `waited`. A cold dryer needs that or heating up
/// from cold, whichever is longer.
fn wait_for(
    shop: &Shop,
    dryer: Option<Subject>,
    from: Temperature,
    to: Temperature,
    waited: Seconds,
    cold: bool,
) -> Option<Wait> {
    let way = |from: Temperature| {
        let change = TemperatureDelta::between(from, to);
        let (seconds, basis) =
            settling_time(shop, dryer, change).filter(|_| change.magnitude().milli_celsius() > SETTLED_WITHIN)?;
        let left = seconds.milliseconds().saturating_sub(waited.milliseconds());
        let (seconds, minutes) = (Seconds::from_milliseconds(left), left.div_ceil(60_000));
        Some(Wait { from, to, seconds, minutes, basis, cold: false })
    };
    let change = way(from);
    let from_cold =
        way(Temperature::from_milli_celsius(COLD_START)).filter(|_| cold).map(|wait| Wait { cold: true, ..wait });
    match (change, from_cold) {
        (Some(change), Some(cold)) if change.seconds >= cold.seconds => Some(change),
        (change, from_cold) => from_cold.or(change),
    }
}

/// A settling of one dryer with all fields known.
#[derive(Clone, Copy)]
struct LatestSettling {
    id: Subject,
    at: WallTime,
    from: Temperature,
    to: Temperature,
    took: Option<Seconds>,
}

impl LatestSettling {
    /// Whether it is still in progress; after four hours somebody forgot to end it.
    fn is_under_way(&self, now: WallTime) -> bool {
        self.took.is_none() && now.since(self.at) < FORGOTTEN_AFTER
    }

    fn current(&self) -> (Temperature, TemperatureSource) {
        match self.took {
            Some(_) => (self.to, TemperatureSource::Settled),
            None if self.to > self.from => (self.to, TemperatureSource::HeatingUp),
            None => (self.from, TemperatureSource::CoolingDown),
        }
    }
}

fn latest_settling(shop: &Shop, dryer: Option<Subject>) -> Option<LatestSettling> {
    shop.heat
        .settlings()
        .filter(|(_, settling)| !settling.deleted && !settling.entered_afterwards)
        .filter_map(|(id, settling)| {
            let Transition { dryer: of, from, to } = settling.transition?;
            (Some(of) == dryer).then_some(LatestSettling { id, at: settling.at, from, to, took: settling.took })
        })
        .max_by_key(|latest| (latest.at, latest.id))
}
