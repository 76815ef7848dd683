//! What can fail on the press, and the remedies.

use crate::pack::Pack;
use crate::run::MisprintCause;
use serde::{Deserialize, Serialize};

/// The kind of a failure. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum FailureKind {
    /// A hole in the stencil that lets ink through.
    Pinhole,
    /// Mesh that lets no ink through: dried ink, lint.
    Clog,
    /// A spot on every print.
    Spot,
    /// The stencil comes off.
    Breakdown,
    /// The mesh tore.
    Tear,
    /// An old image is printed along with the new one.
    Ghost,
    /// The registration drifts.
    RegistrationDrift,
    /// Anything else.
    Other,
}

impl FailureKind {
    /// All kinds, in the order in which they are offered.
    pub const ALL: [Self; 8] = [
        Self::Pinhole,
        Self::Clog,
        Self::Spot,
        Self::Breakdown,
        Self::Tear,
        Self::Ghost,
        Self::RegistrationDrift,
        Self::Other,
    ];

    /// The misprint cause under which its spoiled pieces are counted.
    pub fn spoils_as(self) -> MisprintCause {
        match self {
            Self::Pinhole | Self::Spot => MisprintCause::Pinhole,
            Self::RegistrationDrift => MisprintCause::Registration,
            Self::Clog | Self::Breakdown | Self::Tear | Self::Ghost | Self::Other => MisprintCause::Screen,
        }
    }
}

/// What is done about a failure. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum Remedy {
    /// Tape over it.
    Tape,
    /// Block it out.
    BlockOut,
    /// Clean the screen.
    Clean,
    /// Burn a new screen.
    BurnAgain,
}

impl Remedy {
    /// All remedies, the quickest first.
    pub const ALL: [Self; 4] = [Self::Tape, Self::BlockOut, Self::Clean, Self::BurnAgain];
}

/// A place on the print, in thousandths of the art's box: from its left edge, as seen by somebody looking
/// at the print, and from its top edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Pack)]
#[serde(deny_unknown_fields)]
pub struct Mark {
    /// From the left edge.
    pub x: u16,
    /// From the top edge.
    pub y: u16,
}

impl Mark {
    /// The mark at a share of the width and height; values outside 0 to 1 are clamped.
    pub fn at(x: f64, y: f64) -> Self {
        let permille = |share: f64| (share.clamp(0.0, 1.0) * 1000.0).round() as u16;
        Self { x: permille(x), y: permille(y) }
    }

    /// The ninth of the box it is in: column from the left and row from the top, each 0 to 2.
    pub fn ninth(self) -> (usize, usize) {
        let third = |permille: u16| usize::from(permille.min(999) / 334);
        (third(self.x), third(self.y))
    }

    /// Moved by hundredths of the width and height, but kept inside the box.
    pub fn moved(self, right: i32, down: i32) -> Self {
        let by = |permille: u16, step: i32| (i32::from(permille) + step * 10).clamp(0, 1000) as u16;
        Self { x: by(self.x, right), y: by(self.y, down) }
    }

    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        self.x <= 1000 && self.y <= 1000
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mark_is_in_one_of_nine_parts_and_stays_inside() {
        let at = |x, y| Mark { x, y }.ninth();
        assert_eq!([at(0, 0), at(333, 334), at(667, 668), at(1000, 1000)], [(0, 0), (0, 1), (1, 2), (2, 2)]);
        assert_eq!(Mark { x: 995, y: 3 }.moved(1, -1), Mark { x: 1000, y: 0 });
        assert_eq!(Mark { x: 500, y: 500 }.moved(-2, 5), Mark { x: 480, y: 550 });
    }
}
