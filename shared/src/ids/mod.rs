//! What names a thing: identifiers of devices, jobs, lots, runs and photos.

use uuid::Uuid;

mod photo;

pub use photo::PhotoId;

/// Names a job.
pub type JobId = Uuid;
/// Names a garment lot.
pub type LotId = Uuid;
/// Names a run.
pub type RunId = Uuid;

/// The device that recorded a fact. Made anew when a device starts with an empty journal.
pub type DeviceId = Uuid;

/// What a fact is about: a job, a lot, a run, a device, or (nil) the shop. Identity only: the order
/// inside a `UUIDv7` means nothing here.
pub type Subject = Uuid;
