//! The facts that take back what happened to a screen.

use crate::facts::{BurnStep, Fact, ScreenFact, ScreenField, ScreenState};
use crate::ids::Subject;
use crate::screen::model::timed_state::TimedState;
use crate::screen::{Screen, ScreenChange, ScreenEvent};
use crate::shop::Shop;
use crate::time::WallTime;

/// The fact that returns a screen to its current state.
pub fn restore_fact(screen: &Screen) -> Fact {
    undone_fact(screen.timed_state())
}

/// The latest change of a screen, and the fact that undoes it and restores the screen's age.
pub fn undo_latest(screen: &Screen) -> Option<(&ScreenChange, Fact)> {
    screen.log.last().zip(screen.before_latest().map(undone_fact))
}

/// The fact that undoes a step of a screen and everything after it: the screen is then in the state before
/// that step, with the age it had there. If its changes do not contain the step, the age begins at wall
/// time `now`.
pub fn undo_step_fact(screen: &Screen, step: BurnStep, now: WallTime) -> Fact {
    let mut state = screen.initial_state();
    let mut before = None;
    for change in &screen.log {
        before = if step_made(state, change.what) == Some(step) { Some(state) } else { before };
        state = state.after(change.at, change.what);
    }
    undone_fact(before.unwrap_or_else(|| {
        let (state, dry) = match step {
            BurnStep::Reclaim => (ScreenState::ToReclaim, false),
            BurnStep::Coat => (ScreenState::Clean, false),
            BurnStep::Dry | BurnStep::Expose => (ScreenState::Coated, step == BurnStep::Expose),
            BurnStep::WashDry | BurnStep::Tape => (ScreenState::Exposed, step == BurnStep::Tape),
        };
        let exposed = screen.exposed.filter(|_| state.has_image());
        TimedState { state, since: now, dry: dry.then_some(now), exposed }
    }))
}

/// The step that is done by a change of a screen in this state, if it is one.
fn step_made(before: TimedState, what: ScreenEvent) -> Option<BurnStep> {
    match what {
        ScreenEvent::To(ScreenState::Clean) => Some(BurnStep::Reclaim),
        ScreenEvent::To(ScreenState::Coated) => Some(BurnStep::Coat),
        ScreenEvent::To(ScreenState::Exposed) => Some(BurnStep::Expose),
        ScreenEvent::To(ScreenState::Ready) => Some(BurnStep::Tape).filter(|_| before.state == ScreenState::Exposed),
        ScreenEvent::Dry(true) => match before.state {
            ScreenState::Coated => Some(BurnStep::Dry),
            ScreenState::Exposed => Some(BurnStep::WashDry),
            ScreenState::Clean
            | ScreenState::Ready
            | ScreenState::OnPress
            | ScreenState::ToReclaim
            | ScreenState::InBath
            | ScreenState::Failed => None,
        },
        ScreenEvent::Dry(false)
        | ScreenEvent::To(ScreenState::OnPress | ScreenState::ToReclaim | ScreenState::InBath | ScreenState::Failed) => {
            None
        }
    }
}

/// The facts that undo `facts` about screens, computed from the shop before `facts` are recorded. Each
/// screen returns to its state, with the age it had there.
pub fn undo_facts(shop: &Shop, facts: &[(Subject, Fact)]) -> Vec<(Subject, Fact)> {
    let mut undo: Vec<(Subject, Fact)> = Vec::new();
    for (id, fact) in facts {
        let (Fact::Screen(fact), Some(screen)) = (fact, shop.screens.get(*id)) else { continue };
        let back = match fact {
            ScreenFact::Moved { .. } | ScreenFact::Dried { .. } => restore_fact(screen),
            ScreenFact::Set(fields) => {
                Fact::Screen(ScreenFact::Set(fields.iter().map(|field| current_field(screen, field)).collect()))
            }
            ScreenFact::AgeLimits(_) | ScreenFact::StepTimes(_) | ScreenFact::Undone { .. } => continue,
        };
        if !undo.contains(&(*id, back.clone())) {
            undo.push((*id, back));
        }
    }
    undo
}

fn undone_fact(before: TimedState) -> Fact {
    let TimedState { state: to, since, dry, exposed } = before;
    Fact::Screen(ScreenFact::Undone { to, since, dry, exposed })
}

/// The current value of a field.
fn current_field(screen: &Screen, field: &ScreenField) -> ScreenField {
    match field {
        ScreenField::Label(_) => ScreenField::Label(screen.label.clone()),
        ScreenField::Mesh(_) => ScreenField::Mesh(screen.mesh),
        ScreenField::Tension(_) => ScreenField::Tension(screen.tension),
        ScreenField::Emulsion(_) => ScreenField::Emulsion(screen.emulsion.clone()),
        ScreenField::Coats(_) => ScreenField::Coats(screen.coats),
        ScreenField::Notes(_) => ScreenField::Notes(screen.notes.clone()),
        ScreenField::Run(_) => ScreenField::Run(screen.run),
        ScreenField::Colour(_) => ScreenField::Colour(screen.colour.clone()),
        ScreenField::Replaces(_) => ScreenField::Replaces(screen.replaces),
    }
}
