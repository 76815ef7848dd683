//! The device's settings in local storage: what any version has stored is read for ever.

use gloo_storage::{LocalStorage, Storage};
use lastpull::platform::settings::{Language, Settings, SuspendedShopSettings, Theme, load, save};
use lastpull::platform::{currency, region};
use lastpull_core::time::WallTime;
use lastpull_core::units::{LengthUnit, Units};
use serde_json::{Map, Value, json};
use wasm_bindgen_test::wasm_bindgen_test;

const KEY: &str = "lastpull.device";

/// Every field set, while the demo is open.
const STORED: &str = concat!(
    r#"{"language":"spanish","theme":"amber","metric":true,"clock_24":true,"click":true,"buzz":false,"crew":"Ana","#,
    r#""demo":true,"backed_up":1790000000000,"backed_up_facts":12,"#,
    r#""shelved":{"crew":"Luz","backed_up":1780000000000,"backed_up_facts":7},"#,
    r#""install_hint_done":true,"started":true,"clock_understood":1795000000000,"#,
    r#""first_steps_skipped":true,"celsius":false,"ounces":true,"currency":"GTQ","has_facts":true}"#,
);

/// A new device.
const STORED_DEFAULTS: &str = concat!(
    r#"{"language":null,"theme":"device","metric":false,"clock_24":false,"click":false,"buzz":true,"crew":null,"#,
    r#""demo":false,"backed_up":null,"backed_up_facts":0,"shelved":null,"install_hint_done":false,"started":false,"#,
    r#""clock_understood":null,"first_steps_skipped":false,"celsius":null,"ounces":false,"currency":null,"#,
    r#""has_facts":false}"#,
);

fn settings() -> Settings {
    let mut settings = Settings {
        language: Some(Language::Spanish),
        theme: Theme::Amber,
        metric: true,
        clock_24: true,
        click: true,
        buzz: false,
        operator: Some("Luz".into()),
        backed_up: Some(WallTime::from_unix_ms(1_780_000_000_000)),
        backed_up_facts: 7,
        install_hint_done: true,
        started: true,
        clock_understood: Some(WallTime::from_unix_ms(1_795_000_000_000)),
        first_steps_skipped: true,
        celsius: Some(false),
        ounces: true,
        currency: Some("GTQ"),
        has_facts: true,
        ..Settings::default()
    };
    settings.suspend_shop();
    Settings {
        operator: Some("Ana".into()),
        backed_up: Some(WallTime::from_unix_ms(1_790_000_000_000)),
        backed_up_facts: 12,
        ..settings
    }
}

fn stored() -> Option<String> {
    LocalStorage::raw().get_item(KEY).unwrap()
}

fn read(text: &str) -> Settings {
    LocalStorage::raw().set_item(KEY, text).unwrap();
    load()
}

fn with(name: &str, value: &Value) -> String {
    let mut fields: Map<String, Value> = serde_json::from_str(STORED).unwrap();
    fields.insert(name.into(), value.clone());
    Value::Object(fields).to_string()
}

#[wasm_bindgen_test]
fn settings_are_stored_under_the_same_names_in_the_same_order() {
    assert!(save(&settings()));
    assert_eq!(stored().as_deref(), Some(STORED));
    assert!(save(&Settings { metric: false, clock_24: false, ..Settings::default() }));
    assert_eq!(stored().as_deref(), Some(STORED_DEFAULTS));
}

#[wasm_bindgen_test]
fn stored_settings_are_read() {
    assert_eq!(read(STORED), settings());
    let new = Settings { metric: false, clock_24: false, ..Settings::default() };
    assert_eq!(read(STORED_DEFAULTS), new);
}

