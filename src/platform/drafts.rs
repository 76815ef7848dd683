//! Drafts of forms that are not saved yet, in local storage: at most [`MOST`], each at most [`LONGEST`] characters. If
//! local storage is full or switched off, what is typed is lost when the page is left.

use super::clock;
use super::scope::scoped;

/// Most drafts kept; the oldest is deleted for one more.
const MOST: usize = 20;
/// Longest draft, in bytes. A longer one is not kept.
const LONGEST: usize = 40_000;

/// Key prefix of the drafts of the shop, or of the demo.
pub fn shop_key(demo: bool) -> &'static str {
    if demo { "demo" } else { "shop" }
}

/// The name of a draft of this copy of the app in local storage.
fn name_of(key: &str) -> String {
    format!("{}.{key}", scoped("lastpull.draft"))
}

fn storage() -> Option<web_sys::Storage> {
    leptos::prelude::window().local_storage().ok().flatten()
}

/// The draft of a key.
pub fn read(key: &str) -> Option<String> {
    let text = storage()?.get_item(&name_of(key)).ok()??;
    text.split_once(' ').map(|(_, draft)| draft.to_owned())
}

/// Keeps a draft, instead of the one before.
pub fn write(key: &str, draft: &str) {
    let Some(storage) = storage() else { return };
    let key = name_of(key);
    if draft.len() > LONGEST {
        return drop(storage.remove_item(&key));
    }
    if matches!(storage.get_item(&key), Ok(None)) {
        make_room(&storage);
    }
    let _ = storage.set_item(&key, &format!("{} {draft}", clock::now().now.unix_ms()));
}

/// Deletes a draft.
pub fn delete(key: &str) {
    if let Some(storage) = storage() {
        let _ = storage.remove_item(&name_of(key));
    }
}

/// Deletes all drafts whose key begins with `start`.
pub fn delete_all(start: &str) {
    let Some(storage) = storage() else { return };
    for name in names(&storage, &name_of(start)) {
        let _ = storage.remove_item(&name);
    }
}

/// The names in local storage that begin with `start`.
fn names(storage: &web_sys::Storage, start: &str) -> Vec<String> {
    let all = storage.length().unwrap_or(0);
    let names = (0..all).filter_map(|at| storage.key(at).ok().flatten());
    names.filter(|name| name.starts_with(start)).collect()
}

/// Deletes the oldest drafts until there is room for one more.
fn make_room(storage: &web_sys::Storage) {
    let typed_at = |key: &String| {
        let text = storage.get_item(key).ok().flatten().unwrap_or_default();
        text.split(' ').next().and_then(|at| at.parse::<u64>().ok()).unwrap_or(0)
    };
    let mut kept = names(storage, &name_of(""));
    while kept.len() >= MOST {
        let Some(oldest) = kept.iter().enumerate().min_by_key(|(_, key)| typed_at(key)).map(|(at, _)| at) else {
            return;
        };
        let _ = storage.remove_item(&kept.swap_remove(oldest));
    }
}
