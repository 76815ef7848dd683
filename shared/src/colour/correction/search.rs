//! Searches which components to add, and how much of each.

use super::model::Model;
use super::step::{dot, least_within};
use crate::collections::sort_by;
use crate::colour::ciede2000;

/// Some of the offers and the amount of each, in parts of the pot.
#[derive(Clone)]
pub struct Found {
    pub offers: Vec<usize>,
    pub parts: [f64; 3],
    pub cost: f64,
}

/// Starts of each size that are optimised to the end: those that look most promising.
const FOLLOWED: usize = 12;
/// Pairs to which a third component is added.
const GROWN: usize = 6;

/// The best solutions with one, two and three components, in this order; a size without a solution is left out.
pub fn best_of_each_size(model: &Model, at_most: usize) -> Vec<Found> {
    let levels: Vec<Levels> = (0..model.offers.len()).map(|offer| Levels::of(model, offer)).collect();
    let ones = (0..model.offers.len()).filter(|offer| levels[*offer].best > 0.0).map(|offer| {
        let parts = [levels[offer].best, 0.0, 0.0];
        Found { offers: vec![offer], parts, cost: model.cost(&[offer], &parts[..1]) }
    });
    let mut grown = follow_best(model, ones.collect());
    let mut out = Vec::new();
    for size in 1..=at_most {
        if size > 1 {
            grown = grow(model, &grown, &levels, size);
        }
        if let Some(best) = grown.first() {
            out.push(follow(model, best.offers.clone(), best.parts, false));
        }
    }
    out
}

fn rank(found: &mut Vec<Found>) {
    sort_by(found, |one, other| one.cost.total_cmp(&other.cost));
}

/// Starting amounts of one component: the best of a coarse scan, and two that move the colour by about half and by all
/// of the missing difference.
struct Levels {
    best: f64,
    half: f64,
    whole: f64,
}

