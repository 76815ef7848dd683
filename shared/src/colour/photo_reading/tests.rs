//! Tests the photo reading on rendered photos under several lights, exposures and gradients.
//!
use super::*;
use crate::colour::check_rows::{near, rows};
use crate::colour::srgb::{encoded, linear_of_xyz};
use crate::colour::{BANDS, Origin, Reflectance, ciede2000};
use crate::facts::{ReadBy, lab_of, reading_of};
use crate::ink::{PhotoSample, photo_sample};
use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};

/// A setting for photos: its light, how far the camera's own white balance got, its exposure, and the fall-off of
/// light.
#[derive(Clone, Copy)]
struct Room {
    light: &'static str,
    balanced: f64,
    stops: f64,
    /// Change of light over the width of the picture, 0.2 is a fifth.
    falls: f64,
    /// Slope of the phone's contrast curve at middle grey; 1 is none.
    contrast: f64,
}

const WIDTH: usize = 150;
const HEIGHT: usize = 50;
const PLACES: [Mark; 3] = [
    Mark { x: 25.0, y: 25.0, radius: 20.0 },
    Mark { x: 75.0, y: 25.0, radius: 20.0 },
    Mark { x: 125.0, y: 25.0, radius: 20.0 },
];

/// Weight of each band in XYZ under a light. Source: `ink_weights_10nm.csv` (CIE 015 tables, ASTM E308).
fn weights(light: &str) -> Vec<[f64; 3]> {
    let table = rows(include_str!("../../../tests/data/ink_weights_10nm.csv"), 4 * BANDS);
    table.iter().filter(|row| row.text("illuminant") == light).map(|row| row.numbers(["x", "y", "z"])).collect()
}

fn xyz(weights: &[[f64; 3]], curve: &Reflectance) -> [f64; 3] {
    let mut sum = [0.0; 3];
    for (row, value) in weights.iter().zip(curve.bands) {
        for (total, weight) in sum.iter_mut().zip(row) {
            *total += value * weight;
        }
    }
    sum
}

/// Renders target, sample and neutral side by side, band by band, under the room's light: XYZ, linear sRGB, the
/// camera's channel gains, exposure, fall-off, grain of the cloth, noise, eight bits.
fn render(room: Room, curves: [&Reflectance; 3], seed: u64) -> Vec<u8> {
    let mut random = StdRng::seed_from_u64(seed);
    let table = weights(room.light);
    let white = linear_of_xyz(xyz(&table, &Reflectance::flat(1.0)));
    let colours = curves.map(|curve| {
        let rgb = linear_of_xyz(xyz(&table, curve));
        [0, 1, 2].map(|channel| rgb[channel] * white[channel].powf(-room.balanced) * room.stops.exp2())
    });
    let mut rgba = Vec::with_capacity(WIDTH * HEIGHT * 4);
    for _ in 0..HEIGHT {
        for column in 0..WIDTH {
            let colour = colours[column * 3 / WIDTH];
            let across = column as f64 / WIDTH as f64 - 0.5;
            let grain = 1.0 + random.random_range(-0.06..0.06);
            for value in colour {
                let noise = random.random_range(-0.006..0.006) * value.max(0.0).sqrt();
                let level = encoded((value * grain * (1.0 + room.falls * across) + noise).clamp(0.0, 1.0));
                let level = level.powf(room.contrast) / (level.powf(room.contrast) + (1.0 - level).powf(room.contrast));
                rgba.push((level * 255.0).round() as u8);
            }
            rgba.push(255);
        }
    }
    rgba
}

fn marks(lightness: f64) -> Marks {
    Marks { target: PLACES[0], sample: PLACES[1], neutral: PLACES[2], neutral_lightness: lightness }
}

fn read(rgba: &[u8], marks: Marks) -> Result<PhotoReading, PhotoProblem> {
    read_photo(Picture { width: WIDTH, height: HEIGHT, rgba }, marks)
}

/// Invented inks, every other of them much darker, each with a sample that missed it: stronger or weaker, and a little
/// off in hue. Source of the curves: `ink_spectra_lab.csv`.
fn pairs() -> Vec<(Reflectance, Reflectance)> {
    rows(include_str!("../../../tests/data/ink_spectra_lab.csv"), 24)
        .iter()
        .enumerate()
        .map(|(number, row)| {
            let curve = row.from("r400");
            let depth = if number % 2 == 0 { 0.25 } else { 1.0 };
            let bands: [f64; BANDS] = std::array::from_fn(|band| curve[band] * depth);
            let off = if number % 4 < 2 { 1.15 } else { 0.88 };
            let missed = std::array::from_fn(|band| {
                let tilt = (band as f64 / 30.0 - 0.5) * if number % 3 == 0 { 0.2 } else { -0.15 };
                (bands[band].powf(off) * (1.0 + tilt)).clamp(0.0, 1.0)
            });
            let measured = |bands| Reflectance { bands, origin: Origin::Measured };
            (measured(bands), measured(missed))
        })
        .collect()
}

