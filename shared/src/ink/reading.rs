//! The colour of a swatch as it was read, and the form of such a reading.

use crate::job::{FormProblem, Problems, keep_number};
use crate::pack::Pack;
use crate::quantity::parse_number;
use serde::{Deserialize, Serialize};

/// How a colour was read. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum ReadBy {
    /// By an instrument.
    #[default]
    Instrument,
    /// From a photo.
    Photo,
    /// From a colour on a screen.
    Screen,
}

impl ReadBy {
    /// All, in the order they are offered.
    pub const ALL: [Self; 3] = [Self::Instrument, Self::Photo, Self::Screen];
}

/// A colour in CIE L*a*b* (D65, 2°), in thousandths. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Pack)]
#[serde(deny_unknown_fields)]
pub struct ColourReading {
    /// L*, 0 black to 100,000 white.
    pub l: i32,
    /// a*, green below zero, red above.
    pub a: i32,
    /// b*, blue below zero, yellow above.
    pub b: i32,
    /// How it was read.
    pub by: ReadBy,
}

/// Largest a* or b*, in whole units: beyond every surface colour.
const FURTHEST: f64 = 160.0;

impl ColourReading {
    /// From L*, a*, b*.
    pub fn from_lab(lab: [f64; 3], by: ReadBy) -> Self {
        let [l, a, b] = lab.map(|value| (value * 1000.0).round() as i32);
        Self { l, a, b, by }
    }

    /// L*, a*, b*.
    pub fn lab(self) -> [f64; 3] {
        [self.l, self.a, self.b].map(|thousandths| f64::from(thousandths) / 1000.0)
    }

    /// As [`crate::journal::Fact::in_bounds`].
    pub(super) fn in_bounds(self) -> bool {
        let furthest = (FURTHEST * 1000.0) as i32;
        let side = -furthest..=furthest;
        (0..=110_000).contains(&self.l) && side.contains(&self.a) && side.contains(&self.b)
    }
}

/// The form of a reading: three numbers, or all empty.
#[derive(Clone, Debug, PartialEq, Default)]
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
        let typed =
            [("l", &self.l, 0.0, 100.0), ("a", &self.a, -FURTHEST, FURTHEST), ("b", &self.b, -FURTHEST, FURTHEST)];
        if typed.iter().all(|(_, text, ..)| text.trim().is_empty()) {
            return None;
        }
        let mut lab = [0.0; 3];
        for ((field, text, least, most), value) in typed.into_iter().zip(&mut lab) {
            if text.trim().is_empty() {
                problems.insert(field, FormProblem::Missing);
            } else {
                *value = keep_number(problems, field, parse_number(text, least, most)).unwrap_or_default();
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
