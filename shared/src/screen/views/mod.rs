//! What the pages show of screens, baths and exposures.

mod bath;
mod board;
mod card;
mod exposure_home;
mod mesh;
mod needs;
mod room_humidity;

pub use bath::{BathQueue, BathView, ChargeRow, FinishedBatch, InBath, bath_view};
pub use board::{ScreenBoard, ScreenFilter, ScreenGroup, ScreenRow, screen_board};
pub use card::{ScreenCard, screen_card};
pub use exposure_home::{ExposureHome, exposure_home, waiting_screens};
pub use mesh::{MeshRow, mesh_rows};
pub use needs::{AlsoNeeded, NeedScreen, NeedStep, RunNeeds, needs_of, screen_needs};
pub use room_humidity::{RoomHumidity, room_humidity};
