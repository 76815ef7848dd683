//! Minutes of work and rest per hour in the heat.

use super::heat_index::HeatLevel;

/// Minutes of work and rest per hour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Schedule {
    /// Work as usual.
    Normal,
    /// Alternate work and rest.
    WorkRest {
        /// Minutes of work.
        work: u8,
        /// Minutes of rest.
        rest: u8,
    },
    /// The table does not hold in this air: more rest than this many minutes an hour, how much more is not published.
    MoreRest {
        /// Minutes of rest that the table gives for dry air; 0 if it gives none.
        least: u8,
    },
    /// The table gives no minutes at this heat: high risk of heat illness, postpone the work.
    Caution,
}

/// Why the table's minutes are not used as they are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RestReason {
    /// The air is damper than the table assumes.
    DampAir,
    /// The air is a little damper than the table assumes, and its schedules are kept as they are.
    DamperThanTable,
    /// The heat index is high, which asks for more rest than the table does.
    HighIndex,
    /// The heat index is very high to extreme, which asks to postpone the work.
    ExtremeIndex,
}

/// The table's schedules at one temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WorkRest {
    /// Light work.
    pub light: Schedule,
    /// Moderate work.
    pub moderate: Schedule,
    /// Heavy work.
    pub heavy: Schedule,
    /// Whether the air is below the table's range, which begins at 90 °F.
    pub below_table: bool,
    /// Whether the air is above the table's range, which ends at 112 °F.
    pub beyond_table: bool,
    /// Why a schedule differs from the table, or holds less well than in the table; `None` if neither.
    pub reason: Option<RestReason>,
}

/// Relative humidity that the table assumes, in percent.
pub(crate) const TABLE_HUMIDITY: u8 = 30;

impl WorkRest {
    /// The schedules in air of this relative humidity in percent, at this level of the heat index.
    ///
    /// Of the table and the level the more careful one counts, so that they never contradict each other. Above 30 %
    /// humidity the table's minutes do not hold from the moderate level on, and below it they are shown with that reason; no
    /// source for corrected minutes was
    /// found, so none are computed. The choice is our own; the levels' advice: OSHA, "Protective Measures to Take at
    /// Each Risk Level".
    pub fn in_air(self, humidity: u8, level: Option<HeatLevel>) -> Self {
        let damp = humidity > TABLE_HUMIDITY;
        let reason = match level {
            Some(HeatLevel::Extreme) => RestReason::ExtremeIndex,
            Some(HeatLevel::High | HeatLevel::Moderate) if damp => RestReason::DampAir,
            Some(HeatLevel::High) => RestReason::HighIndex,
            Some(HeatLevel::Lower) if damp && !self.below_table => {
                return Self { reason: Some(RestReason::DamperThanTable), ..self };
            }
            Some(HeatLevel::Moderate | HeatLevel::Lower) | None => return self,
        };
        let careful = |schedule: Schedule| match (schedule, reason) {
            (Schedule::Caution, _) | (_, RestReason::ExtremeIndex) => Schedule::Caution,
            (Schedule::WorkRest { rest, .. }, RestReason::DampAir) => Schedule::MoreRest { least: rest },
            (Schedule::Normal, _) => Schedule::MoreRest { least: 0 },
            (minutes @ (Schedule::WorkRest { .. } | Schedule::MoreRest { .. }), _) => minutes,
        };
        let adjusted = [self.light, self.moderate, self.heavy].map(careful);
        let [light, moderate, heavy] = adjusted;
        let differs = adjusted != [self.light, self.moderate, self.heavy];
        Self { light, moderate, heavy, reason: differs.then_some(reason), ..self }
    }
}

/// What the table assumes. Whatever does not hold calls for more rest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Assumption {
    /// Physically fit.
    Fit,
    /// Well rested.
    Rested,
    /// Fully hydrated.
    Hydrated,
    /// Under 40 years old.
    UnderForty,
    /// 30 % relative humidity.
    ThirtyPercentHumidity,
    /// Moving air.
    MovingAir,
}

impl Assumption {
    /// All of them.
    pub const ALL: [Self; 6] =
        [Self::Fit, Self::Rested, Self::Hydrated, Self::UnderForty, Self::ThirtyPercentHumidity, Self::MovingAir];
}

/// First temperature of the table in °F.
const FIRST: f64 = 90.0;
/// Minutes of work per hour from 90 to 112 °F: light, moderate, heavy. 60 means as usual, 0 caution.
const MINUTES: [[u8; 3]; 23] = [
    [60, 60, 60],
    [60, 60, 60],
    [60, 60, 60],
    [60, 60, 60],
    [60, 60, 60],
    [60, 60, 45],
    [60, 60, 45],
    [60, 60, 40],
    [60, 60, 35],
    [60, 60, 35],
    [60, 45, 30],
    [60, 40, 30],
    [60, 35, 25],
    [60, 30, 20],
    [60, 30, 20],
    [60, 25, 15],
    [45, 20, 0],
    [40, 15, 0],
    [35, 0, 0],
    [30, 0, 0],
    [15, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
];

/// Minutes of work and rest at an air temperature in degrees Fahrenheit, rounded up to a whole degree.
///
/// Below 90 °F the table is silent and work goes on as usual; above 112 °F all schedules are caution; both
/// cases are flagged. `None` if the number is not finite. Source: CDC/NIOSH, "Heat Stress: Work/Rest
/// Schedules" (from NIOSH 2016-106). It is for 30 % humidity;
/// see [`WorkRest::in_air`] and [`Assumption`].
///
/// ```
/// use lastpull_core::heat::{Schedule, work_rest};
///
/// let at_95 = work_rest(95.0).unwrap();
/// assert_eq!(at_95.moderate, Schedule::Normal);
/// assert_eq!(at_95.heavy, Schedule::WorkRest { work: 45, rest: 15 });
/// ```
pub fn work_rest(fahrenheit: f64) -> Option<WorkRest> {
    if !fahrenheit.is_finite() {
        return None;
    }
    // A temperature stored in Celsius converts back with a rounding error; ignore it.
    let row = (fahrenheit - 0.01).ceil() - FIRST;
    let below_table = row < 0.0;
    let found = if below_table { Some(&[60; 3]) } else { MINUTES.get(row as usize) };
    let [light, moderate, heavy] = found.copied().unwrap_or([0; 3]).map(|work| match work {
        60 => Schedule::Normal,
        0 => Schedule::Caution,
        work => Schedule::WorkRest { work, rest: 60 - work },
    });
    Some(WorkRest { light, moderate, heavy, below_table, beyond_table: found.is_none(), reason: None })
}
