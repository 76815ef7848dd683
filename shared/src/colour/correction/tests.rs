//! Tests the advice on additions against scipy's bounded solvers and an exhaustive search.

use super::*;
use crate::colour::check_rows::near;
use crate::colour::{BANDS, Bands, Origin, Print, Reflectance, Surface, ciede2000, predict};
use proptest::prelude::*;
use serde_json::Value;

mod many;

fn bands(value: &Value) -> Bands {
    let list = value.as_array().unwrap();
    assert_eq!(list.len(), BANDS);
    std::array::from_fn(|band| list[band].as_f64().unwrap())
}

fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(|number| number.as_f64().unwrap()).collect()
}

/// Invented components, and the corrections that scipy's bounded solvers found for them.
struct Bench {
    data: Value,
    components: Vec<Constants>,
}

impl Bench {
    /// Source: `ink_corrections.json`, made by `ink_corrections.py` beside it.
    fn stored() -> Self {
        let data: Value = serde_json::from_str(include_str!("../../../tests/data/ink_corrections.json")).unwrap();
        let components = data["components"].as_array().unwrap().iter();
        let components = components
            .map(|one| Constants { k: bands(&one["k"]), s: bands(&one["s"]), origin: Origin::Measured })
            .collect();
        Self { data, components }
    }

    fn mixed(&self, grams: &[f64]) -> Constants {
        let parts: Vec<_> = grams.iter().copied().zip(&self.components).collect();
        Constants::mix(&parts).unwrap()
    }

    fn candidates(&self, pot: &[f64], stock: &[f64], most: &[Option<f64>]) -> Vec<Candidate<'_>> {
        let white_or_clear = |candidate: usize| candidate == 0 || candidate == 6;
        (0..self.components.len())
            .map(|candidate| Candidate {
                constants: &self.components[candidate],
                in_pot: pot[candidate],
                stock: stock[candidate],
                most: most[candidate],
                pigment: !white_or_clear(candidate),
                all_pigment: None,
            })
            .collect()
    }
}

fn pigment_in(pot: &[f64]) -> f64 {
    pot[1..6].iter().sum()
}

/// Ours may be better than theirs, and is never worse by a hundredth of a unit.
#[test]
fn additions_come_as_close_as_an_independent_bounded_solver() {
    let bench = Bench::stored();
    let cases = bench.data["cases"].as_array().unwrap();
    assert!(cases.len() >= 50);
    let mut worst = 0.0_f64;
    for (number, case) in cases.iter().enumerate() {
        let (pot, stock) = (numbers(&case["pot"]), numbers(&case["stock"]));
        let most: Vec<Option<f64>> = case["most"].as_array().unwrap().iter().map(Value::as_f64).collect();
        let mixed = bench.mixed(&pot);
        let target = numbers(&case["target"]);
        let garment = case["garment"].as_str().map(|name| {
            let curve = bands(&bench.data["garments"][name]);
            Reflectance { bands: curve, origin: Origin::Measured }
        });
        let seen = match &garment {
            None => Viewing::InBulk(Surface::NONE),
            Some(garment) => Viewing::Printed(Print {
                garment,
                underbase: None,
                hits: 1,
                films_per_hit: case["films"].as_f64().unwrap(),
                surface: Surface::NONE,
            }),
        };
        let candidates = bench.candidates(&pot, &stock, &most);
        let problem = CorrectionProblem {
            pot: &mixed,
            grams: pot.iter().sum(),
            headroom: case["room"].as_f64().unwrap(),
            target: Lab::new(target[0], target[1], target[2]),
            seen,
            candidates: &candidates,
            all_pigment: case["all_pigment"].as_f64().map(|most| PigmentLimit { most, now: pigment_in(&pot) }),
            max_components: 3,
            resolution: 0.0,
            near_enough: 0.0,
        };
        let model = Model::of(&problem);
        near(model.off(&[], &[]), case["before"].as_f64().unwrap(), 1e-6);
        let found = search::best_of_each_size(&model, 3);
        let mut least = model.cost(&[], &[]).sqrt();
        for (size, theirs) in case["best"].as_array().unwrap().iter().enumerate() {
            if let Some(ours) = found.iter().find(|found| found.candidates.len() == size + 1) {
                assert!(model.allows(&ours.candidates, &ours.parts[..ours.candidates.len()]), "case {number}");
                least = least.min(ours.cost.sqrt());
            }
            let theirs = theirs["cost"].as_f64().unwrap();
            if least > theirs + 0.002 {
                println!("case {number}, {} components: ours {least:.4}, theirs {theirs:.4}", size + 1);
            }
            worst = worst.max(least - theirs);
        }
    }
    assert!(worst < 0.01, "{worst}");
}

