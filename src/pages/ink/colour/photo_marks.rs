//! Three marks on a picture: set by tap, dragged, moved with the arrow keys, shown enlarged.

use super::photo_subject::PhotoOf;
use crate::components::drag::{self, PointerDrag};
use crate::components::{Choice, Icon};
use crate::i18n;
use lastpull_core::colour::photo_reading::PatchRole;
use leptos::html;
use leptos::prelude::*;
use web_sys::{KeyboardEvent, PointerEvent};

/// The marks, in the order in which they are set.
const MARKS: [PatchRole; 3] = [PatchRole::Target, PatchRole::Sample, PatchRole::Neutral];

/// Positions of the marks, as fractions of the picture.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Placed {
    /// Of target, sample and neutral: x and y, each 0 to 1.
    pub at: [[f64; 2]; 3],
    /// Half the width of a mark, as a fraction of the picture's shorter side.
    pub radius: f64,
    /// Which marks were set by the user.
    set: [bool; 3],
}

impl Default for Placed {
    fn default() -> Self {
        Self { at: [[0.25, 0.5], [0.5, 0.5], [0.75, 0.5]], radius: 0.04, set: [false; 3] }
    }
}

impl Placed {
    /// Whether all marks were set by the user.
    pub fn is_set(&self) -> bool {
        self.set.iter().all(|set| *set)
    }

    fn put(&mut self, which: usize, to: [f64; 2]) {
        if let (Some(at), Some(set)) = (self.at.get_mut(which), self.set.get_mut(which)) {
            (*at, *set) = (to.map(|share| share.clamp(0.0, 1.0)), true);
        }
    }

    fn of(&self, which: usize) -> [f64; 2] {
        self.at.get(which).copied().unwrap_or_default()
    }
}

/// Magnification of the close view.
const MAGNIFICATION: f64 = 4.0;
/// Smallest and largest radius.
const RADII: (f64, f64) = (0.012, 0.2);

/// The picture with its marks.
#[component]
pub fn MarkBoard(address: String, width: usize, height: usize, of: PhotoOf, placed: RwSignal<Placed>) -> impl IntoView {
    let now = RwSignal::new(0_usize);
    let board = NodeRef::<html::Div>::new();
    // Index of the mark being dragged.
    let held = PointerDrag::<usize>::new();
    let share = move |event: &PointerEvent| board.get_untracked().map(|board| drag::fraction(&board, event));
    let down = move |event: PointerEvent| {
        event.prevent_default();
        let (Some(board), Some(at)) = (board.get_untracked(), share(&event)) else { return };
        // A mark within reach of the finger is dragged; otherwise the active mark moves here.
        let ratio = height as f64 / width.max(1) as f64;
        let near = |which: &usize| {
            placed.with_untracked(|placed| {
                let [x, y] = placed.of(*which);
                placed.set.get(*which) == Some(&true) && (x - at[0]).hypot((y - at[1]) * ratio) < 0.06
            })
        };
        let which = (0..MARKS.len()).find(near).unwrap_or_else(|| now.get_untracked());
        if !held.start(&board, &event, which) {
            return;
        }
        now.set(which);
        placed.update(|placed| placed.put(which, at));
    };
    let moves = move |event: PointerEvent| {
        if let (Some(which), Some(at)) = (held.by(&event), share(&event)) {
            placed.update(|placed| placed.put(which, at));
        }
    };
    let up = move |event: PointerEvent| {
        if held.end(&event).is_some() {
            // Go on to the next mark that is not set yet.
            let next = placed.with_untracked(|placed| placed.set.iter().position(|set| !set));
            if let Some(next) = next {
                now.set(next);
            }
        }
    };
    let key = move |event: KeyboardEvent| {
        let far = if event.shift_key() { 0.05 } else { 0.005 };
        let [x, y] = match drag::arrow(&event) {
            Some(arrow) => arrow.map(|step| f64::from(step) * far),
            None if matches!(event.key().as_str(), "Enter" | " ") => [0.0, 0.0],
            None => return,
        };
        event.prevent_default();
        let which = now.get_untracked();
        placed.update(|placed| {
            let at = placed.of(which);
            placed.put(which, [at[0] + x, at[1] + y]);
        });
    };
    let label = move || {
        let which = now.get();
        let [x, y] = placed.with(|placed| placed.of(which)).map(|share| i18n::number(share * 100.0, 0));
        i18n::colour_mark_at(of.mark(MARKS.get(which).copied().unwrap_or(PatchRole::Target)).0, x, y)
    };
    let size =
        move |factor: f64| placed.update(|placed| placed.radius = (placed.radius * factor).clamp(RADII.0, RADII.1));
    let options: Vec<(usize, String)> =
        MARKS.iter().enumerate().map(|(place, which)| (place, of.mark(*which).0.to_owned())).collect();
    // The close view shows a quarter of the picture's width, centred on the mark.
    let middle = move |axis: usize| {
        let share = placed.with(|placed| placed.of(now.get()).get(axis).copied().unwrap_or_default());
        format!("{:.2}%", (share * MAGNIFICATION - 0.5) / (MAGNIFICATION - 1.0) * 100.0)
    };
    let behind = format!("url({address})");
    // The close view has the picture's aspect ratio, so that fractions of both are the same.
    let shape = format!("{width} / {height}");
    let ring = move |factor: f64| {
        placed.with(|placed| {
            let shorter = if width < height { 1.0 } else { height as f64 / width.max(1) as f64 };
            format!("{:.3}%", placed.radius * 2.0 * shorter * factor * 100.0)
        })
    };
    let marks = MARKS.iter().enumerate().map(|(which, kind)| {
        let at = move |axis: usize| placed.with(|placed| format!("{:.3}%", placed.of(which)[axis.min(1)] * 100.0));
        let letter = of.mark(*kind).2;
        view! {
            <span
                class="colour-mark"
                class:now=move || now.get() == which
                class:put=move || placed.with(|placed| placed.set.get(which) == Some(&true))
                style:left=move || at(0)
                style:top=move || at(1)
                style:width=move || ring(1.0)
            ><b>{letter}</b></span>
        }
    });
    let marks = marks.collect_view();
    let is_held = Memo::new(move |_| held.get().is_some());
    view! {
        <Choice label=i18n::colour_photo_which() name="mark" options value=Signal::from(now) on_pick=Callback::new(move |which| now.set(which))/>
        <div
            class="colour-board"
            id="board"
            role="application"
            tabindex="0"
            aria-label=label
            style:aspect-ratio=shape.clone()
            node_ref=board
            on:pointerdown=down
            on:pointermove=moves
            on:pointerup=up
            on:pointercancel=up
            on:keydown=key
        >
            <img src=address alt="" draggable="false"/>
            {marks}
        </div>
        <div class="colour-board-foot">
            <div class="colour-close" class:held=is_held aria-hidden="true" style:aspect-ratio=shape style:background-image=behind style:background-size=format!("{:.0}% auto", MAGNIFICATION * 100.0) style:background-position-x=move || middle(0) style:background-position-y=move || middle(1)>
                <span class="colour-ring" style:width=move || ring(MAGNIFICATION)></span>
            </div>
            <div class="colour-sizes">
                <p role="status" class="quiet-line">{label}</p>
                <div class="button-row">
                    <button type="button" class="icon-button" aria-label=i18n::colour_smaller() on:click=move |_| size(1.0 / 1.25)><Icon name="minus"/></button>
                    <button type="button" class="icon-button" aria-label=i18n::colour_larger() on:click=move |_| size(1.25)><Icon name="plus"/></button>
                </div>
            </div>
        </div>
    }
}
