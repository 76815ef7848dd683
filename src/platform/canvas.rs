//! A drawing of words: measured, put where they belong, given out as a picture. Where the browser has no canvas
//! there is no drawing, and what it would have shown is said in words only.

use super::files::Outgoing;
use js_sys::Promise;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement};

/// A sheet of white paper.
#[derive(Clone)]
pub struct Canvas {
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
}

/// The letters every device has.
fn font(size: f64, bold: bool) -> String {
    format!("{} {size:.1}px system-ui, \"Segoe UI\", Roboto, \"Noto Sans\", sans-serif", if bold { 750 } else { 450 })
}

impl Canvas {
    /// A white sheet of this size.
    pub fn new([width, height]: [f64; 2]) -> Option<Self> {
        let canvas: HtmlCanvasElement = leptos::prelude::document().create_element("canvas").ok()?.dyn_into().ok()?;
        canvas.set_width(width as u32);
        canvas.set_height(height as u32);
        let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        let paper = Self { canvas, context };
        paper.fill([0.0, 0.0, width, height], "#ffffff");
        Some(paper)
    }

    /// How wide words are.
    pub fn width_of(&self, text: &str, size: f64, bold: bool) -> f64 {
        self.context.set_font(&font(size, bold));
        // One that cannot be measured is held to be wide, so that it is not cut off.
        self.context.measure_text(text).map_or_else(|_| text.chars().count() as f64 * size, |measured| measured.width())
    }

    /// Fills a rectangle: left, top, width, height.
    pub fn fill(&self, [left, top, width, height]: [f64; 4], colour: &str) {
        self.context.set_fill_style_str(colour);
        self.context.fill_rect(left, top, width, height);
    }

    /// Writes words in black.
    pub fn write(&self, text: &str, [x, y]: [f64; 2], size: f64, bold: bool) {
        self.context.set_font(&font(size, bold));
        self.context.set_fill_style_str("#000000");
        // Words that the browser refuses to write are left out; they stand on the screen besides.
        let _ = self.context.fill_text(text, x, y);
    }

    /// An address at which the page can show it.
    pub fn address(&self) -> Option<String> {
        self.canvas.to_data_url().ok()
    }

    /// It as a file that is ready to leave.
    pub async fn file(self, name: &str) -> Option<Outgoing> {
        let given = Promise::new(&mut |give, refuse| {
            let give = Closure::once_into_js(move |blob: JsValue| {
                let _ = give.call1(&JsValue::UNDEFINED, &blob);
            });
            if self.canvas.to_blob(give.unchecked_ref()).is_err() {
                let _ = refuse.call0(&JsValue::UNDEFINED);
            }
        });
        let blob: Blob = JsFuture::from(given).await.ok()?.dyn_into().ok()?;
        Outgoing::of(name, &blob)
    }
}

/// Has the browser print the page as its style sheet says.
pub fn print() {
    let _ = leptos::prelude::window().print();
}
