//! The form of a frame's size, for computing how evenly a lamp lights it.

use crate::facts::MAX_LAMP_DISTANCE_IN;
use crate::form::{Problems, collect, parse_required};
use crate::screen::{EdgeFalloff, FrameSize, Lamp, NoDistanceLaw, edge_falloff};
use crate::units::{Length, Units};

/// The inside of a frame, in inches or centimetres according to the device's units.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct FrameSizeForm {
    /// One side of the frame.
    pub width: String,
    /// The other side.
    pub length: String,
}

impl FrameSizeForm {
    /// How much less light the corners of the frame get than its middle; `None` until both sides are valid.
    ///
    /// # Errors
    /// [`NoDistanceLaw`] if nothing can be computed for this lamp, whatever is typed.
    pub fn light(&self, lamp: &Lamp, units: Units) -> Result<Option<EdgeFalloff>, NoDistanceLaw> {
        let height = lamp.distance.unwrap_or(Length::from_micrometres(0));
        let nothing = Length::from_micrometres(0);
        edge_falloff(lamp.kind, height, FrameSize { width: nothing, length: nothing })?;
        let Ok(frame) = self.check(units) else { return Ok(None) };
        edge_falloff(lamp.kind, height, frame).map(Some)
    }

    /// The size of the frame.
    ///
    /// # Errors
    /// [`Problems`] by field: `width`, `length`.
    pub fn check(&self, units: Units) -> Result<FrameSize, Problems> {
        let mut problems = Problems::new();
        let most = Length::from_inches(MAX_LAMP_DISTANCE_IN);
        let mut side = |field, text: &str| {
            collect(&mut problems, field, parse_required(text, |text| Length::parse(text, most, units)))
        };
        match (side("width", &self.width), side("length", &self.length)) {
            (Some(width), Some(length)) => Ok(FrameSize { width, length }),
            _ => Err(problems),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::LampKind;

    fn lamp(kind: LampKind, inches: f64) -> Lamp {
        Lamp { kind, distance: Some(Length::from_inches(inches)), ..Lamp::default() }
    }

    /// Source: `exposure_edge_falloff.csv`, 20 in over the middle, 10 in aside.
    #[test]
    fn a_typed_frames_corner_follows_the_cosine_laws() {
        // Half the diagonal of a 12 by 16 frame is ten.
        let form = FrameSizeForm { width: "12".into(), length: "16".into() };
        let light = form.light(&lamp(LampKind::Point, 20.0), Units::US).unwrap().unwrap();
        let row = include_str!("../../../tests/data/exposure_edge_falloff.csv")
            .lines()
            .skip(1)
            .map(|row| row.split(',').map(|cell| cell.parse::<f64>().unwrap()).collect::<Vec<_>>())
            .find(|cells| (cells[0], cells[1]) == (20.0, 10.0))
            .unwrap();
        assert!((1.0 - light.bulb_loss - row[2]).abs() < 2e-6);
        assert!((1.0 - light.flat_loss - row[3]).abs() < 2e-6);
    }

    #[test]
    fn a_lamp_without_a_law_is_refused_before_anything_is_typed() {
        let form = FrameSizeForm::default();
        assert_eq!(form.light(&lamp(LampKind::Tubes, 20.0), Units::US), Err(NoDistanceLaw::Tubes));
        assert_eq!(form.light(&lamp(LampKind::Point, 0.0), Units::US), Err(NoDistanceLaw::NotKnown));
        assert_eq!(form.light(&lamp(LampKind::Point, 20.0), Units::US), Ok(None));
    }
}
