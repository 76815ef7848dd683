//! Opening and closing the demo shop.

use crate::i18n;
use crate::route::Route;
use crate::store::Store;

/// Opens the demo shop.
pub fn enter(store: Store) {
    store.enter_demo(i18n::demo_device().to_owned());
    Route::Day.navigate();
}

/// Closes the demo shop and deletes it.
pub fn leave(store: Store) {
    store.leave_demo(i18n::demo_left().to_owned());
    Route::Day.navigate();
}
