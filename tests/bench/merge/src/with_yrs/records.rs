//! A list of records by device.
//!
//! A record never changes once written, so it is one plain value and not a map that merges by
//! itself, which would take six times as long.

use super::{DEVICES, Layout};
use crate::shape::{Event, Field, Totals};
use std::collections::HashMap;
use yrs::{Any, Array, ArrayRef, Doc, Map, MapRef, Number, Out, Transact, TransactionMut};

/// The layout.
pub const LAYOUT: Layout = Layout { write, totals };

fn write(devices: &MapRef, txn: &mut TransactionMut, device: &str, event: &Event) {
    let own: ArrayRef = devices.get_or_init(txn, device);
    let record: HashMap<String, Any> =
        event.record().into_iter().map(|(key, field)| (key.to_owned(), value(field))).collect();
    own.push_back(txn, Any::from(record));
}

fn value(field: Field) -> Any {
    match field {
        Field::Text(text) => text.into(),
        Field::Number(number) => number.into(),
        Field::Flag(flag) => flag.into(),
    }
}

fn totals(doc: &Doc) -> Totals {
    let devices = doc.get_or_insert_map(DEVICES);
    let txn = doc.transact();
    let mut totals = Totals::new();
    for (_, device) in devices.iter(&txn) {
        let own: ArrayRef = device.try_into().expect("a device holds a list");
        for record in own.iter(&txn) {
            let Out::Any(Any::Map(record)) = record else { panic!("an event is a record") };
            let text = |key| match &record[key] {
                Any::String(text) => text,
                other => panic!("{other} is not text"),
            };
            let pieces = match record.get("pieces") {
                Some(Any::Number(Number::Int(pieces))) => *pieces,
                _ => 0,
            };
            let counted = matches!(record.get("counted"), Some(Any::Bool(true)));
            let run = text("run").parse().expect("runs have ids");
            totals.entry(run).or_default().add(text("kind"), pieces, counted);
        }
    }
    totals
}
