//! How the distance from a lamp, and the way to the frame's edge, change its light.

use crate::facts::LampKind;
use crate::units::{Length, Seconds};

/// Why nothing can be computed from a distance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoDistanceLaw {
    /// The light of tubes does not fall off like that of a point: a test is needed.
    Tubes,
    /// Nor does that of a panel: a test is needed.
    Panel,
    /// A contact table has no distance that could change.
    Contact,
    /// A distance is not known, or is zero.
    NotKnown,
}

/// Checks that a lamp is small enough for the distance laws.
pub(crate) fn is_point(kind: LampKind) -> Result<(), NoDistanceLaw> {
    match kind {
        LampKind::Point => Ok(()),
        LampKind::Tubes => Err(NoDistanceLaw::Tubes),
        LampKind::Panel => Err(NoDistanceLaw::Panel),
        LampKind::Contact => Err(NoDistanceLaw::Contact),
    }
}

/// The exposure time at distance `to`, if `time` was right at distance `from`: `time × (to / from)²`. For a
/// point lamp only. The result must be tested, because reflectors change the law.
///
/// ```
/// use lastpull_core::units::{Length, Seconds};
/// use lastpull_core::screen::{LampKind, NoDistanceLaw, time_at_distance};
///
/// let (from, to) = (Length::from_inches(20.0), Length::from_inches(30.0));
/// let time = time_at_distance(LampKind::Point, Seconds::new(60.0), from, to).unwrap();
/// assert_eq!(time, Seconds::new(135.0));
/// assert_eq!(time_at_distance(LampKind::Tubes, Seconds::new(60.0), from, to), Err(NoDistanceLaw::Tubes));
/// ```
///
/// # Errors
/// [`NoDistanceLaw`] for any other lamp, and if a distance is zero.
///
/// Source: the inverse-square law; "Distance and Exposure", pellandphoto.com (68 min at 18.5 in is
/// about 24 min at 11 in).
pub fn time_at_distance(kind: LampKind, time: Seconds, from: Length, to: Length) -> Result<Seconds, NoDistanceLaw> {
    is_point(kind)?;
    if from.micrometres() <= 0 || to.micrometres() <= 0 {
        return Err(NoDistanceLaw::NotKnown);
    }
    let ratio = f64::from(to.micrometres()) / f64::from(from.micrometres());
    Ok(Seconds::new(time.seconds() * ratio * ratio))
}

/// How much less light the corner of a frame gets than its middle, as shares of the light in the middle (0
/// to 1).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeFalloff {
    /// Loss under a bare bulb, which shines equally in all directions: 1 − cos³.
    pub bulb_loss: f64,
    /// Loss under a small flat light, which shines most strongly straight down: 1 − cos⁴.
    pub flat_loss: f64,
}

/// The inside of a frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FrameSize {
    /// One side.
    pub width: Length,
    /// The other side.
    pub length: Length,
}

/// How much less light the corner of a frame gets than its middle. The point lamp hangs above the middle at
/// `height`; the sides are the inside of the frame. Each loss is between 0 and 1.
///
/// # Errors
/// [`NoDistanceLaw`] for any other lamp, and if the height is zero.
///
/// Source: the cosine laws of illumination, cos³ for a point that shines equally in all directions and cos⁴
/// for a Lambertian one; values in `exposure_edge_falloff.csv`.
pub fn edge_falloff(kind: LampKind, height: Length, frame: FrameSize) -> Result<EdgeFalloff, NoDistanceLaw> {
    is_point(kind)?;
    if height.micrometres() <= 0 {
        return Err(NoDistanceLaw::NotKnown);
    }
    let half = |side: Length| side.millimetres() / 2.0;
    let aside = half(frame.width) * half(frame.width) + half(frame.length) * half(frame.length);
    let down = height.millimetres() * height.millimetres();
    let cos2 = down / (down + aside);
    Ok(EdgeFalloff { bulb_loss: 1.0 - cos2 * cos2.sqrt(), flat_loss: 1.0 - cos2 * cos2 })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: `exposure_inverse_square.csv`; its first row is published as "about 24".
    #[test]
    fn a_point_lamps_time_follows_the_square_of_its_distance() {
        let rows = include_str!("../../../tests/data/exposure_inverse_square.csv");
        let mut read = 0;
        for row in rows.lines().skip(1) {
            let cells: Vec<f64> = row.split(',').take(3).map(|cell| cell.parse().unwrap()).collect();
            let expected: f64 =
                row.split("any,").nth(1).map_or("24.0409", |rest| rest.split(',').next().unwrap()).parse().unwrap();
            let [from, to] = [cells[1], cells[2]].map(Length::from_inches);
            let time = time_at_distance(LampKind::Point, Seconds::new(cells[0]), from, to).unwrap();
            assert!((time.seconds() - expected).abs() < 0.001, "{row}: {time:?}");
            read += 1;
        }
        assert_eq!(read, 6);
    }

    #[test]
    fn a_lamp_that_is_not_a_point_is_refused_with_its_reason() {
        let [near, far] = [10.0, 20.0].map(Length::from_inches);
        let time = Seconds::new(60.0);
        for (kind, reason) in [
            (LampKind::Tubes, NoDistanceLaw::Tubes),
            (LampKind::Panel, NoDistanceLaw::Panel),
            (LampKind::Contact, NoDistanceLaw::Contact),
        ] {
            assert_eq!(time_at_distance(kind, time, near, far), Err(reason));
            assert_eq!(edge_falloff(kind, near, FrameSize { width: far, length: far }), Err(reason));
        }
        let nothing = Length::from_inches(0.0);
        assert_eq!(time_at_distance(LampKind::Point, time, nothing, far), Err(NoDistanceLaw::NotKnown));
        assert_eq!(
            edge_falloff(LampKind::Point, nothing, FrameSize { width: far, length: far }),
            Err(NoDistanceLaw::NotKnown)
        );
    }

    /// Source: `exposure_edge_falloff.csv`. A frame whose half diagonal is h has sides of h·√2.
    #[test]
    fn the_light_at_a_frames_corner_follows_the_cosine_laws() {
        let rows = include_str!("../../../tests/data/exposure_edge_falloff.csv");
        let mut read = 0;
        for row in rows.lines().skip(1) {
            let cells: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
            let side = Length::from_inches(cells[1] * std::f64::consts::SQRT_2);
            let light =
                edge_falloff(LampKind::Point, Length::from_inches(cells[0]), FrameSize { width: side, length: side })
                    .unwrap();
            assert!((1.0 - light.bulb_loss - cells[2]).abs() < 2e-6, "{row}");
            assert!((1.0 - light.flat_loss - cells[3]).abs() < 2e-6, "{row}");
            read += 1;
        }
        assert_eq!(read, 4);
    }
}
