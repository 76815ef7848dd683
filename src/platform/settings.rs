//! Settings of this device, in local storage. If local storage is switched off, they last until the page
//! is closed.

use super::scope::scoped;
use gloo_storage::{LocalStorage, Storage};
use lastpull_core::time::WallTime;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Deserializer, Serialize};
use serde_json::{Map, Value};

/// The key in local storage. Every copy of the app below this origin has its own.
fn key() -> String {
    scoped("lastpull.device")
}

/// A language of the catalogue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Language {
    /// English.
    #[default]
    English,
    /// Spanish.
    Spanish,
}

/// The colour theme.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize)]
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

/// The settings of this device. Their names and order in local storage are frozen; fields missing in an older version's
/// data get their default.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    /// Language; `None` to follow the browser.
    pub language: Option<Language>,
    /// Theme.
    pub theme: Theme,
    /// Metric units: centimetres and degrees Celsius.
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
    #[serde(rename = "shelved", deserialize_with = "suspended")]
    pub suspended: Option<SuspendedShopSettings>,
    /// Whether the install hint was dismissed.
    pub install_hint_done: bool,
    /// Whether the start page was completed.
    pub started: bool,
    /// The latest time of the shop's facts, ahead of this device's clock, of which the user was told.
    pub clock_understood: Option<WallTime>,
}

/// Settings that belong to a shop rather than to the device, saved while another shop is open.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct SuspendedShopSettings {
    #[serde(rename = "crew")]
    operator: Option<String>,
    backed_up: Option<WallTime>,
    backed_up_facts: u64,
}

impl Settings {
    /// The language that was chosen, else the browser's.
    pub fn language_or_browser(&self) -> Language {
        let browser = || if super::dom::asks_for_language("es") { Language::Spanish } else { Language::English };
        self.language.unwrap_or_else(browser)
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
        let metric = !super::dom::asks_for_language("en-US");
        Self {
            language: None,
            theme: Theme::Device,
            metric,
            clock_24: metric,
            click: false,
            buzz: true,
            operator: None,
            demo: false,
            backed_up: None,
            backed_up_facts: 0,
            suspended: None,
            install_hint_done: false,
            started: false,
            clock_understood: None,
        }
    }
}

/// Reads the settings.
pub fn load() -> Settings {
    load_stored().unwrap_or_default()
}

/// Reads the settings; `None` if none are stored.
pub fn load_stored() -> Option<Settings> {
    LocalStorage::get(key()).ok().map(|stored| lenient(&stored))
}

/// Calls `changed` whenever another tab has changed or removed the settings.
pub fn on_change_elsewhere(changed: impl Fn() + 'static) {
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

/// Reads a stored object. If a field cannot be read, it alone gets its default.
fn lenient<T: DeserializeOwned + Default>(stored: &Value) -> T {
    T::deserialize(stored).unwrap_or_else(|_| {
        let mut fields = stored.as_object().cloned().unwrap_or_default();
        fields.retain(|name, value| {
            let alone = Map::from_iter([(name.clone(), value.clone())]);
            T::deserialize(&Value::Object(alone)).is_ok()
        });
        T::deserialize(&Value::Object(fields)).unwrap_or_default()
    })
}

fn suspended<'de, D: Deserializer<'de>>(stored: D) -> Result<Option<SuspendedShopSettings>, D::Error> {
    Ok(Option::<Value>::deserialize(stored)?.map(|stored| lenient(&stored)))
}

impl Theme {
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
