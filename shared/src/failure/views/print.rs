//! A simplified picture of a print, for marking a place on it.

use crate::colour::Colour;
use crate::facts::Location;

/// A print on its garment.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct PrintSketch {
    /// The print location.
    pub location: Location,
    /// The garment's colour.
    pub garment: Option<Colour>,
    /// The ink's colour.
    pub ink: Option<Colour>,
}

impl PrintSketch {
    /// Width and height of the box that art at this location usually fills; only their ratio has a meaning.
    /// Common practice, no source.
    pub fn shape(self) -> (u16, u16) {
        match self.location {
            Location::FullFront => (12, 14),
            Location::FullBack => (12, 15),
            Location::CentreChest => (10, 7),
            Location::UpperBack => (11, 5),
            Location::InsideNeck => (4, 3),
            Location::Pocket => (4, 5),
            Location::LeftChest
            | Location::RightChest
            | Location::LeftSleeve
            | Location::RightSleeve
            | Location::Other => (1, 1),
        }
    }

    /// The garment's colour, and a colour for the art that is visible on it: the ink's colour if their
    /// contrast is at least 3:1, otherwise black or white.
    pub fn colours(self) -> (Colour, Colour) {
        let cloth = self.garment.unwrap_or(Colour::WHITE);
        let plain = if cloth.prefers_black_text() { Colour::BLACK } else { Colour::WHITE };
        (cloth, self.ink.filter(|ink| cloth.contrast(*ink) >= 3.0).unwrap_or(plain))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn art_is_drawn_in_its_ink_where_that_is_visible() {
        let colour = |hex| Colour::from_hex(hex);
        let seen = |garment, ink| PrintSketch { garment, ink, ..PrintSketch::default() }.colours().1;
        assert_eq!(Some(seen(colour("#2f3e5c"), colour("#f2a65a"))), colour("#f2a65a"));
        assert_eq!(seen(colour("#2f3e5c"), colour("#1f2440")), Colour::WHITE);
        assert_eq!(seen(None, None), Colour::BLACK);
    }
}
