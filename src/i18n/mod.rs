//! The catalogue: every text that the user sees, in English and Spanish.
//!
//! A message is a function, so that a missing message, a missing translation or a misspelt argument does
//! not compile. Each subject has its file. The language is that of the device; a change of it reloads
//! the page.

mod backup;
mod bath;
pub mod check_values;
mod climate;
mod colour;
mod common;
mod day;
mod errors;
mod exposure;
mod failure;
mod format;
mod heat;
mod heat_run;
mod ink;
mod jobs;
mod photos;
mod pot;
mod press;
mod screens;
mod settings;
mod welcome;

pub use backup::*;
pub use bath::*;
pub use climate::*;
pub use colour::*;
pub use common::*;
pub use day::*;
pub use errors::*;
pub use exposure::*;
pub use failure::*;
pub use format::*;
pub use heat::*;
pub use heat_run::*;
pub use ink::*;
pub use jobs::*;
pub use photos::*;
pub use pot::*;
pub use press::*;
pub use screens::*;
pub use settings::*;
pub use welcome::*;

use crate::platform::settings::{Language, Settings};
use lastpull_core::units::Units;
use std::cell::Cell;

/// How texts and numbers are written on this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Locale {
    /// The language.
    pub language: Language,
    /// The units of measurement.
    pub units: Units,
    /// Whether times use the 24-hour clock.
    pub clock_24: bool,
}

thread_local! {
    static LOCALE: Cell<Locale> = const {
        Cell::new(Locale { language: Language::English, units: Units::UsCustomary, clock_24: false })
    };
}

impl Locale {
    /// The locale of the device's settings; the browser's language if none is set.
    pub fn of(settings: &Settings) -> Self {
        let browser = if crate::platform::dom::asks_for_language("es") { Language::Spanish } else { Language::English };
        Self {
            language: settings.language.unwrap_or(browser),
            units: if settings.metric { Units::Metric } else { Units::UsCustomary },
            clock_24: settings.clock_24,
        }
    }

    /// Makes this the current locale.
    pub fn activate(self) {
        LOCALE.set(self);
    }

    /// The current locale.
    pub fn current() -> Self {
        LOCALE.get()
    }
}

/// The units of the current locale.
pub fn units() -> Units {
    Locale::current().units
}

/// The value for the current language.
pub(crate) fn localized<T>(english: T, spanish: T) -> T {
    match Locale::current().language {
        Language::English => english,
        Language::Spanish => spanish,
    }
}

/// The text for the current language. `both` holds both, one per line: a single argument makes smaller code than two.
#[inline(never)]
pub(crate) fn localized_str(both: &'static str) -> &'static str {
    both.split_once('\n').map_or(both, |(english, spanish)| localized(english, spanish))
}

/// Defines messages: `name { "English", "Español" }`, with arguments `name(a, b) { "… {a} …", "… {b} …" }`, or
/// with a plural `name[n] { "{n} piece" | "{n} pieces", "{n} pieza" | "{n} piezas" }`.
macro_rules! messages {
    ($($name:ident $(($($arg:ident),+))? $([$n:ident])? { $($body:tt)* })*) => {
        $(messages! { @one $name ($($($arg),+)?) [$($n)?] $($body)* })*
    };
    (@one $name:ident () [] $en:literal, $es:literal) => {
        #[doc = concat!("“", $en, "”")]
        pub fn $name() -> &'static str {
            $crate::i18n::localized_str(concat!($en, "\n", $es))
        }
    };
    (@one $name:ident ($($arg:ident),+) [] $en:literal, $es:literal) => {
        #[doc = concat!("“", $en, "”")]
        pub fn $name($($arg: impl std::fmt::Display),+) -> String {
            if $crate::i18n::localized(true, false) { format!($en) } else { format!($es) }
        }
    };
    (@one $name:ident () [$n:ident] $one:literal | $many:literal, $uno:literal | $muchos:literal) => {
        #[doc = concat!("“", $many, "”")]
        pub fn $name($n: u32) -> String {
            match ($crate::i18n::localized(true, false), $n == 1) {
                (true, true) => format!($one),
                (true, false) => format!($many),
                (false, true) => format!($uno),
                (false, false) => format!($muchos),
            }
        }
    };
}
use messages;
