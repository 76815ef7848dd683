//! The form of a lamp, and the list of lamps.

use crate::collections::sort_by_key;
use crate::facts::{LampField, LampKind, MAX_LAMP_DISTANCE_IN};
use crate::form::{FormProblem, Problems, changed_fields, collect, collect_optional, parse_required_name};
use crate::ids::Subject;
use crate::screen::Lamp;
use crate::shop::Shop;
use crate::units::{Length, Units};
use serde::{Deserialize, Serialize};

/// The form of a lamp.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct LampForm {
    /// The shop's name for it.
    pub name: String,
    /// The kind of lamp.
    pub kind: LampKind,
    /// From the lamp to the emulsion, in inches or centimetres; or empty.
    pub distance: String,
}

impl LampForm {
    /// The form filled in from a lamp, in the units of the device.
    pub fn of(lamp: &Lamp, units: Units) -> Self {
        Self {
            name: lamp.name.clone(),
            kind: lamp.kind,
            distance: lamp.distance.map(|length| length.text(units)).unwrap_or_default(),
        }
    }

    /// The fields that changed, compared with `before`; all of them if it is new. A distance whose text was
    /// not edited keeps its stored value, even if the device's units show it rounded.
    ///
    /// # Errors
    /// [`Problems`] by field: `name`, `distance`.
    pub fn check(&self, units: Units, before: Option<&Lamp>) -> Result<Vec<LampField>, Problems> {
        let mut problems = Problems::new();
        let name = collect(&mut problems, "name", parse_required_name(&self.name));
        let typed = collect_optional(&mut problems, "distance", &self.distance, |text| {
            Length::parse(text, Length::from_inches(MAX_LAMP_DISTANCE_IN), units)
        });
        if typed.is_some_and(|length| length.micrometres() == 0) {
            problems.insert("distance", FormProblem::Missing);
        }
        let distance = match before {
            Some(lamp) if Self::of(lamp, units).distance == self.distance => lamp.distance,
            _ => typed,
        };
        match (name, problems.is_empty()) {
            (Some(name), true) => {
                let fields = vec![LampField::Name(name), LampField::Kind(self.kind), LampField::Distance(distance)];
                Ok(before.map_or(fields.clone(), |lamp| changed_fields(fields, &lamp.fields())))
            }
            _ => Err(problems),
        }
    }
}

/// A row of the list of lamps.
#[derive(Clone, Debug, PartialEq)]
pub struct LampRow {
    /// The lamp's id.
    pub id: Subject,
    /// The lamp.
    pub lamp: Lamp,
    /// Number of known exposures under it.
    pub exposures: usize,
}

/// The shop's lamps, without deleted ones, oldest first.
pub fn lamp_list(shop: &Shop) -> Vec<LampRow> {
    let exposures = |id| shop.exposure_log.exposures().filter(|(_, exposure)| exposure.fact.lamp == id).count();
    let mut rows: Vec<LampRow> = shop
        .exposure_log
        .lamps()
        .filter(|(_, lamp)| !lamp.deleted)
        .map(|(id, lamp)| LampRow { id, lamp: lamp.clone(), exposures: exposures(id) })
        .collect();
    sort_by_key(&mut rows, |row| (row.lamp.created, row.id));
    rows
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::NumberProblem;

    #[test]
    fn a_lamp_needs_a_name_and_a_possible_distance() {
        let form = LampForm { distance: "400".into(), ..LampForm::default() };
        let problems = form.check(Units::US, None).unwrap_err();
        assert_eq!(problems["name"], FormProblem::Missing);
        assert_eq!(problems["distance"], FormProblem::Number(NumberProblem::TooHigh { most: 120.0 }));
        let form = LampForm { name: "Bulb".into(), distance: "0".into(), ..LampForm::default() };
        assert_eq!(form.check(Units::US, None).unwrap_err()["distance"], FormProblem::Missing);
    }

    #[test]
    fn saving_in_centimetres_keeps_a_distance_typed_in_inches() {
        let form = LampForm { name: "Bulb".into(), kind: LampKind::Point, distance: "18.33".into() };
        let mut lamp = Lamp::default();
        form.check(Units::US, None).unwrap().iter().for_each(|field| lamp.set(field));
        let metric = LampForm { kind: LampKind::Tubes, ..LampForm::of(&lamp, Units::METRIC) };
        assert_eq!(metric.check(Units::METRIC, Some(&lamp)).unwrap(), [LampField::Kind(LampKind::Tubes)]);
    }
}
