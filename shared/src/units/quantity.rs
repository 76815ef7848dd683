//! Parsing of a quantity that may be typed with its unit: `500 g`, `2 lb 3 oz`, `3 1/2"`, `12 ft/min`.

use super::number::{NumberProblem, Quantity, parse_mixed, spelled_out};

/// A unit as it may be typed, in lower case and without spaces, stops and commas; and how many of the stored unit it is.
pub(super) type Spelling = (&'static [&'static str], f64);

/// Parses a quantity into the stored unit, unrounded: a number in the unit `own`, or numbers with units of
/// `spellings`, which are added up. The result, rounded to the stored unit, is between `least` and `most`, which are in
/// the stored unit; a problem reports them in the unit `own`.
///
/// # Errors
/// [`NumberProblem`]; [`WrongUnit`](NumberProblem::WrongUnit) for any other unit.
pub(super) fn parse_quantity(
    text: &str,
    takes: Quantity,
    spellings: &[Spelling],
    own: f64,
    [least, most]: [f64; 2],
) -> Result<f64, NumberProblem> {
    let text = spelled_out(text);
    let (number, unit, rest) = split_unit(&text);
    let scale = |unit: &str| {
        let found = spellings.iter().find(|(names, _)| names.contains(&unit)).map(|(_, scale)| *scale);
        found.ok_or(NumberProblem::WrongUnit { takes })
    };
    let value = parse_mixed(number)?;
    let mut sum = value * if unit.is_empty() { own } else { scale(&unit)? };
    if !rest.is_empty() {
        let after_unit = rest.len();
        let (number, unit, rest) = split_unit(rest);
        // `5 ft 6` could be inches or a slip, `-2 lb 3 oz` is none that is weighed, and the point of `2 lb .5 oz` is
        // taken for the end of `lb.`.
        let ends_in_mark = text[..text.len() - after_unit].ends_with(['.', ',']);
        if ends_in_mark || unit.is_empty() || !rest.is_empty() || value < 0.0 {
            return Err(NumberProblem::Doubtful);
        }
        sum += parse_mixed(number)? * scale(&unit)?;
    }
    // In hundredths, as a bound is written; a sum with zero is never written `-0`.
    let reported = |bound: f64, inwards: f64| (bound / own * 100.0 + inwards).round() / 100.0 + 0.0;
    match sum.round() {
        low if low < least => Err(NumberProblem::TooLow { least: reported(least, ALMOST_HALF) }),
        high if high > most => Err(NumberProblem::TooHigh { most: reported(most, -ALMOST_HALF) }),
        _ => Ok(sum),
    }
}

/// Rounds up or down what it is added to or taken from, but for the error of a division.
const ALMOST_HALF: f64 = 0.499_999;

