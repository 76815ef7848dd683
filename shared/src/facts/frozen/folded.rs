//! What the frozen facts fold to.

/// SHA-256, in hexadecimal, of the bytes of the shop that [`history`](super::history) folds to. A test compares it and
/// prints the line to put here. It is part of the checkpoint: with another hash, older checkpoints are folded again.
pub const FOLD_SHA256: &str = "adc4ac4b4e0d66ead61813cdbbc681a5267c7e8ea79cab6ed5e4eb2867c0b109";
