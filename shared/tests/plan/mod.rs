//! The day: closing, the rail of runs, and whether it fits.

mod day;
mod rail;
mod verdict;
