//! Small operations on the page: title, focus, scrolling.

use super::clock;
use std::time::Duration;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// Sets an attribute of the root element, for the style sheet and screen readers.
pub fn set_root(attribute: &str, value: &str) {
    if let Some(root) = leptos::prelude::document().document_element() {
        let _ = root.set_attribute(attribute, value);
    }
}

/// Sets the window title.
pub fn set_title(title: &str) {
    leptos::prelude::document().set_title(title);
}

/// Whether the browser's preferred language starts with `prefix`.
pub fn asks_for_language(prefix: &str) -> bool {
    leptos::prelude::window().navigator().language().is_some_and(|language| language.starts_with(prefix))
}

/// Moves the keyboard focus to an element, so that screen readers announce it.
pub fn focus(id: &str) {
    if let Some(element) =
        leptos::prelude::document().get_element_by_id(id).and_then(|e| e.dyn_into::<HtmlElement>().ok())
    {
        let _ = element.focus();
    }
}

/// Moves the keyboard focus to the first field that has a problem, in the open dialog if there is one; without such a
/// field, to the first problem itself. How far the page scrolls is up to the style sheet: above the fixed button.
pub fn focus_problem() {
    let document = leptos::prelude::document();
    let find = |selector: &str| document.query_selector(selector).ok().flatten();
    let Some(scope) = find("dialog[open]").or_else(|| find("main")) else { return };
    let first = |selector: &str| scope.query_selector(selector).ok().flatten();
    let found = first("[aria-invalid=true], .wrong input").or_else(|| {
        // One with an icon was there before. The save bar only counts them.
        let problem = first(".problem:not(:empty, :has(.icon), .save-bar *)")?;
        let _ = problem.set_attribute("tabindex", "-1");
        Some(problem)
    });
    if let Some(element) = found.and_then(|found| found.dyn_into::<HtmlElement>().ok()) {
        // One in a closed fold cannot have the focus.
        let mut fold = element.closest("details:not([open])").ok().flatten();
        while let Some(closed) = fold {
            let _ = closed.set_attribute("open", "");
            fold = closed.closest("details:not([open])").ok().flatten();
        }
        let _ = element.focus();
    }
}

/// Moves the keyboard focus to the heading of the open dialog or of the page, without scrolling, if the element that had it
/// goes now: a button that was pressed and is removed.
pub fn keep_focus() {
    clock::after(Duration::ZERO, || {
        let document = leptos::prelude::document();
        let lost = document.active_element().is_none_or(|active| active.tag_name() == "BODY");
        let find = |selector: &str| document.query_selector(selector).ok().flatten();
        let heading = find("dialog[open] h2").or_else(|| find("#heading"));
        if let Some(heading) = heading.filter(|_| lost).and_then(|found| found.dyn_into::<HtmlElement>().ok()) {
            let _ = heading.set_attribute("tabindex", "-1");
            focus_in_place(&heading);
        }
    });
}

/// Whether the keyboard focus is in an element.
pub fn has_focus(element: &HtmlElement) -> bool {
    element.contains(leptos::prelude::document().active_element().as_deref())
}

/// Moves the keyboard focus to an element, which stays where it is in the viewport.
pub fn focus_in_place(element: &HtmlElement) {
    let scrolled = page_scrolled();
    let _ = element.focus();
    scroll_page_to(scrolled);
}

/// Takes the keyboard focus off the element that has it.
pub fn blur() {
    let active = leptos::prelude::document().active_element();
    if let Some(element) = active.and_then(|active| active.dyn_into::<HtmlElement>().ok()) {
        let _ = element.blur();
    }
}

/// Scrolls an element into view.
pub fn scroll_to(id: &str) {
    if let Some(element) = leptos::prelude::document().get_element_by_id(id) {
        element.scroll_into_view();
    }
}

/// Scrolls the page so far, in CSS pixels from its top.
pub fn scroll_page_to(top: f64) {
    leptos::prelude::window().scroll_to_with_x_and_y(0.0, top);
}

/// How far the page is scrolled, in CSS pixels from its top.
pub fn page_scrolled() -> f64 {
    leptos::prelude::window().scroll_y().unwrap_or(0.0)
}

/// Whether the event's target handles typing or key presses itself.
pub fn is_typing(event: &web_sys::KeyboardEvent) -> bool {
    let on = |selector: &str| {
        event
            .target()
            .and_then(|target| target.dyn_into::<web_sys::Element>().ok())
            .is_some_and(|element| element.closest(selector).ok().flatten().is_some())
    };
    on("input, textarea, select, dialog")
}

/// The checked state of the input an event came from.
pub fn checked(event: &web_sys::Event) -> bool {
    event.target().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok()).is_some_and(|input| input.checked())
}

/// Whether the keyboard focus is visibly on a button or link, which then handles the key itself. A
/// button that was only touched does not count: its focus is left over from the touch.
pub fn is_on_button(event: &web_sys::KeyboardEvent) -> bool {
    event
        .target()
        .and_then(|target| target.dyn_into::<web_sys::Element>().ok())
        .is_some_and(|element| element.matches("button:focus-visible, a:focus-visible").unwrap_or(false))
}

/// Removes the focus from a button that was clicked by finger or mouse: the next key of a
/// clicker or pedal is meant for the page, not for that button.
pub fn blur_after_touch(event: &web_sys::MouseEvent) {
    if event.detail() > 0 {
        let active = leptos::prelude::document().active_element();
        if let Some(button) = active
            .and_then(|active| active.dyn_into::<HtmlElement>().ok())
            .filter(|active| active.tag_name() == "BUTTON")
        {
            let _ = button.blur();
        }
    }
}

/// Whether a modal dialog is open.
pub fn is_sheet_up() -> bool {
    leptos::prelude::document().query_selector("dialog[open]").ok().flatten().is_some()
}
