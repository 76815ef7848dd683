//! The first start, and the demo shop.

pub mod demo;
mod page;

pub use page::Welcome;
