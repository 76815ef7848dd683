//! Starts futures that run beside the pages.

use std::future::Future;
use std::pin::Pin;

/// Starts a future. Boxed first, so that the executor is compiled once and not per future.
pub fn spawn_local(work: impl Future<Output = ()> + 'static) {
    let work: Pin<Box<dyn Future<Output = ()>>> = Box::pin(work);
    wasm_bindgen_futures::spawn_local(work);
}
