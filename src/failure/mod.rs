//! What fails on the press: from the one tap at the count to the press going on, and what it cost.

mod bar;
mod burn;
mod choose;
mod finish;
mod foot;
mod judge;
mod kind;
mod mark;
mod picture;
mod remedy;
mod resting;
mod screen;
mod since;
mod step;
mod strip;
mod tell;

pub use bar::FailureBar;
pub use screen::FailureScreen;
