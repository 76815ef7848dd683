//! A colour in CIE L*a*b*, and its conversions to XYZ, D50 and sRGB.

use super::Colour;
use super::srgb::{D65, encoded, linear_of, linear_of_xyz, times, xyz_of_linear};

/// XYZ of the D50 white, from xy = (0.3457, 0.3585).
pub const D50: [f64; 3] = [0.964_295_676_429_567_7, 1.0, 0.825_104_602_510_460_5];

/// Bradford adaptation from D65 to D50 (CSS Color 4; computed from those whites).
const TO_D50: [[f64; 3]; 3] = [
    [1.047_929_792_544_996_9, 0.022_946_870_601_609_666, -0.050_192_266_289_205_2],
    [0.029_627_808_770_055_8, 0.990_434_426_753_879_8, -0.017_073_799_063_418_79],
    [-0.009_243_040_646_204_511, 0.015_055_191_490_298_143, 0.751_874_281_428_137_2],
];

/// Bradford adaptation from D50 to D65.
const FROM_D50: [[f64; 3]; 3] = [
    [0.955_473_421_488_075_1, -0.023_098_454_948_764_575, 0.063_259_243_200_570_64],
    [-0.028_369_709_333_863_68, 1.009_995_398_081_304, 0.021_041_441_191_917_306],
    [0.012_314_014_864_481_975, -0.020_507_649_298_898_943, 1.330_365_926_242_123_7],
];

/// CIE 1976 L*a*b* under D65 and the 1931 observer (2°). The crate compares all colours in it.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct Lab {
    /// Lightness, 0 black to 100 white.
    pub l: f64,
    /// Green below 0, red above.
    pub a: f64,
    /// Blue below 0, yellow above.
    pub b: f64,
}

impl Lab {
    /// From L*, a* and b*.
    pub const fn new(l: f64, a: f64, b: f64) -> Self {
        Self { l, a, b }
    }

    /// Of an sRGB colour.
    pub fn of(colour: Colour) -> Self {
        Self::from_xyz(xyz_of_linear(linear_of(colour)))
    }

    /// From XYZ under D65, white at Y = 1.
    pub fn from_xyz(xyz: [f64; 3]) -> Self {
        Self::from_relative([xyz[0] / D65[0], xyz[1] / D65[1], xyz[2] / D65[2]])
    }

    /// From XYZ divided by the white's XYZ. CIE 15, 8.2.1.
    pub fn from_relative(xyz: [f64; 3]) -> Self {
        let [x, y, z] = xyz.map(|t| if t > EDGE { t.cbrt() } else { t * SLOPE + 4.0 / 29.0 });
        Self { l: 116.0 * y - 16.0, a: 500.0 * (x - y), b: 200.0 * (y - z) }
    }

    /// XYZ divided by the white's XYZ.
    pub fn to_relative(self) -> [f64; 3] {
        let y = (self.l + 16.0) / 116.0;
        let back = |f: f64| if f > 6.0 / 29.0 { f * f * f } else { (f - 4.0 / 29.0) / SLOPE };
        [back(y + self.a / 500.0), back(y), back(y - self.b / 200.0)]
    }

    /// XYZ under D65, white at Y = 1.
    pub fn to_xyz(self) -> [f64; 3] {
        let [x, y, z] = self.to_relative();
        [x * D65[0], y * D65[1], z * D65[2]]
    }

    /// From L*, a*, b* under D50, as instruments of the print trade report them; adapted by Bradford.
    pub fn from_d50([l, a, b]: [f64; 3]) -> Self {
        let [x, y, z] = Self { l, a, b }.to_relative();
        Self::from_xyz(times(&FROM_D50, [x * D50[0], y * D50[1], z * D50[2]]))
    }

    /// L*, a*, b* under D50.
    pub fn to_d50(self) -> [f64; 3] {
        let [x, y, z] = times(&TO_D50, self.to_xyz());
        let Self { l, a, b } = Self::from_relative([x / D50[0], y / D50[1], z / D50[2]]);
        [l, a, b]
    }

    /// Chroma: distance from grey.
    pub fn chroma(self) -> f64 {
        self.a.hypot(self.b)
    }

    /// Hue angle, 0 to 360 degrees: red 0, yellow 90, green 180, blue 270.
    pub fn hue(self) -> f64 {
        let degrees = self.b.atan2(self.a).to_degrees();
        if degrees < 0.0 { degrees + 360.0 } else { degrees }
    }

    /// The nearest sRGB colour of 8 bits a channel; channels outside the gamut are clamped.
    pub fn to_colour(self) -> Colour {
        let channel = |light: f64| (encoded(light.clamp(0.0, 1.0)) * 255.0).round() as u8;
        Colour { rgb: linear_of_xyz(self.to_xyz()).map(channel) }
    }

    /// Whether an instrument could have read it: all finite, L* 0 to 100, a* and b* within ±150 (our own).
    pub fn is_sensible(self) -> bool {
        (0.0..=100.0).contains(&self.l) && self.a.abs() <= 150.0 && self.b.abs() <= 150.0
    }
}

const EDGE: f64 = 216.0 / 24389.0;
const SLOPE: f64 = 841.0 / 108.0;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::{near, rows};
    use crate::colour::ciede2000;
    use palette::{FromColor, Srgb};

    /// Source: `shared/tests/data/colour_srgb_xyz_lab.csv`.
    #[test]
    fn screen_colours_become_lab_under_both_lights() {
        for row in rows(include_str!("../../tests/data/colour_srgb_xyz_lab.csv"), 12) {
            let lab = Lab::of(Colour::from_hex(row.text("hex")).unwrap());
            let [l, a, b] = row.numbers(["L_D65", "a_D65", "b_D65"]);
            near(lab.l, l, 2e-6);
            near(lab.a, a, 2e-6);
            near(lab.b, b, 2e-6);
            let d50 = lab.to_d50();
            let expected = row.numbers(["L_D50_bradford", "a_D50_bradford", "b_D50_bradford"]);
            for (ours, theirs) in d50.into_iter().zip(expected) {
                near(ours, theirs, 2e-6);
            }
            let back = Lab::from_d50(d50);
            near(back.l, lab.l, 1e-9);
            near(back.a, lab.a, 1e-9);
            near(back.b, lab.b, 1e-9);
        }
    }

    #[test]
    fn every_screen_colour_comes_back_from_lab() {
        for code in (0..0x0100_0000_u32).step_by(4099) {
            let [_, r, g, b] = code.to_be_bytes();
            let colour = Colour { rgb: [r, g, b] };
            assert_eq!(Lab::of(colour).to_colour(), colour);
            assert!(Lab::of(colour).shows_on_screen());
        }
        assert!(!Lab::new(60.0, -90.0, 60.0).shows_on_screen());
    }

    /// Checked against another implementation: the palette crate.
    #[test]
    fn another_library_agrees() {
        for code in (0..0x0100_0000_u32).step_by(70_001) {
            let [_, r, g, b] = code.to_be_bytes();
            let theirs =
                palette::Lab::<palette::white_point::D65, f64>::from_color(Srgb::new(r, g, b).into_format::<f64>());
            // It uses the whites of ASTM E308, slightly different from those of the xy coordinates.
            let ours = Lab::of(Colour { rgb: [r, g, b] });
            assert!(ciede2000(ours, Lab::new(theirs.l, theirs.a, theirs.b)) < 0.03);
        }
    }
}
