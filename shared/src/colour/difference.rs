//! Colour difference: CIEDE2000 and CMC(l:c).

use super::Lab;

/// CIEDE2000 between two colours, all parametric factors 1. Symmetric; 0 is the same colour, about 1 a difference that
/// a trained eye just sees side by side.
///
/// Source: Sharma, Wu, Dalal, "The CIEDE2000 Color-Difference Formula: Implementation Notes, Supplementary Test Data,
/// and Mathematical Observations", Color Research & Application 30(1), 2005; ISO/CIE 11664-6.
///
/// ```
/// # use lastpull_core::colour::{Lab, ciede2000};
/// // The first pair of the published test data.
/// let difference = ciede2000(Lab::new(50.0, 2.6772, -79.7751), Lab::new(50.0, 0.0, -82.7485));
/// assert!((difference - 2.0425).abs() < 1e-4);
/// ```
pub fn ciede2000(one: Lab, other: Lab) -> f64 {
    let [l, c, h] = parts2000(one, other);
    (l * l + c * c + h * h).sqrt()
}

/// CIEDE2000 from the first to the second colour as three numbers, whose root of summed squares it is: lightness,
/// chroma and hue, each divided by its weighting function, the formula's rotation term for blues folded into the last
/// two.
pub(super) fn parts2000(one: Lab, other: Lab) -> [f64; 3] {
    let weights = Weights2000::between(one, other);
    weights.apart(one, other)
}

/// The weighting functions of CIEDE2000 around two colours. The solver holds them constant within one of its steps.
#[derive(Clone, Copy)]
pub(super) struct Weights2000 {
    /// Factor on a*, which stretches it for colours near grey.
    stretch: f64,
    lightness: f64,
    chroma: f64,
    hue: f64,
    rotation: f64,
}

impl Weights2000 {
    pub(super) fn between(one: Lab, other: Lab) -> Self {
        let seventh = f64::midpoint(one.chroma(), other.chroma()).powi(7);
        let grey = 0.5 * (1.0 - (seventh / (seventh + TO_SEVENTH)).sqrt());
        let stretch = 1.0 + grey;
        let (p, q) = (Polar::of(one, stretch), Polar::of(other, stretch));
        let lightness = f64::midpoint(one.l, other.l);
        let chroma = f64::midpoint(p.chroma, q.chroma);
        let hue = middle_hue(p, q);

        let cosine = |degrees: f64| degrees.to_radians().cos();
        let t = 1.0 - 0.17 * cosine(hue - 30.0) + 0.24 * cosine(2.0 * hue) + 0.32 * cosine(3.0 * hue + 6.0)
            - 0.20 * cosine(4.0 * hue - 63.0);
        let from_mid_grey = (lightness - 50.0) * (lightness - 50.0);
        let bend = 30.0 * (-((hue - 275.0) / 25.0).powi(2)).exp();
        let seventh = chroma.powi(7);
        Self {
            stretch,
            lightness: 1.0 + 0.015 * from_mid_grey / (20.0 + from_mid_grey).sqrt(),
            chroma: 1.0 + 0.045 * chroma,
            hue: 1.0 + 0.015 * chroma * t,
            rotation: -(2.0 * bend).to_radians().sin() * 2.0 * (seventh / (seventh + TO_SEVENTH)).sqrt(),
        }
    }

    pub(super) fn apart(self, one: Lab, other: Lab) -> [f64; 3] {
        let (p, q) = (Polar::of(one, self.stretch), Polar::of(other, self.stretch));
        let hue = 2.0 * (p.chroma * q.chroma).sqrt() * (turn(p, q) / 2.0).to_radians().sin() / self.hue;
        let chroma = (q.chroma - p.chroma) / self.chroma;
        let half = self.rotation / 2.0;
        // c² + h² + R·c·h = (c + R·h/2)² + h²·(1 − R²/4); R is within 2 by its definition.
        [(other.l - one.l) / self.lightness, chroma + half * hue, hue * (1.0 - half * half).max(0.0).sqrt()]
    }
}

/// 25 to the seventh.
const TO_SEVENTH: f64 = 6_103_515_625.0;

#[derive(Clone, Copy)]
struct Polar {
    chroma: f64,
    hue: f64,
}

impl Polar {
    fn of(lab: Lab, stretch: f64) -> Self {
        let lab = Lab { a: lab.a * stretch, ..lab };
        Self { chroma: lab.chroma(), hue: lab.hue() }
    }
}

/// Hue angle from one to the other the short way, -180 to 180 degrees; 0 if either is grey.
fn turn(one: Polar, other: Polar) -> f64 {
    if one.chroma * other.chroma == 0.0 {
        return 0.0;
    }
    match other.hue - one.hue {
        over if over > 180.0 => over - 360.0,
        under if under < -180.0 => under + 360.0,
        between => between,
    }
}

fn middle_hue(one: Polar, other: Polar) -> f64 {
    let sum = one.hue + other.hue;
    if one.chroma * other.chroma == 0.0 {
        sum
    } else if (one.hue - other.hue).abs() <= 180.0 {
        sum / 2.0
    } else if sum < 360.0 {
        f64::midpoint(sum, 360.0)
    } else {
        (sum - 360.0) / 2.0
    }
}

