//! Reflectance band by band, and the colour it has in daylight.

use super::Lab;

/// Number of bands: 400 to 700 nm in steps of 10, as the trade's instruments report them.
pub const BANDS: usize = 31;
/// Centre of the first band, in nanometres.
pub const FIRST_NM: f64 = 400.0;
/// Distance from one band to the next, in nanometres.
pub const STEP_NM: f64 = 10.0;

/// One number per band.
pub type Bands = [f64; BANDS];

/// Where a reflectance comes from.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Origin {
    /// Measured by an instrument band by band.
    Measured,
    /// Reconstructed from a colour's three numbers: one of many curves with this colour in daylight. Under another
    /// light, and in a mixture, the real curve may differ.
    Reconstructed,
}

impl Origin {
    /// Origin of what depends on both: measured only if both are.
    pub fn and(self, other: Self) -> Self {
        self.max(other)
    }
}

/// Share of the light of each band that is reflected.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Reflectance {
    /// The share in each band, 0 to 1.
    pub bands: Bands,
    /// Measured or reconstructed.
    pub origin: Origin,
}

/// Why numbers are not a usable reflectance.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum SpectrumProblem {
    /// Fewer than eight values, more than a thousand, or a step outside 0.5 to 50 nm.
    NotASpectrum,
    /// Does not cover 420 to 680 nm: the colour would be a guess.
    TooNarrow,
    /// A value is not a number, below 0 or above 1 (by more than 2 %). Above 1 a sample fluoresces; such ink cannot be
    /// mixed by this theory.
    OutOfRange,
}

impl Reflectance {
    /// The same reflectance, 0 to 1, in every band.
    pub const fn flat(value: f64) -> Self {
        Self { bands: [value; BANDS], origin: Origin::Measured }
    }

    /// From an instrument's values, each 0 to 1, from `first` nm in steps of `step` nm. Values between are interpolated
    /// linearly, and the end values extended by 20 nm at most. Readings up to 2 % outside 0 to 1, an instrument's
    /// noise, are clamped.
    ///
    /// # Errors
    /// [`SpectrumProblem`] if the values are not a reflectance over the visible range.
    ///
    /// ```
    /// # use lastpull_core::colour::{Reflectance, SpectrumProblem};
    /// let grey = Reflectance::from_instrument(400.0, 10.0, &[0.18; 31]).unwrap();
    /// assert!((grey.luminance() - 0.18).abs() < 1e-9);
    /// // Percent are refused: the values are shares.
    /// assert_eq!(Reflectance::from_instrument(400.0, 10.0, &[18.0; 31]), Err(SpectrumProblem::OutOfRange));
    /// ```
    pub fn from_instrument(first: f64, step: f64, values: &[f64]) -> Result<Self, SpectrumProblem> {
        let last = values.len().saturating_sub(1);
        if !(8..=1000).contains(&values.len()) || !(0.5..=50.0).contains(&step) || !first.is_finite() {
            return Err(SpectrumProblem::NotASpectrum);
        }
        if first > 420.0 || first + step * (last as f64) < 680.0 {
            return Err(SpectrumProblem::TooNarrow);
        }
        if !values.iter().all(|value| (-0.02..=1.02).contains(value)) {
            return Err(SpectrumProblem::OutOfRange);
        }
        let at = |index: usize| values.get(index.min(last)).copied().unwrap_or_default();
        let bands = std::array::from_fn(|band| {
            let index = ((FIRST_NM + STEP_NM * band as f64 - first) / step).clamp(0.0, last as f64);
            let (whole, part) = (index.floor(), index.fract());
            (at(whole as usize) * (1.0 - part) + at(whole as usize + 1) * part).clamp(0.0, 1.0)
        });
        Ok(Self { bands, origin: Origin::Measured })
    }

    /// The colour in daylight (D65).
    pub fn lab(&self) -> Lab {
        Lab::from_relative(relative_xyz(&self.bands))
    }

    /// Luminance Y, 0 to 1.
    pub fn luminance(&self) -> f64 {
        relative_xyz(&self.bands)[1]
    }
}

/// X, Y and Z in daylight, each divided by the white's.
pub(super) fn relative_xyz(bands: &Bands) -> [f64; 3] {
    let mut sum = [0.0; 3];
    for (value, weights) in bands.iter().zip(&WEIGHTS) {
        for (total, weight) in sum.iter_mut().zip(weights) {
            *total += value * weight;
        }
    }
    [sum[0] / WHITE[0], sum[1] / WHITE[1], sum[2] / WHITE[2]]
}

