//! However long a shop's history is: its answers do not depend on how it was opened, and what opening, counting and
//! drawing cost does not depend on how much was printed before.

mod cost;
mod folded_or_opened;
mod largest_numbers;
mod lists_of_the_latest;
mod page_answers;
mod timing;
mod years;
