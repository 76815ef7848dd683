//! Where on the print the defect is: tapped on the art as it lies on the garment.

use super::record::record_change;
use crate::components::Icon;
use crate::components::drag::{self, PointerDrag};
use crate::forms::Debounced;
use crate::i18n;
use crate::store::Store;
use lastpull_core::failure::{AspectRatio, FailureCard, Mark, PrintSketch};
use lastpull_core::ids::Subject;
use lastpull_core::run::Location;
use leptos::html;
use leptos::prelude::*;
use web_sys::{KeyboardEvent, PointerEvent};

/// The art in the ink's colour on the garment's colour; a tap sets the mark.
#[component]
pub fn MarkPlace(id: Subject, card: Memo<Option<FailureCard>>) -> impl IntoView {
    let store = Store::from_context();
    let print = card.with_untracked(|card| card.as_ref().map(|card| card.print).unwrap_or_default());
    let recorded = Memo::new(move |_| card.with(|card| card.as_ref().and_then(|card| card.failure.mark)));
    let debounced =
        Debounced::new(Callback::new(move |mark: Option<Mark>| record_change(store, id, |form| form.mark = mark)));
    let mark = Memo::new(move |_| debounced.shown.get().unwrap_or_else(|| recorded.get()));
    let art = NodeRef::<html::Div>::new();
    let at = move |event: &PointerEvent| {
        let art = art.get_untracked()?;
        let [x, y] = drag::fraction(&art, event);
        Some(Mark::at(x, y))
    };
    // What is dragged is the mark; it holds where the mark was before.
    let drag = PointerDrag::new();
    let down = move |event: PointerEvent| {
        if let (Some(art), Some(new)) = (art.get_untracked(), at(&event)) {
            if drag.start(&art, &event, mark.get_untracked()) {
                debounced.set(Some(new));
            }
        }
    };
    let moves = move |event: PointerEvent| {
        if let (Some(_), Some(mark)) = (drag.by(&event), at(&event)) {
            debounced.set(Some(mark));
        }
    };
    let cancel = move |event: PointerEvent| {
        if let Some(before) = drag.end(&event) {
            debounced.set(before);
        }
    };
    let key = move |event: KeyboardEvent| {
        let Some([right, down]) = drag::arrow(&event) else { return };
        let far = if event.shift_key() { 10 } else { 2 };
        event.prevent_default();
        let from = mark.get_untracked();
        debounced.set(Some(
            from.map_or(Mark::at(0.5, 0.5), |mark| mark.nudged(far * i32::from(right), far * i32::from(down))),
        ));
    };
    let colours = print.colours();
    let AspectRatio { width, height } = print.shape();
    let is_wide = width * 4 > height * 5;
    view! {
        <p class="quiet-line">{i18n::failure_mark_hint()}</p>
        <div class="failure-print" style=("--cloth", colours.garment.to_string()) style=("--print", colours.art.to_string())>
            <GarmentOutline print/>
            <div
                class="failure-art"
                id="art"
                style:aspect-ratio=format!("{width} / {height}")
                class:wide=is_wide
                role="application"
                tabindex="0"
                aria-label=move || i18n::failure_mark_label(format!("{}{}", in_words(mark.get()), exact(mark.get())))
                node_ref=art
                on:pointerdown=down
                on:pointermove=moves
                on:pointerup=move |event| { drag.end(&event); }
                on:pointercancel=cancel
                on:keydown=key
            >
                {move || mark.get().map(|Mark { x, y }| view! {
                    <span class="failure-mark" style:left=permille(x) style:top=permille(y)></span>
                })}
            </div>
        </div>
        <p class="failure-mark-words" role="status" id="mark-words">{move || in_words(mark.get())}<span class="visually-hidden">{move || exact(mark.get())}</span></p>
        {move || mark.with(Option::is_some).then(|| view! {
            <button type="button" class="button quiet" id="mark-clear" on:click=move |_| debounced.done(None)><Icon name="cross"/>{i18n::failure_mark_clear()}</button>
        })}
    }
}

fn permille(value: u16) -> String {
    format!("{}.{}%", value / 10, value % 10)
}

/// Where a mark is, as text.
pub fn in_words(mark: Option<Mark>) -> &'static str {
    mark.map_or_else(i18n::failure_mark_none, |mark| i18n::failure_ninth(mark.grid_cell()))
}

/// The same in percent, after it, for who does not see the mark.
fn exact(mark: Option<Mark>) -> String {
    mark.map(|mark| i18n::failure_mark_exact(mark.x / 10, mark.y / 10)).unwrap_or_default()
}

/// A few lines of the garment around the art: collar, hem or pocket.
#[component]
fn GarmentOutline(print: PrintSketch) -> impl IntoView {
    let path = match print.location {
        Location::FullFront | Location::CentreChest => "M36 0c4 12 24 12 28 0",
        Location::FullBack | Location::UpperBack => "M36 0c4 5 24 5 28 0",
        // As seen by the viewer: the wearer's left is on the right.
        Location::LeftChest => "M0 0c4 12 20 12 24 0",
        Location::RightChest => "M76 0c4 12 20 12 24 0",
        Location::LeftSleeve | Location::RightSleeve => "M0 94h100M0 97h100",
        Location::InsideNeck => "M0 6c30 10 70 10 100 0",
        Location::Pocket => "M8 6h84v70l-42 20-42-20zM8 13h84",
        Location::Other => "",
    };
    view! {
        <svg class="failure-around" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true" focusable="false"><path d=path></path></svg>
    }
}
