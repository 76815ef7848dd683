//! A run of the day.

use super::fit::RunFit;
use crate::colour::Colour;
use crate::facts::{Fabric, Location};
use crate::ids::{JobId, RunId};
use crate::run::{Chance, ForecastBasis};
use crate::time::{Due, Estimate, WallTime};

/// A run on the rail.
#[derive(Clone, Debug, PartialEq)]
pub struct RailRun {
    /// The run.
    pub id: RunId,
    /// Its job.
    pub job: JobId,
    /// The job's title.
    pub title: String,
    /// The client.
    pub client: String,
    /// Print location.
    pub location: Location,
    /// The garment.
    pub garment: String,
    /// Its fabric.
    pub fabric: Fabric,
    /// Its colour.
    pub garment_colour: Option<Colour>,
    /// Name of the ink.
    pub ink: String,
    /// Its colour.
    pub ink_colour: Option<Colour>,
    /// Good pieces.
    pub good: u32,
    /// Pieces ordered.
    pub planned: u32,
    /// When the job is due.
    pub due: Option<Due>,
    /// Whether it is on the press now.
    pub on_press: bool,
    /// What its forecast is based on; `None` if its pace is unknown.
    pub basis: Option<ForecastBasis>,
    /// When the press is free for it.
    pub press_free: WallTime,
    /// Until when it waits for a screen after the press is free (on the press: until pulling can continue);
    /// `None` if it does not wait.
    pub waits_until: Option<WallTime>,
    /// Labels of the screens that it waits for; empty if it does not wait.
    pub waits_for: Vec<String>,
    /// When its set-up can begin: the press is free and its screens are ready.
    pub set_up_begins: WallTime,
    /// When it is out of the dryer, with an 80 % interval; `None` if its pace is unknown.
    pub finish: Option<Estimate<WallTime>>,
    /// Whether its time in the dryer is unknown and not in `finish`.
    pub ends_at_press: bool,
    /// Whether a run before it has no known pace, so that its own times are the earliest possible.
    pub is_earliest_possible: bool,
    /// Whether it is in time.
    pub fit: RunFit,
    /// The chance of being out of the dryer by closing. It rests on a guess alone if that of a run before it does.
    pub chance: Option<Chance>,
}
