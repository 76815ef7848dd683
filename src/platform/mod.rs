//! The only door to the browser. One file for each thing a browser does, each with what happens
//! where it cannot.

pub mod canvas;
pub mod clock;
pub mod dom;
pub mod files;
pub mod haptics;
pub mod ids;
pub mod indexed_db;
pub mod install;
pub mod journal_worker;
pub mod pictures;
pub mod settings;
pub mod share;
mod spawn;
pub mod storage_persistence;
pub mod stylesheet;
pub mod tabs;
pub mod updates;
pub mod wake_lock;
mod worker;

pub use spawn::spawn_local;
