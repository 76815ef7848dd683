//! What the frozen facts fold to.

/// SHA-256, in hexadecimal, of the bytes of the shop that `history` folds to. A test compares it and
/// prints the line to put here. It is part of the checkpoint: with another hash, older checkpoints are folded again.
pub const FOLD_SHA256: &str = "43c3259a48f8f1d957fb7f12ef7ea7fbfbd3ab38e7fdfd478261c65202eb03e5";
