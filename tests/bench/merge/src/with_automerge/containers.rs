//! The containers of a document being written, so that each is created once.

use automerge::transaction::{Transactable, Transaction};
use automerge::{ObjId, ObjType};
use std::collections::HashMap;

/// Containers by their parent and key.
#[derive(Default)]
pub struct Containers(HashMap<(ObjId, String), ObjId>);

impl Containers {
    /// The container under a key; created if missing.
    pub fn get(&mut self, txn: &mut Transaction, within: &ObjId, key: &str, kind: ObjType) -> ObjId {
        let make = || txn.put_object(within, key, kind).expect("the outer container is there");
        self.0.entry((within.clone(), key.to_owned())).or_insert_with(make).clone()
    }
}
