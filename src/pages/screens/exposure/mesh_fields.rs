//! Fields of a typed mesh: count, thread and colour.

use crate::components::{Choice, Switch};
use crate::forms::{Bound, Field, Kind};
use crate::i18n;
use lastpull_core::form::Problems;
use lastpull_core::units::LengthUnit;
use leptos::prelude::*;

/// The fields of a form that describe its mesh.
pub struct MeshBindings {
    /// Threads per inch or centimetre.
    pub count: Bound,
    /// Thread diameter in micrometres.
    pub thread: Bound,
    /// Units of the count.
    pub per: Bound<LengthUnit>,
    /// Whether the mesh is dyed.
    pub dyed: Bound<bool>,
}

/// The fields.
pub fn mesh_inputs(mesh: MeshBindings, problems: Signal<Problems>) -> AnyView {
    let MeshBindings { count, thread, per, dyed } = mesh;
    view! {
        <div class="field-pair">
            <Field label=i18n::screen_mesh_count() kind=Kind::Whole bound=count problems/>
            <Field label=i18n::screen_form_thread() kind=Kind::Whole unit=i18n::exposure_um() bound=thread problems hint=i18n::sheet_may_stay_empty()/>
        </div>
        {counted(per)}
        <Switch id=dyed.name label=i18n::screen_form_dyed() value=dyed.value on_set=dyed.set/>
    }.into_any()
}

/// The choice of the units in which a mesh is counted.
pub fn counted(per: Bound<LengthUnit>) -> AnyView {
    let options = vec![
        (LengthUnit::Inches, i18n::mesh_per_inch().to_owned()),
        (LengthUnit::Centimetres, i18n::mesh_per_centimetre().to_owned()),
    ];
    view! { <Choice label=i18n::mesh_per() name=per.name options value=per.value on_pick=per.set/> }.into_any()
}
