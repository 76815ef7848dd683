//! Fits a component's absorption and scattering to its drawdowns.

use super::kubelka_munk::{hiding, over_backing};
use super::{BANDS, Bands, Constants, Origin, Reflectance, Surface, ciede2000};

/// How the ink of a drawdown was applied.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Layer<'a> {
    /// So thick that nothing shows through.
    Hiding,
    /// As films, as the shop prints them, over a backing of known reflectance.
    Over {
        /// Number of films, above 0 and at most 100; 1 for one film.
        films: f64,
        /// Reflectance of the backing.
        backing: &'a Reflectance,
    },
}

/// A drawdown of a component: alone (masstone) or let down with a known white or base (tint).
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Drawdown<'a> {
    /// Share of the component by weight, above 0 and at most 1.
    pub share: f64,
    /// The white or base that makes up the rest; required if `share` is below 1.
    pub rest: Option<&'a Constants>,
    /// How it was applied.
    pub layer: Layer<'a>,
    /// Its reflectance as read.
    pub seen: &'a Reflectance,
}

/// What a component is like, used where its drawdowns do not determine its scattering.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum OpacityClass {
    /// Scatters light: whites, opaque pigments.
    Opaque,
    /// Transmits light: most pigments for water-based ink, clear bases.
    Transparent,
}

impl OpacityClass {
    /// Scattering assumed for one film of the pure component. Our own: a white hides about two thirds of black in one
    /// film, a clear one next to nothing.
    fn assumed_scattering(self) -> f64 {
        match self {
            Self::Opaque => 2.0,
            Self::Transparent => 0.05,
        }
    }
}

/// Result of [`characterise`].
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Characterised {
    /// The fitted absorption and scattering.
    pub constants: Constants,
    /// Number of bands, of 31, in which the drawdowns determine both absorption and scattering. In the others
    /// scattering is assumed from the [`OpacityClass`].
    pub resolved_bands: usize,
    /// Largest CIEDE2000 between a drawdown and what the constants predict for it. A large one points to a drawdown of
    /// another component or a wrong share.
    pub worst: f64,
}

/// K and S of a component from one to eight drawdowns. A masstone and one tint in white determine both; so does one
/// film over black and over white. A masstone alone determines only K, for the S assumed from `body`.
///
/// Per band the pair (K, S) with the least squared differences of the cube roots of reflectance, which is about how an
/// eye weighs them. The S of `body` has a small weight, so that it decides only where the readings do not. `None`
/// without drawdowns, with more than eight, or if one cannot be used (a share or number of films out of range, a tint
/// without `rest`).
///
/// Source of the equations: Allen 1980 (see `kubelka_munk`); the weighting is our own.
pub fn characterise(drawdowns: &[Drawdown], body: OpacityClass, surface: Surface) -> Option<Characterised> {
    let usable = |drawdown: &Drawdown| {
        let lies = match drawdown.layer {
            Layer::Hiding => true,
            Layer::Over { films, .. } => films > 0.0 && films <= 100.0,
        };
        lies && drawdown.share > 0.0 && drawdown.share <= 1.0 && (drawdown.share >= 1.0 || drawdown.rest.is_some())
    };
    if drawdowns.is_empty() || drawdowns.len() > 8 || !drawdowns.iter().all(usable) {
        return None;
    }
    let (mut k, mut s): (Bands, Bands) = ([0.0; BANDS], [0.0; BANDS]);
    let mut resolved_bands = 0;
    for band in 0..BANDS {
        let lines: Vec<Line> = drawdowns.iter().map(|drawdown| Line::of(drawdown, band, surface)).collect();
        let fit = fit(&lines, body.assumed_scattering());
        (k[band], s[band]) = (fit.k, fit.s);
        resolved_bands += usize::from(fit.resolved);
    }
    let origin = drawdowns.iter().fold(Origin::Measured, |origin, drawdown| {
        let under = match drawdown.layer {
            Layer::Hiding => Origin::Measured,
            Layer::Over { backing, .. } => backing.origin,
        };
        let rest = drawdown.rest.map_or(Origin::Measured, |rest| rest.origin);
        origin.and(drawdown.seen.origin).and(under).and(rest)
    });
    let constants = Constants { k, s, origin };
    let worst = drawdowns.iter().fold(0.0_f64, |worst, drawdown| {
        let looks = drawdown.predict(&constants, surface);
        worst.max(looks.map_or(0.0, |looks| ciede2000(looks.lab(), drawdown.seen.lab())))
    });
    Some(Characterised { constants, resolved_bands, worst })
}

