//! However long a shop's history is: its answers do not depend on how it was opened, and what opening, counting and
//! drawing cost does not depend on how much was printed before.

mod answers;
mod cost;
mod found;
mod same;
mod timing;
mod years;
