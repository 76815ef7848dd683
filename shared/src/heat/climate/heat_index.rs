//! Heat index of the US National Weather Service: how hot the air feels.

use crate::units::{Temperature, TemperatureUnit, Units};

/// How hot the air feels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatIndex {
    /// In degrees Fahrenheit.
    pub fahrenheit: f64,
    /// Whether air or index is beyond the published table, which ends at 110 °F of air and an index of 137
    /// °F. The number is then a sign of extreme heat, not a measurement.
    pub beyond_table: bool,
}

impl HeatIndex {
    /// The index in whole degrees Fahrenheit, as the table and the guide's levels are given.
    fn whole(self) -> f64 {
        Temperature::from_fahrenheit(self.fahrenheit).fahrenheit().round()
    }

    /// The index as it is shown: in whole degrees Fahrenheit, or those in tenths of a degree Celsius. A whole degree
    /// Celsius would be too coarse: 102 °F and 103 °F, which are of different levels, are both 39 °C.
    pub fn shown(self, units: Units) -> f64 {
        match units.temperature {
            TemperatureUnit::Fahrenheit => self.whole(),
            TemperatureUnit::Celsius => (Temperature::from_fahrenheit(self.whole()).celsius() * 10.0).round() / 10.0,
        }
    }

    /// The risk level of the index as it is shown.
    pub fn level(self) -> HeatLevel {
        HeatLevel::of(self.whole())
    }
}

/// Coolest air for which an index is computed, in °F; below it heat is no concern.
const COOLEST: f64 = 40.0;
/// Hottest air for which an index is computed, in °F; above it the thermometer is in the sun or the dryer.
const HOTTEST: f64 = 130.0;

/// Heat index for an air temperature in degrees Fahrenheit and a relative humidity in percent, in the shade,
/// in light wind and away from radiant heat.
///
/// `None` outside 40 to 130 °F or 0 to 100 %. The regression has an error of 1.3 °F. Source: NWS Weather
/// Prediction Center, "The Heat Index Equation" (L. P. Rothfusz, 1990), with its adjustments for dry and damp
/// air; the range of the published table: NWS Tulsa, "Heat Index Information".
///
/// ```
/// use lastpull_core::heat::heat_index;
///
/// // Published table: 90 °F at 65 % feels like 103 °F.
/// let index = heat_index(90.0, 65.0).unwrap();
/// assert!((index.fahrenheit - 103.0).abs() < 1.3);
/// assert!(heat_index(32.0, 50.0).is_none(), "degrees Fahrenheit, and 40 at least");
/// ```
pub fn heat_index(fahrenheit: f64, humidity: f64) -> Option<HeatIndex> {
    if !(COOLEST..=HOTTEST).contains(&fahrenheit) || !(0.0..=100.0).contains(&humidity) {
        return None;
    }
    let (t, r) = (fahrenheit, humidity);
    let simple = 0.5 * (t + 61.0 + 1.2 * (t - 68.0) + 0.094 * r);
    let averaged = f64::midpoint(simple, t);
    let felt = if averaged < 80.0 { averaged } else { regression(t, r) + adjustment(t, r) };
    Some(HeatIndex { fahrenheit: felt, beyond_table: t > 110.0 || felt > 137.0 })
}

fn regression(t: f64, r: f64) -> f64 {
    -42.379 + 2.049_015_23 * t + 10.143_331_27 * r - 0.224_755_41 * t * r - 0.006_837_83 * t * t - 0.054_817_17 * r * r
        + 0.001_228_74 * t * t * r
        + 0.000_852_82 * t * r * r
        - 0.000_001_99 * t * t * r * r
}

fn adjustment(t: f64, r: f64) -> f64 {
    if r < 13.0 && (80.0..=112.0).contains(&t) {
        -((13.0 - r) / 4.0) * ((17.0 - (t - 95.0).abs()) / 17.0).sqrt()
    } else if r > 85.0 && (80.0..=87.0).contains(&t) {
        ((r - 85.0) / 10.0) * ((87.0 - t) / 5.0)
    } else {
        0.0
    }
}

/// Risk level of a heat index. Source: OSHA, "Protective Measures to Take at Each Risk Level".
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HeatLevel {
    /// Below 91 °F.
    Lower,
    /// 91 to 103 °F.
    Moderate,
    /// 103 to 115 °F.
    High,
    /// 115 °F and more.
    Extreme,
}

impl HeatLevel {
    /// The level for an index in degrees Fahrenheit.
    pub fn of(fahrenheit: f64) -> Self {
        match fahrenheit {
            lower if lower < 91.0 => Self::Lower,
            moderate if moderate < 103.0 => Self::Moderate,
            high if high < 115.0 => Self::High,
            _ => Self::Extreme,
        }
    }
}

/// Published advice on drinking water. A cup is 8 fluid ounces, about a quarter of a litre.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Water {
    /// No figure below an index of 91 °F: drink before thirst comes (CDC/NIOSH, "Heat Stress: Hydration").
    BeforeThirst,
    /// About four cups an hour at 91 to 103 °F (OSHA, "Using the Heat Index: A Guide for Employers").
    FourCupsAnHour,
    /// That figure ends below this index: at least as much, and rest counts more than water.
    PastTheFigure,
}

impl Water {
    /// Cups an hour that OSHA advises at 91 to 103 °F.
    pub const CUPS_AN_HOUR: u32 = 4;
    /// Cups an hour not to exceed, from 48 fluid ounces: more thins the salt in the blood (CDC/NIOSH, "Heat Stress:
    /// Hydration", 2017-126).
    pub const MOST_CUPS_AN_HOUR: u32 = 6;

    /// The advice for a level.
    pub fn at(level: HeatLevel) -> Self {
        match level {
            HeatLevel::Lower => Self::BeforeThirst,
            HeatLevel::Moderate => Self::FourCupsAnHour,
            HeatLevel::High | HeatLevel::Extreme => Self::PastTheFigure,
        }
    }
}
