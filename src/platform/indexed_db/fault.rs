//! Failures of the database as [`StorageFault`].

use idb::Error;
use lastpull_core::journal::StorageFault;
use lastpull_core::journal::record::BytesProblem;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::DomException;

/// Stored bytes that this version does not read.
pub fn unreadable(problem: BytesProblem) -> StorageFault {
    match problem {
        BytesProblem::Newer(_) => StorageFault::NewerVersion,
        BytesProblem::Damaged => StorageFault::Unreadable(problem),
    }
}

/// A failed request.
#[expect(clippy::wildcard_enum_match_arm, reason = "the library's own errors, which hold nothing of the browser's")]
pub fn fault(error: Error) -> StorageFault {
    match &error {
        Error::DomException(exception) => fault_named(&exception.name(), &exception.message()),
        Error::UpdateFailed(value)
        | Error::GetFailed(value)
        | Error::GetAllFailed(value)
        | Error::GetKeyFailed(value)
        | Error::GetAllKeysFailed(value)
        | Error::DeleteFailed(value)
        | Error::ClearFailed(value) => fault_of(value),
        Error::IndexedDbOpenFailed(value) | Error::ObjectStoreNotFound(value) => fault_of(value),
        _ => StorageFault::Other(error.to_string()),
    }
}

/// A thrown value.
pub fn fault_of(value: &JsValue) -> StorageFault {
    match value.dyn_ref::<DomException>() {
        Some(exception) => fault_named(&exception.name(), &exception.message()),
        None => StorageFault::Other(format!("{value:?}")),
    }
}

/// An exception, by the name that the DOM standard gives it.
pub fn fault_named(name: &str, message: &str) -> StorageFault {
    match name {
        "QuotaExceededError" => StorageFault::Full,
        "InvalidStateError" | "AbortError" | "TransactionInactiveError" => StorageFault::Closed,
        "VersionError" => StorageFault::NewerVersion,
        "SecurityError" | "NotAllowedError" => StorageFault::Unavailable,
        _ => StorageFault::Other(format!("{name}: {message}")),
    }
}
