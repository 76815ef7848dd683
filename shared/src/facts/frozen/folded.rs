//! What the frozen facts fold to.

/// SHA-256, in hexadecimal, of the bytes of the shop that [`history`](super::history) folds to. A test compares it and
/// prints the line to put here. It is part of the checkpoint: with another hash, older checkpoints are folded again.
pub const FOLD_SHA256: &str = "8667816e48a24e0575e546bae6bc2d66f95c232a5250542d9023174115a2eeb2";
