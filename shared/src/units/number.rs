//! Parsing of typed numbers.

/// What a field measures, which decides the units it takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// A weight.
    Weight,
    /// A length.
    Length,
    /// A temperature.
    Temperature,
    /// A belt speed.
    BeltSpeed,
    /// A time in seconds or minutes.
    Time,
}

/// Why a typed number was refused. Bounds are in the unit of the field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NumberProblem {
    /// Not a number with an optional decimal point.
    NotANumber,
    /// A number that can be read in two ways, such as `1,25,3`.
    Doubtful,
    /// Below the smallest number accepted.
    TooLow {
        /// The smallest number accepted.
        least: f64,
    },
    /// Above the largest number accepted.
    TooHigh {
        /// The largest number accepted.
        most: f64,
    },
    /// A fraction where only whole numbers are accepted.
    NotWhole,
    /// With a unit that the field does not take.
    WrongUnit {
        /// What it takes.
        takes: Quantity,
    },
}

/// Parses a number between `least` and `most`. A comma before three digits separates thousands; before any other
/// number of digits it is taken for the decimal mark, if it is the only mark. Spaces around are ignored.
///
/// # Errors
/// [`NumberProblem`] if the text is not a finite number, is doubtful or out of bounds.
///
/// ```
/// use lastpull_core::units::{NumberProblem, parse_number};
///
/// assert_eq!(parse_number("1,250.5", 0.0, 1e6), Ok(1250.5));
/// assert_eq!(parse_number(" 3,5 ", 0.0, 10.0), Ok(3.5));
/// assert_eq!(parse_number("1.250,5", 0.0, 1e6), Err(NumberProblem::Doubtful));
/// assert_eq!(parse_number("1e3", 0.0, 1e6), Err(NumberProblem::NotANumber));
/// ```
pub fn parse_number(text: &str, least: f64, most: f64) -> Result<f64, NumberProblem> {
    bounded(parse_decimal(text.trim())?, least, most)
}

/// A text with its fractions of one character spelled out, as some keyboards offer them, and with plain spaces.
pub(super) fn spelled_out(text: &str) -> String {
    let text = text.trim().replace(['\u{a0}', '\u{202f}'], " ");
    ["½ 1/2", "¼ 1/4", "¾ 3/4", "⅛ 1/8", "⅜ 3/8", "⅝ 5/8", "⅞ 7/8"]
        .iter()
        .filter_map(|pair| pair.split_once(' '))
        .fold(text, |text, (sign, fraction)| text.replace(sign, &format!(" {fraction}")))
}

/// Parses a number as it is read off a rule or typed: a decimal number as in [`parse_number`], a fraction, or a whole
/// number and a fraction, with a space or a hyphen between. `text` is [`spelled_out`].
///
/// # Errors
/// [`NumberProblem::NotANumber`], also for a fraction over zero, and [`NumberProblem::Doubtful`].
pub(super) fn parse_mixed(text: &str) -> Result<f64, NumberProblem> {
    let Some((above, below)) = text.split_once('/') else { return parse_decimal(text.trim()) };
    let above = above.trim();
    let (whole, above) = match above.rfind([' ', '-']).filter(|at| *at > 0) {
        Some(at) => (above[..at].trim_end(), &above[at + 1..]),
        None => ("0", above),
    };
    let digits = |text: &str| text.trim().parse::<u32>().ok().filter(|_| text.len() <= 8).map(f64::from);
    let sum = || Some((digits(whole)?, digits(above)?, digits(below).filter(|below| *below > 0.0)?));
    sum().map(|(whole, above, below)| whole + above / below).ok_or(NumberProblem::NotANumber)
}

/// The value, if it is between `least` and `most`.
pub(super) fn bounded(value: f64, least: f64, most: f64) -> Result<f64, NumberProblem> {
    if value < least {
        Err(NumberProblem::TooLow { least })
    } else if value > most {
        Err(NumberProblem::TooHigh { most })
    } else {
        Ok(value)
    }
}

/// Parses a decimal number with commas as described at [`parse_number`].
fn parse_decimal(tidy: &str) -> Result<f64, NumberProblem> {
    let (whole, part) = tidy.split_once('.').unwrap_or((tidy, ""));
    let mut groups = whole.trim_start_matches(['-', '+']).split(',');
    let first = groups.next().unwrap_or_default();
    // Neither `0,125` nor `,125` can be thousands.
    let is_first_group = matches!(first.len(), 1..=3) && !first.starts_with('0');
    let commas = whole.matches(',').count();
    let plain = if part.contains(',') {
        None
    } else if commas == 0 {
        Some(tidy.to_owned())
    } else if is_first_group && groups.clone().all(|group| group.len() == 3) {
        Some(tidy.replace(',', ""))
    } else {
        // `1250,500` is neither for sure.
        let is_short = first.is_empty() || first.starts_with('0') || groups.all(|group| group.len() != 3);
        (commas == 1 && is_short && !tidy.contains('.')).then(|| tidy.replace(',', "."))
    };
    let is_numeric = || tidy.bytes().all(|byte| byte.is_ascii_digit() || b".,+-".contains(&byte));
    match plain {
        Some(plain) => parse_plain(&plain).ok_or(NumberProblem::NotANumber),
        None if is_numeric() => Err(NumberProblem::Doubtful),
        None => Err(NumberProblem::NotANumber),
    }
}

