//! How pigment makes colour: the two-flux theory of Kubelka and Munk, one band of light at a time.
//!
//! `K` is absorption and `S` scattering, both per film; reflectances are 0 to 1. Sources: Kubelka, Munk, Z. techn.
//! Physik 12, 1931; Kubelka, J. Opt. Soc. Am. 38, 1948; Saunderson, J. Opt. Soc. Am. 32, 1942; Allen, "Colorant
//! Formulation and Shading", in Optical Radiation Measurements 2, 1980, equations 19 to 26.

/// K/S of a film that hides, from its reflectance. The reflectance is clamped to 0.0001 to 1: nothing printed is
/// blacker, and K/S would diverge.
pub fn k_over_s(reflectance: f64) -> f64 {
    let r = reflectance.clamp(1e-4, 1.0);
    (1.0 - r) * (1.0 - r) / (2.0 * r)
}

/// Reflectance of a film that hides, from its K/S.
pub fn hiding(k_over_s: f64) -> f64 {
    let q = k_over_s.max(0.0);
    // 1 + q − √(q² + 2q), written so that a large K/S loses no digits.
    1.0 / (1.0 + q + (q * (q + 2.0)).sqrt())
}

/// A colourant in dyed or thinly printed cloth.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Dye {
    /// How much of it, in any unit.
    pub amount: f64,
    /// K/S of one such unit.
    pub k_over_s: f64,
}

/// K/S of dyed or thinly printed cloth: the cloth's own plus that of each colourant.
pub fn single_constant(cloth: f64, dyes: &[Dye]) -> f64 {
    dyes.iter().fold(cloth, |sum, dye| sum + dye.amount * dye.k_over_s)
}

/// K and S of one film in one band of light.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct FilmConstants {
    /// Absorption, 0 and up.
    pub k: f64,
    /// Scattering, 0 and up.
    pub s: f64,
}

/// K and S of a mixture of (weight, constants) parts. `None` if the weights add up to nothing.
pub fn two_constant(parts: &[(f64, FilmConstants)]) -> Option<FilmConstants> {
    let weight: f64 = parts.iter().map(|(part, _)| part).sum();
    (weight > 0.0).then(|| FilmConstants {
        k: parts.iter().map(|(part, of)| part * of.k).sum::<f64>() / weight,
        s: parts.iter().map(|(part, of)| part * of.s).sum::<f64>() / weight,
    })
}

/// Reflectance of a film with absorption `k` and scattering `s` (of the whole film) over a backing of reflectance
/// `backing`, 0 to 1.
///
/// The closed form, written with tanh(√(K(K+2S)))/√(K(K+2S)), so that a film that does not scatter (Beer's law) and one
/// that does not absorb need no case of their own.
///
/// ```
/// # use lastpull_core::colour::kubelka_munk::over_backing;
/// // A film of thickness 0.3 with K = 0.5 and S = 2 over white; checked by integrating the equations.
/// assert!((over_backing(0.5 * 0.3, 2.0 * 0.3, 0.8) - 0.638_396_65).abs() < 1e-8);
/// ```
pub fn over_backing(k: f64, s: f64, backing: f64) -> f64 {
    let (k, s) = (k.max(0.0), s.max(0.0));
    let root = (k * (k + 2.0 * s)).sqrt();
    let t = if root < 1e-8 { 1.0 } else { tanh(root) / root };
    (t * (s - (k + s) * backing) + backing) / (t * (k + s - s * backing) + 1.0)
}

/// tanh of a number that is not negative, in little code.
fn tanh(x: f64) -> f64 {
    let e = (-2.0 * x).exp_m1();
    -e / (2.0 + e)
}

/// A film's reflectance as read over a backing.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct FilmReading {
    /// Reflectance of the film with the backing below it.
    pub film: f64,
    /// Reflectance of the backing alone.
    pub backing: f64,
}