#[wasm_bindgen_test]
fn a_missing_field_gets_its_default_and_an_unknown_one_is_ignored() {
    let read = read(r#"{"newer":{"a":[1]},"started":true,"theme":"dark"}"#);
    assert_eq!(read, Settings { started: true, theme: Theme::Dark, ..Settings::default() });
}

#[wasm_bindgen_test]
fn units_stored_before_they_were_apart_are_read_as_inches_or_metric_with_grams() {
    assert_eq!(read(r#"{"metric":false}"#).units(), Units::US);
    assert_eq!(read(r#"{"metric":true}"#).units(), Units::METRIC);
    let apart = read(r#"{"metric":true,"celsius":false,"ounces":true}"#).units();
    assert_eq!(apart, Units { length: LengthUnit::Centimetres, ..Units::US.with_ounces() });
}

#[wasm_bindgen_test]
fn another_unit_of_length_leaves_the_temperature_as_it_was() {
    let mut settings = read(r#"{"metric":false}"#);
    settings.set_length(LengthUnit::Centimetres);
    assert_eq!(settings.units(), Units { length: LengthUnit::Centimetres, ..Units::US });
}

/// Source: Unicode CLDR, as every browser carries it, for locales on which all of its versions agree.
#[wasm_bindgen_test]
fn the_browser_says_how_a_region_writes_numbers_and_times() {
    for (locale, comma) in [("en-US", false), ("en-GB", false), ("es-MX", false), ("es-ES", true), ("es-AR", true)] {
        assert_eq!(region::has_decimal_comma(locale), comma, "{locale}");
    }
    for (locale, hours_24) in [("en-US", false), ("en-GB", true), ("es-ES", true)] {
        assert_eq!(region::has_24_hours(locale), hours_24, "{locale}");
    }
}

/// Source: Unicode CLDR, as above.
#[wasm_bindgen_test]
fn a_price_has_the_sign_of_its_currency_where_the_locale_writes_it() {
    for (code, locale, text) in
        [("USD", "en-US", "$31.00"), ("MXN", "es-MX", "$31.00"), ("EUR", "es-ES", "31,00\u{a0}€")]
    {
        assert_eq!(currency::written(31.0, code, locale), text, "{code} in {locale}");
    }
    // Every code is one that the browser accepts.
    for code in currency::CURRENCIES {
        assert!(currency::written(31.0, code, "en-US").contains("31"), "{code}");
    }
}

#[wasm_bindgen_test]
fn no_currency_can_be_chosen() {
    assert_eq!(read(&with("currency", &json!(""))).currency, Some(""));
}

#[wasm_bindgen_test]
fn a_field_that_cannot_be_read_loses_only_itself() {
    let whole = settings();
    let new = Settings::default();
    let cases = [
        ("language", json!("latin"), Settings { language: None, ..whole.clone() }),
        ("theme", json!("neon"), Settings { theme: Theme::Device, ..whole.clone() }),
        ("metric", json!("yes"), Settings { metric: new.metric, ..whole.clone() }),
        ("clock_24", json!(24), Settings { clock_24: new.clock_24, ..whole.clone() }),
        ("click", json!(null), Settings { click: false, ..whole.clone() }),
        ("buzz", json!([]), Settings { buzz: true, ..whole.clone() }),
        ("crew", json!({"name": "Ana"}), Settings { operator: None, ..whole.clone() }),
        ("demo", json!(1), Settings { demo: false, ..whole.clone() }),
        ("backed_up", json!(-1), Settings { backed_up: None, ..whole.clone() }),
        ("backed_up_facts", json!(null), Settings { backed_up_facts: 0, ..whole.clone() }),
        ("shelved", json!(5), Settings { suspended: Some(SuspendedShopSettings::default()), ..whole.clone() }),
        ("install_hint_done", json!("x"), Settings { install_hint_done: false, ..whole.clone() }),
        ("started", json!("x"), Settings { started: false, ..whole.clone() }),
        ("clock_understood", json!("x"), Settings { clock_understood: None, ..whole.clone() }),
        ("first_steps_skipped", json!("x"), Settings { first_steps_skipped: false, ..whole.clone() }),
        ("celsius", json!("x"), Settings { celsius: None, ..whole.clone() }),
        ("ounces", json!("x"), Settings { ounces: false, ..whole.clone() }),
        ("currency", json!("gold"), Settings { currency: None, ..whole.clone() }),
    ];
    for (name, value, expected) in cases {
        assert_eq!(read(&with(name, &value)), expected, "{name}");
    }
}

#[wasm_bindgen_test]
fn a_field_of_the_suspended_shop_that_cannot_be_read_loses_only_itself() {
    let mut settings = read(&with("shelved", &json!({"crew": "Luz", "backed_up": "?", "backed_up_facts": 7})));
    settings.resume_shop();
    assert_eq!((settings.operator.as_deref(), settings.backed_up, settings.backed_up_facts), (Some("Luz"), None, 7));
}

#[wasm_bindgen_test]
fn what_is_no_object_is_read_as_a_new_device() {
    for text in ["", "{", "null", "7", "\"spanish\""] {
        assert_eq!(read(text), Settings::default(), "{text}");
    }
}
