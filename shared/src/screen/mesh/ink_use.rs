//! How much ink does a run need?

use crate::form::{Problems, collect, parse_required};
use crate::units::{Length, Units, parse_number, parse_whole};
use serde::{Deserialize, Serialize};

/// A print: its size, mesh and ink.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InkUse {
    /// Width of the art.
    pub width: Length,
    /// Height of the art.
    pub height: Length,
    /// Share of that rectangle that is printed, 0 to 1.
    pub coverage: f64,
    /// Ink volume of the mesh, in cm³/m².
    pub volume: f64,
    /// Number of strokes that print ink.
    pub hits: u32,
    /// Number of pieces.
    pub pieces: u32,
    /// Share of the mesh's ink that goes onto the garment; above 1 if the fabric absorbs more.
    pub transfer: f64,
    /// Density of the ink in g/cm³.
    pub density: f64,
}

/// The ink a run needs, without what remains in the pot, the screen and the flood stroke.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InkNeed {
    /// Total volume in cm³.
    pub cm3: f64,
    /// Total in grams.
    pub grams: f64,
    /// Grams per print.
    pub grams_per_print: f64,
    /// Number of prints per kilogram; `None` if a print takes no ink.
    pub prints_per_kilogram: Option<f64>,
}

/// The ink a run needs: area × coverage × mesh volume × hits × transfer × density for each piece.
///
/// ```
/// use lastpull_core::units::Length;
/// use lastpull_core::screen::{InkUse, ink_need};
///
/// let need = ink_need(&InkUse {
///     width: Length::from_inches(12.0),
///     height: Length::from_inches(14.0),
///     coverage: 0.5,
///     volume: 25.0,
///     hits: 1,
///     pieces: 100,
///     transfer: 1.0,
///     density: 1.05,
/// });
/// assert!((need.grams_per_print - 1.422578).abs() < 1e-5);
/// ```
///
/// Source: arithmetic of the theoretical ink volume; `mesh_ink_use_checks.csv`.
pub fn ink_need(ink: &InkUse) -> InkNeed {
    let square_metres = ink.width.millimetres() * ink.height.millimetres() / 1e6 * ink.coverage;
    let a_print = square_metres * ink.volume * f64::from(ink.hits) * ink.transfer;
    let grams_per_print = a_print * ink.density;
    let pieces = f64::from(ink.pieces);
    InkNeed {
        cm3: a_print * pieces,
        grams: grams_per_print * pieces,
        grams_per_print,
        prints_per_kilogram: (grams_per_print > 0.0).then(|| 1000.0 / grams_per_print),
    }
}

/// The transfer of a run that was weighed: the grams used, divided by the grams for a transfer of 1. `None`
/// if no ink was needed.
pub fn measured_transfer(ink: &InkUse, grams_used: f64) -> Option<f64> {
    let whole = ink_need(&InkUse { transfer: 1.0, ..*ink }).grams;
    (whole > 0.0).then(|| grams_used / whole)
}

/// The form for computing ink use. Lengths are in inches or centimetres, according to the device's units.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct InkUseForm {
    /// Width of the art.
    pub width: String,
    /// Height of the art.
    pub height: String,
    /// Percent of that rectangle that is printed.
    pub coverage: String,
    /// Number of strokes that print ink.
    pub hits: String,
    /// Number of pieces.
    pub pieces: String,
    /// Percent of the mesh's ink that goes onto the garment.
    pub transfer: String,
    /// Density of the ink in g/cm³.
    pub density: String,
}

impl Default for InkUseForm {
    /// Until the shop has weighed: all ink in the mesh is transferred, and it has the density of water.
    fn default() -> Self {
        let [width, height, pieces] = [const { String::new() }; 3];
        let [coverage, transfer] = ["100", "100"].map(String::from);
        Self { width, height, coverage, hits: "1".into(), pieces, transfer, density: "1".into() }
    }
}

