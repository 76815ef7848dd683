//! The component form.

use crate::colour::Colour;
use crate::facts::{ComponentField, ComponentKind, Hiding, Share};
use crate::form::{
    FormProblem, Problems, TYPED_NOTE, changed_fields, collect, collect_optional, parse_required_name, parse_text,
    trim_number,
};
use crate::heat::ink_key;
use crate::ids::Subject;
use crate::ink::Component;
use crate::shop::Shop;
use crate::units::{Grams, Units, parse_number};

/// The component form. Weights are in the units of the device, density in g/cm³, limits in percent.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct ComponentForm {
    /// Name in the shop.
    pub name: String,
    /// Role in an ink.
    pub kind: ComponentKind,
    /// Colour shown on screen, `#rrggbb`, or empty.
    pub colour: String,
    /// Whether it hides.
    pub hiding: Hiding,
    /// Density in g/cm³, or empty.
    pub density: String,
    /// Price of a kilogram, or empty.
    pub cost: String,
    /// Largest share of it in an ink, in percent, or empty.
    pub most: String,
    /// Of a base: the largest share of all pigment in an ink made with it, in percent, or empty.
    pub most_pigment: String,
    /// Weight below which the stock is reported as low, or empty.
    pub low_at: String,
    /// Weight of the tub it is bought in, or empty.
    pub tub: String,
    /// Free note.
    pub note: String,
}

impl ComponentForm {
    /// The form filled from a component.
    pub fn of(component: &Component, units: Units) -> Self {
        let weight = |weight: Option<Grams>| weight.map(|weight| weight.text(units)).unwrap_or_default();
        let share = |share: Option<Share>| share.map(Share::text).unwrap_or_default();
        Self {
            name: component.name.clone(),
            kind: component.kind,
            colour: component.colour.map(|colour| colour.to_string()).unwrap_or_default(),
            hiding: component.hiding,
            density: component.density.map(|density| (f64::from(density) / 1000.0).to_string()).unwrap_or_default(),
            cost: component.cost.map(|cost| trim_number(f64::from(cost) / 100.0)).unwrap_or_default(),
            most: share(component.most),
            most_pigment: share(component.most_pigment),
            low_at: weight(component.low_at),
            tub: weight(component.tub),
            note: component.note.clone(),
        }
    }

    /// The fields to change, or what is wrong. `id` is the component edited, if any.
    ///
    /// # Errors
    /// [`Problems`] by field: `name`, `density`, `cost`, `most`, `most_pigment`, `low_at`, `tub`, `note`.
    pub fn check(&self, shop: &Shop, id: Option<Subject>, units: Units) -> Result<Vec<ComponentField>, Problems> {
        let before = id.and_then(|id| shop.ink.component(id));
        let was = before.map(|component| Self::of(component, units));
        let mut problems = Problems::new();
        let p = &mut problems;
        let typed = collect(p, "name", parse_required_name(&self.name));
        let note = collect(p, "note", parse_text(&self.note, TYPED_NOTE));
        let density = collect_optional(p, "density", &self.density, |text| {
            parse_number(text, 0.1, 9.0).map(|density| (density * 1000.0).round() as u16)
        });
        let cost = collect_optional(p, "cost", &self.cost, |text| {
            parse_number(text, 0.0, 1e6).map(|cost| (cost * 100.0).round() as u32)
        });
        let most = collect_optional(p, "most", &self.most, |text| Share::parse(text, 0.0, 100.0));
        let most_pigment =
            collect_optional(p, "most_pigment", &self.most_pigment, |text| Share::parse(text, 0.0, 100.0));
        // A weight whose text was not edited keeps its milligrams, whatever unit it is shown in.
        let mut weight = |field, here: &dyn Fn(&Self) -> &String, kept: &dyn Fn(&Component) -> Option<Grams>| match was
            .as_ref()
            .zip(before)
        {
            Some((was, before)) if here(was) == here(self) => kept(before),
            _ => {
                collect_optional(&mut *p, field, here(self), |text| Grams::parse(text, Grams::ZERO, Grams::MOST, units))
            }
        };
        let low_at = weight("low_at", &|form| &form.low_at, &|component| component.low_at);
        let tub = weight("tub", &|form| &form.tub, &|component| component.tub);
        if typed.as_ref().is_some_and(|name| is_taken(shop, id, name)) {
            problems.insert("name", FormProblem::Taken);
        }
        let (Some(name), Some(note), true) = (typed, note, problems.is_empty()) else { return Err(problems) };
        let fields = vec![
            ComponentField::Name(name),
            ComponentField::Kind(self.kind),
            ComponentField::Colour(Colour::from_hex(self.colour.trim())),
            ComponentField::Hiding(self.hiding),
            ComponentField::Density(density),
            ComponentField::Cost(cost),
            ComponentField::Most(most),
            ComponentField::MostPigment(most_pigment.filter(|_| self.kind == ComponentKind::Base)),
            ComponentField::LowAt(low_at),
            ComponentField::Tub(tub.filter(|tub| tub.is_positive())),
            ComponentField::Note(note),
        ];
        Ok(before.map_or(fields.clone(), |component| changed_fields(fields, &component.fields())))
    }
}

/// Whether another component has this name, ignoring case and spaces.
fn is_taken(shop: &Shop, id: Option<Subject>, name: &str) -> bool {
    shop.ink.components().any(|(other, component)| Some(other) != id && ink_key(&component.name) == ink_key(name))
}
