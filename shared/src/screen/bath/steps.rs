//! Facts that put screens into the bath and take them out, for the batch and its screens together, and the
//! facts that undo them.

use crate::facts::{Fact, FactsWithUndo, ScreenFact, ScreenField, ScreenState, StencilFact};
use crate::form::{FormProblem, Problems};
use crate::ids::Subject;
use crate::screen::{BatchInForm, BatchOutForm, move_facts, moved};
use crate::shop::Shop;
use crate::units::NumberProblem;

impl FactsWithUndo {
    /// Moves screens to a state, and adds the facts that return each to its current state, run and colour.
    fn moves(&mut self, shop: &Shop, ids: &[Subject], to: ScreenState, by: Option<&str>) {
        let facts = move_facts(shop, ids, to, by);
        for (id, fact) in &facts {
            let Some(screen) = shop.screens.live(*id) else { continue };
            self.undo.push(if let Fact::Screen(ScreenFact::Set(_)) = fact {
                let carried = vec![ScreenField::Run(screen.run), ScreenField::Colour(screen.colour.clone())];
                (*id, Fact::Screen(ScreenFact::Set(carried)))
            } else {
                (*id, moved(screen.state, by))
            });
        }
        self.facts.extend(facts);
    }
}

/// The facts that put screens into the bath as the batch with the id `batch`.
///
/// # Errors
/// [`Problems`] as in [`BatchInForm::check`].
pub fn put_in(shop: &Shop, batch: Subject, form: &BatchInForm, by: Option<&str>) -> Result<FactsWithUndo, Problems> {
    let fact = Fact::Stencil(form.check()?);
    let mut step = FactsWithUndo { facts: vec![(batch, fact)], undo: vec![(batch, Fact::Deleted)] };
    step.moves(shop, &form.screens, ScreenState::InBath, by);
    Ok(step)
}

/// The facts that take a batch out of the bath. Its screens are then clean, except those in the form's
/// `not_clean`, which wait to be reclaimed again. A batch that was not recorded when it went in has only a
/// number of screens.
///
/// # Errors
/// [`Problems`] as in [`BatchOutForm::check`], and `count` if no screen came out clean: then the batch
/// should stay in.
pub fn take_out(shop: &Shop, batch: Subject, form: &BatchOutForm, by: Option<&str>) -> Result<FactsWithUndo, Problems> {
    let known = shop.exposure_log.bath.batch(batch).filter(|batch| batch.is_in());
    let Some(known) = known else {
        let fact = Fact::Stencil(form.check(false)?);
        return Ok(FactsWithUndo { facts: vec![(batch, fact)], undo: vec![(batch, Fact::Deleted)] });
    };
    let dirty: Vec<Subject> = known.screens.iter().copied().filter(|id| form.not_clean.contains(id)).collect();
    let clean = u32::from(known.count()).saturating_sub(dirty.len() as u32);
    if clean == 0 {
        let mut problems = Problems::new();
        problems.insert("count", FormProblem::Number(NumberProblem::TooLow { least: 1.0 }));
        return Err(problems);
    }
    let typed = form.count.trim().is_empty() && !dirty.is_empty();
    let counted = BatchOutForm { count: if typed { clean.to_string() } else { form.count.clone() }, ..form.clone() };
    let fact = Fact::Stencil(counted.check(true)?);
    let back = StencilFact::BatchIn { screens: known.screens.clone(), count: known.count() };
    let mut step = FactsWithUndo { facts: vec![(batch, fact)], undo: vec![(batch, Fact::Stencil(back))] };
    let (dirty, clean): (Vec<_>, Vec<_>) =
        still_in_bath(shop, &known.screens).into_iter().partition(|id| dirty.contains(id));
    step.moves(shop, &clean, ScreenState::Clean, by);
    step.moves(shop, &dirty, ScreenState::ToReclaim, by);
    Ok(step)
}

/// The facts that delete a batch recorded by mistake. Its screens that are still in the bath wait to be
/// reclaimed again; screens that have moved on keep their state.
pub fn delete_batch(shop: &Shop, batch: Subject, by: Option<&str>) -> FactsWithUndo {
    let mut step = FactsWithUndo { facts: vec![(batch, Fact::Deleted)], undo: vec![(batch, Fact::Restored)] };
    if let Some(known) = shop.exposure_log.bath.batch(batch).filter(|batch| batch.is_in()) {
        step.moves(shop, &still_in_bath(shop, &known.screens), ScreenState::ToReclaim, by);
    }
    step
}

/// Those of the screens whose state is [`ScreenState::InBath`].
fn still_in_bath(shop: &Shop, screens: &[Subject]) -> Vec<Subject> {
    let lies = |id: &Subject| shop.screens.live(*id).is_some_and(|screen| screen.state == ScreenState::InBath);
    screens.iter().copied().filter(lies).collect()
}
