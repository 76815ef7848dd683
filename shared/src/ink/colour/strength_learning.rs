//! The corrections from which a component's tinting strength is learned.

use super::characterised::Knowledge;
use crate::colour::{Constants, Lesson};
use crate::facts::{InkFact, PourStep, lab_of};
use crate::ids::Subject;
use crate::ink::pot::reading::{Ground, held, last_reading, moments, weights_of};

/// Most corrections used, the latest of them: our own.
const MOST: usize = 8;

/// Least movement predicted, in L*a*b*, for a correction to count whose result was only found to match by eye: the eye
/// misses about one unit. Our own.
const SEEN_BY_EYE: f64 = 3.0;

/// The corrections with this component alone whose pot was read before and after, each with the colour that the
/// drawdowns predict. Nothing may be added between the correction and either reading. If the pot was not read
/// afterwards but found to match, it counts as having its target colour. Two components between two readings do not
/// count: one colour does not tell which of them was the stronger.
pub(crate) fn lessons_of(knowledge: &mut Knowledge, component: Subject) -> Vec<Lesson> {
    let shop = knowledge.shop;
    let mut lessons = Vec::new();
    for (event, row) in shop.ink.events_of(component).into_iter().rev() {
        let InkFact::Poured { pot, component: of, step: PourStep::Correction, .. } = &row.fact else { continue };
        if row.deleted || *of != component {
            continue;
        }
        lessons.extend(lesson(knowledge, *pot, event));
        if lessons.len() == MOST {
            break;
        }
    }
    lessons
}

fn lesson(knowledge: &mut Knowledge, pot: Subject, event: Subject) -> Option<Lesson> {
    let shop = knowledge.shop;
    let (state, moments) = moments(shop, pot);
    let place = moments.iter().position(|moment| moment.event == event)?;
    let (component, grams) = moments.get(place)?.poured??;
    let (before, contents) = last_reading(moments.get(..place)?)?;
    if before.since > 0 {
        return None;
    }
    let read = |moment: &crate::ink::pot::reading::Moment| moment.reading;
    let later = || moments.iter().skip(place + 1).take_while(|moment| moment.poured.is_none());
    let measured = moments.get(place).and_then(read).or_else(|| later().find_map(read));
    let recipe = crate::ink::batch::needs::recipe_of(shop, &state);
    let target = || {
        let found = later().any(|moment| moment.matched);
        shop.ink.recipe(recipe?)?.target.filter(|_| found)
    };
    let after = lab_of(measured.or_else(target)?);
    let ground = Ground::of(shop, pot, recipe);
    // From the drawdowns alone: the learned strength is what is to be learned here.
    let mut parts: Vec<(f64, Constants)> = Vec::new();
    for (id, weight) in weights_of(contents) {
        parts.push((weight, knowledge.plain(id)?.constants));
    }
    let parts: Vec<(f64, &Constants)> = parts.iter().map(|(weight, constants)| (*weight, constants)).collect();
    let then = Constants::mix(&parts)?;
    let (here, _) = held(&then, &then, ground.seen(), before.reading);
    let added = knowledge.plain(component)?.constants;
    let predicted = Constants::mix(&[(contents.total().grams(), &here), (grams, &added)])?;
    let predicted = ground.seen().look(&predicted).lab();
    let before = lab_of(before.reading);
    let moves = (predicted.l - before.l).hypot(predicted.a - before.a).hypot(predicted.b - before.b);
    (measured.is_some() || moves >= SEEN_BY_EYE).then_some(Lesson { before, predicted, after })
}
