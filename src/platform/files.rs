//! Exporting and picking files. Exports are shared if the device can share files, else downloaded; files
//! are picked with the browser's file dialog.

use js_sys::{Array, Uint8Array};
use lastpull_core::exchange::Source;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, FilePropertyBag, HtmlAnchorElement, HtmlInputElement, ShareData, Url};

/// Media type of a backup, which share sheets check.
const ZIP: &str = "application/zip";

/// A file ready to be exported. Created before the tap, since sharing is allowed only during a tap.
#[derive(Clone)]
pub struct Outgoing {
    file: File,
}

/// How a file was exported.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExportOutcome {
    /// Through the device's share sheet.
    Shared,
    /// As a download.
    Downloaded,
    /// The user closed the share sheet.
    Cancelled,
    /// The browser can do neither.
    Failed,
}

/// A file being assembled: each part goes to the browser at once, which need not keep it in memory.
#[derive(Default)]
pub struct FileParts {
    parts: Array,
}

impl FileParts {
    /// Puts bytes before all others; `None` if the browser refuses.
    pub fn add_in_front(&mut self, bytes: &[u8]) -> Option<()> {
        self.parts.unshift(&part(bytes)?.into());
        Some(())
    }

    /// Appends bytes; `None` if the browser refuses.
    pub fn add(&mut self, bytes: &[u8]) -> Option<()> {
        self.parts.push(&part(bytes)?.into());
        Some(())
    }
}

fn part(bytes: &[u8]) -> Option<Blob> {
    Blob::new_with_u8_array_sequence(&Array::of1(&Uint8Array::from(bytes))).ok()
}

impl Outgoing {
    /// A file of these parts; `None` if the browser refuses.
    pub fn new(name: &str, parts: &FileParts) -> Option<Self> {
        let options = FilePropertyBag::new();
        options.set_type(ZIP);
        File::new_with_blob_sequence_and_options(&parts.parts, name, &options).ok().map(|file| Self { file })
    }

    /// A file of one blob, with the blob's media type.
    pub fn of(name: &str, blob: &Blob) -> Option<Self> {
        let options = FilePropertyBag::new();
        options.set_type(&blob.type_());
        File::new_with_blob_sequence_and_options(&Array::of1(blob), name, &options).ok().map(|file| Self { file })
    }

    /// A file that was made in a worker; `None` for any other value.
    pub fn of_value(file: &JsValue) -> Option<Self> {
        file.dyn_ref::<File>().cloned().map(|file| Self { file })
    }

    /// The file, to be handed to a worker or by one.
    pub fn value(&self) -> JsValue {
        self.file.clone().into()
    }

    /// Its size in bytes.
    pub fn size(&self) -> f64 {
        self.file.size()
    }

    /// The same file to be read back, as one that was picked.
    pub fn to_incoming(&self) -> Incoming {
        Incoming { file: self.file.clone() }
    }

    /// Its name.
    pub fn name(&self) -> String {
        self.file.name()
    }

    /// Whether this device can share this file.
    pub fn can_share(&self) -> bool {
        let navigator = leptos::prelude::window().navigator();
        js_sys::Reflect::has(&navigator, &"canShare".into()).unwrap_or(false)
            && navigator.can_share_with_data(&self.share_data())
    }

    fn share_data(&self) -> ShareData {
        let data = ShareData::new();
        data.set_files(&Array::of1(&self.file));
        data
    }

    /// Shares it. Call it during the tap itself.
    pub async fn share(&self) -> ExportOutcome {
        let navigator = leptos::prelude::window().navigator();
        match JsFuture::from(navigator.share_with_data(&self.share_data())).await {
            Ok(_) => ExportOutcome::Shared,
            Err(error) if error_name(&error) == "AbortError" => ExportOutcome::Cancelled,
            Err(_) => self.download(),
        }
    }

    /// Downloads it.
    pub fn download(&self) -> ExportOutcome {
        self.try_download().map_or(ExportOutcome::Failed, |()| ExportOutcome::Downloaded)
    }

    fn try_download(&self) -> Result<(), JsValue> {
        let options = BlobPropertyBag::new();
        options.set_type(&self.file.type_());
        let blob = Blob::new_with_blob_sequence_and_options(&Array::of1(&self.file), &options)?;
        let url = Url::create_object_url_with_blob(&blob)?;
        let link: HtmlAnchorElement = leptos::prelude::document().create_element("a")?.dyn_into()?;
        link.set_href(&url);
        link.set_download(&self.file.name());
        link.click();
        super::clock::after(std::time::Duration::from_secs(60), move || {
            let _ = Url::revoke_object_url(&url);
        });
        Ok(())
    }
}

fn error_name(error: &JsValue) -> String {
    js_sys::Reflect::get(error, &"name".into()).ok().and_then(|name| name.as_string()).unwrap_or_default()
}

/// A picked file, read in ranges.
#[derive(Clone)]
pub struct Incoming {
    file: File,
}

impl Incoming {
    /// A file that was handed to a worker; `None` for any other value.
    pub fn of_value(file: &JsValue) -> Option<Self> {
        file.dyn_ref::<File>().cloned().map(|file| Self { file })
    }

    /// The file, to be handed to a worker.
    pub fn value(&self) -> JsValue {
        self.file.clone().into()
    }
}

impl Source for Incoming {
    fn size(&self) -> u64 {
        self.file.size() as u64
    }

    async fn read(&self, from: u64, length: usize) -> Option<Vec<u8>> {
        let part = self.file.slice_with_f64_and_f64(from as f64, from as f64 + length as f64).ok()?;
        let buffer = JsFuture::from(part.array_buffer()).await.ok()?;
        let bytes = Uint8Array::new(&buffer).to_vec();
        (bytes.len() == length).then_some(bytes)
    }
}

/// The file just picked in an input; clears the input, so that the same file can be picked again.
pub fn picked(input: &HtmlInputElement) -> Option<Incoming> {
    let file = input.files().and_then(|files| files.get(0));
    input.set_value("");
    file.map(|file| Incoming { file })
}
