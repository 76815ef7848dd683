//! How much ink does a run need?

use crate::form::{Problems, keep, required};
use crate::units::{Length, Units, parse_number, parse_whole};

/// What ink is printed on, and through what.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InkUse {
    /// Width of the art.
    pub width: Length,
    /// Height of the art.
    pub height: Length,
    /// Share of that rectangle which prints.
    pub coverage: f64,
    /// Ink volume of the mesh, in cm³/m².
    pub volume: f64,
    /// Strokes that lay ink.
    pub hits: u32,
    /// Pieces.
    pub pieces: u32,
    /// Share of the mesh's ink that goes onto the garment; above one where fabric drinks it.
    pub transfer: f64,
    /// Grams a cubic centimetre of the ink.
    pub density: f64,
}

/// The ink a run needs. Without what stays in pot, screen and flood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InkNeed {
    /// Cubic centimetres in all.
    pub cm3: f64,
    /// Grams in all.
    pub grams: f64,
    /// Grams a print.
    pub grams_a_print: f64,
    /// Prints from a kilogram; none where a print takes nothing.
    pub prints_a_kilogram: Option<f64>,
}

/// The ink a run needs: area × coverage × mesh volume × hits × transfer × density, for each piece.
///
/// Source: arithmetic of the theoretical ink volume; `mesh_ink_use_checks.csv`.
pub fn ink_need(ink: &InkUse) -> InkNeed {
    let square_metres = ink.width.millimetres() * ink.height.millimetres() / 1e6 * ink.coverage;
    let a_print = square_metres * ink.volume * f64::from(ink.hits) * ink.transfer;
    let grams_a_print = a_print * ink.density;
    let pieces = f64::from(ink.pieces);
    InkNeed {
        cm3: a_print * pieces,
        grams: grams_a_print * pieces,
        grams_a_print,
        prints_a_kilogram: (grams_a_print > 0.0).then(|| 1000.0 / grams_a_print),
    }
}

/// The transfer that a weighed run really had: grams used over what would have been used at a
/// transfer of one. None when nothing was to be used.
pub fn transfer_of(ink: &InkUse, grams_used: f64) -> Option<f64> {
    let whole = ink_need(&InkUse { transfer: 1.0, ..*ink }).grams;
    (whole > 0.0).then(|| grams_used / whole)
}

/// The ink-use form. Lengths in inches or centimetres as the device is set.
#[derive(Clone, Debug, PartialEq)]
pub struct InkUseForm {
    /// Width of the art.
    pub width: String,
    /// Height of the art.
    pub height: String,
    /// Percent of it that prints.
    pub coverage: String,
    /// Strokes that lay ink.
    pub hits: String,
    /// Pieces.
    pub pieces: String,
    /// Percent of the mesh's ink that goes onto the garment.
    pub transfer: String,
    /// Grams a cubic centimetre.
    pub density: String,
}

impl Default for InkUseForm {
    /// As if all the mesh holds went over, of an ink as heavy as water, until the shop has weighed.
    fn default() -> Self {
        let [width, height, pieces] = [const { String::new() }; 3];
        let [coverage, transfer] = ["100", "100"].map(String::from);
        Self { width, height, coverage, hits: "1".into(), pieces, transfer, density: "1".into() }
    }
}

impl InkUseForm {
    /// What is printed, through a mesh of `volume` cm³/m², or what is wrong.
    ///
    /// # Errors
    /// [`Problems`] by field, each named as the form's.
    pub fn check(&self, volume: f64, units: Units) -> Result<InkUse, Problems> {
        let mut problems = Problems::new();
        let p = &mut problems;
        let largest = Length::from_inches(60.0);
        let width = keep(p, "width", required(&self.width, |text| Length::parse(text, largest, units)));
        let height = keep(p, "height", required(&self.height, |text| Length::parse(text, largest, units)));
        let coverage = keep(p, "coverage", required(&self.coverage, |text| parse_number(text, 0.1, 100.0)));
        let hits = keep(p, "hits", required(&self.hits, |text| parse_whole(text, 1, 20)));
        let pieces = keep(p, "pieces", required(&self.pieces, |text| parse_whole(text, 1, 1_000_000)));
        let transfer = keep(p, "transfer", required(&self.transfer, |text| parse_number(text, 1.0, 500.0)));
        let density = keep(p, "density", required(&self.density, |text| parse_number(text, 0.5, 4.0)));
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
    fn grams_a_print_follow_from_area_volume_and_density() {
        let rows = published();
        assert_eq!(rows.len(), 4);
        for (ink, grams, prints) in rows {
            let need = ink_need(&ink);
            assert!((need.grams_a_print - grams).abs() < 1e-5, "{ink:?}: {need:?}");
            assert!((need.prints_a_kilogram.unwrap() / prints - 1.0).abs() < 1e-5, "{ink:?}");
        }
    }

    #[test]
    fn pieces_hits_and_transfer_multiply() {
        for (ink, grams, _) in published() {
            let need = ink_need(&InkUse { hits: 2, pieces: 300, transfer: 0.8, ..ink });
            assert!((need.grams / (grams * 2.0 * 300.0 * 0.8) - 1.0).abs() < 1e-5);
            let real = transfer_of(&InkUse { hits: 2, pieces: 300, ..ink }, need.grams).unwrap();
            assert!((real - 0.8).abs() < 1e-12);
        }
        let nothing = InkUse { pieces: 0, ..published()[0].0 };
        assert_eq!(transfer_of(&nothing, 5.0), None);
        assert_eq!(ink_need(&InkUse { coverage: 0.0, ..nothing }).prints_a_kilogram, None);
    }

    #[test]
    fn what_is_missing_or_impossible_is_answered_beside_its_field() {
        let form = InkUseForm { width: "12".into(), coverage: "120".into(), ..InkUseForm::default() };
        let problems = form.check(25.0, Units::UsCustomary).unwrap_err();
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
        let need = ink_need(&form.check(25.0, Units::Metric).unwrap());
        assert!((need.grams_a_print - 1.422_578).abs() < 1e-4);
    }
}
