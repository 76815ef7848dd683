//! Messages: what a check expects and what was found.

use crate::i18n;
use lastpull_core::run::{CheckItem, Expected};
use lastpull_core::units::{BeltSpeed, Length, NumberProblem, Seconds, Temperature, TemperatureUnit};

/// The expected value of a check, as text.
pub fn expected_text(item: CheckItem, expected: &Expected) -> String {
    match expected {
        Expected::Temperature(value) => i18n::temperature(*value),
        Expected::Time(value) => i18n::seconds(*value),
        Expected::Length(value) if item == CheckItem::OffContact => i18n::off_contact(*value),
        Expected::Length(value) => i18n::length(*value),
        Expected::Belt(value) => i18n::belt(*value),
        Expected::Count(n) if item == CheckItem::Passes => i18n::passes_n(*n),
        Expected::Count(n) => i18n::hits_n(*n),
        Expected::Mesh(mesh) => i18n::mesh(*mesh),
        Expected::NoFlash => i18n::value_no_flash().into(),
        Expected::Words(text) => text.clone(),
        Expected::Garment { name, fabric, .. } => format!("{name}, {}", i18n::fabric(*fabric)),
        Expected::Ink { name, .. } => name.clone(),
    }
}

/// A stored value of a check, as text in the unit of its expected value.
pub fn value_text(item: CheckItem, expected: &Expected, value: i64) -> String {
    let small = i32::try_from(value).unwrap_or(i32::MAX);
    let unsigned = u32::try_from(value).unwrap_or(0);
    let same_kind = match expected {
        Expected::Temperature(_) => Expected::Temperature(Temperature::from_milli_celsius(small)),
        Expected::Time(_) => Expected::Time(Seconds::from_milliseconds(unsigned)),
        Expected::Length(_) => Expected::Length(Length::from_micrometres(small)),
        Expected::Belt(_) => Expected::Belt(BeltSpeed::from_micrometres_per_second(unsigned)),
        Expected::Count(_)
        | Expected::Mesh(_)
        | Expected::NoFlash
        | Expected::Words(_)
        | Expected::Garment { .. }
        | Expected::Ink { .. } => expected.clone(),
    };
    expected_text(item, &same_kind)
}

/// The tolerance of a check, as text; `None` if the check measures nothing.
pub fn tolerance_text(item: CheckItem, expected: &Expected) -> Option<String> {
    let tolerance = expected.tolerance(item)?;
    let amount = match (expected, i18n::units().temperature) {
        // A difference of degrees is scaled only: 0 °C is not 0 °F.
        (Expected::Temperature(_), TemperatureUnit::Fahrenheit) => {
            format!("{}\u{a0}°F", i18n::number(tolerance as f64 / 1000.0 * 9.0 / 5.0, 0))
        }
        (Expected::Temperature(_), TemperatureUnit::Celsius) => {
            format!("{}\u{a0}°C", i18n::number(tolerance as f64 / 1000.0, 0))
        }
        (Expected::Length(of), _) => {
            let small = Length::from_micrometres(i32::try_from(tolerance).unwrap_or(i32::MAX));
            i18n::length_tolerance(small, *of).unwrap_or_else(|| value_text(item, expected, tolerance))
        }
        (other, _) => value_text(item, other, tolerance),
    };
    Some(i18n::check_tolerance(amount))
}

/// The unit in which a measured value is typed.
pub fn unit_text(item: CheckItem, expected: &Expected) -> &'static str {
    match expected {
        Expected::Temperature(_) => i18n::unit_temperature(),
        Expected::Time(_) => i18n::unit_seconds(),
        Expected::Length(_) if item == CheckItem::OffContact => i18n::unit_off_contact(),
        Expected::Length(_) => i18n::unit_length(),
        Expected::Belt(_) => i18n::unit_belt(),
        Expected::Count(_)
        | Expected::Mesh(_)
        | Expected::NoFlash
        | Expected::Words(_)
        | Expected::Garment { .. }
        | Expected::Ink { .. } => "",
    }
}

/// Parses a measured value into the stored unit. `text` is in the notation of forms.
///
/// # Errors
/// [`NumberProblem`] if it is not a number, or the check measures nothing.
pub fn read_value(item: CheckItem, expected: &Expected, text: &str) -> Result<i64, NumberProblem> {
    let units = i18n::units();
    match expected {
        Expected::Temperature(_) => {
            Temperature::parse(text, -40.0, 700.0, units).map(|found| i64::from(found.milli_celsius()))
        }
        Expected::Time(_) => Seconds::parse(text, 0.0, 3_600.0).map(|found| i64::from(found.milliseconds())),
        Expected::Length(_) => {
            let found = if item == CheckItem::OffContact {
                Length::parse_small(text, Length::from_millimetres(100.0), units)
            } else {
                Length::parse(text, Length::from_inches(100.0), units)
            };
            found.map(|found| i64::from(found.micrometres()))
        }
        Expected::Belt(_) => {
            BeltSpeed::parse_between(text, [0.0, 1e6], units).map(|found| i64::from(found.micrometres_per_second()))
        }
        Expected::Count(_)
        | Expected::Mesh(_)
        | Expected::NoFlash
        | Expected::Words(_)
        | Expected::Garment { .. }
        | Expected::Ink { .. } => Err(NumberProblem::NotANumber),
    }
}
