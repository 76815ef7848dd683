//! The fields of an exposure test.

use super::mesh_fields::{MeshBindings, mesh_inputs};
use crate::components::Choice;
use crate::forms::{Field, Kind, bound, field_name, problem_text};
use crate::i18n::{self, Term};
use crate::pages::help::{Help, help};
use crate::store::Store;
use lastpull_core::form::Problems;
use lastpull_core::screen::{COLUMN_SHARES, ExposureForm, ExposureMethodKind, GUIDE_STEPS, emulsion_list, lamp_list};
use leptos::prelude::*;

/// The result of the test, by its kind.
#[component]
pub fn TestFields(form: RwSignal<ExposureForm>, problems: RwSignal<Problems>) -> impl IntoView {
    let kind = Memo::new(move |_| form.with(|form| form.kind));
    let time = move |label: &'static str| {
        view! { <Field label kind=Kind::Decimal unit=i18n::unit_seconds() bound=bound!(form.time) problems/> }
    };
    view! {
        {move || match kind.get() {
            ExposureMethodKind::StepGuide => view! {
                {time(i18n::exposure_test_time())}
                <Steps form problems/>
            }.into_any(),
            ExposureMethodKind::Columns => view! {
                {time(i18n::exposure_test_time())}
                <Columns form problems/>
            }.into_any(),
            ExposureMethodKind::Distance => view! {
                <div class="field-pair">
                    {time(i18n::exposure_old_time())}
                    <Field label=i18n::exposure_from() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.from) problems/>
                </div>
            }.into_any(),
            ExposureMethodKind::Practice => time(i18n::exposure_known_time()).into_any(),
        }}
    }
}

/// The exposure guide, one button per step; 0 if no step held.
#[component]
fn Steps(form: RwSignal<ExposureForm>, problems: RwSignal<Problems>) -> impl IntoView {
    let store = Store::from_context();
    let goal = store.shop.with_untracked(|shop| shop.exposure_log.goal());
    let options = (0..=GUIDE_STEPS)
        .map(|step| (step, if step == 0 { i18n::exposure_solid_none().to_owned() } else { step.to_string() }))
        .collect();
    // Without a choice, a value beyond the guide.
    let value = Signal::derive(move || form.with(|form| form.solid.trim().parse().unwrap_or(u8::MAX)));
    let problem = move || problem_text(problems, field_name!(ExposureForm.solid));
    view! {
        <div class="stencil-steps">
            <Choice label=i18n::exposure_solid() name="solid" options value on_pick=Callback::new(move |step: u8| form.update(|form| form.solid = step.to_string()))/>
            <div class="help-row">
                <p class="field-help">
                    {move || problem().map(|problem| view! { <span class="problem">{problem}</span> " " })}
                    <span>{i18n::exposure_solid_hint(goal)}</span>
                </p>
                <Help term=Term::StepScale/>
            </div>
        </div>
    }
}

/// The columns of common films, and any other factor of the light.
#[component]
fn Columns(form: RwSignal<ExposureForm>, problems: RwSignal<Problems>) -> impl IntoView {
    let share = |percent: u8| i18n::number(f64::from(percent) / 100.0, 2);
    let in_form = move |percent: u8| i18n::with_mark(share(percent));
    let options = COLUMN_SHARES.into_iter().map(|percent| (percent, share(percent))).collect();
    let value = Signal::derive(move || {
        let typed = form.with(|form| form.factor.trim().to_owned());
        COLUMN_SHARES.into_iter().find(|percent| in_form(*percent) == typed).unwrap_or(0)
    });
    let pick = Callback::new(move |percent: u8| form.update(|form| form.factor = in_form(percent)));
    view! {
        <Choice label=i18n::exposure_factor() name="column" options value on_pick=pick/>
        <Field label=i18n::exposure_factor_typed() kind=Kind::Decimal bound=bound!(form.factor) problems hint=i18n::exposure_factor_hint() help=help(Term::ColumnFilm)/>
    }
}

/// Emulsion, mesh, lamp and coats of the test: folded while they are as chosen before.
#[component]
pub fn TestConditions(form: RwSignal<ExposureForm>, problems: RwSignal<Problems>, open: bool) -> impl IntoView {
    let store = Store::from_context();
    let (emulsions, lamps) = store.shop.with_untracked(|shop| {
        let emulsions: Vec<_> = emulsion_list(shop).into_iter().map(|row| (Some(row.id), row.emulsion.name)).collect();
        let lamps: Vec<_> = lamp_list(shop).into_iter().map(|row| (Some(row.id), row.lamp.name)).collect();
        (emulsions, lamps)
    });
    let summary = Memo::new(move |_| {
        form.with(|form| {
            let (emulsion, lamp) = store.shop.with(|shop| {
                let emulsion =
                    form.emulsion.and_then(|id| shop.exposure_log.emulsion(id)).map(|kept| kept.name.clone());
                let lamp = form.lamp.and_then(|id| shop.exposure_log.lamp(id)).map(|kept| kept.name.clone());
                (emulsion, lamp)
            });
            let mesh = (!form.mesh.trim().is_empty()).then(|| form.mesh.trim().to_owned());
            [emulsion, mesh, lamp].into_iter().flatten().collect::<Vec<_>>().join(" · ")
        })
    });
    // A field with a problem must be visible.
    let wrong = Memo::new(move |_| {
        problems.with(|problems| {
            [
                field_name!(ExposureForm.emulsion),
                field_name!(ExposureForm.lamp),
                field_name!(ExposureForm.mesh),
                field_name!(ExposureForm.thread),
                field_name!(ExposureForm.coats_print),
                field_name!(ExposureForm.coats_squeegee),
            ]
            .iter()
            .any(|field| problems.contains_key(field))
        })
    });
    let missing = move |field: &'static str| {
        problems
            .with(|problems| problems.contains_key(&field))
            .then(|| view! { <p class="problem">{i18n::exposure_pick_one()}</p> })
    };
    let mesh = MeshBindings {
        count: bound!(form.mesh),
        thread: bound!(form.thread),
        per: bound!(form.per),
        dyed: bound!(form.dyed),
    };
    view! {
        <details class="stencil-fold" id="which" prop:open=move || open || wrong.get()>
            <summary>
                <span class="row-words"><strong>{i18n::exposure_for()}</strong><span class="muted">{move || match summary.get() {
                    summary if summary.is_empty() => i18n::exposure_which().to_owned(),
                    summary => summary,
                }}</span></span>
            </summary>
            <Choice
                label=i18n::screen_emulsion()
                name="emulsion"
                options=emulsions
                value=Signal::derive(move || form.with(|form| form.emulsion))
                on_pick=Callback::new(move |id| form.update(|form| form.emulsion = id))
            />
            {move || missing(field_name!(ExposureForm.emulsion))}
            <Choice
                label=i18n::exposure_lamp()
                name="lamp"
                options=lamps
                value=Signal::derive(move || form.with(|form| form.lamp))
                on_pick=Callback::new(move |id| form.update(|form| form.lamp = id))
            />
            {move || missing(field_name!(ExposureForm.lamp))}
            {mesh_inputs(mesh, problems.into())}
            <div class="field-pair">
                <Field label=i18n::screen_form_coats_print() kind=Kind::Whole bound=bound!(form.coats_print) problems/>
                <Field label=i18n::screen_form_coats_squeegee() kind=Kind::Whole bound=bound!(form.coats_squeegee) problems/>
            </div>
        </details>
    }
}
