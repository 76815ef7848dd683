//! Making a recipe again: grams for any size, and of which revision.

use super::approval::approval_line;
use super::batch_size::BatchSizeFields;
use super::sum_check::limit_warnings;
use crate::components::{Icon, NotHere, Page, Swatch};
use crate::forms::{Draft, Field, Kind, bound};
use crate::i18n;
use crate::platform::{ids, spawn_local};
use crate::route::{InkRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    BatchSizeForm, ComponentKind, InkFact, MakeAgain, MakeRow, RevisionName, best_revision, make_again, revisions_of,
};
use leptos::prelude::*;

/// The page.
#[component]
pub fn MakeAgainPage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let units = i18n::units();
    let here = store.shop.with_untracked(|shop| {
        let recipe = shop.ink.recipe(id).filter(|recipe| !recipe.deleted)?;
        best_revision(shop, id).map(|_| recipe.name.clone())
    });
    let Some(name) = here else { return view! { <NotHere/> }.into_any() };
    let form = RwSignal::new(store.shop.with_untracked(|shop| BatchSizeForm::of(shop, id, units)));
    // Another revision than the default, if the user chose one.
    let choice = RwSignal::new(None::<Subject>);
    let draft = Draft::of_page().keep(form).keep(choice);
    // The revision chosen before may have been undone.
    let is_of_it = |chosen: Subject| {
        store.shop.with_untracked(|shop| revisions_of(shop, id).iter().any(|revision| revision.id == chosen))
    };
    if choice.get_untracked().is_some_and(|chosen| !is_of_it(chosen)) {
        choice.set(None);
    }
    let sized = Memo::new(move |_| store.shop.with(|shop| form.with(|form| form.size(shop, units))));
    let made = Memo::new(move |_| {
        let size = sized.with(|sized| sized.as_ref().ok().map(|made| made.size))?;
        store.shop.with(|shop| make_again(shop, id, choice.get(), size))
    });
    // Shown even while the size is invalid: the revision comes before the grams.
    let suggestion = Memo::new(move |_| {
        let nothing = lastpull_core::ink::BatchSize::Whole(lastpull_core::units::Grams::ZERO);
        store.shop.with(|shop| make_again(shop, id, choice.get(), nothing))
    });
    let additive = Memo::new(move |_| {
        suggestion.with(|made| {
            made.as_ref().is_some_and(|made| made.rows.iter().any(|row| row.part.kind == ComponentKind::Additive))
        })
    });
    let pot = ids::new_id();
    let busy = RwSignal::new(false);
    let problems = RwSignal::new(Problems::new());
    let weigh = move |_| {
        let Some(revision) = made.with_untracked(|made| made.as_ref().map(|made| made.revision.id)) else { return };
        let fields = store.shop.with_untracked(|shop| form.with_untracked(|form| form.pot(shop, revision, units)));
        let fields = match fields {
            Ok(fields) => fields,
            Err(wrong) => return problems.set(wrong),
        };
        busy.set(true);
        let endings = draft.endings();
        spawn_local(async move {
            let saved = store.record_and_wait(vec![(pot, Fact::Ink(InkFact::PotSet(fields)))]).await;
            busy.set(false);
            if saved {
                endings.saved();
                Route::Pot(PotRoute::Pot(pot)).replace();
            }
        });
    };
    view! {
        <Page title=Signal::derive(move || i18n::ink_again_title(&name)) up=Route::Ink(InkRoute::Recipe(id)) class="ink">
            {draft.line()}
            {move || suggestion.with(|made| made.as_ref().map(|made| which(made, choice)))}
            <BatchSizeFields id form sized/>
            {move || made.with(|made| made.as_ref().map(rows))}
            {move || made.with(|made| made.as_ref().map(|made| rounding(store, made)))}
            {move || additive.get().then(|| view! { <p class="caution"><Icon name="alert"/>{i18n::caution_additive()}</p> })}
            <div class="field-pair">
                <Field label=i18n::pot_tare() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.tare) problems hint=i18n::pot_tare_hint()/>
                <Field label=i18n::pot_capacity() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.capacity) problems hint=i18n::pot_capacity_hint()/>
            </div>
            <button type="button" class="button primary huge" id="weigh" disabled=move || busy.get() || made.with(Option::is_none) on:click=weigh>
                <Icon name="ink"/>{i18n::ink_weigh_it()}
            </button>
        </Page>
    }.into_any()
}

