//! Tests that need a real browser; run in headless Chromium.
#![cfg(target_arch = "wasm32")]

mod older_database;
mod pictures;
mod routes;
mod row_window;
mod settings;
mod storage_contract;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
