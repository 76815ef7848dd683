//! The heat a run's garments receive: ink temperature, dwell, cure and limits.

use super::dryer_choice::{DryerChoice, dryer_of};
use super::dwell::{dwell, passes_for};
use super::limits::LimitOrigin;
use super::measured::{measured_at_dryer, measured_dwell};
use super::on_paper::{CureEstimate, HeatInputs, LimitCheck, LimitName, LimitState, check_limits, estimate_cure};
use super::sensor::{DryerError, SensorView, dryer_error};
use super::sheets::sheet_for;
use crate::facts::{Fabric, HeatSettings};
use crate::heat::{Heater, InkSheet, SensorReading};
use crate::ids::{RunId, Subject};
use crate::run::Run;
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::{BeltSpeed, Seconds, Temperature};

/// The dryer a run uses.
#[derive(Clone, Debug, PartialEq)]
pub struct DryerUsed {
    /// Id of the dryer.
    pub id: Subject,
    /// Name in the shop.
    pub name: String,
    /// Why it is used.
    pub choice: DryerChoice,
}

/// Dwell of one pass, as set and as computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct DwellView {
    /// As set for the run.
    pub set: Option<Seconds>,
    /// Computed from belt speed and heated length.
    pub from_belt: Option<Seconds>,
    /// Whether the two differ by more than 5 s.
    pub differ: bool,
    /// The shorter of what was measured for this run, by the clock or by the belt's speed.
    pub measured: Option<Seconds>,
}

impl DwellView {
    /// The dwell to compute with: the shortest of them, however little they differ, since a cure must not
    /// depend on a longer one.
    pub fn used(&self) -> Option<Seconds> {
        [self.set, self.from_belt, self.measured].into_iter().flatten().min()
    }
}

/// The ink cures only at a temperature that exceeds a limit: no setting suits both.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CureConflict {
    /// The ink's cure temperature.
    pub cure: Temperature,
    /// The limit exceeded at that temperature.
    pub limit: LimitCheck,
}

/// A caveat to show with the figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeatCaveat {
    /// The wash test decides, not these figures. Always shown.
    WashTestDecides,
    /// Heating up and drying are counted as time at temperature.
    HeatUpCounted,
    /// Whether two passes add up depends on the ink's sheet: the print cools between them.
    PassesMayNotAdd,
    /// The dryer's error was never measured: the ink temperature is the bare setting.
    SensorNotMeasured,
    /// The measurement is older than 90 days.
    SensorOld,
    /// The measurement was taken more than 25 °C from this setting.
    SensorFarFromSetting,
    /// The latest measurement is an infrared reading at the exit: it may hold a fabric, and never clears it.
    SensorInfrared,
    /// A less reliable reading was hotter than the one the ink's temperature is estimated from: for limits it counts.
    SensorHotterReading,
    /// The canvas is taken for cotton; if it is polyester, its dye migrates at this heat.
    CanvasMayBePolyester,
    /// The shop has several dryers and none was chosen.
    DryerAssumed,
    /// The dwell that is set and the computed one differ.
    DwellsDiffer,
    /// The belt speed is outside the dryer's range.
    BeltBeyondDryer,
    /// The flash heats this fabric too, and its dye may migrate there.
    FlashHeatsToo,
    /// The shop raised a limit above the cautious default.
    LimitRaised,
}

/// The heat a run's garments receive.
#[derive(Clone, Debug, PartialEq)]
pub struct RunHeat {
    /// The fabric; `None` until the lot is known.
    pub fabric: Option<Fabric>,
    /// The dryer; `None` if the shop has none.
    pub dryer: Option<DryerUsed>,
    /// The dryer's setting.
    pub setting: Option<Temperature>,
    /// The dryer's measured error, if any: the latest reliable measurement, else the latest.
    pub sensor: Option<SensorView>,
    /// The temperature measured for this run's dryer check, if any.
    pub measured: Option<Temperature>,
    /// Ink temperature: setting plus error, or the bare setting if the error was not measured.
    pub ink_temperature: Option<Temperature>,
    /// Dwell of one pass.
    pub dwell: DwellView,
    /// Passes that are set.
    pub passes: u8,
    /// Passes needed for the sheet's hold time; `None` if unknown.
    pub passes_needed: Option<u32>,
    /// The belt speed, if it is outside the dryer's range.
    pub belt_beyond: Option<BeltSpeed>,
    /// The ink's sheet, if any.
    pub sheet: Option<(Subject, InkSheet)>,
    /// Whether the figures reach the sheet's cure.
    pub cure: CureEstimate,
    /// Limits of fabric and ink.
    pub limits: Vec<LimitCheck>,
    /// Set if the ink cures only at a temperature that exceeds a limit.
    pub conflict: Option<CureConflict>,
    /// Caveats to show with the figures.
    pub caveats: Vec<HeatCaveat>,
}

impl RunHeat {
    /// The limits that are exceeded.
    pub fn exceeded_limits(&self) -> impl Iterator<Item = &LimitCheck> {
        self.limits.iter().filter(|finding| finding.state == LimitState::Exceeded)
    }
}

/// Dwells that differ by no more than this many milliseconds agree; the tolerance of the check.
const DWELL_TOLERANCE: u32 = 5_000;

