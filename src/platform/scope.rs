//! Names of what is stored. Databases, local storage and channels belong to the origin, and two copies of the app may be
//! below one: the first that is opened has the plain names, every other adds its path.
//! `start.js` decides which. So data stored before there were two copies is found. Caches always have the path.

use super::worker::get;

thread_local! {
    static SUFFIX: String = get(&js_sys::global(), "lastpullScope").as_string().unwrap_or_default();
}

/// The name for this copy of the app.
pub fn scoped(name: &str) -> String {
    SUFFIX.with(|suffix| [name, suffix].concat())
}

/// The path of the copy that has the plain names, if this is another one.
pub fn other_copy() -> Option<String> {
    SUFFIX.with(|suffix| !suffix.is_empty()).then(|| get(&js_sys::global(), "lastpullHome").as_string()).flatten()
}