const POT: Viewing = Viewing::InBulk(Surface::NONE);

fn simple<'a>(pot: &'a Constants, candidates: &'a [Candidate<'a>], target: Lab) -> CorrectionProblem<'a> {
    CorrectionProblem {
        pot,
        grams: 500.0,
        headroom: 300.0,
        target,
        seen: POT,
        candidates,
        all_pigment: None,
        max_components: 3,
        resolution: 0.1,
        near_enough: 0.5,
    }
}

#[test]
fn a_missing_touch_of_blue_is_found_to_the_gram() {
    let bench = Bench::stored();
    let short = [500.0, 0.0, 6.0, 0.0, 3.0, 0.0, 0.0];
    let right = [500.0, 0.0, 6.0, 0.0, 7.4, 0.0, 0.0];
    let pot = bench.mixed(&short);
    let target = POT.look(&bench.mixed(&right)).lab();
    let candidates = bench.candidates(&short, &[100.0; 7], &[None; 7]);
    let advice = what_to_add(&CorrectionProblem { grams: 509.0, ..simple(&pot, &candidates, target) }).unwrap();
    assert_eq!(advice.outcome, Outcome::GetsThere);
    let way = advice.ways.last().unwrap();
    assert_eq!(way.additions.len(), 1);
    assert_eq!(way.additions[0].candidate, 4);
    near(way.additions[0].grams, 4.4, 0.11);
    assert!(way.after < 0.1 && advice.before > 2.0);
}

#[test]
fn a_pot_that_is_near_enough_needs_nothing() {
    let bench = Bench::stored();
    let grams = [500.0, 0.0, 6.0, 0.0, 3.0, 0.0, 0.0];
    let pot = bench.mixed(&grams);
    let candidates = bench.candidates(&grams, &[100.0; 7], &[None; 7]);
    let advice = what_to_add(&simple(&pot, &candidates, POT.look(&pot).lab())).unwrap();
    assert_eq!(advice.outcome, Outcome::AlreadyThere);
    assert!(advice.ways.is_empty());
}

#[test]
fn a_colour_that_no_addition_reaches_is_reported() {
    let bench = Bench::stored();
    let grams = [100.0, 40.0, 0.0, 0.0, 0.0, 0.0, 0.0];
    let pot = bench.mixed(&grams);
    // A dark grey pot; the yellow target would need a bucket of everything else.
    let target = Lab::new(85.0, 0.0, 90.0);
    let candidates = bench.candidates(&grams, &[50.0; 7], &[None; 7]);
    let advice =
        what_to_add(&CorrectionProblem { grams: 140.0, headroom: 60.0, ..simple(&pot, &candidates, target) }).unwrap();
    assert_eq!(advice.outcome, Outcome::OnlyCloser);
    let full =
        what_to_add(&CorrectionProblem { grams: 140.0, headroom: 0.0, ..simple(&pot, &candidates, target) }).unwrap();
    assert_eq!(full.outcome, Outcome::NothingHelps);
    assert!(full.ways.is_empty());
    let bare = what_to_add(&CorrectionProblem { candidates: &[], ..simple(&pot, &[], target) }).unwrap();
    assert_eq!(bare.outcome, Outcome::NothingHelps);
}

