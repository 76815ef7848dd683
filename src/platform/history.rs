//! The history of this tab: moving between pages, and closing a dialog with the browser's Back.
//!
//! An open dialog has a history entry of its own above that of its page, so that Back closes the dialog and the page
//! stays. The entry of a dialog that was closed otherwise remains until the page is left: going back at once would take
//! a moment, in which the user may already be moving on. Each entry's state says whose it is and which page was before,
//! so that a saved form is replaced by the page that follows it, or left by going back if that page was before it.
//! The state says so because the history cannot be read: the navigation API can, but not all browsers that we support
//! have it. Without the history API (no known browser), Back leaves the page and a form stays in the history.

use super::page_memory::PageMemory;
use super::{clock, dom};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::JsValue;

/// State of a history entry. Stored as text: the dialog's number, then the hash of the page before.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
struct EntryState {
    /// Number of the dialog that the entry belongs to; 0 for a page.
    dialog: u32,
    /// Hash of the page before this one, empty if it is the first.
    before: String,
}

/// An open dialog.
struct Dialog {
    number: u32,
    /// Whether it has its entry.
    has_entry: bool,
    close: Rc<dyn Fn()>,
}

/// A move to the page of a hash.
enum Move {
    Go(String),
    Replace(String),
    Up(String),
}

/// Longest time that going back takes, on a slow phone that is busy. If it is over, the browser did not go back: what comes
/// later would lead away from a page that the user has gone to meanwhile.
const GOING_BACK: Duration = Duration::from_secs(2);

