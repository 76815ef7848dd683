//! Predicts how well an ink covers a garment, hit by hit.

use super::{Constants, Lab, Print, Reflectance, Surface, ciede2000};

/// Reflectance of an opacity chart's white, 80 %: common practice, no source.
const CHART_WHITE: f64 = 0.80;

/// The contrast ratio that paint standards call full hiding (ISO 6504-1:1983, scope).
pub const FULL_HIDING: f64 = 0.98;

/// Contrast ratio of a number of films: their lightness over black divided by that over white, 0 (hides nothing) to 1
/// (hides all). As for paint: luminance Y over black and over the white of a chart (ISO 6504, ASTM D2805), here with an
/// ideal black.
pub fn contrast_ratio(ink: &Constants, films: f64, surface: Surface) -> f64 {
    let over = |backing: f64| ink.over(films, &Reflectance::flat(backing), surface).luminance();
    let light = over(CHART_WHITE);
    if light > 0.0 { (over(0.0) / light).clamp(0.0, 1.0) } else { 1.0 }
}

/// A sequence of hits.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct PrintSequence {
    /// Hits of the ink.
    pub hits: u8,
    /// Hits of the underbase, 0 without one.
    pub underbase: u8,
}

/// Predicted appearance of an ink printed in one sequence.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Appearance {
    /// The sequence of hits.
    pub way: PrintSequence,
    /// Its colour on this garment.
    pub lab: Lab,
    /// CIEDE2000 from the target colour.
    pub off: f64,
    /// Contrast ratio of all films together, 0 to 1.
    pub contrast_ratio: f64,
}

/// Result of [`will_it_cover`].
#[derive(Clone, PartialEq, Debug)]
pub struct Coverage {
    /// One, two and three hits on the bare garment; then one and two on an underbase, when there is one.
    pub looks: Vec<Appearance>,
    /// Index in `looks` of the sequence with the fewest hits within the tolerance. `None` if none is within it.
    pub cheapest: Option<usize>,
}

/// Hits on the bare garment, then hits on one hit of underbase, in order of effort.
const WAYS: [PrintSequence; 5] = [
    PrintSequence { hits: 1, underbase: 0 },
    PrintSequence { hits: 2, underbase: 0 },
    PrintSequence { hits: 3, underbase: 0 },
    PrintSequence { hits: 1, underbase: 1 },
    PrintSequence { hits: 2, underbase: 1 },
];

/// Predicts an ink on a garment after one to three hits, and on an underbase, compared with the colour `target` (the
/// approved target, or the ink in bulk), and picks the least work within `tolerance` of it in CIEDE2000: fewest hits
/// first; of two sequences with as many hits the one without a second screen. `films_per_hit` is the film of one hit
/// relative to a film of the drawdowns.
pub fn will_it_cover(
    ink: &Constants,
    garment: &Reflectance,
    underbase: Option<&Constants>,
    films_per_hit: f64,
    target: Lab,
    tolerance: f64,
) -> Coverage {
    let surface = Surface::NONE;
    let looks: Vec<Appearance> = WAYS
        .into_iter()
        .filter_map(|way| {
            let base = match (way.underbase, underbase) {
                (0, _) => None,
                (hits, Some(base)) => Some((base, hits)),
                (_, None) => return None,
            };
            let printed = |garment: &Reflectance| {
                Print { garment, underbase: base, hits: way.hits, films_per_hit, surface }.look(ink)
            };
            let lab = printed(garment).lab();
            let over = |backing: f64| printed(&Reflectance::flat(backing)).luminance();
            let contrast_ratio = (over(0.0) / over(CHART_WHITE).max(1e-12)).clamp(0.0, 1.0);
            Some(Appearance { way, lab, off: ciede2000(target, lab), contrast_ratio })
        })
        .collect();
    let work = |look: &Appearance| (look.way.hits + look.way.underbase, look.way.underbase);
    let within = looks.iter().enumerate().filter(|(_, look)| look.off <= tolerance);
    let cheapest = within.min_by_key(|(_, look)| work(look)).map(|(index, _)| index);
    Coverage { looks, cheapest }
}

