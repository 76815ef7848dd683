//! What the frozen facts fold to.

/// SHA-256, in hexadecimal, of the bytes of the shop that `history` folds to. A test compares it and
/// prints the line to put here. It is part of the checkpoint: with another hash, older checkpoints are folded again.
pub const FOLD_SHA256: &str = "8d122f72955642622de8907d0eddd537dd37dbca843f59b5e65dc650e01fc0df";
