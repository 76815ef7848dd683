//! Draws text and rectangles on a canvas and exports them as a picture. If the browser has no canvas, there is
//! no picture, and the page shows its content as text only.

use super::files::Outgoing;
use js_sys::Promise;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement};

/// A canvas with a white ground.
#[derive(Clone)]
pub struct Canvas {
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
}

/// The CSS font: one that every device has.
fn font(size: f64, bold: bool) -> String {
    format!("{} {size:.1}px system-ui, \"Segoe UI\", Roboto, \"Noto Sans\", sans-serif", if bold { 750 } else { 450 })
}

impl Canvas {
    /// A white canvas of this width and height in pixels; `None` if the browser has none.
    pub fn new([width, height]: [f64; 2]) -> Option<Self> {
        let canvas: HtmlCanvasElement = leptos::prelude::document().create_element("canvas").ok()?.dyn_into().ok()?;
        canvas.set_width(width as u32);
        canvas.set_height(height as u32);
        let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        let paper = Self { canvas, context };
        paper.fill([0.0, 0.0, width, height], "#ffffff");
        Some(paper)
    }

    /// The width of a text in pixels.
    pub fn width_of(&self, text: &str, size: f64, bold: bool) -> f64 {
        self.context.set_font(&font(size, bold));
        // A text that cannot be measured is assumed to be wide, so that it is not cut off.
        self.context.measure_text(text).map_or_else(|_| text.chars().count() as f64 * size, |measured| measured.width())
    }

    /// Fills a rectangle: left, top, width, height in pixels.
    pub fn fill(&self, [left, top, width, height]: [f64; 4], colour: &str) {
        self.context.set_fill_style_str(colour);
        self.context.fill_rect(left, top, width, height);
    }

    /// Writes a text in black.
    pub fn write(&self, text: &str, [x, y]: [f64; 2], size: f64, bold: bool) {
        self.context.set_font(&font(size, bold));
        self.context.set_fill_style_str("#000000");
        // A text that the browser refuses to draw is left out; the page shows it as text too.
        let _ = self.context.fill_text(text, x, y);
    }

    /// A data URL of the picture.
    pub fn address(&self) -> Option<String> {
        self.canvas.to_data_url().ok()
    }

    /// The picture as a file, ready to be exported.
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

/// Opens the browser's print dialog.
pub fn print() {
    let _ = leptos::prelude::window().print();
}
