//! What every form needs: problems by field, and checks of names and numbers.

use crate::collections::Map;
use crate::units::NumberProblem;

/// What is wrong with a field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FormProblem {
    /// It must not be empty.
    Missing,
    /// The number is none, or out of bounds.
    Number(NumberProblem),
    /// It is no day of the calendar.
    NotADay,
    /// It is no time of day.
    NotATime,
    /// The day has passed.
    Past,
    /// Longer than is kept.
    TooLong {
        /// Most characters.
        most: usize,
    },
    /// No size has any pieces.
    NoPieces,
    /// Something else has that name already.
    Taken,
    /// It is below the one it must not be below.
    OutOfOrder,
    /// It is no grade of a grey scale: 1 to 5 in half steps.
    NotAGrade,
    /// More things than are added at once.
    TooMany {
        /// The most.
        most: usize,
    },
    /// The numbers are no curve of reflectance.
    NotACurve(crate::colour::SpectrumProblem),
}

/// Problems by the name of their field; empty when all is well.
pub type Problems = Map<&'static str, FormProblem>;

/// Longest name typed in.
pub(crate) const NAME: usize = 80;
/// Longest note typed in.
pub(crate) const NOTE: usize = 2_000;

pub(crate) fn keep<T>(problems: &mut Problems, field: &'static str, read: Result<T, FormProblem>) -> Option<T> {
    read.map_err(|problem| problems.insert(field, problem)).ok()
}

pub(crate) fn keep_number<T>(
    problems: &mut Problems,
    field: &'static str,
    read: Result<T, NumberProblem>,
) -> Option<T> {
    keep(problems, field, read.map_err(FormProblem::Number))
}

/// An empty field reads as "not known".
pub(crate) fn keep_optional<T>(
    problems: &mut Problems,
    field: &'static str,
    text: &str,
    read: impl FnOnce(&str) -> Result<T, NumberProblem>,
) -> Option<T> {
    if text.trim().is_empty() { None } else { keep_number(problems, field, read(text)) }
}

pub(crate) fn name(text: &str, most: usize) -> Result<String, FormProblem> {
    let tidy = text.trim();
    if tidy.chars().count() > most { Err(FormProblem::TooLong { most }) } else { Ok(tidy.to_owned()) }
}

pub(crate) fn required_name(text: &str) -> Result<String, FormProblem> {
    if text.trim().is_empty() { Err(FormProblem::Missing) } else { name(text, NAME) }
}

/// A number that must be typed.
pub(crate) fn required<T>(text: &str, read: impl FnOnce(&str) -> Result<T, NumberProblem>) -> Result<T, FormProblem> {
    if text.trim().is_empty() { Err(FormProblem::Missing) } else { read(text).map_err(FormProblem::Number) }
}

/// The fields that differ from how the thing stands: an edit records nothing else.
pub(crate) fn changed<F: PartialEq>(fields: Vec<F>, before: &[F]) -> Vec<F> {
    fields.into_iter().filter(|field| !before.contains(field)).collect()
}

/// A number as a form shows it: at most two decimals, no trailing noughts.
pub(crate) fn shown(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
