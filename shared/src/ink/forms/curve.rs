//! The form of an instrument's reflectance curve, typed or pasted.

use crate::colour::{Reflectance, SpectrumProblem};
use crate::facts::SwatchMeasurement;
use crate::form::{FormProblem, Problems, collect_number};
use crate::units::parse_number;
use serde::{Deserialize, Serialize};

/// The form of a curve.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct CurveForm {
    /// The values, one after another: from 0 to 1, or in percent.
    pub values: String,
    /// Wavelength of the first value, in nanometres.
    pub first: String,
    /// Distance from one value to the next, in nanometres.
    pub step: String,
}

impl Default for CurveForm {
    fn default() -> Self {
        Self { values: String::new(), first: "400".into(), step: "10".into() }
    }
}

impl CurveForm {
    /// The curve; `None` if nothing was typed or something is wrong. A comma is a decimal mark if the numbers are
    /// separated by space, tab, semicolon or line; otherwise commas separate them. If any value is above 2, all of them
    /// are percent.
    ///
    /// Adds to `problems` by field: `values`, `first`, `step`.
    pub fn check(&self, problems: &mut Problems) -> Option<SwatchMeasurement> {
        if self.values.trim().is_empty() {
            return None;
        }
        let first = collect_number(problems, "first", parse_number(&self.first, 300.0, 500.0));
        let step = collect_number(problems, "step", parse_number(&self.step, 1.0, 20.0));
        let Some(values) = numbers(&self.values) else {
            problems.insert("values", FormProblem::NotACurve(SpectrumProblem::NotASpectrum));
            return None;
        };
        let percent = values.iter().any(|value| *value > 2.0);
        let of_one: Vec<f64> = values.iter().map(|value| if percent { value / 100.0 } else { *value }).collect();
        match Reflectance::from_instrument(first?, step?, &of_one) {
            Ok(curve) => Some(SwatchMeasurement::of_curve(&curve)),
            Err(problem) => {
                problems.insert("values", FormProblem::NotACurve(problem));
                None
            }
        }
    }
}

fn numbers(text: &str) -> Option<Vec<f64>> {
    let apart = |c: char| c.is_whitespace() || c == ';';
    let words: Vec<&str> = text.trim().split(apart).filter(|word| !word.is_empty()).collect();
    let words: Vec<String> = if words.len() > 1 {
        words.into_iter().map(|word| word.trim_end_matches(',').replace(',', ".")).collect()
    } else {
        text.trim().split(',').map(str::to_owned).collect()
    };
    words.iter().map(|word| word.trim().parse().ok().filter(|value: &f64| value.is_finite())).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(values: &str) -> Result<SwatchMeasurement, Problems> {
        let mut problems = Problems::new();
        let form = CurveForm { values: values.into(), ..CurveForm::default() };
        form.check(&mut problems).ok_or(problems)
    }

    #[test]
    fn curves_are_read_however_they_are_pasted() {
        let want = SwatchMeasurement::Curve((0..31).map(|band| 1_000 + band * 100).collect());
        let of = |write: &dyn Fn(f64) -> String, apart: &str| {
            (0..31).map(|band| write(0.1 + f64::from(band) * 0.01)).collect::<Vec<_>>().join(apart)
        };
        assert_eq!(check(&of(&|value| format!("{value:.4}"), "\t")), Ok(want.clone()));
        assert_eq!(check(&of(&|value| format!("{value:.4}"), ",")), Ok(want.clone()));
        assert_eq!(check(&of(&|value| format!("{value:.4}"), ", ")), Ok(want.clone()));
        assert_eq!(check(&of(&|value| format!("{:.2}", value * 100.0).replace('.', ","), ";")), Ok(want.clone()));
        assert_eq!(check(&of(&|value| format!("{:.2}", value * 100.0), "\n")), Ok(want));
    }

    #[test]
    fn an_invalid_curve_reports_why() {
        let why = |values: &str| check(values).unwrap_err().get("values").copied();
        assert_eq!(why("0.1 0.2 blue"), Some(FormProblem::NotACurve(SpectrumProblem::NotASpectrum)));
        assert_eq!(why("0.1 0.2 0.3"), Some(FormProblem::NotACurve(SpectrumProblem::NotASpectrum)));
        assert_eq!(why(&"0.1 ".repeat(12)), Some(FormProblem::NotACurve(SpectrumProblem::TooNarrow)));
        assert_eq!(why(&"1.2 ".repeat(31)), Some(FormProblem::NotACurve(SpectrumProblem::OutOfRange)));
        assert_eq!(CurveForm::default().check(&mut Problems::new()), None);
    }
}
