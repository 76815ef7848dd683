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

/// Id of what a fact is about: a job, a lot, a run, a device, or the [`SHOP`]. Only for identity: the time
/// inside a `UUIDv7` has no meaning here.
pub type Subject = Uuid;

/// The subject of facts about the shop as a whole. It is stored with each of them, so it must never change.
pub const SHOP: Subject = Uuid::nil();

/// An id that follows from a name. Two names may have the same one, so what is found by it is compared by its name.
///
/// FNV-1a, 64 bits (Fowler, Noll and Vo: <https://datatracker.ietf.org/doc/draft-eastlake-fnv/>).
pub(crate) fn id_of_name(name: &str) -> Uuid {
    let step = |hash: u64, byte: u8| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
    Uuid::from_u64_pair(0, name.bytes().fold(0xcbf2_9ce4_8422_2325, step))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values of that document; and two names that are known to have the same one.
    #[test]
    fn the_id_of_a_name_is_its_fnv_1a() {
        assert_eq!(id_of_name("").as_u64_pair(), (0, 0xcbf2_9ce4_8422_2325));
        assert_eq!(id_of_name("a").as_u64_pair(), (0, 0xaf63_dc4c_8601_ec8c));
        assert_eq!(id_of_name("foobar").as_u64_pair(), (0, 0x8594_4171_f739_67e8));
        assert_eq!(id_of_name("8yn0iYCKYHlIj4-BwPqk"), id_of_name("GReLUrM4wMqfg9yzV3KQ"));
    }
}
