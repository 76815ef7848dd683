//! Whether an ink cures by its data sheet, and whether its fabric withstands the heat.

use super::dwell::{fastest_belt, passes_for};
use super::limits::{LimitOrigin, fabric_limit};
use crate::facts::{Fabric, LimitKind, SheetFigures};
use crate::shop::Shop;
use crate::units::{BeltSpeed, Length, Seconds, Temperature, TemperatureDelta};

/// An input that is missing, so that nothing can be said about the cure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MissingInput {
    /// The run's dryer setting.
    Setting,
    /// The measured difference between the dryer's setting and the print's temperature.
    Sensor,
    /// The dwell: neither set, nor computable from belt speed and heated length.
    Dwell,
    /// The ink's data sheet.
    Sheet,
    /// The cure temperature on the sheet.
    CureTemperature,
    /// The hold time on the sheet.
    Hold,
}

/// Whether the computed figures reach the sheet's cure. Never a promise: the wash test decides.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CureEstimate {
    /// Not known because these inputs are missing.
    Unknown(Vec<MissingInput>),
    /// The ink stays this far below its cure temperature.
    TooCool(TemperatureDelta),
    /// The ink is hot enough, but not for long enough.
    TooShort {
        /// Dwell summed over all passes.
        has: Seconds,
        /// Hold time of the sheet.
        needs: Seconds,
        /// Number of passes that would reach the hold time.
        passes: u32,
        /// The fastest belt speed that would reach it in the passes that are set; `None` if the heated length
        /// is unknown.
        belt: Option<BeltSpeed>,
    },
    /// Temperature and time meet the sheet.
    Reached {
        /// Dwell beyond the sheet's hold time.
        spare: Seconds,
    },
}

/// The inputs that determine the heat a print receives.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct HeatInputs {
    /// The dryer's setting.
    pub setting: Option<Temperature>,
    /// Measured difference between the print's temperature and the setting, if known.
    pub offset: Option<TemperatureDelta>,
    /// The offset to compare with limits, which is never below `offset`.
    pub offset_for_limits: Option<TemperatureDelta>,
    /// Dwell: time in the heat for one pass.
    pub dwell: Option<Seconds>,
    /// Passes through the dryer.
    pub passes: u8,
    /// Heated length of the dryer.
    pub heated_length: Option<Length>,
    /// Temperature measured at the print for this run, if any.
    pub measured: Option<Temperature>,
    /// Temperature read at the exit by infrared for this run, if any: for limits only.
    pub infrared: Option<Temperature>,
}

impl HeatInputs {
    /// The setting plus the measured offset, or the bare setting if the dryer was never measured.
    fn estimate(&self) -> Option<Temperature> {
        self.setting.map(|setting| setting.saturating_add(self.offset.unwrap_or_default()))
    }

    /// Estimated ink temperature: as measured for this run, else the setting plus the measured offset, or the
    /// bare setting if the dryer was never measured.
    pub fn ink_temperature(&self) -> Option<Temperature> {
        self.measured.or_else(|| self.estimate())
    }

    /// The temperature to compare with the cure: the cooler of the estimate and what was measured for this run.
    /// The caution is our own.
    pub fn temperature_for_cure(&self) -> Option<Temperature> {
        let estimate = self.estimate();
        estimate.zip(self.measured).map(|(estimate, measured)| estimate.min(measured)).or(estimate)
    }

    /// The temperature to compare with limits: the setting plus the offset for limits, or the bare setting if the dryer was
    /// never measured; never less than what was measured or read for this run. The caution is our own.
    pub fn temperature_for_limits(&self) -> Option<Temperature> {
        let hotter = self.setting?.saturating_add(self.offset_for_limits.unwrap_or_default());
        [self.measured, self.infrared].into_iter().flatten().chain([hotter]).max()
    }
}

