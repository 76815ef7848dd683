//! What a recipe will look like: in the pot, and printed on a garment.

use super::{Constants, Reflectance, Surface};

/// How it is printed.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Print<'a> {
    /// The cloth.
    pub garment: &'a Reflectance,
    /// The underbase and how many hits of it.
    pub underbase: Option<(&'a Constants, u8)>,
    /// Hits of the ink, each flashed before the next.
    pub hits: u8,
    /// What one hit lays down, in films as the drawdowns were made; 1 when the same screen made both.
    pub films_a_hit: f64,
    /// The skin of the print.
    pub surface: Surface,
}

impl Print<'_> {
    /// What the ink lies on: the garment, under the underbase if there is one. The skin between the two is
    /// gone once the ink lies on it.
    pub fn ground(&self) -> Reflectance {
        match self.underbase {
            None => *self.garment,
            Some((base, hits)) => base.over(f64::from(hits) * self.films_a_hit, self.garment, Surface::NONE),
        }
    }

    /// How many films of the ink.
    pub fn films(&self) -> f64 {
        f64::from(self.hits) * self.films_a_hit
    }

    /// What an ink looks like printed so.
    pub fn look(&self, ink: &Constants) -> Reflectance {
        ink.over(self.films(), &self.ground(), self.surface)
    }
}

/// Where the colour is looked at.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Seen<'a> {
    /// Thick enough to hide: the pot, a thick drawdown.
    InThePot(Surface),
    /// Printed.
    Printed(Print<'a>),
}

impl Seen<'_> {
    /// What an ink looks like there.
    pub fn look(&self, ink: &Constants) -> Reflectance {
        match self {
            Self::InThePot(surface) => ink.in_bulk(*surface),
            Self::Printed(print) => print.look(ink),
        }
    }
}

/// What a recipe looks like: grams or parts of its components, each with what it does to light. None when
/// it weighs nothing.
pub fn predict(recipe: &[(f64, &Constants)], seen: Seen) -> Option<Reflectance> {
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
        let look = predict(&[(450.0, &ink(0.02, 1.0)), (50.0, &ink(1.5, 0.1))], Seen::InThePot(Surface::NONE));
        near(look.unwrap().bands[15], 0.549_545_617_213_837_1, 1e-12);
        assert_eq!(predict(&[], Seen::InThePot(Surface::NONE)), None);
    }

    /// Source: `ink_km_worked_examples.json`, a film over a backing: K 0.05, S 3, X 1 over 0.05; and K 2, S 1, X 0.2
    /// over 0.85.
    #[test]
    fn films_over_a_garment_are_the_worked_examples() {
        let (dark, light) = (Reflectance::flat(0.05), Reflectance::flat(0.85));
        let print = Print { garment: &dark, underbase: None, hits: 1, films_a_hit: 1.0, surface: Surface::NONE };
        near(print.look(&ink(0.05, 3.0)).bands[4], 0.725_818_161_524_031_3, 1e-12);
        let thin = Print { garment: &light, films_a_hit: 0.1, hits: 2, ..print };
        near(thin.look(&ink(2.0, 1.0)).bands[4], 0.409_779_503_377_675_8, 1e-12);
    }

    #[test]
    fn a_clear_ink_vanishes_on_a_dark_shirt_and_stands_on_an_underbase() {
        let dark = Reflectance::flat(0.04);
        let (clear_yellow, white) = (ink(0.1, 0.03), ink(0.02, 2.5));
        let bare = Print { garment: &dark, underbase: None, hits: 1, films_a_hit: 1.0, surface: Surface::NONE };
        let based = Print { underbase: Some((&white, 1)), ..bare };
        assert!(bare.look(&clear_yellow).lab().l < 35.0);
        assert!(based.look(&clear_yellow).lab().l > 75.0);
        near(based.ground().bands[0], white.over(1.0, &dark, Surface::NONE).bands[0], 1e-12);
    }
}
