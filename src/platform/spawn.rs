//! Work that goes on beside the screens.

use std::future::Future;
use std::pin::Pin;

/// Starts it. Boxed first, so that what runs it is compiled once and not for every piece of work.
pub fn spawn_local(work: impl Future<Output = ()> + 'static) {
    let work: Pin<Box<dyn Future<Output = ()>>> = Box::pin(work);
    wasm_bindgen_futures::spawn_local(work);
}
