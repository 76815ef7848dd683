//! The dialogs over the page of the bath.

use lastpull_core::ids::Subject;

/// The open dialog.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dialog {
    /// Putting screens in.
    In,
    /// Taking a batch out.
    Out(Subject),
    /// Recording a batch that is out already.
    NoteOut,
    /// An existing charge, or a new one.
    Charge(Option<Subject>),
}
