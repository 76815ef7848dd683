//! Searches which components to add, and how much of each.

use super::model::Model;
use super::step::{dot, least_within};
use crate::collections::sort_by;
use crate::colour::ciede2000;

/// Some of the candidates and the amount of each, in parts of the pot.
#[derive(Clone)]
pub struct Solution {
    pub candidates: Vec<usize>,
    pub parts: [f64; 3],
    pub cost: f64,
}

/// Starts of each size that are optimised roughly: those that look most promising.
const OPTIMISED_STARTS: usize = 40;
/// Of these, those that are optimised to the end.
const FINISHED_STARTS: usize = 3;
/// Pairs to which a third component is added.
const EXTENDED_PAIRS: usize = 24;

/// The best solutions with one, two and three components, in this order; a size without a solution is left out.
pub fn best_of_each_size(model: &Model, max_components: usize) -> Vec<Solution> {
    let levels: Vec<StartAmounts> =
        (0..model.candidates.len()).map(|candidate| StartAmounts::of(model, candidate)).collect();
    let ones = (0..model.candidates.len()).filter(|candidate| levels[*candidate].best > 0.0).map(|candidate| {
        let parts = [levels[candidate].best, 0.0, 0.0];
        Solution { candidates: vec![candidate], parts, cost: model.cost(&[candidate], &parts[..1]) }
    });
    let mut grown = optimise_best(model, ones.collect());
    let mut out = Vec::new();
    for size in 1..=max_components {
        if size > 1 {
            grown = extend(model, &grown, &levels, size);
        }
        // Only the end of the descent tells which of the best starts is the best.
        let mut finished: Vec<Solution> = grown
            .iter()
            .take(FINISHED_STARTS)
            .map(|tried| optimise(model, tried.candidates.clone(), tried.parts, false))
            .collect();
        rank(&mut finished);
        out.extend(finished.into_iter().next());
    }
    out
}

fn rank(found: &mut Vec<Solution>) {
    sort_by(found, |one, other| one.cost.total_cmp(&other.cost));
}

/// Starting amounts of one component: the best of a coarse scan, and two that move the colour by about half and by all
/// of the missing difference.
struct StartAmounts {
    best: f64,
    half: f64,
    whole: f64,
}

impl StartAmounts {
    fn of(model: &Model, candidate: usize) -> Self {
        let chosen = [candidate];
        // The data sheets' limits are left out: another component may make room under them.
        let most = model.at_hand(candidate);
        let (from, missing) = (model.look(&[], &[]), model.off(&[], &[]));
        let (mut best, mut least) = (0.0, missing * missing);
        let (mut half, mut whole) = (most, most);
        // From all that is available down to a hundred-thousandth of it.
        for index in 0..11 {
            let part = most * (-1.15 * f64::from(index)).exp();
            let look = model.look(&chosen, &[part]);
            let cost = model.cost_of(look, part);
            if cost < least && model.allows(&chosen, &[part]) {
                (best, least) = (part, cost);
            }
            let moved = ciede2000(from, look);
            if moved >= missing {
                whole = part;
            }
            if moved >= 0.4 * missing {
                half = part;
            }
        }
        Self { best, half, whole }
    }
}

/// Adds one more component to each solution and optimises the most promising results.
fn extend(model: &Model, smaller: &[Solution], levels: &[StartAmounts], size: usize) -> Vec<Solution> {
    let mut tries: Vec<Solution> = Vec::new();
    let mut look_at = |candidates: Vec<usize>, parts: [f64; 3]| {
        let parts = nearest_allowed(model, &candidates, parts);
        let cost = model.cost(&candidates, &parts[..size]);
        match tries.iter_mut().find(|tried| same(&tried.candidates, &candidates)) {
            Some(tried) if tried.cost <= cost => {}
            Some(tried) => *tried = Solution { candidates, parts, cost },
            None => tries.push(Solution { candidates, parts, cost }),
        }
    };
    let all: Vec<usize> = (0..model.candidates.len()).collect();
    if size == 2 {
        for (index, one) in all.iter().enumerate() {
            for other in &all[index + 1..] {
                let (p, q) = (&levels[*one], &levels[*other]);
                // A component that helps alone is a start already; its partner joins at zero.
                let alone = |at: &StartAmounts| if at.best > 0.0 { at.best } else { at.half };
                for parts in
                    [[alone(p), 0.0, 0.0], [0.0, alone(q), 0.0], [p.half, q.half, 0.0], [p.whole, q.whole, 0.0]]
                {
                    look_at(vec![*one, *other], parts);
                }
            }
        }
    } else {
        for pair in smaller.iter().take(EXTENDED_PAIRS) {
            for third in all.iter().filter(|third| !pair.candidates.contains(third)) {
                for part in [0.0, levels[*third].half, levels[*third].whole] {
                    let mut candidates = pair.candidates.clone();
                    candidates.push(*third);
                    look_at(candidates, [pair.parts[0], pair.parts[1], part]);
                }
            }
        }
    }
    optimise_best(model, tries)
}

