//! What drawdowns of a component showed, how reliable that is, and what to draw down next.

use super::drawdown_row::{Line, Shown};
use super::on_garment::OnGarment;
use crate::components::{Icon, NotHere, Page};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::route::{ColourRoute, InkRoute, Route};
use crate::store::Store;
use lastpull_core::colour::Lab;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{ColourQuality, ComponentColour, DrawdownLine, SwatchMeasurement, component_colour};
use leptos::prelude::*;

/// The page.
#[component]
pub fn ComponentColourPage(component: Subject) -> impl IntoView {
    let store = Store::from_context();
    let view = Memo::new(move |_| {
        store.shop.with(|shop| {
            let there = shop.ink.component(component).is_some_and(|component| !component.deleted);
            component_colour(shop, component).filter(|_| there)
        })
    });
    let Some(name) = view.with_untracked(|view| view.as_ref().map(|view| view.name.clone())) else {
        return view! { <NotHere/> }.into_any();
    };
    let shown = RwSignal::new(None::<DrawdownLine>);
    let title = i18n::colour_component_title(name);
    view! {
        <Page title=Signal::derive(move || title.clone()) up=Route::Ink(InkRoute::Component(component)) aside=help(Term::Drawdown) class="colour-component">
            {move || view.with(|view| view.as_ref().map(|view| whole(view, shown)))}
            {move || shown.get().map(|line| view! { <Shown line on_close=Callback::new(move |()| shown.set(None))/> })}
        </Page>
    }.into_any()
}

fn whole(view: &ComponentColour, shown: RwSignal<Option<DrawdownLine>>) -> AnyView {
    let (title, text) = i18n::colour_good(view.quality);
    let icon = if view.quality >= ColourQuality::AbsorptionOnly { "check" } else { "info" };
    let is_good = view.quality == ColourQuality::Good;
    let is_bad = view.quality == ColourQuality::Contradictory;
    let new = Route::Colour(ColourRoute::NewDrawdown(view.id)).hash();
    let next = match &view.next {
        Some(next) => view! {
            <section class="card colour-next">
                <h2>{i18n::colour_next()}</h2>
                <p class="lead">{i18n::colour_next_words(next)}</p>
                <a class="button primary" id="next-drawdown" href=new>{i18n::colour_next_do()}</a>
            </section>
        }.into_any(),
        None => {
            view! { <div class="button-row"><a class="button with-icon" href=new><Icon name="plus"/>{i18n::colour_another()}</a></div> }.into_any()
        }
    };
    let looks = view.one_film_looks.map(|[white, black]| {
        let backing = |seen: &SwatchMeasurement, look: Lab, name: &str| {
            view! { <OnGarment garment=seen.lab() patches=vec![(look, name.to_owned())] quiet=true/> }
        };
        view! {
            <div class="colour-backings">
                {backing(&SwatchMeasurement::CHART_WHITE, white, i18n::colour_over_white())}
                {backing(&SwatchMeasurement::CHART_BLACK, black, i18n::colour_over_black())}
            </div>
        }
    });
    let learned = if view.strength.samples > 0 {
        let times = i18n::number(view.strength.factor, 2);
        i18n::colour_learned(times, i18n::colour_correction_samples(view.strength.samples))
    } else {
        i18n::colour_not_learned().to_owned()
    };
    let is_pigment = view.kind == lastpull_core::ink::ComponentKind::Pigment;
    let lines = view.drawdowns.iter().map(|line| view! { <Line line=line.clone() shown/> }).collect_view();
    let provenance = i18n::colour_based_on_on(view.provenance)
        .map(|words| view! { <p class="colour-rests"><Icon name="camera"/><span>{words}</span></p> });
    let worst = view.worst.map(|worst| i18n::colour_worst(i18n::colour_de(worst)));
    view! {
        <section class="verdict" class:good=is_good class:bad=is_bad>
            <h2><Icon name=icon/>" "{title}</h2>
            <p>{text}" "{worst}</p>
            {provenance}
        </section>
        {next}
        {looks}
        {view.origin.map(|origin| view! { <p class="quiet-line">{i18n::colour_origin(origin)}</p> })}
        {is_pigment.then(|| view! { <p class="quiet-line">{learned}</p> })}
        {(!lines.is_empty()).then(|| view! { <section class="plain"><h2>{i18n::colour_drawdowns()}</h2><p class="quiet-line">{i18n::colour_lines_legend()}</p><ul class="colour-lines">{lines}</ul></section> })}
    }.into_any()
}
