//! A list of any length: only the rows near the viewport are in the document, and the others are room. A shop's jobs of
//! ten years would be a hundred thousand elements, which take seconds to draw.
//!
//! Scrolling, the keyboard and the scroll bar are the browser's. Each row says which of how many it is, since a screen
//! reader cannot count what is not there. The browser's own search finds only what is drawn: a list that can be long has
//! a search field above it. A row with the keyboard focus that is scrolled far away hands the focus to the list.
//!
//! # Decisions
//!
//! - **Long lists** (2026-11-29, `src/components/long_list.rs`). A list that grows with the years draws the rows near
//!   the viewport and leaves room for the others; 10,000 jobs would otherwise be 100,000 elements. Rows come and go
//!   in blocks of twenty, whose heights are measured. `content-visibility` spares the layout but not the elements;
//!   months that open, or a button for fifty more, take taps from somebody who looks for an order of last year, and
//!   keep all that was opened. Back leads to the place where the list was left, with what was searched. Drawn whole
//!   are lists bounded otherwise: what is open, one day, one pot or run, the frames, components and crew of a shop.

use crate::platform::page_memory::PageMemory;
use crate::platform::row_window::{BLOCK, BlockHeights, follow};
use crate::platform::{dom, history};
use leptos::html;
use leptos::prelude::*;

/// Longest list that is drawn whole.
const WHOLE: usize = 2 * BLOCK;

thread_local! {
    /// Heights of the lists of pages that were left, so that a page is as high when the user comes back to it.
    static HEIGHTS: PageMemory<BlockHeights> = const { PageMemory::new() };
}

/// A list of any length.
#[component]
pub fn LongList(
    /// Which list of its page it is, for its height when the user comes back to the page.
    name: &'static str,
    /// CSS class.
    class: &'static str,
    /// Number of rows.
    #[prop(into)]
    length: Signal<usize>,
    /// Draws what is inside the row of an index, and follows what is listed there.
    row: Callback<usize, AnyView>,
) -> impl IntoView {
    let list = NodeRef::<html::Ul>::new();
    let key = format!("{} {name}", history::hash());
    let heights = StoredValue::new(HEIGHTS.with(|kept| kept.get(&key)).unwrap_or_default());
    let drawn = RwSignal::new(heights.with_value(|heights| heights.start(length.get_untracked())));
    let is_long = Memo::new(move |_| length.get() > WHOLE);
    let rows = Memo::new(move |_| {
        let (length, drawn) = (length.get(), drawn.get());
        if is_long.get() { (drawn.first * BLOCK).min(length)..(drawn.end * BLOCK).min(length) } else { 0..length }
    });
    let room = move |of: f64| is_long.get().then(|| format!("{of}px"));
    let had_focus = StoredValue::new(false);
    let update = move || {
        let Some(list) = list.try_get_untracked().flatten().filter(|_| is_long.get_untracked()) else { return };
        let (length, shown) = (length.get_untracked(), drawn.get_untracked());
        let found = heights.try_update_value(|heights| follow(&list, length, shown, heights)).flatten();
        if let Some(found) = found.filter(|found| *found != shown) {
            had_focus.set_value(dom::has_focus(&list));
            drawn.set(found);
        }
    };
    Effect::new(move || {
        rows.track();
        length.track();
        // Once the rows are drawn, and before they are painted.
        request_animation_frame(move || {
            let Some(list) = list.try_get_untracked().flatten() else { return };
            if had_focus.try_get_value() == Some(true) && !dom::has_focus(&list) {
                dom::focus_in_place(&list);
            }
            had_focus.set_value(false);
            update();
        });
    });
    let scrolled = window_event_listener(leptos::ev::scroll, move |_| update());
    let resized = window_event_listener(leptos::ev::resize, move |_| update());
    on_cleanup(move || {
        scrolled.remove();
        resized.remove();
        HEIGHTS.with(|kept| kept.put(&key, heights.try_get_value().unwrap_or_default()));
    });
    view! {
        <ul
            class=class
            node_ref=list
            tabindex=move || is_long.get().then_some("-1")
            style:padding-block-start=move || room(drawn.get().above)
            style:padding-block-end=move || room(drawn.get().below)
        >
            <For each=move || rows.get() key=|index| *index let:index>
                <li
                    aria-setsize=move || is_long.get().then(|| length.get())
                    aria-posinset=move || is_long.get().then_some(index + 1)
                >
                    {row.run(index)}
                </li>
            </For>
        </ul>
    }
}

/// A list of rows that are drawn again together when one of them changes.
pub fn long_rows<T: Send + Sync + 'static>(
    name: &'static str,
    class: &'static str,
    rows: Vec<T>,
    row: impl Fn(&T) -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let length = Signal::stored(rows.len());
    let row = Callback::new(move |index: usize| rows.get(index).map_or_else(|| ().into_any(), &row));
    view! { <LongList name class length row/> }.into_any()
}
