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
    /// Where on the garment.
    Location(Location),
    /// The ink's name.
    Ink(String),
    /// The ink's colour.
    InkColour(Colour),
    /// The screens' labels.
    Screens(String),
    /// Threads an inch.
    Mesh(Option<u16>),
    /// The flash, or none.
    Flash(Option<Flash>),
    /// Strokes that lay ink, flash between them not counted.
    Hits(u8),
    /// What the dryer is set to.
    Dryer(Option<Temperature>),
    /// How fast its belt runs.
    Belt(Option<BeltSpeed>),
    /// How long a garment is in the heat, one pass.
    Dwell(Option<Seconds>),
    /// How many times it goes through.
    Passes(u8),
    /// Which squeegee.
    Squeegee(String),
    /// Gap between screen and garment.
    OffContact(Option<Length>),
    /// From the bottom of the collar seam to the top of the print.
    BelowCollar(Option<Length>),
    /// Anything else about where it goes.
    Placement(String),
    /// The printer's own guess of a piece's time, used before there is a count or a history.
    Guess(Option<Seconds>),
}

/// A print location. **Frozen** names and order: they are stored.
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
    /// Inside the neck, where a label was.
    InsideNeck,
    /// On the pocket.
    Pocket,
    /// Anywhere else.
    Other,
}

impl Location {
    /// All, in the order they are offered.
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

/// The cause of a misprint. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum MisprintCause {
    /// Not where it belongs.
    Placement,
    /// Colours or hits do not meet.
    Registration,
    /// A pinhole or spot in the stencil.
    Pinhole,
    /// Ink got where a hand, platen or screen touched.
    Smudge,
    /// Too little ink or too much.
    InkLay,
    /// Lint, a crease or a seam under the screen.
    Garment,
    /// Too hot or not cured.
    Heat,
    /// Anything else.
    Other,
    /// The stencil or the mesh gave way: breakdown, tear, clog, ghost.
    Screen,
}

impl MisprintCause {
    /// All, in the order they are offered.
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

/// The flash unit between two strokes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct Flash {
    /// How long it stands over the print.
    pub seconds: Seconds,
    /// From its element to the print, where it was noted.
    pub distance: Option<Length>,
}

/// Why the press stopped. **Frozen** names and order: they are stored.
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
    /// All, in the order they are offered.
    pub const ALL: [Self; 7] =
        [Self::Screen, Self::Ink, Self::Heat, Self::Garments, Self::Client, Self::Break, Self::Other];
}