#[test]
fn a_limit_already_broken_is_not_broken_further() {
    let bench = Bench::stored();
    let grams = [500.0, 0.0, 60.0, 0.0, 3.0, 0.0, 0.0];
    let pot = bench.mixed(&grams);
    let most = [None, None, Some(0.05), None, None, None, None];
    let candidates = bench.candidates(&grams, &[500.0; 7], &most);
    let target = POT.look(&bench.mixed(&[500.0, 0.0, 120.0, 0.0, 3.0, 0.0, 0.0])).lab();
    let advice =
        what_to_add(&CorrectionProblem { grams: 563.0, near_enough: 0.0, ..simple(&pot, &candidates, target) })
            .unwrap();
    for way in &advice.ways {
        let yellow: f64 =
            way.additions.iter().filter(|addition| addition.candidate == 2).map(|addition| addition.grams).sum();
        assert!((60.0 + yellow) / (563.0 + way.grams()) <= 60.0 / 563.0 + 1e-9);
    }
}

#[test]
fn an_added_base_brings_the_limit_of_its_data_sheet() {
    let bench = Bench::stored();
    let grams = [0.0, 0.0, 6.0, 0.0, 3.0, 0.0, 500.0];
    let pot = bench.mixed(&grams);
    let target = POT.look(&bench.mixed(&[100.0, 0.0, 6.0, 20.0, 3.0, 0.0, 500.0])).lab();
    let mut candidates = bench.candidates(&grams, &[400.0; 7], &[None; 7]);
    let both = |candidates: &[Candidate]| {
        let problem = CorrectionProblem {
            grams: 509.0,
            headroom: 400.0,
            all_pigment: Some(PigmentLimit { most: 1.0, now: 9.0 }),
            ..simple(&pot, candidates, target)
        };
        let ways = what_to_add(&problem).unwrap().ways;
        let of = |way: &Correction, candidate: usize| -> f64 {
            way.additions.iter().filter(|addition| addition.candidate == candidate).map(|addition| addition.grams).sum()
        };
        let with_white = ways.iter().filter(|way| of(way, 0) > 0.0);
        let share = with_white.map(|way| (9.0 + way.grams() - of(way, 6) - of(way, 0)) / (509.0 + way.grams()));
        share.fold(0.0, f64::max)
    };
    let free = both(&candidates);
    assert!(free > 0.03, "{free}");
    candidates[0].all_pigment = Some(0.02);
    let held = both(&candidates);
    assert!(held <= 0.02 + 1e-9, "{held}");
}

#[test]
fn impossible_input_gets_no_advice() {
    let bench = Bench::stored();
    let grams = [500.0, 0.0, 6.0, 0.0, 3.0, 0.0, 0.0];
    let pot = bench.mixed(&grams);
    let candidates = bench.candidates(&grams, &[100.0; 7], &[None; 7]);
    let problem = simple(&pot, &candidates, Lab::new(50.0, 0.0, 0.0));
    assert!(what_to_add(&CorrectionProblem { grams: 0.0, ..problem }).is_none());
    assert!(what_to_add(&CorrectionProblem { headroom: f64::NAN, ..problem }).is_none());
    assert!(what_to_add(&CorrectionProblem { target: Lab::new(f64::NAN, 0.0, 0.0), ..problem }).is_none());
    let broken = [Candidate { stock: -1.0, ..candidates[0] }];
    assert!(what_to_add(&CorrectionProblem { candidates: &broken, ..problem }).is_none());
}

