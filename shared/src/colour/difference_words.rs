//! Describes a colour difference in a printer's words: lighter, redder, cleaner.

use super::difference::parts2000;
use super::{Lab, ciede2000};
use crate::collections::sort_by;

/// Direction in which a sample differs from the target.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum DifferenceDirection {
    /// Higher L*.
    Lighter,
    /// Lower L*.
    Darker,
    /// Hue turned toward red; for greys a higher a*.
    Redder,
    /// Hue turned toward green; for greys a lower a*.
    Greener,
    /// Hue turned toward yellow; for greys a higher b*.
    Yellower,
    /// Hue turned toward blue; for greys a lower b*.
    Bluer,
    /// Higher chroma: brighter, cleaner.
    Cleaner,
    /// Lower chroma: duller, dirtier.
    Dirtier,
}

/// Size of a difference, by its share of CIEDE2000. The limits are our own: an eye misses about half a unit, finds one
/// side by side, and a client finds two and a half without comparison.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum DifferenceSize {
    /// 0.5 to 1 unit.
    Slightly,
    /// 1 to 2.5 units.
    Clearly,
    /// 2.5 units and more.
    Much,
}

impl DifferenceSize {
    fn of(share: f64) -> Option<Self> {
        match share {
            nothing if nothing < 0.5 => None,
            little if little < 1.0 => Some(Self::Slightly),
            some if some < 2.5 => Some(Self::Clearly),
            _ => Some(Self::Much),
        }
    }
}

/// One word of the difference.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct DifferenceWord {
    /// Direction of the difference.
    pub direction: DifferenceDirection,
    /// Size of the difference.
    pub size: DifferenceSize,
    /// Its share of CIEDE2000, in units; never negative.
    pub share: f64,
}

/// Chroma below which a colour counts as grey and is described by a* and b* instead of hue (our own).
const GREY: f64 = 6.0;

/// How the sample differs from the target, largest difference first. Empty if no component reaches half a unit of
/// CIEDE2000. At most three words: one for lightness, two for colour.
///
/// The word for hue is the axis it turns toward: from red that is yellow or blue, from yellow red or green, from green
/// yellow or blue, from blue green or red. "Cleaner" and "dirtier" mean chroma: common practice, no source.
pub fn describe_difference(target: Lab, sample: Lab) -> Vec<DifferenceWord> {
    let mut words = Vec::new();
    let mut say = |share: f64, above: DifferenceDirection, below: DifferenceDirection| {
        if let Some(size) = DifferenceSize::of(share.abs()) {
            words.push(DifferenceWord { direction: if share > 0.0 { above } else { below }, size, share: share.abs() });
        }
    };
    let [lightness, ..] = parts2000(target, sample);
    say(lightness, DifferenceDirection::Lighter, DifferenceDirection::Darker);

    if target.chroma() < GREY || sample.chroma() < GREY {
        let red = Lab { a: sample.a, ..target };
        let yellow = Lab { b: sample.b, ..target };
        say(
            ciede2000(target, red).copysign(sample.a - target.a),
            DifferenceDirection::Redder,
            DifferenceDirection::Greener,
        );
        say(
            ciede2000(target, yellow).copysign(sample.b - target.b),
            DifferenceDirection::Yellower,
            DifferenceDirection::Bluer,
        );
    } else {
        let hue = target.hue();
        let (sine, cosine) = hue.to_radians().sin_cos();
        let scale = sample.chroma() / target.chroma();
        let same_hue = Lab::new(target.l, target.a * scale, target.b * scale);
        let same_chroma = Lab::new(target.l, sample.a / scale, sample.b / scale);
        let (da, db) = (same_chroma.a - target.a, same_chroma.b - target.b);
        say(
            ciede2000(target, same_hue).copysign(scale - 1.0),
            DifferenceDirection::Cleaner,
            DifferenceDirection::Dirtier,
        );
        // Turning onward from red through yellow, green and blue moves along (−sin, cos).
        let onward = db * cosine - da * sine;
        let share = ciede2000(target, same_chroma).copysign(onward);
        if sine.abs() > cosine.abs() {
            // Yellow or blue: the turn is mostly along red and green.
            if sine > 0.0 {
                say(share, DifferenceDirection::Greener, DifferenceDirection::Redder);
            } else {
                say(share, DifferenceDirection::Redder, DifferenceDirection::Greener);
            }
        } else if cosine > 0.0 {
            say(share, DifferenceDirection::Yellower, DifferenceDirection::Bluer);
        } else {
            say(share, DifferenceDirection::Bluer, DifferenceDirection::Yellower);
        }
    }
    sort_by(&mut words, |one, other| other.share.total_cmp(&one.share));
    words
}

#[cfg(test)]
mod tests {
    use super::*;

    fn leans(target: Lab, sample: Lab) -> Vec<DifferenceDirection> {
        describe_difference(target, sample).into_iter().map(|word| word.direction).collect()
    }

    fn polar(l: f64, chroma: f64, hue: f64) -> Lab {
        let (sine, cosine) = hue.to_radians().sin_cos();
        Lab::new(l, chroma * cosine, chroma * sine)
    }

    #[test]
    fn the_same_colour_has_no_words() {
        let navy = Lab::new(25.0, 5.0, -30.0);
        assert!(describe_difference(navy, navy).is_empty());
        assert!(describe_difference(navy, Lab { l: 25.2, ..navy }).is_empty());
    }

    #[test]
    fn each_direction_has_its_word() {
        let grey = Lab::new(50.0, 0.0, 0.0);
        assert_eq!(leans(grey, Lab { l: 53.0, ..grey }), [DifferenceDirection::Lighter]);
        assert_eq!(leans(grey, Lab { l: 47.0, ..grey }), [DifferenceDirection::Darker]);
        assert_eq!(leans(grey, Lab { a: 3.0, ..grey }), [DifferenceDirection::Redder]);
        assert_eq!(leans(grey, Lab { a: -3.0, ..grey }), [DifferenceDirection::Greener]);
        assert_eq!(leans(grey, Lab { b: 3.0, ..grey }), [DifferenceDirection::Yellower]);
        assert_eq!(leans(grey, Lab { b: -3.0, ..grey }), [DifferenceDirection::Bluer]);
        let red = polar(50.0, 50.0, 20.0);
        assert_eq!(leans(red, polar(50.0, 58.0, 20.0)), [DifferenceDirection::Cleaner]);
        assert_eq!(leans(red, polar(50.0, 43.0, 20.0)), [DifferenceDirection::Dirtier]);
    }

    #[test]
    fn a_hue_turns_toward_its_neighbours() {
        use DifferenceDirection::{Bluer, Greener, Redder, Yellower};
        for (hue, onward, back) in
            [(0.0, Yellower, Bluer), (90.0, Greener, Redder), (180.0, Bluer, Yellower), (250.0, Redder, Greener)]
        {
            let target = polar(55.0, 40.0, hue);
            assert_eq!(leans(target, polar(55.0, 40.0, hue + 8.0)), [onward], "{hue}");
            assert_eq!(leans(target, polar(55.0, 40.0, hue - 8.0)), [back], "{hue}");
        }
    }

    #[test]
    fn the_largest_difference_comes_first_with_its_size() {
        let target = polar(50.0, 40.0, 90.0);
        let words = describe_difference(target, polar(57.0, 40.0, 93.0));
        assert_eq!(
            words.iter().map(|word| word.direction).collect::<Vec<_>>(),
            [DifferenceDirection::Lighter, DifferenceDirection::Greener]
        );
        assert_eq!(words[0].size, DifferenceSize::Much);
        assert!(words[1].size < DifferenceSize::Much);
    }
}
