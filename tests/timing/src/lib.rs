//! Computations of the core, to be timed in a browser by `tests/bench/app/bench.mjs`: compiled with the app's own
//! profile, and not part of the app.

// Code that wasm-bindgen generates for an exported function.
#![allow(unsafe_code)]

use lastpull_core::colour::correction::{Candidate, CorrectionProblem, PigmentLimit, what_to_add};
use lastpull_core::colour::{BANDS, Constants, Origin, Print, Reflectance, Surface, Viewing};
use wasm_bindgen::prelude::wasm_bindgen;

/// Components on the invented shelf: a white, a clear base, ten pigments.
const SHELF: usize = 12;

/// Pseudorandom numbers in [0, 1), the same for the same seed.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 40) as f64 / f64::from(1 << 24)
    }

    fn within(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.next()
    }
}

fn component(place: usize) -> Constants {
    let (k, s) = match place {
        0 => (0.02, 2.4),
        1 => (0.0, 0.01),
        _ => (0.2, 0.2),
    };
    let middle = place.saturating_sub(2) as f64 * 3.0;
    let high = if place < 2 { 0.0 } else { 12.0 };
    let hump = |band: usize| k + high * (-((band as f64 - middle) / 6.0).powi(2)).exp();
    Constants { k: std::array::from_fn(hump), s: [s; BANDS], origin: Origin::Measured }
}

/// Computes what to add to a pot derived from `seed`: one to four pigments in white or in clear base, read in the pot
/// or on a garment, against the colour of another mixture. Returns CIEDE2000 before minus after: never negative, except
/// if there is nothing to compute.
#[wasm_bindgen]
pub fn advise(seed: u32) -> f64 {
    let mut dice = Dice(u64::from(seed) + 1);
    let shelf: [Constants; SHELF] = std::array::from_fn(component);
    let mixture = |dice: &mut Dice| {
        let mut grams = [0.0; SHELF];
        grams[usize::from(dice.next() < 0.5)] = dice.within(200.0, 900.0);
        for _ in 0..=(dice.next() * 4.0) as usize {
            let place = 2 + (dice.next() * (SHELF - 2) as f64) as usize;
            grams[place.min(SHELF - 1)] = dice.within(1.0, 40.0);
        }
        grams
    };
    let (pot, wanted) = (mixture(&mut dice), mixture(&mut dice));
    let mix = |grams: &[f64; SHELF]| Constants::mix(&grams.iter().copied().zip(&shelf).collect::<Vec<_>>());
    let (Some(here), Some(there)) = (mix(&pot), mix(&wanted)) else { return -1.0 };
    let cloth = Reflectance::flat(dice.within(0.03, 0.8));
    let seen = if dice.next() < 0.5 {
        Viewing::InBulk(Surface::NONE)
    } else {
        Viewing::Printed(Print {
            garment: &cloth,
            underbase: None,
            hits: 2,
            films_per_hit: 1.0,
            surface: Surface::NONE,
        })
    };
    let candidates: Vec<Candidate> = shelf
        .iter()
        .enumerate()
        .map(|(place, constants)| Candidate {
            constants,
            in_pot: pot[place],
            stock: 500.0,
            most: (place >= 2).then_some(0.08),
            pigment: place >= 2,
            all_pigment: None,
        })
        .collect();
    let wish = CorrectionProblem {
        pot: &here,
        grams: pot.iter().sum(),
        headroom: dice.within(50.0, 900.0),
        target: seen.look(&there).lab(),
        seen,
        candidates: &candidates,
        all_pigment: Some(PigmentLimit { most: 0.15, now: pot[2..].iter().sum() }),
        max_components: 3,
        resolution: 0.1,
        near_enough: 1.0,
    };
    let Some(advice) = what_to_add(&wish) else { return -1.0 };
    advice.before - advice.ways.last().map_or(advice.before, |way| way.after)
}
