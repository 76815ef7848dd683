//! The day: closing, the rail of runs, whether it fits, and the first steps of a new shop.

mod day;
mod first_steps;
mod rail;
mod verdict;
