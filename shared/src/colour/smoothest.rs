//! The smoothest reflectance curve that has a given colour, for when no instrument measured one.

use super::spectrum::{WEIGHTS, WHITE, relative_xyz};
use super::{BANDS, Bands, Lab, Origin, Reflectance, ciede2000};

/// A reflectance reconstructed from a colour.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Smoothest {
    /// The curve, marked as reconstructed.
    pub reflectance: Reflectance,
    /// Difference between its colour and the colour asked for, CIEDE2000: 0 unless no matt surface can have that
    /// colour.
    pub miss: f64,
}

/// The reflectance with the smallest slope, every band strictly between 0 and 1, that has `colour` in daylight. If none
/// has (the colour is brighter and more saturated than reflected light allows), the nearest on the line toward grey. A
/// colour that is not [`Lab::is_sensible`] is replaced by mid grey.
///
/// Source: Burns, "Numerical methods for smoothest reflectance reconstruction", Color Research & Application 45(1),
/// 2020: reflectance (tanh z + 1)/2, least sum of squared steps of z, by Newton's method on the Lagrangian.
pub fn smoothest(colour: Lab) -> Smoothest {
    let sought = if colour.is_sensible() { colour } else { Lab::new(50.0, 0.0, 0.0) };
    let bands = solve(sought.to_relative()).unwrap_or_else(|| toward_grey(sought));
    let reflectance = Reflectance { bands, origin: Origin::Reconstructed };
    Smoothest { miss: ciede2000(sought, reflectance.lab()), reflectance }
}

/// The furthest colour on the line from grey to `colour` that a surface can have.
fn toward_grey(colour: Lab) -> Bands {
    let grey = Lab::new(colour.l.clamp(2.0, 99.0), 0.0, 0.0);
    let mut best = [grey.to_relative()[1]; BANDS];
    let (mut can, mut cannot) = (0.0, 1.0);
    for _ in 0..10 {
        let part = f64::midpoint(can, cannot);
        let between = |from: f64, to: f64| from + part * (to - from);
        let tried = Lab::new(between(grey.l, colour.l), between(0.0, colour.a), between(0.0, colour.b));
        if let Some(bands) = solve(tried.to_relative()) {
            (best, can) = (bands, part);
        } else {
            cannot = part;
        }
    }
    best
}

const UNKNOWN: usize = BANDS + 3;

/// Newton's method on the 31 bands and the three multipliers. `None` if it does not converge.
fn solve(xyz: [f64; 3]) -> Option<Bands> {
    if !xyz.iter().all(|value| (1e-5..1.2).contains(value)) {
        return None;
    }
    let start = xyz[1].clamp(0.001, 0.999);
    let mut z = [(start / (1.0 - start)).ln() / 2.0; BANDS];
    let mut multiplier = [0.0; 3];
    for _ in 0..60 {
        let t = z.map(f64::tanh);
        let bands = t.map(|t| f64::midpoint(t, 1.0));
        let seen = relative_xyz(&bands);
        let mut rows = vec![[0.0; UNKNOWN + 1]; UNKNOWN];
        for band in 0..BANDS {
            let flat = 1.0 - t[band] * t[band];
            let pull: f64 = (0..3).map(|c| weight(band, c) * multiplier[c]).sum();
            let neighbours = f64::from(u8::from(band > 0) + u8::from(band + 1 < BANDS));
            let mut slope = neighbours * z[band];
            if band > 0 {
                rows[band][band - 1] = -1.0;
                slope -= z[band - 1];
            }
            if band + 1 < BANDS {
                rows[band][band + 1] = -1.0;
                slope -= z[band + 1];
            }
            rows[band][band] = neighbours - flat * t[band] * pull;
            rows[band][UNKNOWN] = -(slope + 0.5 * flat * pull);
            for c in 0..3 {
                let move_by = 0.5 * flat * weight(band, c);
                rows[band][BANDS + c] = move_by;
                rows[BANDS + c][band] = move_by;
            }
        }
        for c in 0..3 {
            rows[BANDS + c][UNKNOWN] = xyz[c] - seen[c];
        }
        let step = eliminate(rows)?;
        let longest = step[..BANDS].iter().fold(0.0_f64, |most, by| most.max(by.abs()));
        if !longest.is_finite() {
            return None;
        }
        // A long first step could leave the region where the linear approximation holds.
        let part = (2.0 / longest).min(1.0);
        for (value, by) in z.iter_mut().zip(&step) {
            *value += part * by;
        }
        for (value, by) in multiplier.iter_mut().zip(&step[BANDS..]) {
            *value += part * by;
        }
        if longest < 1e-9 {
            let bands = z.map(|z| f64::midpoint(z.tanh(), 1.0));
            return bands.iter().all(|value| (0.0..=1.0).contains(value)).then_some(bands);
        }
    }
    None
}

