//! The form of a screen, or of several new ones at once.

use super::data::sheet_words;
use crate::components::{Choice, Icon, NotHere, Page, Switch};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, TextArea, Validated, bound, field_name};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::pages::screens::exposure::counted;
use crate::platform::ids;
use crate::route::{Route, ScreensRoute};
use crate::store::Store;
use lastpull_core::form::Problems;
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{
    MeshSheetForm, NewLabels, ScreenForm, ScreenState, emulsion_list, new_labels, screens_of, sheet_to_copy,
};
use lastpull_core::units::LengthUnit;
use leptos::prelude::*;

/// New screens; the missing ones that a run needs, if opened from a run.
#[component]
pub fn NewScreensPage(#[prop(into)] run: Option<RunId>) -> impl IntoView {
    let store = Store::from_context();
    let mut start = ScreenForm::default();
    start.mesh.per = i18n::units().length;
    if let Some(run) = run {
        store.shop.with_untracked(|shop| {
            let unlisted = screens_of(shop, run).into_iter().filter(|found| found.screen.is_none());
            start.label = unlisted.map(|found| found.label).collect::<Vec<_>>().join(", ");
            if let Some(mesh) = shop.run(run).and_then(|run| run.set_up.mesh) {
                start.mesh =
                    MeshSheetForm { count: mesh.to_string(), per: LengthUnit::Inches, ..MeshSheetForm::default() };
            }
        });
    }
    let form = RwSignal::new(start);
    let state = RwSignal::new(ScreenState::Clean);
    // Ids of the new screens, so that saving twice creates them once.
    let ids = StoredValue::new(Vec::<Subject>::new());
    let id_of = move |index: usize| {
        ids.update_value(|ids| {
            while ids.len() <= index {
                ids.push(ids::new_id());
            }
        });
        ids.with_value(|ids| ids.get(index).copied().unwrap_or_default())
    };
    let check = move || {
        let by = store.operator();
        store.shop.with_untracked(|shop| form.with(|form| form.check_new(shop, state.get(), by.as_deref(), id_of)))
    };
    let states =
        [ScreenState::Clean, ScreenState::Coated, ScreenState::Exposed, ScreenState::Ready, ScreenState::ToReclaim]
            .map(|state| (state, i18n::screen_state(state).to_owned()))
            .to_vec();
    view! {
        <FormPage title=i18n::screen_new_title() up=Route::Screens(ScreensRoute::Home) form check=Box::new(check) several=true>
            <Choice label=i18n::screen_state_now() name="state" options=states value=Signal::from(state) on_pick=Callback::new(move |to| state.set(to))/>
        </FormPage>
    }
}

/// The fields of a screen.
#[component]
pub fn EditScreenPage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let Some(before) = store.shop.with_untracked(|shop| shop.screens.live(id).map(ScreenForm::of)) else {
        return view! { <NotHere/> }.into_any();
    };
    let form = RwSignal::new(before);
    let check = move || store.shop.with_untracked(|shop| form.with(|form| form.check(shop, id)));
    let up = Route::Screens(ScreensRoute::Screen(id));
    view! {
        <FormPage title=i18n::screen_edit_title() up form check=Box::new(check) several=false>
            {().into_any()}
        </FormPage>
    }
    .into_any()
}

/// The fields, the most important first; `children` come after label and mesh.
#[component]
fn FormPage(
    title: &'static str,
    up: Route,
    form: RwSignal<ScreenForm>,
    check: Box<dyn Fn() -> Validated + Send + Sync>,
    several: bool,
    children: Children,
) -> impl IntoView {
    let store = Store::from_context();
    let submit = FormSubmit::new(check).with_draft(form);
    let problems = submit.problems;
    let save = move |event: leptos::ev::SubmitEvent| {
        let new = store.shop.with_untracked(|shop| form.with_untracked(|form| new_labels(shop, &form.label).new.len()));
        let saved = move || {
            if several {
                store.notify(i18n::screens_added(new as u32));
            }
            up.replace();
        };
        submit.submit_then(store, &event, Box::new(saved));
    };
    let hint = if several { i18n::screen_labels_hint() } else { i18n::screen_label_hint() };
    let emulsions: Vec<String> = store.shop.with_untracked(|shop| {
        let listed = emulsion_list(shop).into_iter().map(|row| row.emulsion.name);
        let mut names: Vec<String> = listed
            .chain(shop.screens.iter().map(|(_, screen)| screen.emulsion.clone()))
            .filter(|name| !name.is_empty())
            .collect();
        lastpull_core::collections::sort_by(&mut names, Ord::cmp);
        names.dedup();
        names
    });
    let more = form.with_untracked(|form| !form.colour.is_empty() || !form.notes.is_empty());
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up class="form">
            <form on:submit=save novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::screen_label() kind=Kind::Words bound=bound!(form.label) problems hint/>
                {several.then(|| view! { <Preview form/> })}
                <Count form problems/>
                {children()}
                <Sheet form problems/>
                <fieldset class="group">
                    <legend>{i18n::screen_form_coating()}</legend>
                    <Field label=i18n::screen_emulsion() kind=Kind::Words bound=bound!(form.emulsion) problems suggestions=emulsions/>
                    <Field label=i18n::screen_tension() kind=Kind::Decimal unit=i18n::unit_tension() bound=bound!(form.tension) problems hint=i18n::screen_form_tension_hint() help=help(Term::MeshTension)/>
                    <div class="field-pair">
                        <Field label=i18n::screen_form_coats_print() kind=Kind::Whole bound=bound!(form.coats_print) problems help=help(Term::Coats)/>
                        <Field label=i18n::screen_form_coats_squeegee() kind=Kind::Whole bound=bound!(form.coats_squeegee) problems/>
                    </div>
                </fieldset>
                <details class="group screen-fold" open=more>
                    <summary>{i18n::screen_form_more()}</summary>
                    <Field label=i18n::screen_colour() kind=Kind::Words bound=bound!(form.colour) problems hint=i18n::screen_form_colour_hint()/>
                    <TextArea label=i18n::notes() bound=bound!(form.notes) problems/>
                </details>
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }
}

