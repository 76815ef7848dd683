//! Reading the numbers people type.

/// Why a typed number was not taken. The bounds are in the unit the person typed in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NumberProblem {
    /// Nothing but a number, with a point or a comma, can stand here.
    NotANumber,
    /// Smaller than anything that can be meant.
    TooLow {
        /// The smallest number taken.
        least: f64,
    },
    /// Larger than anything that can be meant.
    TooHigh {
        /// The largest number taken.
        most: f64,
    },
    /// A count of things has no fraction.
    NotWhole,
}

/// Reads a number between `least` and `most`. A comma is taken as a decimal point, spaces around
/// are ignored.
///
/// # Errors
/// [`NumberProblem`] when the text is no finite number, or lies outside the bounds.
pub fn parse_number(text: &str, least: f64, most: f64) -> Result<f64, NumberProblem> {
    let tidy = text.trim().replace(',', ".");
    let value = plain_number(&tidy).ok_or(NumberProblem::NotANumber)?;
    if value < least {
        Err(NumberProblem::TooLow { least })
    } else if value > most {
        Err(NumberProblem::TooHigh { most })
    } else {
        Ok(value)
    }
}

/// The number of a sign, digits and a point, 16 characters at most. Not `f64::from_str`, which also
/// reads "inf", "nan" and "1e9", none of which a printer means, and brings tables of 10 kB for
/// numbers longer than these, whose digits and power of ten an f64 holds exactly.
fn plain_number(tidy: &str) -> Option<f64> {
    let digits = tidy.strip_prefix(['-', '+']).unwrap_or(tidy);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let all = [whole, part].concat();
    if tidy.len() > 16 || all.is_empty() || !all.bytes().all(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let value = all.parse::<u64>().ok()? as f64 / 10_u64.pow(part.len() as u32) as f64;
    Some(if tidy.starts_with('-') { -value } else { value })
}

/// Reads a whole number between `least` and `most`.
///
/// # Errors
/// [`NumberProblem`] as in [`parse_number`], and when there is a fraction.
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
    fn words_and_infinities_are_not_numbers() {
        for text in ["", "abc", "inf", "NaN", "1e3", "--2", "1.2.3", "99999999999999999999"] {
            assert_eq!(parse_number(text, 0.0, 1e30), Err(NumberProblem::NotANumber), "{text}");
        }
    }

    #[test]
    fn negative_pieces_are_too_low_and_half_pieces_not_whole() {
        assert_eq!(parse_whole("-3", 0, 100), Err(NumberProblem::TooLow { least: 0.0 }));
        assert_eq!(parse_whole("2.5", 0, 100), Err(NumberProblem::NotWhole));
        assert_eq!(parse_whole("101", 0, 100), Err(NumberProblem::TooHigh { most: 100.0 }));
    }
}
