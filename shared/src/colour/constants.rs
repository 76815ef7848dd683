//! Kubelka-Munk constants of an ink: absorption and scattering of one film, band by band.

use super::kubelka_munk::{hiding, over_backing};
use super::{BANDS, Bands, Origin, Reflectance, Surface};

/// K and S of a component or a mixture, each for one film as the shop prints it.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Constants {
    /// Absorption, 0 and up.
    pub k: Bands,
    /// Scattering, 0 and up.
    pub s: Bands,
    /// Whether every reading behind them was a measured curve.
    pub origin: Origin,
}

impl Constants {
    /// No absorption and no scattering: water, or a perfectly clear base.
    pub const CLEAR: Self = Self { k: [0.0; BANDS], s: [0.0; BANDS], origin: Origin::Measured };

    /// Constants of a mixture of (weight, constants) parts; any unit of weight. `None` if the weights add up to
    /// nothing, or one is negative or not finite.
    pub fn mix(parts: &[(f64, &Self)]) -> Option<Self> {
        let weight: f64 = parts.iter().map(|(part, _)| part).sum();
        if !(weight > 0.0 && weight.is_finite()) || parts.iter().any(|(part, _)| *part < 0.0) {
            return None;
        }
        let mut mixed = Self::CLEAR;
        for (part, of) in parts.iter().filter(|(part, _)| *part > 0.0) {
            let share = part / weight;
            for band in 0..BANDS {
                mixed.k[band] += share * of.k[band];
                mixed.s[band] += share * of.s[band];
            }
            mixed.origin = mixed.origin.and(of.origin);
        }
        Some(mixed)
    }

    /// Constants of `factor` times as much of it: a thicker film, or a stronger pigment.
    pub fn times(&self, factor: f64) -> Self {
        Self { k: self.k.map(|k| k * factor), s: self.s.map(|s| s * factor), origin: self.origin }
    }

    /// Reflectance of a layer so thick that nothing shows through.
    pub fn in_bulk(&self, surface: Surface) -> Reflectance {
        let bands = std::array::from_fn(|band| {
            let (k, s) = (self.k[band], self.s[band]);
            // Without scattering nothing comes back, however thick the layer.
            surface.measured(if s > 0.0 { hiding(k / s) } else { 0.0 })
        });
        Reflectance { bands, origin: self.origin }
    }

    /// Reflectance of a number of films over a backing.
    pub fn over(&self, films: f64, backing: &Reflectance, surface: Surface) -> Reflectance {
        let bands = std::array::from_fn(|band| {
            surface.measured(over_backing(self.k[band] * films, self.s[band] * films, backing.bands[band]))
        });
        Reflectance { bands, origin: self.origin.and(backing.origin) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::near;

    fn ink(k: f64, s: f64) -> Constants {
        Constants { k: [k; BANDS], s: [s; BANDS], origin: Origin::Measured }
    }

    #[test]
    fn a_mixture_lies_between_its_parts_by_weight() {
        let mixed = Constants::mix(&[(90.0, &ink(0.02, 1.0)), (10.0, &ink(1.5, 0.1))]).unwrap();
        near(mixed.k[7], 0.168, 1e-12);
        near(mixed.s[7], 0.91, 1e-12);
        assert_eq!(Constants::mix(&[(0.0, &ink(1.0, 1.0))]), None);
        assert_eq!(Constants::mix(&[(2.0, &ink(1.0, 1.0)), (-1.0, &ink(1.0, 1.0))]), None);
        assert_eq!(Constants::mix(&[]), None);
    }

    #[test]
    fn a_mixture_with_one_reconstructed_part_is_reconstructed() {
        let guess = Constants { origin: Origin::Reconstructed, ..ink(1.0, 1.0) };
        let mixed = |part| Constants::mix(&[(1.0, &ink(1.0, 1.0)), (part, &guess)]).unwrap().origin;
        assert_eq!(mixed(0.1), Origin::Reconstructed);
        assert_eq!(mixed(0.0), Origin::Measured);
    }

    #[test]
    fn many_films_look_like_bulk_and_none_like_the_backing() {
        let (ink, cloth) = (ink(0.4, 0.7), Reflectance::flat(0.1));
        near(ink.over(60.0, &cloth, Surface::NONE).bands[3], ink.in_bulk(Surface::NONE).bands[3], 1e-9);
        near(ink.over(0.0, &cloth, Surface::NONE).bands[3], 0.1, 1e-12);
        // Twice as thick is the same as two films, one over the other.
        let twice = ink.over(1.0, &ink.over(1.0, &cloth, Surface::NONE), Surface::NONE);
        near(ink.times(2.0).over(1.0, &cloth, Surface::NONE).bands[9], twice.bands[9], 1e-12);
        near(Constants::CLEAR.over(3.0, &cloth, Surface::NONE).bands[0], 0.1, 1e-15);
    }
}
