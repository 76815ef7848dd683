//! How long names, notes and lists may be in what is stored. Facts from elsewhere are checked against these.

/// Longest line accepted from a file, in bytes.
pub const LONGEST_LINE: usize = 64 * 1024;

/// Longest name, in characters.
pub(crate) const NAME: usize = 160;
/// Longest note, in characters.
pub(crate) const NOTE: usize = 4_000;
/// Most people, sizes or fields in one list.
pub(crate) const LIST: usize = 64;
/// Most pieces in one fact.
pub(crate) const PIECES: i32 = 1_000_000;

/// Whether a text is short enough for a name.
pub(crate) fn is_name(text: &str) -> bool {
    text.chars().count() <= NAME
}

/// Whether a text is short enough for a note.
pub(crate) fn is_note(text: &str) -> bool {
    text.chars().count() <= NOTE
}
