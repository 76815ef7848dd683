//! The ink need of a run through a mesh, and the transfer learned from a weighed run.

use crate::forms::{Bound, Field, Kind, bound};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use lastpull_core::form::{FormProblem, Problems};
use lastpull_core::screen::{InkUse, InkUseForm, ink_need, measured_transfer};
use lastpull_core::units::{Grams, Units};
use leptos::prelude::*;

/// Greatest weighed ink use, in grams.
const HEAVIEST: f64 = 100_000.0;

/// The ink need, while a mesh of known volume is chosen.
#[component]
pub fn Need(volume: Memo<Option<f64>>) -> impl IntoView {
    let form = RwSignal::new(InkUseForm::default());
    let weighed = RwSignal::new(String::new());
    let units = i18n::units();
    let checked = Memo::new(move |_| volume.get().map(|volume| form.with(|form| form.check(volume, units))));
    // An empty field is no problem.
    let problems = Memo::new(move |_| {
        let mut found = checked.with(|checked| checked.clone().and_then(Result::err)).unwrap_or_default();
        found.retain(|_, problem| *problem != FormProblem::Missing);
        found
    });
    let ink = Memo::new(move |_| checked.with(|checked| checked.clone().and_then(Result::ok)));
    let here = Memo::new(move |_| volume.with(Option::is_some));
    move || {
        here.get().then(|| view! {
            <section class="stencil-part">
                <h2>{i18n::volume_need_title()}</h2>
                <div class="field-pair">
                    <Field label=i18n::volume_width() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.width) problems/>
                    <Field label=i18n::volume_height() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.height) problems/>
                </div>
                <div class="field-pair">
                    <Field label=i18n::volume_coverage() kind=Kind::Decimal unit=i18n::emulsion_percent() bound=bound!(form.coverage) problems/>
                    <Field label=i18n::pieces_how_many() kind=Kind::Whole bound=bound!(form.pieces) problems/>
                </div>
                <div class="card stencil-answer" id="need" aria-live="polite">{move || needed(ink.get())}</div>
                <details class="stencil-fold" id="finer">
                    <summary>{i18n::volume_finer()}</summary>
                    <Field label=i18n::item_hits() kind=Kind::Whole bound=bound!(form.hits) problems/>
                    <Field label=i18n::volume_transfer() kind=Kind::Decimal unit=i18n::emulsion_percent() bound=bound!(form.transfer) problems hint=i18n::volume_transfer_hint() help=help(Term::InkTransfer)/>
                    <Field label=i18n::volume_density() kind=Kind::Decimal unit=i18n::volume_density_unit() bound=bound!(form.density) problems/>
                    <Weighed form weighed ink/>
                </details>
            </section>
        })
    }
}

fn needed(ink: Option<InkUse>) -> AnyView {
    let Some(ink) = ink else { return view! { <p class="muted">{i18n::volume_need_wait()}</p> }.into_any() };
    let need = ink_need(&ink);
    let fine = |grams: f64| i18n::number(grams, if grams < 10.0 { 2 } else { 0 });
    view! {
        <p class="stencil-time"><strong>{i18n::volume_grams(i18n::number(need.grams, usize::from(need.grams < 100.0)))}</strong></p>
        <p>{i18n::volume_need(fine(need.grams_per_print), fine(need.cm3))}</p>
        {need.prints_per_kilogram.map(|prints| view! { <p>{i18n::volume_prints(i18n::number(prints.floor(), 0))}</p> })}
        <p class="muted">{i18n::volume_without()}</p>
    }.into_any()
}

/// The share of the ink that reached the garment, from a weighed run.
#[component]
fn Weighed(form: RwSignal<InkUseForm>, weighed: RwSignal<String>, ink: Memo<Option<InkUse>>) -> impl IntoView {
    let text = Bound::of("weighed", weighed);
    let read = |text: &str| {
        Grams::parse(text, Grams::from_grams(0.1), Grams::from_grams(HEAVIEST), Units::METRIC).map(Grams::grams)
    };
    let grams = Memo::new(move |_| weighed.with(|text| (!text.trim().is_empty()).then(|| read(text))));
    let problems = Memo::new(move |_| {
        let mut problems = Problems::new();
        if let Some(Err(problem)) = grams.get() {
            problems.insert(text.name, FormProblem::Number(problem));
        }
        problems
    });
    let transfer = Memo::new(move |_| {
        let used = grams.get().and_then(Result::ok)?;
        ink.get().and_then(|ink| measured_transfer(&ink, used)).map(|share| i18n::number(share * 100.0, 0))
    });
    view! {
        <Field label=i18n::volume_weighed() kind=Kind::Decimal unit=i18n::unit_grams() bound=text problems hint=i18n::volume_weighed_hint()/>
        {move || transfer.get().map(|percent| {
            let take = percent.clone();
            view! {
                <div class="button-row stencil-real" id="real-transfer">
                    <p>{i18n::volume_real_transfer(percent)}</p>
                    <button type="button" class="button" on:click=move |_| form.update(|form| form.transfer.clone_from(&take))>{i18n::volume_take_transfer()}</button>
                </div>
            }
        })}
    }
}
