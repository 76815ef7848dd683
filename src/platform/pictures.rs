//! Pictures from the camera or the device's files, made small enough to keep: decoded and turned
//! upright by the browser, drawn at the size to keep, encoded as JPEG, and stripped of all metadata
//! by the core. All but the last is done in a worker (`pictures.js`), so that the page stays
//! responsive; if that fails, by the page, with an image element for decoding if needed. A file that
//! neither can read is refused with a message.

use super::worker::{WorkerClient, bytes, get};
use js_sys::{Array, Function, Object, Promise, Reflect, Uint8Array};
use lastpull_core::photo::{JpegPhoto, MAX_MADE_BYTES, MAX_MADE_SIDE};
use std::cell::OnceCell;
use std::time::Duration;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, BlobPropertyBag, CanvasRenderingContext2d, Element, File, HtmlCanvasElement, HtmlImageElement,
    HtmlInputElement, ImageBitmap, IntersectionObserver, IntersectionObserverEntry, IntersectionObserverInit, Url,
};

/// The largest file that is read, in bytes: more than any phone's camera makes, and a limit on the memory used.
pub const LARGEST_PICKED: u64 = 64 * 1024 * 1024;
/// The longest side of a thumbnail, in pixels.
const SMALL_SIDE: u32 = 240;
/// JPEG quality of a thumbnail.
const SMALL_QUALITY: f64 = 0.7;
/// Tried in turn until the file is small enough: longest side in pixels, and JPEG quality. Our own; the
/// first is enough for most pictures, the last for pure noise.
const TRIES: [(u32, f64); 6] = [
    (MAX_MADE_SIDE as u32, 0.82),
    (MAX_MADE_SIDE as u32, 0.7),
    (MAX_MADE_SIDE as u32, 0.55),
    (1280, 0.55),
    (960, 0.5),
    (640, 0.4),
];

/// Time after which the worker is given up on and the page does the work itself.
const ANSWER_TIMEOUT: Duration = Duration::from_secs(20);

/// Why a picture could not be made from a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PictureProblem {
    /// Larger than [`LARGEST_PICKED`].
    TooLarge,
    /// The browser cannot decode it.
    NoPicture,
    /// The browser could not encode it as JPEG.
    NotMade,
}

/// A photo ready to be stored.
#[derive(Clone, Debug)]
pub struct Picture {
    /// The photo.
    pub photo: JpegPhoto,
    /// Its thumbnail, as JPEG.
    pub small: Vec<u8>,
}

/// The files just picked in an input; clears the input, so that the same files can be picked again.
pub fn picked(input: &HtmlInputElement) -> Vec<File> {
    let files = input.files().map(|files| (0..files.length()).filter_map(|at| files.get(at)).collect());
    input.set_value("");
    files.unwrap_or_default()
}

/// Makes a photo from a file.
///
/// # Errors
/// [`PictureProblem`] if the file is too large or cannot be decoded or encoded.
pub async fn picture_of(file: &Blob) -> Result<Picture, PictureProblem> {
    if file.size() > LARGEST_PICKED as f64 {
        return Err(PictureProblem::TooLarge);
    }
    if let Some(picture) = made_in_worker(file).await {
        return Ok(picture);
    }
    let decoded = Decoded::of(file).await.ok_or(PictureProblem::NoPicture)?;
    made_of(decoded).await.ok_or(PictureProblem::NotMade)
}

thread_local! {
    static MAKER: OnceCell<Option<WorkerClient>> = const { OnceCell::new() };
}

/// The same in the worker; `None` if that fails and the page must do it.
async fn made_in_worker(file: &Blob) -> Option<Picture> {
    let maker = MAKER.with(|maker| maker.get_or_init(|| WorkerClient::start("pictures.js", ANSWER_TIMEOUT)).clone())?;
    let pair = |(side, quality): (u32, f64)| JsValue::from(Array::of2(&side.into(), &quality.into()));
    let answer = maker
        .ask(&[
            file.into(),
            TRIES.into_iter().map(pair).collect::<Array>().into(),
            (MAX_MADE_BYTES as f64).into(),
            pair((SMALL_SIDE, SMALL_QUALITY)),
        ])
        .await;
    let made = |name: &str| JpegPhoto::cleaned(bytes(&get(&answer, name))?);
    Some(Picture { photo: made("photo")?, small: made("little")?.into_bytes() })
}

