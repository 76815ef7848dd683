//! The stored fields of a run, and why it stopped or spoiled. **Frozen** as [`crate::facts::Fact`] is.

use crate::codec::Encode;
use crate::colour::Colour;
use crate::units::{BeltSpeed, Length, Seconds, Temperature};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A field of a run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum RunField {
    /// The lot it prints on.
    Lot(Uuid),
    /// Print location.
    Location(Location),
    /// The ink's name.
    Ink(String),
    /// The ink's colour.
    InkColour(Colour),
    /// Labels of the screens.
    Screens(String),
    /// Mesh count in threads per inch.
    Mesh(Option<u16>),
    /// The flash settings; `None` for no flash.
    Flash(Option<Flash>),
    /// Number of strokes that print ink; flashes between them are not counted.
    Hits(u8),
    /// Dryer setting.
    Dryer(Option<Temperature>),
    /// Belt speed.
    Belt(Option<BeltSpeed>),
    /// Dwell: time in the heat for one pass.
    Dwell(Option<Seconds>),
    /// Passes through the dryer.
    Passes(u8),
    /// The squeegee.
    Squeegee(String),
    /// Off-contact: gap between screen and garment.
    OffContact(Option<Length>),
    /// Distance from the bottom of the collar seam to the top of the print.
    BelowCollar(Option<Length>),
    /// Other notes on placement.
    Placement(String),
    /// The printer's guess of the time per piece, used before there is a count or a history.
    Guess(Option<Seconds>),
}

/// A print location on a garment. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum Location {
    /// Full front.
    #[default]
    FullFront,
    /// Left chest, as worn.
    LeftChest,
    /// Right chest, as worn.
    RightChest,
    /// Centre chest.
    CentreChest,
    /// Full back.
    FullBack,
    /// Across the shoulders.
    UpperBack,
    /// Left sleeve, as worn.
    LeftSleeve,
    /// Right sleeve, as worn.
    RightSleeve,
    /// Inside the neck, in place of a label.
    InsideNeck,
    /// On the pocket.
    Pocket,
    /// Anywhere else.
    Other,
}

impl Location {
    /// All variants, in the order the app offers them.
    pub const ALL: [Self; 11] = [
        Self::FullFront,
        Self::LeftChest,
        Self::RightChest,
        Self::CentreChest,
        Self::FullBack,
        Self::UpperBack,
        Self::LeftSleeve,
        Self::RightSleeve,
        Self::InsideNeck,
        Self::Pocket,
        Self::Other,
    ];
}

/// Cause of a misprint. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum MisprintCause {
    /// Printed in the wrong place.
    Placement,
    /// Colours or hits are out of register.
    Registration,
    /// A pinhole or spot in the stencil.
    Pinhole,
    /// Ink where a hand, platen or screen touched.
    Smudge,
    /// Too little ink or too much.
    InkLay,
    /// Lint, a crease or a seam under the screen.
    Garment,
    /// Scorched or not cured.
    Heat,
    /// Anything else.
    Other,
    /// The stencil or mesh failed: breakdown, tear, clog, ghost.
    Screen,
}

impl MisprintCause {
    /// All variants, in the order the app offers them.
    pub const ALL: [Self; 9] = [
        Self::Placement,
        Self::Registration,
        Self::Pinhole,
        Self::Smudge,
        Self::InkLay,
        Self::Garment,
        Self::Heat,
        Self::Screen,
        Self::Other,
    ];
}

/// The flash unit's settings between two strokes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct Flash {
    /// Flash time.
    pub seconds: Seconds,
    /// Distance from its element to the print, if recorded.
    pub distance: Option<Length>,
}

/// Cause of a stop. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum StopCause {
    /// The screen: a clog, a spot, registration.
    Screen,
    /// The ink: out, drying, colour off.
    Ink,
    /// The flash or the dryer.
    Heat,
    /// Garments: wrong, missing, to be sorted.
    Garments,
    /// The client, the phone, the door.
    Client,
    /// A break: food, water, rest.
    Break,
    /// Anything else.
    Other,
}

impl StopCause {
    /// All variants, in the order the app offers them.
    pub const ALL: [Self; 7] =
        [Self::Screen, Self::Ink, Self::Heat, Self::Garments, Self::Client, Self::Break, Self::Other];
}