/// The screens that the label field adds, before they are saved.
#[component]
fn Preview(form: RwSignal<ScreenForm>) -> impl IntoView {
    let store = Store::from_context();
    let labels = Memo::new(move |_| store.shop.with(|shop| form.with(|form| new_labels(shop, &form.label))));
    move || {
        let NewLabels { new, taken } = labels.get();
        view! {
            {(new.len() > 1).then(|| view! {
                <p class="screen-adds" id="adds">{i18n::adds_these(i18n::adds_n(new.len() as u32), new.join(", "))}</p>
            })}
            {(!taken.is_empty()).then(|| view! {
                <p class="problem"><Icon name="alert"/>" "{i18n::already_listed(taken.join(", "))}</p>
            })}
        }
    }
}

/// The mesh count, in the units of its data sheet.
#[component]
fn Count(form: RwSignal<ScreenForm>, problems: RwSignal<Problems>) -> impl IntoView {
    let store = Store::from_context();
    let per = Memo::new(move |_| form.with(|form| form.mesh.per));
    let known = store.shop.with_untracked(|shop| {
        let mut counts: Vec<u16> =
            shop.screens.iter().filter_map(|(_, screen)| screen.mesh).map(|mesh| mesh.count.per_inch()).collect();
        lastpull_core::collections::sort_by(&mut counts, Ord::cmp);
        counts.dedup();
        counts
    });
    move || {
        let per = per.get();
        let unit = if per == LengthUnit::Inches { i18n::unit_mesh_inch() } else { i18n::unit_mesh_metric() };
        let suggestions =
            if per == LengthUnit::Inches { known.iter().map(u16::to_string).collect() } else { Vec::new() };
        view! {
            <Field label=i18n::screen_mesh_count() kind=Kind::Whole unit bound=bound!(form.mesh.count) problems suggestions help=help(Term::MeshCount)/>
        }
    }
}

/// The values of the data sheet, folded.
#[component]
fn Sheet(form: RwSignal<ScreenForm>, problems: RwSignal<Problems>) -> impl IntoView {
    let store = Store::from_context();
    let sheet_fields = [
        field_name!(MeshSheetForm.thread),
        field_name!(MeshSheetForm.opening),
        field_name!(MeshSheetForm.open_area),
        field_name!(MeshSheetForm.thickness),
    ];
    let wrong =
        Memo::new(move |_| problems.with(|problems| sheet_fields.iter().any(|field| problems.contains_key(field))));
    let filled = form.with_untracked(|form| {
        let mesh = &form.mesh;
        [&mesh.thread, &mesh.opening, &mesh.open_area, &mesh.thickness].iter().any(|text| !text.is_empty()) || mesh.dyed
    });
    let offer = Memo::new(move |_| store.shop.with(|shop| form.with(|form| sheet_to_copy(shop, &form.mesh))));
    let dyed = Signal::derive(move || form.with(|form| form.mesh.dyed));
    view! {
        {move || offer.get().map(|sheet| view! {
            <div class="screen-offer">
                <p>{i18n::sheet_take(sheet_words(&sheet))}</p>
                <button type="button" class="button" id="take-sheet" on:click=move |_| form.update(|form| form.mesh = MeshSheetForm::of(&sheet))>{i18n::sheet_take_button()}</button>
            </div>
        })}
        <details class="group screen-fold" open=move || filled || wrong.get()>
            <summary>{i18n::sheet_title()}</summary>
            <p class="quiet-line">{i18n::sheet_hint()}</p>
            <div class="field-pair">
                <Field label=i18n::screen_form_opening() kind=Kind::Whole unit="µm" bound=bound!(form.mesh.opening) problems help=help(Term::MeshOpening)/>
                <Field label=i18n::screen_form_open_area() kind=Kind::Decimal unit="%" bound=bound!(form.mesh.open_area) problems help=help(Term::OpenArea)/>
            </div>
            <div class="field-pair">
                <Field label=i18n::screen_form_thickness() kind=Kind::Whole unit="µm" bound=bound!(form.mesh.thickness) problems/>
                <Field label=i18n::screen_form_thread() kind=Kind::Whole unit="µm" bound=bound!(form.mesh.thread) problems/>
            </div>
            <Switch id="dyed" label=i18n::screen_form_dyed() hint=i18n::screen_form_dyed_hint() value=dyed on_set=Callback::new(move |on| form.update(|form| form.mesh.dyed = on))/>
            {counted(bound!(form.mesh.per))}
        </details>
    }
}
