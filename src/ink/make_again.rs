//! Make this again: grams for any size, and no doubt about which revision they are of.

use super::recipe::yes;
use super::sum::limits_told;
use crate::parts::{Field, Icon, Kind, NotHere, Page, Swatch, bound};
use crate::place::{InkPlace, Place, PotPlace};
use crate::platform::{ids, spawn_local};
use crate::store::Store;
use crate::words;
use lastpull_core::ink::{InkFact, MakeAgain, MakeForm, MakeRow, MakeSize, RevisionName, best_revision, make_again};
use lastpull_core::job::Problems;
use lastpull_core::journal::{Fact, Subject};
use leptos::prelude::*;

/// The screen.
#[component]
pub fn MakeAgainScreen(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let units = words::units();
    let here = store.shop.with_untracked(|shop| {
        let recipe = shop.ink.recipe(id).filter(|recipe| !recipe.deleted)?;
        best_revision(shop, id).map(|_| recipe.name.clone())
    });
    let Some(name) = here else { return view! { <NotHere/> }.into_any() };
    let form = RwSignal::new(store.shop.with_untracked(|shop| MakeForm::of(shop, id, units)));
    // Another revision than the one it is made by, where somebody chose one.
    let choice = RwSignal::new(None::<Subject>);
    let sized = Memo::new(move |_| store.shop.with(|shop| form.with(|form| form.size(shop, units))));
    let made = Memo::new(move |_| {
        let size = sized.with(|sized| sized.as_ref().ok().map(|made| made.size))?;
        store.shop.with(|shop| make_again(shop, id, choice.get(), size))
    });
    // Told even while the size is still wrong: the revision comes before the grams.
    let told = Memo::new(move |_| {
        let nothing = lastpull_core::ink::BatchSize::Whole(lastpull_core::quantity::Grams::ZERO);
        store.shop.with(|shop| make_again(shop, id, choice.get(), nothing))
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
        spawn_local(async move {
            let saved = store.record_and_wait(vec![(pot, Fact::Ink(InkFact::PotSet(fields)))]).await;
            busy.set(false);
            if saved {
                Place::Pot(PotPlace::Pot(pot)).go();
            }
        });
    };
    view! {
        <Page title=Signal::derive(move || words::ink_again_title(&name)) up=Place::Ink(InkPlace::Recipe(id)) class="ink">
            {move || told.with(|told| told.as_ref().map(|made| which(made, choice)))}
            <super::make_size::HowMuch id form sized/>
            {move || made.with(|made| made.as_ref().map(rows))}
            {move || made.with(|made| made.as_ref().map(|made| rounding(store, made)))}
            <div class="field-pair">
                <Field name="tare" label=words::pot_tare() kind=Kind::Decimal unit=words::unit_weight() bound=bound(form, |f| &mut f.tare) problems hint=words::pot_tare_hint()/>
                <Field name="capacity" label=words::pot_capacity() kind=Kind::Decimal unit=words::unit_weight() bound=bound(form, |f| &mut f.capacity) problems hint=words::pot_capacity_hint()/>
            </div>
            <button type="button" class="button primary huge" id="weigh" disabled=move || busy.get() || made.with(Option::is_none) on:click=weigh>
                <Icon name="ink"/>{words::ink_weigh_it()}
            </button>
        </Page>
    }.into_any()
}

/// What was typed, or what is wrong with it.
pub(super) type Sized = Result<MakeSize, Problems>;

/// Which revision it is, who said yes to it, and which other one there is.
fn which(made: &MakeAgain, choice: RwSignal<Option<Subject>>) -> AnyView {
    let name = words::ink_this_revision(&made.revision);
    let other = made.approved.as_ref().map(|yes| {
        let words = words::ink_other_approved(words::ink_revision_name(&yes.revision), &yes.client);
        choose(words, words::ink_make_that().to_owned(), &yes.revision, choice, "tight")
    });
    let newer = made
        .newer
        .iter()
        .filter(|newer| made.approved.as_ref().is_none_or(|yes| yes.revision.id != newer.id))
        .map(|newer| {
            let told = words::ink_revision_name(newer);
            let is = if made.approval.is_some() { words::ink_newer_is(&told) } else { words::ink_newer_other(&told) };
            choose(is, words::ink_make_newer(words::ink_this_revision(newer)), newer, choice, "")
        })
        .collect_view();
    view! {
        <section class="ink-which" id="which" class:approved=made.approval.is_some()>
            <h2>{words::ink_this_is(name)}</h2>
            {yes(made.approval.as_ref())}
            {other}
            {newer}
        </section>
    }
    .into_any()
}

fn choose(
    told: String,
    words: String,
    revision: &RevisionName,
    choice: RwSignal<Option<Subject>>,
    look: &'static str,
) -> AnyView {
    let id = revision.id;
    view! {
        <div class=format!("ink-choose {look}")>
            <p>{(!look.is_empty()).then(|| view! { <Icon name="alert"/> })}{told}</p>
            <button type="button" class="button" data-revision=revision.number.to_string() on:click=move |_| choice.set(Some(id))>{words}</button>
        </div>
    }.into_any()
}

/// The grams to weigh, large; how far off the recipe that is, small.
fn rows(made: &MakeAgain) -> AnyView {
    let rows = made.rows.iter().map(row).collect_view();
    view! {
        <section class="card ink-make" id="rows">
            <h2>{words::ink_weigh_title()}</h2>
            <ul class="ink-lines">{rows}</ul>
            <p class="ink-total">
                <span>{words::ink_total()}{(made.total != made.whole).then(|| view! { <small class="muted">{words::ink_asked(words::weight_fine(made.whole))}</small> })}</span>
                <strong id="total">{words::weight_fine(made.total)}</strong>
            </p>
        </section>
    }.into_any()
}

/// Errors below this are not worth a word, as a part of the component.
const WORTH_TELLING: f64 = 0.0005;

fn row(row: &MakeRow) -> AnyView {
    let off = (row.error.abs() >= WORTH_TELLING).then(|| {
        let sign = if row.error > 0.0 { "+" } else { "−" };
        format!("{sign}{}", words::percent(row.error.abs() * 100.0, 1))
    });
    let exact = off.map(|off| format!("{}, {off}", words::ink_exact(words::weight_fine(row.exact))));
    view! {
        <li class="ink-line" data-component=row.part.name.clone()>
            <Swatch colour=row.part.colour/>
            <span class="row-words">
                <span>{row.part.name.clone()}</span>
                <small class="muted">{words::percent(row.part.percent, 2)}</small>
                {row.lacks.is_some().then(|| view! { <small class="ink-newer">{words::ink_lacks(words::weight(row.lacks))}</small> })}
            </span>
            <span class="ink-end">
                <strong class="ink-grams">{words::weight_fine(row.grams)}</strong>
                {exact.map(|exact| view! { <small class="muted">{exact}</small> })}
            </span>
        </li>
    }.into_any()
}

/// What rounding to the scale does, where that is more than a hundredth; and what data sheets say.
fn rounding(store: Store, made: &MakeAgain) -> AnyView {
    let coarse = made.worst > 0.01;
    let step = store.shop.with_untracked(|shop| shop.ink.scale.step);
    let told = if made.worst >= WORTH_TELLING {
        let worst = words::percent(made.worst * 100.0, 1);
        let enough = if coarse { words::ink_rounding_enough(words::weight(made.enough)) } else { String::new() };
        let text = format!("{} {enough}", words::ink_rounding(words::grams(step), worst));
        if coarse {
            view! { <p class="caution" id="rounding"><Icon name="alert"/><span>{text}</span></p> }.into_any()
        } else {
            view! { <p class="quiet-line" id="rounding">{text}</p> }.into_any()
        }
    } else {
        ().into_any()
    };
    view! { {told} {limits_told(&made.limits)} }.into_any()
}
