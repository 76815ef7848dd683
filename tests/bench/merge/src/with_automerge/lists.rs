//! Lists of times, by device, run and size.

use super::{Containers, Layout, devices};
use crate::shape::{Event, LOG, Totals};
use automerge::transaction::{Transactable, Transaction};
use automerge::{Automerge, ObjType, ROOT, ReadDoc, ScalarValue};

/// The layout.
pub const LAYOUT: Layout = Layout { write, totals };

fn write(containers: &mut Containers, txn: &mut Transaction, device: &str, event: &Event) {
    let own = containers.get(txn, &ROOT, device, ObjType::Map);
    let run = containers.get(txn, &own, &event.run.to_string(), ObjType::Map);
    let (key, value) = match event.size {
        Some(size) if event.kind == "pulled" => (size, ScalarValue::Int(event.at)),
        _ => (LOG, event.note().into()),
    };
    let list = containers.get(txn, &run, key, ObjType::List);
    let end = txn.length(&list);
    txn.insert(&list, end, value).expect("the list is there");
}

fn totals(doc: &Automerge) -> Totals {
    let mut totals = Totals::new();
    for device in devices(doc) {
        for run in doc.map_range(device.id(), ..) {
            let total = totals.entry(run.key.parse().expect("keys of runs are ids")).or_default();
            for list in doc.map_range(run.id(), ..) {
                if list.key == LOG {
                    for (note, _) in doc.values(list.id()) {
                        total.add_note(note.as_str().expect("a note is text"));
                    }
                } else {
                    total.good += i64::try_from(doc.length(list.id())).expect("lists are short");
                }
            }
        }
    }
    totals
}
