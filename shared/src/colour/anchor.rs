//! Corrects a predicted mixture by a reading of the pot: scales its absorption until it looks as it was read.

use super::difference::parts2000;
use super::{BANDS, Constants, Lab, Reflectance, STEP_NM, Viewing, ciede2000};

/// A mixture whose absorption was scaled so that it looks as it was read.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Anchored {
    /// The corrected absorption and scattering.
    pub constants: Constants,
    /// Difference between the reading and the corrected mixture, CIEDE2000. Large if no ink with this scattering can
    /// have the colour read.
    pub residual: f64,
    /// Difference between the reading and the uncorrected mixture, CIEDE2000.
    pub shift: f64,
}

/// Scales the mixture's absorption until it looks like the colour read. The factor varies smoothly over the bands:
/// three coefficients for the three numbers of a colour. Our own; least squares by the Gauss-Newton method, damped.
pub fn anchored_to_colour(ink: &Constants, seen: Viewing, read: Lab) -> Anchored {
    let bent = |p: [f64; 3]| {
        let mut ink = *ink;
        for (band, k) in ink.k.iter_mut().enumerate() {
            // From −1 at 400 nm to 1 at 700.
            let x = band as f64 * STEP_NM / 150.0 - 1.0;
            *k = (*k + 1e-6) * (p[0] + p[1] * x + p[2] * (2.0 * x * x - 1.0)).exp();
        }
        ink
    };
    let look = |p: [f64; 3]| seen.look(&bent(p)).lab();
    let cost = |p: [f64; 3]| {
        let off = ciede2000(read, look(p));
        off * off + p.iter().map(|by| (HOLD * by).powi(2)).sum::<f64>()
    };
    let mut p = [0.0; 3];
    let (mut off, mut damping) = (cost(p), 1e-3);
    for _ in 0..40 {
        let here = parts2000(read, look(p));
        let along = [0, 1, 2].map(|index| {
            let mut there = p;
            there[index] += 1e-5;
            let there = parts2000(read, look(there));
            [0, 1, 2].map(|part| (there[part] - here[part]) / 1e-5)
        });
        let before = off;
        for _ in 0..8 {
            let mut h = [[0.0; 4]; 3];
            for row in 0..3 {
                for column in 0..3 {
                    h[row][column] = (0..3).map(|part| along[row][part] * along[column][part]).sum();
                }
                h[row][row] += HOLD * HOLD;
                h[row][row] *= 1.0 + damping;
                h[row][3] = -(0..3).map(|part| along[row][part] * here[part]).sum::<f64>() - HOLD * HOLD * p[row];
            }
            let step = three(h);
            let tried = [0, 1, 2].map(|index| (p[index] + step[index].clamp(-1.0, 1.0)).clamp(-6.0, 6.0));
            let there = cost(tried);
            if there < off {
                (p, off) = (tried, there);
                damping = (damping * 0.2).max(1e-9);
                break;
            }
            damping *= 10.0;
        }
        if before - off <= 1e-12 {
            break;
        }
    }
    let constants = bent(p);
    let residual = ciede2000(read, seen.look(&constants).lab());
    Anchored { constants, residual, shift: ciede2000(read, seen.look(ink).lab()) }
}

/// Weight that keeps the factor near 1 where the reading does not determine it.
const HOLD: f64 = 0.01;

/// Solves three equations in three unknowns (positive definite); zeros if they are singular.
fn three(mut rows: [[f64; 4]; 3]) -> [f64; 3] {
    for column in 0..3 {
        let head = rows[column];
        if head[column].abs() < 1e-300 {
            return [0.0; 3];
        }
        for row in rows.iter_mut().skip(column + 1) {
            let factor = row[column] / head[column];
            for index in column..4 {
                row[index] -= factor * head[index];
            }
        }
    }
    let z = rows[2][3] / rows[2][2];
    let y = (rows[1][3] - rows[1][2] * z) / rows[1][1];
    [(rows[0][3] - rows[0][1] * y - rows[0][2] * z) / rows[0][0], y, z]
}

/// Scales the mixture's absorption band by band until it reflects what an instrument read. More absorption always means
/// less reflected light, so each band is found by bisection.
pub fn anchored_to_curve(ink: &Constants, seen: Viewing, read: &Reflectance) -> Anchored {
    let (mut low, mut high) = ([-12.0_f64; BANDS], [8.0_f64; BANDS]);
    let at = |ln_k: &[f64; BANDS]| Constants { k: ln_k.map(f64::exp), s: ink.s, origin: ink.origin.and(read.origin) };
    let middle = |low: &[f64; BANDS], high: &[f64; BANDS]| std::array::from_fn(|b| f64::midpoint(low[b], high[b]));
    for _ in 0..48 {
        let tried: [f64; BANDS] = middle(&low, &high);
        let look = seen.look(&at(&tried));
        for band in 0..BANDS {
            if look.bands[band] > read.bands[band] {
                low[band] = tried[band];
            } else {
                high[band] = tried[band];
            }
        }
    }
    let constants = at(&middle(&low, &high));
    let residual = ciede2000(read.lab(), seen.look(&constants).lab());
    Anchored { constants, residual, shift: ciede2000(read.lab(), seen.look(ink).lab()) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::near;
    use crate::colour::{Origin, Surface};

    fn ink(strength: f64) -> Constants {
        let bump = |at: f64, band: usize| (-((band as f64 - at) / 6.0).powi(2)).exp();
        Constants {
            k: std::array::from_fn(|band| strength * (0.05 + 2.0 * bump(9.0, band) + 0.3 * bump(25.0, band))),
            s: [0.8; BANDS],
            origin: Origin::Measured,
        }
    }

    const POT: Viewing = Viewing::InBulk(Surface::NONE);

    #[test]
    fn a_pot_stronger_than_its_recipe_is_moved_to_its_reading() {
        let read = POT.look(&ink(1.25));
        for anchored in [anchored_to_colour(&ink(1.0), POT, read.lab()), anchored_to_curve(&ink(1.0), POT, &read)] {
            assert!(anchored.shift > 1.0);
            assert!(anchored.residual < 0.02, "{}", anchored.residual);
        }
        let by_curve = anchored_to_curve(&ink(1.0), POT, &read);
        for (ours, theirs) in by_curve.constants.k.iter().zip(ink(1.25).k) {
            near(ours / theirs, 1.0, 1e-6);
        }
    }

    #[test]
    fn a_reading_that_agrees_moves_nothing() {
        let anchored = anchored_to_colour(&ink(1.0), POT, POT.look(&ink(1.0)).lab());
        near(anchored.shift, 0.0, 1e-9);
        for (ours, theirs) in anchored.constants.k.iter().zip(ink(1.0).k) {
            near(ours / theirs, 1.0, 1e-3);
        }
    }

    #[test]
    fn an_impossible_reading_leaves_a_difference() {
        let black_shirt = Reflectance::flat(0.03);
        let printed = Viewing::Printed(crate::colour::Print {
            garment: &black_shirt,
            underbase: None,
            hits: 1,
            films_per_hit: 0.2,
            surface: Surface::NONE,
        });
        let anchored = anchored_to_colour(&ink(1.0), printed, Lab::new(95.0, 0.0, 0.0));
        assert!(anchored.residual > 20.0);
        assert!(anchored.constants.k.iter().all(|k| k.is_finite()));
    }
}
