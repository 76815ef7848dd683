//! How alike neighbouring pieces are.

/// Correlations that are weighed against each other while a run goes.
pub(super) const GRID: [f64; 6] = [-0.3, 0.0, 0.2, 0.4, 0.6, 0.8];
/// A probability for each.
pub(super) type Weights = [f64; GRID.len()];

/// Where nothing is known. Our own.
const UNKNOWN: Weights = [0.05, 0.58, 0.18, 0.11, 0.055, 0.025];
/// How much runs of a shop differ in it: a standard deviation. Our own.
const BETWEEN_RUNS: f64 = 0.1;

/// The weights where nothing is known.
pub(super) fn weights_unknown() -> Weights {
    UNKNOWN
}

/// The correlation at which pieces four apart differ `ratio` times as much (in square) as neighbours: 1 + ρ +
/// ρ² + ρ³, from E(d₁²) = 2σ²(1 − ρ) and E(d₄²) = 2σ²(1 − ρ⁴).
pub(super) fn estimate(ratio: f64) -> f64 {
    let (mut low, mut high) = (-0.6_f64, 0.95_f64);
    for _ in 0..20 {
        let rho = f64::midpoint(low, high);
        if 1.0 + rho * (1.0 + rho * (1.0 + rho)) < ratio { low = rho } else { high = rho }
    }
    f64::midpoint(low, high)
}

/// The weights after an [`estimate`] from so many `pairs` of gaps, and their mean. For independent pieces the
/// variance of the estimate is about 2/pairs.
pub(super) fn weights_from(estimate: f64, pairs: f64) -> (Weights, f64) {
    let variance = 2.0 / pairs + BETWEEN_RUNS * BETWEEN_RUNS;
    let raw: Weights = std::array::from_fn(|at| UNKNOWN[at] * (-0.5 * (GRID[at] - estimate).powi(2) / variance).exp());
    let sum: f64 = raw.iter().sum();
    let weights = raw.map(|weight| weight / sum);
    let mean = weights.iter().zip(GRID).map(|(weight, rho)| weight * rho).sum();
    (weights, mean)
}
