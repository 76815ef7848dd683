//! A recipe: the revision that is made, its approval, and its history.

use super::approval::approval_line;
use super::parts_table::parts_table;
use super::pot_row::pot_row;
use super::revisions::Revisions;
use super::sum_check::limit_warnings;
use crate::components::{Icon, MenuRow, NotHere, Page, Swatch, long_rows};
use crate::forms::delete;
use crate::i18n;
use crate::pages::photos::Photos;
use crate::route::{ColourRoute, HeatRoute, InkRoute, JobsRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::heat::sheet_for;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{RecipeCard, RevisionRow, recipe_card};
use leptos::prelude::*;

/// The page.
#[component]
pub fn RecipePage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let card = Memo::new(move |_| store.shop.with(|shop| recipe_card(shop, id).filter(|card| !card.recipe.deleted)));
    let here = Memo::new(move |_| card.with(Option::is_some));
    move || {
        if !here.get() {
            return view! { <NotHere/> }.into_any();
        }
        let name = Memo::new(move |_| {
            card.with(|card| card.as_ref().map(|card| card.recipe.name.clone()).unwrap_or_default())
        });
        let aside = move || {
            view! { <a class="icon-button" href=Route::Ink(InkRoute::EditRecipe(id)).hash() aria-label=i18n::edit()><Icon name="edit"/></a> }
        };
        let remove = move |_| {
            delete(store, id, i18n::ink_recipe_deleted(name.get_untracked()), Route::Ink(InkRoute::Home));
        };
        view! {
            <Page title={Signal::<String>::from(name)} up=Route::Ink(InkRoute::Home) aside class="ink">
                {move || card.with(|card| card.as_ref().map(|card| view! { {current_revision(card)} {sheet(store, card)} {used(store, card)} {cost_and_density(card)} }))}
                <Revisions card/>
                <section class="ink-section"><h2>{i18n::photos_title()}</h2><Photos subject=id/></section>
                <div class="button-row">
                    <button type="button" class="button with-icon danger" id="delete" on:click=remove><Icon name="bin"/>{i18n::delete()}</button>
                </div>
            </Page>
        }.into_any()
    }
}

/// The revision that is made, large, with its actions.
fn current_revision(card: &RecipeCard) -> AnyView {
    let id = card.id;
    let Some(row) = card.revisions.iter().find(|row| Some(row.name.id) == card.best) else {
        return view! {
            <p class="lead">{i18n::ink_card_empty()}</p>
            <a class="button primary" id="revise" href=Route::Ink(InkRoute::Revise(id)).hash()>{i18n::ink_write_recipe()}</a>
        }.into_any();
    };
    let newer = card.newer_unapproved.then(|| card.revisions.first()).flatten();
    let note = card.recipe.note.clone();
    view! {
        <section class="card ink-best" id="best">
            <header class="ink-best-head">
                <Swatch colour=card.recipe.colour/>
                <div><h2>{i18n::ink_revision_name(&row.name)}</h2>{approval_line(row.approval.as_ref())}</div>
            </header>
            {newer.map(|newer| {
                let (newer, best) = (i18n::ink_revision_name(&newer.name), i18n::ink_this_revision(&row.name));
                view! { <p class="caution" id="newer"><Icon name="alert"/><span>{i18n::ink_newer_not_approved(newer, best)}</span></p> }
            })}
            {parts_table(&row.parts)}
            {row.on_top.then(|| view! { <p class="quiet-line">{i18n::ink_top_note()}</p> })}
            {limit_warnings(&row.limits)}
            <a class="button primary huge" id="again" href=Route::Ink(InkRoute::MakeAgain(id)).hash()>
                <Icon name="ink"/>{i18n::ink_make()}
            </a>
        </section>
        {(!note.is_empty()).then(|| view! { <p class="job-notes">{note}</p> })}
        <div class="ink-doors">
            {door("mix", "press", i18n::ink_mix_pot(), Route::Pot(PotRoute::NewFromRevision(row.name.id)))}
            {door("revise", "edit", i18n::ink_revise(), Route::Ink(InkRoute::Revise(id)))}
            {door("cover", "shirt", i18n::ink_cover(), Route::Colour(ColourRoute::Cover(id)))}
            {door("target", "drop", i18n::ink_target(), Route::Colour(ColourRoute::Target(id)))}
        </div>
    }.into_any()
}

fn door(id: &'static str, icon: &'static str, title: &'static str, route: Route) -> AnyView {
    view! { <a class="ink-door" id=id href=route.hash()><Icon name=icon/><strong>{title}</strong></a> }.into_any()
}

/// How it is cured: the ink's data sheet, which is kept with the heat.
fn sheet(store: Store, card: &RecipeCard) -> AnyView {
    let found = store.shop.with_untracked(|shop| {
        sheet_for(shop, &card.recipe.name).map(|(id, sheet)| (id, i18n::sheet_cure_words(&sheet.figures)))
    });
    let (route, words) = match found {
        Some((id, words)) => (HeatRoute::Sheet(id), i18n::ink_cures(words)),
        None => (HeatRoute::NewSheet, i18n::fix_sheet().to_owned()),
    };
    view! {
        <ul class="menu" id="ink-sheet"><MenuRow href=route.hash() icon="heat" title=i18n::paper_sheet().to_owned() text=words/></ul>
    }
    .into_any()
}

/// Its pots, and the coming runs with it.
fn used(store: Store, card: &RecipeCard) -> AnyView {
    let runs = card.runs.iter().filter_map(|run| run_row(store, *run)).collect_view();
    view! {
        {(!card.pots.is_empty()).then(|| view! {
            <section class="ink-section"><h2>{i18n::ink_its_pots()}</h2>{long_rows("pots", "menu", card.pots.clone(), pot_row)}</section>
        })}
        {(!runs.is_empty()).then(|| view! { <section class="ink-section"><h2>{i18n::ink_its_runs()}</h2><ul class="menu">{runs}</ul></section> })}
    }.into_any()
}

fn run_row(store: Store, run: Subject) -> Option<AnyView> {
    store.shop.with_untracked(|shop| {
        let (job, fields) = shop.job_of(run)?;
        let words = format!("{} · {}", fields.client, i18n::pieces(shop.pieces_left(run)));
        Some(
            view! {
                <MenuRow href=JobsRoute::Job(job).hash() icon="shirt" title=fields.title.clone() text=words/>
            }
            .into_any(),
        )
    })
}

/// Cost and density, folded.
fn cost_and_density(card: &RecipeCard) -> AnyView {
    let Some(row) = card.revisions.iter().find(|row| Some(row.name.id) == card.best) else { return ().into_any() };
    let RevisionRow { cost, density, .. } = row;
    let unpriced = (cost.unpriced > 0.0).then(|| i18n::ink_unpriced(i18n::percent(cost.unpriced, 1)));
    let price = i18n::ink_per_kilo(i18n::ink_price(cost.per_kilogram));
    let density = density
        .map_or_else(|| i18n::ink_density_unknown().to_owned(), |value| i18n::ink_density_of(i18n::number(value, 3)));
    view! {
        <details class="group screen-fold" id="cost">
            <summary>{i18n::ink_cost_density()}</summary>
            <p><strong>{price}</strong>{unpriced.map(|words| view! { " " <span class="muted">{words}</span> })}</p>
            <p>{density}</p>
        </details>
    }
    .into_any()
}
