//! The catalogue: every word a person sees, in English and Spanish.
//!
//! A word is a function, so that a missing one, a missing translation or a misspelt argument does
//! not compile. Each subject has its file. The language is that of the device; changing it draws
//! every screen anew.

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

/// How words and numbers are written on this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Locale {
    /// Language.
    pub language: Language,
    /// Units.
    pub units: Units,
    /// Hours up to 24.
    pub clock_24: bool,
}

thread_local! {
    static LOCALE: Cell<Locale> = const {
        Cell::new(Locale { language: Language::English, units: Units::UsCustomary, clock_24: false })
    };
}

impl Locale {
    /// The manner that settings ask for.
    pub fn of(settings: &Settings) -> Self {
        let browser = if crate::platform::dom::asks_for_language("es") { Language::Spanish } else { Language::English };
        Self {
            language: settings.language.unwrap_or(browser),
            units: if settings.metric { Units::Metric } else { Units::UsCustomary },
            clock_24: settings.clock_24,
        }
    }

    /// Makes it the one that is written in.
    pub fn activate(self) {
        LOCALE.set(self);
    }

    /// The one that is written in.
    pub fn current() -> Self {
        LOCALE.get()
    }
}

/// Units of the device.
pub fn units() -> Units {
    Locale::current().units
}

/// Picks by language.
pub(crate) fn localized<T>(english: T, spanish: T) -> T {
    match Locale::current().language {
        Language::English => english,
        Language::Spanish => spanish,
    }
}

/// Picks by language from words in both, a line each: one text is less code at every call than two.
#[inline(never)]
pub(crate) fn localized_str(both: &'static str) -> &'static str {
    both.split_once('\n').map_or(both, |(english, spanish)| localized(english, spanish))
}

/// Words: `name { "English", "Español" }`, with arguments `name(a, b) { "… {a} …", "… {b} …" }`, or
/// counted `name[n] { "{n} piece" | "{n} pieces", "{n} pieza" | "{n} piezas" }`.
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
