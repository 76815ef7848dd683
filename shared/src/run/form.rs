//! The form of a run: its art, its screens, its set-up.

use super::Run;
use crate::colour::Colour;
use crate::facts::{Flash, Location, RunField};
use crate::form::{
    Problems, TYPED_NAME, TYPED_NOTE, changed_fields, collect, collect_number, collect_optional, parse_required_name,
    parse_text, trim_number,
};
use crate::screen::{OtherMesh, other_mesh};
use crate::shop::Shop;
use crate::units::{
    BeltSpeed, Length, LengthUnit, NumberProblem, Seconds, Temperature, Units, parse_number, parse_whole,
};
use serde::{Deserialize, Serialize};

/// The form of a run. Numbers are in the device's units.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct RunForm {
    /// The print location.
    pub location: Location,
    /// Name of the ink.
    pub ink: String,
    /// Ink colour as `#rrggbb`.
    pub ink_colour: String,
    /// Labels of the screens.
    pub screens: String,
    /// Mesh count, in threads per inch or per centimetre.
    pub mesh: String,
    /// Whether there is a flash cure.
    pub flash: bool,
    /// Flash time in seconds.
    pub flash_seconds: String,
    /// Distance of the flash unit in inches or centimetres, or empty.
    pub flash_distance: String,
    /// Number of strokes that print ink.
    pub hits: String,
    /// Dryer temperature setting, in °F or °C.
    pub dryer: String,
    /// Belt speed in feet or centimetres per minute.
    pub belt: String,
    /// Dwell in the dryer, in seconds.
    pub dwell: String,
    /// Number of passes through the dryer.
    pub passes: String,
    /// The squeegee.
    pub squeegee: String,
    /// Off-contact in inches or millimetres.
    pub off_contact: String,
    /// Distance below the collar in inches or centimetres.
    pub below_collar: String,
    /// The placement in words.
    pub placement: String,
    /// Estimated seconds per piece.
    pub guess: String,
}

/// Widest off-contact, in inches.
const WIDEST_GAP: f64 = 1.0;
/// Longest distance below a collar at which a print can start, in inches.
const LOWEST_PRINT: f64 = 30.0;

impl RunForm {
    /// The form filled in from a run, in the device's units.
    pub fn of(run: &Run, units: Units) -> Self {
        let set_up = &run.set_up;
        let length = |length: Option<Length>| length.map(|l| l.text(units)).unwrap_or_default();
        let seconds = |seconds: Option<Seconds>| seconds.map(|s| trim_number(s.seconds())).unwrap_or_default();
        Self {
            location: run.location,
            ink: run.ink.clone(),
            ink_colour: run.ink_colour.map(|colour| colour.to_string()).unwrap_or_default(),
            screens: set_up.screens.clone(),
            mesh: set_up.mesh.map(|mesh| trim_number(mesh_in_units(mesh, units).round())).unwrap_or_default(),
            flash: set_up.flash.is_some(),
            flash_seconds: seconds(set_up.flash.map(|flash| flash.seconds)),
            flash_distance: length(set_up.flash.and_then(|flash| flash.distance)),
            hits: set_up.hits.to_string(),
            dryer: set_up.dryer.map(|dryer| trim_number(dryer.in_units(units).round())).unwrap_or_default(),
            belt: set_up.belt.map(|belt| belt.text(units)).unwrap_or_default(),
            dwell: seconds(set_up.dwell),
            passes: set_up.passes.to_string(),
            squeegee: set_up.squeegee.clone(),
            off_contact: set_up.off_contact.map(|gap| gap.small_text(units)).unwrap_or_default(),
            below_collar: length(set_up.below_collar),
            placement: set_up.placement.clone(),
            guess: seconds(run.guess),
        }
    }

    /// The screens named in the form that have another mesh than it asks for; none while the mesh cannot be read.
    pub fn other_mesh(&self, shop: &Shop, units: Units) -> Vec<OtherMesh> {
        other_mesh(shop, &self.screens, parse_mesh(&self.mesh, units).ok())
    }

