//! Photos made from pictures by the browser: upright, small enough, without metadata.

use js_sys::{Array, Uint8Array};
use lastpull::platform::pictures::{PictureProblem, picture_of, thumbnail_of};
use lastpull_core::photo::{MAX_MADE_BYTES, jpeg_has_no_metadata};
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement};

/// A generated picture: red on its left half, blue on its right, with noise over it if `noise`.
async fn drawn(width: u32, height: u32, noise: bool, kind: &str) -> Blob {
    let document = web_sys::window().unwrap().document().unwrap();
    let canvas: HtmlCanvasElement = document.create_element("canvas").unwrap().unchecked_into();
    canvas.set_width(width);
    canvas.set_height(height);
    let context: CanvasRenderingContext2d = canvas.get_context("2d").unwrap().unwrap().unchecked_into();
    for (colour, from) in [("#f00", 0.0), ("#00f", f64::from(width) / 2.0)] {
        context.set_fill_style_str(colour);
        context.fill_rect(from, 0.0, f64::from(width), f64::from(height));
    }
    if noise {
        // The same picture in every run: a linear congruential generator.
        let mut seed: u32 = 1;
        for x in (0..width).step_by(3) {
            for y in (0..height).step_by(3) {
                seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                context.set_fill_style_str(&format!("#{:06x}", seed >> 8));
                context.fill_rect(f64::from(x), f64::from(y), 3.0, 3.0);
            }
        }
    }
    let given = js_sys::Promise::new(&mut |give, _| {
        let give = Closure::once_into_js(move |blob: JsValue| give.call1(&JsValue::UNDEFINED, &blob).unwrap());
        let quality = JsValue::from_f64(0.9);
        canvas.to_blob_with_type_and_encoder_options(give.unchecked_ref(), kind, &quality).unwrap();
    });
    JsFuture::from(given).await.unwrap().unchecked_into()
}

async fn bytes_of(blob: &Blob) -> Vec<u8> {
    Uint8Array::new(&JsFuture::from(blob.array_buffer()).await.unwrap()).to_vec()
}

fn blob_of(bytes: &[u8]) -> Blob {
    Blob::new_with_u8_array_sequence(&Array::of1(&Uint8Array::from(bytes))).unwrap()
}

/// A JPEG with an Exif segment that says to turn it a quarter to the right (orientation 6)
/// and names a place: TIFF 6.0, big-endian, one entry of tag 0x0112, as Exif 2.3 section 4.5 has it.
fn with_exif(jpeg: &[u8]) -> Vec<u8> {
    let tiff = [
        &b"Exif\0\0MM\0\x2a\0\0\0\x08\0\x01"[..],
        &[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0],
        &[0, 0, 0, 0],
        b"35.15 N 90.05 W",
    ]
    .concat();
    let length = (tiff.len() as u16 + 2).to_be_bytes();
    [&jpeg[..2], &[0xFF, 0xE1], &length, &tiff, &jpeg[2..]].concat()
}

fn holds(bytes: &[u8], words: &[u8]) -> bool {
    bytes.windows(words.len()).any(|part| part == words)
}

#[wasm_bindgen_test]
async fn a_large_picture_becomes_a_small_clean_photo() {
    let picture = picture_of(&drawn(4000, 3000, false, "image/jpeg").await).await.unwrap();
    assert_eq!((picture.photo.width(), picture.photo.height()), (1600, 1200));
    assert!(picture.photo.bytes().len() <= MAX_MADE_BYTES);
    assert!(jpeg_has_no_metadata(picture.photo.bytes()) && jpeg_has_no_metadata(&picture.small));
    assert!(picture.small.len() < 20_000);
}

#[wasm_bindgen_test]
async fn a_noisy_picture_is_made_small_enough_too() {
    let picture = picture_of(&drawn(2000, 1500, true, "image/jpeg").await).await.unwrap();
    assert!(picture.photo.bytes().len() <= MAX_MADE_BYTES, "{}", picture.photo.bytes().len());
}

#[wasm_bindgen_test]
async fn a_picture_is_rotated_upright_and_its_gps_position_is_removed() {
    let plain = bytes_of(&drawn(600, 200, false, "image/jpeg").await).await;
    let marked = with_exif(&plain);
    assert!(holds(&marked, b"35.15 N"));
    let picture = picture_of(&blob_of(&marked)).await.unwrap();
    assert_eq!((picture.photo.width(), picture.photo.height()), (200, 600));
    for words in [&b"Exif"[..], b"35.15 N"] {
        assert!(!holds(picture.photo.bytes(), words) && !holds(&picture.small, words));
    }
}

#[wasm_bindgen_test]
async fn a_small_picture_is_not_enlarged_and_other_formats_are_read() {
    let picture = picture_of(&drawn(90, 60, false, "image/png").await).await.unwrap();
    assert_eq!((picture.photo.width(), picture.photo.height()), (90, 60));
    let small = thumbnail_of(picture.photo.bytes()).await.unwrap();
    assert!(jpeg_has_no_metadata(&small));
}

#[wasm_bindgen_test]
async fn a_file_that_is_not_a_picture_is_refused() {
    for bytes in [&b"hello"[..], b"", b"\xFF\xD8\xFF\xE0", b"\x89PNG\r\n\x1a\n"] {
        assert_eq!(picture_of(&blob_of(bytes)).await.unwrap_err(), PictureProblem::NoPicture);
    }
}
