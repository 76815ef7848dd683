//! An sRGB colour, as a phone shows it.

use crate::codec::{Encode, Reader};
use palette::{FromColor, Lab, Srgb};
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;

/// An sRGB colour of 8 bits a channel (IEC 61966-2-1). A likeness for a screen, not a measurement.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Colour {
    /// Red, green, blue.
    pub rgb: [u8; 3],
}

impl Colour {
    /// Black ink, black shirts.
    pub const BLACK: Self = Self { rgb: [0x1c, 0x1b, 0x1a] };
    /// White ink, white shirts.
    pub const WHITE: Self = Self { rgb: [0xff, 0xff, 0xff] };

    /// From `#rrggbb`. `None` for anything else.
    ///
    /// ```
    /// # use lastpull_core::colour::Colour;
    /// assert_eq!(Colour::from_hex("#1C1b1A"), Some(Colour::BLACK));
    /// assert_eq!(Colour::from_hex("1c1b1a"), None);
    /// ```
    pub fn from_hex(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('#')?;
        if digits.len() != 6 || !digits.bytes().all(|b| b.is_ascii_hexdigit()) {
            return None;
        }
        let [_, r, g, b] = u32::from_str_radix(digits, 16).ok()?.to_be_bytes();
        Some(Self { rgb: [r, g, b] })
    }

    /// CIE L*, 0 black to 100 white, under D65: how light it looks.
    pub fn lightness(self) -> f64 {
        let [r, g, b] = self.rgb.map(|channel| f64::from(channel) / 255.0);
        Lab::<palette::white_point::D65, f64>::from_color(Srgb::new(r, g, b)).l
    }

    /// Relative luminance, 0 to 1 (WCAG 2.2, "relative luminance"; IEC 61966-2-1).
    fn luminance(self) -> f64 {
        let [r, g, b] = self.rgb.map(|channel| f64::from(channel) / 255.0);
        let linear = Srgb::new(r, g, b).into_linear();
        0.2126 * linear.red + 0.7152 * linear.green + 0.0722 * linear.blue
    }

    /// Contrast ratio, 1 to 21 (WCAG 2.2, "contrast ratio"). Symmetric.
    pub fn contrast(self, other: Self) -> f64 {
        let (a, b) = (self.luminance() + 0.05, other.luminance() + 0.05);
        if a > b { a / b } else { b / a }
    }

    /// Whether black text is more readable on it than white text.
    pub fn prefers_black_text(self) -> bool {
        self.contrast(Self::BLACK) >= self.contrast(Self::WHITE)
    }
}

impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [r, g, b] = self.rgb;
        write!(f, "#{r:02x}{g:02x}{b:02x}")
    }
}

impl Encode for Colour {
    fn encode(&self, out: &mut Vec<u8>) {
        self.rgb.encode(out);
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        Self { rgb: Encode::decode(from) }
    }
}

impl Serialize for Colour {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if serializer.is_human_readable() { serializer.collect_str(self) } else { self.rgb.serialize(serializer) }
    }
}

impl<'de> Deserialize<'de> for Colour {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        if deserializer.is_human_readable() {
            let text = String::deserialize(deserializer)?;
            Self::from_hex(&text).ok_or_else(|| D::Error::custom("not #rrggbb"))
        } else {
            Ok(Self { rgb: <[u8; 3]>::deserialize(deserializer)? })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn contrast_agrees_with_the_accessibility_guidelines() {
        let black = Colour { rgb: [0; 3] };
        assert!((black.contrast(Colour::WHITE) - 21.0).abs() < 1e-9);
        // #767676 on white: the well-known grey that just passes 4.5 to 1 (WCAG 2.2, G18).
        let grey = Colour { rgb: [0x76; 3] };
        assert!((4.5..4.6).contains(&grey.contrast(Colour::WHITE)));
    }

    #[test]
    fn hex_reads_back_and_nonsense_does_not_read() {
        assert_eq!(Colour::from_hex("#0a80FF").unwrap().to_string(), "#0a80ff");
        for text in ["", "#fff", "0a80ff", "#0a80fg", "#0a80ff0", "#é0ff0"] {
            assert_eq!(Colour::from_hex(text), None, "{text}");
        }
    }

    /// Source: `shared/tests/data/colour_srgb_xyz_lab.csv`, columns hex and Lab D65.
    #[test]
    fn lightness_agrees_with_the_computed_rows() {
        let rows = include_str!("../../tests/data/colour_srgb_xyz_lab.csv");
        let mut lines = rows.lines();
        let header: Vec<&str> = lines.next().unwrap().split(',').collect();
        let at = |name: &str| header.iter().position(|cell| *cell == name).unwrap();
        let (hex, l) = (at("hex"), at("L_D65"));
        let mut read = 0;
        for row in lines {
            let cells: Vec<&str> = row.split(',').collect();
            let colour = Colour::from_hex(cells[hex]).unwrap();
            let expected: f64 = cells[l].parse().unwrap();
            assert!((colour.lightness() - expected).abs() < 0.01, "{row} {}", colour.lightness());
            read += 1;
        }
        assert_eq!(read, 12);
    }
}