const GREY: Reflectance = Reflectance::flat(0.19);

fn lightness(neutral: &Reflectance) -> f64 {
    neutral.lab().l
}

fn median(values: &mut [f64]) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

/// Error of the difference read: applied to the true target and compared with the true sample.
fn missed(reading: &PhotoReading, target: Lab, sample: Lab) -> f64 {
    let (from, to) = (reading.target, reading.sample);
    let layer = Lab::new(target.l + to.l - from.l, target.a + to.a - from.a, target.b + to.b - from.b);
    ciede2000(layer, sample)
}

#[test]
fn differences_are_read_under_three_lights_exposures_and_gradients() {
    let pairs = pairs();
    let mut apart: Vec<f64> = pairs.iter().map(|(target, sample)| ciede2000(target.lab(), sample.lab())).collect();
    assert!(median(&mut apart) > 2.0, "there is a difference to read");
    let (mut all, mut refused, mut asked) = (Vec::new(), 0, 0);
    for light in ["D65", "A", "FL11"] {
        for stops in [-2.0, -1.0, 0.0, 1.0, 2.0] {
            for falls in [0.0, -0.2] {
                let room = Room { light, balanced: 0.85, stops, falls, contrast: 1.0 };
                let mut here = Vec::new();
                for (number, (target, sample)) in pairs.iter().enumerate() {
                    let rgba = render(room, [target, sample, &GREY], number as u64);
                    asked += 1;
                    match read(&rgba, marks(lightness(&GREY))) {
                        Ok(reading) => here.push(missed(&reading, target.lab(), sample.lab())),
                        // Dark and saturated inks are clipped, and refused as such.
                        Err(PhotoProblem::TooBright(_) | PhotoProblem::TooDark(_)) => refused += 1,
                        Err(problem) => panic!("{light} {stops} {falls}: {problem:?}"),
                    }
                }
                assert!(here.len() >= 4, "{light} {stops} {falls}: {}", here.len());
                let middle = median(&mut here);
                println!("{light} {stops:+} stops, light falls {falls}: {} read, median {middle:.2}", here.len());
                assert!(middle <= 1.5, "{light} {stops} {falls}: {middle}");
                all.extend(here);
            }
        }
    }
    let middle = median(&mut all);
    let worst = all[all.len() * 95 / 100];
    println!("{asked} photos, {refused} refused, median {middle:.2}, 95 % under {worst:.2}");
    assert!(middle <= 1.0, "{middle}");
    assert!(refused * 3 < asked, "{refused} of {asked} refused");
}

#[test]
fn in_daylight_the_colours_themselves_are_near() {
    let room = Room { light: "D65", balanced: 1.0, stops: 0.5, falls: 0.1, contrast: 1.0 };
    let mut off: Vec<f64> = pairs()
        .iter()
        .enumerate()
        .filter_map(|(number, (target, sample))| {
            let reading = read(&render(room, [target, sample, &GREY], number as u64), marks(lightness(&GREY))).ok()?;
            near(reading.stops, 0.5, 0.05);
            near(reading.unevenness, 0.067, 0.03);
            Some(ciede2000(reading.target, target.lab()))
        })
        .collect();
    assert!(off.len() > 12);
    let middle = median(&mut off);
    assert!(middle < 0.7, "{middle}");
}

fn plain() -> (Reflectance, Reflectance) {
    (Reflectance::flat(0.3), Reflectance::flat(0.25))
}

const DAY: Room = Room { light: "D65", balanced: 1.0, stops: 0.0, falls: 0.0, contrast: 1.0 };

#[test]
fn clipped_pictures_are_refused_with_the_patch() {
    let (target, sample) = plain();
    let paper = Reflectance::flat(0.88);
    let over = render(Room { stops: 1.0, ..DAY }, [&target, &sample, &paper], 1);
    assert_eq!(read(&over, marks(95.0)), Err(PhotoProblem::TooBright(PatchRole::Neutral)));
    let bright = render(Room { stops: 1.9, ..DAY }, [&target, &sample, &GREY], 1);
    assert_eq!(read(&bright, marks(50.0)), Err(PhotoProblem::TooBright(PatchRole::Target)));
    let dark = render(Room { stops: -9.0, ..DAY }, [&target, &sample, &GREY], 1);
    assert_eq!(read(&dark, marks(50.0)), Err(PhotoProblem::TooDark(PatchRole::Neutral)));
}

