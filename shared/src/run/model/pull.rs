//! A count at the press.

use crate::codec::Encode;
use crate::facts::Size;
use crate::time::WallTime;

/// Pieces pulled at one time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub struct Pull {
    /// Wall time.
    pub at: WallTime,
    /// Number of pieces.
    pub pieces: u32,
    /// Size of the pieces; `None` if sizes are not counted.
    pub size: Option<Size>,
}
