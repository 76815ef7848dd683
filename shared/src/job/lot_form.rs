//! The form of a garment lot.

use super::Lot;
use crate::colour::Colour;
use crate::facts::{Fabric, LotField, Size, SizePieces};
use crate::form::{FormProblem, Problems, TYPED_NAME, changed_fields, collect, parse_required_name, parse_text};
use crate::units::parse_whole;
use std::collections::BTreeMap;

/// The form of a garment lot.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct LotForm {
    /// The kind of garment.
    pub garment: String,
    /// The fabric.
    pub fabric: Fabric,
    /// Garment colour as `#rrggbb`.
    pub colour: String,
    /// Name of that colour.
    pub colour_name: String,
    /// Number of pieces of each size, as typed.
    pub pieces: BTreeMap<Size, String>,
}

impl LotForm {
    /// The form filled in from a lot.
    pub fn of(lot: &Lot) -> Self {
        Self {
            garment: lot.garment.clone(),
            fabric: lot.fabric,
            colour: lot.colour.map(|colour| colour.to_string()).unwrap_or_default(),
            colour_name: lot.colour_name.clone(),
            pieces: lot.pieces.iter().map(|(size, pieces)| (*size, pieces.to_string())).collect(),
        }
    }

    /// The fields that changed, compared with `before`; all of them for a new lot.
    ///
    /// # Errors
    /// [`Problems`] by field: `garment`, `colour_name`, `pieces`.
    pub fn check(&self, before: Option<&Lot>) -> Result<Vec<LotField>, Problems> {
        let mut problems = Problems::new();
        let garment = collect(&mut problems, "garment", parse_required_name(&self.garment));
        let colour_name = collect(&mut problems, "colour_name", parse_text(&self.colour_name, TYPED_NAME));
        let mut pieces = Vec::new();
        for (size, text) in &self.pieces {
            if text.trim().is_empty() {
                continue;
            }
            match parse_whole(text, 0, 100_000) {
                Ok(0) => {}
                Ok(count) => pieces.push(SizePieces { size: *size, pieces: count }),
                Err(problem) => {
                    problems.insert("pieces", FormProblem::Number(problem));
                }
            }
        }
        if pieces.is_empty() {
            problems.entry("pieces").or_insert_with(|| FormProblem::NoPieces);
        }
        let (Some(garment), Some(colour_name), true) = (garment, colour_name, problems.is_empty()) else {
            return Err(problems);
        };
        let mut fields = vec![
            LotField::Garment(garment),
            LotField::Fabric(self.fabric),
            LotField::ColourName(colour_name),
            LotField::Pieces(pieces),
        ];
        fields.extend(Colour::from_hex(&self.colour).map(LotField::Colour));
        Ok(match before {
            Some(lot) => {
                let mut standing = vec![
                    LotField::Garment(lot.garment.clone()),
                    LotField::Fabric(lot.fabric),
                    LotField::ColourName(lot.colour_name.clone()),
                    LotField::Pieces(lot.pieces.iter().map(|(&size, &pieces)| SizePieces { size, pieces }).collect()),
                ];
                standing.extend(lot.colour.map(LotField::Colour));
                changed_fields(fields, &standing)
            }
            None => fields,
        })
    }
}
