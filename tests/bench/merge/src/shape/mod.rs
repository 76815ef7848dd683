//! How the events are laid out in a document of yrs or automerge: alike for both, in two ways.
//!
//! ```text
//! lists:    device ─ run ─┬─ size ─ list of the times of its pulls
//!                         └─ "log" ─ list of notes: misprints, stops
//!           job ─ title
//!
//! records:  device ─ list of records { kind, at, run, size, pieces … }
//!           job ─ title
//! ```
//!
//! **Lists** is the quickest layout we found that loses no event, made for counting and nothing
//! else: a total is the length of a list. **Records** is what a journal of facts is in these
//! libraries, and what their guides show (a list of to-dos): it takes a new kind of fact without a
//! new layout, keeps each device's facts in their order, and a total is a walk over the facts, as
//! ours is. How far the libraries are from us depends on the layout more than on anything else, so
//! both are measured.
//!
//! What holds for both:
//!
//! - Both libraries can sum numbers that several devices add to, but a sum forgets when each piece
//!   was pulled. Pace and forecast need that, so every event is an element of a list.
//! - Each device writes below its own key. Where two devices made the same nested container at the
//!   same time, both libraries would keep one and hide the other with all that is in it. It also
//!   says who recorded what, and spares both libraries the work of interleaving lists.
//! - Fifty events share a transaction. A phone would commit every piece; batches are kinder to both.
//! - Titles are plain sets in a map: the last writer wins, as with us. Which of two titles set at
//!   the same time comes last, each library decides in its own way, so titles are not compared.

mod event;
mod totals;

pub use event::{Event, Field, Write, write_of};
pub use totals::{RunTotal, Totals};

/// How many events share a transaction.
pub const BATCH: usize = 50;
/// The key of a run's list of notes, beside those of its sizes.
pub const LOG: &str = "log";