fn weight(band: usize, c: usize) -> f64 {
    WEIGHTS[band][c] / WHITE[c]
}

/// Gaussian elimination with partial pivoting. `None` if the system is singular.
fn eliminate(mut rows: Vec<[f64; UNKNOWN + 1]>) -> Option<[f64; UNKNOWN]> {
    for column in 0..UNKNOWN {
        let pivot = (column..UNKNOWN).max_by(|a, b| rows[*a][column].abs().total_cmp(&rows[*b][column].abs()))?;
        rows.swap(column, pivot);
        let head = rows[column];
        if head[column].abs() < 1e-14 {
            return None;
        }
        for row in &mut rows[column + 1..] {
            let factor = row[column] / head[column];
            if factor != 0.0 {
                for index in column..=UNKNOWN {
                    row[index] -= factor * head[index];
                }
            }
        }
    }
    let mut out = [0.0; UNKNOWN];
    for column in (0..UNKNOWN).rev() {
        let known: f64 = (column + 1..UNKNOWN).map(|index| rows[column][index] * out[index]).sum();
        out[column] = (rows[column][UNKNOWN] - known) / rows[column][column];
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::Colour;
    use crate::colour::check_rows::{near, rows};

    /// Source: `ink_smoothest.csv`, by a general constrained minimiser (scipy's SLSQP).
    #[test]
    fn the_curve_is_the_one_a_general_minimiser_finds() {
        for row in rows(include_str!("../../tests/data/ink_smoothest.csv"), 12) {
            let [l, a, b] = row.numbers(["L", "a", "b"]);
            let found = smoothest(Lab::new(l, a, b));
            near(found.miss, 0.0, 1e-6);
            for (ours, theirs) in found.reflectance.bands.iter().zip(row.from("r400")) {
                near(*ours, theirs, 2e-5);
            }
        }
    }

    #[test]
    fn every_screen_colour_gets_a_curve_of_that_colour() {
        let mut worst = 0.0_f64;
        for code in (0..0x0100_0000_u32).step_by(70_001) {
            let [_, r, g, b] = code.to_be_bytes();
            let found = smoothest(Lab::of(Colour { rgb: [r, g, b] }));
            assert!(found.reflectance.bands.iter().all(|value| (0.0..=1.0).contains(value)));
            assert_eq!(found.reflectance.origin, Origin::Reconstructed);
            worst = worst.max(found.miss);
        }
        assert!(worst < 0.5, "{worst}");
    }

    #[test]
    fn an_impossible_colour_gets_the_nearest_with_its_difference() {
        let found = smoothest(Lab::new(90.0, 120.0, -120.0));
        assert!(found.miss > 5.0);
        assert!(found.reflectance.bands.iter().all(|value| (0.0..=1.0).contains(value)));
        assert!((found.reflectance.lab().l - 90.0).abs() < 5.0);
        for black_or_white in [Lab::new(0.0, 0.0, 0.0), Lab::new(100.0, 0.0, 0.0)] {
            assert!(smoothest(black_or_white).miss < 1.5);
        }
        let nonsense = smoothest(Lab::new(f64::NAN, 0.0, 0.0));
        assert!(nonsense.reflectance.bands.iter().all(|value| value.is_finite()));
    }
}
