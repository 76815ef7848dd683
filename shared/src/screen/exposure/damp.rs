//! What damp air does to an emulsion.

use crate::facts::Family;

/// What damp air means for an exposure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DampNote {
    /// The room was not read.
    NotRead,
    /// Dry enough for coated screens.
    Dry,
    /// Diazo and dual-cure harden slower in damp air: they need more time.
    MoreTime,
    /// Photopolymer hardens faster: less time, and the stencil is weak all the same. Dry it first.
    LessTimeButWeak,
}

/// The dampest air coated screens are kept in, percent relative humidity.
pub const DAMPEST: u8 = 40;

/// What the room's air means for an emulsion: damp air pulls the two families in opposite
/// directions. `humidity` is the last reading, percent.
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

    /// What the table says of a fact.
    fn published(fact: &str) -> &'static str {
        include_str!("../../../tests/data/screen_room_facts.csv")
            .lines()
            .find_map(|row| row.strip_prefix(fact))
            .unwrap()
    }

    /// Source: `screen_room_facts.csv`.
    #[test]
    fn damp_air_pulls_the_two_families_in_opposite_directions() {
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
    fn up_to_the_published_humidity_the_room_is_dry_enough() {
        let published = published("coated screens: store at or below,");
        let percent: u8 = published.split(' ').next().unwrap().parse().unwrap();
        for family in Family::ALL {
            assert_eq!(damp_note(family, Some(percent)), DampNote::Dry);
            assert_ne!(damp_note(family, Some(percent + 1)), DampNote::Dry);
            assert_eq!(damp_note(family, None), DampNote::NotRead);
        }
    }
}
