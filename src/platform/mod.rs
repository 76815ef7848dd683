//! The only door to the browser. One file for each thing a browser does, each with what happens
//! where it cannot.

pub mod clock;
pub mod disk;
pub mod dom;
pub mod feel;
pub mod files;
pub mod ids;
pub mod indexed_db;
pub mod install;
pub mod keeping;
pub mod paper;
pub mod pictures;
pub mod settings;
mod spawn;
pub mod style;
pub mod tabs;
pub mod text;
mod thread;
pub mod updates;
pub mod wake;

pub use spawn::spawn_local;
