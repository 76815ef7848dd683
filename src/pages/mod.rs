//! The pages, in folders by what the user sees.

pub mod day;
pub mod failure;
pub mod heat;
pub mod help;
pub mod ink;
pub mod jobs;
pub mod photos;
pub mod press;
pub mod screens;
pub mod settings;
pub mod shared;
pub mod welcome;
