//! Settings of this device, in local storage. Where that is switched off they last as long as the
//! page does.

use gloo_storage::{LocalStorage, Storage};
use serde::{Deserialize, Serialize};

const KEY: &str = "lastpull.device";

/// A language of the catalogue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Language {
    /// English.
    #[default]
    English,
    /// Spanish.
    Spanish,
}

/// How the screen is lit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
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

/// What this device is set to. Missing fields, from an older version, take their default.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    /// Language; none to follow the browser.
    pub language: Option<Language>,
    /// Theme.
    pub theme: Theme,
    /// Centimetres, degrees Celsius.
    pub metric: bool,
    /// Hours up to 24.
    pub clock_24: bool,
    /// A click at each count.
    pub click: bool,
    /// A tap of the motor at each count.
    pub buzz: bool,
    /// Which of the crew holds this device.
    pub crew: Option<String>,
    /// Whether the demo shop is open.
    pub demo: bool,
    /// Wall time of the last backup made on this device.
    pub backed_up: Option<u64>,
    /// How many facts that held.
    pub backed_up_facts: u64,
    /// The shop's own of the three above, while the demo shop is open.
    pub shelved: Option<Shelved>,
    /// Whether the hint to install was put away.
    pub install_hint_done: bool,
    /// Whether the start screen is behind us.
    pub started: bool,
}

/// What belongs to a shop rather than to the device, put aside while another shop is open.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Shelved {
    crew: Option<String>,
    backed_up: Option<u64>,
    backed_up_facts: u64,
}

impl Settings {
    /// Puts aside what belongs to the shop, and opens the demo's.
    pub fn shelve(&mut self) {
        let (crew, backed_up) = (self.crew.take(), self.backed_up.take());
        let backed_up_facts = std::mem::take(&mut self.backed_up_facts);
        self.shelved = Some(Shelved { crew, backed_up, backed_up_facts });
        self.demo = true;
    }

    /// Takes it back.
    pub fn unshelve(&mut self) {
        let own = self.shelved.take().unwrap_or_default();
        (self.crew, self.backed_up, self.backed_up_facts) = (own.crew, own.backed_up, own.backed_up_facts);
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
            crew: None,
            demo: false,
            backed_up: None,
            backed_up_facts: 0,
            shelved: None,
            install_hint_done: false,
            started: false,
        }
    }
}

/// Reads the settings.
pub fn load() -> Settings {
    LocalStorage::get(KEY).unwrap_or_default()
}

/// Saves the settings; false where the browser does not keep them.
pub fn save(settings: &Settings) -> bool {
    LocalStorage::set(KEY, settings).is_ok()
}

/// Forgets them.
pub fn forget() {
    LocalStorage::delete(KEY);
}
