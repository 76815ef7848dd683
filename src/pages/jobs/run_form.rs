//! The form of a run: print, heat, screens, location.

use crate::components::{Choice, Icon, NotHere, Page, Switch};
use crate::forms::{Bound, Field, FormSubmit, Kind, SaveBar, bound, set};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::platform::{clock, dom, ids};
use crate::route::{JobsRoute, Route};
use crate::store::Store;
use lastpull_core::facts::{Fact, RunField};
use lastpull_core::heat::{LimitCheck, LimitState, limits_while_entering};
use lastpull_core::ids::{LotId, RunId};
use lastpull_core::ink::{ink_names, recipe_named};
use lastpull_core::job::new_run;
use lastpull_core::run::Location;
use lastpull_core::run::RunForm;
use lastpull_core::units::Temperature;
use leptos::prelude::*;
use std::time::Duration;

/// A new run of a lot, or the fields of an existing one.
#[component]
pub fn RunFormPage(#[prop(into)] lot: Option<LotId>, #[prop(into)] run: Option<RunId>) -> impl IntoView {
    let store = Store::from_context();
    let before = run.and_then(|id| store.shop.with_untracked(|shop| shop.run(id).filter(|run| !run.deleted).cloned()));
    let of_lot = lot.or(before.as_ref().and_then(|run| run.lot));
    let job = of_lot.and_then(|id| {
        store.shop.with_untracked(|shop| shop.lot(id).filter(|lot| !lot.deleted).and_then(|lot| lot.job))
    });
    let (Some(of_lot), Some(job)) = (of_lot, job) else { return view! { <NotHere/> }.into_any() };
    let units = i18n::units();
    let from = RwSignal::new(None::<String>);
    let start = before
        .as_ref()
        .map_or_else(|| suggested(store, of_lot, Location::FullFront, from), |run| RunForm::of(run, units));
    // What a new run was filled in with: it follows the location until something is typed.
    let offered = StoredValue::new(start.clone());
    let form = RwSignal::new(start);
    // One id per form, so that saving twice creates one record.
    let id = run.unwrap_or_else(ids::new_id);
    let submit = FormSubmit::new(Box::new(move || {
        let mut fields = form.with(|form| form.check(units, before.as_ref()))?;
        if run.is_none() {
            fields.insert(0, RunField::Lot(of_lot));
        }
        Ok(set(id, fields, Fact::RunSet))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let pick_location = move |location: Location| {
        let untouched = run.is_none() && form.with_untracked(|form| offered.with_value(|offered| offered == form));
        if untouched {
            form.set(suggested(store, of_lot, location, from));
            offered.set_value(form.get_untracked());
            return;
        }
        form.update(|form| form.location = location);
    };
    let location = Signal::derive(move || form.with(|form| form.location));
    let locations = Location::ALL.into_iter().map(|location| (location, i18n::location(location).to_owned())).collect();
    let flash = Signal::derive(move || form.with(|form| form.flash));
    let other_mesh = Memo::new(move |_| store.shop.with(|shop| form.with(|form| form.other_mesh(shop, units))));
    // Opened from the press, it is about the heat, and leads back there.
    let press = Route::before().filter(|before| run.is_some_and(|run| *before == Route::Run(run)));
    let then = press.unwrap_or(Route::Jobs(JobsRoute::Job(job)));
    if press.is_some() {
        // After the page has been scrolled to its top.
        clock::after(Duration::ZERO, || clock::after(Duration::ZERO, || dom::scroll_to("heat")));
    }
    let title = if run.is_some() { i18n::run_edit_title() } else { i18n::run_add() };
    let inks = store.shop.with_untracked(ink_names);
    // An ink with a recipe sets its colour.
    let typed = bound!(form.ink);
    let name_ink = Callback::new(move |name: String| {
        let colour = store.shop.with_untracked(|shop| recipe_named(shop, &name).and_then(|(_, recipe)| recipe.colour));
        typed.set.run(name);
        if let Some(colour) = colour {
            form.update(|form| form.ink_colour = colour.to_string());
        }
    });
    let ink = Bound { set: name_ink, ..typed };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=then aside=help(Term::Run) class="form">
            <form on:submit=move |event| submit.submit(store, &event, then) novalidate=true>
                {submit.draft_line()}
                <Choice label=i18n::run_where() name="location" options=locations value=location on_pick=Callback::new(pick_location)/>
                {move || from.get().map(|from| view! { <p class="quiet-line" id="defaults-from"><Icon name="info"/>{i18n::run_defaults_from(from)}</p> })}
                <fieldset class="group">
                    <legend>{i18n::run_group_print()}</legend>
                    <div class="field-pair colour-pair">
                        <Field label=i18n::run_ink_colour() kind=Kind::Colour bound=bound!(form.ink_colour) problems/>
                        <Field label=i18n::item_ink() kind=Kind::Words bound=ink problems suggestions=inks hint=i18n::run_ink_hint()/>
                    </div>
                    <div class="field-pair">
                        <Field label=i18n::item_hits() kind=Kind::Whole bound=bound!(form.hits) problems hint=i18n::run_hits_hint() help=help(Term::Stroke)/>
                        <Field label=i18n::run_guess() kind=Kind::Decimal unit=i18n::unit_seconds() bound=bound!(form.guess) problems hint=i18n::run_guess_hint()/>
                    </div>
                </fieldset>
                <fieldset class="group" id="heat">
                    <legend>{i18n::run_group_heat()}</legend>
                    <Switch id="flash" label=i18n::run_flash() value=flash on_set=Callback::new(move |on| form.update(|form| form.flash = on))/>
                    {move || flash.get().then(|| view! {
                        <div class="field-pair">
                            <Field label=i18n::run_flash_seconds() kind=Kind::Decimal unit=i18n::unit_seconds() bound=bound!(form.flash_seconds) problems/>
                            <Field label=i18n::item_flash_distance() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.flash_distance) problems/>
                        </div>
                    })}
                    <div class="field-pair">
                        <Field label=i18n::item_dryer() kind=Kind::Decimal unit=i18n::unit_temperature() bound=bound!(form.dryer) problems/>
                        <Field label=i18n::item_dwell() kind=Kind::Decimal unit=i18n::unit_seconds() bound=bound!(form.dwell) problems help=help(Term::DwellTime)/>
                    </div>
                    <div class="field-pair belt-pair">
                        <Field label=i18n::run_belt() kind=Kind::Decimal unit=i18n::unit_belt() bound=bound!(form.belt) problems/>
                        <Field label=i18n::item_passes() kind=Kind::Whole bound=bound!(form.passes) problems/>
                    </div>
                    <DryerLimits lot=of_lot run form/>
                    <p class="caution"><Icon name="heat"/>{i18n::run_heat_caution()}</p>
                </fieldset>
                <fieldset class="group">
                    <legend>{i18n::run_group_press()}</legend>
                    <div class="field-pair">
                        <Field label=i18n::item_screens() kind=Kind::Words bound=bound!(form.screens) problems hint=i18n::run_screens_hint()/>
                        <Field label=i18n::item_mesh() kind=Kind::Decimal unit=i18n::unit_mesh() bound=bound!(form.mesh) problems help=help(Term::MeshCount)/>
                    </div>
                    {move || other_mesh.with(|rows| (!rows.is_empty()).then(|| view! { <p class="caution" id="other-mesh"><Icon name="alert"/>{i18n::other_mesh(rows)}</p> }))}
                    <div class="field-pair">
                        <Field label=i18n::item_squeegee() kind=Kind::Words bound=bound!(form.squeegee) problems hint=i18n::run_squeegee_hint()/>
                        <Field label=i18n::item_off_contact() kind=Kind::Length unit=i18n::unit_off_contact() bound=bound!(form.off_contact) problems help=help(Term::OffContact)/>
                    </div>
                </fieldset>
                <fieldset class="group">
                    <legend>{i18n::item_placement()}</legend>
                    <Field label=i18n::item_below_collar() kind=Kind::Length unit=i18n::unit_length() bound=bound!(form.below_collar) problems hint=i18n::run_below_collar_hint()/>
                    <Field label=i18n::run_placement() kind=Kind::Words bound=bound!(form.placement) problems/>
                </fieldset>
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }
    .into_any()
}

/// The limits that the typed dryer temperature exceeds on this lot's fabric, before the run is saved.
#[component]
fn DryerLimits(lot: LotId, run: Option<RunId>, form: RwSignal<RunForm>) -> impl IntoView {
    let store = Store::from_context();
    let limits = Memo::new(move |_| {
        let (ink, typed) = form.with(|form| (form.ink.clone(), form.dryer.clone()));
        let Ok(setting) = Temperature::parse_dryer(&typed, i18n::units()) else { return Vec::new() };
        let now = store.clock.get_untracked().now;
        store.shop.with(|shop| limits_while_entering(shop, lot, run, &ink, setting, now))
    });
    let fabric = move || store.shop.with(|shop| shop.lot(lot).map(|lot| i18n::fabric_inside(lot.fabric)));
    let line = |limit: &LimitCheck| {
        let exceeded = limit.state == LimitState::Exceeded;
        let text = format!("{}: {}", i18n::temperature(limit.limit), i18n::at_limit(limit.name));
        view! { <li class:problem=exceeded><Icon name="alert"/><span>{text}<small>{i18n::limit_origin(limit.origin)}</small></span></li> }
    };
    view! {
        <div role="status" id="dryer-limits">
            {move || limits.with(|limits: &Vec<LimitCheck>| (!limits.is_empty()).then(|| {
                let exceeded = limits.iter().any(|limit| limit.state == LimitState::Exceeded);
                let title = exceeded.then(fabric).flatten().map(i18n::run_too_hot);
                view! {
                    {title.map(|title| view! { <p class="problem"><Icon name="alert"/>{title}</p> })}
                    <ul class="heat-reasons">{limits.iter().map(line).collect::<Vec<_>>()}</ul>
                }
            }))}
        </div>
    }
}

/// The initial form of a new run at a location, and the run its set-up is copied from.
fn suggested(store: Store, lot: LotId, location: Location, from: RwSignal<Option<String>>) -> RunForm {
    let (new, name) = store.shop.with_untracked(|shop| {
        let new = new_run(shop, lot, location);
        let name = new.set_up_from.and_then(|id| {
            let title = shop.job_of(id).map(|(_, job)| job.title.clone()).unwrap_or_default();
            Some(format!("{title} · {}", i18n::location(shop.run(id)?.location)))
        });
        (new, name)
    });
    from.set(name);
    let mut form = RunForm::of(&new.run, i18n::units());
    if form.ink_colour.is_empty() {
        form.ink_colour = "#1c1b1a".into();
    }
    form
}
