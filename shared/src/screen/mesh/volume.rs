//! How open is a mesh, and how much ink can it hold?

use crate::facts::MeshSheet;

/// The open area of a mesh and where the value comes from, as a share between 0 and 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OpenArea {
    /// From the data sheet.
    Sheet(f64),
    /// Computed from the opening and the count on the data sheet.
    FromOpening(f64),
}

impl OpenArea {
    /// The open share of the mesh, between 0 and 1.
    pub fn share(self) -> f64 {
        match self {
            Self::Sheet(share) | Self::FromOpening(share) => share,
        }
    }
}

/// The ink that a mesh can hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeshVolume {
    /// In cm³/m², which is also the height of the wet ink film in micrometres.
    pub cm3_m2: f64,
    /// The open area it was computed with.
    pub open_area: OpenArea,
}

/// The value that is missing on the data sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MissingSheetValue {
    /// Its open area or its opening.
    OpenArea,
    /// Its thickness.
    Thickness,
}

/// The open area of a mesh: the one on its data sheet, or computed from the opening on the sheet as
/// `(opening / pitch)²`. It is never computed from the nominal thread.
///
/// # Errors
/// [`MissingSheetValue::OpenArea`] if the sheet has neither, or an opening that is too large for its count.
///
/// Source: "Theoretical ink deposit", wire-cloth suppliers' definitions of w, d and the open area.
pub fn open_area(sheet: &MeshSheet) -> Result<OpenArea, MissingSheetValue> {
    if let Some(permille) = sheet.open_area_permille {
        return Ok(OpenArea::Sheet(f64::from(permille) / 1000.0));
    }
    let (opening, pitch) = sheet.opening_um.zip(sheet.count.pitch_um()).ok_or(MissingSheetValue::OpenArea)?;
    let opening = f64::from(opening);
    if opening >= pitch {
        return Err(MissingSheetValue::OpenArea);
    }
    Ok(OpenArea::FromOpening(open_share(opening, pitch - opening)))
}

/// The open share of a square weave, `(w / (w + d))²`, from its opening `w` and its wire `d` as woven. Both
/// must be in the same unit.
///
/// ```
/// use lastpull_core::screen::open_share;
///
/// assert_eq!(open_share(60.0, 60.0), 0.25);
/// ```
///
/// Source: geometry of ASTM E11 sieve cloth; `mesh_astm_e11_geometry.csv`.
pub fn open_share(opening: f64, wire: f64) -> f64 {
    let side = opening / (opening + wire);
    side * side
}

