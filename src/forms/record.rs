//! Recording what a form changed, and deleting with undo.

use crate::route::Route;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;

/// The fact that sets the changed fields, or no fact if none changed.
pub fn set<F>(id: Subject, fields: Vec<F>, fact: impl FnOnce(Vec<F>) -> Fact) -> Vec<(Subject, Fact)> {
    if fields.is_empty() { Vec::new() } else { vec![(id, fact(fields))] }
}

/// Deletes a subject, with undo, and navigates to the list it was in. Back does not lead to the deleted one.
pub fn delete(store: Store, id: Subject, said: impl Into<String>, list: Route) {
    store.delete_with_undo(id, said);
    list.replace();
}
