//! How the browser's region writes numbers and times, asked of the browser (ECMA-402), which follows Unicode CLDR.
//! Without regions in the browser's languages: as the language alone is written.

use js_sys::{Date, Number};

/// The browser's first locale of a language with a region, such as `es-MX`; if it has none, the language in the
/// browser's region.
pub fn locale(language: &str) -> String {
    let tags = browser_locales();
    let of_language = |tag: &&String| tag.split('-').next() == Some(language) && region_of(tag).is_some();
    match tags.iter().find(of_language) {
        Some(tag) => tag.clone(),
        None => tags
            .iter()
            .find_map(|tag| region_of(tag))
            .map_or(language.to_owned(), |region| format!("{language}-{region}")),
    }
}

/// Whether numbers are written with a decimal comma.
pub fn has_decimal_comma(locale: &str) -> bool {
    String::from(Number::from(1.5).to_locale_string(locale)).contains(',')
}

/// Whether times of day are written with 24 hours.
pub fn has_24_hours(locale: &str) -> bool {
    let afternoon = Date::new_with_year_month_day_hr(2026, 0, 15, 13);
    String::from(afternoon.to_locale_time_string(locale)).starts_with("13")
}

/// Whether a print is measured in inches and a dryer in °F there: in the United States and its territories, and for an
/// English browser that names no region. Our own; CLDR has metric units for Puerto Rico, whose shops buy the same
/// garments, dryers and screens as those of the mainland.
pub fn is_united_states() -> bool {
    match country().as_deref() {
        Some(region) => ["US", "PR", "GU", "VI", "AS", "MP", "UM"].contains(&region),
        None => super::dom::asks_for_language("en"),
    }
}

/// The first country of the browser's locales, as two letters. A region of three digits is no country.
pub fn country() -> Option<String> {
    browser_locales().iter().filter_map(|tag| region_of(tag)).find(|region| region.len() == 2)
}

/// The region of a locale: two letters, or three digits such as those of `es-419`.
fn region_of(tag: &str) -> Option<String> {
    let is_region = |part: &&str| match part.len() {
        2 => part.bytes().all(|byte| byte.is_ascii_alphabetic()),
        3 => part.bytes().all(|byte| byte.is_ascii_digit()),
        _ => false,
    };
    tag.split('-').skip(1).find(is_region).map(str::to_ascii_uppercase)
}

/// Well-formed ones only: the browser throws on others, which it names where the system's locale is none.
fn browser_locales() -> Vec<String> {
    let is_subtag = |part: &str| matches!(part.len(), 1..=8) && part.bytes().all(|byte| byte.is_ascii_alphanumeric());
    let tags = leptos::prelude::window().navigator().languages();
    tags.iter().filter_map(|tag| tag.as_string()).filter(|tag| tag.split('-').all(is_subtag)).collect()
}