    /// The fields that changed, compared with `before`; all of them for a new run.
    ///
    /// # Errors
    /// [`Problems`] by the names of this form's fields.
    pub fn check(&self, units: Units, before: Option<&Run>) -> Result<Vec<RunField>, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let ink = collect(p, "ink", parse_required_name(&self.ink));
        let screens = collect(p, "screens", parse_text(&self.screens, TYPED_NAME));
        let squeegee = collect(p, "squeegee", parse_text(&self.squeegee, TYPED_NAME));
        let placement = collect(p, "placement", parse_text(&self.placement, TYPED_NOTE));
        let mesh = collect_optional(p, "mesh", &self.mesh, |text| parse_mesh(text, units));
        let hits = collect_number(p, "hits", parse_whole(&self.hits, 1, 20));
        let passes = collect_number(p, "passes", parse_whole(&self.passes, 1, 9));
        let dryer = collect_optional(p, "dryer", &self.dryer, |text| Temperature::parse_dryer(text, units));
        let belt = collect_optional(p, "belt", &self.belt, |text| BeltSpeed::parse(text, units));
        let dwell = collect_optional(p, "dwell", &self.dwell, |text| Seconds::parse(text, 1.0, 1_800.0));
        let widest = Length::from_inches(WIDEST_GAP);
        let off_contact =
            collect_optional(p, "off_contact", &self.off_contact, |text| Length::parse_small(text, widest, units));
        let lowest = Length::from_inches(LOWEST_PRINT);
        let below_collar =
            collect_optional(p, "below_collar", &self.below_collar, |text| Length::parse(text, lowest, units));
        let guess = collect_optional(p, "guess", &self.guess, |text| Seconds::parse(text, 2.0, 3_600.0));
        let flash = if self.flash { self.check_flash(units, p) } else { None };
        let (Some(ink), Some(screens), Some(squeegee), Some(placement), Some(hits), Some(passes)) =
            (ink, screens, squeegee, placement, hits, passes)
        else {
            return Err(problems);
        };
        if !problems.is_empty() {
            return Err(problems);
        }
        let mut fields = vec![
            RunField::Location(self.location),
            RunField::Ink(ink),
            RunField::Screens(screens),
            RunField::Mesh(mesh),
            RunField::Flash(flash),
            RunField::Hits(hits as u8),
            RunField::Dryer(dryer),
            RunField::Belt(belt),
            RunField::Dwell(dwell),
            RunField::Passes(passes as u8),
            RunField::Squeegee(squeegee),
            RunField::OffContact(off_contact),
            RunField::BelowCollar(below_collar),
            RunField::Placement(placement),
            RunField::Guess(guess),
        ];
        fields.extend(Colour::from_hex(&self.ink_colour).map(RunField::InkColour));
        Ok(match before {
            Some(run) => self.changed_run(fields, run, units),
            None => fields,
        })
    }

    /// The fields that the user changed: a number whose text was not edited keeps its stored value, even if
    /// the device's units show it rounded.
    fn changed_run(&self, fields: Vec<RunField>, run: &Run, units: Units) -> Vec<RunField> {
        let mut current = run.set_up.fields();
        current.push(RunField::Location(run.location));
        current.push(RunField::Ink(run.ink.clone()));
        current.push(RunField::Guess(run.guess));
        current.extend(run.ink_colour.map(RunField::InkColour));
        let was = Self::of(run, units);
        changed_fields(fields, &current)
            .into_iter()
            .filter(|field| match field {
                RunField::Mesh(_) => self.mesh != was.mesh,
                RunField::Flash(_) => {
                    (self.flash, &self.flash_seconds, &self.flash_distance)
                        != (was.flash, &was.flash_seconds, &was.flash_distance)
                }
                RunField::Dryer(_) => self.dryer != was.dryer,
                RunField::Belt(_) => self.belt != was.belt,
                RunField::Dwell(_) => self.dwell != was.dwell,
                RunField::OffContact(_) => self.off_contact != was.off_contact,
                RunField::BelowCollar(_) => self.below_collar != was.below_collar,
                RunField::Lot(_)
                | RunField::Location(_)
                | RunField::Ink(_)
                | RunField::InkColour(_)
                | RunField::Screens(_)
                | RunField::Hits(_)
                | RunField::Passes(_)
                | RunField::Squeegee(_)
                | RunField::Placement(_)
                | RunField::Guess(_) => true,
            })
            .collect()
    }

    fn check_flash(&self, units: Units, problems: &mut Problems) -> Option<Flash> {
        let seconds = collect_number(problems, "flash_seconds", Seconds::parse(&self.flash_seconds, 0.5, 120.0));
        let furthest = Length::from_inches(40.0);
        let distance = collect_optional(problems, "flash_distance", &self.flash_distance, |text| {
            Length::parse(text, furthest, units)
        });
        Some(Flash { seconds: seconds?, distance })
    }
}

fn mesh_in_units(mesh: u16, units: Units) -> f64 {
    match units.length {
        LengthUnit::Inches => f64::from(mesh),
        LengthUnit::Centimetres => f64::from(mesh) / 2.54,
    }
}

/// Parses a mesh count into threads per inch: meshes are woven from about 10 to 508 threads per inch, or 4 to 200 per
/// centimetre.
fn parse_mesh(text: &str, units: Units) -> Result<u16, NumberProblem> {
    match units.length {
        LengthUnit::Inches => parse_whole(text, 10, 508).map(|mesh| mesh as u16),
        LengthUnit::Centimetres => parse_number(text, 4.0, 200.0).map(|mesh| (mesh * 2.54).round() as u16),
    }
}

impl Default for RunForm {
    fn default() -> Self {
        Self::of(&Run::default(), Units::US)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_set_up_at_the_bounds_of_one_unit_can_be_saved_in_the_other() {
        let mut run = Run { ink: "Brick".into(), ..Run::default() };
        run.set_up.hits = 1;
        run.set_up.passes = 1;
        for (belt, off_contact, mesh) in [
            (BeltSpeed::from_inches_per_minute(400.0), Length::from_inches(WIDEST_GAP), 10),
            (BeltSpeed::from_units(2.0, Units::METRIC), Length::from_millimetres(25.0), 508),
        ] {
            run.set_up.belt = Some(belt);
            run.set_up.off_contact = Some(off_contact);
            run.set_up.below_collar = Some(Length::from_inches(LOWEST_PRINT));
            run.set_up.mesh = Some(mesh);
            for units in [Units::US, Units::METRIC] {
                assert_eq!(RunForm::of(&run, units).check(units, Some(&run)), Ok(vec![]));
            }
        }
    }
}
