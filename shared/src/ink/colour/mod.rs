//! From drawdowns to colour: components characterised, pots matched, garments covered.

mod characterised;
mod component_colour;
mod cover;
mod known_patches;
mod matching;
mod photo_sample;
mod provenance;
mod strength_learning;

pub use characterised::LearnedStrength;
pub use component_colour::{
    ColourQuality, ComponentColour, DrawdownLine, NextDrawdown, Uncharacterised, component_colour,
};
pub use cover::{CoverRow, CoverRun, CoverView, CoverageQuery, MAX_VISIBLE_DELTA_E, NoCover, cover_runs, cover_view};
pub use known_patches::{KnownPatch, PatchSource, known_patches};
pub use matching::{AddAdvice, AddRow, AddWay, ColourDifference, MatchView, NEAR_ENOUGH, NoAdvice, match_view};
pub use photo_sample::{PhotoSample, amend_reading_facts, photo_sample, reading_facts};
pub use provenance::ColourProvenance;
