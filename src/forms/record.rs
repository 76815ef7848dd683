//! Recording what a form changed, and deleting with undo.

use crate::route::Route;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;

/// The one fact that sets what differs, if anything does.
pub fn set<F>(id: Subject, fields: Vec<F>, fact: impl FnOnce(Vec<F>) -> Fact) -> Vec<(Subject, Fact)> {
    if fields.is_empty() { Vec::new() } else { vec![(id, fact(fields))] }
}

/// Deletes something and goes to the list it stood in; undo brings it back.
pub fn delete(store: Store, id: Subject, said: impl Into<String>, list: Route) {
    store.record(id, Fact::Deleted);
    store.notify_with_undo(said, vec![(id, Fact::Restored)]);
    list.navigate();
}
