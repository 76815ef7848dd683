//! Parses several labels in one line, such as "A1–A6, 12, 20-24".

use super::labels::normalized_label;
use crate::form::FormProblem;

/// Most screens that can be added at once: a mistyped "1-1000" must not fill the shop.
pub const MAX_LABELS: usize = 60;
/// Most digits of a number in a range.
const MAX_DIGITS: usize = 6;

/// The labels that a line means, in its order, each once. Commas and semicolons separate parts. A part is a
/// range if both ends are a number after the same letters and the second number is higher: "1-12", "A1–A6",
/// "A1-6", "01-12" (leading zeros are kept). Any other part is one label, so "160-3" and "A-3" stay as they
/// are.
///
/// ```
/// use lastpull_core::screen::expand_labels;
///
/// assert_eq!(expand_labels("A1–A3, 12").unwrap(), ["A1", "A2", "A3", "12"]);
/// assert_eq!(expand_labels("01-03").unwrap(), ["01", "02", "03"]);
/// assert_eq!(expand_labels("160-3").unwrap(), ["160-3"]);
/// ```
///
/// # Errors
/// [`FormProblem::Missing`] if the line has no label, [`FormProblem::TooMany`] if it has more than
/// [`MAX_LABELS`].
pub fn expand_labels(line: &str) -> Result<Vec<String>, FormProblem> {
    let mut labels: Vec<String> = Vec::new();
    for part in line.split([',', ';']).map(str::trim).filter(|part| !normalized_label(part).is_empty()) {
        let Some(range) = range_of(part) else {
            labels.push(part.to_owned());
            continue;
        };
        if range.last - range.first >= MAX_LABELS as u32 {
            return Err(FormProblem::TooMany { most: MAX_LABELS });
        }
        labels.extend((range.first..=range.last).map(|n| format!("{}{n:0width$}", range.letters, width = range.width)));
    }
    let mut seen: Vec<String> = Vec::new();
    labels.retain(|label| {
        let key = normalized_label(label);
        let new = !seen.contains(&key);
        seen.push(key);
        new
    });
    match labels.len() {
        0 => Err(FormProblem::Missing),
        1..=MAX_LABELS => Ok(labels),
        _ => Err(FormProblem::TooMany { most: MAX_LABELS }),
    }
}

struct Range<'a> {
    letters: &'a str,
    first: u32,
    last: u32,
    width: usize,
}

/// Parses a part as a range; any of its dashes may be the one between the two ends.
fn range_of(part: &str) -> Option<Range<'_>> {
    part.char_indices().filter(|(_, letter)| matches!(letter, '-' | '–' | '—')).find_map(|(at, dash)| {
        let (left, right) = (part[..at].trim_end(), part[at + dash.len_utf8()..].trim_start());
        let (letters, from) = split_number(left)?;
        let (other, to) = split_number(right)?;
        if !other.is_empty() && normalized_label(other) != normalized_label(letters) {
            return None;
        }
        let (first, last) = (from.parse().ok()?, to.parse().ok()?);
        let width = if from.starts_with('0') { from.len() } else { 0 };
        (first < last).then_some(Range { letters, first, last, width })
    })
}

/// Splits a label into its letters and the number at its end.
fn split_number(label: &str) -> Option<(&str, &str)> {
    let letters = label.trim_end_matches(|letter: char| letter.is_ascii_digit());
    let digits = &label[letters.len()..];
    (1..=MAX_DIGITS).contains(&digits.len()).then_some((letters, digits))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn labels(line: &str) -> String {
        expand_labels(line).unwrap().join(" | ")
    }

    #[test]
    fn a_range_counts_up_after_its_letters() {
        assert_eq!(labels("1-4"), "1 | 2 | 3 | 4");
        assert_eq!(labels("A1–A3"), "A1 | A2 | A3");
        assert_eq!(labels("a1 - 3"), "a1 | a2 | a3");
        assert_eq!(labels("A 9—A 11"), "A 9 | A 10 | A 11");
        assert_eq!(labels("08-11"), "08 | 09 | 10 | 11");
        assert_eq!(labels("160-1–160-3"), "160-1 | 160-2 | 160-3");
    }

    #[test]
    fn each_label_of_several_parts_is_added_once() {
        assert_eq!(labels("Frame 3 wide, 7; 5-8, a1, A1"), "Frame 3 wide | 7 | 5 | 6 | 8 | a1");
        assert_eq!(labels(" 12 , ,"), "12");
    }

    #[test]
    fn a_part_that_does_not_count_up_is_one_label() {
        for label in ["A-3", "160-3", "12-7", "A1-B6", "3-3", "wide-2x", "Ñ1-Ö2", "1-", "-4"] {
            assert_eq!(labels(label), label);
        }
    }

    #[test]
    fn too_many_labels_and_an_empty_line_are_refused() {
        let too_many = Err(FormProblem::TooMany { most: MAX_LABELS });
        assert_eq!(expand_labels("1-60").unwrap().len(), 60);
        assert_eq!(expand_labels("1-61"), too_many);
        assert_eq!(expand_labels("1-999999"), too_many);
        assert_eq!(expand_labels("1-40, 51-90"), too_many);
        assert_eq!(expand_labels("1-99999999999"), Ok(vec!["1-99999999999".into()]), "no number that is counted up");
        for nothing in ["", " , ; ", "+ /"] {
            assert_eq!(expand_labels(nothing), Err(FormProblem::Missing));
        }
    }
}