/// Splits a text into a number, the unit behind it as it is compared, and what follows the unit.
pub(super) fn split_unit(text: &str) -> (&str, String, &str) {
    let begins_unit = |c: char| c.is_ascii_alphabetic() || matches!(c, '"' | '\'') || !c.is_ascii();
    let (number, rest) = text.split_at(text.find(begins_unit).unwrap_or(text.len()));
    let (unit, rest) = rest.split_at(rest.find(|c: char| c.is_ascii_digit()).unwrap_or(rest.len()));
    let unit = unit.chars().filter(|c| !matches!(c, ' ' | '.' | ',')).collect::<String>().to_ascii_lowercase();
    (number, unit, rest)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{BeltSpeed, Grams, Length, Seconds, Temperature, Units};

    const ALL: [Units; 3] = [Units::US, Units::METRIC, Units::US.with_ounces()];

    /// Source: the international yard and pound agreement, 1959: a pound of 16 ounces is 453.59237 g.
    #[test]
    fn a_weight_with_its_unit_is_understood_whatever_the_devices_unit() {
        for (text, milligrams) in [
            ("500 g", 500_000),
            ("500g", 500_000),
            ("17.6 oz", 498_952),
            ("1 lb", 453_592),
            ("1.2 kg", 1_200_000),
            ("2 lb 3 oz", 992_233),
            ("2lb3oz", 992_233),
            ("2 1/2 lb", 1_133_981),
            ("½ lb", 226_796),
            ("1 kg 250 g", 1_250_000),
            ("1,250 g", 1_250_000),
            ("3 libras", 1_360_777),
            ("8 Oz.", 226_796),
        ] {
            for units in ALL {
                let read = Grams::parse(text, Grams::ZERO, Grams::MOST, units);
                assert_eq!(read, Ok(Grams::from_milligrams(milligrams)), "{text}");
            }
        }
    }

    #[test]
    fn a_bare_number_is_in_the_devices_unit() {
        let read = |units| Grams::parse("10", Grams::ZERO, Grams::MOST, units).unwrap();
        assert_eq!(read(Units::US), Grams::from_grams(10.0));
        assert_eq!(read(Units::US.with_ounces()), Grams::from_milligrams(283_495));
        let read = |units| Length::parse("10", Length::from_inches(100.0), units).unwrap();
        assert_eq!(read(Units::US), Length::from_inches(10.0));
        assert_eq!(read(Units::METRIC), Length::from_millimetres(100.0));
    }

    #[test]
    fn a_length_with_its_unit_is_understood_whatever_the_devices_unit() {
        for (text, micrometres) in [
            ("3.5 in", 88_900),
            ("3 1/2\"", 88_900),
            ("3-1/2 in", 88_900),
            ("3½”", 88_900),
            ("1/8 in", 3_175),
            ("9 cm", 90_000),
            ("90 mm", 90_000),
            ("3 pulg.", 76_200),
            ("2 ft 6 in", 762_000),
            ("2' 6\"", 762_000),
        ] {
            for units in ALL {
                let most = Length::from_inches(40.0);
                assert_eq!(Length::parse(text, most, units), Ok(Length::from_micrometres(micrometres)), "{text}");
                assert_eq!(Length::parse_small(text, most, units), Ok(Length::from_micrometres(micrometres)), "{text}");
            }
        }
    }

    #[test]
    fn a_temperature_with_its_unit_is_understood_whatever_the_devices_unit() {
        for (text, celsius) in [
            ("320 F", 160.0),
            ("320°F", 160.0),
            ("160 °C", 160.0),
            ("160C", 160.0),
            ("160 ºC", 160.0),
            ("160 ° c", 160.0),
        ] {
            for units in ALL {
                assert_eq!(Temperature::parse_dryer(text, units), Ok(Temperature::from_celsius(celsius)), "{text}");
            }
        }
        assert_eq!(Temperature::parse_dryer("160 °", Units::METRIC), Ok(Temperature::from_celsius(160.0)));
    }

    #[test]
    fn a_belt_speed_with_its_unit_is_understood_whatever_the_devices_unit() {
        for (text, micrometres) in [
            ("12 ft/min", 60_960),
            ("12ft / min", 60_960),
            ("12 fpm", 60_960),
            ("30 cm/min", 5_000),
            ("0.3 m/min", 5_000),
            ("24 in/min", 10_160),
        ] {
            for units in ALL {
                let read = BeltSpeed::parse(text, units);
                assert_eq!(read, Ok(BeltSpeed::from_micrometres_per_second(micrometres)), "{text}");
            }
        }
    }

    #[test]
    fn a_time_may_be_typed_with_its_unit() {
        for (text, seconds) in [("45", 45.0), ("45 s", 45.0), ("1.5 min", 90.0), ("1 min 30 s", 90.0)] {
            assert_eq!(Seconds::parse(text, 1.0, 1_800.0), Ok(Seconds::new(seconds)), "{text}");
        }
    }

    #[test]
    fn a_wrong_unit_is_refused_with_what_the_field_takes() {
        let wrong = |takes| NumberProblem::WrongUnit { takes };
        let weight = |text| Grams::parse(text, Grams::ZERO, Grams::MOST, Units::US);
        for text in ["5 cm", "5 fl oz", "5 x", "5 %", "5 g/m2", "1e3"] {
            let refused = weight(text).unwrap_err();
            let wanted = if text == "5 %" { NumberProblem::NotANumber } else { wrong(Quantity::Weight) };
            assert_eq!(refused, wanted, "{text}");
        }
        let most = Length::from_inches(40.0);
        assert_eq!(Length::parse("5 g", most, Units::METRIC), Err(wrong(Quantity::Length)));
        assert_eq!(Length::parse_small("5 g", most, Units::METRIC), Err(wrong(Quantity::Length)));
        assert_eq!(Temperature::parse_dryer("320 K", Units::US), Err(wrong(Quantity::Temperature)));
        assert_eq!(BeltSpeed::parse("12 ft", Units::US), Err(wrong(Quantity::BeltSpeed)));
        assert_eq!(Seconds::parse("12 h", 1.0, 60.0), Err(wrong(Quantity::Time)));
        assert_eq!(weight("grams"), Err(NumberProblem::NotANumber));
    }

    #[test]
    fn a_second_number_without_a_unit_or_with_a_mark_before_it_is_doubtful() {
        for text in ["2 lb 3", "-2 lb 3 oz", "1 kg 2 g 3 mg", "2 lb .5 oz", "1 kg .5 g", "1 kg ,5 g", "2 lb.5 oz"] {
            let read = Grams::parse(text, Grams::from_grams(-1e6), Grams::MOST, Units::US);
            assert_eq!(read, Err(NumberProblem::Doubtful), "{text}");
        }
        for text in ["2 lb. 3 oz", "2 lb, 3 oz"] {
            let read = Grams::parse(text, Grams::ZERO, Grams::MOST, Units::US);
            assert_eq!(read, Ok(Grams::from_milligrams(992_233)), "{text}");
        }
    }

    #[test]
    fn a_bound_is_reported_in_the_devices_unit() {
        let most = Grams::from_grams(1000.0);
        for (text, units, bound) in
            [("2 kg", Units::METRIC, 1000.0), ("2 kg", Units::US.with_ounces(), 35.27), ("3 lb", Units::METRIC, 1000.0)]
        {
            let refused = Grams::parse(text, Grams::ZERO, most, units);
            assert_eq!(refused, Err(NumberProblem::TooHigh { most: bound }), "{text}");
        }
        assert_eq!(Grams::parse("1 kg", Grams::ZERO, most, Units::METRIC), Ok(most));
    }
}
