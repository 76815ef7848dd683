//! Dragging on an element, by pointer or arrow keys.

use web_sys::{Element, KeyboardEvent, PointerEvent};

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
