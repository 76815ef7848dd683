//! The form of what a print takes.

use crate::facts::PrintUse;
use crate::form::{Problems, collect, parse_required, trim_number};
use crate::ids::RunId;
use crate::ink::{best_revision, density_of, percentages, recipe_named, revisions_of};
use crate::screen::{InkUseForm, mesh_volume, screens_of};
use crate::shop::Shop;
use crate::units::{Units, parse_number};
use serde::{Deserialize, Serialize};

/// The form of how much ink a print takes. The number of pieces is the run's and is not typed: a pot is made for what
/// is left to print.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct PrintForm {
    /// Art, coverage in percent, hits, pieces, transfer in percent, density in g/cm³.
    pub ink: InkUseForm,
    /// Ink volume of the mesh, in cm³/m².
    pub volume: String,
    /// Extra to mix for what stays in pot, screen and flood, in percent.
    pub loss: String,
}

impl Default for PrintForm {
    /// A tenth more than is printed: our own, until the shop has weighed.
    fn default() -> Self {
        Self { ink: InkUseForm::default(), volume: String::new(), loss: "10".into() }
    }
}

impl PrintForm {
    /// The form for a run: as calculated before, else from its set-up, its screen's data sheet and the density of its
    /// ink's components; for the pieces left, or for one if none are left.
    pub fn of(shop: &Shop, run: RunId, units: Units) -> Self {
        let mut form = Self::default();
        form.ink.pieces = shop.pieces_left(run).max(1).to_string();
        if let Some(print) = shop.ink.print(run) {
            let permille = |value: u16| trim_number(f64::from(value) / 10.0);
            form.ink.width = print.width.text(units);
            form.ink.height = print.height.text(units);
            form.ink.coverage = permille(print.coverage);
            form.ink.hits = print.hits.to_string();
            form.ink.transfer = permille(print.transfer);
            form.ink.density = (f64::from(print.density) / 1000.0).to_string();
            form.volume = trim_number(f64::from(print.volume) / 100.0);
            form.loss = permille(print.loss);
            return form;
        }
        let Some(this) = shop.run(run) else { return form };
        form.ink.hits = this.set_up.hits.max(1).to_string();
        if let Some(volume) = run_volume(shop, run) {
            form.volume = trim_number(volume);
        }
        if let Some(density) = ink_density(shop, &this.ink) {
            form.ink.density = trim_number(density);
        }
        form
    }

    /// How much ink a print takes, and the number of pieces; or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field: `width`, `height`, `coverage`, `hits`, `pieces`, `transfer`, `density`, `volume`, `loss`.
    pub fn check(&self, units: Units) -> Result<(PrintUse, u32), Problems> {
        let (ink, mut problems) = match self.ink.check(1.0, units) {
            Ok(ink) => (Some(ink), Problems::new()),
            Err(problems) => (None, problems),
        };
        let p = &mut problems;
        let volume = collect(p, "volume", parse_required(&self.volume, |text| parse_number(text, 1.0, 600.0)));
        let loss = collect(p, "loss", parse_required(&self.loss, |text| parse_number(text, 0.0, 500.0)));
        match (ink, volume, loss) {
            (Some(ink), Some(volume), Some(loss)) => {
                let print = PrintUse {
                    width: ink.width,
                    height: ink.height,
                    coverage: (ink.coverage * 1000.0).round() as u16,
                    volume: (volume * 100.0).round() as u16,
                    hits: ink.hits as u8,
                    transfer: (ink.transfer * 1000.0).round() as u16,
                    density: (ink.density * 1000.0).round() as u16,
                    loss: (loss * 10.0).round() as u16,
                };
                Ok((print, ink.pieces))
            }
            _ => Err(problems),
        }
    }
}

/// Ink volume of the first of a run's screens whose data sheet has it, in cm³/m².
fn run_volume(shop: &Shop, run: RunId) -> Option<f64> {
    let screens = screens_of(shop, run);
    let sheets = screens.iter().filter_map(|found| shop.screens.live(found.screen?)?.mesh);
    sheets.filter_map(|sheet| mesh_volume(&sheet).ok()).map(|volume| volume.cm3_m2).next()
}

/// Density of an ink from those of its components, in g/cm³, assuming that volumes add up. `None` if its recipe, or the
/// density of one of its components, is unknown.
fn ink_density(shop: &Shop, ink: &str) -> Option<f64> {
    let (recipe, _) = recipe_named(shop, ink)?;
    let revision = best_revision(shop, recipe).or_else(|| revisions_of(shop, recipe).last().map(|last| last.id))?;
    density_of(shop, &percentages(shop.ink.revision(revision)?.parts))
}
