//! What names a thing: identifiers of devices, jobs, lots, runs and photos.

use uuid::Uuid;

mod photo;

pub use photo::PhotoId;

/// Id of a job.
pub type JobId = Uuid;
/// Id of a garment lot.
pub type LotId = Uuid;
/// Id of a run.
pub type RunId = Uuid;

/// Id of the device that recorded a fact. A device gets a new one when it starts with an empty journal.
pub type DeviceId = Uuid;

/// Id of what a fact is about: a job, a lot, a run, a device, or (nil) the shop. Only for identity: the time
/// inside a `UUIDv7` has no meaning here.
pub type Subject = Uuid;
