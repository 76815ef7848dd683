//! Small reads of the page itself.

use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// The window's `location.hash`, with its `#`.
pub fn hash() -> String {
    leptos::prelude::window().location().hash().unwrap_or_default()
}

/// Goes to a place by its hash; the browser's back button comes back.
pub fn set_hash(hash: &str) {
    let _ = leptos::prelude::window().location().set_hash(hash);
}

/// Goes back one place.
pub fn go_back() {
    if let Ok(history) = leptos::prelude::window().history() {
        let _ = history.back();
    }
}

/// Loads the page again.
pub fn reload() {
    let _ = leptos::prelude::window().location().reload();
}

/// Sets an attribute of the whole page, for the style sheet and screen readers.
pub fn set_root(attribute: &str, value: &str) {
    if let Some(root) = leptos::prelude::document().document_element() {
        let _ = root.set_attribute(attribute, value);
    }
}

/// The name in the title bar.
pub fn set_title(title: &str) {
    leptos::prelude::document().set_title(title);
}

/// Whether the language the browser asks for begins like this.
pub fn asks_for_language(prefix: &str) -> bool {
    leptos::prelude::window().navigator().language().is_some_and(|language| language.starts_with(prefix))
}

/// Moves the keyboard's place to an element, for readers to announce it.
pub fn focus(id: &str) {
    if let Some(element) =
        leptos::prelude::document().get_element_by_id(id).and_then(|e| e.dyn_into::<HtmlElement>().ok())
    {
        let _ = element.focus();
    }
}

/// Brings an element into view.
pub fn scroll_to(id: &str) {
    if let Some(element) = leptos::prelude::document().get_element_by_id(id) {
        element.scroll_into_view();
    }
}

/// Scrolls the page to its top.
pub fn scroll_to_top() {
    leptos::prelude::window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// Whether the keyboard's place is on something that takes typing or pressing by itself.
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

/// Whether the keyboard's place is visibly on a button or link, which then takes the key itself. A
/// button that was only touched does not: its focus is a leftover.
pub fn is_on_button(event: &web_sys::KeyboardEvent) -> bool {
    event
        .target()
        .and_then(|target| target.dyn_into::<web_sys::Element>().ok())
        .is_some_and(|element| element.matches("button:focus-visible, a:focus-visible").unwrap_or(false))
}

/// Lets go of the keyboard's place when the click came from a finger or mouse: the next key of a
/// clicker or pedal is meant for the page, not for the button touched last.
pub fn let_go_after_touch(event: &web_sys::MouseEvent) {
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

/// Gives the place on screen another hash, which is drawn here already: nothing is told of a change, and back does not
/// lead to the old one.
pub fn rename_place(hash: &str) {
    if let Ok(history) = leptos::prelude::window().history() {
        let _ = history.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some(hash));
    }
}

/// Whether a sheet is up over the screen.
pub fn is_sheet_up() -> bool {
    leptos::prelude::document().query_selector("dialog[open]").ok().flatten().is_some()
}