/// CMC(l:c) of a sample against a standard, with l = `lightness` and c = `chroma`. Not symmetric: the standard sets the
/// tolerance. Textiles use (2:1) for acceptability, (1:1) for perceptibility.
///
/// Source: Clarke, McDonald, Rigg, J. Soc. Dyers Colourists 100, 1984; ISO 105-J03, AATCC TM173.
///
/// ```
/// # use lastpull_core::colour::{Lab, cmc};
/// let (standard, sample) = (Lab::new(10.0, 0.0, 0.0), Lab::new(11.0, 0.0, 0.0));
/// assert!((cmc(standard, sample, 2.0, 1.0) - 0.978_473_58).abs() < 1e-8);
/// assert!((cmc(standard, sample, 1.0, 1.0) - 1.956_947_16).abs() < 1e-8);
/// ```
pub fn cmc(standard: Lab, sample: Lab, lightness: f64, chroma: f64) -> f64 {
    let (c, hue) = (standard.chroma(), standard.hue());
    let sl = if standard.l < 16.0 { 0.511 } else { 0.040_975 * standard.l / (1.0 + 0.017_65 * standard.l) };
    let sc = 0.0638 * c / (1.0 + 0.0131 * c) + 0.638;
    let fourth = c.powi(4);
    let f = (fourth / (fourth + 1900.0)).sqrt();
    let t = if (164.0..=345.0).contains(&hue) {
        0.56 + (0.2 * (hue + 168.0).to_radians().cos()).abs()
    } else {
        0.36 + (0.4 * (hue + 35.0).to_radians().cos()).abs()
    };
    let sh = sc * (f * t + 1.0 - f);

    let dc = sample.chroma() - c;
    let (da, db) = (sample.a - standard.a, sample.b - standard.b);
    let dh_squared = (da * da + db * db - dc * dc).max(0.0);
    let (dl, dc) = ((sample.l - standard.l) / (lightness * sl), dc / (chroma * sc));
    (dl * dl + dc * dc + dh_squared / (sh * sh)).sqrt()
}

/// CMC(2:1), the textile trade's acceptability tolerance. Not symmetric, see [`cmc`].
pub fn cmc_2_1(standard: Lab, sample: Lab) -> f64 {
    cmc(standard, sample, 2.0, 1.0)
}

impl Lab {
    /// Whether a screen can show it to within half a unit of CIEDE2000, about what an eye just misses (our own limit).
    /// Otherwise a swatch is only the nearest colour.
    pub fn shows_on_screen(self) -> bool {
        ciede2000(self, Self::of(self.to_colour())) <= 0.5
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::{Row, near, rows};

    fn pair(row: &Row, names: [&str; 6]) -> (Lab, Lab) {
        let [l, a, b, m, c, d] = row.numbers(names);
        (Lab::new(l, a, b), Lab::new(m, c, d))
    }

    const PAIR: [&str; 6] = ["L1", "a1", "b1", "L2", "a2", "b2"];

    /// Source: Sharma, Wu, Dalal 2005, Table 1, all 34 pairs.
    #[test]
    fn all_published_pairs_agree_in_both_directions() {
        for row in rows(include_str!("../../tests/data/colour_ciede2000_sharma34.csv"), 34) {
            let (one, other) = pair(&row, PAIR);
            near(ciede2000(one, other), row.number("dE00_published_4dp"), 1e-4);
            near(ciede2000(one, other), row.number("dE00_colour_science_10dp"), 1e-9);
            near(ciede2000(one, other), ciede2000(other, one), 1e-12);
        }
    }

    /// Computed with two libraries that agree to 3e-13.
    #[test]
    fn far_and_near_pairs_agree_with_two_libraries() {
        for row in rows(include_str!("../../tests/data/colour_deltaE_20_random_pairs.csv"), 10) {
            let (one, other) = pair(&row, PAIR);
            near(ciede2000(one, other), row.number("dE00"), 1e-8);
            near(cmc_2_1(one, other), row.number("dECMC_2_1"), 1e-8);
            near(cmc(one, other, 1.0, 1.0), row.number("dECMC_1_1"), 1e-8);
            near(cmc_2_1(other, one), row.number("dECMC_2_1_swapped"), 1e-8);
        }
    }

    /// Source: ISO 105-J03 as two implementations compute it, on both sides of the switch at L* 16.
    #[test]
    fn textile_tolerance_agrees_on_both_sides_of_its_switches() {
        for row in rows(include_str!("../../tests/data/ink_cmc_iso105j03_checks.csv"), 9) {
            let (standard, sample) = pair(&row, ["L_ref", "a_ref", "b_ref", "L_smp", "a_smp", "b_smp"]);
            near(cmc_2_1(standard, sample), row.number("dECMC_2_1"), 1e-8);
            near(cmc(standard, sample, 1.0, 1.0), row.number("dECMC_1_1"), 1e-8);
        }
    }
}
