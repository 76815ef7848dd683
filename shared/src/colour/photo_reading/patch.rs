//! Measures one marked patch: its average colour, whether it is plain, and its shading.

use crate::colour::photo_reading::{Mark, PatchRole, PhotoProblem, Picture};
use crate::colour::srgb::linear;

/// Fewest pixels that are averaged.
const FEWEST: u32 = 60;
/// Share of pixels clipped at the top of a channel above which the average is unknown (our own).
const ENDS: f64 = 0.02;
/// The same at the bottom of a channel; higher, since noise reaches it first.
const BOTTOM: f64 = 0.10;
/// Share of pixels far from the average colour above which a patch is not plain (our own).
const STRAY: f64 = 0.15;
/// Least relative noise that is assumed.
const LEAST_NOISE: f64 = 0.002;

/// Measurements of a patch.
pub struct Patch {
    pub mark: Mark,
    /// Average in linear light, 0 to 1.
    pub rgb: [f64; 3],
    /// Relative error of its luminance from pixel noise.
    pub error: f64,
    /// Change of the logarithm of its luminance, per pixel across and down.
    pub slope: [f64; 2],
    /// Standard error of the slope.
    pub slope_error: f64,
}

impl Patch {
    pub fn measure(picture: Picture, mark: Mark, which: PatchRole) -> Result<Self, PhotoProblem> {
        let Mark { x, y, radius } = mark;
        let across = x - radius >= 0.0 && x + radius <= picture.width as f64;
        let down = y - radius >= 0.0 && y + radius <= picture.height as f64;
        if !(across && down) {
            return Err(PhotoProblem::Outside(which));
        }
        let light: Vec<f64> = (0..=255_u8).map(|level| linear(f64::from(level) / 255.0)).collect();
        let mut levels = [[0_u32; 256]; 3];
        let mut count = 0;
        pixels(picture, mark, |_, _, rgb| {
            for (channel, level) in levels.iter_mut().zip(rgb) {
                channel[usize::from(level)] += 1;
            }
            count += 1;
        });
        if count < FEWEST {
            return Err(PhotoProblem::TooSmall(which));
        }
        let share = |channel: &[u32; 256], from: usize, to: usize| {
            f64::from(channel[from..=to].iter().sum::<u32>()) / f64::from(count)
        };
        if levels.iter().any(|channel| share(channel, 253, 255) > ENDS) {
            return Err(PhotoProblem::TooBright(which));
        }
        if levels.iter().any(|channel| share(channel, 0, 1) > BOTTOM) {
            return Err(PhotoProblem::TooDark(which));
        }
        let rgb = [0, 1, 2].map(|channel| trimmed(&levels[channel], count, &light));
        let stray = |channel: usize| {
            let far = 0.35 * rgb[channel] + 0.004;
            let away = levels[channel].iter().zip(&light).filter(|(_, value)| (**value - rgb[channel]).abs() > far);
            f64::from(away.map(|(pixels, _)| *pixels).sum::<u32>()) / f64::from(count)
        };
        if (0..3).any(|channel| stray(channel) > STRAY) {
            return Err(PhotoProblem::NotPlain(which));
        }

        // Shading: a plane fitted to the luminance, without pixels far from the average.
        let luminance = |rgb: [f64; 3]| 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
        let middle = luminance(rgb);
        let mut plane = Plane::default();
        pixels(picture, mark, |px, py, levels| {
            let value = luminance(levels.map(|level| light[usize::from(level)])) / middle - 1.0;
            if value.abs() < 0.5 {
                plane.add(px - x, py - y, value);
            }
        });
        let (slope, spread) = plane.slope().ok_or(PhotoProblem::NotPlain(which))?;
        let spread = spread.max(LEAST_NOISE);
        let root = f64::from(count).sqrt();
        Ok(Self { mark, rgb, error: spread / root, slope, slope_error: 2.0 * spread / (radius * root) })
    }
}

/// Calls `each` for every pixel within both the mark and the picture.
fn pixels(picture: Picture, mark: Mark, mut each: impl FnMut(f64, f64, [u8; 3])) {
    let whole = |value: f64, most: usize| (value.max(0.0) as usize).min(most);
    let (top, bottom) =
        (whole(mark.y - mark.radius, picture.height), whole(mark.y + mark.radius + 1.0, picture.height));
    let (left, right) = (whole(mark.x - mark.radius, picture.width), whole(mark.x + mark.radius + 1.0, picture.width));
    for row in top..bottom {
        for column in left..right {
            let (px, py) = (column as f64 + 0.5, row as f64 + 0.5);
            if (px - mark.x).hypot(py - mark.y) > mark.radius {
                continue;
            }
            let at = (row * picture.width + column) * 4;
            if let Some([r, g, b, _]) = picture.rgba.get(at..at + 4) {
                each(px, py, [*r, *g, *b]);
            }
        }
    }
}

/// The mean of a channel without its lowest and highest fifth.
fn trimmed(levels: &[u32; 256], count: u32, light: &[f64]) -> f64 {
    let cut = f64::from(count) / 5.0;
    let (mut passed, mut sum) = (0.0, 0.0);
    for (pixels, value) in levels.iter().zip(light) {
        let next = passed + f64::from(*pixels);
        // The share of this level between the two cuts.
        let counted = (next.min(f64::from(count) - cut) - passed.max(cut)).max(0.0);
        sum += counted * value;
        passed = next;
    }
    sum / (f64::from(count) - 2.0 * cut)
}

/// Sums for a least-squares plane.
#[derive(Default)]
struct Plane {
    n: f64,
    x: f64,
    y: f64,
    v: f64,
    xx: f64,
    xy: f64,
    yy: f64,
    xv: f64,
    yv: f64,
    vv: f64,
}

impl Plane {
    fn add(&mut self, x: f64, y: f64, v: f64) {
        self.n += 1.0;
        self.x += x;
        self.y += y;
        self.v += v;
        self.xx += x * x;
        self.xy += x * y;
        self.yy += y * y;
        self.xv += x * v;
        self.yv += y * v;
        self.vv += v * v;
    }

    /// Slope across and down, and the standard deviation of the residuals.
    fn slope(&self) -> Option<([f64; 2], f64)> {
        let n = self.n;
        let about = |sum: f64, a: f64, b: f64| sum - a * b / n;
        let (xx, xy, yy) =
            (about(self.xx, self.x, self.x), about(self.xy, self.x, self.y), about(self.yy, self.y, self.y));
        let (xv, yv, vv) =
            (about(self.xv, self.x, self.v), about(self.yv, self.y, self.v), about(self.vv, self.v, self.v));
        let determinant = xx * yy - xy * xy;
        if n < f64::from(FEWEST) / 2.0 || determinant <= 0.0 {
            return None;
        }
        let slope = [(xv * yy - yv * xy) / determinant, (yv * xx - xv * xy) / determinant];
        let left = (vv - slope[0] * xv - slope[1] * yv).max(0.0) / (n - 3.0);
        Some((slope, left.sqrt()))
    }
}
