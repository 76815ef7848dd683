//! The form of what was really poured of an advised correction.

use crate::facts::{InkFact, PourStep};
use crate::form::{FormProblem, Problems};
use crate::ids::Subject;
use crate::ink::AddWay;
use crate::units::{Grams, Units};

/// Field names of the form: a correction has at most three components.
pub const POURED_CORRECTION_FIELDS: [&str; 3] = ["grams_1", "grams_2", "grams_3"];

/// The form of what was poured, filled with the advice until the scale's readings are typed.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct PouredCorrectionForm {
    /// Each component, and the weight that was poured.
    pub rows: Vec<(Subject, String)>,
    /// Why, as a note; kept only if everything was poured as advised.
    pub note: String,
    /// The advised weights, as they would be typed.
    advised: Vec<String>,
}

impl PouredCorrectionForm {
    /// Filled with the advice.
    pub fn of(way: &AddWay, note: String, units: Units) -> Self {
        let rows = way.rows.iter().map(|row| (row.component, row.grams.text(units)));
        Self::of_rows(rows.collect(), note)
    }

    fn of_rows(rows: Vec<(Subject, String)>, note: String) -> Self {
        Self { advised: rows.iter().map(|(_, text)| text.clone()).collect(), rows, note }
    }

    /// The note explains the advice, so it is dropped for other weights.
    fn note(&self) -> String {
        let as_advised = self.rows.iter().map(|(_, text)| text.trim()).eq(self.advised.iter().map(String::as_str));
        if as_advised { self.note.clone() } else { String::new() }
    }

    /// The corrections, in order. A component of which nothing was poured is left out.
    ///
    /// # Errors
    /// [`Problems`] by [`POURED_CORRECTION_FIELDS`]; the first of them is missing if nothing was poured at all.
    pub fn check(&self, pot: Subject, by: Option<&str>, units: Units) -> Result<Vec<InkFact>, Problems> {
        let mut problems = Problems::new();
        let mut facts = Vec::new();
        for ((component, text), field) in self.rows.iter().zip(POURED_CORRECTION_FIELDS) {
            if text.trim().is_empty() {
                continue;
            }
            match Grams::parse(text, Grams::ZERO, Grams::MOST, units) {
                Err(problem) => drop(problems.insert(field, FormProblem::Number(problem))),
                Ok(grams) if grams.is_positive() => facts.push(InkFact::Poured {
                    pot,
                    component: *component,
                    grams,
                    step: PourStep::Correction,
                    note: self.note(),
                    reading: None,
                    by: by.map(str::to_owned),
                }),
                Ok(_) => {}
            }
        }
        if facts.is_empty() && problems.is_empty() {
            problems.insert(POURED_CORRECTION_FIELDS[0], FormProblem::Missing);
        }
        if problems.is_empty() { Ok(facts) } else { Err(problems) }
    }
}

/// What was poured by these facts: each component and its grams.
pub fn poured_in(facts: &[InkFact]) -> Vec<(Subject, Grams)> {
    let poured = facts.iter().filter_map(|fact| {
        let InkFact::Poured { component, grams, .. } = fact else { return None };
        Some((*component, *grams))
    });
    poured.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use uuid::Uuid;

    #[test]
    fn each_weight_poured_is_a_correction_and_none_is_a_problem() {
        let id = |n| Uuid::from_u128(n);
        let form = |one: &str, two: &str| {
            PouredCorrectionForm::of_rows(vec![(id(2), one.into()), (id(3), two.into())], "Too green".into())
        };
        let facts = form("3.2", "0").check(id(1), Some("Ines"), Units::METRIC).unwrap();
        let [InkFact::Poured { pot, component, grams, step: PourStep::Correction, .. }] = &facts[..] else { panic!() };
        assert_eq!((*pot, *component, *grams), (id(1), id(2), Grams::from_grams(3.2)));
        assert_eq!(form("3.2", "1.1").check(id(1), None, Units::METRIC).unwrap().len(), 2);
        let problems = form("", "0").check(id(1), None, Units::METRIC).unwrap_err();
        assert_eq!(problems.get("grams_1"), Some(&FormProblem::Missing));
        assert!(form("3.2", "-1").check(id(1), None, Units::METRIC).unwrap_err().contains_key("grams_2"));
    }

    #[test]
    fn the_weights_poured_are_shown_not_those_advised() {
        let id = |n| Uuid::from_u128(n);
        let mut form =
            PouredCorrectionForm::of_rows(vec![(id(2), "3.2".into()), (id(3), "1".into())], "ΔE 3.0 → 0.4".into());
        let note = |fact: &InkFact| {
            let InkFact::Poured { note, .. } = fact else { panic!("{fact:?}") };
            note.clone()
        };
        let facts = form.check(id(1), None, Units::METRIC).unwrap();
        assert_eq!(note(&facts[0]), "ΔE 3.0 → 0.4");
        form.rows[0].1 = "5".into();
        form.rows[1].1 = "0".into();
        let facts = form.check(id(1), None, Units::METRIC).unwrap();
        assert_eq!(poured_in(&facts), [(id(2), Grams::from_grams(5.0))]);
        assert_eq!(note(&facts[0]), "", "nothing was worked out for that");
    }
}
