//! A field for a reflectance curve pasted from an instrument.

use crate::forms::{Field, Kind, TextArea, bound};
use crate::i18n::{self, Term};
use crate::pages::help::Help;
use lastpull_core::form::Problems;
use lastpull_core::ink::{CurveForm, SwatchMeasurement};
use leptos::prelude::*;

/// The curve of the form, and its problems.
pub fn curve_of(form: &CurveForm) -> (Option<SwatchMeasurement>, Problems) {
    let mut problems = Problems::new();
    let curve = form.check(&mut problems);
    (curve, problems)
}

/// The field, folded until it is needed.
#[component]
pub fn CurveField(form: RwSignal<CurveForm>) -> impl IntoView {
    let problems = Memo::new(move |_| form.with(|form| curve_of(form).1));
    let got = Memo::new(move |_| form.with(|form| curve_of(form).0.is_some()));
    view! {
        <details class="colour-how">
            <summary>{i18n::colour_curve_or()}</summary>
            <div class="help-row"><p class="quiet-line">{i18n::colour_curve_hint()}</p><Help term=Term::ReflectanceCurve/></div>
            <TextArea label=i18n::colour_curve_values() bound=bound!(form.values) problems/>
            <div class="field-pair">
                <Field label=i18n::colour_curve_first() kind=Kind::Decimal unit="nm" bound=bound!(form.first) problems/>
                <Field label=i18n::colour_curve_step() kind=Kind::Decimal unit="nm" bound=bound!(form.step) problems/>
            </div>
            <p role="status">{move || got.get().then(i18n::colour_curve_got)}</p>
        </details>
    }
}
