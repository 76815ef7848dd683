//! Heat limits of fabrics.

mod form;
mod list;

pub use form::LimitFormPage;
pub use list::LimitsPage;
