//! What to check before the first pull, in the order to do it in.

use super::Run;
use crate::ink::Colour;
use crate::job::{Fabric, Lot, RunId};
use crate::pack::Pack;
use crate::quantity::{BeltSpeed, Length, Seconds, Temperature};
use crate::shop::Shop;
use serde::{Deserialize, Serialize};

/// A thing to check. **Frozen** names and order: they are stored, and the order is the order to work
/// in. Heat first, since a tunnel takes minutes to settle and must have done so before ink touches a
/// screen; then what touches the garment; ink last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum CheckItem {
    /// The dryer's temperature.
    Dryer,
    /// The dryer's belt.
    Belt,
    /// Time in the heat.
    Dwell,
    /// Passes through the dryer.
    Passes,
    /// The flash, or none.
    Flash,
    /// The flash unit's height over the print.
    FlashDistance,
    /// Garments: which, in which colour.
    Garment,
    /// The screens on the press.
    Screens,
    /// Their mesh.
    Mesh,
    /// Gap between screen and garment.
    OffContact,
    /// The squeegee.
    Squeegee,
    /// Top of the print below the collar.
    BelowCollar,
    /// Anything else about where it goes.
    Placement,
    /// The ink in the screen.
    Ink,
    /// Strokes that lay ink.
    Hits,
}

impl CheckItem {
    /// Whether it concerns the dryer or the flash, which must be right before ink is on the screen.
    pub fn is_heat(self) -> bool {
        self <= Self::FlashDistance
    }
}

/// What a check should find. **Frozen**: stored with each check made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Expected {
    /// A temperature.
    Temperature(Temperature),
    /// A time.
    Time(Seconds),
    /// A length.
    Length(Length),
    /// A belt speed.
    Belt(BeltSpeed),
    /// A number of things.
    Count(u32),
    /// Threads an inch.
    Mesh(u16),
    /// No flash at all.
    NoFlash,
    /// In words the printer wrote.
    Words(String),
    /// Garments.
    Garment {
        /// What garment.
        name: String,
        /// Its fabric.
        fabric: Fabric,
        /// Its colour.
        colour: Option<Colour>,
    },
    /// An ink.
    Ink {
        /// Its name.
        name: String,
        /// Its colour.
        colour: Option<Colour>,
    },
}

impl Expected {
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Words(text) | Self::Garment { name: text, .. } | Self::Ink { name: text, .. } => text.len() <= 16_000,
            Self::Temperature(_)
            | Self::Time(_)
            | Self::Length(_)
            | Self::Belt(_)
            | Self::Count(_)
            | Self::Mesh(_)
            | Self::NoFlash => true,
        }
    }

    /// How far a measured value may lie off, in the stored unit; none where nothing is measured.
    /// Common practice, no source: 5 °C and 5 s at the dryer, 1 s at the flash, 1 mm of off-contact, 6 mm of
    /// placement or flash height, a twentieth of the belt speed.
    pub fn tolerance(&self, item: CheckItem) -> Option<i64> {
        match (self, item) {
            (Self::Temperature(_), _) => Some(5_000),
            (Self::Time(_), CheckItem::Flash) => Some(1_000),
            (Self::Time(_), _) => Some(5_000),
            (Self::Length(_), CheckItem::OffContact) => Some(1_000),
            (Self::Length(_), _) => Some(6_350),
            (Self::Belt(speed), _) => Some(i64::from(speed.micrometres_a_second() / 20)),
            (
                Self::Count(_)
                | Self::Mesh(_)
                | Self::NoFlash
                | Self::Words(_)
                | Self::Garment { .. }
                | Self::Ink { .. },
                _,
            ) => None,
        }
    }

    /// The value in the stored unit; none where nothing is measured.
    pub fn value(&self) -> Option<i64> {
        match self {
            Self::Temperature(t) => Some(i64::from(t.milli_celsius())),
            Self::Time(s) => Some(i64::from(s.milliseconds())),
            Self::Length(l) => Some(i64::from(l.micrometres())),
            Self::Belt(speed) => Some(i64::from(speed.micrometres_a_second())),
            Self::Count(_)
            | Self::Mesh(_)
            | Self::NoFlash
            | Self::Words(_)
            | Self::Garment { .. }
            | Self::Ink { .. } => None,
        }
    }
}

/// What came of a check. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum CheckOutcome {
    /// Looked at and right.
    Ticked,
    /// Measured: the value in the unit of [`Expected::value`].
    Measured(i64),
    /// Left out, knowingly.
    Skipped,
    /// Taken back.
    Cleared,
}

/// A check that was made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
pub struct CheckRecord {
    /// What was expected then.
    pub expected: Expected,
    /// What came of it.
    pub outcome: CheckOutcome,
    /// Who, where the crew is named.
    pub by: Option<String>,
    /// Wall time.
    pub at: u64,
}