/// Compares a print's heat with the ink's sheet, as far as the inputs are known.
///
/// The whole dwell is counted as time at temperature, which it is not: the print heats up first, and water
/// must leave a water-based ink before it cures. An ink that is too cool is reported as such even if other
/// inputs are missing. Source: the sheet the shop entered.
pub fn estimate_cure(heated: &HeatInputs, sheet: Option<&SheetFigures>) -> CureEstimate {
    let estimate = heated.temperature_for_cure();
    let cure = sheet.and_then(|sheet| sheet.cure);
    if let (Some(estimate), Some(cure)) = (estimate, cure) {
        if estimate < cure {
            return CureEstimate::TooCool(TemperatureDelta::between(estimate, cure));
        }
    }
    let hold = sheet.and_then(|sheet| sheet.hold);
    let unknown = [
        (heated.setting.is_none(), MissingInput::Setting),
        (heated.offset.is_none(), MissingInput::Sensor),
        (heated.dwell.is_none(), MissingInput::Dwell),
        (sheet.is_none(), MissingInput::Sheet),
        (sheet.is_some() && cure.is_none(), MissingInput::CureTemperature),
        (sheet.is_some() && hold.is_none(), MissingInput::Hold),
    ];
    let missing: Vec<MissingInput> = unknown.into_iter().filter(|(is, _)| *is).map(|(_, what)| what).collect();
    let (Some(dwell), Some(needs), true) = (heated.dwell, hold, missing.is_empty()) else {
        return CureEstimate::Unknown(missing);
    };
    let passes = u32::from(heated.passes.max(1));
    let has = Seconds::from_milliseconds(dwell.milliseconds().saturating_mul(passes));
    let wanted = passes_for(needs, dwell).unwrap_or(u32::MAX);
    if wanted > passes {
        let one_pass = Seconds::from_milliseconds(needs.milliseconds().div_ceil(passes));
        let belt = heated.heated_length.and_then(|length| fastest_belt(length, one_pass));
        return CureEstimate::TooShort { has, needs, passes: wanted, belt };
    }
    CureEstimate::Reached { spare: Seconds::from_milliseconds(has.milliseconds().saturating_sub(needs.milliseconds())) }
}

/// The limit that is checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitName {
    /// The fabric's dye migrates into the print.
    DyeMigration,
    /// The fabric scorches.
    Scorch,
    /// The ink's maximum temperature by its sheet.
    InkHighest,
}

/// A temperature compared with a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitState {
    /// The temperature is not known, or whether the limit counts for this fabric.
    Unknown,
    /// More than 5 °C below.
    Clear,
    /// At most 5 °C below, which is as far as a dryer's temperature varies. Our own.
    Close,
    /// At the limit or above.
    Exceeded,
}

/// The result of checking a temperature against one limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LimitCheck {
    /// The limit that was checked.
    pub name: LimitName,
    /// Temperature of the limit.
    pub limit: Temperature,
    /// Where that temperature comes from.
    pub origin: LimitOrigin,
    /// Result of the comparison.
    pub state: LimitState,
    /// How far above (positive) or below (negative) the limit; `None` if the temperature is unknown.
    pub over: Option<TemperatureDelta>,
}

/// A temperature no further below a limit than this is close to it, in milli-°C.
const CLOSE_MARGIN: i32 = 5_000;

/// Checks a print's temperature against every limit of the fabric and the ink.
pub(crate) fn check_limits(
    shop: &Shop,
    fabric: Option<Fabric>,
    sheet: Option<&SheetFigures>,
    print: Option<Temperature>,
) -> Vec<LimitCheck> {
    let of_fabric = |kind, name| {
        let limit = fabric_limit(shop, fabric?, kind)?;
        Some((name, limit.temperature, limit.origin))
    };
    let highest = sheet.and_then(|sheet| sheet.highest);
    [
        of_fabric(LimitKind::DyeMigration, LimitName::DyeMigration),
        of_fabric(LimitKind::Scorch, LimitName::Scorch),
        highest.map(|highest| (LimitName::InkHighest, highest, LimitOrigin::InkSheet)),
    ]
    .into_iter()
    .flatten()
    .map(|(name, limit, origin)| {
        let over = print.map(|print| TemperatureDelta::between(limit, print));
        let state = match over.map(TemperatureDelta::milli_celsius) {
            None => LimitState::Unknown,
            // Whether it is exceeded depends on a fibre that nobody entered.
            Some(over) if over >= 0 && origin == LimitOrigin::IfPolyester => LimitState::Unknown,
            Some(over) if over >= 0 => LimitState::Exceeded,
            Some(over) if over >= -CLOSE_MARGIN => LimitState::Close,
            Some(_) => LimitState::Clear,
        };
        LimitCheck { name, limit, origin, state, over }
    })
    .collect()
}
