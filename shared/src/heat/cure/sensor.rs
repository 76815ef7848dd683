//! A dryer's measured error: which of its measurements a run relies on, and which may only make it more careful.

use super::on_paper::HeatInputs;
use crate::facts::SensorMethod;
use crate::heat::{Heater, SensorReading};
use crate::time::{Millis, WallTime};
use crate::units::{Temperature, TemperatureDelta};

/// A dryer's measurement, with its reliability for a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SensorView {
    /// The measurement.
    pub reading: SensorReading,
    /// How much hotter (positive) or cooler (negative) the print is than the setting.
    pub offset: TemperatureDelta,
    /// Whether it was measured more than 90 days ago. Our own.
    pub old: bool,
    /// Whether it was measured at a setting more than 25 °C from the run's. Our own.
    pub far_from_setting: bool,
    /// Whether it was read with an infrared thermometer at the exit, which misses the hottest moment.
    pub infrared: bool,
}

impl SensorView {
    /// Whether a limit may rely on it: taken with probe or strip, not long ago, near this setting.
    pub fn is_reliable(&self) -> bool {
        !(self.old || self.far_from_setting || self.infrared)
    }

    /// Whether it was taken with probe or strip near this setting, however long ago.
    fn is_of_this_setting(&self) -> bool {
        !(self.far_from_setting || self.infrared)
    }
}

/// What a dryer's measurements say of the print's temperature at one setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct DryerError {
    /// The measurement the ink's temperature is estimated from: the latest reliable one, else the latest.
    pub sensor: SensorView,
    /// The offset that limits are compared with. Never below that of `sensor`.
    pub for_limits: TemperatureDelta,
    /// Whether a less reliable reading than `sensor` is hotter and therefore counts for limits.
    pub is_raised: bool,
    /// Whether the latest reading is by infrared.
    pub latest_is_infrared: bool,
}

/// A measurement older than this is old. Our own.
const STALE_AFTER: Millis = Millis::from_days(90);
/// A measurement further from the setting than this, in milli-°C, is not relied on: 25 °C. Our own.
const FAR_FROM_SETTING: i32 = 25_000;

/// What a dryer's measurements say at a setting, as of `now`. `None` if it was never measured.
///
/// The latest reading by probe or strip near the setting displaces those before it. A reading after it that is by infrared
/// or far from the setting may raise the offset for limits and never lower it, since it may have missed the hottest moment. If
/// no reading is reliable, the bare setting counts too. The caution is our own.
pub(crate) fn dryer_error(heater: &Heater, setting: Option<Temperature>, now: WallTime) -> Option<DryerError> {
    let view = |reading: &SensorReading| {
        let between = |setting| TemperatureDelta::between(reading.setting, setting).magnitude().milli_celsius();
        SensorView {
            reading: *reading,
            offset: reading.offset(),
            old: now.since(reading.at) > STALE_AFTER,
            far_from_setting: setting.map_or(0, between) > FAR_FROM_SETTING,
            infrared: reading.method == SensorMethod::Infrared,
        }
    };
    let readings: Vec<SensorView> = heater.readings.iter().map(view).collect();
    let latest = readings.last()?;
    let of_this_setting = readings.iter().rposition(SensorView::is_of_this_setting);
    let counted = &readings[of_this_setting.unwrap_or(0)..];
    let reliable = counted.first().filter(|reading| reading.is_reliable());
    let sensor = *reliable.unwrap_or(latest);
    let bare = reliable.is_none().then_some(TemperatureDelta::default());
    let hottest = counted.iter().map(|reading| reading.offset).max().unwrap_or(sensor.offset);
    Some(DryerError {
        for_limits: bare.map_or(hottest, |bare| bare.max(hottest)),
        is_raised: hottest > sensor.offset,
        latest_is_infrared: latest.infrared,
        sensor,
    })
}

/// The print temperature assumed for a setting when it is compared with limits: corrected by the dryer's measurements.
pub(crate) fn set_temperature_for_limits(
    heater: Option<&Heater>,
    setting: Option<Temperature>,
    now: WallTime,
) -> Option<Temperature> {
    let error = heater.and_then(|heater| dryer_error(heater, setting, now));
    let heated =
        HeatInputs { setting, offset_for_limits: error.map(|error| error.for_limits), ..HeatInputs::default() };
    heated.temperature_for_limits()
}
