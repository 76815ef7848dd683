//! The same merge with automerge.

mod containers;
pub mod lists;
pub mod records;

use crate::shape::{BATCH, Event, Totals, Write, write_of};
use automerge::iter::MapRangeItem;
use automerge::transaction::{Transactable, Transaction};
use automerge::{ActorId, Automerge, ROOT, ReadDoc};
use containers::Containers;
use lastpull_core::facts::Entry;

/// Prefix of a job's id among the keys of the root, where devices' ids are keys too. A map of
/// titles would have to be created by one device before the others start.
const TITLE: &str = "title ";

/// One way to lay out the events.
pub struct Layout {
    /// Writes an event of a device below the root.
    write: fn(&mut Containers, &mut Transaction, &str, &Event),
    /// Reads the totals.
    totals: fn(&Automerge) -> Totals,
}

/// Input of [`Layout::merge_decoded`]: the first device's document, and the others'.
pub type Decoded = (Automerge, Vec<Automerge>);

impl Layout {
    /// The bytes of a document in which one device recorded its events.
    pub fn pack(&self, entries: &[Entry]) -> Vec<u8> {
        let device = entries[0].device;
        let mut doc = Automerge::new().with_actor(ActorId::from(device.as_bytes()));
        let device = device.to_string();
        let mut containers = Containers::default();
        for batch in entries.chunks(BATCH) {
            let mut txn = doc.transaction();
            for entry in batch {
                match write_of(entry) {
                    Write::Event(event) => (self.write)(&mut containers, &mut txn, &device, &event),
                    Write::Title { job, title } => {
                        txn.put(ROOT, format!("{TITLE}{job}"), title).expect("the root is there");
                    }
                }
            }
            txn.commit();
        }
        doc.save()
    }

    /// Merges the others' documents into the first device's and reads the totals.
    pub fn merge_decoded(&self, (mut doc, others): Decoded) -> (Automerge, Totals) {
        for mut other in others {
            doc.merge(&mut other).expect("own documents merge");
        }
        let totals = (self.totals)(&doc);
        (doc, totals)
    }

    /// The same from bytes. It does not build the others' documents, so it is quicker than loading
    /// each and merging.
    pub fn merge_packed(&self, packed: &[Vec<u8>]) -> (Automerge, Totals) {
        let mut doc = Automerge::new();
        for bytes in packed {
            doc.load_incremental(bytes).expect("own bytes read");
        }
        let totals = (self.totals)(&doc);
        (doc, totals)
    }
}

/// Decodes the bytes of every device.
pub fn decode(packed: &[Vec<u8>]) -> Decoded {
    let mut docs = packed.iter().map(|bytes| Automerge::load(bytes).expect("own bytes read"));
    let first = docs.next().expect("there is a device");
    (first, docs.collect())
}

/// The entry of each device at the root.
fn devices(doc: &Automerge) -> impl Iterator<Item = MapRangeItem<'_>> {
    doc.map_range(ROOT, ..).filter(|item| !item.key.starts_with(TITLE))
}