impl Drawdown<'_> {
    /// Reflectance that the constants predict for this drawdown; `None` if its share is out of range.
    pub fn predict(&self, constants: &Constants, surface: Surface) -> Option<Reflectance> {
        let rest = self.rest.unwrap_or(&Constants::CLEAR);
        let mixed = Constants::mix(&[(self.share, constants), (1.0 - self.share, rest)])?;
        Some(match self.layer {
            Layer::Hiding => mixed.in_bulk(surface),
            Layer::Over { films, backing } => mixed.over(films, backing, surface),
        })
    }
}

/// A drawdown in one band.
struct Line {
    share: f64,
    k_rest: f64,
    s_rest: f64,
    /// Number of films and reflectance of the backing; `None` if the layer hides.
    over: Option<(f64, f64)>,
    surface: Surface,
    seen: f64,
}

impl Line {
    fn of(drawdown: &Drawdown, band: usize, surface: Surface) -> Self {
        let rest = drawdown.rest.unwrap_or(&Constants::CLEAR);
        Self {
            share: drawdown.share,
            k_rest: rest.k[band],
            s_rest: rest.s[band],
            over: match drawdown.layer {
                Layer::Hiding => None,
                Layer::Over { films, backing } => Some((films, backing.bands[band])),
            },
            surface,
            seen: root(drawdown.seen.bands[band]),
        }
    }

    /// Cube root of the predicted reflectance minus that of the reading.
    fn miss(&self, k: f64, s: f64) -> f64 {
        let k = self.share * k + (1.0 - self.share) * self.k_rest;
        let s = self.share * s + (1.0 - self.share) * self.s_rest;
        let inner = match self.over {
            None => hiding(k / s.max(1e-12)),
            Some((films, backing)) => over_backing(k * films, s * films, backing),
        };
        root(self.surface.measured(inner)) - self.seen
    }
}

fn root(reflectance: f64) -> f64 {
    reflectance.max(1e-4).cbrt()
}

struct Fit {
    k: f64,
    s: f64,
    resolved: bool,
}

/// Weight of the assumed S relative to a reading.
const HINT: f64 = 3e-4;
/// How sharply the readings must separate K from S: a reading off by 0.003 (a hundredth of the reflectance) then moves
/// them by a third at most. Our own.
const SHARP: f64 = 0.009;

/// Levenberg-Marquardt in (ln K, ln S), started from the best point of a coarse grid.
fn fit(lines: &[Line], scatter: f64) -> Fit {
    let hint = scatter.ln();
    let cost = |p: [f64; 2]| {
        let (k, s) = (p[0].exp(), p[1].exp());
        lines.iter().map(|line| line.miss(k, s).powi(2)).sum::<f64>() + (HINT * (p[1] - hint)).powi(2)
    };
    let mut best = ([0.0, hint], f64::INFINITY);
    for at_k in 0..15 {
        for at_s in 0..9 {
            let tried = [-9.0 + f64::from(at_k), if at_s == 8 { hint } else { -6.0 + 1.2 * f64::from(at_s) }];
            let off = cost(tried);
            if off < best.1 {
                best = (tried, off);
            }
        }
    }
    let (mut p, mut off) = best;
    let mut damping = 1e-3;
    let mut spread = [0.0; 3];
    for _ in 0..60 {
        // Numerical derivatives; with two unknowns the normal equations are two by two.
        let (k, s) = (p[0].exp(), p[1].exp());
        let (mut a, mut b, mut c, mut g, mut h) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for line in lines {
            let miss = line.miss(k, s);
            let along_k = (line.miss(k * STEP.exp(), s) - line.miss(k * (-STEP).exp(), s)) / (2.0 * STEP);
            let along_s = (line.miss(k, s * STEP.exp()) - line.miss(k, s * (-STEP).exp())) / (2.0 * STEP);
            a += along_k * along_k;
            b += along_k * along_s;
            c += along_s * along_s;
            g += along_k * miss;
            h += along_s * miss;
        }
        spread = [a, b, c];
        c += HINT * HINT;
        h += HINT * HINT * (p[1] - hint);
        let (da, dc) = (a * (1.0 + damping) + 1e-14, c * (1.0 + damping) + 1e-14);
        let determinant = da * dc - b * b;
        let step = [(b * h - dc * g) / determinant, (b * g - da * h) / determinant].map(|by| by.clamp(-1.0, 1.0));
        let tried = [(p[0] + step[0]).clamp(-14.0, 8.0), (p[1] + step[1]).clamp(-9.0, 6.0)];
        let there = cost(tried);
        if there < off {
            let gain = off - there;
            (p, off) = (tried, there);
            damping = (damping * 0.2).max(1e-12);
            if gain < 1e-18 && step[0].abs() + step[1].abs() < 1e-9 {
                break;
            }
        } else {
            damping *= 8.0;
            if damping > 1e10 {
                break;
            }
        }
    }
    // The smaller eigenvalue of the readings' normal equations: how well they determine K and S in the worst direction.
    let [a, b, c] = spread;
    let least = f64::midpoint(a, c) - (((a - c) / 2.0).powi(2) + b * b).sqrt();
    Fit { k: p[0].exp(), s: p[1].exp(), resolved: least > SHARP * SHARP }
}

