//! Form for a climate reading from thermometer and hygrometer.

use crate::facts::HeatFact;
use crate::form::{Problems, collect_number, trim_number};
use crate::heat::ClimateReading;
use crate::units::{Temperature, TemperatureUnit, Units, parse_whole};

/// The form of a climate reading.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct ClimateForm {
    /// Air temperature in the shade, in the device's units.
    pub temperature: String,
    /// Relative humidity in percent.
    pub humidity: String,
}

impl ClimateForm {
    /// The form filled with a reading's values.
    pub fn of(reading: &ClimateReading, units: Units) -> Self {
        let temperature = trim_number((reading.temperature.in_units(units) * 10.0).round() / 10.0);
        Self { temperature, humidity: reading.humidity.to_string() }
    }

    /// The fact of the reading. Its subject must be a new id. Accepts 14 to 131 °F, or −10 to 55 °C.
    ///
    /// # Errors
    /// [`Problems`] by field: `temperature`, `humidity`.
    pub fn check(&self, units: Units, by: Option<String>) -> Result<HeatFact, Problems> {
        let mut problems = Problems::new();
        let (least, most) = match units.temperature {
            TemperatureUnit::Fahrenheit => (14.0, 131.0),
            TemperatureUnit::Celsius => (-10.0, 55.0),
        };
        let read = Temperature::parse(&self.temperature, least, most, units);
        let temperature = collect_number(&mut problems, "temperature", read);
        let humidity = collect_number(&mut problems, "humidity", parse_whole(&self.humidity, 0, 100));
        let (Some(temperature), Some(humidity)) = (temperature, humidity) else { return Err(problems) };
        Ok(HeatFact::RoomRead { temperature, humidity: humidity as u8, by })
    }
}
