//! A lamp as it is typed in, and the list of lamps.

use crate::collections::sort_by_key;
use crate::facts::{FURTHEST, LampField, LampKind};
use crate::form::{FormProblem, Problems, changed, keep, keep_optional, required_name, shown};
use crate::ids::Subject;
use crate::screen::Lamp;
use crate::shop::Shop;
use crate::units::{Length, Units};

/// The lamp form.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct LampForm {
    /// What the shop calls it.
    pub name: String,
    /// What kind.
    pub kind: LampKind,
    /// From the light to the emulsion, in inches or centimetres; or empty.
    pub distance: String,
}

impl LampForm {
    /// The form of a lamp as it stands, in the units of the device.
    pub fn of(lamp: &Lamp, units: Units) -> Self {
        Self {
            name: lamp.name.clone(),
            kind: lamp.kind,
            distance: lamp.distance.map(|length| shown(length.in_units(units))).unwrap_or_default(),
        }
    }

    /// The fields that change a lamp, or what is wrong. A distance whose text was left alone is left
    /// alone, even where the device's units show it rounded.
    ///
    /// # Errors
    /// [`Problems`] by field: `name`, `distance`.
    pub fn check(&self, units: Units, before: Option<&Lamp>) -> Result<Vec<LampField>, Problems> {
        let mut problems = Problems::new();
        let name = keep(&mut problems, "name", required_name(&self.name));
        let typed = keep_optional(&mut problems, "distance", &self.distance, |text| {
            Length::parse(text, Length::from_inches(FURTHEST), units)
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
                Ok(before.map_or(fields.clone(), |lamp| changed(fields, &lamp.fields())))
            }
            _ => Err(problems),
        }
    }
}

/// A lamp in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct LampRow {
    /// Which.
    pub id: Subject,
    /// It.
    pub lamp: Lamp,
    /// How many exposures are known under it.
    pub exposures: usize,
}

/// The shop's lamps that were not deleted, oldest first.
pub fn lamp_list(shop: &Shop) -> Vec<LampRow> {
    let exposures = |id| shop.stencils.exposures().filter(|(_, exposure)| exposure.fact.lamp == id).count();
    let mut rows: Vec<LampRow> = shop
        .stencils
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
    fn a_lamp_needs_a_name_and_a_distance_it_can_have() {
        let form = LampForm { distance: "400".into(), ..LampForm::default() };
        let problems = form.check(Units::UsCustomary, None).unwrap_err();
        assert_eq!(problems["name"], FormProblem::Missing);
        assert_eq!(problems["distance"], FormProblem::Number(NumberProblem::TooHigh { most: 120.0 }));
        let form = LampForm { name: "Bulb".into(), distance: "0".into(), ..LampForm::default() };
        assert_eq!(form.check(Units::UsCustomary, None).unwrap_err()["distance"], FormProblem::Missing);
    }

    #[test]
    fn a_distance_typed_in_inches_is_untouched_by_saving_it_in_centimetres() {
        let form = LampForm { name: "Bulb".into(), kind: LampKind::Point, distance: "18.33".into() };
        let mut lamp = Lamp::default();
        form.check(Units::UsCustomary, None).unwrap().iter().for_each(|field| lamp.set(field));
        let metric = LampForm { kind: LampKind::Tubes, ..LampForm::of(&lamp, Units::Metric) };
        assert_eq!(metric.check(Units::Metric, Some(&lamp)).unwrap(), [LampField::Kind(LampKind::Tubes)]);
    }
}
