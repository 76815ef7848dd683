//! The form of an emulsion, and the list of emulsions.

use crate::collections::sort_by_key;
use crate::facts::{EmulsionField, Family};
use crate::form::{FormProblem, Problems, changed_fields, collect, collect_optional, parse_required_name};
use crate::ids::Subject;
use crate::screen::Emulsion;
use crate::shop::Shop;
use crate::units::parse_whole;
use serde::{Deserialize, Serialize};

/// The form of an emulsion.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct EmulsionForm {
    /// The shop's name for it.
    pub name: String,
    /// What hardens it; `None` until chosen.
    pub family: Option<Family>,
    /// Solids in percent, or empty.
    pub solids: String,
}

impl EmulsionForm {
    /// The form filled in from an emulsion.
    pub fn of(emulsion: &Emulsion) -> Self {
        Self {
            name: emulsion.name.clone(),
            family: Some(emulsion.family),
            solids: emulsion.solids.map(|percent| percent.to_string()).unwrap_or_default(),
        }
    }

    /// The fields that changed, compared with `before`; all of them if it is new.
    ///
    /// # Errors
    /// [`Problems`] by field: `name`, `family`, `solids`.
    pub fn check(&self, before: Option<&Emulsion>) -> Result<Vec<EmulsionField>, Problems> {
        let mut problems = Problems::new();
        let name = collect(&mut problems, "name", parse_required_name(&self.name));
        let family = collect(&mut problems, "family", self.family.ok_or(FormProblem::Missing));
        let solids = collect_optional(&mut problems, "solids", &self.solids, |text| parse_whole(text, 5, 100));
        match (name, family, problems.is_empty()) {
            (Some(name), Some(family), true) => {
                let fields = vec![
                    EmulsionField::Name(name),
                    EmulsionField::Family(family),
                    EmulsionField::Solids(solids.map(|percent| percent as u8)),
                ];
                Ok(before.map_or(fields.clone(), |emulsion| changed_fields(fields, &emulsion.fields())))
            }
            _ => Err(problems),
        }
    }
}

/// A row of the list of emulsions.
#[derive(Clone, Debug, PartialEq)]
pub struct EmulsionRow {
    /// The emulsion's id.
    pub id: Subject,
    /// The emulsion.
    pub emulsion: Emulsion,
    /// Number of known exposures with it.
    pub exposures: usize,
}

/// The shop's emulsions, without deleted ones, oldest first.
pub fn emulsion_list(shop: &Shop) -> Vec<EmulsionRow> {
    let exposures = |id| shop.exposure_log.exposures().filter(|(_, exposure)| exposure.fact.emulsion == id).count();
    let mut rows: Vec<EmulsionRow> = shop
        .exposure_log
        .emulsions()
        .filter(|(_, emulsion)| !emulsion.deleted)
        .map(|(id, emulsion)| EmulsionRow { id, emulsion: emulsion.clone(), exposures: exposures(id) })
        .collect();
    sort_by_key(&mut rows, |row| (row.emulsion.created, row.id));
    rows
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_emulsion_needs_name_and_family_and_records_only_changes() {
        let missing = EmulsionForm::default().check(None).unwrap_err();
        assert!(["name", "family"].iter().all(|field| missing[field] == FormProblem::Missing));
        let form = EmulsionForm { name: "Blue".into(), family: Some(Family::DualCure), solids: "42".into() };
        let mut emulsion = Emulsion::default();
        form.check(None).unwrap().iter().for_each(|field| emulsion.set(field));
        assert_eq!(EmulsionForm::of(&emulsion), form);
        let form = EmulsionForm { solids: String::new(), ..form };
        assert_eq!(form.check(Some(&emulsion)).unwrap(), [EmulsionField::Solids(None)]);
    }
}
