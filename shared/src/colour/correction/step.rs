//! One step of the search: minimises a quadratic function within linear limits, in at most three unknowns.

use super::model::Limit;

/// The step p from 0 that minimises ½·pᵀHp + gᵀp subject to `limits[i]·p ≤ rooms[i]`. `h` must be positive definite and
/// `rooms` at least 0. Active-set method: move to the minimum on the active limits, add each limit met on the way, drop the
/// one with the most negative multiplier.
pub fn least_within(size: usize, h: [[f64; 3]; 3], g: [f64; 3], limits: &[Limit], rooms: &[f64]) -> [f64; 3] {
    let mut p = [0.0; 3];
    let mut active: Vec<usize> = Vec::with_capacity(3);
    for _ in 0..24 {
        let Some((walk, multipliers)) = walk(size, h, g, p, limits, &active) else { break };
        let length = walk.iter().fold(0.0_f64, |most, by| most.max(by.abs()));
        if length < 1e-15 {
            // At the minimum on the active limits: drop a limit with a negative multiplier.
            let worst = (0..active.len()).min_by(|a, b| multipliers[*a].total_cmp(&multipliers[*b]));
            match worst {
                Some(index) if multipliers[index] < -1e-12 => {
                    active.remove(index);
                    continue;
                }
                _ => break,
            }
        }
        let (mut part, mut met) = (1.0, None);
        for (index, limit) in limits.iter().enumerate() {
            let along = dot(limit.weights, walk);
            if active.contains(&index) || along <= 1e-15 {
                continue;
            }
            let free = (rooms[index] - dot(limit.weights, p)).max(0.0) / along;
            if free < part {
                (part, met) = (free, Some(index));
            }
        }
        for (value, by) in p.iter_mut().zip(walk) {
            *value += part * by;
        }
        match met {
            Some(index) if active.len() < size => active.push(index),
            Some(_) => break,
            None => {}
        }
    }
    p
}

pub fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

const WIDEST: usize = 6;

/// The move to the minimum along the active limits, and the multiplier of each.
fn walk(
    size: usize,
    h: [[f64; 3]; 3],
    g: [f64; 3],
    p: [f64; 3],
    limits: &[Limit],
    active: &[usize],
) -> Option<([f64; 3], [f64; 3])> {
    let all = size + active.len();
    let mut rows = [[0.0; WIDEST + 1]; WIDEST];
    for row in 0..size {
        rows[row][..size].copy_from_slice(&h[row][..size]);
        rows[row][WIDEST] = -(g[row] + dot(h[row], p));
        for (index, limit) in active.iter().enumerate() {
            rows[row][size + index] = limits[*limit].weights[row];
            rows[size + index][row] = limits[*limit].weights[row];
        }
    }
    for column in 0..all {
        let pivot = (column..all).max_by(|a, b| rows[*a][column].abs().total_cmp(&rows[*b][column].abs()))?;
        rows.swap(column, pivot);
        let head = rows[column];
        if head[column].abs() < 1e-300 {
            return None;
        }
        for row in rows.iter_mut().take(all).skip(column + 1) {
            let factor = row[column] / head[column];
            for index in column..=WIDEST {
                row[index] -= factor * head[index];
            }
        }
    }
    let mut out = [0.0; WIDEST];
    for column in (0..all).rev() {
        let known: f64 = (column + 1..all).map(|index| rows[column][index] * out[index]).sum();
        out[column] = (rows[column][WIDEST] - known) / rows[column][column];
    }
    let (mut walk, mut multipliers) = ([0.0; 3], [0.0; 3]);
    walk[..size].copy_from_slice(&out[..size]);
    multipliers[..active.len()].copy_from_slice(&out[size..all]);
    walk.iter().all(|by| by.is_finite()).then_some((walk, multipliers))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::near;

    fn limit(weights: [f64; 3], most: f64) -> Limit {
        Limit { weights, most }
    }

    fn least(h: [[f64; 3]; 3], g: [f64; 3], limits: &[Limit]) -> [f64; 3] {
        let rooms: Vec<f64> = limits.iter().map(|limit| limit.most).collect();
        least_within(3, h, g, limits, &rooms)
    }

    const ROUND: [[f64; 3]; 3] = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];

    /// Expected values by projection: for a round bowl the minimum within the limits is their point nearest to its
    /// centre.
    #[test]
    fn a_round_bowl_ends_at_the_nearest_point_of_the_limits() {
        let box_of_one: Vec<Limit> = (0..3)
            .flat_map(|at| {
                let one = |weight| std::array::from_fn(|index| if index == at { weight } else { 0.0 });
                [limit(one(1.0), 1.0), limit(one(-1.0), 0.0)]
            })
            .collect();
        for (middle, expected) in
            [([0.2, 0.3, 0.4], [0.2, 0.3, 0.4]), ([2.0, 0.5, -1.0], [1.0, 0.5, 0.0]), ([3.0, 3.0, 3.0], [1.0; 3])]
        {
            let found = least(ROUND, middle.map(|m: f64| -m), &box_of_one);
            for (ours, theirs) in found.into_iter().zip(expected) {
                near(ours, theirs, 1e-12);
            }
        }
        let mut with_sum = box_of_one.clone();
        with_sum.push(limit([1.0; 3], 1.0));
        let found = least(ROUND, [-0.9, -0.9, -0.1], &with_sum);
        for (ours, theirs) in found.into_iter().zip([0.5, 0.5, 0.0]) {
            near(ours, theirs, 1e-12);
        }
    }

    #[test]
    fn a_slanted_bowl_keeps_its_limits_and_is_minimal_nearby() {
        let h = [[4.0, 1.5, 0.5], [1.5, 3.0, -0.7], [0.5, -0.7, 2.0]];
        let g = [-3.0, 2.0, -4.0];
        let limits = [
            limit([-1.0, 0.0, 0.0], 0.0),
            limit([0.0, -1.0, 0.0], 0.0),
            limit([0.0, 0.0, -1.0], 0.0),
            limit([1.0, 1.0, 1.0], 1.2),
            limit([0.9, -0.1, -0.1], 0.3),
        ];
        let value = |p: [f64; 3]| 0.5 * dot(p, h.map(|row| dot(row, p))) + dot(g, p);
        let allowed = |p: [f64; 3]| limits.iter().all(|limit| dot(limit.weights, p) <= limit.most + 1e-9);
        let found = least(h, g, &limits);
        assert!(allowed(found));
        for step in 0..27 {
            let by = |power: u32| f64::from(step / 3_i32.pow(power) % 3 - 1) * 0.02;
            let beside = [found[0] + by(0), found[1] + by(1), found[2] + by(2)];
            assert!(!allowed(beside) || value(beside) >= value(found) - 1e-12);
        }
    }
}
