//! Whether an ink covers a garment, and for how many pieces.

use super::coverage_rows::rows;
use super::missing_drawdowns::missing;
use super::reading::Reading;
use super::reading_field::ReadingField;
use crate::components::{Choice, NotHere, Page};
use crate::forms::{Field, Kind, bound};
use crate::i18n;
use crate::route::{InkRoute, Route};
use crate::store::Store;
use lastpull_core::colour::Lab;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{CoverForm, CoverageQuery, NoCover, ReadBy, cover_runs, cover_view, lab_of, reading_of};
use leptos::prelude::*;

/// Default for a garment whose colour is unknown.
const UNKNOWN: Lab = Lab::new(20.0, 0.0, 0.0);

/// The page.
#[component]
pub fn CoveragePage(recipe: Subject) -> impl IntoView {
    let store = Store::from_context();
    let name = store.shop.with_untracked(|shop| {
        shop.ink.recipe(recipe).filter(|recipe| !recipe.deleted).map(|recipe| recipe.name.clone())
    });
    let Some(name) = name else { return view! { <NotHere/> }.into_any() };
    let runs = store.shop.with_untracked(|shop| cover_runs(shop, recipe));
    let known: Vec<(usize, String)> = runs
        .iter()
        .enumerate()
        .filter_map(|(place, run)| Some((place, format!("{} · {}", run.garment.as_ref()?.name, run.title))))
        .collect();
    let first = known.first().map_or(usize::MAX, |(place, _)| *place);
    let picked = RwSignal::new(first);
    let typed = RwSignal::new(Reading::of(Some(reading_of(UNKNOWN, ReadBy::Screen))));
    let run_at = |place: usize| runs.get(place).map(|run| run.run);
    let form = RwSignal::new(store.shop.with_untracked(|shop| CoverForm::of(shop, run_at(first))));
    let white = RwSignal::new(None::<Subject>);
    let problems = Memo::new(move |_| form.with(|form| form.check().err().unwrap_or_else(Problems::new)));
    let run_ids: Vec<_> = runs.iter().map(|run| run.run).collect();
    let garments: Vec<Option<Lab>> =
        runs.iter().map(|run| run.garment.as_ref().map(|garment| garment.colour)).collect();
    let garment = Memo::new(move |_| {
        let of_run = garments.get(picked.get()).copied().flatten();
        of_run.or_else(|| typed.with(|typed| typed.value).map(lab_of))
    });
    let view = Memo::new(move |_| {
        let (pieces, work) = form.with(CoverForm::check).ok()?;
        let ask = CoverageQuery { garment: garment.get()?, underbase: white.get(), pieces, work };
        Some((ask, store.shop.with(|shop| cover_view(shop, recipe, &ask))))
    });
    let mut options = known;
    options.push((usize::MAX, i18n::colour_cover_other().to_owned()));
    let pick = move |place: usize| {
        picked.set(place);
        // Another run has another number of pieces and another flash setting.
        if let Some(run) = run_ids.get(place).copied() {
            form.set(store.shop.with_untracked(|shop| CoverForm::of(shop, Some(run))));
        }
    };
    let is_other = Memo::new(move |_| picked.get() == usize::MAX);
    let title = i18n::colour_cover_title(name);
    view! {
        <Page title=Signal::derive(move || title.clone()) up=Route::Ink(InkRoute::Recipe(recipe)) class="colour-cover">
            <Choice label=i18n::colour_cover_on() name="cover-on" options value=Signal::from(picked) on_pick=Callback::new(pick)/>
            {move || is_other.get().then(|| view! { <ReadingField name="cloth" label=i18n::colour_cover_other() reading=typed/> })}
            {move || view.with(|view| match view {
                None => ().into_any(),
                Some((_, Err(NoCover::NoParts))) => view! { <p class="lead">{i18n::colour_cover_no_parts()}</p> }.into_any(),
                Some((_, Err(NoCover::Uncharacterised(unknown)))) => missing(unknown),
                Some((ask, Ok(view))) => rows(view, ask, white),
            })}
            <details class="group colour-how">
                <summary>{i18n::colour_cover_numbers()}</summary>
                <div class="field-pair">
                    <Field label=i18n::pieces_how_many() kind=Kind::Whole bound=bound!(form.pieces) problems/>
                    <Field label=i18n::colour_cover_hit() kind=Kind::Decimal unit=i18n::unit_seconds() bound=bound!(form.hit) problems/>
                </div>
                <div class="field-pair">
                    <Field label=i18n::colour_cover_flash() kind=Kind::Decimal unit=i18n::unit_seconds() bound=bound!(form.flash) problems/>
                    <Field label=i18n::colour_cover_screen() kind=Kind::Decimal unit=i18n::unit_minutes() bound=bound!(form.screen) problems/>
                </div>
            </details>
        </Page>
    }.into_any()
}
