//! Wash, crock and stretch tests.

mod form;
mod list;
mod run_tests;

pub use form::{NewTestPage, TestPage};
pub use list::TestsPage;
pub use run_tests::RunTests;