/// The revision, its approval, and the alternative.
fn which(made: &MakeAgain, choice: RwSignal<Option<Subject>>) -> AnyView {
    let name = i18n::ink_this_revision(&made.revision);
    let other = made.approved.as_ref().map(|yes| {
        let words = i18n::ink_other_approved(i18n::ink_revision_name(&yes.revision), &yes.client);
        choose(words, i18n::ink_make_that().to_owned(), &yes.revision, choice, "tight")
    });
    let newer = made
        .newer
        .iter()
        .filter(|newer| made.approved.as_ref().is_none_or(|yes| yes.revision.id != newer.id))
        .map(|newer| {
            let name = i18n::ink_revision_name(newer);
            let is = if made.approval.is_some() { i18n::ink_newer_is(&name) } else { i18n::ink_newer_other(&name) };
            choose(is, i18n::ink_make_newer(i18n::ink_this_revision(newer)), newer, choice, "")
        })
        .collect_view();
    view! {
        <section class="ink-which" id="which" class:approved=made.approval.is_some()>
            <h2>{i18n::ink_this_is(name)}</h2>
            {approval_line(made.approval.as_ref())}
            {other}
            {newer}
        </section>
    }
    .into_any()
}

fn choose(
    why: String,
    label: String,
    revision: &RevisionName,
    choice: RwSignal<Option<Subject>>,
    look: &'static str,
) -> AnyView {
    let id = revision.id;
    view! {
        <div class=format!("ink-choose {look}")>
            <p>{(!look.is_empty()).then(|| view! { <Icon name="alert"/> })}{why}</p>
            <button type="button" class="button" data-revision=revision.number.to_string() on:click=move |_| choice.set(Some(id))>{label}</button>
        </div>
    }.into_any()
}

/// The grams to weigh, large; the deviation from the recipe, small.
fn rows(made: &MakeAgain) -> AnyView {
    let rows = made.rows.iter().map(row).collect_view();
    view! {
        <section class="card ink-make" id="rows">
            <h2>{i18n::ink_weigh_title()}</h2>
            <ul class="ink-lines">{rows}</ul>
            <p class="ink-total">
                <span>{i18n::ink_total()}{(made.total != made.whole).then(|| view! { <small class="muted">{i18n::ink_asked(i18n::weight_fine(made.whole))}</small> })}</span>
                <strong id="total">{i18n::weight_fine(made.total)}</strong>
            </p>
        </section>
    }.into_any()
}

/// Smaller errors are not shown, as a fraction of the component.
const LEAST_SHOWN_ERROR: f64 = 0.0005;

fn row(row: &MakeRow) -> AnyView {
    let off = (row.error.abs() >= LEAST_SHOWN_ERROR).then(|| {
        let sign = if row.error > 0.0 { "+" } else { "−" };
        format!("{sign}{}", i18n::percent(row.error.abs() * 100.0, 1))
    });
    let exact = off.map(|off| format!("{}, {off}", i18n::ink_exact(i18n::weight_fine(row.exact))));
    view! {
        <li class="ink-line" data-component=row.part.name.clone()>
            <Swatch colour=row.part.colour/>
            <span class="row-words">
                <span>{row.part.name.clone()}</span>
                <small class="muted">{i18n::percent(row.part.percent, 2)}</small>
                {row.lacks.is_positive().then(|| view! { <small class="ink-newer">{i18n::ink_lacks(i18n::weight(row.lacks))}</small> })}
            </span>
            <span class="ink-end">
                <strong class="ink-grams">{i18n::weight_fine(row.grams)}</strong>
                {exact.map(|exact| view! { <small class="muted">{exact}</small> })}
            </span>
        </li>
    }.into_any()
}

/// The effect of rounding to the scale, as a caution above 1 %; and exceeded limits of data sheets.
fn rounding(store: Store, made: &MakeAgain) -> AnyView {
    let coarse = made.worst > 0.01;
    let step = store.shop.with_untracked(|shop| shop.ink.scale.step);
    let error = if made.worst >= LEAST_SHOWN_ERROR {
        let worst = i18n::percent(made.worst * 100.0, 1);
        let enough = if coarse { i18n::ink_rounding_enough(i18n::weight(made.accurate_batch)) } else { String::new() };
        let text = format!("{} {enough}", i18n::ink_rounding(i18n::grams(step), worst));
        if coarse {
            view! { <p class="caution" id="rounding"><Icon name="alert"/><span>{text}</span></p> }.into_any()
        } else {
            view! { <p class="quiet-line" id="rounding">{text}</p> }.into_any()
        }
    } else {
        ().into_any()
    };
    view! { {error} {limit_warnings(&made.limits)} }.into_any()
}
