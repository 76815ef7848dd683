//! The history of this tab: moving between pages, and closing a dialog with the browser's Back.
//!
//! An open dialog has a history entry of its own above that of its page, so that Back closes the dialog and the page
//! stays. Each entry's state says whose it is and which page was before, so that a saved form is replaced by the page
//! that follows it, or left by going back if that page was before it. Without the history API (no known browser), Back
//! leaves the page and a form stays in the history.

use super::clock;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::JsValue;

/// State of a history entry. Stored as text: the dialog's number, then the hash of the page before.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
struct EntryState {
    /// Number of the dialog that the entry belongs to; 0 for a page.
    dialog: u32,
    /// Hash of the page before it, empty if it is the first.
    before: String,
}

/// An open dialog.
struct Dialog {
    number: u32,
    /// Whether it has its entry.
    has_entry: bool,
    close: Rc<dyn Fn()>,
}

/// A move to a page that waits until going back is done.
struct Move {
    hash: String,
    replace: bool,
}

/// Longest time that going back takes. If it is over, the browser did not go back.
const GOING_BACK: Duration = Duration::from_millis(400);

thread_local! {
    static HERE: RefCell<String> = const { RefCell::new(String::new()) };
    static DIALOGS: RefCell<Vec<Dialog>> = const { RefCell::new(Vec::new()) };
    static LAST_NUMBER: Cell<u32> = const { Cell::new(0) };
    /// Counts the times of going back; `Some` while one is under way.
    static GOING: Cell<Option<u32>> = const { Cell::new(None) };
    static NEXT: RefCell<Option<Move>> = const { RefCell::new(None) };
    static MOVED: RefCell<Option<Rc<dyn Fn()>>> = const { RefCell::new(None) };
}

/// The window's `location.hash`, with its `#`; the first page's if there is none.
pub fn hash() -> String {
    let hash = leptos::prelude::window().location().hash().unwrap_or_default();
    if hash.is_empty() { "#/".into() } else { hash }
}

/// Hash of the page before this one, if this tab came from one.
pub fn before() -> Option<String> {
    state().map(|state| state.before).filter(|before| !before.is_empty())
}

/// Starts to follow the history; `moved` is called when another page is to be shown. Called once.
pub fn watch(moved: impl Fn() + 'static) {
    MOVED.set(Some(Rc::new(moved)));
    HERE.set(hash());
    if state().is_none() {
        write(&EntryState::default(), &hash(), true);
    }
    let popped = leptos::prelude::window_event_listener_untyped("popstate", |_| popped());
    let changed = leptos::prelude::window_event_listener_untyped("hashchange", |_| hash_changed());
    std::mem::forget((popped, changed));
    // The page was reloaded while a dialog was open.
    settle();
}

/// Goes to a page. It replaces the entry of a dialog from which it is opened.
pub fn go(hash: &str) {
    let Some(hash) = after_going_back(hash, false) else { return };
    match state() {
        Some(EntryState { dialog: 1.., .. }) if hash != here() => {
            show(&EntryState { dialog: 0, before: here() }, &hash)
        }
        _ => drop(leptos::prelude::window().location().set_hash(&hash)),
    }
}

/// Goes to the page that follows a finished one, which Back must not lead to: goes back if it is the page before,
/// otherwise replaces the entry.
pub fn replace(hash: &str) {
    let Some(hash) = after_going_back(hash, true) else { return };
    match state() {
        Some(EntryState { dialog: 1.., .. }) => go(&hash),
        Some(EntryState { before, .. }) if before == hash => go_back(),
        found => show(&found.unwrap_or_default(), &hash),
    }
}

/// Goes to the page above this one: back if it is the page before, otherwise with a new entry.
pub fn go_up(hash: &str) {
    if before().as_deref() == Some(hash) && GOING.get().is_none() && state().is_some_and(|state| state.dialog == 0) {
        go_back();
    } else {
        go(hash);
    }
}

/// Replaces the hash of the current entry by that of a page which is already shown.
pub fn rename(hash: &str) {
    write(&state().unwrap_or_default(), hash, true);
    HERE.set(hash.to_owned());
}

/// Gives a dialog that was opened its entry. `close` is called when the user goes back. Returns its number.
pub fn dialog_opened(close: impl Fn() + 'static) -> u32 {
    let number = LAST_NUMBER.get() + 1;
    LAST_NUMBER.set(number);
    DIALOGS.with_borrow_mut(|dialogs| dialogs.push(Dialog { number, has_entry: false, close: Rc::new(close) }));
    settle_soon();
    number
}

