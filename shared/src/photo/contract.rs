//! The promise of [`PhotoStore`] as tests, as [`crate::journal::contract`] has that of the journal:
//! stamped onto each backend by [`photo_contract!`](crate::photo_contract).
//!
//! They assert, and so panic, like any test; nothing outside tests calls them.
#![allow(clippy::missing_panics_doc, clippy::unwrap_used)]

use super::{JpegPhoto, PhotoStore};
use crate::facts::{Draft, Fact, PhotoFact};
use crate::journal::Storage;
use std::collections::BTreeSet;
use uuid::Uuid;

/// Bytes of the shape of a small picture without metadata, 16 by 8 pixels; another for each `seed`.
/// They say nothing that can be drawn.
pub fn picture(seed: u8) -> Vec<u8> {
    let segment = |marker: u8, inside: &[u8]| {
        let length = (inside.len() as u16 + 2).to_be_bytes();
        [&[0xFF, marker], &length[..], inside].concat()
    };
    [
        vec![0xFF, 0xD8],
        segment(0xE0, b"JFIF\0\x01\x02\0\0\x01\0\x01\0\0"),
        segment(0xDB, &[&[0], &[seed; 64][..]].concat()),
        segment(0xC0, &[8, 0, 8, 0, 16, 1, 1, 0x11, 0]),
        segment(0xC4, &[0; 18]),
        segment(0xDA, &[1, 1, 0, 0, 63, 0]),
        vec![seed, 0xFF, 0, 7],
        vec![0xFF, 0xD9],
    ]
    .concat()
}

/// A photo of such bytes.
pub fn photo(seed: u8) -> JpegPhoto {
    JpegPhoto::of(picture(seed)).unwrap()
}

/// What was kept is read back, and what was not is none.
pub async fn a_photo_kept_is_read_back<S: Storage<Fact> + PhotoStore>(store: S) {
    assert!(store.keep_photo(&photo(1), Some(&[7, 7]), 5).await.unwrap());
    assert_eq!(store.photo(photo(1).id()).await.unwrap().unwrap(), picture(1));
    assert_eq!(store.small(photo(1).id()).await.unwrap().unwrap(), [7, 7]);
    assert_eq!(store.photo(photo(2).id()).await.unwrap(), None);
    assert_eq!(store.small(photo(2).id()).await.unwrap(), None);
    assert_eq!(store.photos().await.unwrap(), BTreeSet::from([photo(1).id()]));
}

/// A photo kept twice is there once, with the small picture of either.
pub async fn a_photo_kept_twice_is_there_once<S: Storage<Fact> + PhotoStore>(store: S) {
    assert!(store.keep_photo(&photo(1), Some(&[7]), 5).await.unwrap());
    assert!(!store.keep_photo(&photo(1), None, 6).await.unwrap());
    assert_eq!(store.small(photo(1).id()).await.unwrap().unwrap(), [7]);
    assert_eq!(store.photos().await.unwrap().len(), 1);
}

/// A small picture made later is kept, but not of a photo that is not here.
pub async fn a_small_picture_made_later_is_kept<S: Storage<Fact> + PhotoStore>(store: S) {
    store.keep_photo(&photo(1), None, 5).await.unwrap();
    assert_eq!(store.small(photo(1).id()).await.unwrap(), None);
    store.keep_small(photo(1).id(), &[4, 2]).await.unwrap();
    store.keep_small(photo(2).id(), &[4, 2]).await.unwrap();
    assert_eq!(store.small(photo(1).id()).await.unwrap().unwrap(), [4, 2]);
    assert_eq!(store.small(photo(2).id()).await.unwrap(), None);
    // And it does not count as keeping the photo anew.
    assert_eq!(store.forget_photos(&[photo(1).id()], 6).await.unwrap(), 1);
}

