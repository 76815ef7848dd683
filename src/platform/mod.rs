//! All access to browser APIs: one file per API, each with its fallback if the browser does not have
//! it.

pub mod app_worker;
pub mod canvas;
pub mod clock;
pub mod currency;
pub mod dom;
pub mod drafts;
pub mod files;
pub mod haptics;
pub mod history;
pub mod ids;
pub mod indexed_db;
pub mod install;
pub mod journal_worker;
pub mod page_memory;
pub mod pictures;
pub mod region;
pub mod row_window;
pub mod scope;
pub mod settings;
pub mod share;
mod spawn;
pub mod storage_persistence;
pub mod stylesheet;
pub mod tabs;
pub mod trouble;
pub mod updates;
pub mod wake_lock;
mod worker;

pub use spawn::spawn_local;
