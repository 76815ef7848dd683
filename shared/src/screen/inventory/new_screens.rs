//! Adding screens to the shop's list, one or several at once.

use super::label_range::expand_labels;
use super::labels::normalized_label;
use super::moves::moved;
use crate::facts::{Fact, MeshSheet, ScreenState};
use crate::form::Problems;
use crate::ids::Subject;
use crate::screen::{MeshSheetForm, ScreenForm};
use crate::shop::Shop;

impl ScreenForm {
    /// The facts that create a screen for each label in the form's label line, all in the same state. `id`
    /// returns the id of the screen at an index of the line.
    ///
    /// # Errors
    /// As [`ScreenForm::check`].
    pub fn check_new(
        &self,
        shop: &Shop,
        state: ScreenState,
        by: Option<&str>,
        mut id: impl FnMut(usize) -> Subject,
    ) -> Result<Vec<(Subject, Fact)>, Problems> {
        let mut problems = Problems::new();
        let mut facts = Vec::new();
        match expand_labels(&self.label) {
            Err(label) => {
                problems.extend(self.check(shop, id(0)).err().unwrap_or_default());
                problems.insert("label", label);
            }
            Ok(labels) => {
                for (index, label) in labels.into_iter().enumerate() {
                    let id = id(index);
                    match (Self { label, ..self.clone() }).check(shop, id) {
                        Ok(set) => facts.extend(set),
                        Err(found) => problems.extend(found),
                    }
                    let before = shop.screens.live(id).map_or(ScreenState::default(), |screen| screen.state);
                    if before != state {
                        facts.push((id, moved(state, by)));
                    }
                }
            }
        }
        if problems.is_empty() { Ok(facts) } else { Err(problems) }
    }
}

/// The labels of a line.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct NewLabels {
    /// Those that no screen has.
    pub new: Vec<String>,
    /// Those that a screen of the shop already has.
    pub taken: Vec<String>,
}

/// The labels of a line, by whether the shop already has them.
pub fn new_labels(shop: &Shop, line: &str) -> NewLabels {
    let labels = expand_labels(line).unwrap_or_default();
    let is_new = |label: &String| {
        !shop.screens.iter().any(|(_, screen)| normalized_label(&screen.label) == normalized_label(label))
    };
    let (new, taken) = labels.into_iter().partition(is_new);
    NewLabels { new, taken }
}

/// The most complete data sheet that the shop has of a mesh of this count, to copy into the form of another
/// screen. `None` if the form already has values besides the count, or if no screen with this count has
/// any.
pub fn sheet_to_copy(shop: &Shop, form: &MeshSheetForm) -> Option<MeshSheet> {
    let typed = form.check().ok().flatten()?;
    let says = |sheet: &MeshSheet| {
        let MeshSheet { thread_um, opening_um, open_area_permille, thickness_um, .. } = sheet;
        [thread_um, opening_um, open_area_permille, thickness_um].into_iter().flatten().count()
    };
    if says(&typed) > 0 {
        return None;
    }
    let same = shop.screens.iter().filter_map(|(_, screen)| screen.mesh).filter(|mesh| mesh.count == typed.count);
    same.filter(|mesh| says(mesh) > 0).max_by_key(says)
}
