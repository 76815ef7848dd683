//! Fields of a typed mesh: count, thread and colour.

use crate::components::{Choice, Switch};
use crate::forms::{Field, Kind, bound};
use crate::i18n;
use lastpull_core::form::Problems;
use lastpull_core::units::Units;
use leptos::prelude::*;

/// Where a form keeps its mesh.
pub struct MeshOf<F> {
    /// Name of the count's field, and the count.
    pub count: (&'static str, fn(&mut F) -> &mut String),
    /// Thread diameter in micrometres.
    pub thread: fn(&mut F) -> &mut String,
    /// Units of the count.
    pub per: fn(&mut F) -> &mut Units,
    /// Whether the mesh is dyed.
    pub dyed: fn(&mut F) -> &mut bool,
}

/// The fields.
pub fn mesh_inputs<F: Clone + Send + Sync + 'static>(
    form: RwSignal<F>,
    problems: Signal<Problems>,
    of: &MeshOf<F>,
) -> AnyView {
    let ((name, count), thread, dyed) = (of.count, of.thread, of.dyed);
    view! {
        <div class="field-pair">
            <Field name label=i18n::screen_mesh_count() kind=Kind::Whole bound=bound(form, count) problems/>
            <Field name="thread" label=i18n::screen_form_thread() kind=Kind::Whole unit=i18n::exposure_um() bound=bound(form, thread) problems hint=i18n::sheet_may_stay_empty()/>
        </div>
        {counted(form, of.per)}
        <Switch
            id="dyed"
            label=i18n::screen_form_dyed()
            value=Signal::derive(move || form.with(|form| *dyed(&mut form.clone())))
            on_set=Callback::new(move |on| form.update(|form| *dyed(form) = on))
        />
    }.into_any()
}

/// The choice of the units in which a mesh is counted.
pub fn counted<F: Clone + Send + Sync + 'static>(form: RwSignal<F>, per: fn(&mut F) -> &mut Units) -> AnyView {
    let options = vec![
        (Units::UsCustomary, i18n::mesh_per_inch().to_owned()),
        (Units::Metric, i18n::mesh_per_centimetre().to_owned()),
    ];
    view! {
        <Choice
            label=i18n::mesh_per()
            name="per"
            options
            value=Signal::derive(move || form.with(|form| *per(&mut form.clone())))
            on_pick=Callback::new(move |one| form.update(|form| *per(form) = one))
        />
    }
    .into_any()
}
