//! The journal: folding, merging, and journals of which parts are missing.

mod any;
mod fold;
mod frozen;
mod histories;
mod partial;
