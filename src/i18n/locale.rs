//! The language, units and clock that texts are written with.

use crate::platform::settings::{Language, Settings};
use lastpull_core::time::{WallClock, WallTime};
use lastpull_core::units::Units;
use std::cell::Cell;

/// How texts and numbers are written on this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Locale {
    /// The language.
    pub language: Language,
    /// The units.
    pub units: Units,
    /// Whether times of day use the 24-hour clock.
    pub clock_24: bool,
    /// Whether numbers have a decimal comma.
    pub decimal_comma: bool,
    /// The currency that was chosen for prices; `None` for that of the browser's country.
    pub currency: Option<&'static str>,
}

thread_local! {
    static LOCALE: Cell<Locale> = const {
        Cell::new(Locale {
            language: Language::English,
            units: Units::US,
            clock_24: false,
            decimal_comma: false,
            currency: None,
        })
    };
    static CLOCK: Cell<fn() -> WallClock> = const { Cell::new(|| WallClock::fixed(WallTime::EPOCH, 0)) };
}

impl Locale {
    /// The locale of the device's settings.
    pub fn of(settings: &Settings) -> Self {
        Self {
            language: settings.language_or_browser(),
            units: settings.units(),
            clock_24: settings.clock_24,
            decimal_comma: settings.has_decimal_comma(),
            currency: settings.currency,
        }
    }

    /// Writes all texts in this locale from now on.
    pub fn activate(self) {
        LOCALE.set(self);
    }

    /// The active locale.
    pub fn current() -> Self {
        LOCALE.get()
    }
}

/// Sets the clock that "today" and times of day are worked out with. Called once, before the first page is drawn.
pub fn set_clock(clock: fn() -> WallClock) {
    CLOCK.set(clock);
}

/// The current time and the local offset.
pub(super) fn clock() -> WallClock {
    CLOCK.get()()
}

/// The active units.
pub fn units() -> Units {
    Locale::current().units
}

/// The one of two values that is in the active language.
pub(super) fn localized<T>(english: T, spanish: T) -> T {
    match Locale::current().language {
        Language::English => english,
        Language::Spanish => spanish,
    }
}

/// The line of a text in the active language: English, a line break, Spanish. One argument instead of two keeps every
/// call small.
#[inline(never)]
pub(super) fn localized_str(both: &'static str) -> &'static str {
    both.split_once('\n').map_or(both, |(english, spanish)| localized(english, spanish))
}
