//! Whether a print is cured on paper, and whether its fabric bears the heat.

use super::dwell::{fastest_belt, passes_for};
use super::limits::{LimitOrigin, fabric_limit};
use crate::facts::{Fabric, LimitKind, SheetFigures};
use crate::shop::Shop;
use crate::units::{BeltSpeed, Length, Seconds, Temperature, TemperatureDelta};

/// What is not known, so that nothing can be said of the cure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// The run's dryer setting.
    Setting,
    /// How far the dryer's setting lies from what reaches the print.
    Sensor,
    /// Time in the heat: neither set, nor belt and heated length known.
    Dwell,
    /// The ink's sheet.
    Sheet,
    /// The cure temperature on that sheet.
    CureTemperature,
    /// The hold time on that sheet.
    Hold,
}

/// Whether a cure is reached on paper. Never a promise: the wash test decides.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CureOnPaper {
    /// Nothing can be said until these are known.
    Unknown(Vec<Missing>),
    /// The ink does not get hot enough, by so much.
    TooCool(TemperatureDelta),
    /// It is hot enough, but not for long enough.
    TooShort {
        /// Time in the heat over all passes.
        has: Seconds,
        /// Time the sheet asks for.
        needs: Seconds,
        /// Passes that would add up to it.
        passes: u32,
        /// The fastest belt that would do in the passes there are, where the heated length is known.
        belt: Option<BeltSpeed>,
    },
    /// Temperature and time are those of the sheet, with so much time to spare.
    Reached {
        /// Time in the heat beyond what the sheet asks for.
        spare: Seconds,
    },
}

/// What the heat of a print rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct Heated {
    /// The dryer's setting.
    pub setting: Option<Temperature>,
    /// How far what reaches the print lies from it, where measured.
    pub offset: Option<TemperatureDelta>,
    /// Time in the heat, one pass.
    pub dwell: Option<Seconds>,
    /// Passes.
    pub passes: u8,
    /// Heated length of the dryer.
    pub heated_length: Option<Length>,
}

impl Heated {
    /// The ink's temperature: setting plus the sensor's offset. The bare setting where nothing was
    /// measured.
    pub fn estimate(&self) -> Option<Temperature> {
        self.setting.map(|setting| setting.saturating_add(self.offset.unwrap_or_default()))
    }

    /// What to hold against a limit: the estimate, but where the measurement cannot be relied on, the
    /// hotter of it and the setting. Caution, our own.
    pub fn against_limits(&self, reliable: bool) -> Option<Temperature> {
        let estimate = self.estimate()?;
        Some(if reliable { estimate } else { estimate.max(self.setting?) })
    }
}

/// Whether the ink is hot enough for long enough by its sheet, as far as that can be said.
///
/// The whole dwell is taken as time at temperature, which it is not: the print heats up first, and water
/// must leave a water-based ink before it cures. An ink that is too cool is called so even where other
/// things are missing. Source: the sheet the shop typed in.
pub fn cure_on_paper(heated: &Heated, sheet: Option<&SheetFigures>) -> CureOnPaper {
    let estimate = heated.estimate();
    let cure = sheet.and_then(|sheet| sheet.cure);
    if let (Some(estimate), Some(cure)) = (estimate, cure) {
        if estimate < cure {
            return CureOnPaper::TooCool(TemperatureDelta::between(estimate, cure));
        }
    }
    let hold = sheet.and_then(|sheet| sheet.hold);
    let unknown = [
        (heated.setting.is_none(), Missing::Setting),
        (heated.offset.is_none(), Missing::Sensor),
        (heated.dwell.is_none(), Missing::Dwell),
        (sheet.is_none(), Missing::Sheet),
        (sheet.is_some() && cure.is_none(), Missing::CureTemperature),
        (sheet.is_some() && hold.is_none(), Missing::Hold),
    ];
    let missing: Vec<Missing> = unknown.into_iter().filter(|(is, _)| *is).map(|(_, what)| what).collect();
    let (Some(dwell), Some(needs), true) = (heated.dwell, hold, missing.is_empty()) else {
        return CureOnPaper::Unknown(missing);
    };
    let passes = u32::from(heated.passes.max(1));
    let has = Seconds::from_milliseconds(dwell.milliseconds().saturating_mul(passes));
    let wanted = passes_for(needs, dwell).unwrap_or(u32::MAX);
    if wanted > passes {
        let one_pass = Seconds::from_milliseconds(needs.milliseconds().div_ceil(passes));
        let belt = heated.heated_length.and_then(|length| fastest_belt(length, one_pass));
        return CureOnPaper::TooShort { has, needs, passes: wanted, belt };
    }
    CureOnPaper::Reached { spare: Seconds::from_milliseconds(has.milliseconds().saturating_sub(needs.milliseconds())) }
}

/// Which limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitName {
    /// The fabric's dye moves.
    DyeMigration,
    /// The fabric scorches.
    Scorch,
    /// The highest temperature the ink bears by its sheet.
    InkHighest,
}

/// Where a temperature lies against a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitState {
    /// The temperature is not known.
    Unknown,
    /// Well below.
    Clear,
    /// Below, by no more than a dryer wanders: 5 °C. Our own.
    Close,
    /// At or above.
    Passed,
}

/// A temperature against a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LimitFinding {
    /// Which limit.
    pub name: LimitName,
    /// Where it lies.
    pub limit: Temperature,
    /// Where that figure comes from.
    pub origin: LimitOrigin,
    /// How the temperature stands against it.
    pub state: LimitState,
    /// How far above (positive) or below (negative) the limit it is.
    pub over: Option<TemperatureDelta>,
}

/// How far below a limit is close to it.
const CLOSE: i32 = 5_000;

/// A temperature of the print against every limit of the fabric and of the ink.
pub(crate) fn findings(
    shop: &Shop,
    fabric: Option<Fabric>,
    sheet: Option<&SheetFigures>,
    print: Option<Temperature>,
) -> Vec<LimitFinding> {
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
            Some(over) if over >= 0 => LimitState::Passed,
            Some(over) if over >= -CLOSE => LimitState::Close,
            Some(_) => LimitState::Clear,
        };
        LimitFinding { name, limit, origin, state, over }
    })
    .collect()
}
