//! A mesh that is typed: its count, thread and colour.

use crate::kept::{Memo, RwSignal, Signal};
use crate::live::Drawn;
use crate::parts::{Choice, Field, Kind, Switch, bound};
use crate::words;
use lastpull_core::job::Problems;
use lastpull_core::quantity::Units;
use lastpull_core::screen::MeshSheetForm;
use lastpull_view::view;
use leptos::prelude::*;

/// What a mesh is counted in.
pub fn per_options() -> Vec<(Units, String)> {
    vec![
        (Units::Inch, words::exposure_mesh_inch().to_owned()),
        (Units::Metric, words::exposure_mesh_metric().to_owned()),
    ]
}

/// The fields.
#[component(transparent)]
pub fn ClothFields(form: RwSignal<MeshSheetForm>, problems: Memo<Problems>) -> Drawn {
    view! {
        <div class="stencil-typed">
            <div class="field-pair">
                <Field name="count" label=words::screen_mesh_count() kind=Kind::Whole bound=bound(form, |f| &mut f.count) problems/>
                <Field name="thread" label=words::screen_form_thread() kind=Kind::Whole unit=words::exposure_um() bound=bound(form, |f| &mut f.thread) problems hint=words::sheet_may_stay_empty()/>
            </div>
            <Choice
                label=words::exposure_mesh_per()
                name="per"
                options=per_options()
                value=Signal::derive(move || form.with(|form| form.per))
                on_pick=Callback::new(move |per| form.update(|form| form.per = per))
            />
            <Switch
                id="dyed"
                label=words::screen_form_dyed()
                value=Signal::derive(move || form.with(|form| form.dyed))
                on_set=Callback::new(move |on| form.update(|form| form.dyed = on))
            />
        </div>
    }
}
