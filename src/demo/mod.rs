//! The first start, and the demo shop.

mod banner;
mod welcome;

pub use banner::Banner;
pub use welcome::Welcome;

use crate::place::Place;
use crate::store::Store;
use crate::words;

/// Opens the demo shop.
pub fn enter(store: Store) {
    store.enter_demo(words::demo_device().to_owned());
    Place::Day.go();
}

/// Leaves it, and nothing of it stays.
pub fn leave(store: Store) {
    store.leave_demo();
    Place::Day.go();
}
