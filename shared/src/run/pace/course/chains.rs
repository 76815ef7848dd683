//! Sums over chains of neighbouring gaps from which the fit under any correlation follows.
//!
//! With independent noise a gap is z, with correlation ρ to the one before it (z − ρ·z₋)/√(1 − ρ²). The sum of their
//! squares over a chain is (Σzzᵀ − ρ·Σ(zz₋ᵀ + z₋zᵀ) + ρ²·Σz₋z₋ᵀ)/(1 − ρ²): three sums for every ρ.

use super::matrix::{Matrix, TERMS, Vector};

/// One gap in standard measure.
#[derive(Clone, Copy)]
pub(super) struct Row {
    pub(super) x: Vector,
    pub(super) y: f64,
}

/// Terms and time of a gap.
type Joint = [f64; TERMS + 1];
/// Sums of their products.
type Products = [[f64; TERMS + 1]; TERMS + 1];

impl Row {
    fn joint(&self) -> Joint {
        let mut joint = [self.y; TERMS + 1];
        joint[..TERMS].copy_from_slice(&self.x);
        joint
    }
}

/// The sums over the chains so far.
#[derive(Default)]
pub(super) struct Chains {
    /// The latest gap of the chain that is not ended.
    pub(super) latest: Option<Row>,
    /// Pairs of neighbours.
    pub(super) pairs: f64,
    /// Over all gaps, the first of each chain, and the last of each that is ended.
    all: Products,
    first: Products,
    last: Products,
    /// Of each gap with the one before it.
    cross: Products,
}

impl Chains {
    /// Adds a gap to the chain.
    pub(super) fn add(&mut self, row: Row) {
        let joint = row.joint();
        add(&mut self.all, &joint, &joint);
        match &self.latest {
            Some(before) => {
                add(&mut self.cross, &joint, &before.joint());
                self.pairs += 1.0;
            }
            None => add(&mut self.first, &joint, &joint),
        }
        self.latest = Some(row);
    }

    /// Ends the chain.
    pub(super) fn end(&mut self) {
        if let Some(row) = self.latest.take() {
            let joint = row.joint();
            add(&mut self.last, &joint, &joint);
        }
    }

    /// XᵀX, Xᵀy and yᵀy of all ended chains under a correlation.
    pub(super) fn with_correlation(&self, rho: f64) -> (Matrix, Vector, f64) {
        let scale = 1.0 / (1.0 - rho * rho);
        let cell = |row: usize, col: usize| {
            let first = self.first[row][col];
            let later = self.all[row][col] - first;
            let before = self.all[row][col] - self.last[row][col];
            let cross = self.cross[row][col] + self.cross[col][row];
            first + (later - rho * cross + rho * rho * before) * scale
        };
        let precision = std::array::from_fn(|row| std::array::from_fn(|col| cell(row, col)));
        (precision, std::array::from_fn(|row| cell(row, TERMS)), cell(TERMS, TERMS))
    }
}

fn add(sum: &mut Products, a: &Joint, b: &Joint) {
    for (row, a) in sum.iter_mut().zip(a) {
        for (cell, b) in row.iter_mut().zip(b) {
            *cell += a * b;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::correlation::GRID;
    use super::super::matrix::add_outer;
    use super::*;

    #[test]
    fn the_sums_are_those_of_each_gap_less_the_one_before_it() {
        let row = |at: usize| Row {
            x: std::array::from_fn(|term| ((at * 7 + term * 3) % 5) as f64 - 1.5),
            y: (at % 4) as f64 - 0.7,
        };
        let chains = [(0..5).map(row).collect::<Vec<_>>(), vec![row(9)], (3..6).map(row).collect()];
        let mut sums = Chains::default();
        for chain in &chains {
            chain.iter().for_each(|row| sums.add(*row));
            sums.end();
        }
        assert!((sums.pairs - 6.0).abs() < 1e-12);
        for rho in GRID {
            let (mut precision, mut pull, mut squares) = ([[0.0; TERMS]; TERMS], [0.0; TERMS], 0.0);
            for chain in &chains {
                for (at, row) in chain.iter().enumerate() {
                    let (x, y) = match at.checked_sub(1).map(|before| &chain[before]) {
                        Some(before) => {
                            let scale = (1.0 - rho * rho).sqrt();
                            let x: Vector = std::array::from_fn(|term| (row.x[term] - rho * before.x[term]) / scale);
                            (x, (row.y - rho * before.y) / scale)
                        }
                        None => (row.x, row.y),
                    };
                    add_outer(&mut precision, &x, 1.0);
                    pull.iter_mut().zip(&x).for_each(|(pull, x)| *pull += x * y);
                    squares += y * y;
                }
            }
            let (ours, our_pull, our_squares) = sums.with_correlation(rho);
            let near = |a: &f64, b: &f64| (a - b).abs() < 1e-9;
            assert!(ours.iter().flatten().zip(precision.iter().flatten()).all(|(a, b)| near(a, b)), "{rho}");
            assert!(our_pull.iter().zip(&pull).all(|(a, b)| near(a, b)) && near(&our_squares, &squares), "{rho}");
        }
    }
}
