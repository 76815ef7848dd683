//! Parsing and formatting shared by the heat forms.

use crate::facts::Flash;
use crate::form::{Problems, collect_optional, trim_number};
use crate::units::{BeltSpeed, Length, Seconds, Temperature, Units};

/// A temperature as form text; empty for `None`.
pub(crate) fn temperature_text(temperature: Option<Temperature>, units: Units) -> String {
    temperature.map(|temperature| trim_number(temperature.in_units(units))).unwrap_or_default()
}

/// A time in seconds as form text; empty for `None`.
pub(crate) fn seconds_text(time: Option<Seconds>) -> String {
    time.map(|time| trim_number(time.seconds())).unwrap_or_default()
}

/// A belt speed as form text; empty for `None`.
pub(crate) fn belt_text(speed: Option<BeltSpeed>, units: Units) -> String {
    speed.map(|speed| speed.text(units)).unwrap_or_default()
}

/// A length as form text; empty for `None`.
pub(crate) fn length_text(length: Option<Length>, units: Units) -> String {
    length.map(|length| length.text(units)).unwrap_or_default()
}

/// Parses the temperature of a dryer, flash or print; `None` for an empty text or a problem.
pub(crate) fn collect_temperature(
    problems: &mut Problems,
    field: &'static str,
    text: &str,
    units: Units,
) -> Option<Temperature> {
    collect_optional(problems, field, text, |text| Temperature::parse_dryer(text, units))
}

/// Parses a time in seconds, `least` to 1,800; `None` for an empty text or a problem.
pub(crate) fn collect_seconds(problems: &mut Problems, field: &'static str, text: &str, least: f64) -> Option<Seconds> {
    collect_optional(problems, field, text, |text| Seconds::parse(text, least, 1_800.0))
}

/// Parses a belt speed; `None` for an empty text or a problem.
pub(crate) fn collect_belt(
    problems: &mut Problems,
    field: &'static str,
    text: &str,
    units: Units,
) -> Option<BeltSpeed> {
    collect_optional(problems, field, text, |text| BeltSpeed::parse(text, units))
}

/// Parses a flash time of 0.5 to 120 s and keeps the flash distance of `before`; `None` for an empty text or
/// a problem.
pub(crate) fn collect_flash(
    problems: &mut Problems,
    field: &'static str,
    text: &str,
    before: Option<Flash>,
) -> Option<Flash> {
    let seconds = collect_optional(problems, field, text, |text| Seconds::parse(text, 0.5, 120.0))?;
    Some(Flash { seconds, distance: before.and_then(|flash| flash.distance) })
}
