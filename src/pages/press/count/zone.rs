//! The count zone: most of the page, in the garment's colour, with the count in the ink's colour.

use super::actions::{give_feedback, go_on, undo};
use crate::i18n;
use crate::platform::{dom, haptics};
use crate::store::{SaveState, Store};
use lastpull_core::colour::Colour;
use lastpull_core::facts::Fact;
use lastpull_core::ids::RunId;
use lastpull_core::job::Size;
use lastpull_core::run::{Contacts, CountView, HeldKeys, KeyMeaning, RunPhase, Touch, Viewport};
use leptos::prelude::*;
use web_sys::{KeyboardEvent, PointerEvent};

/// The count zone.
#[component]
pub fn Zone(
    id: RunId,
    count: Memo<CountView>,
    size: Memo<Option<Size>>,
    garment: Option<Colour>,
    ink: Option<Colour>,
) -> impl IntoView {
    let store = Store::from_context();
    let contacts = StoredValue::new(Contacts::default());
    let keys = StoredValue::new(HeldKeys::default());
    let one_more = move || {
        // A count that cannot be saved would be lost, so none is taken.
        if matches!(store.saving.get_untracked(), SaveState::Blocked(_)) {
            haptics::buzz(200);
            return;
        }
        let phase = count.with_untracked(|count| count.phase);
        if matches!(phase, RunPhase::Stopped { .. }) {
            go_on(store, id);
            give_feedback(store, 30, Some(440.0));
            return;
        }
        let left_of_size = count.with_untracked(|count| {
            count.sizes.iter().find(|row| row.size == size.get_untracked()).map(lastpull_core::run::SizeCount::left)
        });
        store.record(id, Fact::Pulled { pieces: 1, size: size.get_untracked() });
        // The last piece of a size vibrates differently: time for the next pile.
        if left_of_size == Some(1) {
            give_feedback(store, 120, Some(1320.0));
        } else {
            give_feedback(store, 15, Some(880.0));
        }
    };
    let down = move |event: PointerEvent| {
        event.prevent_default();
        let counts =
            contacts.try_update_value(|contacts| contacts.touch(touch_of(&event), window_size())).unwrap_or(false);
        if counts && event.button() == 0 {
            one_more();
        }
    };
    let lift = move |event: PointerEvent| {
        contacts.update_value(|contacts| contacts.lift(event.pointer_id(), event.time_stamp()));
    };
    let pressed = window_event_listener(leptos::ev::keydown, move |event: KeyboardEvent| {
        if dom::is_sheet_up() || dom::is_typing(&event) || event.ctrl_key() || event.meta_key() || event.alt_key() {
            return;
        }
        if matches!(event.key().as_str(), " " | "Enter") && dom::is_on_button(&event) {
            return;
        }
        match keys.try_update_value(|keys| keys.press(&event.key(), event.repeat())).flatten() {
            Some(KeyMeaning::Count) => one_more(),
            Some(KeyMeaning::Undo) => undo(store, id, count),
            None => {}
        }
        if HeldKeys::default().press(&event.key(), false).is_some() {
            event.prevent_default();
        }
    });
    let released = window_event_listener(leptos::ev::keyup, move |event: KeyboardEvent| {
        keys.update_value(|keys| keys.release(&event.key()));
    });
    let blurred = window_event_listener(leptos::ev::blur, move |_| {
        keys.update_value(HeldKeys::clear);
        contacts.update_value(Contacts::clear);
    });
    on_cleanup(move || {
        pressed.remove();
        released.remove();
        blurred.remove();
    });
    let stopped = Memo::new(move |_| {
        count.with(|count| match count.phase {
            RunPhase::Stopped { since, cause } => Some((since, cause)),
            RunPhase::Waiting | RunPhase::Running | RunPhase::Ended => None,
        })
    });
    let cloth = garment.unwrap_or(Colour::WHITE);
    let print = ink.filter(|ink| cloth.contrast(*ink) >= 3.0).unwrap_or(if cloth.prefers_black_text() {
        Colour::BLACK
    } else {
        Colour::WHITE
    });
    let writing = if cloth.prefers_black_text() { Colour::BLACK } else { Colour::WHITE };
    view! {
        <div
            class="zone"
            class:stopped=move || stopped.with(Option::is_some)
            class:complete=move || count.with(|count| count.left == 0 && count.planned > 0)
            id="zone"
            role="button"
            tabindex="0"
            data-saved=move || count.with(|count| count.good.to_string())
            data-unsaved=move || count.with(|count| count.unsaved.to_string())
            style=("--cloth", cloth.to_string())
            style=("--print", print.to_string())
            style=("--writing", writing.to_string())
            // A touch here is a count and nothing else: the browser need not make a tap, a highlight
            // and a click of it while the write is running.
            on:touchstart=move |event| event.prevent_default()
            on:pointerdown=down
            on:pointerup=lift
            on:pointercancel=lift
            on:lostpointercapture=lift
            on:contextmenu=move |event| event.prevent_default()
            on:click=move |event| {
                // A press by a screen reader arrives as a click without a preceding touch.
                if event.detail() == 0 {
                    one_more();
                }
            }
        >
            <strong class="zone-count" id="count">{move || count.with(|count| count.good)}</strong>
            <span class="visually-hidden">{move || count.with(|count| i18n::of_pieces(count.good, count.planned))}</span>
            <span class="zone-left">
                {move || count.with(|count| match (count.left, count.over) {
                    (0, 0) => i18n::count_complete().to_owned(),
                    (0, over) => i18n::count_over(over),
                    (left, 0) => i18n::count_left(left),
                    (left, over) => format!("{} · {}", i18n::count_left(left), i18n::count_over(over)),
                })}
                {move || count.with(|count| (count.misprints > 0).then(|| view! { <small>{i18n::misprints_so_far(count.misprints)}</small> }))}
            </span>
            <span class="zone-foot">
                {move || match stopped.get() {
                    Some((since, cause)) => view! {
                        <span class="zone-stop" id="stopped">
                            <strong>{i18n::stopped_for(i18n::stop_cause(cause))}" "{move || i18n::stopwatch(store.clock.get().now.since(since))}</strong>
                            <span>{i18n::touch_to_resume()}</span>
                        </span>
                    }.into_any(),
                    None => view! {
                        <span class="zone-saved">
                            <span class="when-saved">{i18n::count_saved()}" · "{i18n::count_touch()}</span>
                            <span class="when-unsaved">{i18n::count_not_saved()}</span>
                        </span>
                    }.into_any(),
                }}
            </span>
        </div>
    }
}

fn touch_of(event: &PointerEvent) -> Touch {
    Touch {
        id: event.pointer_id(),
        x: f64::from(event.client_x()),
        y: f64::from(event.client_y()),
        width: f64::from(event.width()),
        height: f64::from(event.height()),
        at: event.time_stamp(),
    }
}

fn window_size() -> Viewport {
    let length = |value: Result<wasm_bindgen::JsValue, wasm_bindgen::JsValue>| {
        value.ok().and_then(|value| value.as_f64()).unwrap_or(f64::MAX)
    };
    Viewport { width: length(window().inner_width()), height: length(window().inner_height()) }
}