impl Levels {
    fn of(model: &Model, offer: usize) -> Self {
        let chosen = [offer];
        // The data sheets' limits are left out: another component may make room under them.
        let most = model.at_hand(offer);
        let (from, missing) = (model.look(&[], &[]), model.off(&[], &[]));
        let (mut best, mut least) = (0.0, missing * missing);
        let (mut half, mut whole) = (most, most);
        // From all that is available down to a hundred-thousandth of it.
        for place in 0..11 {
            let part = most * (-1.15 * f64::from(place)).exp();
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
fn grow(model: &Model, smaller: &[Found], levels: &[Levels], size: usize) -> Vec<Found> {
    let mut tries: Vec<Found> = Vec::new();
    let mut look_at = |offers: Vec<usize>, parts: [f64; 3]| {
        let parts = nearest_allowed(model, &offers, parts);
        let cost = model.cost(&offers, &parts[..size]);
        match tries.iter_mut().find(|tried| same(&tried.offers, &offers)) {
            Some(tried) if tried.cost <= cost => {}
            Some(tried) => *tried = Found { offers, parts, cost },
            None => tries.push(Found { offers, parts, cost }),
        }
    };
    let all: Vec<usize> = (0..model.offers.len()).collect();
    if size == 2 {
        for (place, one) in all.iter().enumerate() {
            for other in &all[place + 1..] {
                let (p, q) = (&levels[*one], &levels[*other]);
                // A component that helps alone is a start already; its partner joins at zero.
                let alone = |at: &Levels| if at.best > 0.0 { at.best } else { at.half };
                for parts in
                    [[alone(p), 0.0, 0.0], [0.0, alone(q), 0.0], [p.half, q.half, 0.0], [p.whole, q.whole, 0.0]]
                {
                    look_at(vec![*one, *other], parts);
                }
            }
        }
    } else {
        for pair in smaller.iter().take(GROWN) {
            for third in all.iter().filter(|third| !pair.offers.contains(third)) {
                for part in [0.0, levels[*third].half, levels[*third].whole] {
                    let mut offers = pair.offers.clone();
                    offers.push(*third);
                    look_at(offers, [pair.parts[0], pair.parts[1], part]);
                }
            }
        }
    }
    follow_best(model, tries)
}

/// Optimises the most promising starts; best first.
fn follow_best(model: &Model, mut tries: Vec<Found>) -> Vec<Found> {
    rank(&mut tries);
    let starts = tries.into_iter().take(FOLLOWED);
    let mut followed: Vec<Found> = starts.map(|tried| follow(model, tried.offers, tried.parts, true)).collect();
    rank(&mut followed);
    followed
}

fn same(one: &[usize], other: &[usize]) -> bool {
    one.len() == other.len() && one.iter().all(|offer| other.contains(offer))
}

/// The nearest amounts that the limits allow, distances measured relative to each amount: where pigment is at its
/// limit, some of the base that makes room for it stays in.
fn nearest_allowed(model: &Model, offers: &[usize], parts: [f64; 3]) -> [f64; 3] {
    let size = offers.len();
    if model.allows(offers, &parts[..size]) {
        return parts;
    }
    let limits = model.limits(offers);
    let rooms: Vec<f64> = limits.iter().map(|limit| limit.most).collect();
    let (mut h, mut g) = ([[0.0; 3]; 3], [0.0; 3]);
    for place in 0..size {
        let weight = parts[place].max(1e-4).powi(-2);
        h[place][place] = weight;
        g[place] = -weight * parts[place];
    }
    let found = least_within(size, h, g, &limits, &rooms);
    furthest(model, offers, found.map(|part| part.max(0.0)))
}

/// The parts scaled down as far as the limits require.
fn furthest(model: &Model, offers: &[usize], parts: [f64; 3]) -> [f64; 3] {
    let mut share = 1.0_f64;
    for limit in model.limits(offers) {
        let along = dot(limit.weights, parts);
        // An excess this small is rounding; under a limit of zero it must not remove everything.
        if along > limit.most + 1e-10 {
            share = share.min(limit.most.max(0.0) / along);
        }
    }
    parts.map(|part| part * share)
}

/// Descends to the minimum near a start within the limits: Levenberg-Marquardt method.
fn follow(model: &Model, offers: Vec<usize>, start: [f64; 3], quick: bool) -> Found {
    let size = offers.len();
    let limits = model.limits(&offers);
    let mut parts = start;
    let mut cost = model.cost(&offers, &parts[..size]);
    let mut damping = 1e-3;
    for _ in 0..if quick { 8 } else { 40 } {
        let at = model.slopes(&offers, &parts[..size], quick);
        let (mut h, mut g) = ([[0.0; 3]; 3], [0.0; 3]);
        for row in 0..size {
            for column in 0..size {
                h[row][column] = product(at.slopes[row], at.slopes[column]);
            }
            g[row] = product(at.slopes[row], at.misses);
        }
        let rooms: Vec<f64> = limits.iter().map(|limit| limit.most - dot(limit.weights, parts)).collect();
        let mut gained = 0.0;
        for _ in 0..6 {
            let mut damped = h;
            for (place, row) in damped.iter_mut().enumerate() {
                row[place] += damping * row[place] + 1e-9;
            }
            let step = least_within(size, damped, g, &limits, &rooms);
            let tried = [0, 1, 2].map(|place| (parts[place] + step[place]).max(0.0));
            let there = model.cost(&offers, &tried[..size]);
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
    let parts = furthest(model, &offers, parts);
    Found { cost: model.cost(&offers, &parts[..size]), offers, parts }
}

fn product(a: [f64; 4], b: [f64; 4]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2] + a[3] * b[3]
}

/// Optimises every choice of `size` components from many starts: slow, to test the search's shortcuts.
#[cfg(test)]
pub fn best_of_all(model: &Model, size: usize) -> f64 {
    let levels: Vec<Levels> = (0..model.offers.len()).map(|offer| Levels::of(model, offer)).collect();
    let count = levels.len();
    let mut best = f64::INFINITY;
    let mut each = |offers: Vec<usize>| {
        let of = |pick: fn(&Levels) -> f64| -> [f64; 3] {
            std::array::from_fn(|place| offers.get(place).map_or(0.0, |offer| pick(&levels[*offer])))
        };
        for start in [[0.0; 3], of(|level| level.best), of(|level| level.half), of(|level| level.half * 0.2)] {
            let start = nearest_allowed(model, &offers, start);
            best = best.min(follow(model, offers.clone(), start, false).cost);
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