thread_local! {
    /// Hash of the page that is shown.
    static HERE: RefCell<String> = const { RefCell::new(String::new()) };
    /// Number of the dialog that the current entry belongs to.
    static AT: Cell<u32> = const { Cell::new(0) };
    static DIALOGS: RefCell<Vec<Dialog>> = const { RefCell::new(Vec::new()) };
    static LAST_NUMBER: Cell<u32> = const { Cell::new(0) };
    /// Which time of going back is under way.
    static GOING: Cell<Option<u32>> = const { Cell::new(None) };
    static TIMES: Cell<u32> = const { Cell::new(0) };
    /// What to do once it is over.
    static NEXT: RefCell<Option<Move>> = const { RefCell::new(None) };
    /// Whether the app is to be loaded again.
    static RELOADS: Cell<bool> = const { Cell::new(false) };
    static MOVED: RefCell<Option<Rc<dyn Fn()>>> = const { RefCell::new(None) };
    /// Whether the page that is shown was left before, in this entry.
    static RETURNED: Cell<bool> = const { Cell::new(false) };
    /// How far each page was scrolled when it was left.
    static SCROLLED: PageMemory<f64> = const { PageMemory::new() };
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

/// Whether the user came back to this page, instead of opening it again.
pub fn returned() -> bool {
    RETURNED.get()
}

/// How far to scroll the page that is shown, in CSS pixels: as far as it was when it was left, if the user came back.
pub fn scroll_place() -> f64 {
    if returned() { SCROLLED.with(|kept| kept.get(&here())).unwrap_or(0.0) } else { 0.0 }
}

/// Starts to follow the history; `moved` is called when another page is to be shown. Called once.
pub fn watch(moved: impl Fn() + 'static) {
    MOVED.set(Some(Rc::new(moved)));
    HERE.set(hash());
    match state() {
        // A dialog was open when the page was reloaded.
        Some(EntryState { dialog, .. }) => {
            AT.set(dialog);
            LAST_NUMBER.set(dialog);
        }
        None => write(&EntryState::default(), None, true),
    }
    let popped = leptos::prelude::window_event_listener_untyped("popstate", |_| popped());
    let changed = leptos::prelude::window_event_listener_untyped("hashchange", |_| arrived());
    std::mem::forget((popped, changed));
}

/// Goes to a page. It replaces the entry of a dialog from which it is opened.
pub fn go(hash: &str) {
    if GOING.get().is_some() {
        return NEXT.set(Some(Move::Go(hash.to_owned())));
    }
    if AT.get() > 0 && hash != here() {
        show(&EntryState { dialog: 0, before: here() }, hash);
    } else {
        let _ = leptos::prelude::window().location().set_hash(hash);
    }
}

/// Goes to the page that follows a finished one, which Back must not lead to: goes back if it is the page before,
/// otherwise replaces the entry.
pub fn replace(hash: &str) {
    if is_leaving() {
        return;
    }
    if GOING.get().is_some() || AT.get() > 0 {
        return after_going_back(Move::Replace(hash.to_owned()));
    }
    match state() {
        Some(EntryState { before, .. }) if before == hash => go_back(),
        found => show(&found.unwrap_or_default(), hash),
    }
}

/// Goes to the page above this one: back if it is the page before, otherwise with a new entry.
pub fn go_up(hash: &str) {
    if is_leaving() {
        return;
    }
    if before().as_deref() != Some(hash) {
        go(hash);
    } else if GOING.get().is_some() || AT.get() > 0 {
        after_going_back(Move::Up(hash.to_owned()));
    } else {
        go_back();
    }
}

/// Loads the app again. Going back ends a load that has begun, and the other way round, of which no browser tells the page:
/// the load waits until going back is over, and begins again, after longer and longer, until the new page is there.
pub fn reload() {
    if !RELOADS.replace(true) {
        load(Duration::from_secs(1));
    }
}

fn load(patience: Duration) {
    let (wait, patience) = if GOING.get().is_some() {
        (Duration::from_millis(50), patience)
    } else {
        let _ = leptos::prelude::window().location().reload();
        (patience, patience * 2)
    };
    clock::after(wait, move || load(patience));
}

/// Replaces the hash of the current entry by that of a page which is already shown.
pub fn rename(hash: &str) {
    write(&state().unwrap_or_default(), Some(hash), true);
    HERE.set(hash.to_owned());
}

/// Gives a dialog that was opened its entry. `close` is called when the user goes back. Returns its number.
pub fn dialog_opened(close: impl Fn() + 'static) -> u32 {
    let number = LAST_NUMBER.get() + 1;
    LAST_NUMBER.set(number);
    DIALOGS.with_borrow_mut(|dialogs| dialogs.push(Dialog { number, has_entry: false, close: Rc::new(close) }));
    enter_dialogs_soon();
    number
}

/// A dialog was closed.
pub fn dialog_closed(number: u32) {
    DIALOGS.with_borrow_mut(|dialogs| dialogs.retain(|dialog| dialog.number != number));
}

/// Whether the user has just followed a link to another page, and the browser has not reported it yet: what was saved
/// meanwhile must not lead elsewhere.
fn is_leaving() -> bool {
    GOING.get().is_none() && hash() != here()
}

fn here() -> String {
    HERE.with_borrow(String::clone)
}

fn state() -> Option<EntryState> {
    let text = leptos::prelude::window().history().ok()?.state().ok()?.as_string()?;
    let end = text.find('#').unwrap_or(text.len());
    Some(EntryState { dialog: text[..end].parse().ok()?, before: text[end..].to_owned() })
}

/// Writes the state of the current entry, or of a new one; without a hash, it keeps the address.
fn write(state: &EntryState, hash: Option<&str>, replace: bool) {
    let Ok(history) = leptos::prelude::window().history() else { return };
    AT.set(state.dialog);
    let text = JsValue::from_str(&format!("{}{}", state.dialog, state.before));
    let _ = if replace {
        history.replace_state_with_url(&text, "", hash)
    } else {
        history.push_state_with_url(&text, "", hash)
    };
}

/// Shows another page in the current entry.
fn show(state: &EntryState, hash: &str) {
    write(state, Some(hash), true);
    moved(hash.to_owned(), false);
}

/// Another page is to be shown.
fn moved(hash: String, returned: bool) {
    SCROLLED.with(|kept| kept.put(&here(), dom::page_scrolled()));
    HERE.set(hash);
    RETURNED.set(returned);
    if let Some(moved) = MOVED.with_borrow(Option::clone) {
        moved();
    }
}

fn is_open(dialog: u32) -> bool {
    DIALOGS.with_borrow(|dialogs| dialogs.iter().any(|open| open.number == dialog))
}

/// Leaves the entry of a dialog, then makes the move.
fn after_going_back(next: Move) {
    NEXT.set(Some(next));
    if GOING.get().is_none() {
        go_back();
    }
}

fn go_back() {
    let time = TIMES.get().wrapping_add(1);
    TIMES.set(time);
    GOING.set(Some(time));
    if let Ok(history) = leptos::prelude::window().history() {
        let _ = history.back();
    }
    clock::after(GOING_BACK, move || {
        if GOING.get() == Some(time) {
            AT.set(0);
            went_back();
        }
    });
}

fn went_back() {
    GOING.set(None);
    let next = NEXT.take();
    // Not at once: setting the hash dispatches `popstate` before it returns, and this may be the listener of one.
    clock::after(Duration::ZERO, move || match next {
        Some(Move::Go(hash)) => go(&hash),
        Some(Move::Replace(hash)) => replace(&hash),
        Some(Move::Up(hash)) => go_up(&hash),
        None => {}
    });
}

/// The current entry is another one. One without a state is new; [`arrived`] follows for it.
fn popped() {
    let Some(EntryState { dialog, .. }) = state() else { return };
    let left = AT.replace(dialog);
    let closed_before = left > dialog && !is_open(left);
    let closing: Vec<Rc<dyn Fn()>> = DIALOGS.with_borrow_mut(|dialogs| {
        let above = dialogs.iter_mut().rev().filter(|open| open.has_entry && open.number > dialog);
        let close = above.map(|open| {
            open.has_entry = false;
            Rc::clone(&open.close)
        });
        close.collect()
    });
    closing.iter().for_each(|close| close());
    let same_page = hash() == here();
    arrived();
    if GOING.get().is_some() {
        went_back();
    } else if (dialog > 0 && !is_open(dialog)) || (closed_before && same_page) {
        // The entry of a dialog that is not open any more is no place to go to, or from.
        go_back();
    }
    enter_dialogs_soon();
}

/// Shows the page of the current entry, and notes which page was before a new one.
fn arrived() {
    let hash = hash();
    let is_new = state().is_none();
    if is_new {
        if GOING.get().is_some() {
            // The user moved on in the meantime: going back will lead away from there again.
            NEXT.set(Some(Move::Go(hash.clone())));
        }
        write(&EntryState { dialog: 0, before: here() }, None, true);
    }
    if hash != here() {
        moved(hash, !is_new);
    }
}

/// Gives each open dialog an entry, once the dialogs that are opened and closed together have done so. It takes over
/// that of a closed one.
fn enter_dialogs_soon() {
    clock::after(Duration::ZERO, || {
        if GOING.get().is_some() {
            return;
        }
        let missing: Vec<u32> = DIALOGS.with_borrow_mut(|dialogs| {
            let missing = dialogs.iter_mut().filter(|open| !open.has_entry);
            let entered = missing.map(|open| {
                open.has_entry = true;
                open.number
            });
            entered.collect()
        });
        for dialog in missing {
            let at = AT.get();
            let before = before().unwrap_or_default();
            write(&EntryState { dialog, before }, None, at > 0 && !is_open(at));
        }
    });
}