async fn made_of(mut decoded: Decoded) -> Option<Picture> {
    let mut drawn_at = 0;
    for (side, quality) in TRIES {
        if side != drawn_at {
            // From here on the drawn picture replaces the decoded one: a tenth of its size in memory.
            decoded = Decoded::Drawn(decoded.drawn(side)?);
            drawn_at = side;
        }
        let Decoded::Drawn(canvas) = &decoded else { return None };
        let photo = JpegPhoto::cleaned(encoded(canvas, quality).await?)?;
        if photo.bytes().len() <= MAX_MADE_BYTES {
            return Some(Picture { photo, small: decoded.small().await? });
        }
    }
    None
}

/// The pixels of a picture, for reading colours.
#[derive(Clone, Debug, PartialEq)]
pub struct Pixels {
    /// Width in pixels.
    pub width: usize,
    /// Height in pixels.
    pub height: usize,
    /// Red, green, blue and alpha of each pixel, row by row.
    pub rgba: Vec<u8>,
    /// Object URL of the picture, until [`revoke_url`] revokes it.
    pub address: String,
}

/// The longest side of a picture that colours are read from, in pixels: patches of some hundred pixels are
/// enough to average.
const READ_SIDE: u32 = 1200;

/// The pixels of a file, scaled down if it is large.
///
/// # Errors
/// [`PictureProblem`] if the file is too large or cannot be decoded.
pub async fn pixels_of(file: &Blob) -> Result<Pixels, PictureProblem> {
    if file.size() > LARGEST_PICKED as f64 {
        return Err(PictureProblem::TooLarge);
    }
    let decoded = Decoded::of(file).await.ok_or(PictureProblem::NoPicture)?;
    let canvas = decoded.drawn(READ_SIDE).ok_or(PictureProblem::NotMade)?;
    let read = || -> Option<Vec<u8>> {
        let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        let (width, height) = (f64::from(canvas.width()), f64::from(canvas.height()));
        Some(context.get_image_data(0.0, 0.0, width, height).ok()?.data().0)
    };
    let rgba = read().ok_or(PictureProblem::NotMade)?;
    let shown = encoded(&canvas, 0.9).await.ok_or(PictureProblem::NotMade)?;
    let address = address_of(&shown).ok_or(PictureProblem::NotMade)?;
    Ok(Pixels { width: canvas.width() as usize, height: canvas.height() as usize, rgba, address })
}

/// A thumbnail for a photo that has none.
pub async fn thumbnail_of(photo: &[u8]) -> Option<Vec<u8>> {
    Decoded::of(&blob(photo)?).await?.small().await
}

/// An object URL of these bytes, until [`revoke_url`] revokes it.
pub fn address_of(bytes: &[u8]) -> Option<String> {
    Url::create_object_url_with_blob(&blob(bytes)?).ok()
}

/// Revokes an object URL.
pub fn revoke_url(address: &str) {
    let _ = Url::revoke_object_url(address);
}

fn blob(bytes: &[u8]) -> Option<Blob> {
    let options = BlobPropertyBag::new();
    options.set_type("image/jpeg");
    Blob::new_with_u8_array_sequence_and_options(&Array::of1(&Uint8Array::from(bytes)), &options).ok()
}

/// A decoded picture, upright.
enum Decoded {
    Bitmap(ImageBitmap),
    Element(HtmlImageElement, String),
    /// Already drawn on a canvas.
    Drawn(HtmlCanvasElement),
}

impl Decoded {
    async fn of(file: &Blob) -> Option<Self> {
        match bitmap(file).await {
            Some(bitmap) => Some(Self::Bitmap(bitmap)),
            None => element(file).await,
        }
    }

    fn size(&self) -> (u32, u32) {
        match self {
            Self::Bitmap(bitmap) => (bitmap.width(), bitmap.height()),
            Self::Element(image, _) => (image.natural_width(), image.natural_height()),
            Self::Drawn(canvas) => (canvas.width(), canvas.height()),
        }
    }

    async fn small(&self) -> Option<Vec<u8>> {
        let small = encoded(&self.drawn(SMALL_SIDE)?, SMALL_QUALITY).await?;
        JpegPhoto::cleaned(small).map(JpegPhoto::into_bytes)
    }

