//! A pot's colour beside its target: the difference in words, and what to add in grams.

use super::advice::{Advice, Picked};
use super::difference::{in_numbers, in_words};
use super::missing_drawdowns::missing;
use super::on_garment::OnGarment;
use super::pour_dialog::PourSheet;
use super::read_dialog::ReadSheet;
use crate::components::{Icon, NotHere, Page};
use crate::i18n::{self, Term};
use crate::pages::help::Help;
use crate::pages::ink::record::record_match;
use crate::route::{ColourRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::colour::correction::Outcome;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{MatchView, NoAdvice, PotStage, ReadOn, lab_of, match_view, pot_stage, pot_state};
use leptos::prelude::*;

/// The page.
#[component]
pub fn MatchPage(pot: Subject) -> impl IntoView {
    let store = Store::from_context();
    let view = Memo::new(move |_| store.shop.with(|shop| match_view(shop, pot).filter(|_| is_there(shop, pot))));
    if view.with_untracked(Option::is_none) {
        return view! { <NotHere/> }.into_any();
    }
    // Kept here, since the part below is rebuilt on every change of the pot.
    let (reads, picked) = (RwSignal::new(false), RwSignal::new(Picked::None));
    let put_away = Callback::new(move |()| picked.set(None));
    let poured = Callback::new(move |()| {
        picked.set(None);
        reads.set(true);
    });
    let title = Signal::derive(move || {
        i18n::colour_match_title(view.with(|view| view.as_ref().map(|view| view.name.clone()).unwrap_or_default()))
    });
    let close = Callback::new(move |()| reads.set(false));
    let stage = Memo::new(move |_| store.shop.with(|shop| pot_stage(shop, pot, &pot_state(shop, pot))));
    // Next, at the pot's page: the client's approval.
    let matches = Callback::new(move |()| {
        record_match(store, pot);
        Route::Pot(PotRoute::Pot(pot)).navigate();
    });
    view! {
        <Page title up=Route::Pot(PotRoute::Pot(pot)) class="colour-match">
            {move || view.with(|view| view.as_ref().map(|view| whole(view, stage.get(), matches, reads, picked)))}
            {move || picked.get().map(|(way, before)| view! { <PourSheet pot way before poured on_close=put_away/> })}
            {move || reads.get().then(|| view! { <ReadSheet pot on_close=close/> })}
        </Page>
    }
    .into_any()
}

fn is_there(shop: &lastpull_core::shop::Shop, pot: Subject) -> bool {
    shop.ink.pot(pot).is_some_and(|pot| !pot.deleted)
}

fn whole(
    view: &MatchView,
    stage: PotStage,
    matches: Callback<()>,
    reads: RwSignal<bool>,
    picked: RwSignal<Picked>,
) -> AnyView {
    if view.advice == Err(NoAdvice::Empty) {
        return view! { <p class="lead">{i18n::colour_empty_pot()}</p> }.into_any();
    }
    let target = view.target.map(lab_of);
    let garment = view.garment.as_ref().map(|garment| garment.colour);
    let name = if view.is_read { i18n::colour_pot() } else { i18n::colour_pot_computed() };
    let patches = target.map(|lab| (lab, i18n::colour_target().to_owned())).into_iter();
    let patches: Vec<_> = patches.chain(view.displayed().map(|lab| (lab, name.to_owned()))).collect();
    let says = view.difference.as_ref().map(|difference| {
        view! {
            <section class="colour-says" aria-live="polite">
                <p class="muted">{i18n::colour_pot_is()}</p>
                {in_words(difference)}
                <p class="quiet-line">{in_numbers(difference)}". "{read_how(view)}</p>
            </section>
            <div class="help-row"><span class="quiet-line">"ΔE₀₀"</span><Help term=Term::DeltaE/><span class="quiet-line">"CMC(2:1)"</span><Help term=Term::Cmc/></div>
        }
    });
    let near = view.difference.as_ref().is_some_and(|difference| difference.near);
    let unread = view.reading.as_ref().is_none_or(|reading| reading.since > 0);
    let to_target = view.recipe.map(|recipe| Route::Colour(ColourRoute::Target(recipe)).hash());
    let links = view.recipe.map(|recipe| {
        let cover = Route::Colour(ColourRoute::Cover(recipe)).hash();
        view! {
            <nav class="colour-links">
                <a class="button quiet" id="to-target" href=to_target.clone()>{i18n::colour_target_link()}</a>
                <a class="button quiet" id="to-cover" href=cover>{i18n::ink_cover()}</a>
            </nav>
        }
    });
    let read = view! {
        <div class="button-row">
            <button type="button" class="button with-icon" id="read-pot" class:primary=unread on:click=move |_| reads.set(true)><Icon name="drop"/>{if view.reading.is_some() { i18n::colour_read_again() } else { i18n::colour_read_pot() }}</button>
        </div>
    };
    let does = match &view.advice {
        Err(NoAdvice::NoTarget) => match to_target {
            Some(href) => view! {
                <section class="card">
                    <h2>{i18n::colour_no_target_title()}</h2>
                    <p>{i18n::colour_no_target_text()}</p>
                    <a class="button primary" href=href>{i18n::colour_set_target()}</a>
                </section>
            }.into_any(),
            None => view! { <p>{i18n::colour_no_recipe()}</p> }.into_any(),
        },
        // Two readings that are near enough say so, whether or not an addition can be computed.
        Err(NoAdvice::Uncharacterised(_)) if near => near_enough(view, stage, matches).into_any(),
        Err(NoAdvice::Uncharacterised(rows)) => view! {
            <section class="plain"><h2>{i18n::colour_add_title()}</h2>{missing(rows)}<p class="quiet-line">{i18n::colour_not_drawn_words()}</p></section>
        }.into_any(),
        Err(NoAdvice::Empty) => ().into_any(),
        Ok(advice) if near && advice.outcome == Outcome::AlreadyThere => near_enough(view, stage, matches).into_any(),
        Ok(advice) => {
            let (advice, on) = (advice.clone(), seen_on(view));
            view! { <Advice advice on picked/> }.into_any()
        }
    };
    view! {
        {(!patches.is_empty()).then(|| view! { <OnGarment garment patches/> })}
        {says}
        {read}
        {does}
        {links}
    }
    .into_any()
}

/// The message that the pot is near enough, and a button to record the match; not if it is recorded already, or
/// if the pot as it is now has not been read.
fn near_enough(view: &MatchView, stage: PotStage, matches: Callback<()>) -> AnyView {
    let to_pot = Route::Pot(PotRoute::Pot(view.pot)).hash();
    let does = if view.is_read && matches!(stage, PotStage::Weighing | PotStage::Mixed) {
        view! { <button type="button" class="button primary huge with-icon" id="matches" on:click=move |_| matches.run(())><Icon name="check"/>{i18n::pot_matches()}</button> }.into_any()
    } else {
        view! { <a class="button" href=to_pot>{i18n::colour_to_pot()}</a> }.into_any()
    };
    view! {
        <section class="verdict good">
            <h2><Icon name="check"/>" "{i18n::colour_near_title()}</h2>
            <p>{i18n::colour_near_text()}</p>
            {does}
        </section>
    }
    .into_any()
}

/// What the swatch is read on, as text.
fn seen_on(view: &MatchView) -> String {
    match view.on {
        ReadOn::Thick => i18n::colour_on_thick().to_owned(),
        ReadOn::Garment => i18n::colour_on_printed(u32::from(view.hits)),
    }
}

/// How the shown colour is known.
fn read_how(view: &MatchView) -> String {
    match &view.reading {
        None => i18n::colour_computed_recipe().to_owned(),
        Some(reading) if reading.since == 0 => {
            i18n::colour_read_at(i18n::colour_read_by(reading.reading.by), i18n::moment(reading.at))
        }
        Some(reading) => i18n::colour_computed_since(reading.since),
    }
}
