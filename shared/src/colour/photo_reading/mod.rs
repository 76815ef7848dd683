//! Reads target and sample colours from one photo that shows a neutral under the same light.

use super::Lab;
use super::srgb::{D65, times, xyz_of_linear};
use patch::Patch;

mod patch;

/// Pixels of a picture, as a canvas returns them.
#[derive(Clone, Copy, Debug)]
pub struct Picture<'a> {
    /// Width in pixels.
    pub width: usize,
    /// Height in pixels.
    pub height: usize,
    /// Red, green, blue and alpha of each pixel, row by row, sRGB.
    pub rgba: &'a [u8],
}

/// A round patch marked in a picture, in pixels from the upper left corner.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Mark {
    /// Centre, from the left.
    pub x: f64,
    /// Centre, from the top.
    pub y: f64,
    /// Radius.
    pub radius: f64,
}

/// The three patches marked in a picture.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Marks {
    /// The target colour.
    pub target: Mark,
    /// The colour of the sample.
    pub sample: Mark,
    /// Something white or grey beside them.
    pub neutral: Mark,
    /// Lightness of the neutral, L* 20 to 100: about 95 for plain white paper.
    pub neutral_lightness: f64,
}

/// Role of a marked patch.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum PatchRole {
    /// The target colour.
    Target,
    /// The colour of the sample.
    Sample,
    /// The white or grey.
    Neutral,
}

/// Why a photo cannot be read.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum PhotoProblem {
    /// The number of bytes does not fit the picture's size, or the neutral's lightness is out of range.
    NotAPicture,
    /// The patch reaches over the edge of the picture.
    Outside(PatchRole),
    /// The patch has too few pixels to average.
    TooSmall(PatchRole),
    /// Overexposed: some of its channels are clipped at the top.
    TooBright(PatchRole),
    /// Too dark, or too saturated for sRGB: some of its channels are clipped at the bottom.
    TooDark(PatchRole),
    /// Not one plain colour: it contains an edge, a crease or a highlight.
    NotPlain(PatchRole),
    /// The light differs too much between the patches.
    UnevenLight,
    /// The light is so strongly coloured that the neutral does not look grey, or the mark is on something else.
    ColouredLight,
}

/// Colours read from a photo.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct PhotoReading {
    /// The target colour.
    pub target: Lab,
    /// The colour of the sample.
    pub sample: Lab,
    /// Stops by which the photo is brighter than daylight on that neutral would make it; already corrected.
    pub stops: f64,
    /// How much the light differs between the patches (0.1 is a tenth); already corrected.
    pub unevenness: f64,
    /// Uncertainty of the colours from pixel noise alone, CIEDE2000.
    pub noise: f64,
}

/// Largest unevenness between two patches that is corrected; beyond it correcting would be guessing (our own).
const TOO_UNEVEN: f64 = 0.25;
/// Largest ratio between two channels of the neutral (our own).
const TOO_COLOURED: f64 = 3.0;

/// Share of a difference that lamp light may hide from a camera or add to it: half of the readings under lamps are off
/// by less. Our own, checked by a test over rendered photos.
const HIDDEN: f64 = 0.25;
/// Share of a difference in middle tones that a phone's contrast curve adds to it, with a slope of 1.3 to 1.6. Our own,
/// checked in the same way.
const CONTRAST: f64 = 0.3;
/// Largest uncertainty of a difference that is not mentioned, CIEDE2000: our own.
const DOUBT: f64 = 1.5;

/// Share of a difference that is in doubt. The two causes have nothing to do with each other, so their squares add.
fn share_in_doubt() -> f64 {
    HIDDEN.hypot(CONTRAST)
}

/// Uncertainty of a difference read from a phone's photo under lamp light, in CIEDE2000 like `difference`. Every camera
/// sees two patches that look alike as alike, but each renders a large difference in its own way, and its contrast curve
/// makes it larger. In daylight it is smaller. `None` if it is too small to mention.
///
/// ```
/// # use lastpull_core::colour::photo_reading::photo_uncertainty;
/// assert_eq!(photo_uncertainty(3.0), None);
/// assert!(photo_uncertainty(10.0).is_some_and(|doubt| (3.8..4.0).contains(&doubt)));
/// ```
pub fn photo_uncertainty(difference: f64) -> Option<f64> {
    Some(difference * share_in_doubt()).filter(|doubt| *doubt > DOUBT)
}

