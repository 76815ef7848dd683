//! Settings of this device, in local storage. If local storage is switched off, they last until the page
//! is closed.

use super::currency::CURRENCIES;
use super::region;
use super::scope::scoped;
use gloo_storage::{LocalStorage, Storage};
use lastpull_core::time::WallTime;
use lastpull_core::units::{LengthUnit, TemperatureUnit, Units, WeightUnit};
use serde::Serialize;
use serde_json::Value;

/// The key in local storage. Every copy of the app below this origin has its own.
fn key() -> String {
    scoped("lastpull.device")
}

/// A language of the catalogue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Language {
    /// English.
    #[default]
    English,
    /// Spanish.
    Spanish,
}

/// The colour theme.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Theme {
    /// As the device is set.
    #[default]
    Device,
    /// Light.
    Light,
    /// Dark.
    Dark,
    /// Amber on black: light that does not expose a stencil.
    Amber,
}

/// The settings of this device. Their names and order in local storage are frozen; what is missing, or cannot be read,
/// has its default. They are read field by field: see DEVELOPERS.md for what a derive would cost.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Settings {
    /// Language; `None` to follow the browser.
    pub language: Option<Language>,
    /// Theme.
    pub theme: Theme,
    /// Centimetres, and degrees Celsius unless `celsius` differs; otherwise inches and degrees Fahrenheit.
    pub metric: bool,
    /// The 24-hour clock.
    pub clock_24: bool,
    /// Click sound at each count.
    pub click: bool,
    /// Vibration at each count.
    pub buzz: bool,
    /// The crew member who uses this device.
    #[serde(rename = "crew")]
    pub operator: Option<String>,
    /// Whether the demo shop is open.
    pub demo: bool,
    /// Wall time of the last backup made on this device, in milliseconds since 1970-01-01 UTC.
    pub backed_up: Option<WallTime>,
    /// Number of facts in that backup.
    pub backed_up_facts: u64,
    /// The values of `operator`, `backed_up` and `backed_up_facts` for the shop's own journal, while the demo is open.
    #[serde(rename = "shelved")]
    pub suspended: Option<SuspendedShopSettings>,
    /// Whether the install hint was dismissed.
    pub install_hint_done: bool,
    /// Whether the start page was completed.
    pub started: bool,
    /// The latest time of the shop's facts, ahead of this device's clock, of which the user was told.
    pub clock_understood: Option<WallTime>,
    /// Whether the first steps of a new shop were skipped.
    pub first_steps_skipped: bool,
    /// Degrees Celsius; `None` until chosen apart from the unit of length.
    pub celsius: Option<bool>,
    /// Ink in ounces and pounds instead of grams.
    pub ounces: bool,
    /// Currency of prices, one of [`CURRENCIES`] or empty for none; `None` until chosen.
    pub currency: Option<&'static str>,
    /// Whether the shop has facts on this device. If none are found, the browser has removed them.
    pub has_facts: bool,
}

/// Settings that belong to a shop rather than to the device, saved while another shop is open.
#[derive(Clone, Debug, PartialEq, Default, Serialize)]
pub struct SuspendedShopSettings {
    #[serde(rename = "crew")]
    operator: Option<String>,
    backed_up: Option<WallTime>,
    backed_up_facts: u64,
}

impl SuspendedShopSettings {
    fn of(stored: &Value) -> Self {
        Self {
            operator: stored["crew"].as_str().map(str::to_owned),
            backed_up: moment(&stored["backed_up"]),
            backed_up_facts: stored["backed_up_facts"].as_u64().unwrap_or_default(),
        }
    }
}

fn moment(stored: &Value) -> Option<WallTime> {
    stored.as_u64().map(WallTime::from_unix_ms)
}

impl Settings {
    fn of(stored: &Value) -> Self {
        let flag = |name: &str| stored[name].as_bool();
        let SuspendedShopSettings { operator, backed_up, backed_up_facts } = SuspendedShopSettings::of(stored);
        let suspended = &stored["shelved"];
        Self {
            language: [Language::English, Language::Spanish]
                .into_iter()
                .find(|known| stored["language"] == known.name()),
            theme: Theme::ALL.into_iter().find(|known| stored["theme"] == known.name()).unwrap_or_default(),
            // The browser is asked for its region on a new device only.
            metric: flag("metric").unwrap_or_else(|| !region::is_united_states()),
            clock_24: flag("clock_24").unwrap_or_else(|| region::has_24_hours(&locale_of(browser_language()))),
            click: flag("click").unwrap_or(false),
            buzz: flag("buzz").unwrap_or(true),
            operator,
            demo: flag("demo").unwrap_or(false),
            backed_up,
            backed_up_facts,
            suspended: (!suspended.is_null()).then(|| SuspendedShopSettings::of(suspended)),
            install_hint_done: flag("install_hint_done").unwrap_or(false),
            started: flag("started").unwrap_or(false),
            clock_understood: moment(&stored["clock_understood"]),
            first_steps_skipped: flag("first_steps_skipped").unwrap_or(false),
            celsius: flag("celsius"),
            ounces: flag("ounces").unwrap_or(false),
            currency: CURRENCIES.into_iter().chain([""]).find(|known| stored["currency"] == *known),
            has_facts: flag("has_facts").unwrap_or(false),
        }
    }

