//! Large keys for entering a weight with one hand. Keyboard input works too.

use super::icon::Icon;
use crate::i18n;
use crate::platform::dom;
use leptos::prelude::*;
use web_sys::KeyboardEvent;

/// Greatest number of characters that can be typed.
const LONGEST: usize = 9;

/// Three columns of digits, and a fourth with `aside` above the enter key.
#[component]
pub fn Keypad(
    /// The number as typed, with a decimal point.
    text: RwSignal<String>,
    /// Accessible label.
    #[prop(into)]
    label: String,
    /// Text of the enter key.
    #[prop(into)]
    enter: String,
    /// Called when enter is pressed.
    on_enter: Callback<()>,
    /// Keys above the enter key.
    #[prop(optional, into)]
    aside: ViewFn,
) -> impl IntoView {
    let mark = i18n::decimal_mark();
    let typed = window_event_listener(leptos::ev::keydown, move |event: KeyboardEvent| {
        if dom::is_sheet_up() || dom::is_typing(&event) || event.ctrl_key() || event.meta_key() || event.alt_key() {
            return;
        }
        let key = event.key();
        match key.as_str() {
            "Enter" if dom::is_on_button(&event) => return,
            "Enter" => on_enter.run(()),
            "Backspace" => take_off(text),
            "Escape" | "Delete" => text.set(String::new()),
            // The key of a number block means the mark, whatever it is labelled.
            "." | "," if event.code() == "NumpadDecimal" => put_on(text, "."),
            "." | "," => put_on(text, &i18n::with_mark(key.clone())),
            digit if digit.len() == 1 && digit.bytes().all(|byte| byte.is_ascii_digit()) => put_on(text, digit),
            _ => return,
        }
        event.prevent_default();
    });
    on_cleanup(move || typed.remove());
    let digit = move |digit: &'static str| {
        view! {
            <button type="button" class="pot-key" data-key=digit on:click=move |_| put_on(text, digit)>{digit}</button>
        }
    };
    view! {
        <div class="pot-keypad" role="group" aria-label=label on:click=move |event| dom::blur_after_touch(&event)>
            <div class="pot-keys">
                {["1", "2", "3", "4", "5", "6", "7", "8", "9"].map(digit).into_iter().collect::<Vec<_>>()}
                <button type="button" class="pot-key" data-key="mark" aria-label=i18n::pot_key_mark() on:click=move |_| put_on(text, ".")>{mark}</button>
                {digit("0")}
                <button type="button" class="pot-key" data-key="back" aria-label=i18n::pot_key_back() on:click=move |_| take_off(text)><Icon name="erase"/></button>
            </div>
            <div class="pot-key-side">
                {aside.run()}
                <button type="button" class="pot-key primary" data-key="enter" on:click=move |_| on_enter.run(())>{enter}</button>
            </div>
        </div>
    }
}

fn put_on(text: RwSignal<String>, key: &str) {
    text.update(|text| {
        let is_digit = key.bytes().all(|byte| byte.is_ascii_digit());
        // A comma may separate thousands before it.
        if text.len() < LONGEST && (is_digit || !text.contains('.') && !text.ends_with(',')) {
            if text.is_empty() && !is_digit {
                text.push('0');
            }
            text.push_str(key);
        }
    });
}

fn take_off(text: RwSignal<String>) {
    text.update(|text| {
        text.pop();
    });
}
