//! The last query of the exposure page, so that a user who returns from a form finds it unchanged.

use crate::store::Store;
use lastpull_core::screen::ExposureChoice;
use leptos::prelude::*;
use std::cell::Cell;

thread_local! {
    static PICK: Cell<Option<ExposureChoice>> = const { Cell::new(None) };
}

/// The last query, or the shop's last exposure.
pub fn pick(store: Store) -> ExposureChoice {
    store.shop.with_untracked(|shop| {
        let usual = ExposureChoice::from_latest(shop);
        let kept = PICK.get().map(|pick| pick.without_deleted(shop)).unwrap_or_default();
        ExposureChoice {
            emulsion: kept.emulsion.or(usual.emulsion),
            lamp: kept.lamp.or(usual.lamp),
            cloth: kept.cloth.or(usual.cloth),
            coats: if kept.cloth.is_some() { kept.coats } else { usual.coats },
        }
    })
}

/// Keeps the current query.
pub fn keep(pick: ExposureChoice) {
    PICK.set(Some(pick));
}
