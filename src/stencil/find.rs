//! Finding a time from a test, and correcting or deleting one that was found.

use super::answer::time;
use super::find_fields::{ForWhich, TestFields};
use super::who::Who;
use super::{StencilPlace, memory};
use crate::parts::{Choice, Icon, NotHere, Page, SaveBar, Sending, TextArea, bound, delete};
use crate::place::Place;
use crate::platform::ids;
use crate::store::Store;
use crate::words;
use lastpull_core::journal::{Fact, Subject};
use lastpull_core::screen::{
    Exposure, ExposureForm, ExposurePick, ExposureRefused, FoundKind, FoundTime, KnownExposure, StencilFact,
};
use leptos::prelude::*;

const LIST: Place = Place::Stencil(StencilPlace::Exposure);

/// In the order they are offered.
const KINDS: [FoundKind; 4] = [FoundKind::StepGuide, FoundKind::Columns, FoundKind::Practice, FoundKind::Distance];

/// What follows from the test so far.
type Preview = Result<Option<FoundTime>, ExposureRefused>;

/// A new time; from another distance of the lamp; or one that was found.
#[component]
pub fn FindScreen(#[prop(into)] found: Option<Subject>, #[prop(into)] from: Option<Subject>) -> impl IntoView {
    let store = Store::from_context();
    let units = words::units();
    let of = |id: Subject| -> Option<KnownExposure> {
        store.shop.with_untracked(|shop| shop.stencils.exposure(id).filter(|known| !known.deleted).cloned())
    };
    let before = found.and_then(of).map(|known| known.fact);
    if found.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let pick = memory::pick(store);
    let start = match (&before, from.and_then(of)) {
        (Some(fact), _) => ExposureForm::of(fact, units),
        (None, Some(known)) => ExposureForm::from_distance(&pick, &known.fact, units),
        (None, None) => ExposureForm::for_pick(&pick, units),
    };
    let complete = pick.asked().is_some();
    let form = RwSignal::new(start);
    // One id a form: saving twice is still one.
    let id = found.unwrap_or_else(ids::new_id);
    let kept = StoredValue::new(before.clone());
    let sending = Sending::new(Box::new(move || {
        let checked = store.shop.with_untracked(|shop| {
            form.with(|form| kept.with_value(|before| form.check(shop, before.as_ref(), units)))
        });
        let fact = Fact::Stencil(checked.map_err(|wrong| wrong.fields)?);
        let same = kept.with_value(|before| {
            before.clone().map(|before| Fact::Stencil(StencilFact::Exposure(before))) == Some(fact.clone())
        });
        Ok(if same { Vec::new() } else { vec![(id, fact)] })
    }));
    let problems = sending.problems;
    let preview = Memo::new(move |_| -> Preview {
        store.shop.with(|shop| form.with(|form| kept.with_value(|before| form.preview(shop, before.as_ref(), units))))
    });
    let save = move |event: leptos::ev::SubmitEvent| {
        if found.is_none() {
            form.update(|form| form.by = store.crew().unwrap_or_default());
        }
        let before = kept.get_value();
        sending.send_then(store, &event, Box::new(move || noted(store, id, before)));
    };
    let kind = Signal::derive(move || form.with(|form| form.kind));
    let kinds = KINDS.into_iter().map(|kind| (kind, words::found_kind(kind).to_owned())).collect();
    let title = if found.is_some() { words::exposure_edit_title() } else { words::exposure_find_title() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=LIST class="form stencil-find">
            <form on:submit=save novalidate=true>
                <Choice label=words::exposure_how() name="kind" options=kinds value=kind on_pick=Callback::new(move |kind| form.update(|form| form.kind = kind))/>
                <TestFields form problems/>
                <section class="card stencil-answer" id="preview" aria-live="polite">
                    <h2>{words::exposure_preview()}</h2>
                    {move || previewed(preview.get())}
                </section>
                <ForWhich form problems open=!complete/>
                {found.is_none().then(|| view! { <Who/> })}
                <TextArea name="note" label=words::note() bound=bound(form, |f| &mut f.note) problems/>
                <p class="caution"><Icon name="alert"/>{words::exposure_caution()}</p>
                <SaveBar problems busy=sending.busy/>
            </form>
            {before.map(|fact| view! { <Delete id fact/> })}
        </Page>
    }.into_any()
}

fn previewed(preview: Preview) -> AnyView {
    match preview {
        Err(refused) => view! { <p class="problem" id="refused">{words::exposure_refused(refused)}</p> }.into_any(),
        Ok(None) => view! { <p class="muted">{words::exposure_preview_wait()}</p> }.into_any(),
        Ok(Some(found)) => view! {
            {time(found.time)}
            {found.factor.map(|factor| view! { <p id="factor">{words::exposure_times(words::number(factor, 3))}</p> })}
            {found.advice.map(|advice| view! { <p>{words::test_advice(found.found, advice)}</p> })}
        }
        .into_any(),
    }
}

/// Tells of a finding that was saved, and goes to where it is the answer.
fn noted(store: Store, id: Subject, before: Option<Exposure>) {
    let now = store.shop.with_untracked(|shop| shop.stencils.exposure(id).map(|known| known.fact.clone()));
    if let Some(exposure) = now {
        memory::keep(ExposurePick {
            emulsion: Some(exposure.emulsion),
            cloth: Some(exposure.cloth),
            coats: exposure.coats,
            lamp: Some(exposure.lamp),
        });
        let time = words::exposure_seconds(exposure.time);
        let told = match before {
            None => Some((words::exposure_noted(time), Fact::Deleted)),
            Some(before) if before == exposure => None,
            Some(before) => Some((words::exposure_corrected(time), Fact::Stencil(StencilFact::Exposure(before)))),
        };
        if let Some((text, undo)) = told {
            store.tell_with_undo(text, vec![(id, undo)]);
        }
    }
    LIST.go();
}

#[component]
fn Delete(id: Subject, fact: Exposure) -> impl IntoView {
    let store = Store::from_context();
    let said = words::exposure_deleted(words::exposure_seconds(fact.time));
    view! {
        <div class="button-row">
            <button type="button" class="button with-icon danger" id="delete" on:click=move |_| delete(store, id, said.clone(), LIST)><Icon name="bin"/>{words::delete()}</button>
        </div>
    }
}
