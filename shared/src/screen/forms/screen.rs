//! The form of a screen, and the form of the screen room's settings.

use super::mesh_sheet::MeshSheetForm;
use crate::facts::{AgeLimits, Coats, Fact, MAX_TENSION, ScreenFact, ScreenField, StepTimes};
use crate::form::{
    FormProblem, Problems, TYPED_NAME, TYPED_NOTE, changed_fields, collect, collect_number, collect_optional,
    parse_required_name, parse_text, trim_number,
};
use crate::ids::{RunId, SHOP, Subject};
use crate::screen::Screen;
use crate::screen::inventory::labels::normalized_label;
use crate::shop::Shop;
use crate::units::{Seconds, parse_number, parse_whole};
use serde::{Deserialize, Serialize};

/// The form of a screen.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct ScreenForm {
    /// The label on the frame.
    pub label: String,
    /// The mesh's data sheet; every field may be empty.
    pub mesh: MeshSheetForm,
    /// Tension in N/cm, or empty; the same unit in every country.
    pub tension: String,
    /// The emulsion.
    pub emulsion: String,
    /// Coats on the print side, or empty.
    pub coats_print: String,
    /// Coats on the squeegee side, or empty.
    pub coats_squeegee: String,
    /// The colour of the art that it prints.
    pub colour: String,
    /// The run whose art is on it.
    pub run: Option<RunId>,
    /// Free notes.
    pub notes: String,
}

/// Longest label, in characters: it is written on a frame.
const LABEL: usize = 24;

impl ScreenForm {
    /// The form filled in from a screen.
    pub fn of(screen: &Screen) -> Self {
        let coats = |side: &dyn Fn(Coats) -> u8| screen.coats.map(|coats| side(coats).to_string()).unwrap_or_default();
        Self {
            label: screen.label.clone(),
            mesh: screen.mesh.as_ref().map(MeshSheetForm::of).unwrap_or_default(),
            tension: screen.tension.map(|tenths| trim_number(f64::from(tenths) / 10.0)).unwrap_or_default(),
            emulsion: screen.emulsion.clone(),
            coats_print: coats(&|coats| coats.print),
            coats_squeegee: coats(&|coats| coats.squeegee),
            colour: screen.colour.clone(),
            run: screen.run,
            notes: screen.notes.clone(),
        }
    }

    /// The facts that create the screen `id`, or change it to this; empty if nothing changes.
    ///
    /// # Errors
    /// [`Problems`] by field: `label`, `tension`, `emulsion`, `coats_print`, `coats_squeegee`,
    /// `colour`, `notes`, and those of [`MeshSheetForm::check`].
    pub fn check(&self, shop: &Shop, id: Subject) -> Result<Vec<(Subject, Fact)>, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let label = collect(p, "label", free_label(shop, &self.label, id));
        let mesh = match self.mesh.check() {
            Ok(mesh) => mesh,
            Err(found) => {
                p.extend(found);
                None
            }
        };
        let tension = collect_optional(p, "tension", &self.tension, |text| {
            parse_number(text, 1.0, f64::from(MAX_TENSION) / 10.0).map(|n| (n * 10.0).round() as u16)
        });
        let emulsion = collect(p, "emulsion", parse_text(&self.emulsion, TYPED_NAME));
        let coats = |text: &str| parse_whole(text, 0, u32::from(Coats::MAX)).map(|strokes| strokes as u8);
        let print = collect_optional(p, "coats_print", &self.coats_print, coats);
        let squeegee = collect_optional(p, "coats_squeegee", &self.coats_squeegee, coats);
        let colour = collect(p, "colour", parse_text(&self.colour, TYPED_NAME));
        let notes = collect(p, "notes", parse_text(&self.notes, TYPED_NOTE));
        let (Some(label), Some(emulsion), Some(colour), Some(notes), true) =
            (label, emulsion, colour, notes, problems.is_empty())
        else {
            return Err(problems);
        };
        let coats = (print.is_some() || squeegee.is_some())
            .then(|| Coats { print: print.unwrap_or(0), squeegee: squeegee.unwrap_or(0) });
        let now = vec![
            ScreenField::Label(label),
            ScreenField::Mesh(mesh),
            ScreenField::Tension(tension),
            ScreenField::Emulsion(emulsion),
            ScreenField::Coats(coats),
            ScreenField::Colour(colour),
            ScreenField::Run(self.run),
            ScreenField::Notes(notes),
        ];
        let fields = match shop.screens.live(id) {
            Some(screen) => changed_fields(now, &fields_of(screen)),
            None => now,
        };
        Ok(if fields.is_empty() { Vec::new() } else { vec![(id, Fact::Screen(ScreenFact::Set(fields)))] })
    }
}

