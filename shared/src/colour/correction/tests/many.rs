//! The search among many candidates: it loses nothing to trying everything, and how long it takes.

use super::*;

/// Fourteen components, the stored ones and the same half as strong, and a pot with some of each.
struct Large {
    components: Vec<Constants>,
    grams: Vec<f64>,
    target: Lab,
}

impl Large {
    fn any(bench: &Bench, random: &mut impl FnMut() -> f64, seen: Viewing) -> Self {
        let weak = bench.components.iter().map(|one| one.times(0.5));
        let components: Vec<Constants> = bench.components.iter().copied().chain(weak).collect();
        let grams: Vec<f64> = (0..14).map(|at| if at == 0 { 500.0 } else { random() * 8.0 }).collect();
        let parts: Vec<(f64, &Constants)> = grams.iter().copied().zip(&components).collect();
        let near = predict(&parts, seen).unwrap().lab();
        let mut about = |width: f64| (random() - 0.5) * width;
        let target = Lab::new(near.l + about(8.0), near.a + about(12.0), near.b + about(12.0));
        Self { components, grams, target }
    }

    fn pot(&self) -> Constants {
        let parts: Vec<(f64, &Constants)> = self.grams.iter().copied().zip(&self.components).collect();
        Constants::mix(&parts).unwrap()
    }

    fn candidates(&self) -> Vec<Candidate<'_>> {
        let both = self.grams.iter().zip(&self.components);
        both.map(|(in_pot, constants)| Candidate {
            constants,
            in_pot: *in_pot,
            stock: 400.0,
            most: Some(0.6),
            pigment: false,
            all_pigment: None,
        })
        .collect()
    }
}

/// The smallest difference in colour that the search found with at most `size` components, and that of all of them.
fn ours_and_best(model: &Model, found: &[search::Solution], size: usize) -> (f64, f64) {
    let ours = found.iter().filter(|found| found.candidates.len() <= size).map(|found| found.cost.sqrt());
    (ours.fold(model.off(&[], &[]), f64::min), search::best_of_all(model, size).sqrt())
}

fn dice(mut seed: u64) -> impl FnMut() -> f64 {
    move || {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 11) as f64 / (1_u64 << 53) as f64
    }
}

fn shirt(bench: &Bench) -> Reflectance {
    Reflectance { bands: bands(&bench.data["garments"]["violet shirt"]), origin: Origin::Measured }
}

fn two_hits(garment: &Reflectance) -> Viewing<'_> {
    Viewing::Printed(Print { garment, underbase: None, hits: 2, films_per_hit: 1.0, surface: Surface::NONE })
}

#[test]
fn the_shortcuts_of_the_search_lose_no_visible_difference() {
    let bench = Bench::stored();
    let garment = shirt(&bench);
    let mut random = dice(11);
    for round in 0..6 {
        let seen = if round % 2 == 0 { POT } else { two_hits(&garment) };
        let large = Large::any(&bench, &mut random, seen);
        let (pot, candidates) = (large.pot(), large.candidates());
        let problem = CorrectionProblem { seen, near_enough: 0.0, ..simple(&pot, &candidates, large.target) };
        let model = Model::of(&problem);
        let found = search::best_of_each_size(&model, 3);
        for size in 2..=3 {
            let (ours, best) = ours_and_best(&model, &found, size);
            println!("round {round}, {size} components: {ours:.4}, of all {best:.4}");
            assert!(ours <= best + 0.05, "round {round}, {size} components: {ours:.4}, of all {best:.4}");
        }
    }
}

/// Asserts nothing: prints how long advice takes. Run with
/// `cargo test --release -p lastpull-core --lib how_long_advice_takes -- --ignored --nocapture`.
#[test]
#[ignore = "measures time"]
fn how_long_advice_takes() {
    let bench = Bench::stored();
    let garment = shirt(&bench);
    let mut random = dice(7);
    let mut milliseconds: Vec<f64> = (0..400)
        .map(|round| {
            let seen = if round % 2 == 0 { POT } else { two_hits(&garment) };
            let large = Large::any(&bench, &mut random, seen);
            let (pot, candidates) = (large.pot(), large.candidates());
            let problem = CorrectionProblem { seen, near_enough: 0.0, ..simple(&pot, &candidates, large.target) };
            // The quickest of five, to leave out other load on the machine.
            let once = || {
                let start = std::time::Instant::now();
                assert!(what_to_add(&problem).is_some());
                start.elapsed().as_secs_f64() * 1000.0
            };
            (0..5).map(|_| once()).fold(f64::INFINITY, f64::min)
        })
        .collect();
    milliseconds.sort_by(f64::total_cmp);
    println!("median {:.2} ms, p99 {:.2} ms", milliseconds[200], milliseconds[396]);
}

/// Ninety invented pots of a base and two pigments, with a target that additions nearly reach, against the best of every
/// choice of components from many starts.
#[test]
fn in_ninety_pots_no_search_is_a_hundredth_off_the_best() {
    let bench = Bench::stored();
    let garment = shirt(&bench);
    let mut random = dice(90);
    let mut worst = (0.0_f64, 0);
    for round in 0..360 {
        let seen = if round % 2 == 0 { POT } else { two_hits(&garment) };
        let mut grams = vec![0.0; bench.components.len()];
        grams[0] = 300.0 + 600.0 * random();
        for _ in 0..2 {
            let pigment = 1 + (random() * 5.0) as usize;
            grams[pigment] += (40.0_f64.ln() * random()).exp();
        }
        let parts = |grams: &[f64]| grams.iter().copied().zip(&bench.components).collect::<Vec<_>>();
        let mut aim = grams.clone();
        let total: f64 = grams.iter().sum();
        for _ in 0..2 {
            aim[(random() * 7.0) as usize % 7] += total * (0.002_f64.ln() + random() * (0.15_f64 / 0.002).ln()).exp();
        }
        let near = predict(&parts(&aim), seen).unwrap().lab();
        let mut about = || (random() - 0.5) * 2.0;
        let target = Lab::new(near.l + about(), near.a + about(), near.b + about());
        let pot = Constants::mix(&parts(&grams)).unwrap();
        let limited = round % 4 > 1;
        let stock: Vec<f64> = grams.iter().map(|_| 3.0 + 397.0 * random()).collect();
        let room = if limited { 2.0 + 248.0 * random() } else { 1e6 };
        // From where a search of sixteen starts was six hundredths off.
        if round < 270 {
            continue;
        }
        let most = [None, Some(0.04), Some(0.08), Some(0.08), Some(0.06), Some(0.08), None];
        let candidates = bench.candidates(&grams, &stock, if limited { &most } else { &[None; 7] });
        let problem = CorrectionProblem {
            seen,
            grams: total,
            headroom: room,
            all_pigment: limited.then(|| PigmentLimit { most: 0.1, now: pigment_in(&grams) }),
            resolution: 0.0,
            near_enough: 0.0,
            ..simple(&pot, &candidates, target)
        };
        let model = Model::of(&problem);
        let found = search::best_of_each_size(&model, 3);
        for size in 2..=3 {
            let (ours, best) = ours_and_best(&model, &found, size);
            if ours - best > worst.0 {
                worst = (ours - best, round);
            }
        }
    }
    assert!(worst.0 < 0.01, "{worst:?}");
}