/// The dwell that is set for a run, and the one that its belt speed gives.
pub(crate) fn dwell_of(run: &Run, heater: Option<&Heater>) -> DwellView {
    let set = run.set_up.dwell;
    let from_belt = heater.and_then(|heater| dwell(heater.heated_length?, run.set_up.belt?));
    let off = |a: Seconds, b: Seconds| a.milliseconds().abs_diff(b.milliseconds());
    let differ = set.zip(from_belt).is_some_and(|(set, from_belt)| off(set, from_belt) > DWELL_TOLERANCE);
    DwellView { set, from_belt, differ, measured: None }
}

/// The heat a run's garments receive, as of `now`. `None` if the run is unknown.
pub fn run_heat(shop: &Shop, id: RunId, now: WallTime) -> Option<RunHeat> {
    let run = shop.run(id)?;
    let fabric = run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric);
    let used = dryer_of(shop, id);
    let heater = used.map(|(_, heater, _)| heater);
    let setting = run.set_up.dryer;
    let error = heater.and_then(|heater| dryer_error(heater, setting, now));
    let sensor = error.map(|error| error.sensor);
    let dwell = DwellView { measured: measured_dwell(shop, id, run), ..dwell_of(run, heater) };
    let sheet = sheet_for(shop, &run.ink);
    let figures = sheet.map(|(_, sheet)| &sheet.figures);
    let at_dryer = measured_at_dryer(shop, id, run);
    let heated = HeatInputs {
        setting,
        offset: sensor.map(|sensor| sensor.offset),
        offset_for_limits: error.map(|error| error.for_limits),
        dwell: dwell.used(),
        passes: run.set_up.passes,
        heated_length: heater.and_then(|heater| heater.heated_length),
        measured: at_dryer.measured,
        infrared: at_dryer.infrared,
    };
    let limits = check_limits(shop, fabric, figures, heated.temperature_for_limits());
    let belt_beyond = run.set_up.belt.filter(|belt| heater.is_some_and(|heater| !heater.accepts_speed(*belt)));
    let mut cure = estimate_cure(&heated, figures);
    if let CureEstimate::TooShort { belt, .. } = &mut cure {
        // A belt speed outside the dryer's range is no advice.
        *belt = belt.filter(|belt| heater.is_none_or(|heater| heater.accepts_speed(*belt)));
    }
    let conflict = figures.and_then(|figures| {
        let cure = figures.cure?;
        let at_cure = check_limits(shop, fabric, None, Some(cure));
        let limit = at_cure.into_iter().find(|finding| finding.state == LimitState::Exceeded)?;
        Some(CureConflict { cure, limit })
    });
    let hold = figures.and_then(|figures| figures.hold);
    let if_polyester = |finding: &&LimitCheck| finding.origin == LimitOrigin::IfPolyester;
    let canvas = limits.iter().find(if_polyester).is_some_and(|finding| finding.state == LimitState::Unknown);
    let moves = limits.iter().any(|finding| finding.name == LimitName::DyeMigration && !if_polyester(&finding));
    let raised =
        super::limits::fabric_limits(shop).iter().any(|limit| Some(limit.fabric) == fabric && limit.is_raised());
    let timed = matches!(cure, CureEstimate::Reached { .. } | CureEstimate::TooShort { .. });
    let is = |so: fn(&SensorView) -> bool| sensor.as_ref().is_some_and(so);
    let of_all = |so: fn(&DryerError) -> bool| error.as_ref().is_some_and(so);
    let caveats = [
        (true, HeatCaveat::WashTestDecides),
        (timed, HeatCaveat::HeatUpCounted),
        (timed && run.set_up.passes > 1, HeatCaveat::PassesMayNotAdd),
        (setting.is_some() && sensor.is_none(), HeatCaveat::SensorNotMeasured),
        (is(|sensor| sensor.old), HeatCaveat::SensorOld),
        (is(|sensor| sensor.far_from_setting), HeatCaveat::SensorFarFromSetting),
        (of_all(|error| error.latest_is_infrared), HeatCaveat::SensorInfrared),
        (of_all(|error| error.is_raised), HeatCaveat::SensorHotterReading),
        (used.is_some_and(|(_, _, choice)| choice == DryerChoice::Assumed), HeatCaveat::DryerAssumed),
        (dwell.differ, HeatCaveat::DwellsDiffer),
        (belt_beyond.is_some(), HeatCaveat::BeltBeyondDryer),
        (moves && run.set_up.flash.is_some(), HeatCaveat::FlashHeatsToo),
        (raised, HeatCaveat::LimitRaised),
        (canvas && heated.setting.is_some(), HeatCaveat::CanvasMayBePolyester),
    ];
    Some(RunHeat {
        fabric,
        dryer: used.map(|(id, heater, choice)| DryerUsed { id, name: heater.name.clone(), choice }),
        setting,
        sensor,
        measured: at_dryer.measured,
        ink_temperature: heated.ink_temperature(),
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

/// The heat settings a run's garments go through. Stored with each test, to detect when another is due.
/// `None` if the run is unknown.
pub fn heat_settings(shop: &Shop, id: RunId) -> Option<HeatSettings> {
    let run = shop.run(id)?;
    let used = dryer_of(shop, id);
    let heater = used.map(|(_, heater, _)| heater);
    Some(HeatSettings {
        dryer: used.map(|(id, _, _)| id),
        temperature: run.set_up.dryer,
        offset: heater.and_then(Heater::latest_reading).map(SensorReading::offset),
        dwell: dwell_of(run, heater).used(),
        passes: run.set_up.passes,
        flash: run.set_up.flash,
        sheet: sheet_for(shop, &run.ink).map(|(_, sheet)| sheet.figures),
    })
}
