//! Colours read from one photo: target and sample beside a neutral under the same light.

use super::Lab;
use super::srgb::{D65, times, xyz_of_linear};
use patch::Patch;

mod patch;

/// A picture as a canvas gives it.
#[derive(Clone, Copy, Debug)]
pub struct Picture<'a> {
    /// Pixels across.
    pub width: usize,
    /// Pixels down.
    pub height: usize,
    /// Red, green, blue and opacity of each pixel, row by row, sRGB.
    pub rgba: &'a [u8],
}

/// A round patch that was marked, in pixels from the upper left corner.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Mark {
    /// Its middle, from the left.
    pub x: f64,
    /// Its middle, from the top.
    pub y: f64,
    /// Half its width.
    pub radius: f64,
}

/// What was marked.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Marks {
    /// The colour wanted.
    pub target: Mark,
    /// The colour made.
    pub sample: Mark,
    /// Something white or grey lying beside them.
    pub neutral: Mark,
    /// How light that is, L* 20 to 100: about 95 for plain white paper.
    pub neutral_lightness: f64,
}

/// One of the three patches.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Which {
    /// The colour wanted.
    Target,
    /// The colour made.
    Sample,
    /// The white or grey.
    Neutral,
}

/// Why a photo is not read.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum PhotoProblem {
    /// The bytes are not as many as the picture's size asks for, or the neutral's lightness is none.
    NotAPicture,
    /// The patch reaches over the edge of the picture.
    Outside(Which),
    /// The patch holds too few pixels to average.
    TooSmall(Which),
    /// Too bright: some of its channels are at the top, and nobody knows how far over.
    TooBright(Which),
    /// Too dark, or too colourful for a picture: some of its channels are at the bottom.
    TooDark(Which),
    /// Not one plain colour: an edge, a crease or a highlight lies in it.
    NotPlain(Which),
    /// The light differs too much from patch to patch.
    UnevenLight,
    /// The light is so coloured that the neutral does not look grey at all: or the mark is on something else.
    ColouredLight,
}

/// What was read.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct PhotoReading {
    /// The colour wanted.
    pub target: Lab,
    /// The colour made.
    pub sample: Lab,
    /// How many stops the photo was brighter than daylight on that neutral would make it; already corrected.
    pub stops: f64,
    /// How much the light differs from patch to patch, 0.1 is a tenth; already corrected.
    pub unevenness: f64,
    /// About how sure the colours are for the noise of the pixels alone, CIEDE2000.
    pub noise: f64,
}

/// More unevenness than this between two patches is refused: correcting it would be guessing (our own).
const TOO_UNEVEN: f64 = 0.25;
/// One channel of the neutral may be so many times another (our own).
const TOO_COLOURED: f64 = 3.0;

/// The share of a difference that lamp light may hide from a camera or add to it: half of what is read under lamps is
/// off by less. Our own, held by a test over rendered photos.
const HIDDEN: f64 = 0.25;
/// The most doubt that a difference is taken with unasked, CIEDE2000: our own.
const DOUBT: f64 = 1.5;

/// How far off a difference of so much may be when it is read under lamp light, in CIEDE2000 as it is itself: two
/// patches that look alike are seen alike by any camera, two that differ much are told apart by it in its own way.
/// By daylight it is less. None where that is too little to speak of.
pub fn in_doubt(difference: f64) -> Option<f64> {
    Some(difference * HIDDEN).filter(|doubt| *doubt > DOUBT)
}

/// Reads target and sample from a photo, corrected for exposure, for the light's colour, and for a gentle
/// change of light over the picture, all by the neutral and by how the patches shade off.
///
/// Patches are averaged in linear light with the fifth at either end of each channel left out. White is
/// adapted from the neutral to D65 by Bradford. The difference of the two colours is far surer than either:
/// what the camera does wrong it does to both.
///
/// # Errors
/// When a patch cannot be read, or the light is uneven or coloured.
pub fn read_photo(picture: Picture, marks: Marks) -> Result<PhotoReading, PhotoProblem> {
    if picture.width.checked_mul(picture.height).and_then(|n| n.checked_mul(4)) != Some(picture.rgba.len())
        || !(20.0..=100.0).contains(&marks.neutral_lightness)
    {
        return Err(PhotoProblem::NotAPicture);
    }
    let patch = |mark, which| Patch::cut(picture, mark, which);
    let patches = [
        patch(marks.neutral, Which::Neutral)?,
        patch(marks.target, Which::Target)?,
        patch(marks.sample, Which::Sample)?,
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
    // An error of the luminance by a share e moves L* by about (L* + 16)/3 · e.
    let errors = patches.iter().map(|patch| patch.error * patch.error).sum::<f64>().sqrt();
    Ok(PhotoReading {
        target: read(target),
        sample: read(sample),
        stops: (seen[1] / lightness).log2(),
        unevenness: light.unevenness,
        noise: 25.0 * errors,
    })
}

/// How the light changes over the picture: by a straight line in its logarithm.
struct Light {
    /// Per pixel, across and down.
    slope: [f64; 2],
    unevenness: f64,
}

impl Light {
    /// From how each patch shades off. Refused when the patches disagree beyond what their noise explains
    /// (a shadow, a bent cloth), or when the change is large.
    fn over(patches: &[Patch; 3]) -> Result<Self, PhotoProblem> {
        let weight: f64 = patches.iter().map(|patch| patch.slope_error.powi(-2)).sum();
        let slope = [0, 1]
            .map(|way| patches.iter().map(|patch| patch.slope[way] * patch.slope_error.powi(-2)).sum::<f64>() / weight);
        let error = weight.sqrt().recip();
        let mut reach = 0.0_f64;
        let mut unevenness = 0.0_f64;
        for (place, one) in patches.iter().enumerate() {
            for other in &patches[place + 1..] {
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
        // What noise alone could be is no slope.
        if slope[0].hypot(slope[1]) < 3.0 * error {
            return Ok(Self { slope: [0.0; 2], unevenness: 0.0 });
        }
        if unevenness > TOO_UNEVEN {
            return Err(PhotoProblem::UnevenLight);
        }
        Ok(Self { slope, unevenness })
    }

    /// How many times as much light falls on a patch as on the neutral.
    fn at(&self, patch: &Patch, neutral: &Patch) -> f64 {
        let (x, y) = (patch.mark.x - neutral.mark.x, patch.mark.y - neutral.mark.y);
        (self.slope[0] * x + self.slope[1] * y).exp()
    }
}

/// Bradford's cones (CSS Color 4).
const CONES: [[f64; 3]; 3] = [[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]];

/// Their inverse.
const FROM_CONES: [[f64; 3]; 3] = [
    [0.986_992_905_466_712_1, -0.147_054_256_420_990_13, 0.159_962_651_663_731_25],
    [0.432_305_269_723_394_6, 0.518_360_271_536_777_4, 0.049_291_228_212_855_594],
    [-0.008_528_664_575_177_33, 0.040_042_821_654_084_86, 0.968_486_695_787_55],
];

/// White of a light to that of D65.
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
