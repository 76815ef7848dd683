//! The journal: folding, merging, and journals of which parts are missing.

pub mod any_entries;
mod deleted_and_missing;
mod devices;
mod fold;
mod frozen;
mod histories;
mod older_and_newer;
mod unknown_facts;
