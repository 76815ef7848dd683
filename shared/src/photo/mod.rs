//! Photos of screens, prints and tests: which there are and what they show. Their bytes are kept by
//! their hash beside the journal.

mod fact;
mod photos;

pub use fact::{PhotoFact, PhotoId};
pub use photos::{Photo, Photos};
