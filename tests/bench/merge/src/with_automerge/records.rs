//! A list of records by device. Automerge has no plain value that holds others, so a record is a map
//! that merges by itself.

use super::{Containers, Layout, devices};
use crate::shape::{Event, Field, Totals};
use automerge::transaction::{Transactable, Transaction};
use automerge::{Automerge, ObjType, ROOT, ReadDoc, ScalarValue, ScalarValueRef, ValueRef};

/// The layout.
pub const LAYOUT: Layout = Layout { write, totals };

fn write(containers: &mut Containers, txn: &mut Transaction, device: &str, event: &Event) {
    let own = containers.get(txn, &ROOT, device, ObjType::List);
    let end = txn.length(&own);
    let record = txn.insert_object(&own, end, ObjType::Map).expect("the list is there");
    for (key, field) in event.record() {
        let value = match field {
            Field::Text(text) => text.into(),
            Field::Number(number) => ScalarValue::Int(number),
            Field::Flag(flag) => ScalarValue::Boolean(flag),
        };
        txn.put(&record, key, value).expect("the record is there");
    }
}

fn totals(doc: &Automerge) -> Totals {
    let mut totals = Totals::new();
    for device in devices(doc) {
        for record in doc.list_range(device.id(), ..) {
            let (mut run, mut kind, mut pieces, mut counted) = (None, None, 0, false);
            for field in doc.map_range(record.id(), ..) {
                let ValueRef::Scalar(value) = field.value else { panic!("a field is plain") };
                match (&*field.key, value) {
                    ("run", ScalarValueRef::Str(text)) => run = text.parse().ok(),
                    ("kind", ScalarValueRef::Str(text)) => kind = Some(text),
                    ("pieces", ScalarValueRef::Int(number)) => pieces = number,
                    ("counted", ScalarValueRef::Boolean(flag)) => counted = flag,
                    _ => {}
                }
            }
            let (run, kind) = (run.expect("a record has a run"), kind.expect("a record has a kind"));
            totals.entry(run).or_default().add(&kind, pieces, counted);
        }
    }
    totals
}