impl InkUseForm {
    /// The print, through a mesh with an ink volume of `volume` cm³/m².
    ///
    /// # Errors
    /// [`Problems`] by the names of this form's fields.
    pub fn check(&self, volume: f64, units: Units) -> Result<InkUse, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let largest = Length::from_inches(60.0);
        let width = collect(p, "width", parse_required(&self.width, |text| Length::parse(text, largest, units)));
        let height = collect(p, "height", parse_required(&self.height, |text| Length::parse(text, largest, units)));
        let coverage = collect(p, "coverage", parse_required(&self.coverage, |text| parse_number(text, 0.1, 100.0)));
        let hits = collect(p, "hits", parse_required(&self.hits, |text| parse_whole(text, 1, 20)));
        let pieces = collect(p, "pieces", parse_required(&self.pieces, |text| parse_whole(text, 1, 1_000_000)));
        let transfer = collect(p, "transfer", parse_required(&self.transfer, |text| parse_number(text, 1.0, 500.0)));
        let density = collect(p, "density", parse_required(&self.density, |text| parse_number(text, 0.5, 4.0)));
        match (width, height, coverage, hits, pieces, transfer, density) {
            (Some(width), Some(height), Some(coverage), Some(hits), Some(pieces), Some(transfer), Some(density)) => {
                let (coverage, transfer) = (coverage / 100.0, transfer / 100.0);
                Ok(InkUse { width, height, coverage, volume, hits, pieces, transfer, density })
            }
            _ => Err(problems),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::form::FormProblem;
    use crate::units::NumberProblem;

    /// Source: `mesh_ink_use_checks.csv`.
    fn published() -> Vec<(InkUse, f64, f64)> {
        let table = include_str!("../../../tests/data/mesh_ink_use_checks.csv");
        let rows = table.lines().skip(1).map(|row| {
            let cells: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
            let ink = InkUse {
                width: Length::from_inches(cells[0]),
                height: Length::from_inches(cells[1]),
                coverage: cells[2],
                volume: cells[3],
                density: cells[4],
                hits: 1,
                pieces: 1,
                transfer: 1.0,
            };
            (ink, cells[5], cells[6])
        });
        rows.collect()
    }

    #[test]
    fn grams_per_print_match_the_published_values() {
        let rows = published();
        assert_eq!(rows.len(), 4);
        for (ink, grams, prints) in rows {
            let need = ink_need(&ink);
            assert!((need.grams_per_print - grams).abs() < 1e-5, "{ink:?}: {need:?}");
            assert!((need.prints_per_kilogram.unwrap() / prints - 1.0).abs() < 1e-5, "{ink:?}");
        }
    }

    #[test]
    fn pieces_hits_and_transfer_multiply() {
        for (ink, grams, _) in published() {
            let need = ink_need(&InkUse { hits: 2, pieces: 300, transfer: 0.8, ..ink });
            assert!((need.grams / (grams * 2.0 * 300.0 * 0.8) - 1.0).abs() < 1e-5);
            let real = measured_transfer(&InkUse { hits: 2, pieces: 300, ..ink }, need.grams).unwrap();
            assert!((real - 0.8).abs() < 1e-12);
        }
        let nothing = InkUse { pieces: 0, ..published()[0].0 };
        assert_eq!(measured_transfer(&nothing, 5.0), None);
        assert_eq!(ink_need(&InkUse { coverage: 0.0, ..nothing }).prints_per_kilogram, None);
    }

    #[test]
    fn missing_and_impossible_values_are_reported_by_field() {
        let form = InkUseForm { width: "12".into(), coverage: "120".into(), ..InkUseForm::default() };
        let problems = form.check(25.0, Units::US).unwrap_err();
        assert_eq!(problems["height"], FormProblem::Missing);
        assert_eq!(problems["pieces"], FormProblem::Missing);
        assert_eq!(problems["coverage"], FormProblem::Number(NumberProblem::TooHigh { most: 100.0 }));
        let form = InkUseForm {
            width: "30,48".into(),
            height: "35.56".into(),
            pieces: "10".into(),
            coverage: "50".into(),
            density: "1.05".into(),
            ..InkUseForm::default()
        };
        let need = ink_need(&form.check(25.0, Units::METRIC).unwrap());
        assert!((need.grams_per_print - 1.422_578).abs() < 1e-4);
    }
}