/// Optimises the most promising starts; best first.
fn optimise_best(model: &Model, mut tries: Vec<Solution>) -> Vec<Solution> {
    rank(&mut tries);
    let starts = tries.into_iter().take(OPTIMISED_STARTS);
    let mut followed: Vec<Solution> =
        starts.map(|tried| optimise(model, tried.candidates, tried.parts, true)).collect();
    rank(&mut followed);
    followed
}

fn same(one: &[usize], other: &[usize]) -> bool {
    one.len() == other.len() && one.iter().all(|candidate| other.contains(candidate))
}

/// The nearest amounts that the limits allow, distances measured relative to each amount: where pigment is at its
/// limit, some of the base that makes room for it stays in.
fn nearest_allowed(model: &Model, candidates: &[usize], parts: [f64; 3]) -> [f64; 3] {
    let size = candidates.len();
    if model.allows(candidates, &parts[..size]) {
        return parts;
    }
    let limits = model.limits(candidates);
    let rooms: Vec<f64> = limits.iter().map(|limit| limit.most).collect();
    let (mut h, mut g) = ([[0.0; 3]; 3], [0.0; 3]);
    for index in 0..size {
        let weight = parts[index].max(1e-4).powi(-2);
        h[index][index] = weight;
        g[index] = -weight * parts[index];
    }
    let found = least_within(size, h, g, &limits, &rooms);
    furthest(model, candidates, found.map(|part| part.max(0.0)))
}

/// The parts scaled down as far as the limits require.
fn furthest(model: &Model, candidates: &[usize], parts: [f64; 3]) -> [f64; 3] {
    let mut share = 1.0_f64;
    for limit in model.limits(candidates) {
        let along = dot(limit.weights, parts);
        // An excess this small is rounding; under a limit of zero it must not remove everything.
        if along > limit.most + 1e-10 {
            share = share.min(limit.most.max(0.0) / along);
        }
    }
    parts.map(|part| part * share)
}

/// Descends to the minimum near a start within the limits: Levenberg-Marquardt method.
fn optimise(model: &Model, candidates: Vec<usize>, start: [f64; 3], quick: bool) -> Solution {
    let size = candidates.len();
    let limits = model.limits(&candidates);
    let mut parts = start;
    let mut cost = model.cost(&candidates, &parts[..size]);
    let mut damping = 1e-3;
    for _ in 0..if quick { 8 } else { 40 } {
        let at = model.linearise(&candidates, &parts[..size], quick);
        let (mut h, mut g) = ([[0.0; 3]; 3], [0.0; 3]);
        for row in 0..size {
            for column in 0..size {
                h[row][column] = product(at.derivatives[row], at.derivatives[column]);
            }
            g[row] = product(at.derivatives[row], at.residuals);
        }
        let rooms: Vec<f64> = limits.iter().map(|limit| limit.most - dot(limit.weights, parts)).collect();
        let mut gained = 0.0;
        for _ in 0..6 {
            let mut damped = h;
            for (index, row) in damped.iter_mut().enumerate() {
                row[index] += damping * row[index] + 1e-9;
            }
            let step = least_within(size, damped, g, &limits, &rooms);
            let tried = [0, 1, 2].map(|index| (parts[index] + step[index]).max(0.0));
            let there = model.cost(&candidates, &tried[..size]);
            if there < cost {
                gained = cost - there;
                (parts, cost) = (tried, there);
                damping = (damping * 0.2).max(1e-9);
                break;
            }
            damping *= 10.0;
        }
        if gained <= if quick { 1e-3 } else { 1e-10 } * (1.0 + cost) {
            break;
        }
    }
    let parts = furthest(model, &candidates, parts);
    Solution { cost: model.cost(&candidates, &parts[..size]), candidates, parts }
}

fn product(a: [f64; 4], b: [f64; 4]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2] + a[3] * b[3]
}

/// Optimises every choice of `size` components from many starts: slow, to test the search's shortcuts.
#[cfg(test)]
pub fn best_of_all(model: &Model, size: usize) -> f64 {
    let levels: Vec<StartAmounts> =
        (0..model.candidates.len()).map(|candidate| StartAmounts::of(model, candidate)).collect();
    let count = levels.len();
    let mut best = f64::INFINITY;
    let mut each = |candidates: Vec<usize>| {
        let of = |pick: fn(&StartAmounts) -> f64| -> [f64; 3] {
            std::array::from_fn(|index| candidates.get(index).map_or(0.0, |candidate| pick(&levels[*candidate])))
        };
        for start in [[0.0; 3], of(|level| level.best), of(|level| level.half), of(|level| level.half * 0.2)] {
            let start = nearest_allowed(model, &candidates, start);
            best = best.min(optimise(model, candidates.clone(), start, false).cost);
        }
    };
    for one in 0..count {
        for other in one + 1..count {
            if size == 2 {
                each(vec![one, other]);
            } else {
                (other + 1..count).for_each(|third| each(vec![one, other, third]));
            }
        }
    }
    best
}
