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

/// Width and height of a box, of which only the ratio has a meaning.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AspectRatio {
    /// Its width.
    pub width: u16,
    /// Its height.
    pub height: u16,
}

/// The colours in which a print is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SketchColours {
    /// Of the garment.
    pub garment: Colour,
    /// Of the art, which is visible on the garment.
    pub art: Colour,
}

impl PrintSketch {
    /// The box that art at this location usually fills. Common practice, no source.
    pub fn shape(self) -> AspectRatio {
        let (width, height) = match self.location {
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
        };
        AspectRatio { width, height }
    }

    /// The garment's colour, and a colour for the art that is visible on it: the ink's colour if their
    /// contrast is at least 3:1, otherwise black or white.
    pub fn colours(self) -> SketchColours {
        let cloth = self.garment.unwrap_or(Colour::WHITE);
        let plain = if cloth.prefers_black_text() { Colour::BLACK } else { Colour::WHITE };
        let art = self.ink.filter(|ink| cloth.contrast(*ink) >= 3.0).unwrap_or(plain);
        SketchColours { garment: cloth, art }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn art_is_drawn_in_its_ink_where_that_is_visible() {
        let colour = |hex| Colour::from_hex(hex);
        let seen = |garment, ink| PrintSketch { garment, ink, ..PrintSketch::default() }.colours().art;
        assert_eq!(Some(seen(colour("#2f3e5c"), colour("#f2a65a"))), colour("#f2a65a"));
        assert_eq!(seen(colour("#2f3e5c"), colour("#1f2440")), Colour::WHITE);
        assert_eq!(seen(None, None), Colour::BLACK);
    }
}
