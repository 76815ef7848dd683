//! From drawdowns to colour: components characterised, pots matched, garments covered.

mod characterised;
mod component_colour;
mod cover;
mod known_patches;
mod matching;
mod photo_sample;
mod provenance;
mod strength_learning;

pub use characterised::Strengths;
pub use component_colour::{ComponentColour, DrawdownLine, HowGood, NextDrawdown, NotDrawn, component_colour};
pub use cover::{COVERS, CoverAsk, CoverRow, CoverRun, CoverView, NoCover, cover_runs, cover_view};
pub use known_patches::{KnownPatch, PatchOf, known_patches};
pub use matching::{AddAdvice, AddRow, AddWay, Difference, MatchView, NEAR_ENOUGH, NoAdvice, match_view};
pub use photo_sample::{PhotoSample, WithUndo, photo_sample, reading_again, reading_facts};
pub use provenance::RestsOn;
