//! Screens: the inventory, exposure, the reclaim bath.

pub mod bath;
pub mod exposure;
pub mod inventory;