/// The theoretical ink volume of a mesh in cm³/m²: open area × thickness in micrometres. The ink that a
/// print takes differs: weigh it and calibrate.
///
/// ```
/// use lastpull_core::screen::{MeshCount, MeshSheet, MissingSheetValue, mesh_volume};
///
/// let count_only = MeshSheet::of_count(MeshCount::PerInch(225));
/// assert_eq!(mesh_volume(&count_only), Err(MissingSheetValue::OpenArea));
///
/// let sheet = MeshSheet { open_area_permille: Some(420), thickness_um: Some(59), ..count_only };
/// assert!((mesh_volume(&sheet).unwrap().cm3_m2 - 24.78).abs() < 0.001);
/// ```
///
/// # Errors
/// [`MissingSheetValue`] if the data sheet has too few values.
///
/// Source: "Theoretical ink volume", Vth = Ao × D, wire-cloth suppliers' definition.
pub fn mesh_volume(sheet: &MeshSheet) -> Result<MeshVolume, MissingSheetValue> {
    let open_area = open_area(sheet)?;
    let thickness = sheet.thickness_um.ok_or(MissingSheetValue::Thickness)?;
    Ok(MeshVolume { cm3_m2: open_area.share() * f64::from(thickness), open_area })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::MeshCount;

    /// The rows whose source was opened: cells by column.
    fn opened_rows() -> Vec<Vec<&'static str>> {
        let table = include_str!("../../../tests/data/mesh_table_and_residuals.csv");
        table.lines().map(|row| row.split(',').collect::<Vec<_>>()).filter(|cells| cells[1] == "opened").collect()
    }

    fn sheet_of(cells: &[&str]) -> MeshSheet {
        let number = |cell: &str| cell.parse::<f64>().ok();
        let um = |cell: &str| number(cell).map(|um| um as u16);
        let count = um(cells[2]).map_or_else(|| MeshCount::PerCentimetre(um(cells[3]).unwrap()), MeshCount::PerInch);
        MeshSheet {
            thread_um: um(cells[4]),
            opening_um: um(cells[6]),
            open_area_permille: number(cells[7]).map(|percent| (percent * 10.0) as u16),
            thickness_um: um(cells[8]),
            ..MeshSheet::of_count(count)
        }
    }

    /// Source: `mesh_table_and_residuals.csv`, rows S3.1 "Screen Specifications".
    #[test]
    fn ink_volume_is_within_three_percent_of_the_published_sheets() {
        let mut read = 0;
        for cells in opened_rows() {
            let Ok(published) = cells[9].parse::<f64>() else { continue };
            let volume = mesh_volume(&sheet_of(&cells)).unwrap();
            assert!(matches!(volume.open_area, OpenArea::Sheet(_)));
            assert!((volume.cm3_m2 / published - 1.0).abs() <= 0.03, "{cells:?}: {volume:?}");
            read += 1;
        }
        assert_eq!(read, 3);
    }

    /// Source: the same file, rows with opening and open area; a published percent is a whole one.
    #[test]
    fn open_area_from_the_opening_is_within_one_percent_of_the_mesh() {
        let mut read = 0;
        for cells in opened_rows() {
            let sheet = sheet_of(&cells);
            let (Some(published), Some(_)) = (sheet.open_area_permille, sheet.opening_um) else { continue };
            let computed = open_area(&MeshSheet { open_area_permille: None, ..sheet }).unwrap();
            assert!(matches!(computed, OpenArea::FromOpening(_)));
            assert!((computed.share() - f64::from(published) / 1000.0).abs() < 0.01, "{cells:?}: {computed:?}");
            read += 1;
        }
        assert_eq!(read, 5);
    }

    /// Source: row M5, a twill of 480 an inch: 9 % open, and 17 % by its nominal thread.
    #[test]
    fn a_nominal_thread_alone_gives_no_open_area() {
        let cells = opened_rows().into_iter().find(|cells| cells[0] == "M5").unwrap();
        let sheet = MeshSheet { open_area_permille: None, opening_um: None, ..sheet_of(&cells) };
        assert!(sheet.thread_um.is_some());
        assert_eq!(mesh_volume(&sheet), Err(MissingSheetValue::OpenArea));
        let sheet = MeshSheet { thickness_um: None, ..sheet_of(&cells) };
        assert_eq!(mesh_volume(&sheet), Err(MissingSheetValue::Thickness));
    }

    #[test]
    fn an_opening_wider_than_its_pitch_gives_no_open_area() {
        let sheet = MeshSheet { opening_um: Some(200), ..MeshSheet::of_count(MeshCount::PerInch(225)) };
        assert_eq!(open_area(&sheet), Err(MissingSheetValue::OpenArea));
    }

    /// Source: `mesh_astm_e11_geometry.csv`, apertures and wires of ASTM E11-01 Table 1.
    #[test]
    fn the_open_share_of_sieve_cloth_matches_its_aperture_and_wire() {
        let table = include_str!("../../../tests/data/mesh_astm_e11_geometry.csv");
        let mut read = 0;
        for row in table.lines().skip(1) {
            let cells: Vec<&str> = row.split(',').collect();
            let [aperture, wire, percent] = [0, 1, 5].map(|column: usize| cells[column].parse::<f64>().unwrap());
            assert!((open_share(aperture, wire) * 100.0 - percent).abs() < 0.006, "{row}");
            read += 1;
        }
        assert_eq!(read, 10);
    }
}
