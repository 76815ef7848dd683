//! The photos of a subject as thumbnails, and the buttons that add more.

use super::error_text::photo_error_text;
use super::photo_url::PhotoFetcher;
use super::viewer::{PhotoView, section_of};
use crate::components::Icon;
use crate::i18n;
use crate::platform::pictures;
use crate::store::{PhotoProgress, PhotoSource, Store};
use lastpull_core::ids::{PhotoId, Subject};
use lastpull_core::photo::{LOW_PHOTO_COUNT, Photo};
use leptos::html;
use leptos::prelude::*;

/// The photos of a subject.
#[component]
pub fn Photos(
    /// The subject.
    subject: Subject,
) -> impl IntoView {
    let store = Store::from_context();
    let photos = Memo::new(move |_| store.shop.with(|shop| shop.photos.of(subject)));
    let progress = RwSignal::new(PhotoProgress::default());
    let open = RwSignal::new(None::<PhotoId>);
    let is_open = Memo::new(move |_| open.with(Option::is_some));
    let is_empty = Memo::new(move |_| photos.with(Vec::is_empty));
    view! {
        <section class="photos" aria-label=i18n::photos_title() id=section_of(subject) tabindex="-1">
            {move || if is_empty.get() {
                view! { <p class="quiet-line">{i18n::photos_none()}</p> }.into_any()
            } else {
                view! {
                    <ul class="photo-grid">
                        <For each=move || photos.get() key=|photo| photo.id let:photo>
                            <Tile photo photos open/>
                        </For>
                    </ul>
                }.into_any()
            }}
            {move || store.photos_that_fit().filter(|left| *left < LOW_PHOTO_COUNT).map(|left| {
                view! { <p class="caution">{i18n::photos_left(left)}</p> }
            })}
            <div class="button-row">
                <TakePhotoButton subject progress camera=true/>
                <TakePhotoButton subject progress camera=false/>
            </div>
            <div role="status" class="photo-status">
                {move || progress.with(|progress| (progress.of > 0).then(|| {
                    view! {
                        <label>
                            {i18n::photo_adding(progress.of.min(progress.done + 1), progress.of)}
                            <progress max=progress.of value=progress.done></progress>
                        </label>
                    }
                }))}
                {move || progress.with(|progress| progress.refused.iter().map(|(file, why)| {
                    view! { <p class="problem"><Icon name="alert"/>{i18n::photo_refused(file, photo_error_text(why))}</p> }
                }).collect::<Vec<_>>())}
            </div>
            {move || is_open.get().then(|| view! { <PhotoView subject photos open/> })}
        </section>
    }
}

/// A button that takes pictures from the camera or from the device's files.
#[component]
fn TakePhotoButton(subject: Subject, progress: RwSignal<PhotoProgress>, camera: bool) -> impl IntoView {
    let store = Store::from_context();
    let input = NodeRef::<html::Input>::new();
    let picked = move |_| {
        if let Some(input) = input.get_untracked() {
            store.add_photos(subject, pictures::picked(&input), progress);
        }
    };
    let (icon, words) = if camera { ("camera", i18n::photo_take()) } else { ("picture", i18n::photo_choose()) };
    view! {
        <label class="button with-icon file-button" class:primary=camera>
            <input
                type="file"
                accept="image/*"
                multiple
                // Opens the camera directly, if the device has one; elsewhere the same as choosing a file.
                capture=camera.then_some("environment")
                data-photos=icon
                node_ref=input
                on:change=picked
            />
            <Icon name=icon/>
            <span>{words}</span>
        </label>
    }
}

/// A thumbnail. Its bytes are read when it comes near the viewport.
#[component]
fn Tile(photo: Photo, photos: Memo<Vec<Photo>>, open: RwSignal<Option<PhotoId>>) -> impl IntoView {
    let store = Store::from_context();
    let fetching = PhotoFetcher::new();
    let shown = fetching.shown;
    let tile = NodeRef::<html::Button>::new();
    Effect::new(move || {
        if let Some(tile) = tile.get() {
            let fetching = fetching.clone();
            pictures::when_near(&tile, move || fetching.fetch(store.thumbnail_url(photo.id)));
        }
    });
    let label = move || i18n::photo_label(&photos.get(), photo.id);
    view! {
        <li>
            <button type="button" class="photo-tile" node_ref=tile aria-label=label on:click=move |_| open.set(Some(photo.id))>
                {move || match shown.get() {
                    None => ().into_any(),
                    Some(PhotoSource::Url(address)) => view! { <img src=address alt="" draggable="false"/> }.into_any(),
                    Some(PhotoSource::Missing) => view! { <span class="photo-gap"><Icon name="picture"/>{i18n::photo_missing()}</span> }.into_any(),
                    Some(PhotoSource::Fault(fault)) => view! { <span class="photo-gap"><Icon name="alert"/>{i18n::storage_fault(&fault)}</span> }.into_any(),
                }}
            </button>
        </li>
    }
}
