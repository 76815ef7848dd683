//! The reclaim bath: its batches, and when it is used up.

mod chart;
mod steps;
pub(crate) mod theil_sen;
mod trend;

pub use chart::{BathChart, ChartBatch, bath_chart};
pub use steps::{delete_batch, put_in, take_out};
pub use trend::{BathPace, BathPoint, BathTrend, ScreensLeft, bath_pace, bath_trend};
