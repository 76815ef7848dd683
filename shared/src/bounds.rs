//! How long names, notes and lists may be in what is stored. Facts from elsewhere are checked against these. Forms allow
//! less: see [`crate::form`].

/// Longest line accepted from a file, in bytes.
pub const LONGEST_LINE: usize = 64 * 1024;

/// Longest name, in characters.
pub(crate) const STORED_NAME: usize = 160;
/// Longest note, in characters.
pub(crate) const STORED_NOTE: usize = 4_000;
/// Most people, sizes or fields in one list.
pub(crate) const LIST: usize = 64;
/// Most pieces in one fact.
pub(crate) const PIECES: i32 = 1_000_000;
/// Most pieces that facts are taken to add up to: more than any shop prints, and few enough that a few such sums can be
/// added. Our own.
const MOST_PIECES: i64 = 1_000_000_000;

/// The pieces that signed facts add up to, never negative. Each is bounded but their number is not: a file can hold more than
/// a number of pieces holds.
pub(crate) fn pieces(sum: i64) -> u32 {
    sum.clamp(0, MOST_PIECES) as u32
}

/// All of these numbers of pieces together, at most the largest number.
pub(crate) fn total(pieces: impl Iterator<Item = u32>) -> u32 {
    pieces.fold(0, u32::saturating_add)
}

/// Whether a text is short enough for a name.
pub(crate) fn is_name(text: &str) -> bool {
    text.chars().count() <= STORED_NAME
}

/// Whether a text is short enough for a note.
pub(crate) fn is_note(text: &str) -> bool {
    text.chars().count() <= STORED_NOTE
}