fn any_ink() -> impl Strategy<Value = Constants> {
    (0.0..1.0, 0.03..0.4, -3.0..4.0_f64, -3.0..1.0_f64, -4.0..1.0_f64).prop_map(|(at, width, strong, weak, scatter)| {
        let k = std::array::from_fn(|band| {
            let x: f64 = (band as f64 / 30.0 - at) / width;
            weak.exp() + strong.exp() * (-x * x).exp()
        });
        Constants { k, s: [scatter.exp(); BANDS], origin: Origin::Reconstructed }
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1_200, ..ProptestConfig::default() })]

    #[test]
    fn no_advice_is_worse_than_adding_nothing(
        inks in proptest::collection::vec((any_ink(), 0.0..300.0_f64, 0.0..500.0_f64, proptest::option::of(0.0..0.3)), 1..8),
        target in (2.0..98.0, -60.0..60.0, -60.0..60.0),
        headroom in 0.0..400.0_f64,
        printed in proptest::option::of((0.02..0.9, 0.3..3.0)),
        limit in proptest::option::of(0.0..0.3),
        resolution in prop_oneof![Just(0.0), Just(0.1), Just(1.0), Just(5.0)],
    ) {
        let recipe: Vec<(f64, &Constants)> = inks.iter().map(|(ink, grams, ..)| (grams + 0.5, ink)).collect();
        let grams: f64 = recipe.iter().map(|(grams, _)| grams).sum();
        let pot = Constants::mix(&recipe).unwrap();
        let garment = Reflectance::flat(printed.map_or(0.5, |(shirt, _)| shirt));
        let seen = match printed {
            None => POT,
            Some((_, films_per_hit)) => Viewing::Printed(Print {
                garment: &garment, underbase: None, hits: 1, films_per_hit, surface: Surface::NONE,
            }),
        };
        let candidates: Vec<Candidate> = inks
            .iter()
            .map(|(ink, grams, stock, most)| Candidate {
                constants: ink, in_pot: grams + 0.5, stock: *stock, most: *most, pigment: ink.k[9] > 1.0, all_pigment: None,
            })
            .collect();
        let pigment: f64 = candidates.iter().filter(|candidate| candidate.pigment).map(|candidate| candidate.in_pot).sum();
        let target = Lab::new(target.0, target.1, target.2);
        let problem = CorrectionProblem {
            pot: &pot, grams, headroom, target, seen, candidates: &candidates, all_pigment: limit.map(|most| PigmentLimit { most, now: pigment }),
            max_components: 3, resolution, near_enough: 0.5,
        };
        let advice = what_to_add(&problem).unwrap();
        let mut nearest = advice.before;
        prop_assert!((advice.before - ciede2000(target, seen.look(&pot).lab())).abs() < 1e-9);
        for way in &advice.ways {
            prop_assert!(way.after < nearest);
            nearest = way.after;
            prop_assert!((1..=3).contains(&way.additions.len()));
            prop_assert!(way.grams() <= headroom + 1e-6);
            let whole = grams + way.grams();
            let mut then = recipe.clone();
            for addition in &way.additions {
                let candidate = &candidates[addition.candidate];
                prop_assert!(addition.grams > 0.0 && addition.grams <= candidate.stock + 1e-6);
                then[addition.candidate].0 += addition.grams;
                if resolution > 0.0 {
                    let steps = addition.grams / resolution;
                    prop_assert!((steps - steps.round()).abs() < 1e-6);
                }
            }
            for (candidate, (grams_then, _)) in candidates.iter().zip(&then) {
                if let Some(most) = candidate.most {
                    prop_assert!(grams_then / whole <= most.max(candidate.in_pot / grams) + 1e-9);
                }
            }
            // The colour promised is the one predicted for the recipe as a whole.
            let look = predict(&then, seen).unwrap().lab();
            prop_assert!((ciede2000(target, look) - way.after).abs() < 1e-6);
        }
        match advice.outcome {
            Outcome::AlreadyThere => prop_assert!(advice.before <= 0.5),
            Outcome::NothingHelps => prop_assert!(advice.ways.is_empty()),
            Outcome::GetsThere => prop_assert!(nearest <= 0.5),
            Outcome::OnlyCloser => prop_assert!(nearest > 0.5 && !advice.ways.is_empty()),
        }
    }
}
