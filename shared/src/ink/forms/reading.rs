//! The colour of a swatch as it was read, and the form of such a reading.

use crate::facts::{ColourReading, MAX_LAB_AB, ReadBy};
use crate::form::{FormProblem, Problems, collect_number};
use crate::units::parse_number;
use serde::{Deserialize, Serialize};

/// The form of a reading: three numbers, or all empty.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct ReadingForm {
    /// L*.
    pub l: String,
    /// a*.
    pub a: String,
    /// b*.
    pub b: String,
    /// How it was read.
    pub by: ReadBy,
}

impl ReadingForm {
    /// The form filled from a reading.
    pub fn of(reading: Option<ColourReading>) -> Self {
        let Some(reading) = reading else { return Self::default() };
        let [l, a, b] = reading.lab().map(|value| value.to_string());
        Self { l, a, b, by: reading.by }
    }

    /// The reading; `None` if nothing was typed. Adds to `problems` by field: `l`, `a`, `b`.
    pub fn check(&self, problems: &mut Problems) -> Option<ColourReading> {
        let typed = [
            ("l", &self.l, 0.0, 100.0),
            ("a", &self.a, -MAX_LAB_AB, MAX_LAB_AB),
            ("b", &self.b, -MAX_LAB_AB, MAX_LAB_AB),
        ];
        if typed.iter().all(|(_, text, ..)| text.trim().is_empty()) {
            return None;
        }
        let mut lab = [0.0; 3];
        for ((field, text, least, most), value) in typed.into_iter().zip(&mut lab) {
            if text.trim().is_empty() {
                problems.insert(field, FormProblem::Missing);
            } else {
                *value = collect_number(problems, field, parse_number(text, least, most)).unwrap_or_default();
            }
        }
        Some(ColourReading::from_lab(lab, self.by))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reading_is_three_numbers_or_none() {
        let mut problems = Problems::new();
        assert_eq!(ReadingForm::default().check(&mut problems), None);
        let form = ReadingForm { l: "41,25".into(), a: "-12.5".into(), ..ReadingForm::default() };
        form.check(&mut problems);
        assert_eq!(problems.iter().collect::<Vec<_>>(), [(&"b", &FormProblem::Missing)]);
        let form = ReadingForm { b: "0.125".into(), ..form };
        let mut problems = Problems::new();
        let reading = form.check(&mut problems).unwrap();
        assert!(problems.is_empty() && reading.in_bounds());
        assert_eq!([reading.l, reading.a, reading.b], [41_250, -12_500, 125]);
        let again = ReadingForm::of(Some(reading)).check(&mut problems);
        assert_eq!(again, Some(reading));
        let form = ReadingForm { l: "141".into(), ..form };
        form.check(&mut problems);
        assert!(problems.contains_key("l"));
    }
}