    /// The picture with a longest side of at most `longest` pixels; it is never enlarged.
    fn drawn(&self, longest: u32) -> Option<HtmlCanvasElement> {
        let (width, height) = self.size();
        let most = width.max(height);
        if most == 0 {
            return None;
        }
        let scaled = |side: u32| {
            let side = f64::from(side) * f64::from(longest.min(most)) / f64::from(most);
            (side.round() as u32).max(1)
        };
        let canvas: HtmlCanvasElement = leptos::prelude::document().create_element("canvas").ok()?.dyn_into().ok()?;
        canvas.set_width(scaled(width));
        canvas.set_height(scaled(height));
        let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        let (width, height) = (f64::from(canvas.width()), f64::from(canvas.height()));
        // JPEG has no alpha channel: transparent areas become white.
        context.set_fill_style_str("#fff");
        context.fill_rect(0.0, 0.0, width, height);
        // "high" takes half as long again on a phone, "low" gives moiré on halftones. The binding is
        // unstable.
        let _ = Reflect::set(&context, &"imageSmoothingQuality".into(), &"medium".into());
        match self {
            Self::Bitmap(bitmap) => {
                context.draw_image_with_image_bitmap_and_dw_and_dh(bitmap, 0.0, 0.0, width, height).ok()?;
            }
            Self::Element(image, _) => {
                context.draw_image_with_html_image_element_and_dw_and_dh(image, 0.0, 0.0, width, height).ok()?;
            }
            Self::Drawn(drawn) => {
                context.draw_image_with_html_canvas_element_and_dw_and_dh(drawn, 0.0, 0.0, width, height).ok()?;
            }
        }
        Some(canvas)
    }
}

impl Drop for Decoded {
    fn drop(&mut self) {
        match self {
            // Frees tens of megabytes without waiting for garbage collection.
            Self::Bitmap(bitmap) => bitmap.close(),
            Self::Element(_, address) => revoke_url(address),
            Self::Drawn(_) => {}
        }
    }
}

/// Decodes off the main thread. Through reflection, since not every browser has it.
async fn bitmap(file: &Blob) -> Option<ImageBitmap> {
    let window = leptos::prelude::window();
    let decode: Function = Reflect::get(&window, &"createImageBitmap".into()).ok()?.dyn_into().ok()?;
    let options = Object::new();
    Reflect::set(&options, &"imageOrientation".into(), &"from-image".into()).ok()?;
    let decoding: Promise = decode.call2(&window, file, &options).ok()?.dyn_into().ok()?;
    JsFuture::from(decoding).await.ok()?.dyn_into().ok()
}

async fn element(file: &Blob) -> Option<Decoded> {
    let address = Url::create_object_url_with_blob(file).ok()?;
    let image = HtmlImageElement::new();
    // From here on the object URL is revoked in every case.
    let decoded = Decoded::Element(image.ok()?, address.clone());
    let Decoded::Element(image, _) = &decoded else { return None };
    image.set_src(&address);
    JsFuture::from(image.decode()).await.ok()?;
    Some(decoded)
}

/// The canvas as JPEG; `None` if the browser cannot encode it.
async fn encoded(canvas: &HtmlCanvasElement, quality: f64) -> Option<Vec<u8>> {
    let given = Promise::new(&mut |give, refuse| {
        let give = Closure::once_into_js(move |blob: JsValue| {
            let _ = give.call1(&JsValue::UNDEFINED, &blob);
        });
        let quality = JsValue::from_f64(quality);
        if canvas.to_blob_with_type_and_encoder_options(give.unchecked_ref(), "image/jpeg", &quality).is_err() {
            let _ = refuse.call0(&JsValue::UNDEFINED);
        }
    });
    let blob: Blob = JsFuture::from(given).await.ok()?.dyn_into().ok()?;
    let buffer = JsFuture::from(blob.array_buffer()).await.ok()?;
    Some(Uint8Array::new(&buffer).to_vec())
}

/// Calls `seen` once, when the element comes near the viewport. Every browser that runs this app
/// has `IntersectionObserver`; should it fail, `seen` is called at once.
pub fn when_near(element: &Element, seen: impl Fn() + 'static) {
    let seen = std::rc::Rc::new(seen);
    let near = {
        let seen = std::rc::Rc::clone(&seen);
        Closure::<dyn Fn(Array, IntersectionObserver)>::new(move |entries: Array, observer: IntersectionObserver| {
            if entries.iter().any(|entry| entry.unchecked_into::<IntersectionObserverEntry>().is_intersecting()) {
                observer.disconnect();
                seen();
            }
        })
    };
    // The observer holds the closure, and both are collected with the element.
    let near = near.into_js_value();
    let options = IntersectionObserverInit::new();
    options.set_root_margin("300px");
    match IntersectionObserver::new_with_options(near.unchecked_ref(), &options) {
        Ok(observer) => observer.observe(element),
        Err(_) => seen(),
    }
}
