//! Screens: the inventory, exposing, the reclaim bath.

pub mod bath;
pub mod exposure;
pub mod inventory;
