//! What damp air does to an emulsion.

use crate::facts::Family;

/// What the room's humidity means for an exposure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HumidityEffect {
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
pub const MAX_HUMIDITY: u8 = 40;

/// What the room's humidity means for an emulsion: humid air affects the two kinds of emulsion in opposite
/// directions. `humidity` is the latest reading in percent relative humidity; `None` if there is no current
/// one.
///
/// Source: `screen_room_facts.csv`: coated screens at or below 40 % relative humidity; an emulsion
/// maker, "Humidity... It's a Constant Battle".
pub fn humidity_effect(family: Family, humidity: Option<u8>) -> HumidityEffect {
    match (humidity, family) {
        (None, _) => HumidityEffect::NotRead,
        (Some(percent), _) if percent <= MAX_HUMIDITY => HumidityEffect::Dry,
        (Some(_), Family::Diazo | Family::DualCure) => HumidityEffect::MoreTime,
        (Some(_), Family::Photopolymer) => HumidityEffect::LessTimeButWeak,
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
        assert_eq!(humidity_effect(Family::Diazo, Some(60)), HumidityEffect::MoreTime);
        assert_eq!(humidity_effect(Family::DualCure, Some(60)), HumidityEffect::MoreTime);
        assert_eq!(humidity_effect(Family::Photopolymer, Some(60)), HumidityEffect::LessTimeButWeak);
    }

    /// Source: `screen_room_facts.csv`.
    #[test]
    fn a_room_up_to_the_published_humidity_is_dry_enough() {
        let published = published("coated screens: store at or below,");
        let percent: u8 = published.split(' ').next().unwrap().parse().unwrap();
        for family in Family::ALL {
            assert_eq!(humidity_effect(family, Some(percent)), HumidityEffect::Dry);
            assert_ne!(humidity_effect(family, Some(percent + 1)), HumidityEffect::Dry);
            assert_eq!(humidity_effect(family, None), HumidityEffect::NotRead);
        }
    }
}