    /// The language that was chosen, else the browser's.
    pub fn language_or_browser(&self) -> Language {
        self.language.unwrap_or_else(browser_language)
    }

    /// The units of this device.
    pub fn units(&self) -> Units {
        let celsius = self.celsius.unwrap_or(self.metric);
        Units {
            length: if self.metric { LengthUnit::Centimetres } else { LengthUnit::Inches },
            temperature: if celsius { TemperatureUnit::Celsius } else { TemperatureUnit::Fahrenheit },
            weight: if self.ounces { WeightUnit::Ounces } else { WeightUnit::Grams },
        }
    }

    /// Chooses the unit of length; that of temperature stays.
    pub fn set_length(&mut self, unit: LengthUnit) {
        self.celsius = Some(self.units().temperature == TemperatureUnit::Celsius);
        self.metric = unit == LengthUnit::Centimetres;
    }

    /// Whether numbers are written with a decimal comma: as the browser's region writes them in this language.
    pub fn has_decimal_comma(&self) -> bool {
        region::has_decimal_comma(&locale_of(self.language_or_browser()))
    }

    /// Starts a shop without facts, of which there is no backup.
    pub fn start_shop(&mut self) {
        self.started = true;
        (self.has_facts, self.backed_up, self.backed_up_facts) = (false, None, 0);
    }

    /// Saves the shop's settings and starts with the demo's.
    pub fn suspend_shop(&mut self) {
        if self.demo {
            return;
        }
        let (operator, backed_up) = (self.operator.take(), self.backed_up.take());
        let backed_up_facts = std::mem::take(&mut self.backed_up_facts);
        self.suspended = Some(SuspendedShopSettings { operator, backed_up, backed_up_facts });
        self.demo = true;
    }

    /// Restores the shop's settings.
    pub fn resume_shop(&mut self) {
        if !self.demo {
            return;
        }
        let own = self.suspended.take().unwrap_or_default();
        (self.operator, self.backed_up, self.backed_up_facts) = (own.operator, own.backed_up, own.backed_up_facts);
        self.demo = false;
    }
}

impl Default for Settings {
    fn default() -> Self {
        Self::of(&Value::Null)
    }
}

fn browser_language() -> Language {
    if super::dom::asks_for_language("es") { Language::Spanish } else { Language::English }
}

/// The browser's locale of a language.
pub fn locale_of(language: Language) -> String {
    region::locale(match language {
        Language::English => "en",
        Language::Spanish => "es",
    })
}

/// Reads the settings.
pub fn load() -> Settings {
    load_stored().unwrap_or_default()
}

/// Reads the settings; `None` if none are stored.
pub fn load_stored() -> Option<Settings> {
    LocalStorage::get(key()).ok().map(|stored: Value| Settings::of(&stored))
}

/// Calls `changed` whenever another tab has changed or removed the settings, or may have: a page that is shown again
/// from the back/forward cache was told of nothing meanwhile.
pub fn on_change_elsewhere(changed: impl Fn() + Clone + 'static) {
    let again = changed.clone();
    let shown = leptos::prelude::window_event_listener_untyped("pageshow", move |event| {
        // Also dispatched when the page is loaded.
        if super::worker::get(&event, "persisted").is_truthy() {
            again();
        }
    });
    std::mem::forget(shown);
    let handle = leptos::prelude::window_event_listener(leptos::ev::storage, move |event| {
        // Without a key, everything was removed.
        if event.key().is_none_or(|changed| changed == key()) {
            changed();
        }
    });
    std::mem::forget(handle);
}

/// Saves the settings; false if the browser does not store them.
pub fn save(settings: &Settings) -> bool {
    LocalStorage::set(key(), settings).is_ok()
}

/// Removes the settings from local storage.
pub fn forget() {
    LocalStorage::delete(key());
}

impl Language {
    /// The name that is stored.
    fn name(self) -> &'static str {
        match self {
            Self::English => "english",
            Self::Spanish => "spanish",
        }
    }
}

impl Theme {
    const ALL: [Self; 4] = [Self::Device, Self::Light, Self::Dark, Self::Amber];

    /// The name that is stored and set on the page.
    pub fn name(self) -> &'static str {
        match self {
            Self::Device => "device",
            Self::Light => "light",
            Self::Dark => "dark",
            Self::Amber => "amber",
        }
    }
}