/// Time that one hit, one flash and one screen take.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LabourTimes {
    /// One stroke with its handling.
    pub hit_seconds: f64,
    /// One flash with its cooling.
    pub flash_seconds: f64,
    /// Burning, registering and taping one more screen.
    pub screen_minutes: f64,
}

impl LabourTimes {
    /// Minutes for a number of pieces: a flash between any two hits, and one more screen for an underbase.
    pub fn minutes(self, way: PrintSequence, pieces: u32) -> f64 {
        let hits = f64::from(way.hits) + f64::from(way.underbase);
        let piece = hits * self.hit_seconds + (hits - 1.0).max(0.0) * self.flash_seconds;
        let screens = if way.underbase > 0 { self.screen_minutes } else { 0.0 };
        screens + f64::from(pieces) * piece / 60.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::check_rows::near;
    use crate::colour::{BANDS, Origin};

    fn ink(k: f64, s: f64) -> Constants {
        Constants { k: [k; BANDS], s: [s; BANDS], origin: Origin::Measured }
    }

    /// By the closed form for a film that only scatters: over black S/(S+1), over g (S(1−g)+g)/(S(1−g)+1).
    #[test]
    fn contrast_ratio_of_a_pure_white_agrees_with_the_closed_form() {
        for s in [0.1, 1.0, 5.0, 30.0] {
            let (black, white) = (s / (s + 1.0), (s * 0.2 + 0.8) / (s * 0.2 + 1.0));
            near(contrast_ratio(&ink(0.0, s), 1.0, Surface::NONE), black / white, 1e-6);
        }
    }

    #[test]
    fn more_hits_cover_more() {
        let violet = Reflectance::flat(0.06);
        let orange = ink(0.05, 0.6);
        let target = orange.in_bulk(Surface::NONE).lab();
        let cover = will_it_cover(&orange, &violet, Some(&ink(0.01, 3.0)), 1.0, target, 2.0);
        assert_eq!(cover.looks.len(), 5);
        for pair in cover.looks[..3].windows(2) {
            assert!(pair[1].contrast_ratio > pair[0].contrast_ratio);
            assert!(pair[1].off < pair[0].off);
        }
        assert!(cover.looks[3].off < cover.looks[0].off);
        near(cover.looks[1].contrast_ratio, contrast_ratio(&orange, 2.0, Surface::NONE), 1e-12);
        for look in &cover.looks {
            assert!((0.0..=1.0).contains(&look.contrast_ratio));
        }
    }

    #[test]
    fn the_least_work_that_covers_is_picked_or_none() {
        let shirt = Reflectance::flat(0.05);
        let cheapest = |ink: &Constants, base, tolerance| {
            let target = ink.in_bulk(Surface::NONE).lab();
            let cover = will_it_cover(ink, &shirt, base, 1.0, target, tolerance);
            cover.cheapest.map(|index| cover.looks[index].way)
        };
        let white = ink(0.01, 3.0);
        assert_eq!(cheapest(&ink(3.0, 3.0), None, 2.0), Some(PrintSequence { hits: 1, underbase: 0 }));
        assert_eq!(cheapest(&ink(0.02, 0.05), Some(&white), 1.0), None);
        let glaze = ink(0.02, 0.1);
        assert_eq!(cheapest(&glaze, None, 9.0), None);
        assert_eq!(cheapest(&glaze, Some(&white), 9.0), Some(PrintSequence { hits: 1, underbase: 1 }));
    }

    #[test]
    fn minutes_add_up_strokes_and_the_flashes_between() {
        let work = LabourTimes { hit_seconds: 10.0, flash_seconds: 8.0, screen_minutes: 20.0 };
        near(work.minutes(PrintSequence { hits: 1, underbase: 0 }, 60), 10.0, 1e-12);
        near(work.minutes(PrintSequence { hits: 2, underbase: 0 }, 60), 28.0, 1e-12);
        near(work.minutes(PrintSequence { hits: 1, underbase: 1 }, 60), 48.0, 1e-12);
    }
}
