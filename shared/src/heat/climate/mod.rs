//! The heat of the room, and what it asks of people.

mod brief;
mod heat_index;
mod view;
mod work_rest;

pub use brief::{RoomBrief, room_brief};
pub use heat_index::{HeatIndex, HeatLevel, Water, heat_index};
pub use view::{RoomCaveat, RoomRow, RoomView, room_view};
pub use work_rest::{Assumption, Schedule, WorkRest, work_rest};
