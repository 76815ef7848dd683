//! What the frozen facts fold to.

/// SHA-256, in hexadecimal, of the bytes of the shop that [`history`](super::history) folds to. A test compares it and
/// prints the line to put here. It is part of the checkpoint: with another hash, older checkpoints are folded again.
pub const FOLD_SHA256: &str = "24c4ba831af05d160792fbdc101db195982a7766729d5f2727e59eef365b4cbc";
