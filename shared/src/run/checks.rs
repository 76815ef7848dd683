//! The checks before the first pull, in working order.

use super::{CheckRecord, DryerUse, Run};
use crate::facts::{CheckItem, CheckOutcome, Expected};
use crate::heat::cure::measured::{held_breach, infrared_breach, measured_breach};
use crate::heat::{HeldBreach, MeasuredBreach};
use crate::ids::RunId;
use crate::job::Lot;
use crate::shop::Shop;
use crate::time::WallTime;

/// State of a check in the list.
#[derive(Clone, Debug, PartialEq)]
pub enum CheckState {
    /// Not made, or made for a set-up that has changed since.
    Open,
    /// Ticked.
    Ticked,
    /// Measured.
    Measured {
        /// The measured value in the unit of [`Expected::value`].
        value: i64,
        /// Whether it is within tolerance and breaches nothing.
        within: bool,
        /// What it breaches, which no tolerance allows; temperature and time in the dryer only.
        breach: Option<MeasuredBreach>,
    },
    /// Read by infrared, which may hold the ink and checks nothing.
    ByInfrared {
        /// The value read, in the unit of [`Expected::value`].
        value: i64,
        /// The limit it reaches, if any.
        breach: Option<MeasuredBreach>,
    },
    /// Skipped knowingly.
    Skipped,
}

impl CheckState {
    /// Whether the check is still to be made. A reading by infrared does not make it.
    pub fn is_open(&self) -> bool {
        matches!(self, Self::Open | Self::ByInfrared { .. })
    }
}

/// Who made a check, and when.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CheckMade {
    /// Who; `None` if nobody was chosen on the device.
    pub by: Option<String>,
    /// When.
    pub at: WallTime,
}

/// A measurement of a time before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EarlierMeasurement {
    /// The measured value, in the unit of [`Expected::value`].
    pub value: i64,
    /// When.
    pub at: WallTime,
}

/// How two colours are told apart in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OtherColour {
    /// By their names, now and before; one of them may be empty.
    Named([String; 2]),
    /// They have no names or the same.
    Unnamed,
}

/// A row of the check list.
#[derive(Clone, Debug, PartialEq)]
pub struct CheckRow {
    /// The item to check.
    pub item: CheckItem,
    /// The value it should have.
    pub expected: Expected,
    /// The value for the run before, if it differs.
    pub before: Option<Expected>,
    /// How the colours of the garment or ink are told apart in words, if only they differ.
    pub colours: Option<OtherColour>,
    /// State of the check.
    pub state: CheckState,
    /// A measurement that holds the ink until it is measured again, if the state is about something later.
    pub held: Option<HeldBreach>,
    /// What was measured of the dryer at this setting and belt speed before they were changed and changed back. It checks
    /// nothing: the dryer has to settle and be measured again.
    pub history: Option<EarlierMeasurement>,
    /// Who made it and when; `None` while open.
    pub made: Option<CheckMade>,
}

impl CheckRow {
    /// What was measured and holds the ink.
    pub fn breach(&self) -> Option<MeasuredBreach> {
        match self.state {
            CheckState::Measured { breach: Some(breach), .. } | CheckState::ByInfrared { breach: Some(breach), .. } => {
                Some(breach)
            }
            CheckState::Open
            | CheckState::Ticked
            | CheckState::Skipped
            | CheckState::Measured { breach: None, .. }
            | CheckState::ByInfrared { breach: None, .. } => self.held.map(|held| held.breach),
        }
    }

    /// Whether it is still to be made, or was measured and is wrong.
    pub fn is_to_do(&self) -> bool {
        let is_wrong = matches!(self.state, CheckState::Measured { within: false, .. });
        self.state.is_open() || is_wrong || self.held.is_some()
    }
}

/// The check list of a run.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct CheckList {
    /// Items that differ from the previous run on the press, in working order.
    pub changes: Vec<CheckRow>,
    /// Items that stay the same, in working order; all items if there is no previous run.
    pub unchanged: Vec<CheckRow>,
    /// The previous run on the press.
    pub previous: Option<RunId>,
}

impl CheckList {
    /// All rows, changes first.
    pub fn rows(&self) -> impl Iterator<Item = &CheckRow> {
        self.changes.iter().chain(&self.unchanged)
    }

