//! Which steps has a screen been through, and how long will the rest take?

use crate::facts::{BurnStep, ScreenState, StepTimes};
use crate::screen::{Screen, ScreenEvent};
use crate::time::{Millis, WallTime};

/// A step of one screen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepRow {
    /// The step.
    pub step: BurnStep,
    /// Whether it is done.
    pub done: bool,
    /// Wall time at which it was done; `None` if not done, or not recorded.
    pub at: Option<WallTime>,
    /// Who did it.
    pub by: Option<String>,
    /// Time it still takes; zero if done.
    pub left: Millis,
}

/// The first step that is not done; `None` if the screen can print.
pub(crate) fn next_step(screen: &Screen) -> Option<BurnStep> {
    match screen.state {
        ScreenState::Failed | ScreenState::ToReclaim | ScreenState::InBath => Some(BurnStep::Reclaim),
        ScreenState::Clean => Some(BurnStep::Coat),
        ScreenState::Coated => Some(if screen.dry.is_none() { BurnStep::Dry } else { BurnStep::Expose }),
        ScreenState::Exposed => Some(if screen.dry.is_none() { BurnStep::WashDry } else { BurnStep::Tape }),
        ScreenState::Ready | ScreenState::OnPress => None,
    }
}

/// The steps a screen still needs and the time each takes, in the order of the work, at wall time `now`. Drying
/// has been going on since the screen was coated or exposed; a step done by hand has not begun.
pub fn remaining_steps(screen: &Screen, times: &StepTimes, now: WallTime) -> Vec<(BurnStep, Millis)> {
    let Some(first) = next_step(screen) else { return Vec::new() };
    let goes_on_alone = !first.is_by_hand() || screen.state == ScreenState::InBath;
    let elapsed = if goes_on_alone { now.since(screen.since) } else { Millis::ZERO };
    BurnStep::ALL
        .into_iter()
        .filter(|step| *step >= first)
        .map(|step| (step, times.of(step) - if step == first { elapsed } else { Millis::ZERO }))
        .collect()
}

/// All steps of a screen, done and to do; reclaiming only if there is a stencil to remove.
pub fn burn_steps(screen: &Screen, times: &StepTimes, now: WallTime) -> Vec<StepRow> {
    let left = remaining_steps(screen, times, now);
    let mut done: Vec<(BurnStep, WallTime, Option<String>)> = Vec::new();
    for change in &screen.log {
        let wet =
            |done: &[(BurnStep, WallTime, Option<String>)]| done.iter().any(|(step, ..)| *step == BurnStep::Expose);
        let step = match change.what {
            ScreenEvent::To(ScreenState::Coated) => Some(BurnStep::Coat),
            ScreenEvent::To(ScreenState::Exposed) => Some(BurnStep::Expose),
            ScreenEvent::To(ScreenState::Ready) => Some(BurnStep::Tape),
            ScreenEvent::Dry(_) => Some(if wet(&done) { BurnStep::WashDry } else { BurnStep::Dry }),
            ScreenEvent::To(ScreenState::OnPress) => None,
            ScreenEvent::To(_) => {
                done.clear();
                None
            }
        };
        if let Some(step) = step {
            // A screen that is taken off the press and kept was taped before: keep that time.
            if step == BurnStep::Tape && done.iter().any(|(other, ..)| *other == BurnStep::Tape) {
                continue;
            }
            done.retain(|(other, ..)| *other < step);
            if change.what != ScreenEvent::Dry(false) {
                done.push((step, change.at, change.by.clone()));
            }
        }
    }
    BurnStep::ALL
        .into_iter()
        .filter(|step| *step != BurnStep::Reclaim || left.iter().any(|(missing, _)| missing == step))
        .map(|step| {
            let missing = left.iter().find(|(missing, _)| *missing == step);
            let made = done.iter().find(|(other, ..)| *other == step).filter(|_| missing.is_none());
            StepRow {
                step,
                done: missing.is_none(),
                at: made.map(|(_, at, _)| *at),
                by: made.and_then(|(.., by)| by.clone()),
                left: missing.map_or(Millis::ZERO, |(_, left)| *left),
            }
        })
        .collect()
}
