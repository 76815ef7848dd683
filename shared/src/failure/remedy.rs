//! Facts that record the remedy for a failure, and that let the press continue.

use super::open::{set_fact, stop_facts};
use crate::facts::{Fact, FailureField, Remedy, RunField, ScreenFact, ScreenField, ScreenState};
use crate::form::Problems;
use crate::ids::Subject;
use crate::screen::{fields_of, free_label, moved, replace_label, without_screen};
use crate::shop::Shop;

/// The screen that replaces a failed one.
#[derive(Clone, Debug, PartialEq)]
pub enum Replacement {
    /// A frame that is not in the shop's list yet.
    New {
        /// Id for the new screen.
        id: Subject,
        /// Label on the frame.
        label: String,
    },
    /// A screen of the shop: a coated one saves the longest wait.
    Stock(Subject),
}

/// The facts of burning a new screen: the failed screen is marked as failed, the new screen is linked to it
/// and assigned to the run, the run names it in place of the failed one, and the press is stopped until the
/// new screen can print.
///
/// # Errors
/// [`Problems`] with the field `label` for a new frame.
pub fn burn_again_facts(
    shop: &Shop,
    id: Subject,
    replacement: &Replacement,
    by: Option<&str>,
) -> Result<Vec<(Subject, Fact)>, Problems> {
    let Some(failure) = shop.failures.live(id) else { return Ok(Vec::new()) };
    let failed = failure.screen.and_then(|screen| shop.screens.live(screen).map(|row| (screen, row)));
    let mut facts = if failure.replacement.is_some() { release_replacement(shop, id) } else { Vec::new() };
    let (new, label) = match replacement {
        Replacement::New { id: new, label } => {
            let label = free_label(shop, label, *new).map_err(|problem| Problems::from([("label", problem)]))?;
            (*new, label)
        }
        Replacement::Stock(new) => {
            let Some(screen) = shop.screens.live(*new) else { return Ok(Vec::new()) };
            (*new, screen.label.clone())
        }
    };
    facts.push((
        id,
        set_fact(vec![FailureField::Remedy(Some(Remedy::BurnAgain)), FailureField::Replacement(Some(new))]),
    ));
    if let Some((screen, _)) = failed.filter(|(_, row)| row.state != ScreenState::Failed) {
        facts.push((screen, moved(ScreenState::Failed, by)));
    }
    let mut fields = vec![ScreenField::Run(failure.run), ScreenField::Replaces(failed.map(|(screen, _)| screen))];
    fields.extend(failed.map(|(_, row)| ScreenField::Colour(row.colour.clone())));
    if matches!(replacement, Replacement::New { .. }) {
        fields.push(ScreenField::Label(label.clone()));
        // A new frame starts with the mesh and coats of the failed one.
        let like = |field: &ScreenField| match field {
            ScreenField::Mesh(_) | ScreenField::Emulsion(_) | ScreenField::Coats(_) => true,
            ScreenField::Label(_)
            | ScreenField::Tension(_)
            | ScreenField::Notes(_)
            | ScreenField::Run(_)
            | ScreenField::Colour(_)
            | ScreenField::Replaces(_) => false,
        };
        fields.extend(failed.into_iter().flat_map(|(_, row)| fields_of(row)).filter(like));
    }
    facts.push((new, Fact::Screen(ScreenFact::Set(fields))));
    if let Some((run_id, run)) = failure.run.and_then(|run| shop.run(run).map(|row| (run, row))) {
        let now_in_line = failure.replacement.or(failed.map(|(screen, _)| screen));
        let line = replace_label(shop, &run.set_up.screens, now_in_line, &label);
        facts.push((run_id, Fact::RunSet(vec![RunField::Screens(line)])));
        facts.extend(stop_facts(shop, run_id));
    }
    Ok(facts)
}

/// The facts of any other remedy. If a new screen was to be burned, that is taken back: the run names the
/// failed screen again, if one was chosen, which is back on the press, and a new frame that nobody has worked on is deleted.
pub fn remedy_facts(shop: &Shop, id: Subject, remedy: Remedy, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let Some(failure) = shop.failures.live(id) else { return Vec::new() };
    let mut fields = vec![FailureField::Remedy(Some(remedy))];
    let mut facts = Vec::new();
    if let Some(new) = failure.replacement {
        fields.push(FailureField::Replacement(None));
        facts.extend(release_replacement(shop, id));
        let old = failure.screen.and_then(|screen| shop.screens.live(screen).map(|row| (screen, row)));
        if let Some((screen, _)) = old.filter(|(_, row)| row.state == ScreenState::Failed) {
            let on_press = failure.run.and_then(|run| shop.run(run)).is_some_and(|run| run.progress.is_on_press());
            facts.push((screen, moved(if on_press { ScreenState::OnPress } else { ScreenState::Ready }, by)));
        }
        if let Some((run_id, run)) = failure.run.and_then(|run| Some((run, shop.run(run)?))) {
            let line = match old {
                Some((_, old)) => replace_label(shop, &run.set_up.screens, Some(new), &old.label),
                None => without_screen(shop, &run.set_up.screens, new),
            };
            facts.push((run_id, Fact::RunSet(vec![RunField::Screens(line)])));
        }
    }
    facts.push((id, set_fact(fields)));
    facts
}

/// The facts that release the chosen replacement: a new frame that nobody has worked on is deleted, one that carries the
/// art by now stays assigned, and can be chosen again, and any other screen is unassigned.
fn release_replacement(shop: &Shop, id: Subject) -> Vec<(Subject, Fact)> {
    let Some(new) = shop.failures.live(id).and_then(|failure| failure.replacement) else { return Vec::new() };
    let Some(screen) = shop.screens.live(new) else { return Vec::new() };
    if screen.log.is_empty() {
        return vec![(new, Fact::Deleted)];
    }
    if screen.state.has_image() {
        return Vec::new();
    }
    let fields = vec![ScreenField::Run(None), ScreenField::Replaces(None), ScreenField::Colour(String::new())];
    vec![(new, Fact::Screen(ScreenFact::Set(fields)))]
}

/// The facts that let the press continue after a failure. A replacement that can print moves onto the
/// press.
pub fn resume_facts(shop: &Shop, id: Subject, by: Option<&str>) -> Vec<(Subject, Fact)> {
    let Some(failure) = shop.failures.live(id) else { return Vec::new() };
    let mut facts = Vec::new();
    let ready = |screen: &Subject| shop.screens.live(*screen).is_some_and(|row| row.state == ScreenState::Ready);
    if let Some(screen) = failure.replacement.filter(ready) {
        facts.push((screen, moved(ScreenState::OnPress, by)));
    }
    if let Some(run) = failure.run.filter(|run| shop.run(*run).is_some_and(|run| run.progress.current_stop().is_some()))
    {
        facts.push((run, Fact::Resumed));
    }
    facts
}