    /// Number of open checks.
    pub fn open(&self) -> usize {
        self.rows().filter(|row| row.state.is_open()).count()
    }

    /// Number of skipped checks.
    pub fn skipped(&self) -> usize {
        self.rows().filter(|row| row.state == CheckState::Skipped).count()
    }

    /// Whether a dryer or flash setting differs from the previous run and is not verified yet.
    pub fn needs_heat_change(&self) -> bool {
        self.changes.iter().any(|row| row.item.is_heat() && row.is_to_do())
    }
}

/// The check list of a run, compared with the run that was on the press before it. Empty if the run is
/// unknown.
pub fn check_list(shop: &Shop, id: RunId) -> CheckList {
    check_list_after(shop, previous_on_press(shop, id), id)
}

/// The check list of a run, compared with `previous`; `None` compares with nothing.
pub fn check_list_after(shop: &Shop, previous: Option<RunId>, id: RunId) -> CheckList {
    let Some(run) = shop.run(id) else { return CheckList::default() };
    let before: Vec<(CheckItem, Expected)> = previous
        .and_then(|other| shop.run(other))
        .map(|other| expectations(other, other.lot.and_then(|lot| shop.lot(lot))))
        .unwrap_or_default();
    let mut list = CheckList { previous, ..CheckList::default() };
    for (item, expected) in expectations(run, run.lot.and_then(|lot| shop.lot(lot))) {
        let earlier = before.iter().find(|(of, _)| *of == item).map(|(_, expected)| expected.clone());
        let last = run.checks.get(&item);
        let record = last.filter(|record| record.expected == expected);
        // Made when this value was expected before. It checks nothing now.
        let past = last.filter(|_| record.is_none()).and_then(|record| record.earlier_for(&expected));
        let held = record.or(past).and_then(|record| held_breach(shop, id, run, item, record));
        let (state, held) = record.map_or((CheckState::Open, held), |record| {
            state_of(
                record,
                item,
                held,
                |value| measured_breach(shop, id, run, item, value),
                |value| infrared_breach(shop, run, value),
            )
        });
        let made = record
            .filter(|_| state != CheckState::Open)
            .map(|record| CheckMade { by: record.by.clone(), at: record.at });
        let changed = previous.is_some() && earlier.as_ref() != Some(&expected);
        let differs = earlier.filter(|earlier| *earlier != expected);
        let colours = differs.as_ref().filter(|before| is_same_but_colour(before, &expected)).map(|_| {
            let name = |run: Option<RunId>| {
                let lot = run.and_then(|id| shop.run(id)).and_then(|run| run.lot).and_then(|lot| shop.lot(lot));
                // An ink's colour has no name of its own.
                let lot = lot.filter(|_| item == CheckItem::Garment);
                lot.map(|lot| lot.colour_name.trim().to_owned()).unwrap_or_default()
            };
            let names = [name(Some(id)), name(previous)];
            if names[0] == names[1] { OtherColour::Unnamed } else { OtherColour::Named(names) }
        });
        let dryer = DryerUse { dryer: shop.heat.chosen_dryer(id), belt: run.set_up.belt };
        let history = past.filter(|past| item == CheckItem::Dryer && past.dryer == dryer).and_then(|past| {
            let is_measured = matches!(past.outcome, CheckOutcome::Measured(_));
            past.measured.filter(|_| is_measured).map(|value| EarlierMeasurement { value, at: past.at })
        });
        let row = CheckRow { item, expected, before: differs, colours, state, held, history, made };
        if changed { list.changes.push(row) } else { list.unchanged.push(row) }
    }
    list
}

/// Whether two garments or inks differ in nothing but their colour.
fn is_same_but_colour(one: &Expected, other: &Expected) -> bool {
    one.colour().is_some_and(|colour| other.clone().in_colour(colour) == *one)
}

