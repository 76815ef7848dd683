//! The form of a garment lot: which garment, fabric and colour, how many of each size.

use crate::components::{Choice, Icon, NotHere, Page};
use crate::forms::{Bound, Field, FormSubmit, Kind, SaveBar, bound, field_name, set};
use crate::i18n;
use crate::platform::ids;
use crate::route::{JobsRoute, Route};
use crate::store::Store;
use lastpull_core::facts::{Fact, LotField};
use lastpull_core::ids::{JobId, LotId};
use lastpull_core::job::{Fabric, LotForm, Size, fabric_of_garment, garment_names, suggested_lot};
use lastpull_core::units::parse_whole;
use leptos::prelude::*;

/// Name of the pieces of all sizes.
const PIECES: &str = field_name!(LotForm.pieces);

/// A new lot of a job, or the fields of an existing one.
#[component]
pub fn LotFormPage(#[prop(into)] job: Option<JobId>, #[prop(into)] lot: Option<LotId>) -> impl IntoView {
    let store = Store::from_context();
    let before = lot.and_then(|id| store.shop.with_untracked(|shop| shop.lot(id).filter(|lot| !lot.deleted).cloned()));
    let of_job = job.or(before.as_ref().and_then(|lot| lot.job));
    let known_job =
        of_job.is_some_and(|id| store.shop.with_untracked(|shop| shop.job(id).is_some_and(|job| !job.deleted)));
    let Some(of_job) = of_job.filter(|_| known_job) else { return view! { <NotHere/> }.into_any() };
    let start = match &before {
        Some(lot) => LotForm::of(lot),
        None => store.shop.with_untracked(|shop| suggested_lot(shop, of_job).map(LotForm::of)).map_or_else(
            || LotForm { colour: "#23262e".into(), ..LotForm::default() },
            // The garment is likely the same as before; the number of each size is not.
            |form| LotForm { pieces: std::collections::BTreeMap::new(), ..form },
        ),
    };
    let usual_fabric = start.fabric;
    let form = RwSignal::new(start);
    // One id per form, so that saving twice creates one record.
    let id = lot.unwrap_or_else(ids::new_id);
    let submit = FormSubmit::new(Box::new(move || {
        let mut fields = form.with(|form| form.check(before.as_ref()))?;
        if lot.is_none() {
            fields.insert(0, LotField::Job(of_job));
        }
        Ok(set(id, fields, Fact::LotSet))
    }))
    .with_draft(form);
    let problems = submit.problems;
    // A new lot needs its first run next.
    let then = if lot.is_none() { Route::Jobs(JobsRoute::NewRun(id)) } else { Route::Jobs(JobsRoute::Job(of_job)) };
    let fabric = Signal::derive(move || form.with(|form| form.fabric));
    let garments = store.shop.with_untracked(garment_names);
    // The fabric of a garment that was ordered before, unless another was chosen here.
    let (chosen, known) = (StoredValue::new(lot.is_some()), RwSignal::new(None::<String>));
    let typed = bound!(form.garment);
    let name_garment = Callback::new(move |name: String| {
        let fabric = store.shop.with_untracked(|shop| fabric_of_garment(shop, &name)).filter(|_| !chosen.get_value());
        let was_known = known.with_untracked(Option::is_some);
        known.set(fabric.map(|_| name.trim().to_owned()));
        typed.set.run(name);
        // The name may only begin like one that is known: then its fabric does not stay.
        if let Some(fabric) = fabric.or_else(|| was_known.then_some(usual_fabric)) {
            form.update(|form| form.fabric = fabric);
        }
    });
    let garment = Bound { set: name_garment, ..typed };
    let pick_fabric = Callback::new(move |fabric| {
        chosen.set_value(true);
        known.set(None);
        form.update(|form| form.fabric = fabric);
    });
    let fabrics = Fabric::ALL.into_iter().map(|fabric| (fabric, i18n::fabric(fabric).to_owned())).collect();
    let total = move || {
        form.with(|form| {
            form.pieces.values().filter_map(|text| parse_whole(text, 0, u32::MAX).ok()).fold(0, u32::saturating_add)
        })
    };
    let title = if lot.is_some() { i18n::lot_edit_title() } else { i18n::lot_add() };
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=Route::Jobs(JobsRoute::Job(of_job)) class="form">
            <form on:submit=move |event| submit.submit(store, &event, then) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::lot_garment() kind=Kind::Words bound=garment problems hint=i18n::lot_garment_hint() suggestions=garments/>
                <Choice label=i18n::lot_fabric() name="fabric" options=fabrics value=fabric on_pick=pick_fabric/>
                {move || known.get().map(|name| view! { <p class="quiet-line" id="fabric-from"><Icon name="info"/>{i18n::lot_fabric_from(name)}</p> })}
                {move || fabric.get().is_heat_sensitive().then(|| view! { <p class="caution"><Icon name="heat"/>{i18n::lot_fabric_caution()}</p> })}
                <div class="field-pair colour-pair">
                    <Field label=i18n::lot_colour() kind=Kind::Colour bound=bound!(form.colour) problems/>
                    <Field label=i18n::lot_colour_name() kind=Kind::Words bound=bound!(form.colour_name) problems/>
                </div>
                <fieldset class="sizes" class:wrong=move || problems.with(|problems| problems.contains_key(PIECES))>
                    <legend>{i18n::lot_pieces()}</legend>
                    <Sizes title=i18n::adult() sizes=Size::ADULT.to_vec() form/>
                    <Sizes title=i18n::youth() sizes=Size::YOUTH.to_vec() form/>
                    <Sizes title=i18n::one_size() sizes=vec![Size::One] form/>
                    <p class="sizes-total">{move || i18n::lot_total(i18n::pieces(total()))}</p>
                    <p class="field-help" role="alert">
                        {move || problems.with(|problems| problems.get(PIECES).map(|problem| view! {
                            <span class="problem" id="pieces-problem">{i18n::form_problem(*problem)}</span>
                        }))}
                    </p>
                </fieldset>
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }
    .into_any()
}

#[component]
fn Sizes(#[prop(into)] title: String, sizes: Vec<Size>, form: RwSignal<LotForm>) -> impl IntoView {
    view! {
        <div class="size-group">
            <h3>{title}</h3>
            <div class="size-cells">
                {sizes.into_iter().map(|size| view! { <SizeCell size form/> }).collect_view()}
            </div>
        </div>
    }
}

#[component]
fn SizeCell(size: Size, form: RwSignal<LotForm>) -> impl IntoView {
    let id = format!("size-{size:?}").to_ascii_lowercase();
    let field = Bound::new(
        PIECES,
        form,
        move |form| form.pieces.get(&size).cloned().unwrap_or_default(),
        move |form, typed| drop(form.pieces.insert(size, typed)),
    );
    let letters = if size == Size::One { i18n::one_size() } else { size.letters() };
    view! {
        <div class="size-cell">
            <label for=id.clone() aria-label=i18n::size(Some(size))>{letters}</label>
            <input
                id=id
                type="text"
                inputmode="numeric"
                autocomplete="off"
                placeholder="0"
                prop:value=move || i18n::with_mark(field.value.get())
                on:input=move |event| field.set.run(i18n::with_mark(event_target_value(&event)))
            />
        </div>
    }
}
