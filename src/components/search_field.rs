//! The search field above a list. What was searched is there again when the user comes back to the page.

use crate::platform::history;
use crate::platform::page_memory::PageMemory;
use leptos::prelude::*;

thread_local! {
    /// What was searched on each page.
    static SEARCHED: PageMemory<String> = const { PageMemory::new() };
}

/// What is searched on this page: nothing at first, or what was when the user left it for a page they came back from.
/// Call it while the page is set up.
pub fn searched() -> RwSignal<String> {
    let hash = history::hash();
    let before = history::returned().then(|| SEARCHED.with(|kept| kept.get(&hash))).flatten();
    let search = RwSignal::new(before.unwrap_or_default());
    on_cleanup(move || SEARCHED.with(|kept| kept.put(&hash, search.try_get_untracked().unwrap_or_default())));
    search
}

/// The field.
#[component]
pub fn SearchField(
    /// What can be found.
    label: &'static str,
    /// What is searched.
    search: RwSignal<String>,
) -> impl IntoView {
    view! {
        <div class="search">
            <label class="visually-hidden" for="search">{label}</label>
            <input
                id="search"
                type="search"
                placeholder=label
                prop:value=search
                on:input=move |event| search.set(event_target_value(&event))
            />
        </div>
    }
}