/// Only what is named and was kept long ago is forgotten, wholly.
pub async fn forgetting_takes_what_is_named_and_old<S: Storage<Fact> + PhotoStore>(store: S) {
    for (seed, at) in [(1, 10), (2, 20), (3, 10), (4, 10)] {
        store.keep_photo(&photo(seed), Some(&[seed]), at).await.unwrap();
    }
    // Taken again in the meantime.
    store.keep_photo(&photo(3), None, 21).await.unwrap();
    let named: Vec<_> = (1..=3).chain([9]).map(|seed| photo(seed).id()).collect();
    assert_eq!(store.forget_photos(&named, 20).await.unwrap(), 1);
    assert_eq!(store.photo(photo(1).id()).await.unwrap(), None);
    assert_eq!(store.small(photo(1).id()).await.unwrap(), None);
    let left = (2..=4).map(|seed| photo(seed).id()).collect();
    assert_eq!(store.photos().await.unwrap(), left);
}

/// Two handles see what either has committed.
pub async fn two_tabs_see_the_same_photos<S: Storage<Fact> + PhotoStore + Clone>(store: S) {
    let other = store.clone();
    store.keep_photo(&photo(1), None, 5).await.unwrap();
    assert!(!other.keep_photo(&photo(1), None, 5).await.unwrap());
    other.keep_photo(&photo(2), None, 5).await.unwrap();
    assert_eq!(store.photos().await.unwrap().len(), 2);
}

/// Photos and facts do not disturb each other.
pub async fn photos_leave_the_journal_alone<S: Storage<Fact> + PhotoStore>(store: S) {
    store.keep_photo(&photo(1), None, 5).await.unwrap();
    assert!(store.read_all().await.unwrap().is_empty());
    let fact = Fact::Photo(PhotoFact::taken(&photo(1)));
    store.append(&[Draft { at: 6, subject: Uuid::from_u128(1), fact }]).await.unwrap();
    assert_eq!(store.forget_photos(&[photo(1).id()], u64::MAX).await.unwrap(), 1);
    assert_eq!(store.read_all().await.unwrap().len(), 1);
}

/// Erasing the store leaves no photo.
pub async fn erasing_leaves_no_photo<S: Storage<Fact> + PhotoStore>(store: S) {
    store.keep_photo(&photo(1), Some(&[1]), 5).await.unwrap();
    store.erase().await.unwrap();
    assert!(store.photos().await.unwrap().is_empty());
    assert_eq!(store.small(photo(1).id()).await.unwrap(), None);
}

/// Stamps the contract onto a backend: an expression for a fresh store, and how to run a future.
#[macro_export]
macro_rules! photo_contract {
    (in_browser: $fresh:expr) => {
        $crate::photo_contract!(@async $fresh,
            a_photo_kept_is_read_back
            a_photo_kept_twice_is_there_once
            a_small_picture_made_later_is_kept
            forgetting_takes_what_is_named_and_old
            two_tabs_see_the_same_photos
            photos_leave_the_journal_alone
            erasing_leaves_no_photo
        );
    };
    ($fresh:expr, |$run:ident| $block_on:expr) => {
        $crate::photo_contract!(@each $fresh, |$run| $block_on,
            a_photo_kept_is_read_back
            a_photo_kept_twice_is_there_once
            a_small_picture_made_later_is_kept
            forgetting_takes_what_is_named_and_old
            two_tabs_see_the_same_photos
            photos_leave_the_journal_alone
            erasing_leaves_no_photo
        );
    };
    (@each $fresh:expr, |$run:ident| $block_on:expr, $($name:ident)+) => {
        $(
            #[test]
            fn $name() {
                let $run = $crate::photo::contract::$name($fresh);
                $block_on;
            }
        )+
    };
    (@async $fresh:expr, $($name:ident)+) => {
        $(
            #[wasm_bindgen_test::wasm_bindgen_test]
            async fn $name() {
                $crate::photo::contract::$name($fresh).await;
            }
        )+
    };
}