/// K and S of a film from its readings over a dark and over a light backing.
///
/// Each backing gives one linear equation in a = 1 + K/S and c = b·coth(bS), from the closed form; two backings
/// determine both. `None` if the film hides so well that both readings are alike, if the readings cross, or if they are
/// no reflectances.
///
/// ```
/// # use lastpull_core::colour::kubelka_munk::{FilmReading, from_two_backings, over_backing};
/// let (black, white) = (0.05, 0.85);
/// let read = |backing| FilmReading { film: over_backing(0.2, 1.0, backing), backing };
/// let film = from_two_backings(read(black), read(white)).unwrap();
/// assert!((film.k - 0.2).abs() < 1e-9 && (film.s - 1.0).abs() < 1e-9);
/// // The dark backing comes first.
/// assert_eq!(from_two_backings(read(white), read(black)), None);
/// ```
pub fn from_two_backings(dark: FilmReading, light: FilmReading) -> Option<FilmConstants> {
    let FilmReading { film: over_dark, backing: dark } = dark;
    let FilmReading { film: over_light, backing: light } = light;
    // R·a + g·a + R·c − g·c = 1 + R·g
    let (p, q) = (over_dark + dark, over_dark - dark);
    let (r, s) = (over_light + light, over_light - light);
    let determinant = p * s - q * r;
    if !(light > dark && over_light > over_dark && over_dark > 0.0 && over_light <= 1.0) || determinant == 0.0 {
        return None;
    }
    let (e, f) = (1.0 + over_dark * dark, 1.0 + over_light * light);
    let a = (e * s - q * f) / determinant;
    let c = (p * f - r * e) / determinant;
    let b = (a * a - 1.0).max(0.0).sqrt();
    if !(a.is_finite() && c.is_finite()) || a < 1.0 || c <= b {
        return None;
    }
    // b·S = arcoth(c/b); for b near 0 that is S = 1/c.
    let scatter = if b < 1e-7 { 1.0 / c } else { (2.0 * b / (c - b)).ln_1p() / (2.0 * b) };
    Some(FilmConstants { k: (a - 1.0) * scatter, s: scatter })
}

/// Reflection at the surface of a film: Saunderson's correction.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Surface {
    /// Share of the light from outside that the surface reflects, 0.04 for a refractive index of 1.5.
    pub outside: f64,
    /// Share of the light from inside that it reflects back in, about 0.6 for a refractive index of 1.5.
    pub inside: f64,
    /// Whether readings include the gloss (specular included).
    pub gloss_included: bool,
}

impl Surface {
    /// No reflection at the surface: cloth, and matt prints that soak in. Measured and inner reflectance are equal.
    pub const NONE: Self = Self { outside: 0.0, inside: 0.0, gloss_included: false };

    /// The measured reflectance for a reflectance inside the film.
    pub fn measured(self, inner: f64) -> f64 {
        let gloss = if self.gloss_included { self.outside } else { 0.0 };
        gloss + (1.0 - self.outside) * (1.0 - self.inside) * inner / (1.0 - self.inside * inner)
    }

