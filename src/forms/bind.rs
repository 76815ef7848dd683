//! Binds an input to a field of a form.

use leptos::prelude::*;

/// A field of a form, for the input that shows it. Made with [`bound!`].
pub struct Bound<T: Send + Sync + 'static = String> {
    /// Its name in the form's problems, and the element id of its input.
    pub name: &'static str,
    /// The value. It changes only with this field, not with others of the form.
    pub value: Signal<T>,
    /// Called with the new value on every change.
    pub set: Callback<T>,
}

impl<T: Send + Sync + 'static> Clone for Bound<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: Send + Sync + 'static> Copy for Bound<T> {}

impl<T: PartialEq + Send + Sync + 'static> Bound<T> {
    /// The field that `read` returns and `write` sets.
    pub fn new<F: Send + Sync + 'static>(
        name: &'static str,
        form: RwSignal<F>,
        read: impl Fn(&F) -> T + Send + Sync + 'static,
        write: impl Fn(&mut F, T) + Send + Sync + 'static,
    ) -> Self {
        Self {
            name,
            value: Memo::new(move |_| form.with(&read)).into(),
            set: Callback::new(move |value| form.update(|form| write(form, value))),
        }
    }

    /// What [`bound!`] calls: function pointers, so that this is compiled once for each form instead of each field.
    pub fn of_field<F: Send + Sync + 'static>(
        name: &'static str,
        form: RwSignal<F>,
        read: fn(&F) -> T,
        write: fn(&mut F, T),
    ) -> Self {
        Self::new(name, form, read, write)
    }

    /// A form of one value.
    pub fn of(name: &'static str, value: RwSignal<T>) -> Self {
        Self { name, value: value.into(), set: Callback::new(move |typed| value.set(typed)) }
    }

    /// The same under another name.
    pub fn named(self, name: &'static str) -> Self {
        Self { name, ..self }
    }
}

/// Binds an input to a field of a form, `bound!(form.name)` or `bound!(form.mesh.count)`. The field's identifier is its
/// name.
macro_rules! bound {
    ($form:ident $(. $field:ident)+) => {
        $crate::forms::Bound::of_field(
            $crate::forms::field_name!(@last $($field)+),
            $form,
            |form| form $(. $field)+ .clone(),
            |form, value| form $(. $field)+ = value,
        )
    };
}

/// The name of a field of a form, `field_name!(JobForm.title)`. Does not compile without such a field.
macro_rules! field_name {
    (@last $field:ident) => { stringify!($field) };
    (@last $outer:ident $($field:ident)+) => { $crate::forms::field_name!(@last $($field)+) };
    ($form:ident . $field:ident) => {{
        const _: fn(&$form) = |form| { let _ = &form.$field; };
        stringify!($field)
    }};
}

pub(crate) use {bound, field_name};