/// Removes the entry of a dialog that is closed.
pub fn dialog_closed(number: u32) {
    DIALOGS.with_borrow_mut(|dialogs| dialogs.retain(|dialog| dialog.number != number));
    settle_soon();
}

fn here() -> String {
    HERE.with_borrow(String::clone)
}

fn state() -> Option<EntryState> {
    let text = leptos::prelude::window().history().ok()?.state().ok()?.as_string()?;
    let end = text.find('#').unwrap_or(text.len());
    Some(EntryState { dialog: text[..end].parse().ok()?, before: text[end..].to_owned() })
}

fn write(state: &EntryState, hash: &str, replace: bool) {
    let Ok(history) = leptos::prelude::window().history() else { return };
    let text = JsValue::from_str(&format!("{}{}", state.dialog, state.before));
    let _ = if replace {
        history.replace_state_with_url(&text, "", Some(hash))
    } else {
        history.push_state_with_url(&text, "", Some(hash))
    };
}

/// Shows another page in the current entry.
fn show(state: &EntryState, hash: &str) {
    write(state, hash, true);
    HERE.set(hash.to_owned());
    moved();
}

fn moved() {
    if let Some(moved) = MOVED.with_borrow(Option::clone) {
        moved();
    }
}

/// The hash, unless going back is under way: then the move is made after it.
fn after_going_back(hash: &str, replace: bool) -> Option<String> {
    if GOING.get().is_none() {
        return Some(hash.to_owned());
    }
    NEXT.set(Some(Move { hash: hash.to_owned(), replace }));
    None
}

fn go_back() {
    let turn = LAST_NUMBER.get() + 1;
    LAST_NUMBER.set(turn);
    GOING.set(Some(turn));
    if let Ok(history) = leptos::prelude::window().history() {
        let _ = history.back();
    }
    clock::after(GOING_BACK, move || {
        if GOING.get() == Some(turn) {
            went_back();
        }
    });
}

fn went_back() {
    GOING.set(None);
    if let Some(Move { hash, replace: replaces }) = NEXT.take() {
        if replaces { replace(&hash) } else { go(&hash) }
    }
}

/// The current entry is another one: closes the dialogs that it leaves.
fn popped() {
    let shown = state().map_or(0, |state| state.dialog);
    let left: Vec<Rc<dyn Fn()>> = DIALOGS.with_borrow_mut(|dialogs| {
        let left = dialogs.iter_mut().rev().filter(|dialog| dialog.has_entry && dialog.number > shown);
        left.map(|dialog| {
            dialog.has_entry = false;
            Rc::clone(&dialog.close)
        })
        .collect()
    });
    left.iter().for_each(|close| close());
    if GOING.get().is_some() {
        went_back();
    }
    settle_soon();
}

fn hash_changed() {
    let hash = hash();
    if hash == here() {
        return;
    }
    if state().is_none() {
        write(&EntryState { dialog: 0, before: here() }, &hash, true);
    }
    HERE.set(hash);
    moved();
}

/// [`settle`], once the dialogs that are opened and closed together have done so.
fn settle_soon() {
    clock::after(Duration::ZERO, settle);
}

/// Gives each open dialog an entry, and leaves that of a closed one.
fn settle() {
    if GOING.get().is_some() {
        return;
    }
    let stale = |state: &EntryState| {
        state.dialog > 0 && DIALOGS.with_borrow(|dialogs| !dialogs.iter().any(|open| open.number == state.dialog))
    };
    let missing = DIALOGS.with_borrow_mut(|dialogs| {
        let missing: Vec<u32> = dialogs.iter().filter(|open| !open.has_entry).map(|open| open.number).collect();
        dialogs.iter_mut().for_each(|open| open.has_entry = true);
        missing
    });
    for dialog in &missing {
        let found = state().unwrap_or_default();
        if stale(&found) {
            write(&EntryState { dialog: *dialog, ..found }, &here(), true);
        } else {
            write(&EntryState { dialog: *dialog, before: here() }, &here(), false);
        }
    }
    if missing.is_empty() && state().is_some_and(|state| stale(&state)) {
        go_back();
    }
}