const STEP: f64 = 1e-5;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::{near, rows};
    use crate::colour::kubelka_munk::{FilmReading, from_two_backings};

    fn bands(of: impl Fn(f64) -> f64) -> Bands {
        std::array::from_fn(|band| of(band as f64 / 30.0))
    }

    fn pigment() -> Constants {
        let k = bands(|x| 0.05 + 3.0 * (-((x - 0.3) / 0.25).powi(2)).exp());
        Constants { k, s: bands(|x| 0.2 + 0.3 * x), origin: Origin::Measured }
    }

    fn white() -> Constants {
        Constants { k: bands(|x| 0.02 + 0.1 * (-x * 20.0).exp()), s: [2.5; BANDS], origin: Origin::Measured }
    }

    /// Source: `ink_km_inputs.csv` and the published mixtures of `ink_km_reference.csv`, here inverted: from the
    /// published masstone and half tint back to the pigment's K and S. In the first two of the five bands both pigments
    /// have the same K/S, so that no tint can separate K from S.
    #[test]
    fn a_published_masstone_and_tint_give_back_the_pigment() {
        const NAMES: [&str; 5] = ["band1", "band2", "band3", "band4", "band5"];
        let inputs = rows(include_str!("../../tests/data/ink_km_inputs.csv"), 9);
        let input = |quantity: &str, pigment: &str| {
            let row = inputs.iter().find(|row| row.text("quantity") == quantity && row.text("pigment") == pigment);
            row.unwrap().numbers(NAMES)
        };
        let published = rows(include_str!("../../tests/data/ink_km_reference.csv"), 14);
        let seen = |c: [&str; 3]| {
            let is = |row: &&crate::colour::check_rows::Row| {
                row.text("model").starts_with("two_constant_saunderson") && ["c1", "c2", "c3"].map(|n| row.text(n)) == c
            };
            let row = published.iter().find(is).unwrap();
            let curve = row.from("R_band1_published");
            Reflectance { bands: std::array::from_fn(|band| curve[band.min(4)]), origin: Origin::Measured }
        };
        let full = |five: [f64; 5]| -> Bands { std::array::from_fn(|band| five[band.min(4)]) };
        let skin = Surface { outside: 0.033, inside: 0.66, gloss_included: false };
        let (first, third, half) =
            (seen(["1.0", "0.0", "0.0"]), seen(["0.0", "0.0", "1.0"]), seen(["0.5", "0.0", "0.5"]));
        for (masstone, own, other) in [(&first, "1", "3"), (&third, "3", "1")] {
            let rest = Constants {
                k: full(input("K_two_constant", other)),
                s: full(input("S_two_constant", other)),
                origin: Origin::Measured,
            };
            let drawdowns = [
                Drawdown { share: 1.0, rest: None, layer: Layer::Hiding, seen: masstone },
                Drawdown { share: 0.5, rest: Some(&rest), layer: Layer::Hiding, seen: &half },
            ];
            let found = characterise(&drawdowns, OpacityClass::Opaque, skin).unwrap();
            for band in 2..5 {
                // The weight of the assumed S moves them by a fiftieth at most.
                near(found.constants.k[band] / input("K_two_constant", own)[band], 1.0, 0.02);
                near(found.constants.s[band] / input("S_two_constant", own)[band], 1.0, 0.02);
            }
            assert!(found.worst < 0.01);
            assert!(found.resolved_bands < 30, "the first two bands cannot be told apart");
        }
    }

    #[test]
    fn masstone_and_tint_in_a_known_white_give_both_constants() {
        let (pigment, white) = (pigment(), white());
        let masstone = pigment.in_bulk(Surface::NONE);
        let tint = Constants::mix(&[(0.05, &pigment), (0.95, &white)]).unwrap().in_bulk(Surface::NONE);
        let drawdowns = [
            Drawdown { share: 1.0, rest: None, layer: Layer::Hiding, seen: &masstone },
            Drawdown { share: 0.05, rest: Some(&white), layer: Layer::Hiding, seen: &tint },
        ];
        let found = characterise(&drawdowns, OpacityClass::Opaque, Surface::NONE).unwrap();
        assert!(found.worst < 0.02, "{}", found.worst);
        for band in 0..BANDS {
            let q = found.constants.k[band] / found.constants.s[band];
            near(q / (pigment.k[band] / pigment.s[band]), 1.0, 0.02);
        }
        // Where the pigment absorbs, its own K and S come back; where it hardly differs from white, the tint says
        // little and the assumed S may remain.
        for band in 5..14 {
            near(found.constants.k[band] / pigment.k[band], 1.0, 0.05);
        }
    }

    #[test]
    fn films_over_black_and_white_agree_with_the_closed_form() {
        let pigment = pigment();
        let (black, cloth) = (Reflectance::flat(0.03), Reflectance::flat(0.85));
        let (dark, light) = (pigment.over(1.0, &black, Surface::NONE), pigment.over(1.0, &cloth, Surface::NONE));
        let over =
            |seen, backing| Drawdown { share: 1.0, rest: None, layer: Layer::Over { films: 1.0, backing }, seen };
        let drawdowns = [over(&dark, &black), over(&light, &cloth)];
        let found = characterise(&drawdowns, OpacityClass::Transparent, Surface::NONE).unwrap();
        assert!(found.resolved_bands > 20);
        for band in 0..BANDS {
            let over_black = FilmReading { film: dark.bands[band], backing: 0.03 };
            let over_cloth = FilmReading { film: light.bands[band], backing: 0.85 };
            let film = from_two_backings(over_black, over_cloth).unwrap();
            near(found.constants.k[band] / film.k, 1.0, 0.03);
            near(found.constants.s[band] / film.s, 1.0, 0.03);
        }
    }

    #[test]
    fn a_masstone_alone_keeps_its_look_and_separates_no_band() {
        let masstone = pigment().in_bulk(Surface::NONE);
        let alone = [Drawdown { share: 1.0, rest: None, layer: Layer::Hiding, seen: &masstone }];
        let found = characterise(&alone, OpacityClass::Opaque, Surface::NONE).unwrap();
        assert_eq!(found.resolved_bands, 0);
        assert!(found.worst < 0.01);
        near(found.constants.s[12], 2.0, 0.1);
    }

    #[test]
    fn an_impossible_drawdown_is_refused() {
        let seen = Reflectance::flat(0.3);
        let sure = Drawdown { share: 1.0, rest: None, layer: Layer::Hiding, seen: &seen };
        let refuse = |drawdowns: &[Drawdown]| characterise(drawdowns, OpacityClass::Opaque, Surface::NONE).is_none();
        assert!(refuse(&[]));
        assert!(refuse(&[Drawdown { share: 0.5, ..sure }]));
        assert!(refuse(&[Drawdown { share: 0.0, rest: Some(&Constants::CLEAR), ..sure }]));
        assert!(refuse(&[Drawdown { layer: Layer::Over { films: f64::NAN, backing: &seen }, ..sure }]));
        assert!(!refuse(&[sure]));
    }
}
