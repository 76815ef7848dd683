//! The stored fields of jobs and garment lots. **Frozen** as [`crate::facts::Fact`] is.

use crate::codec::Encode;
use crate::colour::Colour;
use crate::time::Due;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// The fabric of a garment. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum Fabric {
    /// Cotton.
    #[default]
    Cotton,
    /// Cotton and polyester.
    Blend,
    /// Polyester.
    Polyester,
    /// Cotton, polyester and rayon.
    TriBlend,
    /// Nylon.
    Nylon,
    /// Cotton canvas: totes, aprons.
    Canvas,
    /// Anything else.
    Other,
}

impl Fabric {
    /// All fabrics, in the order in which they are offered.
    pub const ALL: [Self; 7] =
        [Self::Cotton, Self::Blend, Self::Polyester, Self::TriBlend, Self::Nylon, Self::Canvas, Self::Other];

    /// Whether heat can damage it in ways that cotton is not: dye migration, melting fibres.
    pub fn is_heat_sensitive(self) -> bool {
        match self {
            Self::Blend | Self::Polyester | Self::TriBlend | Self::Nylon => true,
            Self::Cotton | Self::Canvas | Self::Other => false,
        }
    }
}

/// A garment size. **Frozen** names and order: they are stored. The order is also the order in which sizes
/// are shown and printed: small to large, youth before adult.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum Size {
    /// One size, such as totes and caps.
    One,
    /// Youth extra small.
    YouthXs,
    /// Youth small.
    YouthS,
    /// Youth medium.
    YouthM,
    /// Youth large.
    YouthL,
    /// Youth extra large.
    YouthXl,
    /// Adult extra small.
    Xs,
    /// Adult small.
    S,
    /// Adult medium.
    M,
    /// Adult large.
    L,
    /// Adult extra large.
    Xl,
    /// Adult 2XL.
    Xxl,
    /// Adult 3XL.
    Xxxl,
    /// Adult 4XL.
    Xxxxl,
    /// Adult 5XL.
    Xxxxxl,
}

impl Size {
    /// Adult sizes, small to large.
    pub const ADULT: [Self; 9] =
        [Self::Xs, Self::S, Self::M, Self::L, Self::Xl, Self::Xxl, Self::Xxxl, Self::Xxxxl, Self::Xxxxxl];
    /// Youth sizes, small to large.
    pub const YOUTH: [Self; 5] = [Self::YouthXs, Self::YouthS, Self::YouthM, Self::YouthL, Self::YouthXl];

    /// The letters on the label. They do not tell youth sizes from adult sizes.
    ///
    /// ```
    /// use lastpull_core::job::Size;
    ///
    /// assert_eq!(Size::Xxl.letters(), "2XL");
    /// assert_eq!(Size::YouthM.letters(), Size::M.letters());
    /// ```
    pub fn letters(self) -> &'static str {
        match self {
            Self::One => "1",
            Self::YouthXs | Self::Xs => "XS",
            Self::YouthS | Self::S => "S",
            Self::YouthM | Self::M => "M",
            Self::YouthL | Self::L => "L",
            Self::YouthXl | Self::Xl => "XL",
            Self::Xxl => "2XL",
            Self::Xxxl => "3XL",
            Self::Xxxxl => "4XL",
            Self::Xxxxxl => "5XL",
        }
    }

    /// Whether it is a youth size.
    pub fn is_youth(self) -> bool {
        Self::YOUTH.contains(&self)
    }
}

/// Number of pieces of one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct SizePieces {
    /// The size.
    pub size: Size,
    /// Number of pieces.
    pub pieces: u32,
}

/// A field of a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum JobField {
    /// The client.
    Client(String),
    /// The job's title.
    Title(String),
    /// Due day and time in the shop's local time.
    Due(Option<Due>),
    /// Free notes.
    Notes(String),
    /// Whether its sale is exempt from tax.
    Exempt(bool),
    /// The job it repeats.
    RepeatOf(Uuid),
}

/// A field of a garment lot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LotField {
    /// The job it belongs to.
    Job(Uuid),
    /// The garment.
    Garment(String),
    /// Its fabric.
    Fabric(Fabric),
    /// Its colour.
    Colour(Colour),
    /// Name of that colour.
    ColourName(String),
    /// Number of pieces of each size.
    Pieces(Vec<SizePieces>),
}