    /// The reflectance inside the film for a measured one. `None` if the reading is less than the surface alone
    /// reflects.
    pub fn inner(self, measured: f64) -> Option<f64> {
        let through = measured - if self.gloss_included { self.outside } else { 0.0 };
        (through >= 0.0).then(|| through / ((1.0 - self.outside) * (1.0 - self.inside) + self.inside * through))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::{near, rows};
    use serde_json::Value;

    const BANDS: [&str; 5] = ["band1", "band2", "band3", "band4", "band5"];

    /// Source: an open test suite of pigment mixing (MIT), "calculated independently", recomputed: three pigments in
    /// five bands, one constant, two constants, and two with the surface correction.
    #[test]
    fn published_mixtures_agree_in_every_band() {
        let inputs = rows(include_str!("../../tests/data/ink_km_inputs.csv"), 9);
        let input = |quantity: &str| -> Vec<[f64; 5]> {
            inputs.iter().filter(|row| row.text("quantity") == quantity).map(|row| row.numbers(BANDS)).collect()
        };
        let (masstone, k, s) = (input("R_masstone_single_constant"), input("K_two_constant"), input("S_two_constant"));
        let published = BANDS.map(|band| match band {
            "band1" => "R_band1_published",
            "band2" => "R_band2_published",
            "band3" => "R_band3_published",
            "band4" => "R_band4_published",
            _ => "R_band5_published",
        });
        let skin = Surface { outside: 0.033, inside: 0.66, gloss_included: false };
        for row in rows(include_str!("../../tests/data/ink_km_reference.csv"), 14) {
            let weights = row.numbers(["c1", "c2", "c3"]);
            for (band, expected) in row.numbers(published).into_iter().enumerate() {
                let parts = [0, 1, 2].map(|p| (weights[p], FilmConstants { k: k[p][band], s: s[p][band] }));
                let mixed = || {
                    let FilmConstants { k, s } = two_constant(&parts).unwrap();
                    hiding(k / s)
                };
                let ours = match row.text("model") {
                    "single_constant" => {
                        let dyes = [0, 1, 2].map(|p| Dye { amount: weights[p], k_over_s: k_over_s(masstone[p][band]) });
                        hiding(single_constant(0.0, &dyes))
                    }
                    "two_constant" => mixed(),
                    _ => {
                        near(skin.inner(skin.measured(mixed())).unwrap(), mixed(), 1e-14);
                        skin.measured(mixed())
                    }
                };
                near(ours, expected, 1e-14);
            }
        }
    }

    /// Computed with an independent script; the films also by integrating the differential equations.
    #[test]
    fn worked_examples_agree() {
        let data: Value = serde_json::from_str(include_str!("../../tests/data/ink_km_worked_examples.json")).unwrap();
        let number = |value: &Value| value.as_f64().unwrap();

        let cloth = &data["textile_single_constant"];
        let substrate = k_over_s(number(&cloth["substrate_R"]));
        near(substrate, number(&cloth["K/S_substrate"]), 1e-14);
        let dyes: Vec<_> = cloth["calibration"]
            .as_array()
            .unwrap()
            .iter()
            .map(|dye| {
                let unit = (k_over_s(number(&dye["R"])) - substrate) / number(&dye["percent"]);
                near(unit, number(&dye["unit_k_over_s_per_percent"]), 1e-12);
                let amount = number(&cloth["recipe_percent"][dye["colorant"].as_str().unwrap()]);
                Dye { amount, k_over_s: unit }
            })
            .collect();
        assert_eq!(dyes.len(), 2);
        let mixed = single_constant(substrate, &dyes);
        near(mixed, number(&cloth["K/S_mix"]), 1e-12);
        near(hiding(mixed), number(&cloth["R_mix"]), 1e-12);

        let tint = &data["two_constant_white_black"];
        let part = |at: usize, name: &str| {
            let constants = FilmConstants { k: number(&tint[name]["K"]), s: number(&tint[name]["S"]) };
            (number(&tint["weights"][at]), constants)
        };
        let FilmConstants { k, s } = two_constant(&[part(0, "white"), part(1, "black")]).unwrap();
        near(k, number(&tint["K_mix"]), 1e-14);
        near(s, number(&tint["S_mix"]), 1e-14);
        near(hiding(k / s), number(&tint["R_inf"]), 1e-12);
        let skin = Surface { outside: 0.04, inside: 0.6, gloss_included: true };
        near(skin.measured(hiding(k / s)), number(&tint["R_measured_SCI_k1_.04_k2_.6"]), 1e-12);

        let films = data["finite_film_over_backing"].as_array().unwrap();
        assert_eq!(films.len(), 5);
        for film in films {
            let [k, s, x, backing] = ["K", "S", "X", "Rg"].map(|name| number(&film[name]));
            near(over_backing(k * x, s * x, backing), number(&film["R_closed_form"]), 1e-13);
            near(over_backing(k * x, s * x, backing), number(&film["R_ode"]), 1e-10);
        }
    }

    /// Computed with an independent script.
    #[test]
    fn k_over_s_agrees_with_the_table_in_both_directions() {
        for row in rows(include_str!("../../tests/data/ink_ks_table.csv"), 16) {
            let r = row.number("R");
            near(k_over_s(r), row.number("K_over_S"), 1e-10 + 1e-10 * row.number("K_over_S"));
            near(hiding(k_over_s(r)), row.number("R_roundtrip"), 1e-10);
            let skin = Surface { outside: 0.04, inside: 0.6, gloss_included: true };
            near(skin.measured(r), row.number("R_measured_SCI_k1_0.04_k2_0.6"), 1e-10);
            let inner = row.number("R_internal_from_measured_equal_R_k1_0.04_k2_0.6");
            match skin.inner(r) {
                None => assert!(inner.is_nan()),
                Some(ours) => near(ours, inner, 1e-10),
            }
        }
    }

    #[test]
    fn films_that_only_absorb_or_only_scatter_follow_their_own_laws() {
        near(over_backing(0.7, 0.0, 0.6), 0.6 * (-1.4_f64).exp(), 1e-14);
        let (s, backing) = (1.3, 0.2);
        near(over_backing(0.0, s, backing), ((1.0 - backing) * s + backing) / ((1.0 - backing) * s + 1.0), 1e-14);
        near(over_backing(0.0, 0.0, 0.35), 0.35, 1e-15);
        near(over_backing(40.0, 60.0, 0.9), hiding(40.0 / 60.0), 1e-12);
        near(over_backing(1e-19, 1.0, 0.0), over_backing(0.0, 1.0, 0.0), 1e-9);
    }

    #[test]
    fn two_backings_give_back_the_film() {
        for (k, s) in [(0.02, 0.4), (0.8, 0.3), (2.0, 0.05), (0.0, 0.9), (0.3, 1.5), (1e-6, 1e-3)] {
            let read = |backing: f64| FilmReading { film: over_backing(k, s, backing), backing };
            let back = from_two_backings(read(0.03), read(0.85)).unwrap();
            near(back.k, k, 1e-8);
            near(back.s, s, 1e-8);
        }
        for (over_dark, over_light) in [(0.4, 0.4), (0.5, 0.4), (0.9, 0.95)] {
            let dark = FilmReading { film: over_dark, backing: 0.05 };
            let light = FilmReading { film: over_light, backing: 0.8 };
            assert_eq!(from_two_backings(dark, light), None);
        }
    }
}
