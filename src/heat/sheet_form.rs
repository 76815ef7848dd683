//! The figures of an ink's sheet.

use super::HeatPlace;
use crate::parts::{Field, Kind, NotHere, Page, SaveBar, Sending, bound, delete, set};
use crate::place::Place;
use crate::platform::ids;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{HeatFact, SheetForm};
use lastpull_core::job::RunId;
use lastpull_core::journal::{Fact, Subject};
use leptos::prelude::*;

const LIST: Place = Place::Heat(HeatPlace::Sheets);

/// A new sheet, empty or of a run's ink; or one's figures.
#[component]
pub fn InkSheetForm(#[prop(into)] sheet: Option<Subject>, #[prop(into)] run: Option<RunId>) -> impl IntoView {
    let store = Store::from_context();
    let before =
        sheet.and_then(|id| store.shop.with_untracked(|shop| shop.heat.sheet(id).filter(|one| !one.deleted).cloned()));
    if sheet.is_some() && before.is_none() {
        return view! { <NotHere/> }.into_any();
    }
    let units = words::units();
    let ink = run.and_then(|run| store.shop.with_untracked(|shop| shop.run(run).map(|run| run.ink.clone())));
    let start = before.as_ref().map_or_else(
        || SheetForm { ink: ink.unwrap_or_default(), ..SheetForm::default() },
        |sheet| SheetForm::of(sheet, units),
    );
    let form = RwSignal::new(start);
    let id = sheet.unwrap_or_else(ids::new_id);
    let name = before.as_ref().map(|sheet| sheet.ink.clone());
    let sending = Sending::new(Box::new(move || {
        let fields = form.with(|form| form.check(units, before.as_ref()))?;
        Ok(set(id, fields, |fields| Fact::Heat(HeatFact::SheetSet(fields))))
    }));
    let problems = sending.problems;
    let title = if sheet.is_some() { words::sheet_edit() } else { words::sheet_new() };
    // From a run one goes back to it.
    let then = run.map_or(LIST, Place::Run);
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=then class="form">
            <form on:submit=move |event| sending.send(store, &event, then) novalidate=true>
                <Field name="ink" label=words::item_ink() kind=Kind::Words bound=bound(form, |f| &mut f.ink) problems hint=words::sheet_ink_hint()/>
                <div class="field-pair">
                    <Field name="cure" label=words::sheet_cure() kind=Kind::Decimal unit=words::unit_temperature() bound=bound(form, |f| &mut f.cure) problems hint=words::sheet_cure_hint()/>
                    <Field name="hold" label=words::sheet_hold() kind=Kind::Decimal unit=words::unit_seconds() bound=bound(form, |f| &mut f.hold) problems hint=words::sheet_hold_hint()/>
                </div>
                <div class="field-pair">
                    <Field name="flash" label=words::sheet_flash() kind=Kind::Decimal unit=words::unit_temperature() bound=bound(form, |f| &mut f.flash) problems/>
                    <Field name="highest" label=words::sheet_highest() kind=Kind::Decimal unit=words::unit_temperature() bound=bound(form, |f| &mut f.highest) problems/>
                </div>
                <Field name="source" label=words::sheet_source() kind=Kind::Words bound=bound(form, |f| &mut f.source) problems hint=words::sheet_source_hint()/>
                <Field name="source_day" label=words::sheet_day() kind=Kind::Day bound=bound(form, |f| &mut f.source_day) problems/>
                <p class="quiet-line">{words::heat_no_promise()}</p>
                <SaveBar problems busy=sending.busy/>
            </form>
            {name.map(|name| view! {
                <button type="button" class="button danger" id="delete" on:click=move |_| delete(store, id, words::sheet_deleted(name.clone()), LIST)>{words::delete()}</button>
            })}
        </Page>
    }.into_any()
}
