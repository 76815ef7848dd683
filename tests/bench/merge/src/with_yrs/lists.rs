//! Lists of times, by device, run and size.

use super::{DEVICES, Layout};
use crate::shape::{Event, LOG, Totals};
use yrs::{Any, Array, ArrayRef, Doc, Map, MapRef, Out, Transact, TransactionMut};

/// The layout.
pub const LAYOUT: Layout = Layout { write, totals };

fn write(devices: &MapRef, txn: &mut TransactionMut, device: &str, event: &Event) {
    let own: MapRef = devices.get_or_init(txn, device);
    let run: MapRef = own.get_or_init(txn, event.run.to_string());
    match event.size {
        Some(size) if event.kind == "pulled" => {
            run.get_or_init::<_, ArrayRef>(txn, size).push_back(txn, event.at);
        }
        _ => {
            run.get_or_init::<_, ArrayRef>(txn, LOG).push_back(txn, event.note());
        }
    }
}

fn totals(doc: &Doc) -> Totals {
    let devices = doc.get_or_insert_map(DEVICES);
    let txn = doc.transact();
    let mut totals = Totals::new();
    for (_, device) in devices.iter(&txn) {
        for (run, lists) in map(device).iter(&txn) {
            let total = totals.entry(run.parse().expect("keys of runs are ids")).or_default();
            for (key, list) in map(lists).iter(&txn) {
                let list: ArrayRef = list.try_into().expect("a run holds lists");
                if key == LOG {
                    for note in list.iter(&txn) {
                        let Out::Any(Any::String(text)) = note else { panic!("a note is text") };
                        total.add_note(&text);
                    }
                } else {
                    total.good += i64::from(list.len(&txn));
                }
            }
        }
    }
    totals
}

fn map(value: Out) -> MapRef {
    value.try_into().expect("devices and runs are maps")
}
