//! What the frozen facts fold to.

/// SHA-256, in hexadecimal, of the bytes of the shop that [`history`](super::history) folds to. A test compares it and
/// prints the line to put here. It is part of the checkpoint: with another hash, older checkpoints are folded again.
pub const FOLD_SHA256: &str = "d3cb7dbeb48d2997fdf38f0541cf056515b8b8e2b6f1069295ba49139c901924";
