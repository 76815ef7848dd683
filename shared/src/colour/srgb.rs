//! Conversions between encoded sRGB, linear light and CIE XYZ under D65.

use super::Colour;

/// Linear sRGB to XYZ with white at Y = 1, from the primaries and D65 xy = (0.3127, 0.3290), so that
/// greys come out neutral (IEC 61966-2-1; unrounded).
const TO_XYZ: [[f64; 3]; 3] = [
    [0.412_390_799_265_959_34, 0.357_584_339_383_877_96, 0.180_480_788_401_834_3],
    [0.212_639_005_871_510_27, 0.715_168_678_767_755_9, 0.072_192_315_360_733_71],
    [0.019_330_818_715_591_825, 0.119_194_779_794_625_95, 0.950_532_152_249_660_7],
];

/// XYZ to linear sRGB: the inverse of `TO_XYZ`.
const FROM_XYZ: [[f64; 3]; 3] = [
    [3.240_969_941_904_522, -1.537_383_177_570_094, -0.498_610_760_293_003_4],
    [-0.969_243_636_280_879_6, 1.875_967_501_507_720_2, 0.041_555_057_407_175_59],
    [0.055_630_079_696_993_66, -0.203_976_958_888_976_52, 1.056_971_514_242_878_6],
];

/// XYZ of the D65 white.
pub const D65: [f64; 3] = [0.950_455_927_051_671_6, 1.0, 1.089_057_750_759_878_4];

/// A matrix times a vector.
pub(super) fn times(matrix: &[[f64; 3]; 3], [x, y, z]: [f64; 3]) -> [f64; 3] {
    matrix.map(|[a, b, c]| a * x + b * y + c * z)
}

/// Linear light, 0 to 1, of an encoded channel, 0 to 1. IEC 61966-2-1.
pub fn linear(encoded: f64) -> f64 {
    if encoded <= 0.04045 { encoded / 12.92 } else { ((encoded + 0.055) / 1.055).powf(2.4) }
}

/// Encoded channel of linear light. IEC 61966-2-1. Values below 0 and above 1 are not clamped, so that colours outside
/// the gamut can be distinguished.
pub fn encoded(linear: f64) -> f64 {
    if linear <= 0.003_130_8 { linear * 12.92 } else { 1.055 * linear.powf(1.0 / 2.4) - 0.055 }
}

/// XYZ under D65, white at Y = 1, of linear sRGB.
pub fn xyz_of_linear(rgb: [f64; 3]) -> [f64; 3] {
    times(&TO_XYZ, rgb)
}

/// Linear sRGB of XYZ under D65; outside 0 to 1 for colours outside the sRGB gamut.
pub fn linear_of_xyz(xyz: [f64; 3]) -> [f64; 3] {
    times(&FROM_XYZ, xyz)
}

/// Linear light of a colour of 8 bits a channel.
pub fn linear_of(colour: Colour) -> [f64; 3] {
    colour.rgb.map(|channel| linear(f64::from(channel) / 255.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::{near, rows};
    use serde_json::Value;

    /// Source: `shared/tests/data/colour_srgb_xyz_lab.csv`.
    #[test]
    fn screen_colours_become_light_and_xyz() {
        for row in rows(include_str!("../../tests/data/colour_srgb_xyz_lab.csv"), 12) {
            let rgb = linear_of(Colour::from_hex(row.text("hex")).unwrap());
            for (channel, name) in rgb.into_iter().zip(["lin_R", "lin_G", "lin_B"]) {
                near(channel, row.number(name), 6e-11);
                near(linear(encoded(channel)), channel, 1e-12);
            }
            for (value, name) in xyz_of_linear(rgb).into_iter().zip(["X_D65", "Y_D65", "Z_D65"]) {
                near(value, row.number(name), 6e-9);
            }
            for (there, back) in rgb.into_iter().zip(linear_of_xyz(xyz_of_linear(rgb))) {
                near(back, there, 1e-12);
            }
        }
    }

    /// Source: `shared/tests/data/colour_matrices.json` (IEC 61966-2-1, from the primaries).
    #[test]
    fn the_matrices_agree_with_the_primaries() {
        let published: Value = serde_json::from_str(include_str!("../../tests/data/colour_matrices.json")).unwrap();
        for (name, ours) in [("derived_from_primaries_RGB_to_XYZ", TO_XYZ), ("derived_XYZ_to_RGB", FROM_XYZ)] {
            for (row, line) in ours.iter().enumerate() {
                for (column, value) in line.iter().enumerate() {
                    near(*value, published[name][row][column].as_f64().unwrap(), 1e-14);
                }
            }
        }
        for (at, value) in D65.into_iter().enumerate() {
            near(value, published["white_D65_XYZ"][at].as_f64().unwrap(), 1e-14);
        }
    }
}
