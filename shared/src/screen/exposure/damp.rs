//! What damp air does to an emulsion.

use crate::facts::Family;

/// What the room's humidity means for an exposure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DampNote {
    /// There is no current reading.
    NotRead,
    /// Dry enough for coated screens.
    Dry,
    /// Diazo and dual-cure emulsions harden more slowly in humid air: they need more time.
    MoreTime,
    /// Photopolymer emulsions harden faster in humid air and need less time, but the stencil is weak: dry
    /// it first.
    LessTimeButWeak,
}

/// The highest relative humidity for coated screens, in percent.
pub const DAMPEST: u8 = 40;

/// What the room's humidity means for an emulsion: humid air affects the two kinds of emulsion in opposite
/// directions. `humidity` is the latest reading in percent relative humidity; `None` if there is no current
/// one.
///
/// Source: `screen_room_facts.csv`: coated screens at or below 40 % relative humidity; an emulsion
/// maker, "Humidity... It's a Constant Battle".
pub fn damp_note(family: Family, humidity: Option<u8>) -> DampNote {
    match (humidity, family) {
        (None, _) => DampNote::NotRead,
        (Some(percent), _) if percent <= DAMPEST => DampNote::Dry,
        (Some(_), Family::Diazo | Family::DualCure) => DampNote::MoreTime,
        (Some(_), Family::Photopolymer) => DampNote::LessTimeButWeak,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The value of a fact in the published table.
    fn published(fact: &str) -> &'static str {
        include_str!("../../../tests/data/screen_room_facts.csv")
            .lines()
            .find_map(|row| row.strip_prefix(fact))
            .unwrap()
    }

    /// Source: `screen_room_facts.csv`.
    #[test]
    fn humid_air_affects_the_two_families_in_opposite_directions() {
        assert!(published("diazo and dual-cure in humid air,").starts_with("expose SLOWER (more time)"));
        assert!(
            published("pure photopolymer in humid air,").starts_with("\"expose FASTER (less time), stencil still weak")
        );
        assert_eq!(damp_note(Family::Diazo, Some(60)), DampNote::MoreTime);
        assert_eq!(damp_note(Family::DualCure, Some(60)), DampNote::MoreTime);
        assert_eq!(damp_note(Family::Photopolymer, Some(60)), DampNote::LessTimeButWeak);
    }

    /// Source: `screen_room_facts.csv`.
    #[test]
    fn a_room_up_to_the_published_humidity_is_dry_enough() {
        let published = published("coated screens: store at or below,");
        let percent: u8 = published.split(' ').next().unwrap().parse().unwrap();
        for family in Family::ALL {
            assert_eq!(damp_note(family, Some(percent)), DampNote::Dry);
            assert_ne!(damp_note(family, Some(percent + 1)), DampNote::Dry);
            assert_eq!(damp_note(family, None), DampNote::NotRead);
        }
    }
}
