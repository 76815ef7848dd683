//! Leptos' own.
pub use leptos::prelude::{Memo, RwSignal, Signal};
