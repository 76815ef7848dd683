//! What the frozen facts fold to.

/// SHA-256, in hexadecimal, of the bytes of the shop that [`history`](super::history) folds to. A test compares it and
/// prints the line to put here. It is part of the checkpoint: with another hash, older checkpoints are folded again.
pub const FOLD_SHA256: &str = "64a376443c72234f417b311f060b4f7f25a37b562cd76b3e0f70b67e35e9e156";
