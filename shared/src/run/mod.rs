//! A run: one garment lot, one print location, one ink. Set-up, checks before the first pull, count, pace,
//! and when the last piece is out of the dryer.
//!
//! # Decisions
//!
//! - **Pace.** It is taken from the gaps between counts without the stops. A gap over five minutes and over six
//!   times the median gap is a pause that nobody marked. A run is expected to go as the shop's runs alike did
//!   (those with the same location, fabric, hits and flash), else as the printer guessed, else as other runs; its
//!   own gaps count for more with each that comes. Stops and misprints to come are random amounts. The view names
//!   what it rests on, and says nothing as certain below 95 %.
//! - **Touches.** [`Contacts`] decides what counts: one contact at a time, no palm, no screen edge, no bounce
//!   under 120 ms. Every key that a clicker or pedal may send counts once per press.

mod checks;
mod contact;
mod form;
pub(crate) mod model;
mod pace;
mod views;

pub use crate::facts::{CheckItem, CheckOutcome, Expected, ExpectedColour, Flash, Location, MisprintCause, StopCause};
pub use checks::{
    CheckList, CheckMade, CheckRow, CheckState, EarlierMeasurement, OtherColour, check_list, check_list_after,
};
pub use contact::{Contacts, HeldKeys, KeyMeaning, Touch, Viewport};
pub use form::RunForm;
pub use model::*;
pub use pace::*;
pub use views::*;
