//! Finding an exposure time with a test, and correcting or deleting one.

use super::answer::time;
use super::last_query;
use super::test_fields::{TestConditions, TestFields};
use crate::components::{Choice, Icon, NotHere, Page};
use crate::forms::{CrewPicker, FormSubmit, SaveBar, TextArea, bound, delete};
use crate::i18n;
use crate::platform::ids;
use crate::route::{ExposureRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{
    Exposure, ExposureChoice, ExposureForm, ExposureMethodKind, ExposureRefused, ExposureResult, KnownExposure,
    StencilFact,
};
use leptos::prelude::*;

const LIST: Route = Route::Exposure(ExposureRoute::Time);

/// The methods, in the order shown.
const KINDS: [ExposureMethodKind; 4] = [
    ExposureMethodKind::StepGuide,
    ExposureMethodKind::Columns,
    ExposureMethodKind::Practice,
    ExposureMethodKind::Distance,
];

/// The time computed from the test so far.
type Preview = Result<Option<ExposureResult>, ExposureRefused>;

/// A new time; a time computed from another distance of the lamp; or an existing time.
#[component]
pub fn ExposureTestPage(#[prop(into)] found: Option<Subject>, #[prop(into)] from: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let units = i18n::units();
    let of = |id: Subject| -> Option<KnownExposure> {
        store.shop.with_untracked(|shop| shop.exposure_log.exposure(id).filter(|known| !known.deleted).cloned())
    };
    let before = found.and_then(of).map(|known| known.fact);
    if found.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let pick = last_query::pick(store);
    let start = match (&before, from.and_then(of)) {
        (Some(fact), _) => ExposureForm::of(fact, units),
        (None, Some(known)) => ExposureForm::for_other_distance(&pick, &known.fact, units),
        (None, None) => ExposureForm::for_choice(&pick, units),
    };
    let complete = pick.query().is_some();
    let form = RwSignal::new(start);
    // One id per form, so that saving twice creates one record.
    let id = found.unwrap_or_else(ids::new_id);
    let kept = StoredValue::new(before.clone());
    let submit = FormSubmit::new(Box::new(move || {
        let checked = store.shop.with_untracked(|shop| {
            form.with(|form| kept.with_value(|before| form.check(shop, before.as_ref(), units)))
        });
        let fact = Fact::Stencil(checked.map_err(|wrong| wrong.fields)?);
        let same = kept.with_value(|before| {
            before.clone().map(|before| Fact::Stencil(StencilFact::Exposure(before))) == Some(fact.clone())
        });
        Ok(if same { Vec::new() } else { vec![(id, fact)] })
    }));
    let problems = submit.problems;
    let preview = Memo::new(move |_| -> Preview {
        store.shop.with(|shop| form.with(|form| kept.with_value(|before| form.preview(shop, before.as_ref(), units))))
    });
    let save = move |event: leptos::ev::SubmitEvent| {
        if found.is_none() {
            form.update(|form| form.by = store.operator().unwrap_or_default());
        }
        let before = kept.get_value();
        submit.submit_then(store, &event, Box::new(move || notify_saved(store, id, before)));
    };
    let kind = Signal::derive(move || form.with(|form| form.kind));
    let kinds = KINDS.into_iter().map(|kind| (kind, i18n::found_kind(kind).to_owned())).collect();
    let title = if found.is_some() { i18n::exposure_edit_title() } else { i18n::exposure_find_title() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=LIST class="form stencil-find">
            <form on:submit=save novalidate=true>
                <Choice label=i18n::exposure_how() name="kind" options=kinds value=kind on_pick=Callback::new(move |kind| form.update(|form| form.kind = kind))/>
                <TestFields form problems/>
                <section class="card stencil-answer" id="preview" aria-live="polite">
                    <h2>{i18n::exposure_preview()}</h2>
                    {move || previewed(preview.get())}
                </section>
                <TestConditions form problems open=!complete/>
                {found.is_none().then(|| view! { <CrewPicker label=i18n::stencil_who() name="who"/> })}
                <TextArea label=i18n::note() bound=bound!(form.note) problems/>
                <p class="caution"><Icon name="alert"/>{i18n::exposure_caution()}</p>
                <SaveBar problems busy=submit.busy/>
            </form>
            {before.map(|fact| view! { <Delete id fact/> })}
        </Page>
    }.into_any()
}

fn previewed(preview: Preview) -> AnyView {
    match preview {
        Err(refused) => view! { <p class="problem" id="refused">{i18n::exposure_refused(refused)}</p> }.into_any(),
        Ok(None) => view! { <p class="muted">{i18n::exposure_preview_wait()}</p> }.into_any(),
        Ok(Some(found)) => view! {
            {time(found.time)}
            {found.factor.map(|factor| view! { <p id="factor">{i18n::exposure_times(i18n::number(factor, 3))}</p> })}
            {found.advice.map(|advice| view! { <p>{i18n::test_advice(found.found, advice)}</p> })}
        }
        .into_any(),
    }
}

/// Shows a notice that the time was saved, and navigates to the page where it is the answer.
fn notify_saved(store: Store, id: Subject, before: Option<Exposure>) {
    let now = store.shop.with_untracked(|shop| shop.exposure_log.exposure(id).map(|known| known.fact.clone()));
    if let Some(exposure) = now {
        last_query::keep(ExposureChoice {
            emulsion: Some(exposure.emulsion),
            cloth: Some(exposure.cloth),
            coats: exposure.coats,
            lamp: Some(exposure.lamp),
        });
        let time = i18n::exposure_seconds(exposure.time);
        let message = match before {
            None => Some((i18n::exposure_noted(time), Fact::Deleted)),
            Some(before) if before == exposure => None,
            Some(before) => Some((i18n::exposure_corrected(time), Fact::Stencil(StencilFact::Exposure(before)))),
        };
        if let Some((text, undo)) = message {
            store.notify_with_undo(text, vec![(id, undo)]);
        }
    }
    LIST.navigate();
}

#[component]
fn Delete(id: Subject, fact: Exposure) -> impl IntoView {
    let store = Store::from_context();
    let said = i18n::exposure_deleted(i18n::exposure_seconds(fact.time));
    view! {
        <div class="button-row">
            <button type="button" class="button with-icon danger" id="delete" on:click=move |_| delete(store, id, said.clone(), LIST)><Icon name="bin"/>{i18n::delete()}</button>
        </div>
    }
}
