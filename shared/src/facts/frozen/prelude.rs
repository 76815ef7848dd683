//! The stored types, and the ids that the samples share.

pub(super) use crate::colour::Colour;
pub(super) use crate::facts::*;
pub(super) use crate::ids::{PhotoId, SHOP, Subject};
pub(super) use crate::journal::Stamp;
pub(super) use crate::time::{Day, Due, TimeOfDay, WallTime};
pub(super) use crate::units::{BeltSpeed, Grams, Length, Seconds, Temperature, TemperatureDelta};

use uuid::Uuid;

pub(super) const DEVICE: Subject = Uuid::from_u128(1);
pub(super) const JOB: Subject = Uuid::from_u128(0x10);
pub(super) const LOT: Subject = Uuid::from_u128(0x11);
pub(super) const RUN: Subject = Uuid::from_u128(0x12);
pub(super) const SCREEN: Subject = Uuid::from_u128(0x13);
pub(super) const LAMP: Subject = Uuid::from_u128(0x14);
pub(super) const EMULSION: Subject = Uuid::from_u128(0x15);
pub(super) const EXPOSURE: Subject = Uuid::from_u128(0x16);
pub(super) const CHARGE: Subject = Uuid::from_u128(0x17);
pub(super) const BATCH: Subject = Uuid::from_u128(0x18);
pub(super) const FAILURE: Subject = Uuid::from_u128(0x19);
pub(super) const DRYER: Subject = Uuid::from_u128(0x1a);
pub(super) const SHEET: Subject = Uuid::from_u128(0x1b);
pub(super) const SETTLING: Subject = Uuid::from_u128(0x1c);
pub(super) const LOGGED_SETTLING: Subject = Uuid::from_u128(0x1d);
pub(super) const TEST: Subject = Uuid::from_u128(0x1e);
pub(super) const TRIAL: Subject = Uuid::from_u128(0x1f);
pub(super) const ROOM_READING: Subject = Uuid::from_u128(0x20);
pub(super) const COMPONENT: Subject = Uuid::from_u128(0x21);
pub(super) const RECIPE: Subject = Uuid::from_u128(0x22);
pub(super) const POT: Subject = Uuid::from_u128(0x23);
pub(super) const REVISION: Subject = Uuid::from_u128(0x24);
pub(super) const POUR: Subject = Uuid::from_u128(0x25);
pub(super) const RESIZING: Subject = Uuid::from_u128(0x26);
pub(super) const ACCEPTANCE: Subject = Uuid::from_u128(0x27);
pub(super) const TRANSFER: Subject = Uuid::from_u128(0x28);
pub(super) const WASTE: Subject = Uuid::from_u128(0x29);
pub(super) const USE: Subject = Uuid::from_u128(0x2a);
pub(super) const SWATCH: Subject = Uuid::from_u128(0x2b);
pub(super) const MATCH: Subject = Uuid::from_u128(0x2c);
pub(super) const APPROVAL: Subject = Uuid::from_u128(0x2d);
pub(super) const DELIVERY: Subject = Uuid::from_u128(0x2e);
pub(super) const STOCK_COUNT: Subject = Uuid::from_u128(0x2f);
pub(super) const DRAWDOWN: Subject = Uuid::from_u128(0x30);

pub(super) fn day() -> Day {
    Day::from_iso("2026-11-25").expect("a day of the calendar")
}

/// A closing time at a whole hour.
pub(super) fn at(hour: u16) -> TimeOfDay {
    TimeOfDay::at(hour, 0)
}

pub(super) fn celsius(degrees: i32) -> Temperature {
    Temperature::from_milli_celsius(degrees * 1000)
}

pub(super) fn seconds(seconds: u32) -> Seconds {
    Seconds::from_milliseconds(seconds * 1000)
}

pub(super) fn belt(micrometres_per_second: u32) -> BeltSpeed {
    BeltSpeed::from_micrometres_per_second(micrometres_per_second)
}

pub(super) fn millimetres(millimetres: i32) -> Length {
    Length::from_micrometres(millimetres * 1000)
}

pub(super) fn grams(grams: i64) -> Grams {
    Grams::from_milligrams(grams * 1000)
}

pub(super) fn percent(percent: u32) -> Share {
    Share::from_billionths(percent * 10_000_000)
}

pub(super) fn reading() -> ColourReading {
    ColourReading { l: 52_500, a: 41_000, b: -3_250, by: ReadBy::Photo }
}

pub(super) fn person() -> String {
    "Inés".into()
}
