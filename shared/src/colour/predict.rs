//! Predicts the colour of a recipe, in the pot and printed on a garment.

use super::{Constants, Reflectance, Surface};

/// How an ink is printed.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Print<'a> {
    /// Reflectance of the garment.
    pub garment: &'a Reflectance,
    /// Constants of the underbase and its number of hits.
    pub underbase: Option<(&'a Constants, u8)>,
    /// Hits of the ink, each flashed before the next.
    pub hits: u8,
    /// Film of one hit relative to a film of the drawdowns; 1 if the same screen made both.
    pub films_per_hit: f64,
    /// Reflection at the surface of the print.
    pub surface: Surface,
}

impl Print<'_> {
    /// Reflectance under the ink: the garment, covered by the underbase if there is one. The underbase has no surface
    /// reflection once ink lies on it.
    pub fn ground(&self) -> Reflectance {
        match self.underbase {
            None => *self.garment,
            Some((base, hits)) => base.over(f64::from(hits) * self.films_per_hit, self.garment, Surface::NONE),
        }
    }

    /// Number of films of the ink.
    pub fn films(&self) -> f64 {
        f64::from(self.hits) * self.films_per_hit
    }

    /// Reflectance of an ink printed this way.
    pub fn look(&self, ink: &Constants) -> Reflectance {
        ink.over(self.films(), &self.ground(), self.surface)
    }
}

/// How a colour is viewed.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Viewing<'a> {
    /// Thick enough to hide: in the pot, or as a thick drawdown.
    InBulk(Surface),
    /// Printed on a garment.
    Printed(Print<'a>),
}

impl Viewing<'_> {
    /// Reflectance of an ink viewed this way.
    pub fn look(&self, ink: &Constants) -> Reflectance {
        match self {
            Self::InBulk(surface) => ink.in_bulk(*surface),
            Self::Printed(print) => print.look(ink),
        }
    }
}

/// Reflectance of a recipe of (weight, constants) parts; any unit of weight. `None` if the weights add up to nothing or
/// one is negative.
pub fn predict(recipe: &[(f64, &Constants)], seen: Viewing) -> Option<Reflectance> {
    Some(seen.look(&Constants::mix(recipe)?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::near;
    use crate::colour::{BANDS, Origin};

    fn ink(k: f64, s: f64) -> Constants {
        Constants { k: [k; BANDS], s: [s; BANDS], origin: Origin::Measured }
    }

    /// Source: `ink_km_worked_examples.json`, white and black by weight.
    #[test]
    fn a_recipe_in_the_pot_is_the_worked_example() {
        let look = predict(&[(450.0, &ink(0.02, 1.0)), (50.0, &ink(1.5, 0.1))], Viewing::InBulk(Surface::NONE));
        near(look.unwrap().bands[15], 0.549_545_617_213_837_1, 1e-12);
        assert_eq!(predict(&[], Viewing::InBulk(Surface::NONE)), None);
    }

    /// Source: `ink_km_worked_examples.json`, a film over a backing: K 0.05, S 3, X 1 over 0.05; and K 2, S 1, X 0.2
    /// over 0.85.
    #[test]
    fn films_over_a_garment_are_the_worked_examples() {
        let (dark, light) = (Reflectance::flat(0.05), Reflectance::flat(0.85));
        let print = Print { garment: &dark, underbase: None, hits: 1, films_per_hit: 1.0, surface: Surface::NONE };
        near(print.look(&ink(0.05, 3.0)).bands[4], 0.725_818_161_524_031_3, 1e-12);
        let thin = Print { garment: &light, films_per_hit: 0.1, hits: 2, ..print };
        near(thin.look(&ink(2.0, 1.0)).bands[4], 0.409_779_503_377_675_8, 1e-12);
    }

    #[test]
    fn a_clear_ink_vanishes_on_a_dark_shirt_but_not_on_an_underbase() {
        let dark = Reflectance::flat(0.04);
        let (clear_yellow, white) = (ink(0.1, 0.03), ink(0.02, 2.5));
        let bare = Print { garment: &dark, underbase: None, hits: 1, films_per_hit: 1.0, surface: Surface::NONE };
        let based = Print { underbase: Some((&white, 1)), ..bare };
        assert!(bare.look(&clear_yellow).lab().l < 35.0);
        assert!(based.look(&clear_yellow).lab().l > 75.0);
        near(based.ground().bands[0], white.over(1.0, &dark, Surface::NONE).bands[0], 1e-12);
    }
}
