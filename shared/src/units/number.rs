//! Parsing of typed numbers.

/// Why a typed number was refused. Bounds are in the unit it was typed in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NumberProblem {
    /// Not a number with an optional decimal point or comma.
    NotANumber,
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
}

/// Parses a number between `least` and `most`. A comma is accepted as decimal point; spaces around are
/// ignored.
///
/// # Errors
/// [`NumberProblem`] if the text is not a finite number or is out of bounds.
///
/// ```
/// use lastpull_core::units::{NumberProblem, parse_number};
///
/// assert_eq!(parse_number(" 3,5 ", 0.0, 10.0), Ok(3.5));
/// assert_eq!(parse_number("1e3", 0.0, 1e6), Err(NumberProblem::NotANumber));
/// ```
pub fn parse_number(text: &str, least: f64, most: f64) -> Result<f64, NumberProblem> {
    bounded(parse_decimal(text), least, most)
}

/// Parses a number as it is read off an inch rule, between `least` and `most`: a decimal number as in
/// [`parse_number`], a fraction, or a whole number and a fraction, with a space or a hyphen between.
///
/// # Errors
/// As [`parse_number`]; a fraction over zero is not a number.
///
/// ```
/// use lastpull_core::units::{NumberProblem, parse_fraction};
///
/// assert_eq!(parse_fraction("1/8", 0.0, 10.0), Ok(0.125));
/// assert_eq!(parse_fraction("1 1/2", 0.0, 10.0), Ok(1.5));
/// assert_eq!(parse_fraction("1/0", 0.0, 10.0), Err(NumberProblem::NotANumber));
/// ```
pub fn parse_fraction(text: &str, least: f64, most: f64) -> Result<f64, NumberProblem> {
    // One character, as some keyboards offer it.
    let spelled = ["½ 1/2", "¼ 1/4", "¾ 3/4", "⅛ 1/8", "⅜ 3/8", "⅝ 5/8", "⅞ 7/8"]
        .iter()
        .filter_map(|pair| pair.split_once(' '))
        .fold(text.to_owned(), |text, (sign, fraction)| text.replace(sign, &format!(" {fraction}")));
    let Some((above, below)) = spelled.split_once('/') else { return parse_number(&spelled, least, most) };
    let above = above.trim();
    let (whole, above) = match above.rfind([' ', '-']).filter(|at| *at > 0) {
        Some(at) => (above[..at].trim_end(), &above[at + 1..]),
        None => ("0", above),
    };
    let digits = |text: &str| text.trim().parse::<u32>().ok().filter(|_| text.len() <= 8).map(f64::from);
    let sum = || Some((digits(whole)?, digits(above)?, digits(below).filter(|below| *below > 0.0)?));
    bounded(sum().map(|(whole, above, below)| whole + above / below), least, most)
}

fn bounded(value: Option<f64>, least: f64, most: f64) -> Result<f64, NumberProblem> {
    let value = value.ok_or(NumberProblem::NotANumber)?;
    if value < least {
        Err(NumberProblem::TooLow { least })
    } else if value > most {
        Err(NumberProblem::TooHigh { most })
    } else {
        Ok(value)
    }
}

fn parse_decimal(text: &str) -> Option<f64> {
    parse_plain(&text.trim().replace(',', "."))
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
/// [`NumberProblem`] as in [`parse_number`], and for a fraction.
pub fn parse_whole(text: &str, least: u32, most: u32) -> Result<u32, NumberProblem> {
    let value = parse_number(text, f64::from(least), f64::from(most))?;
    if value.fract() == 0.0 { Ok(value as u32) } else { Err(NumberProblem::NotWhole) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_comma_is_a_decimal_point() {
        assert_eq!(parse_number(" 3,5 ", 0.0, 10.0), Ok(3.5));
    }

    #[test]
    fn fractions_are_read_as_on_an_inch_rule() {
        let read = |text| parse_fraction(text, 0.0, 100.0);
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
        assert_eq!(parse_fraction("9/8", 0.0, 1.0), Err(NumberProblem::TooHigh { most: 1.0 }));
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