/// State of a check, and an earlier breach that it does not lift.
fn state_of(
    record: &CheckRecord,
    item: CheckItem,
    held: Option<HeldBreach>,
    breach_of: impl Fn(i64) -> Option<MeasuredBreach>,
    infrared_breach: impl Fn(i64) -> Option<MeasuredBreach>,
) -> (CheckState, Option<HeldBreach>) {
    match record.outcome {
        CheckOutcome::Skipped => (CheckState::Skipped, held),
        CheckOutcome::Cleared => (CheckState::Open, held),
        // A look at the display does not lift what was measured.
        CheckOutcome::Ticked | CheckOutcome::Settled => match held {
            None => (CheckState::Ticked, None),
            Some(HeldBreach { value, infrared: true, breach }) => {
                (CheckState::ByInfrared { value, breach: Some(breach) }, None)
            }
            Some(HeldBreach { value, infrared: false, breach }) => {
                (CheckState::Measured { value, within: false, breach: Some(breach) }, None)
            }
        },
        CheckOutcome::Measured(value) => {
            let breach = breach_of(value);
            let within = breach.is_none() && record.expected.is_close(item, value);
            (CheckState::Measured { value, within, breach }, None)
        }
        CheckOutcome::ReadByInfrared(value) => {
            let breach = infrared_breach(value);
            (CheckState::ByInfrared { value, breach }, held.filter(|_| breach.is_none()))
        }
    }
}

/// The other run that was last on the press before this one started.
fn previous_on_press(shop: &Shop, id: RunId) -> Option<RunId> {
    // When a run went on the press: at its start, and whenever it was reopened.
    let went_on = |run: &Run, before: WallTime| {
        let again = run.progress.stops.iter().filter(|stop| stop.cause.is_none()).filter_map(|stop| stop.to);
        run.progress.started.into_iter().chain(again).filter(|at| *at < before).max()
    };
    let limit = shop.run(id).and_then(|run| went_on(run, WallTime::MAX)).unwrap_or(WallTime::MAX);
    let candidate =
        |other: RunId, run: &Run| went_on(run, limit).filter(|_| other != id && !run.deleted).map(|at| (at, other));
    let mut latest: Option<(WallTime, RunId)> = None;
    for (last, other, run) in shop.recent_runs() {
        // None of those that follow went on the press after its last activity there, unless a clock was set back.
        if latest.is_some_and(|(at, _)| at > last) {
            break;
        }
        latest = latest.max(candidate(other, run));
    }
    // For a run of long ago the answer is among those of long ago.
    if !shop.is_recent(latest.map(|(at, _)| at)) {
        latest = shop.runs().filter_map(|(other, run)| candidate(other, run)).max();
    }
    latest.map(|(_, other)| other)
}

/// The expected values of a set-up in working order. Fields that are not set are left out.
fn expectations(run: &Run, lot: Option<&Lot>) -> Vec<(CheckItem, Expected)> {
    let set_up = &run.set_up;
    let words = |text: &str| (!text.trim().is_empty()).then(|| Expected::Words(text.to_owned()));
    let garment =
        lot.map(|lot| Expected::Garment { name: lot.garment.clone(), fabric: lot.fabric, colour: lot.colour });
    let ink = Expected::Ink { name: run.ink.clone(), colour: run.ink_colour };
    [
        (CheckItem::Dryer, set_up.dryer.map(Expected::Temperature)),
        (CheckItem::Belt, set_up.belt.map(Expected::Belt)),
        (CheckItem::Dwell, set_up.dwell.map(Expected::Time)),
        (CheckItem::Passes, Some(Expected::Count(u32::from(set_up.passes)))),
        (CheckItem::Flash, Some(set_up.flash.map_or(Expected::NoFlash, |flash| Expected::Time(flash.seconds)))),
        (CheckItem::FlashDistance, set_up.flash.and_then(|flash| flash.distance).map(Expected::Length)),
        (CheckItem::Garment, garment),
        (CheckItem::Screens, words(&set_up.screens)),
        (CheckItem::Mesh, set_up.mesh.map(Expected::Mesh)),
        (CheckItem::OffContact, set_up.off_contact.map(Expected::Length)),
        (CheckItem::Squeegee, words(&set_up.squeegee)),
        (CheckItem::BelowCollar, set_up.below_collar.map(Expected::Length)),
        (CheckItem::Placement, words(&set_up.placement)),
        (CheckItem::Ink, Some(ink)),
        (CheckItem::Hits, Some(Expected::Count(u32::from(set_up.hits)))),
    ]
    .into_iter()
    .filter_map(|(item, expected)| expected.map(|expected| (item, expected)))
    .collect()
}