/// Parses a sign, digits and a point, at most 16 characters. Not `f64::from_str`, which also accepts "inf",
/// "nan" and "1e9", none of which a printer means, and brings tables of 10 kB for numbers longer than these,
/// whose digits and power of ten an f64 represents exactly.
fn parse_plain(tidy: &str) -> Option<f64> {
    let digits = tidy.strip_prefix(['-', '+']).unwrap_or(tidy);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let all = [whole, part].concat();
    if tidy.len() > 16 || all.is_empty() || !all.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let value = all.parse::<u64>().ok()? as f64 / 10_u64.pow(part.len() as u32) as f64;
    Some(if tidy.starts_with('-') { -value } else { value })
}

/// Parses a whole number between `least` and `most`.
///
/// # Errors
/// [`NumberProblem`] as in [`parse_number`], and for a fraction; [`NumberProblem::Doubtful`] for a point before three
/// digits, which is meant to separate thousands.
pub fn parse_whole(text: &str, least: u32, most: u32) -> Result<u32, NumberProblem> {
    let number = parse_decimal(text.trim())?;
    if text.trim().split_once('.').is_some_and(|(_, part)| part.len() == 3) {
        return Err(NumberProblem::Doubtful);
    }
    let value = bounded(number, f64::from(least), f64::from(most))?;
    if value.fract() == 0.0 { Ok(value as u32) } else { Err(NumberProblem::NotWhole) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_comma_before_three_digits_separates_thousands_and_is_never_a_decimal_mark() {
        for (text, value) in [
            ("1,250", 1_250.0),
            ("1,250.5", 1_250.5),
            ("1,250,000", 1_250_000.0),
            ("-1,250", -1_250.0),
            ("12,500.25", 12_500.25),
            ("1.250", 1.25),
            ("1250.5", 1_250.5),
            (" 3,5 ", 3.5),
            ("3,25", 3.25),
            ("12,5", 12.5),
            ("0,125", 0.125),
            ("-0,125", -0.125),
            (",5", 0.5),
            ("3,1250", 3.125),
            ("3,", 3.0),
        ] {
            assert_eq!(parse_number(text, -1e9, 1e9), Ok(value), "{text}");
        }
        assert_eq!(parse_whole("1,250", 0, 100_000), Ok(1_250));
        assert_eq!(parse_whole("1,25", 0, 100_000), Err(NumberProblem::NotWhole));
    }

    #[test]
    fn a_point_before_three_digits_of_a_whole_number_is_doubtful() {
        for text in ["2.000", " 1.250 ", "0.500", "1,250.000"] {
            assert_eq!(parse_whole(text, 1, 1_000), Err(NumberProblem::Doubtful), "{text}");
        }
        assert_eq!(parse_whole("2.0", 1, 1_000), Ok(2));
        assert_eq!(parse_whole("a.000", 1, 1_000), Err(NumberProblem::NotANumber));
    }

    #[test]
    fn marks_that_can_be_read_in_two_ways_are_refused() {
        for text in ["1.250,5", "1,25,3", "1250,500", "1,25.5", "1,2500.5", "0,125,000", "1,,250", "1.250,000"] {
            assert_eq!(parse_number(text, -1e9, 1e9), Err(NumberProblem::Doubtful), "{text}");
        }
        for text in ["a,250", "1,x", "1.x,5"] {
            assert_eq!(parse_number(text, -1e9, 1e9), Err(NumberProblem::NotANumber), "{text}");
        }
    }

    #[test]
    fn fractions_are_read_as_on_an_inch_rule() {
        let read = |text| parse_mixed(&spelled_out(text));
        for (text, value) in [
            ("1/8", 0.125),
            (" 3 / 16 ", 0.1875),
            ("1 1/2", 1.5),
            ("1-1/2", 1.5),
            ("2½", 2.5),
            ("⅜", 0.375),
            ("0,125", 0.125),
            ("3", 3.0),
        ] {
            assert_eq!(read(text), Ok(value), "{text}");
        }
        for text in ["1/", "/8", "1/0", "1/8/2", "a/8", "1 1", "-1/8", "1.5/2"] {
            assert_eq!(read(text), Err(NumberProblem::NotANumber), "{text}");
        }
    }

    #[test]
    fn words_and_infinities_are_not_numbers() {
        for text in ["", "abc", "inf", "NaN", "1e3", "--2", "1.2.3", "99999999999999999999"] {
            assert_eq!(parse_number(text, 0.0, 1e30), Err(NumberProblem::NotANumber), "{text}");
        }
    }

    #[test]
    fn negative_pieces_are_too_low_and_fractions_are_not_whole() {
        assert_eq!(parse_whole("-3", 0, 100), Err(NumberProblem::TooLow { least: 0.0 }));
        assert_eq!(parse_whole("2.5", 0, 100), Err(NumberProblem::NotWhole));
        assert_eq!(parse_whole("101", 0, 100), Err(NumberProblem::TooHigh { most: 100.0 }));
    }
}
