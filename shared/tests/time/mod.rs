//! Time: local days and moments in real time zones.

mod late_shop;
mod zones;
