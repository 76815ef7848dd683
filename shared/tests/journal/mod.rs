//! The journal: folding, merging, and journals of which parts are missing.

pub mod any;
mod devices;
mod fold;
mod frozen;
mod histories;
mod newer;
mod partial;
mod unknown;
