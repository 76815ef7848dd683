//! The Lastpull app: screens over `lastpull_core`.
//!
//! A screen is a function of a view-state that the core computes, and hands facts to the store.
//! [`platform`] is the only door to the browser. Folders carry the same subjects as the core's.

use wasm_bindgen::prelude::wasm_bindgen;

pub mod photo;
pub mod place;
pub mod platform;

mod colour;
mod day;
mod demo;
mod failure;
mod heat;
mod ink;
mod job;
mod later;
mod more;
mod parts;
mod pot;
mod press;
mod screen;
mod shell;
mod stencil;
mod store;
mod words;

/// Draws the app into the page.
#[wasm_bindgen]
pub fn start() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(shell::App);
}
