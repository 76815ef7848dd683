//! Learns a component's tinting strength from the shop's corrections.

use super::Lab;

/// One addition of a component alone to a pot that was read before and after.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct CorrectionSample {
    /// The pot's reading before.
    pub before: Lab,
    /// The colour predicted for after the addition.
    pub predicted: Lab,
    /// The pot's reading after.
    pub after: Lab,
}

/// Weakest and strongest that is believed: further out a weight or a swatch was wrong (our own).
const BELIEVED: (f64, f64) = (0.4, 2.5);

/// Tinting strength of a component relative to its drawdowns, 0.4 to 2.5; 1 if there is nothing to learn from.
///
/// Each correction compares how far the colour moved along the predicted direction with how far it should have moved,
/// in L*a*b*. The result is the median of the logarithms of these ratios, shrunk toward 1 as if one more correction
/// said so. An addition that should have moved the colour by less than a unit is ignored. Our own.
///
/// ```
/// # use lastpull_core::colour::{Lab, CorrectionSample, learned_strength};
/// assert_eq!(learned_strength(&[]), 1.0);
/// // The colour moved 1.44 times as far as predicted; a single correction counts half.
/// let [before, predicted, after] = [10.0, 20.0, 24.4].map(|b| Lab::new(60.0, 10.0, b));
/// assert!((learned_strength(&[CorrectionSample { before, predicted, after }]) - 1.2).abs() < 1e-9);
/// ```
pub fn learned_strength(samples: &[CorrectionSample]) -> f64 {
    let mut ratios: Vec<f64> = samples.iter().filter_map(CorrectionSample::ratio).map(f64::ln).collect();
    if ratios.is_empty() {
        return 1.0;
    }
    crate::collections::sort_by(&mut ratios, f64::total_cmp);
    let count = ratios.len();
    let at = |index: usize| ratios.get(index).copied().unwrap_or_default();
    let middle = f64::midpoint(at((count - 1) / 2), at(count / 2));
    (middle * count as f64 / (count as f64 + 1.0)).exp()
}

impl CorrectionSample {
    fn ratio(&self) -> Option<f64> {
        let away = |to: Lab| [to.l - self.before.l, to.a - self.before.a, to.b - self.before.b];
        let (should, did) = (away(self.predicted), away(self.after));
        let dot = |a: [f64; 3], b: [f64; 3]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        let length = dot(should, should);
        let ratio = dot(should, did) / length;
        (length >= 1.0 && ratio.is_finite()).then(|| ratio.clamp(BELIEVED.0, BELIEVED.1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::near;
    use crate::colour::{BANDS, Constants, Origin, Surface, Viewing, predict};

    fn correction_sample(reach: f64) -> CorrectionSample {
        let before = Lab::new(60.0, 10.0, 20.0);
        let by = |part: f64| Lab::new(60.0 - 4.0 * part, 10.0 + 2.0 * part, 20.0 - 3.0 * part);
        CorrectionSample { before, predicted: by(1.0), after: by(reach) }
    }

    #[test]
    fn without_corrections_the_drawdowns_count() {
        near(learned_strength(&[]), 1.0, 0.0);
        let trifle = CorrectionSample { predicted: Lab::new(60.1, 10.0, 20.0), ..correction_sample(2.0) };
        near(learned_strength(&[trifle]), 1.0, 0.0);
    }

    #[test]
    fn one_correction_counts_half_and_many_count_fully() {
        near(learned_strength(&[correction_sample(1.44)]), 1.2, 1e-9);
        let many = learned_strength(&[correction_sample(1.44); 20]);
        assert!((1.41..1.44).contains(&many));
    }

    #[test]
    fn one_wrong_weighing_does_not_change_the_result() {
        let mut samples = vec![correction_sample(1.2); 6];
        samples.push(correction_sample(9.0));
        let learned = learned_strength(&samples);
        assert!((1.1..1.25).contains(&learned), "{learned}");
    }

    /// A pigment really a quarter stronger than its drawdowns say; corrections predicted from the drawdowns.
    #[test]
    fn corrections_reveal_a_stronger_pigment() {
        let flat = |k: f64, s: f64| Constants { k: [k; BANDS], s: [s; BANDS], origin: Origin::Measured };
        let blue = Constants { k: std::array::from_fn(|band| if band > 14 { 30.0 } else { 2.0 }), ..flat(0.0, 0.3) };
        let white = flat(0.02, 2.0);
        let look = |recipe: &[(f64, &Constants)]| predict(recipe, Viewing::InBulk(Surface::NONE)).unwrap().lab();
        let real = blue.times(1.25);
        let samples: Vec<CorrectionSample> = (1..8)
            .map(|step| {
                let (holds, adds) = (f64::from(step) * 0.02, f64::from(step) * 0.006);
                // The pot was read, so the prediction starts from its real colour.
                let pot = Constants::mix(&[(1.0, &white), (holds, &real)]).unwrap();
                let after = |blue| look(&[(1.0 + holds, &pot), (adds, blue)]);
                CorrectionSample { before: look(&[(1.0, &pot)]), predicted: after(&blue), after: after(&real) }
            })
            .collect();
        let learned = learned_strength(&samples);
        assert!((1.1..1.3).contains(&learned), "{learned}");
    }
}
