//! Settings of this device, in local storage. If local storage is switched off, they last until the page
//! is closed.

use gloo_storage::{LocalStorage, Storage};
use js_sys::{JSON, Object, Reflect};
use lastpull_core::time::WallTime;
use wasm_bindgen::JsValue;

const KEY: &str = "lastpull.device";

/// A language of the catalogue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// Spanish.
    Spanish,
}

/// The colour theme.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
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

/// The settings of this device. Fields missing in an older version's data get their default.
#[derive(Clone, Debug, PartialEq)]
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
    pub operator: Option<String>,
    /// Whether the demo shop is open.
    pub demo: bool,
    /// Wall time of the last backup made on this device.
    pub backed_up: Option<WallTime>,
    /// Number of facts in that backup.
    pub backed_up_facts: u64,
    /// The values of `operator`, `backed_up` and `backed_up_facts` for the shop's own journal, while the demo is open.
    pub suspended: Option<SuspendedShopSettings>,
    /// Whether the install hint was dismissed.
    pub install_hint_done: bool,
    /// Whether the start page was completed.
    pub started: bool,
}

/// Settings that belong to a shop rather than to the device, saved while another shop is open.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct SuspendedShopSettings {
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
        let (operator, backed_up) = (self.operator.take(), self.backed_up.take());
        let backed_up_facts = std::mem::take(&mut self.backed_up_facts);
        self.suspended = Some(SuspendedShopSettings { operator, backed_up, backed_up_facts });
        self.demo = true;
    }

    /// Restores the shop's settings.
    pub fn resume_shop(&mut self) {
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
        }
    }
}

/// Reads the settings.
pub fn load() -> Settings {
    let text = LocalStorage::raw().get_item(KEY).ok().flatten();
    let json = text.and_then(|text| JSON::parse(&text).ok()).map(JsonObject);
    json.map_or_else(Settings::default, |json| Settings::of(&json))
}

/// Saves the settings; false if the browser does not store them.
pub fn save(settings: &Settings) -> bool {
    let text = JSON::stringify(&settings.to_json().0).map(String::from);
    text.is_ok_and(|text| LocalStorage::raw().set_item(KEY, &text).is_ok())
}

/// Removes the settings from local storage.
pub fn forget() {
    LocalStorage::delete(KEY);
}

/// The stored value, as an object of the browser's JSON parser. Reading it through serde would add a JSON
/// parser to the first load for this alone.
struct JsonObject(JsValue);

impl JsonObject {
    fn empty() -> Self {
        Self(Object::new().into())
    }

    fn get(&self, name: &str) -> Option<JsValue> {
        Reflect::get(&self.0, &name.into()).ok().filter(|value| !value.is_undefined() && !value.is_null())
    }

    fn flag(&self, name: &str, otherwise: bool) -> bool {
        self.get(name).and_then(|value| value.as_bool()).unwrap_or(otherwise)
    }

    fn number(&self, name: &str) -> Option<u64> {
        self.get(name).and_then(|value| value.as_f64()).filter(|number| *number >= 0.0).map(|number| number as u64)
    }

    fn text(&self, name: &str) -> Option<String> {
        self.get(name).and_then(|value| value.as_string())
    }

    fn with(self, name: &str, value: impl Into<JsValue>) -> Self {
        // Setting a property of a plain object does not fail.
        let _ = Reflect::set(&self.0, &name.into(), &value.into());
        self
    }

    fn with_number(self, name: &str, number: Option<u64>) -> Self {
        self.with(name, number.map_or(JsValue::NULL, |number| JsValue::from_f64(number as f64)))
    }

    fn with_text(self, name: &str, text: Option<&str>) -> Self {
        self.with(name, text.map_or(JsValue::NULL, JsValue::from_str))
    }
}

impl Settings {
    fn of(json: &JsonObject) -> Self {
        let other = Self::default();
        Self {
            language: json.text("language").and_then(|name| Language::named(&name)),
            theme: json.text("theme").and_then(|name| Theme::named(&name)).unwrap_or_default(),
            metric: json.flag("metric", other.metric),
            clock_24: json.flag("clock_24", other.clock_24),
            click: json.flag("click", other.click),
            buzz: json.flag("buzz", other.buzz),
            operator: json.text("crew"),
            demo: json.flag("demo", false),
            backed_up: json.number("backed_up").map(WallTime::from_unix_ms),
            backed_up_facts: json.number("backed_up_facts").unwrap_or(0),
            suspended: json.get("shelved").map(|suspended| SuspendedShopSettings::of(&JsonObject(suspended))),
            install_hint_done: json.flag("install_hint_done", false),
            started: json.flag("started", false),
        }
    }

    fn to_json(&self) -> JsonObject {
        JsonObject::empty()
            .with_text("language", self.language.map(Language::name))
            .with("theme", self.theme.name())
            .with("metric", self.metric)
            .with("clock_24", self.clock_24)
            .with("click", self.click)
            .with("buzz", self.buzz)
            .with_text("crew", self.operator.as_deref())
            .with("demo", self.demo)
            .with_number("backed_up", self.backed_up.map(WallTime::unix_ms))
            .with_number("backed_up_facts", Some(self.backed_up_facts))
            .with("shelved", self.suspended.as_ref().map_or(JsValue::NULL, |suspended| suspended.to_json().0))
            .with("install_hint_done", self.install_hint_done)
            .with("started", self.started)
    }
}

impl SuspendedShopSettings {
    fn of(json: &JsonObject) -> Self {
        Self {
            operator: json.text("crew"),
            backed_up: json.number("backed_up").map(WallTime::from_unix_ms),
            backed_up_facts: json.number("backed_up_facts").unwrap_or(0),
        }
    }

    fn to_json(&self) -> JsonObject {
        JsonObject::empty()
            .with_text("crew", self.operator.as_deref())
            .with_number("backed_up", self.backed_up.map(WallTime::unix_ms))
            .with_number("backed_up_facts", Some(self.backed_up_facts))
    }
}

impl Language {
    fn name(self) -> &'static str {
        match self {
            Self::English => "english",
            Self::Spanish => "spanish",
        }
    }

    fn named(name: &str) -> Option<Self> {
        [Self::English, Self::Spanish].into_iter().find(|language| language.name() == name)
    }
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

    fn named(name: &str) -> Option<Self> {
        [Self::Device, Self::Light, Self::Dark, Self::Amber].into_iter().find(|theme| theme.name() == name)
    }
}
