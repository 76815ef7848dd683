//! The catalogue: every word a person sees, in English and Spanish.
//!
//! A word is a function, so that a missing one, a missing translation or a misspelt argument does
//! not compile. Each subject has its file. The language is that of the device; changing it draws
//! every screen anew.

use crate::platform::settings::{Language, Settings};
use lastpull_core::quantity::Units;
use std::cell::Cell;

mod bath;
mod colour;
mod common;
mod day;
mod demo;
mod exchange;
mod failure;
mod faults;
mod heat;
mod heat_run;
mod ink;
mod job;
mod photo;
mod pot;
mod press;
mod room;
mod screen;
mod settings;
mod show;
mod stencil;

pub use bath::*;
pub use colour::*;
pub use common::*;
pub use day::*;
pub use demo::*;
pub use exchange::*;
pub use failure::*;
pub use faults::*;
pub use heat::*;
pub use heat_run::*;
pub use ink::*;
pub use job::*;
pub use photo::*;
pub use pot::*;
pub use press::*;
pub use room::*;
pub use screen::*;
pub use settings::*;
pub use show::*;
pub use stencil::*;

/// How words and numbers are written on this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Manner {
    /// Language.
    pub language: Language,
    /// Units.
    pub units: Units,
    /// Hours up to 24.
    pub clock_24: bool,
}

thread_local! {
    static MANNER: Cell<Manner> = const {
        Cell::new(Manner { language: Language::English, units: Units::Inch, clock_24: false })
    };
}

impl Manner {
    /// The manner that settings ask for.
    pub fn of(settings: &Settings) -> Self {
        let browser = if crate::platform::dom::asks_for_language("es") { Language::Spanish } else { Language::English };
        Self {
            language: settings.language.unwrap_or(browser),
            units: if settings.metric { Units::Metric } else { Units::Inch },
            clock_24: settings.clock_24,
        }
    }

    /// Makes it the one that is written in.
    pub fn take(self) {
        MANNER.set(self);
    }

    /// The one that is written in.
    pub fn now() -> Self {
        MANNER.get()
    }
}

/// Units of the device.
pub fn units() -> Units {
    Manner::now().units
}

/// Picks by language.
pub(crate) fn pick<T>(english: T, spanish: T) -> T {
    match Manner::now().language {
        Language::English => english,
        Language::Spanish => spanish,
    }
}

/// Picks by language from words in both, a line each: one text is less code at every call than two.
#[inline(never)]
pub(crate) fn either(both: &'static str) -> &'static str {
    both.split_once('\n').map_or(both, |(english, spanish)| pick(english, spanish))
}

/// Words: `name { "English", "Español" }`, with arguments `name(a, b) { "… {a} …", "… {b} …" }`, or
/// counted `name[n] { "{n} piece" | "{n} pieces", "{n} pieza" | "{n} piezas" }`.
macro_rules! words {
    ($($name:ident $(($($arg:ident),+))? $([$n:ident])? { $($body:tt)* })*) => {
        $(words! { @one $name ($($($arg),+)?) [$($n)?] $($body)* })*
    };
    (@one $name:ident () [] $en:literal, $es:literal) => {
        #[doc = concat!("“", $en, "”")]
        pub fn $name() -> &'static str {
            $crate::words::either(concat!($en, "\n", $es))
        }
    };
    (@one $name:ident ($($arg:ident),+) [] $en:literal, $es:literal) => {
        #[doc = concat!("“", $en, "”")]
        pub fn $name($($arg: impl std::fmt::Display),+) -> String {
            if $crate::words::pick(true, false) { format!($en) } else { format!($es) }
        }
    };
    (@one $name:ident () [$n:ident] $one:literal | $many:literal, $uno:literal | $muchos:literal) => {
        #[doc = concat!("“", $many, "”")]
        pub fn $name($n: u32) -> String {
            match ($crate::words::pick(true, false), $n == 1) {
                (true, true) => format!($one),
                (true, false) => format!($many),
                (false, true) => format!($uno),
                (false, false) => format!($muchos),
            }
        }
    };
}
use words;
