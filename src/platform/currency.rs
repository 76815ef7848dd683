//! Currencies of the shop's prices: codes of ISO 4217, written as the browser writes them (ECMA-402).
//!
//! # Decisions
//!
//! - **A setting of the device** (2026-11-30). Prices are stored as hundredths without a currency, and stay so: the setting
//!   says only which sign is shown. The browser cannot say the currency of a country, so the table is ours.

use super::region;
use js_sys::{Array, Intl, Object, Reflect};
use wasm_bindgen::JsValue;

/// The currencies to choose from: those of the Americas, and of other countries where English or Spanish is spoken.
pub const CURRENCIES: [&str; 21] = [
    "USD", "MXN", "GTQ", "HNL", "NIO", "CRC", "DOP", "COP", "PEN", "BOB", "CLP", "ARS", "UYU", "PYG", "VES", "BRL",
    "CAD", "EUR", "GBP", "AUD", "NZD",
];

/// The currency of the browser's country; empty if it names none, or one whose currency is not among them.
pub fn of_region() -> &'static str {
    match region::country().as_deref() {
        Some("US" | "PR" | "GU" | "VI" | "AS" | "MP" | "UM" | "SV" | "PA" | "EC") => "USD",
        Some("MX") => "MXN",
        Some("GT") => "GTQ",
        Some("HN") => "HNL",
        Some("NI") => "NIO",
        Some("CR") => "CRC",
        Some("DO") => "DOP",
        Some("CO") => "COP",
        Some("PE") => "PEN",
        Some("BO") => "BOB",
        Some("CL") => "CLP",
        Some("AR") => "ARS",
        Some("UY") => "UYU",
        Some("PY") => "PYG",
        Some("VE") => "VES",
        Some("BR") => "BRL",
        Some("CA") => "CAD",
        Some("GB") => "GBP",
        Some("AU") => "AUD",
        Some("NZ") => "NZD",
        Some(
            "AT" | "BE" | "BG" | "CY" | "DE" | "EE" | "ES" | "FI" | "FR" | "GR" | "HR" | "IE" | "IT" | "LT" | "LU"
            | "LV" | "MT" | "NL" | "PT" | "SI" | "SK",
        ) => "EUR",
        _ => "",
    }
}

/// An amount with its currency's own sign, as the locale writes it. `code` is one of [`CURRENCIES`].
pub fn written(amount: f64, code: &str, locale: &str) -> String {
    let options = Object::new();
    for (name, value) in [("style", "currency"), ("currency", code), ("currencyDisplay", "narrowSymbol")] {
        let _ = Reflect::set(&options, &name.into(), &value.into());
    }
    let locales = Array::of1(&JsValue::from_str(locale));
    let format = Intl::NumberFormat::new(&locales, &options).format();
    let text = format.call1(&JsValue::UNDEFINED, &JsValue::from_f64(amount)).ok();
    text.and_then(|text| text.as_string()).unwrap_or_default()
}
