//! Small symmetric matrices: one row and column for each coefficient of a run's course.

/// Number of coefficients of a run's course.
pub(super) const TERMS: usize = 5;

/// A vector of coefficients.
pub(super) type Vector = [f64; TERMS];
/// A matrix over the coefficients.
pub(super) type Matrix = [[f64; TERMS]; TERMS];

/// The inner product.
pub(super) fn dot(a: &Vector, b: &Vector) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// Matrix times vector.
pub(super) fn times(m: &Matrix, v: &Vector) -> Vector {
    std::array::from_fn(|row| dot(&m[row], v))
}

/// Adds `weight`·x·xᵀ.
pub(super) fn add_outer(m: &mut Matrix, x: &Vector, weight: f64) {
    for (row, a) in m.iter_mut().zip(x) {
        for (cell, b) in row.iter_mut().zip(x) {
            *cell += weight * a * b;
        }
    }
}

/// The inverse of a symmetric positive definite matrix and the logarithm of the matrix's determinant, by
/// Gauss-Jordan elimination, which such a matrix allows without exchanging rows.
pub(super) fn inverse(matrix: &Matrix) -> (Matrix, f64) {
    let mut m = *matrix;
    let mut log_determinant = 0.0;
    for pivot in 0..TERMS {
        // Rounding alone could bring a pivot to zero.
        let by = m[pivot][pivot].max(f64::MIN_POSITIVE);
        log_determinant += by.ln();
        m[pivot][pivot] = 1.0;
        for cell in &mut m[pivot] {
            *cell /= by;
        }
        let pivot_row = m[pivot];
        for (row, cells) in m.iter_mut().enumerate() {
            if row == pivot {
                continue;
            }
            let factor = cells[pivot];
            cells[pivot] = 0.0;
            for (cell, above) in cells.iter_mut().zip(&pivot_row) {
                *cell -= factor * above;
            }
        }
    }
    (m, log_determinant)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_matrix_times_its_inverse_is_one() {
        let mut m = [[0.0; TERMS]; TERMS];
        for step in 0..7 {
            let x: Vector = std::array::from_fn(|term| f64::from((step * 3 + term as i32 * 5) % 7) - 2.5);
            add_outer(&mut m, &x, 1.0 + f64::from(step));
        }
        let (back, log_determinant) = inverse(&m);
        for row in 0..TERMS {
            let unit: Vector = std::array::from_fn(|term| if term == row { 1.0 } else { 0.0 });
            let got = times(&m, &times(&back, &unit));
            assert!(got.iter().zip(&unit).all(|(a, b)| (a - b).abs() < 1e-9), "{got:?}");
        }
        assert!((inverse(&back).1 + log_determinant).abs() < 1e-9);
    }
}
