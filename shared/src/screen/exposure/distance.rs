//! What another distance, or the way to the frame's edge, does to the light of a lamp.

use crate::facts::LampKind;
use crate::units::{Length, Seconds};

/// Why nothing can be computed from a distance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoDistanceLaw {
    /// The light of tubes does not thin out as a point's does: test.
    Tubes,
    /// Nor does a panel's: test.
    Panel,
    /// On a contact table there is no distance to change.
    Contact,
    /// A distance is not known, or is nothing.
    NotKnown,
}

/// Whether a lamp is small enough for laws of distance, else why not.
pub(crate) fn is_point(kind: LampKind) -> Result<(), NoDistanceLaw> {
    match kind {
        LampKind::Point => Ok(()),
        LampKind::Tubes => Err(NoDistanceLaw::Tubes),
        LampKind::Panel => Err(NoDistanceLaw::Panel),
        LampKind::Contact => Err(NoDistanceLaw::Contact),
    }
}

/// How long to expose at `to`, when `time` was right at `from`: `time × (to / from)²`. For a point
/// lamp only. What comes out is to be tested: reflectors bend the law.
///
/// # Errors
/// [`NoDistanceLaw`] for any other lamp, and when a distance is nothing.
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

/// How much less light than the middle a frame's edge gets, as shares of the middle's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeLight {
    /// What is missing under a bare bulb, which shines alike to all sides: 1 − cos³.
    pub bulb_loss: f64,
    /// What is missing under a small flat light, which shines most straight down: 1 − cos⁴.
    pub flat_loss: f64,
}

/// How much less light the corner of a frame gets than its middle, when a point lamp hangs over the
/// middle at `height`, and the frame measures `width` by `length` inside. Between nothing lost and
/// all of it.
///
/// # Errors
/// [`NoDistanceLaw`] for any other lamp, and when the height is nothing.
///
/// Source: the cosine laws of illumination, cos³ for a point that shines alike to all sides and cos⁴
/// for a Lambertian one; values in `exposure_edge_falloff.csv`.
pub fn edge_light(kind: LampKind, height: Length, width: Length, length: Length) -> Result<EdgeLight, NoDistanceLaw> {
    is_point(kind)?;
    if height.micrometres() <= 0 {
        return Err(NoDistanceLaw::NotKnown);
    }
    let half = |side: Length| side.millimetres() / 2.0;
    let aside = half(width) * half(width) + half(length) * half(length);
    let down = height.millimetres() * height.millimetres();
    let cos2 = down / (down + aside);
    Ok(EdgeLight { bulb_loss: 1.0 - cos2 * cos2.sqrt(), flat_loss: 1.0 - cos2 * cos2 })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: `exposure_inverse_square.csv`; its first row is published as "about 24".
    #[test]
    fn a_point_lamps_time_goes_with_the_square_of_its_distance() {
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
    fn a_lamp_that_is_no_point_is_refused_with_its_reason() {
        let [near, far] = [10.0, 20.0].map(Length::from_inches);
        let time = Seconds::new(60.0);
        for (kind, reason) in [
            (LampKind::Tubes, NoDistanceLaw::Tubes),
            (LampKind::Panel, NoDistanceLaw::Panel),
            (LampKind::Contact, NoDistanceLaw::Contact),
        ] {
            assert_eq!(time_at_distance(kind, time, near, far), Err(reason));
            assert_eq!(edge_light(kind, near, far, far), Err(reason));
        }
        let nothing = Length::from_inches(0.0);
        assert_eq!(time_at_distance(LampKind::Point, time, nothing, far), Err(NoDistanceLaw::NotKnown));
        assert_eq!(edge_light(LampKind::Point, nothing, far, far), Err(NoDistanceLaw::NotKnown));
    }

    /// Source: `exposure_edge_falloff.csv`. A frame whose half diagonal is h has sides of h·√2.
    #[test]
    fn the_corner_of_a_frame_gets_as_much_less_light_as_the_cosine_laws_say() {
        let rows = include_str!("../../../tests/data/exposure_edge_falloff.csv");
        let mut read = 0;
        for row in rows.lines().skip(1) {
            let cells: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
            let side = Length::from_inches(cells[1] * std::f64::consts::SQRT_2);
            let light = edge_light(LampKind::Point, Length::from_inches(cells[0]), side, side).unwrap();
            assert!((1.0 - light.bulb_loss - cells[2]).abs() < 2e-6, "{row}");
            assert!((1.0 - light.flat_loss - cells[3]).abs() < 2e-6, "{row}");
            read += 1;
        }
        assert_eq!(read, 4);
    }
}
