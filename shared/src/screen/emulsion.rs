//! The shop's emulsions, and how humid air affects them.

use crate::journal::fact::is_name;
use crate::pack::Pack;
use serde::{Deserialize, Serialize};

/// What hardens an emulsion. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum Family {
    /// Diazo.
    #[default]
    Diazo,
    /// Diazo and photopolymer together.
    DualCure,
    /// Pure photopolymer.
    Photopolymer,
}

impl Family {
    /// All, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Diazo, Self::DualCure, Self::Photopolymer];
}

/// An emulsion.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Pack)]
pub struct Emulsion {
    /// The shop's name for it.
    pub name: String,
    /// What hardens it.
    pub family: Family,
    /// Solids content in percent.
    pub solids: Option<u8>,
    /// Wall time of its first fact.
    pub created: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

/// A field of an emulsion. **Frozen** as [`crate::journal::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum EmulsionField {
    /// The shop's name for it.
    Name(String),
    /// What hardens it.
    Family(Family),
    /// Solids content in percent.
    Solids(Option<u8>),
}

impl Emulsion {
    pub(super) fn set(&mut self, field: &EmulsionField) {
        match field {
            EmulsionField::Name(name) => self.name.clone_from(name),
            EmulsionField::Family(family) => self.family = *family,
            EmulsionField::Solids(solids) => self.solids = *solids,
        }
    }

    pub(super) fn fields(&self) -> Vec<EmulsionField> {
        vec![
            EmulsionField::Name(self.name.clone()),
            EmulsionField::Family(self.family),
            EmulsionField::Solids(self.solids),
        ]
    }
}

impl EmulsionField {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(name) => is_name(name),
            Self::Family(_) => true,
            Self::Solids(solids) => solids.is_none_or(|percent| percent <= 100),
        }
    }
}

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
        include_str!("../../tests/data/screen_room_facts.csv").lines().find_map(|row| row.strip_prefix(fact)).unwrap()
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
