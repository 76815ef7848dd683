//! One photo, as large as the window: zoomed by pinch, double tap, buttons or keys.

use super::photo_url::PhotoFetcher;
use crate::components::{Icon, close_on_back, drag};
use crate::i18n;
use crate::platform::dom;
use crate::store::{PhotoSource, Store};
use lastpull_core::ids::{PhotoId, Subject};
use lastpull_core::photo::{DoubleTap, Photo, Zoom};
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{KeyboardEvent, PointerEvent};

/// How far an arrow key moves an enlarged photo, in pixels.
const MOVE: f64 = 80.0;

/// The pointers on the photo, and their gesture.
#[derive(Clone, Default)]
struct Gesture {
    fingers: Vec<(i32, (f64, f64))>,
    /// Whether a single pointer has moved: then it is not a tap.
    moved: bool,
    double: DoubleTap,
}

/// The open photo among those of its subject.
#[component]
pub fn PhotoView(subject: Subject, photos: Memo<Vec<Photo>>, open: RwSignal<Option<PhotoId>>) -> impl IntoView {
    let store = Store::from_context();
    let dialog = NodeRef::<html::Dialog>::new();
    let stage = NodeRef::<html::Div>::new();
    let zoom = RwSignal::new(Zoom::default());
    let hand = RwSignal::new(Gesture::default());
    Effect::new(move || {
        if let Some(dialog) = dialog.get() {
            if !dialog.open() {
                let _ = dialog.show_modal();
            }
        }
    });
    let here = Memo::new(move |_| {
        let open = open.get();
        photos.with(|photos| photos.iter().copied().enumerate().find(|(_, photo)| Some(photo.id) == open))
    });
    let close = move || {
        // On closing, the keyboard focus returns to where it was.
        if let Some(dialog) = dialog.get_untracked() {
            dialog.close();
        }
        open.set(None);
    };
    close_on_back(Callback::new(move |()| close()));
    let beside = move |step: isize| {
        let at = here.with(|here| here.map(|(at, _)| at))?;
        photos.with(|photos| photos.get(at.checked_add_signed(step)?).map(|photo| photo.id))
    };
    let go = move |step| {
        if let Some(photo) = untrack(|| beside(step)) {
            zoom.set(Zoom::default());
            open.set(Some(photo));
        }
    };
    let delete = move |_| {
        if let Some((_, photo)) = here.get_untracked() {
            close();
            store.delete_photo(subject, &photo, i18n::photo_deleted());
            dom::focus(&section_of(subject));
        }
    };
    let window = move || {
        stage
            .get_untracked()
            .map_or((0.0, 0.0), |stage| (f64::from(stage.client_width()), f64::from(stage.client_height())))
    };
    let step = move |factor: f64| zoom.update(|zoom| *zoom = zoom.scaled(factor, (0.0, 0.0), window()));
    // Position of a pointer relative to the middle of the stage.
    let point =
        move |event: &PointerEvent| stage.get_untracked().map_or((0.0, 0.0), |stage| drag::from_middle(&stage, event));
    let down = move |event: PointerEvent| {
        if let Some(stage) = stage.get_untracked() {
            drag::capture(&stage, &event);
        }
        let finger = (event.pointer_id(), point(&event));
        hand.update_untracked(|hand| {
            hand.moved = !hand.fingers.is_empty();
            hand.fingers.push(finger);
        });
    };
    let moves = move |event: PointerEvent| {
        let (id, to) = (event.pointer_id(), point(&event));
        let fingers = hand.with_untracked(|hand| hand.fingers.clone());
        let Some(&(_, from)) = fingers.iter().find(|finger| finger.0 == id) else { return };
        match fingers.as_slice() {
            [_] => zoom.update(|zoom| *zoom = zoom.moved((to.0 - from.0, to.1 - from.1), window())),
            [one, two] => {
                let still = if one.0 == id { two.1 } else { one.1 };
                zoom.update(|zoom| *zoom = zoom.pinched([from, to], [still, still], window()));
            }
            _ => {}
        }
        hand.update_untracked(|hand| {
            // A finger always moves a little: up to 3 px is a tap.
            hand.moved |= (to.0 - from.0).hypot(to.1 - from.1) > 3.0;
            hand.fingers.iter_mut().filter(|finger| finger.0 == id).for_each(|finger| finger.1 = to);
        });
    };
    let up = move |event: PointerEvent| {
        let (at, to) = (event.time_stamp(), point(&event));
        let mut double = false;
        hand.update_untracked(|hand| {
            hand.fingers.retain(|finger| finger.0 != event.pointer_id());
            double = hand.fingers.is_empty() && !hand.moved && hand.double.is_second_tap(at, to);
        });
        if double {
            zoom.update(|zoom| *zoom = zoom.toggle(to, window()));
        }
    };
    let gone = move |event: PointerEvent| {
        hand.update_untracked(|hand| hand.fingers.retain(|finger| finger.0 != event.pointer_id()));
    };
    let wheel = move |event: web_sys::WheelEvent| {
        event.prevent_default();
        let factor = if event.delta_y() < 0.0 { Zoom::STEP } else { 1.0 / Zoom::STEP };
        let at = point(event.unchecked_ref());
        zoom.update(|zoom| *zoom = zoom.scaled(factor, at, window()));
    };
    let key = move |event: KeyboardEvent| {
        let close_up = zoom.with_untracked(|zoom| zoom.is_zoomed_in());
        let shift = |x: f64, y: f64| zoom.update(|zoom| *zoom = zoom.moved((x, y), window()));
        match event.key().as_str() {
            "+" | "=" => step(Zoom::STEP),
            "-" => step(1.0 / Zoom::STEP),
            "0" => zoom.set(Zoom::default()),
            "ArrowLeft" if close_up => shift(MOVE, 0.0),
            "ArrowRight" if close_up => shift(-MOVE, 0.0),
            "ArrowUp" if close_up => shift(0.0, MOVE),
            "ArrowDown" if close_up => shift(0.0, -MOVE),
            "ArrowLeft" => go(-1),
            "ArrowRight" => go(1),
            _ => return,
        }
        event.prevent_default();
    };
    let label = move || open.get().map(|open| i18n::photo_label(&photos.get(), open)).unwrap_or_default();
    let moved = move || zoom.with(|zoom| format!("translate({}px, {}px) scale({})", zoom.x, zoom.y, zoom.scale));
    let is_zoomed_in = Memo::new(move |_| zoom.with(|zoom| zoom.is_zoomed_in()));
    let is_closest = Memo::new(move |_| zoom.with(|zoom| zoom.scale >= Zoom::MAX_SCALE));
    view! {
        <dialog
            class="photo-view"
            node_ref=dialog
            aria-labelledby="photo-label"
            on:keydown=key
            on:cancel=move |event: web_sys::Event| {
                event.prevent_default();
                close();
            }
        >
            <div class="photo-head">
                <button type="button" class="icon-button" aria-label=i18n::close() on:click=move |_| close()><Icon name="cross"/></button>
                <p id="photo-label" aria-live="polite">{label}</p>
                <button type="button" class="icon-button" id="photo-delete" aria-label=i18n::photo_delete() on:click=delete><Icon name="bin"/></button>
            </div>
            <div
                class="photo-stage"
                class:close=is_zoomed_in
                node_ref=stage
                on:pointerdown=down
                on:pointermove=moves
                on:pointerup=up
                on:pointercancel=gone
                on:wheel=wheel
            >
                <div class="photo-moved" style:transform=moved>
                    {move || open.get().map(|photo| {
                        let label = untrack(label);
                        view! { <FullPhoto photo label/> }
                    })}
                </div>
            </div>
            <div class="photo-foot">
                <button type="button" class="icon-button" id="photo-before" aria-label=i18n::photo_before() disabled=move || beside(-1).is_none() on:click=move |_| go(-1)><Icon name="back"/></button>
                <button type="button" class="icon-button" id="photo-farther" aria-label=i18n::photo_farther() disabled=move || !is_zoomed_in.get() on:click=move |_| step(1.0 / Zoom::STEP)><Icon name="minus"/></button>
                <button type="button" class="icon-button" id="photo-closer" aria-label=i18n::photo_closer() disabled=is_closest on:click=move |_| step(Zoom::STEP)><Icon name="plus"/></button>
                <button type="button" class="icon-button" id="photo-after" aria-label=i18n::photo_after() disabled=move || beside(1).is_none() on:click=move |_| go(1)><Icon name="next"/></button>
            </div>
        </dialog>
    }
}

/// The photo itself.
#[component]
fn FullPhoto(photo: PhotoId, label: String) -> impl IntoView {
    let store = Store::from_context();
    let fetching = PhotoFetcher::new();
    let shown = fetching.shown;
    fetching.fetch(store.photo_url(photo));
    view! {
        {move || match shown.get() {
            None => ().into_any(),
            Some(PhotoSource::Url(address)) => view! { <img src=address alt=label.clone() draggable="false"/> }.into_any(),
            Some(PhotoSource::Missing) => view! { <p><strong>{i18n::photo_missing()}</strong>" "{i18n::photo_missing_text()}</p> }.into_any(),
            Some(PhotoSource::Fault(fault)) => view! { <p>{i18n::storage_fault(&fault)}</p> }.into_any(),
        }}
    }
}

/// Element that gets the keyboard focus when the focused one is removed.
pub fn section_of(subject: Subject) -> String {
    format!("photos-{subject}")
}
