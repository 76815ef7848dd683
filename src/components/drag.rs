//! Dragging on an element, by pointer or arrow keys.

use leptos::prelude::*;
use web_sys::{Element, KeyboardEvent, PointerEvent};

/// Something that one pointer drags at a time: from the press on an element until the pointer is released or the browser
/// takes it away. `T` is what is dragged. Other pointers are ignored meanwhile.
pub struct PointerDrag<T: Send + Sync + 'static> {
    dragged: RwSignal<Option<(i32, T)>>,
}

impl<T: Send + Sync + 'static> Clone for PointerDrag<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: Send + Sync + 'static> Copy for PointerDrag<T> {}

impl<T: Copy + Send + Sync + 'static> PointerDrag<T> {
    /// Nothing is dragged yet.
    pub fn new() -> Self {
        Self { dragged: RwSignal::new(None) }
    }

    /// What is dragged. Tracked.
    pub fn get(self) -> Option<T> {
        self.dragged.with(|dragged| dragged.map(|(_, what)| what))
    }

    /// What this pointer drags.
    pub fn by(self, event: &PointerEvent) -> Option<T> {
        self.dragged.get_untracked().filter(|(pointer, _)| *pointer == event.pointer_id()).map(|(_, what)| what)
    }

    /// Begins to drag; false while another pointer does. The element gets the pointer's events wherever it moves.
    pub fn start(self, element: &Element, event: &PointerEvent, what: T) -> bool {
        let is_free = self.dragged.with_untracked(Option::is_none);
        if is_free {
            capture(element, event);
            self.dragged.set(Some((event.pointer_id(), what)));
        }
        is_free
    }

    /// The dragged thing was moved by this pointer.
    pub fn moved(self, event: &PointerEvent, what: T) {
        if self.by(event).is_some() {
            self.dragged.set(Some((event.pointer_id(), what)));
        }
    }

    /// Ends the drag of this pointer, and returns what it dragged.
    pub fn end(self, event: &PointerEvent) -> Option<T> {
        let dragged = self.by(event)?;
        self.dragged.set(None);
        Some(dragged)
    }
}

/// Sends the pointer's further events to the element until the pointer is released, wherever it moves.
pub fn capture(element: &Element, event: &PointerEvent) {
    // Fails only if the pointer is gone already.
    let _ = element.set_pointer_capture(event.pointer_id());
}

/// Position of a pointer on an element, as fractions of the element's width and height. Below 0 or above 1 outside it.
pub fn fraction(element: &Element, event: &PointerEvent) -> [f64; 2] {
    let rect = element.get_bounding_client_rect();
    let of = |from: f64, length: f64, at: i32| (f64::from(at) - from) / length.max(1.0);
    [of(rect.left(), rect.width(), event.client_x()), of(rect.top(), rect.height(), event.client_y())]
}

/// Position of a pointer relative to the middle of an element, in CSS pixels.
pub fn from_middle(element: &Element, event: &PointerEvent) -> (f64, f64) {
    let rect = element.get_bounding_client_rect();
    let x = f64::from(event.client_x()) - rect.left() - rect.width() / 2.0;
    (x, f64::from(event.client_y()) - rect.top() - rect.height() / 2.0)
}

/// Direction of an arrow key, x to the right and y down; `None` for any other key.
pub fn arrow(event: &KeyboardEvent) -> Option<[i8; 2]> {
    Some(match event.key().as_str() {
        "ArrowLeft" => [-1, 0],
        "ArrowRight" => [1, 0],
        "ArrowUp" => [0, -1],
        "ArrowDown" => [0, 1],
        _ => return None,
    })
}
