//! What the heat does to a run: the ink's temperature, its time in the heat, cure and limits.

use super::dwell::{dwell, passes_for};
use super::on_paper::{CureOnPaper, Heated, LimitFinding, LimitName, LimitState, cure_on_paper, findings};
use super::sheets::sheet_for;
use crate::facts::{Fabric, HeatSettings};
use crate::heat::{Heater, InkSheet, SensorReading};
use crate::ids::{RunId, Subject};
use crate::run::Run;
use crate::shop::Shop;
use crate::units::{BeltSpeed, Seconds, Temperature, TemperatureDelta};

/// Why a run goes through this dryer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DryerChoice {
    /// It was chosen for the run.
    Chosen,
    /// The shop has no other.
    Only,
    /// The shop has several and none was chosen: its first is assumed.
    Assumed,
}

/// The dryer of a run.
#[derive(Clone, Debug, PartialEq)]
pub struct DryerUsed {
    /// Which.
    pub id: Subject,
    /// What the shop calls it.
    pub name: String,
    /// Why this one.
    pub choice: DryerChoice,
}

/// What is known of the dryer's error.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SensorView {
    /// The measurement it rests on.
    pub reading: SensorReading,
    /// How much hotter (positive) or cooler (negative) the print is than the setting.
    pub offset: TemperatureDelta,
    /// Whether it was measured more than 90 days ago. Our own.
    pub old: bool,
    /// Whether it was measured at a setting more than 25 °C from the run's. Our own.
    pub elsewhere: bool,
}

/// Time in the heat, one pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct DwellView {
    /// As the run's set-up has it.
    pub set: Option<Seconds>,
    /// From belt and heated length.
    pub from_belt: Option<Seconds>,
    /// Whether the two differ by more than 5 s.
    pub differ: bool,
}

impl DwellView {
    /// What is reckoned with: the shorter of the two, since a cure must not rest on the longer.
    pub fn used(&self) -> Option<Seconds> {
        match (self.set, self.from_belt) {
            (Some(set), Some(from_belt)) if self.differ => Some(set.min(from_belt)),
            (set, from_belt) => set.or(from_belt),
        }
    }
}

/// The ink cures only where the fabric suffers: no setting is right for both.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CureConflict {
    /// The ink's cure temperature.
    pub cure: Temperature,
    /// The limit that is passed at it.
    pub limit: LimitFinding,
}

/// What to bear in mind with the figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeatCaveat {
    /// The wash test decides, not these figures. Always.
    WashTestDecides,
    /// The time in which the print heats up and dries is counted as time at temperature.
    HeatUpCounted,
    /// Whether two passes add up is for the ink's sheet to say: the print cools between.
    PassesMayNotAdd,
    /// The dryer's error was never measured: the ink's temperature is the bare setting.
    SensorNotMeasured,
    /// It was measured long ago.
    SensorOld,
    /// It was measured far from this setting.
    SensorElsewhere,
    /// Several dryers and none chosen.
    DryerAssumed,
    /// The dwell that is set and the one from the belt differ.
    DwellsDiffer,
    /// The belt lies outside what the dryer runs.
    BeltBeyondDryer,
    /// The flash heats this fabric too, and its dye may move there already.
    FlashHeatsToo,
    /// A limit was raised by the shop above the cautious default.
    LimitRaised,
}

/// What the heat does to a run.
#[derive(Clone, Debug, PartialEq)]
pub struct RunHeat {
    /// The fabric; none until its lot has arrived.
    pub fabric: Option<Fabric>,
    /// The dryer; none where the shop has none.
    pub dryer: Option<DryerUsed>,
    /// What it is set to.
    pub setting: Option<Temperature>,
    /// What is known of its error.
    pub sensor: Option<SensorView>,
    /// The ink's temperature: setting plus error; the bare setting where that was not measured.
    pub ink_temperature: Option<Temperature>,
    /// Time in the heat, one pass.
    pub dwell: DwellView,
    /// Passes that are set.
    pub passes: u8,
    /// Passes that the hold time asks for; none where that cannot be said.
    pub passes_needed: Option<u32>,
    /// The belt, where it lies outside what the dryer runs.
    pub belt_beyond: Option<BeltSpeed>,
    /// The ink's sheet.
    pub sheet: Option<(Subject, InkSheet)>,
    /// Whether a cure is reached on paper.
    pub cure: CureOnPaper,
    /// The limits of fabric and ink.
    pub limits: Vec<LimitFinding>,
    /// The ink cures only where the fabric suffers.
    pub conflict: Option<CureConflict>,
    /// What to bear in mind.
    pub caveats: Vec<HeatCaveat>,
}

impl RunHeat {
    /// The limits that are passed.
    pub fn passed(&self) -> impl Iterator<Item = &LimitFinding> {
        self.limits.iter().filter(|finding| finding.state == LimitState::Passed)
    }
}

/// A measurement older than this is old.
const OLD: u64 = 90 * 86_400_000;
/// A measurement at a setting further off than this says little.
const ELSEWHERE: i32 = 25_000;
/// Dwells that differ by no more than this agree; the tolerance of the check.
const AGREE: u32 = 5_000;

/// The dryer a run goes through: the chosen one while the shop has it, else its only one, else its first.
pub(crate) fn dryer_of(shop: &Shop, run: RunId) -> Option<(Subject, &Heater, DryerChoice)> {
    let own = |id: Subject| shop.heat.heater(id).filter(|heater| heater.is_dryer());
    if let Some(id) = shop.heat.chosen_dryer(run) {
        if let Some(heater) = own(id) {
            return Some((id, heater, DryerChoice::Chosen));
        }
    }
    let dryers = || shop.heat.heaters().filter(|(_, heater)| heater.is_dryer());
    let (id, heater) = dryers().min_by_key(|(id, heater)| (heater.created, *id))?;
    let choice = if dryers().count() == 1 { DryerChoice::Only } else { DryerChoice::Assumed };
    Some((id, heater, choice))
}

