//! The same merge with yrs.
//!
//! Updates are in its first encoding, the usual one. The second is as quick to read here and 2 %
//! smaller.

pub mod lists;
pub mod records;

use crate::shape::{BATCH, Event, Totals, Write, write_of};
use lastpull_core::facts::Entry;
use yrs::updates::decoder::Decode;
use yrs::{Doc, Map, MapRef, ReadTxn, StateVector, Transact, TransactionMut, Update};

const DEVICES: &str = "devices";
const TITLES: &str = "titles";

/// One way to lay out the events.
pub struct Layout {
    /// Writes an event of a device below the map of devices.
    write: fn(&MapRef, &mut TransactionMut, &str, &Event),
    /// Reads the totals.
    totals: fn(&Doc) -> Totals,
}

/// Input of [`Layout::merge_decoded`]: the first device's document, and the others' updates.
pub type Decoded = (Doc, Vec<Update>);

impl Layout {
    /// The bytes of a document in which one device recorded its events.
    pub fn pack(&self, client: u64, entries: &[Entry]) -> Vec<u8> {
        let doc = Doc::with_client_id(client);
        let devices = doc.get_or_insert_map(DEVICES);
        let titles = doc.get_or_insert_map(TITLES);
        let device = entries[0].device.to_string();
        for batch in entries.chunks(BATCH) {
            let mut txn = doc.transact_mut();
            for entry in batch {
                match write_of(entry) {
                    Write::Event(event) => (self.write)(&devices, &mut txn, &device, &event),
                    Write::Title { job, title } => {
                        titles.insert(&mut txn, job.to_string(), title);
                    }
                }
            }
        }
        doc.transact().encode_state_as_update_v1(&StateVector::default())
    }

    /// Applies the others' updates to the first device's document and reads the totals.
    pub fn merge_decoded(&self, (doc, others): Decoded) -> (Doc, Totals) {
        {
            let mut txn = doc.transact_mut();
            for update in others {
                txn.apply_update(update).expect("own update applies");
            }
        }
        let totals = (self.totals)(&doc);
        (doc, totals)
    }

    /// The same from bytes.
    pub fn merge_packed(&self, packed: &[Vec<u8>]) -> (Doc, Totals) {
        self.merge_decoded(decode(packed))
    }
}

/// Decodes the bytes of every device.
pub fn decode(packed: &[Vec<u8>]) -> Decoded {
    let mut updates = packed.iter().map(|bytes| Update::decode_v1(bytes).expect("own bytes read"));
    let doc = Doc::new();
    let first = updates.next().expect("there is a device");
    doc.transact_mut().apply_update(first).expect("own update applies");
    (doc, updates.collect())
}
