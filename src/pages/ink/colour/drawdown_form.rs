//! A guided form for one drawdown: what was drawn, how it is laid, what was read.

use super::curve_field::{CurveField, curve_of};
use super::photo_subject::{PhotoOf, keep_picture};
use super::reading::Reading;
use super::reading_field::ReadingField;
use crate::components::{Choice, Icon, NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, bound, field_name, problem_text};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::platform::ids;
use crate::route::{ColourRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::{FormProblem, Problems};
use lastpull_core::ids::Subject;
use lastpull_core::ink::{ComponentKind, CurveForm, DrawdownForm, LayerKind, SwatchMeasurement, component_colour};
use leptos::prelude::*;

/// The page. It starts with the drawdown that is advised next.
#[component]
pub fn DrawdownFormPage(component: Subject) -> impl IntoView {
    let store = Store::from_context();
    let known = store.shop.with_untracked(|shop| {
        let there = shop.ink.component(component).is_some_and(|component| !component.deleted);
        component_colour(shop, component).filter(|_| there)
    });
    let Some(known) = known else { return view! { <NotHere/> }.into_any() };
    let form = RwSignal::new(store.shop.with_untracked(|shop| DrawdownForm::next(shop, component)));
    let curve = RwSignal::new(CurveForm::default());
    let (seen, backing) = (RwSignal::new(Reading::default()), RwSignal::new(Reading::default()));
    let id = ids::new_id();
    let submit = FormSubmit::new(Box::new(move || {
        let (of_curve, curve_problems) = curve.with(curve_of);
        let colour = |reading: Reading| reading.value.map(SwatchMeasurement::Colour);
        let mut form = form.get();
        form.seen = of_curve.or_else(|| colour(seen.get()));
        form.backing = colour(backing.get());
        // A photo reading depends on the patch beside it, so the note names that patch.
        if let Some(SwatchMeasurement::Colour(_)) = form.seen {
            let beside = seen.get().beside.map(i18n::colour_photo_note);
            let notes = [form.note.trim().to_owned(), beside.unwrap_or_default()];
            form.note = notes.into_iter().filter(|words| !words.is_empty()).collect::<Vec<_>>().join("\n");
        }
        let wrong = seen.get().wrong || backing.get().wrong || !curve_problems.is_empty();
        let fact = form.check(component, store.operator().as_deref())?;
        if wrong {
            let mut problems = Problems::new();
            problems.insert(field_name!(DrawdownForm.seen), FormProblem::Missing);
            return Err(problems);
        }
        Ok(vec![(id, Fact::Ink(fact))])
    }))
    .with_draft(form)
    .with_draft(curve);
    let problems = submit.problems;
    let up = Route::Colour(ColourRoute::Component(component));
    let saved = move || {
        store.notify_with_undo(i18n::colour_drawdown_saved(), vec![(id, Fact::Deleted)]);
        // A curve is better than a photo: if there is one, no photo reading is used.
        let is_curve = curve.with_untracked(|curve| curve_of(curve).0.is_some());
        keep_picture(store, id, seen.get_untracked().photo.filter(|_| !is_curve));
        up.replace();
    };
    let rests = store.shop.with_untracked(|shop| {
        let whites = shop.ink.components().filter(|(id, other)| *id != component && other.kind == ComponentKind::Base);
        let mut rests: Vec<(Option<Subject>, String)> =
            whites.map(|(id, other)| (Some(id), other.name.clone())).collect();
        rests.insert(0, (None, i18n::colour_rest_none().to_owned()));
        rests
    });
    let lays = LayerKind::ALL.map(|lay| (lay, i18n::colour_lay_kind(lay).to_owned())).to_vec();
    let next = known.next.as_ref().map(i18n::colour_next_words);
    let lay = Memo::new(move |_| form.with(|form| form.lay));
    let bar = Memo::new(move |_| form.with(|form| form.bar));
    let title = i18n::colour_drawdown_of(&known.name);
    view! {
        <Page title=Signal::derive(move || title.clone()) up aside=help(Term::Drawdown) class="form">
            {next.map(|next| view! { <p class="lead colour-wanted">{next}</p> })}
            <form on:submit=move |event| submit.submit_then(store, &event, Box::new(saved)) novalidate=true>
                {submit.draft_line()}
                <fieldset class="group">
                    <legend>{i18n::colour_swatch_seen()}</legend>
                    <p class="quiet-line">{i18n::colour_drawdown_wait()}</p>
                    <ReadingField name="seen" label=i18n::colour_swatch_seen() reading=seen photo=PhotoOf::Drawdown(component)/>
                    <CurveField form=curve/>
                    <p class="problem" role="alert">{move || problem_text(problems, field_name!(DrawdownForm.seen))}</p>
                </fieldset>
                <fieldset class="group">
                    <legend>{i18n::colour_drawdown_title()}</legend>
                    <Field label=i18n::colour_share() kind=Kind::Decimal unit="%" bound=bound!(form.share) problems hint=i18n::colour_share_hint() help=help(Term::LetDown)/>
                    <Choice label=i18n::colour_rest() name="rest" options=rests value=Signal::derive(move || form.with(|form| form.rest)) on_pick=Callback::new(move |rest| form.update(|form| form.rest = rest))/>
                    <p class="problem" role="alert">{move || problem_text(problems, field_name!(DrawdownForm.rest))}</p>
                    <Choice label=i18n::colour_lay() name="lay" options=lays value=Signal::from(lay) on_pick=Callback::new(move |lay| form.update(|form| form.lay = lay))/>
                    {move || if lay.get() == LayerKind::Hiding { ().into_any() } else { film(form, bar, backing, problems) }}
                </fieldset>
                <Field label=i18n::notes() kind=Kind::Words bound=bound!(form.note) problems/>
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }.into_any()
}

/// How thick the film is, and what is below it.
fn film(
    form: RwSignal<DrawdownForm>,
    bar: Memo<bool>,
    backing: RwSignal<Reading>,
    problems: RwSignal<Problems>,
) -> AnyView {
    let ways = vec![(false, i18n::colour_film_print().to_owned()), (true, i18n::colour_film_bar().to_owned())];
    view! {
        <Choice label=i18n::colour_film() name="film" options=ways value=Signal::from(bar) on_pick=Callback::new(move |bar| form.update(|form| form.bar = bar))/>
        {move || if bar.get() {
            view! {
                <div class="field-pair">
                    <Field label=i18n::colour_film_wet() kind=Kind::Decimal unit="µm" bound=bound!(form.wet) problems/>
                    <Field label=i18n::colour_film_a_hit() kind=Kind::Decimal unit="µm" bound=bound!(form.a_hit) problems hint=i18n::colour_film_a_hit_hint()/>
                </div>
            }.into_any()
        } else {
            view! { <Field label=i18n::colour_film_hits() kind=Kind::Whole bound=bound!(form.hits) problems/> }.into_any()
        }}
        <details class="colour-how">
            <summary><Icon name="edit"/>" "{i18n::colour_backing()}</summary>
            <p class="quiet-line">{i18n::colour_backing_hint()}</p>
            <ReadingField name="backing" label=i18n::colour_backing() reading=backing/>
        </details>
    }.into_any()
}
