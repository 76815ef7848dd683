//! What the facts were folded into, as bytes, so that opening the journal does not fold all of it again.
//!
//! The journal keeps the bytes and does not look into them; what is folded writes and reads them.

/// The stored bytes of a folded journal. A cache: bytes that do not read are thrown away, and the
/// journal is folded again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Checkpoint {
    /// A version byte, and what was folded.
    pub bytes: Vec<u8>,
}
