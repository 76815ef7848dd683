//! What the frozen facts fold to.

/// SHA-256, in hexadecimal, of the bytes of the shop that `history` folds to. A test compares it and
/// prints the line to put here. It is part of the checkpoint: with another hash, older checkpoints are folded again.
pub const FOLD_SHA256: &str = "16b62eb6db8b7a7b78a50a17b17e9fbf2d025b023498bbfe4de2db0c67eb6744";
