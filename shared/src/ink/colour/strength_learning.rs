//! The corrections from which a component's tinting strength is learned.

use super::characterised::{ColourantLibrary, LearnedStrength};
use crate::colour::{Constants, CorrectionSample, learned_strength};
use crate::facts::{ComponentKind, InkFact, PourStep, lab_of};
use crate::ids::Subject;
use crate::ink::pot::reading::{Added, ViewingConditions, anchor_to_reading, last_reading, snapshots, weights_of};

impl ColourantLibrary<'_> {
    /// Tinting strength learned from corrections. Only of pigments: other components move a colour too little.
    pub(crate) fn strength(&mut self, id: Subject) -> LearnedStrength {
        if let Some((_, found)) = self.strengths.iter().find(|(other, _)| *other == id) {
            return *found;
        }
        let pigment = self.shop.ink.component(id).is_some_and(|component| component.kind == ComponentKind::Pigment);
        let samples = if pigment { correction_samples(self, id) } else { Vec::new() };
        let found = LearnedStrength { factor: learned_strength(&samples), samples: samples.len() as u32 };
        self.strengths.push((id, found));
        found
    }
}

/// Most corrections used, the latest of them: our own.
const MAX_SAMPLES: usize = 8;

/// Least movement predicted, in L*a*b*, for a correction to count whose result was only found to match by eye: the eye
/// misses about one unit. Our own.
const MIN_VISIBLE_MOVE: f64 = 3.0;

/// The corrections with this component alone whose pot was read before and after, each with the colour that the
/// drawdowns predict. Nothing may be added between the correction and either reading. If the pot was not read
/// afterwards but found to match, it counts as having its target colour. Two components between two readings do not
/// count: one colour does not tell which of them was the stronger.
pub(crate) fn correction_samples(library: &mut ColourantLibrary, component: Subject) -> Vec<CorrectionSample> {
    let shop = library.shop;
    let mut samples = Vec::new();
    for (event, row) in shop.ink.events_of(component).into_iter().rev() {
        let InkFact::Poured { pot, component: of, step: PourStep::Correction, .. } = &row.fact else { continue };
        if row.deleted || *of != component {
            continue;
        }
        samples.extend(correction_sample(library, *pot, event));
        if samples.len() == MAX_SAMPLES {
            break;
        }
    }
    samples
}

fn correction_sample(library: &mut ColourantLibrary, pot: Subject, event: Subject) -> Option<CorrectionSample> {
    let shop = library.shop;
    let (state, snapshots) = snapshots(shop, pot);
    let index = snapshots.iter().position(|snapshot| snapshot.event == event)?;
    let Added::Component { component, grams } = snapshots.get(index)?.added else { return None };
    let (before, contents) = last_reading(snapshots.get(..index)?)?;
    if before.since > 0 {
        return None;
    }
    let read = |snapshot: &crate::ink::pot::reading::PotSnapshot| snapshot.reading;
    let later = || snapshots.iter().skip(index + 1).take_while(|snapshot| snapshot.added == Added::Nothing);
    let measured = snapshots.get(index).and_then(read).or_else(|| later().find_map(read));
    let recipe = crate::ink::batch::needs::recipe_of(shop, &state);
    let target = || {
        let found = later().any(|snapshot| snapshot.matched);
        shop.ink.recipe(recipe?)?.target.filter(|_| found)
    };
    let after = lab_of(measured.or_else(target)?);
    let viewing = ViewingConditions::of(shop, pot, recipe);
    // From the drawdowns alone: the learned strength is what is to be learned here.
    let mut parts: Vec<(f64, Constants)> = Vec::new();
    for (id, weight) in weights_of(contents) {
        parts.push((weight, library.characterised(id)?.constants));
    }
    let parts: Vec<(f64, &Constants)> = parts.iter().map(|(weight, constants)| (*weight, constants)).collect();
    let then = Constants::mix(&parts)?;
    let (here, _) = anchor_to_reading(&then, &then, viewing.seen(), before.reading);
    let added = library.characterised(component)?.constants;
    let predicted = Constants::mix(&[(contents.total().grams(), &here), (grams, &added)])?;
    let predicted = viewing.seen().look(&predicted).lab();
    let before = lab_of(before.reading);
    let moves = (predicted.l - before.l).hypot(predicted.a - before.a).hypot(predicted.b - before.b);
    (measured.is_some() || moves >= MIN_VISIBLE_MOVE).then_some(CorrectionSample { before, predicted, after })
}
