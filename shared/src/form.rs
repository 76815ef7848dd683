//! What every form needs: problems by field, and checks of names and numbers.

use crate::units::NumberProblem;
use std::collections::BTreeMap;

/// What is wrong with a field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FormProblem {
    /// It must not be empty.
    Missing,
    /// It is not a number, or is out of bounds.
    Number(NumberProblem),
    /// It is not a calendar date.
    NotADay,
    /// It is not a time of day.
    NotATime,
    /// The day has passed.
    Past,
    /// It is too long.
    TooLong {
        /// Most characters allowed.
        most: usize,
    },
    /// No size has any pieces.
    NoPieces,
    /// Another item already has this name.
    Taken,
    /// It is lower than a value that it must not be lower than.
    OutOfOrder,
    /// It is not a grade of the grey scale: 1 to 5 in half steps.
    NotAGrade,
    /// Too many items are added at once.
    TooMany {
        /// Most items allowed.
        most: usize,
    },
    /// The numbers are not a reflectance curve.
    NotACurve(crate::colour::SpectrumProblem),
}

/// Problems by field name; empty if there are none.
pub type Problems = BTreeMap<&'static str, FormProblem>;

/// Longest name that may be typed, in characters. What is accepted from files may be longer: see [`crate::bounds`].
pub(crate) const TYPED_NAME: usize = 80;
/// Longest note that may be typed, in characters.
pub(crate) const TYPED_NOTE: usize = 2_000;

pub(crate) fn collect<T>(problems: &mut Problems, field: &'static str, read: Result<T, FormProblem>) -> Option<T> {
    read.map_err(|problem| problems.insert(field, problem)).ok()
}

pub(crate) fn collect_number<T>(
    problems: &mut Problems,
    field: &'static str,
    read: Result<T, NumberProblem>,
) -> Option<T> {
    collect(problems, field, read.map_err(FormProblem::Number))
}

/// Parses a field in which an empty text means "not known".
pub(crate) fn collect_optional<T>(
    problems: &mut Problems,
    field: &'static str,
    text: &str,
    read: impl FnOnce(&str) -> Result<T, NumberProblem>,
) -> Option<T> {
    if text.trim().is_empty() { None } else { collect_number(problems, field, read(text)) }
}

/// Parses a text of at most so many characters, without the space around it; it may be empty.
pub(crate) fn parse_text(text: &str, most: usize) -> Result<String, FormProblem> {
    let tidy = text.trim();
    if tidy.chars().count() > most { Err(FormProblem::TooLong { most }) } else { Ok(tidy.to_owned()) }
}

/// Parses a text that must not be empty.
pub(crate) fn parse_required_text(text: &str, most: usize) -> Result<String, FormProblem> {
    if text.trim().is_empty() { Err(FormProblem::Missing) } else { parse_text(text, most) }
}

pub(crate) fn parse_required_name(text: &str) -> Result<String, FormProblem> {
    parse_required_text(text, TYPED_NAME)
}

/// Parses a number that must not be empty.
pub(crate) fn parse_required<T>(
    text: &str,
    read: impl FnOnce(&str) -> Result<T, NumberProblem>,
) -> Result<T, FormProblem> {
    if text.trim().is_empty() { Err(FormProblem::Missing) } else { read(text).map_err(FormProblem::Number) }
}

/// The fields that differ from the current ones: an edit records only what changed.
pub(crate) fn changed_fields<F: PartialEq>(fields: Vec<F>, before: &[F]) -> Vec<F> {
    fields.into_iter().filter(|field| !before.contains(field)).collect()
}

/// A number as shown in a form: at most two decimals, without trailing zeros.
pub(crate) fn trim_number(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