fn sensor_of(heater: &Heater, setting: Option<Temperature>, now: u64) -> Option<SensorView> {
    let reading = *heater.reading()?;
    let off = setting.map_or(0, |setting| TemperatureDelta::between(reading.setting, setting).size().milli_celsius());
    Some(SensorView {
        reading,
        offset: reading.offset(),
        old: now.saturating_sub(reading.at) > OLD,
        elsewhere: off > ELSEWHERE,
    })
}

pub(crate) fn dwell_of(run: &Run, heater: Option<&Heater>) -> DwellView {
    let set = run.set_up.dwell;
    let from_belt = heater.and_then(|heater| dwell(heater.heated_length?, run.set_up.belt?));
    let off = |a: Seconds, b: Seconds| a.milliseconds().abs_diff(b.milliseconds());
    let differ = set.zip(from_belt).is_some_and(|(set, from_belt)| off(set, from_belt) > AGREE);
    DwellView { set, from_belt, differ }
}

/// What the heat does to a run, at a moment. None for a run that is not known.
pub fn run_heat(shop: &Shop, id: RunId, now: u64) -> Option<RunHeat> {
    let run = shop.run(id)?;
    let fabric = run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric);
    let used = dryer_of(shop, id);
    let heater = used.map(|(_, heater, _)| heater);
    let setting = run.set_up.dryer;
    let sensor = heater.and_then(|heater| sensor_of(heater, setting, now));
    let dwell = dwell_of(run, heater);
    let sheet = sheet_for(shop, &run.ink);
    let figures = sheet.map(|(_, sheet)| &sheet.figures);
    let heated = Heated {
        setting,
        offset: sensor.map(|sensor| sensor.offset),
        dwell: dwell.used(),
        passes: run.set_up.passes,
        heated_length: heater.and_then(|heater| heater.heated_length),
    };
    let reliable = sensor.is_some_and(|sensor| !sensor.old && !sensor.elsewhere);
    let limits = findings(shop, fabric, figures, heated.against_limits(reliable));
    let belt_beyond = run.set_up.belt.filter(|belt| heater.is_some_and(|heater| !heater.runs_at(*belt)));
    let mut cure = cure_on_paper(&heated, figures);
    if let CureOnPaper::TooShort { belt, .. } = &mut cure {
        // A belt the dryer does not run is no advice.
        *belt = belt.filter(|belt| heater.is_none_or(|heater| heater.runs_at(*belt)));
    }
    let conflict = figures.and_then(|figures| {
        let cure = figures.cure?;
        let at_cure = findings(shop, fabric, None, Some(cure));
        let limit = at_cure.into_iter().find(|finding| finding.state == LimitState::Passed)?;
        Some(CureConflict { cure, limit })
    });
    let hold = figures.and_then(|figures| figures.hold);
    let moves = limits.iter().any(|finding| finding.name == LimitName::DyeMigration);
    let raised =
        super::limits::fabric_limits(shop).iter().any(|limit| Some(limit.fabric) == fabric && limit.is_raised());
    let timed = matches!(cure, CureOnPaper::Reached { .. } | CureOnPaper::TooShort { .. });
    let is = |sensed: fn(&SensorView) -> bool| sensor.as_ref().is_some_and(sensed);
    let caveats = [
        (true, HeatCaveat::WashTestDecides),
        (timed, HeatCaveat::HeatUpCounted),
        (timed && run.set_up.passes > 1, HeatCaveat::PassesMayNotAdd),
        (setting.is_some() && sensor.is_none(), HeatCaveat::SensorNotMeasured),
        (is(|sensor| sensor.old), HeatCaveat::SensorOld),
        (is(|sensor| sensor.elsewhere), HeatCaveat::SensorElsewhere),
        (used.is_some_and(|(_, _, choice)| choice == DryerChoice::Assumed), HeatCaveat::DryerAssumed),
        (dwell.differ, HeatCaveat::DwellsDiffer),
        (belt_beyond.is_some(), HeatCaveat::BeltBeyondDryer),
        (moves && run.set_up.flash.is_some(), HeatCaveat::FlashHeatsToo),
        (raised, HeatCaveat::LimitRaised),
    ];
    Some(RunHeat {
        fabric,
        dryer: used.map(|(id, heater, choice)| DryerUsed { id, name: heater.name.clone(), choice }),
        setting,
        sensor,
        ink_temperature: heated.estimate(),
        dwell,
        passes: run.set_up.passes,
        passes_needed: hold.zip(dwell.used()).and_then(|(hold, dwell)| passes_for(hold, dwell)),
        belt_beyond,
        sheet: sheet.map(|(id, sheet)| (id, sheet.clone())),
        cure,
        limits,
        conflict,
        caveats: caveats.into_iter().filter(|(is, _)| *is).map(|(_, caveat)| caveat).collect(),
    })
}

/// What a garment of a run goes through: kept with each test, to see when another is due.
pub fn heat_settings(shop: &Shop, id: RunId) -> Option<HeatSettings> {
    let run = shop.run(id)?;
    let used = dryer_of(shop, id);
    let heater = used.map(|(_, heater, _)| heater);
    Some(HeatSettings {
        dryer: used.map(|(id, _, _)| id),
        temperature: run.set_up.dryer,
        offset: heater.and_then(Heater::reading).map(SensorReading::offset),
        dwell: dwell_of(run, heater).used(),
        passes: run.set_up.passes,
        flash: run.set_up.flash,
        sheet: sheet_for(shop, &run.ink).map(|(_, sheet)| sheet.figures),
    })
}