/// Weight of each band in X, Y and Z: the 1931 observer (2°) under D65, by ASTM E308 at 10 nm, the tails beyond the
/// ends added to the end bands. Source: `shared/tests/data/ink_spectra.py`.
pub(super) const WEIGHTS: [[f64; 3]; BANDS] = [
    [0.001_306_43, 0.000_036_39, 0.006_181_40],
    [0.003_756_02, 0.000_100_50, 0.017_882_67],
    [0.011_999_14, 0.000_355_00, 0.057_654_40],
    [0.023_960_94, 0.000_983_65, 0.116_975_50],
    [0.034_177_63, 0.002_260_91, 0.171_501_94],
    [0.036_986_84, 0.004_173_25, 0.195_057_10],
    [0.032_273_19, 0.006_641_54, 0.185_203_20],
    [0.021_488_36, 0.009_979_85, 0.141_365_65],
    [0.010_424_35, 0.015_012_89, 0.088_498_34],
    [0.003_327_29, 0.021_636_98, 0.048_559_22],
    [0.000_454_62, 0.033_521_06, 0.028_023_51],
    [0.000_980_24, 0.051_290_35, 0.016_019_05],
    [0.006_367_05, 0.070_763_21, 0.007_913_06],
    [0.016_665_30, 0.087_075_89, 0.004_197_05],
    [0.028_836_23, 0.094_736_20, 0.002_023_00],
    [0.042_504_41, 0.097_518_53, 0.000_855_86],
    [0.056_259_08, 0.094_190_82, 0.000_365_52],
    [0.069_877_31, 0.087_216_93, 0.000_192_54],
    [0.082_135_75, 0.078_017_05, 0.000_143_53],
    [0.087_297_89, 0.064_418_64, 0.000_098_22],
    [0.090_147_42, 0.053_511_17, 0.000_067_32],
    [0.084_915_45, 0.042_625_41, 0.000_031_81],
    [0.070_503_75, 0.031_451_67, 0.000_013_98],
    [0.051_241_42, 0.021_125_75, 0.000_004_35],
    [0.035_158_39, 0.013_732_23, 0.000_001_38],
    [0.021_672_99, 0.008_175_23, 0.000_000_17],
    [0.012_520_77, 0.004_629_82, -0.000_000_03],
    [0.006_783_77, 0.002_482_71, 0.000_000_00],
    [0.003_406_76, 0.001_238_05, 0.000_000_00],
    [0.001_533_99, 0.000_554_62, 0.000_000_00],
    [0.001_505_80, 0.000_543_71, 0.000_000_00],
];

/// X, Y and Z of a perfect white by those weights.
pub(super) const WHITE: [f64; 3] = {
    let mut sum = [0.0; 3];
    let mut band = 0;
    while band < BANDS {
        sum[0] += WEIGHTS[band][0];
        sum[1] += WEIGHTS[band][1];
        sum[2] += WEIGHTS[band][2];
        band += 1;
    }
    sum
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::{near, rows};
    use crate::colour::ciede2000;

    /// Source: `ink_weights_10nm.csv`, from the tables of CIE 015 by ASTM E308.
    #[test]
    fn the_weights_are_those_of_the_table() {
        let table = rows(include_str!("../../tests/data/ink_weights_10nm.csv"), 4 * BANDS);
        let daylight: Vec<_> = table.iter().filter(|row| row.text("illuminant") == "D65").collect();
        assert_eq!(daylight.len(), BANDS);
        for (weights, row) in WEIGHTS.iter().zip(daylight) {
            for (ours, theirs) in weights.iter().zip(row.numbers(["x", "y", "z"])) {
                near(*ours, theirs, 1e-12);
            }
        }
    }

    /// Source: `ink_spectra_lab.csv`, Lab by colour-science 0.4.7 from the whole tables, not our weights.
    #[test]
    fn curves_have_the_colour_another_library_gives_them() {
        for row in rows(include_str!("../../tests/data/ink_spectra_lab.csv"), 24) {
            let all = row.from("r400");
            let curve = Reflectance::from_instrument(400.0, 10.0, &all[..BANDS]).unwrap();
            let theirs = Lab::new(all[BANDS], all[BANDS + 1], all[BANDS + 2]);
            assert!(ciede2000(curve.lab(), theirs) < 1e-3);
        }
    }

    #[test]
    fn greys_are_grey() {
        let grey = Reflectance::flat(0.184_186_51).lab();
        near(grey.l, 50.0, 1e-5);
        near(grey.chroma(), 0.0, 1e-9);
        near(Reflectance::flat(1.0).lab().l, 100.0, 1e-9);
    }

    #[test]
    fn other_steps_and_shorter_ranges_are_interpolated() {
        let line = |nm: f64| 0.1 + (nm - 360.0) / 1000.0;
        let wide: Vec<f64> = (0..36).map(|at| line(380.0 + 10.0 * f64::from(at))).collect();
        let coarse: Vec<f64> = (0..15).map(|at| line(420.0 + 20.0 * f64::from(at))).collect();
        let from_wide = Reflectance::from_instrument(380.0, 10.0, &wide).unwrap();
        let from_coarse = Reflectance::from_instrument(420.0, 20.0, &coarse).unwrap();
        near(from_wide.bands[0], line(400.0), 1e-12);
        near(from_wide.bands[30], line(700.0), 1e-12);
        near(from_coarse.bands[3], line(430.0), 1e-12);
        near(from_coarse.bands[0], line(420.0), 1e-12);
    }

    #[test]
    fn an_invalid_spectrum_is_refused() {
        use SpectrumProblem::{NotASpectrum, OutOfRange, TooNarrow};
        let read = |first, step, values: &[f64]| Reflectance::from_instrument(first, step, values).unwrap_err();
        assert_eq!(read(400.0, 10.0, &[0.5; 3]), NotASpectrum);
        assert_eq!(read(f64::NAN, 10.0, &[0.5; 31]), NotASpectrum);
        assert_eq!(read(400.0, 0.0, &[0.5; 31]), NotASpectrum);
        assert_eq!(read(430.0, 10.0, &[0.5; 31]), TooNarrow);
        assert_eq!(read(400.0, 10.0, &[0.5; 20]), TooNarrow);
        assert_eq!(read(400.0, 10.0, &[1.3; 31]), OutOfRange);
        assert_eq!(read(400.0, 10.0, &[f64::NAN; 31]), OutOfRange);
    }
}