/// The current values of a screen's fields.
pub(crate) fn fields_of(screen: &Screen) -> Vec<ScreenField> {
    vec![
        ScreenField::Label(screen.label.clone()),
        ScreenField::Mesh(screen.mesh),
        ScreenField::Tension(screen.tension),
        ScreenField::Emulsion(screen.emulsion.clone()),
        ScreenField::Coats(screen.coats),
        ScreenField::Colour(screen.colour.clone()),
        ScreenField::Run(screen.run),
        ScreenField::Notes(screen.notes.clone()),
    ]
}

/// Checks that no other screen in the shop's list has this label.
pub(crate) fn free_label(shop: &Shop, text: &str, id: Subject) -> Result<String, FormProblem> {
    let label = parse_required_name(text)?;
    let typed = normalized_label(&label);
    if typed.is_empty() {
        return Err(FormProblem::Missing);
    }
    if label.chars().count() > LABEL {
        return Err(FormProblem::TooLong { most: LABEL });
    }
    let taken = shop.screens.iter().any(|(other, screen)| other != id && normalized_label(&screen.label) == typed);
    if taken { Err(FormProblem::Taken) } else { Ok(label) }
}

/// The form of the screen room's settings. Times are in minutes, limits in days.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct ScreenSettingsForm {
    /// Days a coated screen may wait.
    pub coated_days: String,
    /// Days a stencil may stay in the mesh.
    pub exposed_days: String,
    /// To remove a stencil.
    pub reclaim: String,
    /// To degrease and coat.
    pub coat: String,
    /// To dry after coating.
    pub dry: String,
    /// To expose.
    pub expose: String,
    /// To wash out and dry.
    pub wash_dry: String,
    /// To tape.
    pub tape: String,
}

impl ScreenSettingsForm {
    /// The form filled in from the shop's current settings.
    pub fn of(shop: &Shop) -> Self {
        let (limits, times) = (shop.screens.limits, shop.screens.times);
        let minutes = |time: Seconds| trim_number(time.seconds() / 60.0);
        Self {
            coated_days: limits.coated.to_string(),
            exposed_days: limits.exposed.to_string(),
            reclaim: minutes(times.reclaim),
            coat: minutes(times.coat),
            dry: minutes(times.dry),
            expose: minutes(times.expose),
            wash_dry: minutes(times.wash_dry),
            tape: minutes(times.tape),
        }
    }

    /// The facts that change the settings, only for those that differ.
    ///
    /// # Errors
    /// [`Problems`] by the names of this form's fields.
    pub fn check(&self, shop: &Shop) -> Result<Vec<(Subject, Fact)>, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let mut days = |field, text: &str| {
            let read = parse_whole(text, 1, u32::from(AgeLimits::MAX)).map(|days| days as u16);
            collect_number(p, field, read).unwrap_or(1)
        };
        let limits = AgeLimits {
            coated: days("coated_days", &self.coated_days),
            exposed: days("exposed_days", &self.exposed_days),
        };
        let mut minutes = |field, text: &str| {
            let read = parse_number(text, 0.0, f64::from(StepTimes::MAX_MINUTES));
            Seconds::new(collect_number(p, field, read).unwrap_or(0.0) * 60.0)
        };
        let times = StepTimes {
            reclaim: minutes("reclaim", &self.reclaim),
            coat: minutes("coat", &self.coat),
            dry: minutes("dry", &self.dry),
            expose: minutes("expose", &self.expose),
            wash_dry: minutes("wash_dry", &self.wash_dry),
            tape: minutes("tape", &self.tape),
        };
        if !problems.is_empty() {
            return Err(problems);
        }
        let mut facts = Vec::new();
        if limits != shop.screens.limits {
            facts.push((SHOP, Fact::Screen(ScreenFact::AgeLimits(limits))));
        }
        // The form shows times with two decimals: compare the text, so that an unedited form changes
        // nothing.
        let before = Self::of(shop);
        let typed = [&self.reclaim, &self.coat, &self.dry, &self.expose, &self.wash_dry, &self.tape];
        if typed != [&before.reclaim, &before.coat, &before.dry, &before.expose, &before.wash_dry, &before.tape] {
            facts.push((SHOP, Fact::Screen(ScreenFact::StepTimes(times))));
        }
        Ok(facts)
    }
}