#[test]
fn strongly_uneven_light_is_refused() {
    let (target, sample) = plain();
    for falls in [0.7, -0.9] {
        let uneven = render(Room { falls, ..DAY }, [&target, &sample, &GREY], 1);
        assert_eq!(read(&uneven, marks(lightness(&GREY))), Err(PhotoProblem::UnevenLight), "{falls}");
    }
    // A shadow that falls over one patch only.
    let mut shadow = render(DAY, [&target, &sample, &GREY], 1);
    for (index, pixel) in shadow.chunks_exact_mut(4).enumerate() {
        let column = index % WIDTH;
        if column < WIDTH / 3 {
            let part = 0.75 + 0.25 * column as f64 / (WIDTH as f64 / 3.0);
            for level in &mut pixel[..3] {
                *level = (encoded(crate::colour::srgb::linear(f64::from(*level) / 255.0) * part) * 255.0).round() as u8;
            }
        }
    }
    assert_eq!(read(&shadow, marks(lightness(&GREY))), Err(PhotoProblem::UnevenLight));
}

#[test]
fn a_patch_over_an_edge_is_not_plain() {
    let (target, sample) = (Reflectance::flat(0.5), Reflectance::flat(0.15));
    let picture = render(DAY, [&target, &sample, &GREY], 1);
    let over_the_edge = Marks { target: Mark { x: 52.0, ..PLACES[0] }, ..marks(50.0) };
    assert_eq!(read(&picture, over_the_edge), Err(PhotoProblem::NotPlain(PatchRole::Target)));
}

#[test]
fn a_blue_thing_is_no_neutral() {
    let (target, sample) = plain();
    let blue = Reflectance { bands: std::array::from_fn(|band| if band < 10 { 0.5 } else { 0.1 }), ..GREY };
    let picture = render(DAY, [&target, &sample, &blue], 1);
    assert_eq!(read(&picture, marks(50.0)), Err(PhotoProblem::ColouredLight));
}

#[test]
fn impossible_marks_and_bytes_are_refused() {
    let (target, sample) = plain();
    let picture = render(DAY, [&target, &sample, &GREY], 1);
    let with = |mark: Mark| read(&picture, Marks { sample: mark, ..marks(50.0) });
    assert_eq!(with(Mark { x: 15.0, y: 25.0, radius: 20.0 }), Err(PhotoProblem::Outside(PatchRole::Sample)));
    assert_eq!(with(Mark { x: f64::NAN, y: 25.0, radius: 20.0 }), Err(PhotoProblem::Outside(PatchRole::Sample)));
    assert_eq!(with(Mark { radius: 2.0, ..PLACES[1] }), Err(PhotoProblem::TooSmall(PatchRole::Sample)));
    assert_eq!(with(Mark { radius: -5.0, ..PLACES[1] }), Err(PhotoProblem::TooSmall(PatchRole::Sample)));
    assert_eq!(read(&picture[4..], marks(50.0)), Err(PhotoProblem::NotAPicture));
    assert_eq!(read(&picture, marks(f64::NAN)), Err(PhotoProblem::NotAPicture));
    let huge = Picture { width: usize::MAX, height: 2, rgba: &picture };
    assert_eq!(read_photo(huge, marks(50.0)), Err(PhotoProblem::NotAPicture));
}

/// Source: `colour_matrices.json` (CSS Color 4), Bradford's cones and D50 to D65.
#[test]
fn the_adaptation_is_bradfords() {
    let published: serde_json::Value =
        serde_json::from_str(include_str!("../../../tests/data/colour_matrices.json")).unwrap();
    for (row, line) in CONES.iter().enumerate() {
        for (column, value) in line.iter().enumerate() {
            near(*value, published["bradford_cone_matrix"][row][column].as_f64().unwrap(), 1e-12);
        }
    }
    let from_d50 = Adaptation::from(crate::colour::lab::D50);
    for column in 0..3 {
        let ours = from_d50.of(std::array::from_fn(|at| if at == column { 1.0 } else { 0.0 }));
        for (row, value) in ours.into_iter().enumerate() {
            let theirs = published["bradford_D50_to_D65_from_xy_whites"][row][column].as_f64().unwrap();
            near(value, theirs, 1e-7);
        }
    }
}

/// Colour of a drawdown read from a photo beside a patch of known colour, as it is stored.
fn drawdown_read(known: &Reflectance, drawdown: &Reflectance, room: Room, seed: u64) -> Option<Lab> {
    let reading = read(&render(room, [known, drawdown, &GREY], seed), marks(lightness(&GREY))).ok()?;
    let on = reading_of(known.lab(), ReadBy::Instrument);
    let PhotoSample { sample, target } = photo_sample(Some(on), &reading);
    assert!(sample.by == ReadBy::Photo && target.is_none());
    Some(lab_of(sample))
}

