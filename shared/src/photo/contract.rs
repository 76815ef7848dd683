//! The contract of [`PhotoStore`] as tests, like [`crate::journal::contract`] for the journal.
//! [`photo_contract!`](crate::photo_contract) generates them for a backend.
//!
//! Like any test they assert, and so may panic; only tests call them.
#![allow(clippy::missing_panics_doc, clippy::unwrap_used)]

use super::{JpegPhoto, PhotoStore};
use crate::facts::{Draft, Fact, PhotoFact};
use crate::journal::Storage;
use crate::time::WallTime;
use std::collections::BTreeSet;
use uuid::Uuid;

/// The bytes of a small JPEG without metadata, 16 by 8 pixels, different for each `seed`. They have a valid
/// structure but cannot be displayed.
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

/// A photo with the bytes of [`picture`].
pub fn photo(seed: u8) -> JpegPhoto {
    JpegPhoto::of(picture(seed)).unwrap()
}

fn at(unix_ms: u64) -> WallTime {
    WallTime::from_unix_ms(unix_ms)
}

/// A stored photo is read back, and one that was not stored is `None`.
pub async fn a_stored_photo_is_read_back<S: Storage<Fact> + PhotoStore>(store: S) {
    assert!(store.store_photo(&photo(1), Some(&[7, 7]), at(5)).await.unwrap());
    assert_eq!(store.photo(photo(1).id()).await.unwrap().unwrap(), picture(1));
    assert_eq!(store.thumbnail(photo(1).id()).await.unwrap().unwrap(), [7, 7]);
    assert_eq!(store.photo(photo(2).id()).await.unwrap(), None);
    assert_eq!(store.thumbnail(photo(2).id()).await.unwrap(), None);
    assert_eq!(store.photos().await.unwrap(), BTreeSet::from([photo(1).id()]));
}

/// A photo stored twice exists once, with whichever thumbnail was given.
pub async fn a_photo_stored_twice_exists_once<S: Storage<Fact> + PhotoStore>(store: S) {
    assert!(store.store_photo(&photo(1), Some(&[7]), at(5)).await.unwrap());
    assert!(!store.store_photo(&photo(1), None, at(6)).await.unwrap());
    assert_eq!(store.thumbnail(photo(1).id()).await.unwrap().unwrap(), [7]);
    assert_eq!(store.photos().await.unwrap().len(), 1);
}

/// A thumbnail added later is stored, but only for a photo that exists.
pub async fn a_thumbnail_added_later_is_stored<S: Storage<Fact> + PhotoStore>(store: S) {
    store.store_photo(&photo(1), None, at(5)).await.unwrap();
    assert_eq!(store.thumbnail(photo(1).id()).await.unwrap(), None);
    store.store_thumbnail(photo(1).id(), &[4, 2]).await.unwrap();
    store.store_thumbnail(photo(2).id(), &[4, 2]).await.unwrap();
    assert_eq!(store.thumbnail(photo(1).id()).await.unwrap().unwrap(), [4, 2]);
    assert_eq!(store.thumbnail(photo(2).id()).await.unwrap(), None);
    // Adding it does not renew the photo's time.
    assert_eq!(store.delete_photos(&[photo(1).id()], at(6)).await.unwrap(), 1);
}

/// Only photos that are named and were stored before the given time are deleted, with their thumbnails.
pub async fn deleting_affects_only_old_named_photos<S: Storage<Fact> + PhotoStore>(store: S) {
    for (seed, unix_ms) in [(1, 10), (2, 20), (3, 10), (4, 10)] {
        store.store_photo(&photo(seed), Some(&[seed]), at(unix_ms)).await.unwrap();
    }
    // Stored again in the meantime.
    store.store_photo(&photo(3), None, at(21)).await.unwrap();
    let named: Vec<_> = (1..=3).chain([9]).map(|seed| photo(seed).id()).collect();
    assert_eq!(store.delete_photos(&named, at(20)).await.unwrap(), 1);
    assert_eq!(store.photo(photo(1).id()).await.unwrap(), None);
    assert_eq!(store.thumbnail(photo(1).id()).await.unwrap(), None);
    let left = (2..=4).map(|seed| photo(seed).id()).collect();
    assert_eq!(store.photos().await.unwrap(), left);
}

/// Two handles each see what the other has committed.
pub async fn two_tabs_see_the_same_photos<S: Storage<Fact> + PhotoStore + Clone>(store: S) {
    let other = store.clone();
    store.store_photo(&photo(1), None, at(5)).await.unwrap();
    assert!(!other.store_photo(&photo(1), None, at(5)).await.unwrap());
    other.store_photo(&photo(2), None, at(5)).await.unwrap();
    assert_eq!(store.photos().await.unwrap().len(), 2);
}

/// Photos and facts do not affect each other.
pub async fn photos_do_not_affect_the_journal<S: Storage<Fact> + PhotoStore>(store: S) {
    store.store_photo(&photo(1), None, at(5)).await.unwrap();
    assert!(store.read_all().await.unwrap().is_empty());
    let fact = Fact::Photo(PhotoFact::taken(&photo(1)));
    store.append(&[Draft { at: at(6), subject: Uuid::from_u128(1), fact }]).await.unwrap();
    assert_eq!(store.delete_photos(&[photo(1).id()], WallTime::MAX).await.unwrap(), 1);
    assert_eq!(store.read_all().await.unwrap().len(), 1);
}

/// Erasing the store deletes all photos.
pub async fn erasing_deletes_all_photos<S: Storage<Fact> + PhotoStore>(store: S) {
    store.store_photo(&photo(1), Some(&[1]), at(5)).await.unwrap();
    store.erase().await.unwrap();
    assert!(store.photos().await.unwrap().is_empty());
    assert_eq!(store.thumbnail(photo(1).id()).await.unwrap(), None);
}

/// Generates the contract tests for a backend: an expression for an empty store, and how to run a future.
#[macro_export]
macro_rules! photo_contract {
    (in_browser: $fresh:expr) => {
        $crate::photo_contract!(@async $fresh,
            a_stored_photo_is_read_back
            a_photo_stored_twice_exists_once
            a_thumbnail_added_later_is_stored
            deleting_affects_only_old_named_photos
            two_tabs_see_the_same_photos
            photos_do_not_affect_the_journal
            erasing_deletes_all_photos
        );
    };
    ($fresh:expr, |$run:ident| $block_on:expr) => {
        $crate::photo_contract!(@each $fresh, |$run| $block_on,
            a_stored_photo_is_read_back
            a_photo_stored_twice_exists_once
            a_thumbnail_added_later_is_stored
            deleting_affects_only_old_named_photos
            two_tabs_see_the_same_photos
            photos_do_not_affect_the_journal
            erasing_deletes_all_photos
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
