//! What the frozen facts fold to.

/// SHA-256, in hexadecimal, of the bytes of the shop that [`history`](super::history) folds to. A test compares it and
/// prints the line to put here. It is part of the checkpoint: with another hash, older checkpoints are folded again.
pub const FOLD_SHA256: &str = "96cbee3a8579614be636379f93f31e0c10d340763395b7ac97e58301e602cc2a";
