//! View of a weigh-in at the scale, one component at a time.

use super::label::HeldRevision;
use crate::colour::Colour;
use crate::ids::Subject;
use crate::ink::recipe::rows::component_name;
use crate::ink::recipe::scaled::accurate_batch;
use crate::ink::{OverPour, StepState, WeighIn, WeighStep, over_pour, pot_state, revision_name, stock_left, weigh_in};
use crate::shop::Shop;
use crate::units::Grams;

/// A component at the scale.
#[derive(Clone, Debug, PartialEq)]
pub struct WeighRow {
    /// Its target, its weight poured and its state.
    pub step: WeighStep,
    /// Its name.
    pub name: String,
    /// Its colour.
    pub colour: Option<Colour>,
    /// The percent of the batch that the recipe asks for.
    pub percent: f64,
    /// What the scale will show when it is in; `None` if nothing is left to pour.
    pub scale_target: Option<Grams>,
    /// Weight left on the shelf; `None` until it was weighed or delivered.
    pub left: Option<Grams>,
    /// How much of the weight still to pour is missing on the shelf.
    pub lacks: Grams,
    /// The smallest batch in which the scale weighs it to a hundredth of itself, if this batch asks for less than half
    /// a step of it, so that the one step to pour is at least twice as much. `None` otherwise.
    pub accurate_batch: Option<Grams>,
}

/// The weigh-in.
#[derive(Clone, Debug, PartialEq)]
pub struct WeighInView {
    /// The pot.
    pub pot: Subject,
    /// The name written on it.
    pub name: String,
    /// The revision being weighed.
    pub holds: HeldRevision,
    /// Weight of the empty pot; `None` if the scale is zeroed with it on.
    pub tare: Option<Grams>,
    /// Smallest step of the scale.
    pub scale_step: Grams,
    /// Weight that the scale shows now.
    pub on_scale: Grams,
    /// Weight in the pot.
    pub holds_grams: Grams,
    /// Weight of everything that will be in it.
    pub total: Grams,
    /// Weight beyond the pot's capacity; zero if it fits or the capacity is unknown.
    pub spills: Grams,
    /// Weight beyond the scale's capacity, vessel included.
    pub overloads: Grams,
    /// The components, in the order they are weighed.
    pub rows: Vec<WeighRow>,
    /// Index of the component being weighed; `None` if all are in, or an over-pour must be decided first.
    pub now: Option<usize>,
    /// Index of the component after it.
    pub then: Option<usize>,
    /// Largest relative rounding error of any component.
    pub worst: f64,
    /// The over-pour, and both ways to repair it.
    pub over: Option<OverPour>,
    /// The event that undo deletes.
    pub undo: Option<Subject>,
    /// Whether everything is in.
    pub done: bool,
}

/// The weigh-in of a pot; `None` if it has no revision or no size. `choice` is a component picked out of turn.
pub fn weigh_in_view(shop: &Shop, id: Subject, choice: Option<Subject>) -> Option<WeighInView> {
    let weighing = weigh_in(shop, id)?;
    let pot = shop.ink.pot(id)?;
    let state = pot_state(shop, id);
    let tare = pot.tare.unwrap_or_default();
    let on_scale = weighing.holds.saturating_add(tare);
    let over = over_pour(shop, id, &weighing);
    let to_pour = |step: &&WeighStep| step.state == StepState::ToPour;
    let chosen = choice.and_then(|choice| weighing.steps.iter().position(|step| step.component == choice));
    let chosen = chosen.filter(|at| weighing.steps.get(*at).as_ref().is_some_and(to_pour));
    let now = chosen.or_else(|| weighing.next()).filter(|_| over.is_none());
    let then = weighing.steps.iter().enumerate().find(|(at, step)| Some(*at) != now && to_pour(step)).map(|(at, _)| at);
    let total = weighing.total();
    let beyond =
        |most: Option<Grams>, weight: Grams| most.map_or(Grams::ZERO, |most| weight.saturating_sub(most).max_zero());
    // A revision saved before everything was in is not the one being weighed.
    let holds = HeldRevision {
        revision: pot.revision.and_then(|id| revision_name(shop, id)),
        changes: if state.base == pot.revision { state.changes } else { 0 },
        as_written: true,
    };
    let error = |step: &WeighStep| {
        let off = step.target.saturating_sub(step.exact).milligrams() as f64;
        if step.exact.is_positive() && !step.accepted { (off / step.exact.milligrams() as f64).abs() } else { 0.0 }
    };
    Some(WeighInView {
        pot: id,
        name: pot.name.clone(),
        holds,
        tare: pot.tare,
        scale_step: shop.ink.scale.step,
        on_scale,
        holds_grams: weighing.holds,
        total,
        spills: beyond(pot.capacity, total),
        overloads: beyond(shop.ink.scale.most, total.saturating_add(tare)),
        rows: weighing.steps.iter().map(|step| row(shop, &weighing, *step, on_scale)).collect(),
        now,
        then: then.filter(|_| now.is_some()),
        worst: weighing.steps.iter().map(error).fold(0.0, f64::max),
        over,
        undo: weighing.last,
        done: weighing.is_done(),
    })
}

fn row(shop: &Shop, weighing: &WeighIn, step: WeighStep, on_scale: Grams) -> WeighRow {
    let component = shop.ink.component(step.component);
    let (left, to_go) = (stock_left(shop, step.component), step.to_go());
    let whole: Grams = weighing.steps.iter().map(|step| step.exact).sum();
    let share = step.exact.milligrams() as f64 / (whole.milligrams().max(1)) as f64;
    let scale = shop.ink.scale.step;
    let too_fine = step.state == StepState::ToPour && !step.accepted && !step.exact.rounded_to(scale).is_positive();
    WeighRow {
        step,
        name: component_name(shop, step.component),
        colour: component.and_then(|component| component.colour),
        percent: share * 100.0,
        accurate_batch: too_fine.then(|| accurate_batch(scale, share)),
        scale_target: to_go.is_positive().then(|| on_scale.saturating_add(to_go)),
        left,
        lacks: left.map_or(Grams::ZERO, |left| to_go.saturating_sub(left.max_zero()).max_zero()),
    }
}