/// How a check stands.
#[derive(Clone, Debug, PartialEq)]
pub enum CheckState {
    /// Not made yet, or made against a set-up that has changed since.
    Open,
    /// Ticked.
    Ticked,
    /// Measured, and whether within tolerance.
    Measured {
        /// The measured value in the unit of [`Expected::value`].
        value: i64,
        /// Whether it is close enough.
        within: bool,
    },
    /// Left out, knowingly.
    Skipped,
}

/// A line of the check list.
#[derive(Clone, Debug, PartialEq)]
pub struct CheckRow {
    /// What to check.
    pub item: CheckItem,
    /// What it should be.
    pub expected: Expected,
    /// What it was for the run before, when that differs.
    pub before: Option<Expected>,
    /// How it stands.
    pub state: CheckState,
    /// Who and when, when made.
    pub made: Option<(Option<String>, u64)>,
}

/// The check list of a run.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct CheckList {
    /// What differs from the run that was on the press before, in the order to do it.
    pub changes: Vec<CheckRow>,
    /// What stays as it was, in the same order. With no run before, everything.
    pub same: Vec<CheckRow>,
    /// The run that was on the press before.
    pub previous: Option<RunId>,
}

impl CheckList {
    /// All lines, changes first.
    pub fn rows(&self) -> impl Iterator<Item = &CheckRow> {
        self.changes.iter().chain(&self.same)
    }

    /// How many are still open.
    pub fn open(&self) -> usize {
        self.rows().filter(|row| row.state == CheckState::Open).count()
    }

    /// How many were left out.
    pub fn skipped(&self) -> usize {
        self.rows().filter(|row| row.state == CheckState::Skipped).count()
    }

    /// Whether heat has to change before ink goes on the screen, and has not been seen to yet.
    pub fn heat_first(&self) -> bool {
        let to_do = |state: &CheckState| matches!(state, CheckState::Open | CheckState::Measured { within: false, .. });
        self.changes.iter().any(|row| row.item.is_heat() && to_do(&row.state))
    }
}

/// The check list of a run, after the one that was on the press before it.
pub fn check_list(shop: &Shop, id: RunId) -> CheckList {
    check_list_after(shop, previous_on_press(shop, id), id)
}

/// The check list of a run if it came after this one.
pub fn check_list_after(shop: &Shop, previous: Option<RunId>, id: RunId) -> CheckList {
    let Some(run) = shop.run(id) else { return CheckList::default() };
    let before: Vec<(CheckItem, Expected)> = previous
        .and_then(|other| shop.run(other))
        .map(|other| expectations(other, other.lot.and_then(|lot| shop.lot(lot))))
        .unwrap_or_default();
    let mut list = CheckList { previous, ..CheckList::default() };
    for (item, expected) in expectations(run, run.lot.and_then(|lot| shop.lot(lot))) {
        let earlier = before.iter().find(|(of, _)| *of == item).map(|(_, expected)| expected.clone());
        let record = run.checks.get(&item);
        let state = record.map_or(CheckState::Open, |record| state_of(item, record, &expected));
        let made = record.filter(|_| state != CheckState::Open).map(|record| (record.by.clone(), record.at));
        let changed = previous.is_some() && earlier.as_ref() != Some(&expected);
        let differs = earlier.filter(|earlier| *earlier != expected);
        let row = CheckRow { item, expected, before: differs, state, made };
        if changed { list.changes.push(row) } else { list.same.push(row) }
    }
    list
}

fn state_of(item: CheckItem, record: &CheckRecord, expected: &Expected) -> CheckState {
    if record.expected != *expected {
        return CheckState::Open;
    }
    match record.outcome {
        CheckOutcome::Ticked => CheckState::Ticked,
        CheckOutcome::Skipped => CheckState::Skipped,
        CheckOutcome::Cleared => CheckState::Open,
        CheckOutcome::Measured(value) => {
            let off = expected.value().map_or(0, |meant| (meant - value).abs());
            CheckState::Measured { value, within: off <= expected.tolerance(item).unwrap_or(0) }
        }
    }
}

/// The other run that was on the press last, before this one started.
fn previous_on_press(shop: &Shop, id: RunId) -> Option<RunId> {
    // When a run went on the press: at its start, and each time it was taken up again.
    let went_on = |run: &Run, before: u64| {
        let again = run.progress.stops.iter().filter(|stop| stop.cause.is_none()).filter_map(|stop| stop.to);
        run.progress.started.into_iter().chain(again).filter(|at| *at < before).max()
    };
    let limit = shop.run(id).and_then(|run| went_on(run, u64::MAX)).unwrap_or(u64::MAX);
    shop.runs()
        .filter(|(other, run)| *other != id && !run.deleted)
        .filter_map(|(other, run)| went_on(run, limit).map(|at| (at, other)))
        .max()
        .map(|(_, other)| other)
}

/// What the set-up asks for, in the order to work in. What it leaves open is not asked for.
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
