//! Which screens do today's runs still need, and when must each step begin?

use crate::colour::Colour;
use crate::facts::{BurnStep, Location, ScreenState};
use crate::ids::{JobId, RunId, Subject};
use crate::plan::{Rail, rail};
use crate::screen::inventory::burn_steps::next_step;
use crate::screen::{StepTotal, readiness, screens_of};
use crate::shop::Shop;
use crate::time::{Millis, WallClock, WallTime};

/// A screen that a run names.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NeedScreen {
    /// Label of the screen.
    pub label: String,
    /// The screen; `None` if the shop has none with that label.
    pub screen: Option<Subject>,
    /// Its state.
    pub state: Option<ScreenState>,
    /// The run of another job whose art is on it.
    pub assigned_elsewhere: Option<RunId>,
}

/// A step that screens of a run need.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NeedStep {
    /// The step.
    pub step: BurnStep,
    /// Number of screens that need it.
    pub screens: u32,
    /// Time it takes for all of them.
    pub time: Millis,
    /// Latest wall time at which it can begin.
    pub latest: WallTime,
    /// Whether that has passed.
    pub late: bool,
    /// The screens that can go through it now, because every earlier step is done.
    pub now: Vec<Subject>,
}

/// A later run that needs only screens which an earlier one needs too.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AlsoNeeded {
    /// The run.
    pub run: RunId,
    /// The job's title.
    pub title: String,
    /// The print location.
    pub location: Location,
    /// The ink.
    pub ink: String,
}

/// A run whose screens cannot all print yet.
#[derive(Clone, Debug, PartialEq)]
pub struct RunNeeds {
    /// The run.
    pub run: RunId,
    /// Its job.
    pub job: JobId,
    /// The job's title.
    pub title: String,
    /// The client.
    pub client: String,
    /// The print location.
    pub location: Location,
    /// The ink.
    pub ink: String,
    /// The ink's colour.
    pub ink_colour: Option<Colour>,
    /// The screens it names; empty if it names none.
    pub screens: Vec<NeedScreen>,
    /// The missing steps, in the order of the work.
    pub steps: Vec<NeedStep>,
    /// Wall time at which the press is free for it, so at which its screens are needed.
    pub wanted: WallTime,
    /// Wall time at which they could be ready if the work began now.
    pub ready: WallTime,
    /// By how much that is too late; zero if in time.
    pub late_by: Millis,
    /// Later runs that wait for the same screens and no others.
    pub also: Vec<AlsoNeeded>,
}

impl RunNeeds {
    /// The screens that cannot print yet.
    fn waiting(&self) -> impl Iterator<Item = Subject> {
        self.screens.iter().filter(|row| row.state.is_some_and(|state| !state.can_print())).filter_map(|row| row.screen)
    }

    /// Whether `later` waits for nothing that this one does not wait for.
    fn covers(&self, later: &Self) -> bool {
        !later.screens.is_empty()
            && later.screens.iter().all(|row| row.screen.is_some())
            && later.waiting().all(|id| self.waiting().any(|of| of == id))
    }
}

/// The open runs whose screens cannot all print yet, in the order of the day: those with steps to do, and
/// those that name screens missing from the shop's list. A run that waits for the screens of an earlier one only is
/// listed with that one, so that each screen is burned once. Empty if the shop keeps no list of screens.
pub fn screen_needs(shop: &Shop, clock: WallClock) -> Vec<RunNeeds> {
    needs_of(shop, &rail(shop, clock), clock.now)
}

/// Like [`screen_needs`], for a rail that was already computed.
pub fn needs_of(shop: &Shop, rail: &Rail, now: WallTime) -> Vec<RunNeeds> {
    if shop.screens.iter().next().is_none() {
        return Vec::new();
    }
    let mut needs = Vec::new();
    for row in &rail.runs {
        // A run on the press prints with the screens it has, unless it waits for one.
        if row.on_press && row.waits_until.is_none() {
            continue;
        }
        let screens: Vec<NeedScreen> = screens_of(shop, row.id)
            .into_iter()
            .map(|found| {
                let screen = found.screen.and_then(|id| shop.screens.live(id));
                let other = screen.filter(|screen| screen.state.has_image()).and_then(|screen| screen.run);
                NeedScreen {
                    label: found.label,
                    screen: found.screen,
                    state: screen.map(|screen| screen.state),
                    assigned_elsewhere: other
                        .filter(|other| shop.job_of(*other).is_some_and(|(job, _)| job != row.job)),
                }
            })
            .collect();
        let left = readiness(shop, row.id, now);
        if left.is_none() && screens.iter().all(|screen| screen.screen.is_some()) && !screens.is_empty() {
            continue;
        }
        let ready = left.as_ref().map_or(now, |left| left.ready);
        let need = RunNeeds {
            run: row.id,
            job: row.job,
            title: row.title.clone(),
            client: row.client.clone(),
            location: row.location,
            ink: row.ink.clone(),
            ink_colour: row.ink_colour,
            screens,
            steps: left
                .map(|left| scheduled_backwards(shop, row.id, &left.steps, row.press_free, now))
                .unwrap_or_default(),
            wanted: row.press_free,
            ready,
            late_by: ready.since(row.press_free),
            also: Vec::new(),
        };
        match needs.iter_mut().find(|earlier: &&mut RunNeeds| earlier.covers(&need)) {
            Some(RunNeeds { also, .. }) => {
                let RunNeeds { run, title, location, ink, .. } = need;
                also.push(AlsoNeeded { run, title, location, ink });
            }
            None => needs.push(need),
        }
    }
    needs
}

/// The steps, each with its latest start, such that the last one ends at `wanted`.
fn scheduled_backwards(shop: &Shop, run: RunId, steps: &[StepTotal], wanted: WallTime, now: WallTime) -> Vec<NeedStep> {
    let mut end = wanted;
    let mut rows: Vec<NeedStep> = Vec::new();
    for sum in steps.iter().rev() {
        let StepTotal { step, screens, time } = *sum;
        let latest = end - time;
        rows.push(NeedStep { step, screens, time, latest, late: latest < now, now: waiting_for_step(shop, run, step) });
        end = latest;
    }
    rows.reverse();
    rows
}

/// The screens of a run whose next step this is.
fn waiting_for_step(shop: &Shop, run: RunId, step: BurnStep) -> Vec<Subject> {
    let is_next = |id: &Subject| shop.screens.live(*id).is_some_and(|screen| next_step(screen) == Some(step));
    screens_of(shop, run).into_iter().filter_map(|found| found.screen).filter(is_next).collect()
}