/// For every light and exposure, a known patch beside a drawdown: their true difference, and the error of the reading.
fn drawdowns_read(light: &'static str, pairs: &[(Reflectance, Reflectance)]) -> Vec<(f64, f64)> {
    let mut rows = Vec::new();
    for (stops, falls) in [(-1.0, 0.0), (0.0, -0.2)] {
        let room = Room { light, balanced: 0.85, stops, falls, contrast: 1.0 };
        for (number, (known, drawdown)) in pairs.iter().enumerate() {
            let read = drawdown_read(known, drawdown, room, number as u64);
            let apart = ciede2000(known.lab(), drawdown.lab());
            rows.extend(read.map(|lab| (apart, ciede2000(lab, drawdown.lab()))));
        }
    }
    rows
}

#[test]
fn a_drawdown_is_read_beside_a_known_patch_with_its_uncertainty() {
    let inks: Vec<Reflectance> = pairs().iter().flat_map(|(ink, missed)| [*ink, *missed]).collect();
    // Each beside a faulty copy of itself, beside quite different inks, and beside a slightly darker one.
    let beside = |step: usize| inks.iter().copied().zip(inks.iter().copied().cycle().skip(step)).take(inks.len());
    let darker = inks.iter().map(|ink| (*ink, Reflectance { bands: ink.bands.map(|value| value * 0.93), ..*ink }));
    let pairs: Vec<_> = [1, 5].into_iter().flat_map(beside).chain(darker).collect();
    for light in ["D65", "A", "FL11"] {
        let rows = drawdowns_read(light, &pairs);
        let (far, near): (Vec<_>, Vec<_>) =
            rows.into_iter().partition(|(apart, _)| photo_uncertainty(*apart).is_some());
        assert!(near.len() > 20 && far.len() > 20, "{light}: {} near, {} far", near.len(), far.len());
        let mut off: Vec<f64> = near.iter().map(|(_, off)| *off).collect();
        let middle = median(&mut off);
        assert!(middle <= 1.5, "{light}: {middle}");
        let mut against: Vec<f64> = far.iter().map(|(apart, off)| off / photo_uncertainty(*apart).unwrap()).collect();
        let doubt = median(&mut against);
        println!("{light}: {} near, median {middle:.2}; {} far, {doubt:.2} of the doubt told", near.len(), far.len());
        assert!(doubt <= 1.0, "{light}: {doubt}");
        assert!(light == "D65" || doubt > 0.4, "{light}: the doubt told is not that large, {doubt}");
    }
}

/// Phones render middle tones with a slope of 1.3 to 1.6: common practice, no source. It makes a difference look larger.
#[test]
fn what_a_phones_contrast_curve_adds_is_part_of_the_stated_doubt() {
    let inks: Vec<Reflectance> = pairs().iter().flat_map(|(ink, missed)| [*ink, *missed]).collect();
    let middle = |curve: &Reflectance| (30.0..70.0).contains(&curve.lab().l);
    for light in ["D65", "A", "FL11"] {
        for contrast in [1.3, 1.6] {
            let room = Room { light, balanced: 0.85, stops: 0.0, falls: 0.0, contrast };
            let (mut over, mut share) = (Vec::new(), Vec::new());
            for (number, (one, other)) in [1, 3, 5]
                .into_iter()
                .flat_map(|step| inks.iter().zip(inks.iter().cycle().skip(step)).take(inks.len()))
                .enumerate()
            {
                let apart = ciede2000(one.lab(), other.lab());
                if !(middle(one) && middle(other) && (1.0..20.0).contains(&apart)) {
                    continue;
                }
                let Ok(reading) = read(&render(room, [one, other, &GREY], number as u64), marks(lightness(&GREY)))
                else {
                    continue;
                };
                let read = ciede2000(reading.target, reading.sample);
                over.push(read - apart);
                share.push((read - apart).abs() / (apart * share_in_doubt()));
            }
            assert!(over.len() >= 8, "{light} {contrast}: {}", over.len());
            let (too_large, doubt) = (median(&mut over), median(&mut share));
            println!("{light} {contrast}: {} read, too large by {too_large:.2}, {doubt:.2} of the doubt", over.len());
            assert!(too_large > 0.0, "{light} {contrast}: {too_large}");
            assert!((0.2..=1.0).contains(&doubt), "{light} {contrast}: {doubt}");
        }
    }
}