/// Reads target and sample from a photo, corrected for exposure, for the colour of the light, and for a gentle gradient
/// of light over the picture, by the neutral and by the shading within the patches.
///
/// Patches are averaged in linear light without the lowest and highest fifth of each channel. White is adapted from the
/// neutral to D65 by Bradford. The difference of the two colours is far more reliable than either: errors of the camera
/// affect both.
///
/// # Errors
/// [`PhotoProblem`] if a patch cannot be read, or the light is uneven or strongly coloured.
pub fn read_photo(picture: Picture, marks: Marks) -> Result<PhotoReading, PhotoProblem> {
    if picture.width.checked_mul(picture.height).and_then(|n| n.checked_mul(4)) != Some(picture.rgba.len())
        || !(20.0..=100.0).contains(&marks.neutral_lightness)
    {
        return Err(PhotoProblem::NotAPicture);
    }
    let patch = |mark, which| Patch::measure(picture, mark, which);
    let patches = [
        patch(marks.neutral, PatchRole::Neutral)?,
        patch(marks.target, PatchRole::Target)?,
        patch(marks.sample, PatchRole::Sample)?,
    ];
    let light = Light::over(&patches)?;
    let [neutral, target, sample] = &patches;

    let white = neutral.rgb;
    let (most, least) = (white[0].max(white[1]).max(white[2]), white[0].min(white[1]).min(white[2]));
    if most > TOO_COLOURED * least {
        return Err(PhotoProblem::ColouredLight);
    }
    let lightness = Lab::new(marks.neutral_lightness, 0.0, 0.0).to_relative()[1];
    let seen = xyz_of_linear(white);
    let to_daylight = Adaptation::from(seen.map(|value| value / lightness));
    let read = |patch: &Patch| {
        let shade = light.at(patch, neutral);
        Lab::from_xyz(to_daylight.of(xyz_of_linear(patch.rgb.map(|value| value / shade))))
    };
    // A relative error e of the luminance moves L* by about (L* + 16)/3 · e.
    let errors = patches.iter().map(|patch| patch.error * patch.error).sum::<f64>().sqrt();
    Ok(PhotoReading {
        target: read(target),
        sample: read(sample),
        stops: (seen[1] / lightness).log2(),
        unevenness: light.unevenness,
        noise: 25.0 * errors,
    })
}

/// The gradient of the light over the picture: a linear change of its logarithm.
struct Light {
    /// Change of the logarithm per pixel, across and down.
    slope: [f64; 2],
    unevenness: f64,
}

impl Light {
    /// Estimates the gradient from the shading within each patch. An error if the patches disagree beyond their noise
    /// (a shadow, a bent cloth), or if the gradient is large.
    fn over(patches: &[Patch; 3]) -> Result<Self, PhotoProblem> {
        let weight: f64 = patches.iter().map(|patch| patch.slope_error.powi(-2)).sum();
        let slope = [0, 1]
            .map(|way| patches.iter().map(|patch| patch.slope[way] * patch.slope_error.powi(-2)).sum::<f64>() / weight);
        let error = weight.sqrt().recip();
        let mut reach = 0.0_f64;
        let mut unevenness = 0.0_f64;
        for (index, one) in patches.iter().enumerate() {
            for other in &patches[index + 1..] {
                let (x, y) = (other.mark.x - one.mark.x, other.mark.y - one.mark.y);
                reach = reach.max(x.hypot(y));
                unevenness = unevenness.max((slope[0] * x + slope[1] * y).abs());
            }
        }
        for patch in patches {
            let apart = (patch.slope[0] - slope[0]).hypot(patch.slope[1] - slope[1]);
            if apart * reach > TOO_UNEVEN && apart > 5.0 * patch.slope_error {
                return Err(PhotoProblem::UnevenLight);
            }
        }
        // A slope that noise alone could cause counts as none.
        if slope[0].hypot(slope[1]) < 3.0 * error {
            return Ok(Self { slope: [0.0; 2], unevenness: 0.0 });
        }
        if unevenness > TOO_UNEVEN {
            return Err(PhotoProblem::UnevenLight);
        }
        Ok(Self { slope, unevenness })
    }

    /// Light on a patch relative to the light on the neutral.
    fn at(&self, patch: &Patch, neutral: &Patch) -> f64 {
        let (x, y) = (patch.mark.x - neutral.mark.x, patch.mark.y - neutral.mark.y);
        (self.slope[0] * x + self.slope[1] * y).exp()
    }
}

/// Bradford's cone response matrix (CSS Color 4).
const CONES: [[f64; 3]; 3] = [[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]];

/// Its inverse.
const FROM_CONES: [[f64; 3]; 3] = [
    [0.986_992_905_466_712_1, -0.147_054_256_420_990_13, 0.159_962_651_663_731_25],
    [0.432_305_269_723_394_6, 0.518_360_271_536_777_4, 0.049_291_228_212_855_594],
    [-0.008_528_664_575_177_33, 0.040_042_821_654_084_86, 0.968_486_695_787_55],
];

/// Adaptation from the white of a light to that of D65.
struct Adaptation {
    gains: [f64; 3],
}

impl Adaptation {
    fn from(white: [f64; 3]) -> Self {
        let (there, here) = (times(&CONES, D65), times(&CONES, white));
        Self { gains: [0, 1, 2].map(|cone| there[cone] / here[cone].max(1e-6)) }
    }

    fn of(&self, xyz: [f64; 3]) -> [f64; 3] {
        let cones = times(&CONES, xyz);
        times(&FROM_CONES, [0, 1, 2].map(|cone| cones[cone] * self.gains[cone]))
    }
}

#[cfg(test)]
mod tests;
