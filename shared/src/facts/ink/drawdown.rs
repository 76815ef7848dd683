//! A drawdown of a component, as it was made and read. **Frozen** as [`crate::facts::Fact`] is.

use super::reading::ColourReading;
use super::share::Share;
use crate::bounds::{is_name, is_note};
use crate::codec::Encode;
use crate::colour::{BANDS, Lab, Origin, Reflectance, smoothest};
use crate::ids::Subject;
use serde::{Deserialize, Serialize};

/// What was read of a swatch.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SwatchMeasurement {
    /// Its colour.
    Colour(ColourReading),
    /// Its reflectance in ten-thousandths, from 400 to 700 nm in steps of 10, as an instrument measured it.
    Curve(Vec<u16>),
    /// The same reflectance in every band, in ten-thousandths: the white or black of an opacity chart, or a grey card.
    Flat(u16),
}

/// Thickness of a film.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Film {
    /// Printed with this many hits through the screen that the shop prints with.
    Hits(u8),
    /// Drawn with a bar.
    Wet {
        /// Wet thickness in micrometres.
        um: u16,
        /// Wet thickness of one of the shop's hits, in micrometres: its ink volume in cm³/m².
        a_hit: u16,
    },
}

impl Film {
    /// Number of hits that it corresponds to.
    pub fn films(self) -> f64 {
        match self {
            Self::Hits(hits) => f64::from(hits),
            Self::Wet { um, a_hit } => f64::from(um) / f64::from(a_hit.max(1)),
        }
    }

    fn in_bounds(self) -> bool {
        match self {
            Self::Hits(hits) => (1..=20).contains(&hits),
            Self::Wet { um, a_hit } => (1..=2_000).contains(&um) && (1..=2_000).contains(&a_hit),
        }
    }
}

/// How the ink of a drawdown was applied.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum RecordedLayer {
    /// So thick that nothing shows through.
    Hiding,
    /// As a film over a known backing.
    Over {
        /// Thickness of the film.
        film: Film,
        /// What was read of the backing.
        backing: SwatchMeasurement,
    },
}

/// A drawdown of a component.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, Encode)]
#[serde(deny_unknown_fields)]
pub struct DrawdownRecord {
    /// The component.
    pub component: Subject,
    /// Share of the component by weight: a masstone is all of it, less is a tint.
    pub share: Share,
    /// The white or base that makes up the rest.
    pub rest: Option<Subject>,
    /// How it was applied.
    pub lay: RecordedLayer,
    /// What was read of it.
    pub seen: SwatchMeasurement,
    /// Free note.
    pub note: String,
    /// Who recorded it, if known.
    pub by: Option<String>,
}

/// Full reflectance, in ten-thousandths.
const ALL: u16 = 10_000;

impl SwatchMeasurement {
    /// White of an opacity chart, 80 %: common practice, no source.
    pub const CHART_WHITE: Self = Self::Flat(8_000);
    /// Black of an opacity chart, 1 %: common practice, no source.
    pub const CHART_BLACK: Self = Self::Flat(100);

    /// A curve as it is stored.
    pub fn of_curve(curve: &Reflectance) -> Self {
        Self::Curve(curve.bands.iter().map(|value| (value.clamp(0.0, 1.0) * f64::from(ALL)).round() as u16).collect())
    }

    /// Reflectance in each band: as measured, or the smoothest curve with that colour.
    pub fn reflectance(&self) -> Reflectance {
        match self {
            Self::Colour(reading) => smoothest(lab_of(*reading)).reflectance,
            Self::Curve(values) => {
                let at = |band: usize| f64::from(values.get(band).copied().unwrap_or_default()) / f64::from(ALL);
                Reflectance { bands: std::array::from_fn(at), origin: Origin::Measured }
            }
            Self::Flat(value) => Reflectance::flat(f64::from(*value) / f64::from(ALL)),
        }
    }

    /// Its colour.
    pub fn lab(&self) -> Lab {
        match self {
            Self::Colour(reading) => lab_of(*reading),
            Self::Curve(_) | Self::Flat(_) => self.reflectance().lab(),
        }
    }

    fn in_bounds(&self) -> bool {
        match self {
            Self::Colour(reading) => reading.in_bounds(),
            Self::Curve(values) => values.len() == BANDS && values.iter().all(|value| *value <= ALL),
            Self::Flat(value) => *value <= ALL,
        }
    }
}

impl DrawdownRecord {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        let lies = match &self.lay {
            RecordedLayer::Hiding => true,
            RecordedLayer::Over { film, backing } => film.in_bounds() && backing.in_bounds(),
        };
        let part = self.share > Share::default() && self.share <= Share::WHOLE;
        lies && part && self.seen.in_bounds() && is_note(&self.note) && self.by.iter().all(|by| is_name(by))
    }
}

/// A stored reading as a colour to calculate with.
pub fn lab_of(reading: ColourReading) -> Lab {
    let [l, a, b] = reading.lab();
    Lab::new(l, a, b)
}

/// A colour as it is stored.
pub fn reading_of(lab: Lab, by: super::reading::ReadBy) -> ColourReading {
    ColourReading::from_lab([lab.l, lab.a, lab.b], by)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::ink::reading::ReadBy;

    #[test]
    fn a_curve_reads_back_as_measured_and_a_colour_keeps_its_look() {
        let measured = Reflectance { bands: std::array::from_fn(|band| 0.02 * band as f64), origin: Origin::Measured };
        let back = SwatchMeasurement::of_curve(&measured).reflectance();
        assert_eq!(back.origin, Origin::Measured);
        assert!(measured.bands.iter().zip(back.bands).all(|(one, other)| (one - other).abs() < 5.1e-5));
        let seen = SwatchMeasurement::Colour(reading_of(Lab::new(50.0, 20.0, -10.0), ReadBy::Instrument));
        assert_eq!(seen.reflectance().origin, Origin::Reconstructed);
        assert!(crate::colour::ciede2000(seen.reflectance().lab(), seen.lab()) < 0.01);
        assert!(!SwatchMeasurement::Curve(vec![1; 30]).in_bounds());
        assert!(!SwatchMeasurement::Flat(10_001).in_bounds());
    }

    #[test]
    fn a_wet_film_counts_as_many_hits_as_its_thickness_holds() {
        assert!((Film::Wet { um: 100, a_hit: 40 }.films() - 2.5).abs() < 1e-12);
        assert!((Film::Hits(2).films() - 2.0).abs() < 1e-12);
    }
}
