//! New ids from the browser's random number generator.

use uuid::Uuid;

/// A new id (`UUIDv7`). Nothing but its uniqueness is relied on.
pub fn new_id() -> Uuid {
    Uuid::now_v7()
}
