//! The list of meshes on the shop's screens.

use crate::collections::sort_by_key;
use crate::facts::MeshSheet;
use crate::screen::mesh_volume;
use crate::shop::Shop;

/// A mesh and the screens it is stretched on.
#[derive(Clone, Debug, PartialEq)]
pub struct MeshRow {
    /// Its data sheet.
    pub sheet: MeshSheet,
    /// Labels of those screens, in alphabetical order.
    pub labels: Vec<String>,
}

impl MeshRow {
    /// Whether the data sheet has enough values for an ink volume.
    pub fn is_full(&self) -> bool {
        mesh_volume(&self.sheet).is_ok()
    }
}

/// Every mesh of the shop's screens once, the coarsest first.
pub fn mesh_rows(shop: &Shop) -> Vec<MeshRow> {
    let mut rows: Vec<MeshRow> = Vec::new();
    for (_, screen) in shop.screens.iter() {
        let Some(sheet) = screen.mesh else { continue };
        match rows.iter_mut().find(|row| row.sheet == sheet) {
            Some(row) => row.labels.push(screen.label.clone()),
            None => rows.push(MeshRow { sheet, labels: vec![screen.label.clone()] }),
        }
    }
    for row in &mut rows {
        sort_by_key(&mut row.labels, Clone::clone);
    }
    sort_by_key(&mut rows, |row| (row.sheet.count.per_inch(), row.sheet.cloth(), row.labels.clone()));
    rows
}
