//! The checks before the first pull, in working order.

use super::Run;
use crate::ink::Colour;
use crate::job::{Fabric, Lot, RunId};
use crate::pack::Pack;
use crate::quantity::{BeltSpeed, Length, Seconds, Temperature};
use crate::shop::Shop;
use serde::{Deserialize, Serialize};

/// An item to check. **Frozen**: names and order are stored, and the order is the working order. Heat comes
/// first, since a dryer takes minutes to settle and must have settled before ink touches a screen; then what
/// touches the garment; ink last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum CheckItem {
    /// Dryer temperature.
    Dryer,
    /// Belt speed of the dryer.
    Belt,
    /// Dwell.
    Dwell,
    /// Passes through the dryer.
    Passes,
    /// Flash time, or no flash.
    Flash,
    /// Height of the flash unit above the print.
    FlashDistance,
    /// Garment and its colour.
    Garment,
    /// The screens on the press.
    Screens,
    /// Mesh of the screens.
    Mesh,
    /// Off-contact: gap between screen and garment.
    OffContact,
    /// The squeegee.
    Squeegee,
    /// Distance from the collar to the top of the print.
    BelowCollar,
    /// Other notes on placement.
    Placement,
    /// The ink in the screen.
    Ink,
    /// Number of strokes that print ink.
    Hits,
}

impl CheckItem {
    /// Whether it is about dryer or flash, which must be right before ink is on the screen.
    pub fn is_heat(self) -> bool {
        self <= Self::FlashDistance
    }
}

/// The value a check should find. **Frozen**: stored with each check.
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
    /// A number of passes or strokes.
    Count(u32),
    /// A mesh count in threads per inch.
    Mesh(u16),
    /// No flash.
    NoFlash,
    /// Free text from the set-up.
    Words(String),
    /// A garment.
    Garment {
        /// Name of the garment.
        name: String,
        /// Its fabric.
        fabric: Fabric,
        /// Its colour.
        colour: Option<Colour>,
    },
    /// An ink.
    Ink {
        /// Name of the ink.
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

    /// Largest accepted difference of a measured value, in the unit of [`value`](Self::value); `None` if the
    /// item is not measured. Common practice, no source: 5 °C and 5 s at the dryer, 1 s at the flash, 1 mm of
    /// off-contact, 6 mm of placement or flash height, a twentieth of the belt speed.
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

    /// The value in its stored unit (milli-°C, milliseconds, micrometres, micrometres per second); `None` if
    /// the item is not measured.
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

/// Outcome of a check. **Frozen**: stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum CheckOutcome {
    /// Checked by eye and right.
    Ticked,
    /// Measured; the value is in the unit of [`Expected::value`].
    Measured(i64),
    /// Skipped knowingly.
    Skipped,
    /// The check was taken back.
    Cleared,
}

/// A check that was made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
pub struct CheckRecord {
    /// The expected value when it was made.
    pub expected: Expected,
    /// Outcome.
    pub outcome: CheckOutcome,
    /// Name of the person who made it, if entered.
    pub by: Option<String>,
    /// Unix time in milliseconds.
    pub at: u64,
}

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
        /// Whether it is within tolerance.
        within: bool,
    },
    /// Skipped knowingly.
    Skipped,
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
    /// State of the check.
    pub state: CheckState,
    /// Who made it and when (Unix time in milliseconds); `None` while open.
    pub made: Option<(Option<String>, u64)>,
}

/// The check list of a run.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct CheckList {
    /// Items that differ from the previous run on the press, in working order.
    pub changes: Vec<CheckRow>,
    /// Items that stay the same, in working order; all items if there is no previous run.
    pub same: Vec<CheckRow>,
    /// The previous run on the press.
    pub previous: Option<RunId>,
}

impl CheckList {
    /// All rows, changes first.
    pub fn rows(&self) -> impl Iterator<Item = &CheckRow> {
        self.changes.iter().chain(&self.same)
    }

    /// Number of open checks.
    pub fn open(&self) -> usize {
        self.rows().filter(|row| row.state == CheckState::Open).count()
    }

    /// Number of skipped checks.
    pub fn skipped(&self) -> usize {
        self.rows().filter(|row| row.state == CheckState::Skipped).count()
    }

    /// Whether a dryer or flash setting differs from the previous run and is not verified yet.
    pub fn heat_first(&self) -> bool {
        let to_do = |state: &CheckState| matches!(state, CheckState::Open | CheckState::Measured { within: false, .. });
        self.changes.iter().any(|row| row.item.is_heat() && to_do(&row.state))
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

/// The other run that was last on the press before this one started.
fn previous_on_press(shop: &Shop, id: RunId) -> Option<RunId> {
    // When a run went on the press: at its start, and whenever it was reopened.
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
