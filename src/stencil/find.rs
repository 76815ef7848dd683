//! Finding a time from a test, and correcting or deleting one that was found.

use super::answer::time;
use super::find_fields::{ForWhich, TestFields};
use super::who::{Who, holder};
use super::{StencilPlace, memory};
use crate::kept::{Memo, RwSignal, Signal};
use crate::live::Drawn;
use crate::parts::{Choice, Icon, NotHere, Page, SaveBar, TextArea, bound};
use crate::place::Place;
use crate::platform::{ids, spawn_local};
use crate::store::Store;
use crate::words;
use lastpull_core::job::Problems;
use lastpull_core::journal::{Fact, Subject};
use lastpull_core::screen::{
    Exposure, ExposureForm, ExposurePick, ExposureRefused, FoundKind, FoundTime, KnownExposure, StencilFact,
};
use lastpull_view::view;
use leptos::prelude::*;

/// In the order they are offered.
const KINDS: [FoundKind; 4] = [FoundKind::StepGuide, FoundKind::Columns, FoundKind::Practice, FoundKind::Distance];

/// What follows from the test so far.
type Preview = Result<Option<FoundTime>, ExposureRefused>;

/// A new time; from another distance of the lamp; or one that was found.
#[component(transparent)]
pub fn FindScreen(#[prop(into)] found: Option<Subject>, #[prop(into)] from: Option<Subject>) -> Drawn {
    let store = Store::from_context();
    let units = words::units();
    let of = |id: Subject| -> Option<KnownExposure> {
        store.shop.with_untracked(|shop| shop.stencils.exposure(id).filter(|known| !known.deleted).cloned())
    };
    let before = found.and_then(of).map(|known| known.fact);
    if found.is_some() && before.is_none() {
        return view! { <NotHere/> };
    }
    let pick = memory::pick(store);
    let start = match (&before, from.and_then(of)) {
        (Some(fact), _) => ExposureForm::of(fact, units),
        (None, Some(known)) => ExposureForm::from_distance(&pick, &known.fact, units),
        (None, None) => ExposureForm::for_pick(&pick, units),
    };
    let complete = pick.asked().is_some();
    let form = RwSignal::new(start);
    let problems = RwSignal::new(Problems::new());
    let busy = RwSignal::new(false);
    // One id a form: saving twice is still one.
    let id = found.unwrap_or_else(ids::new_id);
    let kept = StoredValue::new(before.clone());
    let check = move || {
        store
            .shop
            .with_untracked(|shop| form.with(|form| kept.with_value(|before| form.check(shop, before.as_ref(), units))))
    };
    Effect::new(move || {
        let result = check();
        if problems.with_untracked(|problems| !problems.is_empty()) {
            problems.set(result.err().map(|found| found.fields).unwrap_or_default());
        }
    });
    let preview = Memo::new(move |_| -> Preview {
        store.shop.with(|shop| form.with(|form| kept.with_value(|before| form.preview(shop, before.as_ref(), units))))
    });
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        if found.is_none() {
            form.update(|form| form.by = holder(store).unwrap_or_default());
        }
        match check() {
            Err(wrong) => problems.set(wrong.fields),
            Ok(StencilFact::Exposure(exposure)) => record(store, id, exposure, kept.get_value(), busy),
            Ok(_) => {}
        }
    };
    let kind = Signal::derive(move || form.with(|form| form.kind));
    let kinds = KINDS.into_iter().map(|kind| (kind, words::found_kind(kind).to_owned())).collect();
    let title = if found.is_some() { words::exposure_edit_title() } else { words::exposure_find_title() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=Place::Stencil(StencilPlace::Exposure) class="form stencil-find">
            <form on:submit=save novalidate=true>
                <Choice label=words::exposure_how() name="kind" options=kinds value=kind on_pick=Callback::new(move |kind| form.update(|form| form.kind = kind))/>
                <TestFields form problems/>
                <section class="card stencil-answer" id="preview" aria-live="polite">
                    <h2>{words::exposure_preview()}</h2>
                    {move || previewed(preview.get())}
                </section>
                <ForWhich form problems open=!complete/>
                {found.is_none().then(|| view! { <Who/> })}
                <TextArea name="note" label=words::exposure_note() bound=bound(form, |f| &mut f.note) problems/>
                <p class="caution"><Icon name="alert"/>{words::exposure_caution()}</p>
                <SaveBar problems busy/>
            </form>
            {before.map(|fact| view! { <Delete id fact/> })}
        </Page>
    }
}

fn previewed(preview: Preview) -> Drawn {
    match preview {
        Err(refused) => view! { <p class="problem" id="refused">{words::exposure_refused(refused)}</p> },
        Ok(None) => view! { <p class="muted">{words::exposure_preview_wait()}</p> },
        Ok(Some(found)) => view! {
            {time(found.time)}
            {found.factor.map(|factor| view! { <p id="factor">{words::exposure_times(words::number(factor, 3))}</p> })}
            {found.advice.map(|advice| view! { <p>{words::test_advice(found.found, advice)}</p> })}
        },
    }
}

/// Records a finding and goes to where it is the answer.
fn record(store: Store, id: Subject, exposure: Exposure, before: Option<Exposure>, busy: RwSignal<bool>) {
    memory::keep(ExposurePick {
        emulsion: Some(exposure.emulsion),
        cloth: Some(exposure.cloth),
        coats: exposure.coats,
        lamp: Some(exposure.lamp),
    });
    let time = words::exposure_seconds(exposure.time);
    let (text, undo) = match before {
        None => (words::exposure_noted(time), Fact::Deleted),
        Some(before) if before == exposure => return Place::Stencil(StencilPlace::Exposure).go(),
        Some(before) => (words::exposure_corrected(time), Fact::Stencil(StencilFact::Exposure(before))),
    };
    busy.set(true);
    spawn_local(async move {
        let saved = store.record_and_wait(vec![(id, Fact::Stencil(StencilFact::Exposure(exposure)))]).await;
        busy.set(false);
        if saved {
            store.tell_with_undo(text, vec![(id, undo)]);
            Place::Stencil(StencilPlace::Exposure).go();
        }
    });
}

#[component(transparent)]
fn Delete(id: Subject, fact: Exposure) -> Drawn {
    let store = Store::from_context();
    let delete = move |_| {
        store.record(id, Fact::Deleted);
        store.tell_with_undo(words::exposure_deleted(words::exposure_seconds(fact.time)), vec![(id, Fact::Restored)]);
        Place::Stencil(StencilPlace::Exposure).go();
    };
    view! {
        <div class="button-row">
            <button type="button" class="button with-icon danger" id="delete" on:click=delete><Icon name="bin"/>{words::delete()}</button>
        </div>
    }
}
