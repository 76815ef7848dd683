//! A failure on the press: what failed, which pieces it affects, how it is repaired.

mod affected_range;
mod burn_again;
mod footer;
mod judge;
mod kind;
mod kind_picture;
mod mark;
mod outlook;
mod page;
mod record;
mod remedy;
mod replacement;
mod step;
mod summary_bar;

pub use page::FailurePage;
