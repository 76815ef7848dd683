//! Do the screens of a run have the mesh that its set-up asks for?

use super::labels::match_labels;
use crate::facts::MeshCount;
use crate::shop::Shop;

/// Threads per inch by which two counts of the same mesh may differ: one counted per centimetre is sold under a rounded
/// count per inch. Our own.
const SAME_MESH: u16 = 3;

/// A screen with another mesh than its run asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OtherMesh {
    /// Label of the screen.
    pub label: String,
    /// Its mesh.
    pub count: MeshCount,
}

/// The screens of a line of labels whose mesh is known and differs from this one, in threads per inch.
pub fn other_mesh(shop: &Shop, labels: &str, mesh: Option<u16>) -> Vec<OtherMesh> {
    let Some(mesh) = mesh else { return Vec::new() };
    let found = match_labels(shop, labels).into_iter().filter_map(|found| {
        let count = shop.screens.live(found.screen?)?.mesh?.count;
        (count.per_inch().abs_diff(mesh) > SAME_MESH).then_some(OtherMesh { label: found.label, count })
    });
    found.collect()
}
