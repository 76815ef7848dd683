//! New ids, from the browser's random source.

use uuid::Uuid;

/// A new id. `UUIDv7`; only its being unique is relied on.
pub fn new_id() -> Uuid {
    Uuid::now_v7()
}
