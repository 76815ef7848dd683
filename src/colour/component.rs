//! What drawdowns of a component showed, how good that is, and what to draw down next.

use super::{ColourPlace, OnGarment};
use crate::kept::{Memo, Signal};
use crate::live::{Drawn, live, nothing};
use crate::parts::{Icon, NotHere, Page};
use crate::place::{InkPlace, Place};
use crate::store::Store;
use crate::words;
use lastpull_core::colour::Lab;
use lastpull_core::ink::{ComponentColour, DrawdownLine, HowGood, SwatchSeen, component_colour};
use lastpull_core::journal::{Fact, Subject};
use lastpull_view::view;
use leptos::prelude::*;

/// The screen.
#[component(transparent)]
pub fn ComponentColourScreen(component: Subject) -> Drawn {
    let store = Store::from_context();
    let view = Memo::new(move |_| {
        store.shop.with(|shop| {
            let there = shop.ink.component(component).is_some_and(|component| !component.deleted);
            component_colour(shop, component).filter(|_| there)
        })
    });
    let Some(name) = view.with_untracked(|view| view.as_ref().map(|view| view.name.clone())) else {
        return view! { <NotHere/> };
    };
    let title = words::colour_component_title(name);
    view! {
        <Page title=Signal::derive(move || title.clone()) up=Place::Ink(InkPlace::Component(component)) class="colour-component">
            {live(move || view.with(|view| view.as_ref().map_or_else(nothing, |view| whole(store, view))))}
        </Page>
    }
}

fn whole(store: Store, view: &ComponentColour) -> Drawn {
    let (title, text) = words::colour_good(view.good);
    let icon = if view.good >= HowGood::Half { "check" } else { "info" };
    let is_good = view.good == HowGood::Good;
    let is_bad = view.good == HowGood::Disagrees;
    let new = Place::Colour(ColourPlace::NewDrawdown(view.id)).hash();
    let next = match &view.next {
        Some(next) => view! {
            <section class="card colour-next">
                <h2>{words::colour_next()}</h2>
                <p class="lead">{words::colour_next_words(next)}</p>
                <a class="button primary" id="next-drawdown" href=new>{words::colour_next_do()}</a>
            </section>
        },
        None => {
            view! { <div class="button-row"><a class="button with-icon" href=new><Icon name="plus"/>{words::colour_another()}</a></div> }
        }
    };
    let looks = view.looks.map(|[white, black]| {
        let backing = |seen: &SwatchSeen, look: Lab, name: &str| {
            view! { <OnGarment garment=seen.lab() patches=vec![(look, name.to_owned())] quiet=true/> }
        };
        view! {
            <div class="colour-backings">
                {backing(&SwatchSeen::CHART_WHITE, white, words::colour_over_white())}
                {backing(&SwatchSeen::CHART_BLACK, black, words::colour_over_black())}
            </div>
        }
    });
    let learned = if view.strength.lessons > 0 {
        let times = words::number(view.strength.times, 2);
        words::colour_learned(times, words::colour_lessons(view.strength.lessons))
    } else {
        words::colour_not_learned().to_owned()
    };
    let is_pigment = view.kind == lastpull_core::ink::ComponentKind::Pigment;
    let lines: Vec<Drawn> = view.drawdowns.iter().map(|drawdown| line(store, drawdown)).collect();
    let worst = view.worst.map(|worst| words::colour_worst(words::colour_de(worst)));
    view! {
        <section class="verdict" class:good=is_good class:bad=is_bad>
            <h2><Icon name=icon/>" "{title}</h2>
            <p>{text}" "{worst}</p>
        </section>
        {next}
        {looks}
        {view.origin.map(|origin| view! { <p class="quiet-line">{words::colour_origin(origin)}</p> })}
        {is_pigment.then(|| view! { <p class="quiet-line">{learned}</p> })}
        {(!lines.is_empty()).then(|| view! { <section class="plain"><h2>{words::colour_drawdowns()}</h2><p class="quiet-line">{words::colour_lines_legend()}</p><ul class="colour-lines">{lines}</ul></section> })}
    }
}

/// A drawdown: as seen beside as worked out.
fn line(store: Store, line: &DrawdownLine) -> Drawn {
    let event = line.event;
    let off = line
        .off
        .map_or_else(|| words::colour_line_unused().to_owned(), |off| words::colour_line_off(words::colour_de(off)));
    let said = line.said.unwrap_or(line.seen);
    let how = match &line.made.seen {
        SwatchSeen::Colour(reading) => words::colour_read_by(reading.by),
        SwatchSeen::Curve(_) | SwatchSeen::Flat(_) => words::colour_line_curve(),
    };
    let label = format!("{}: {}", words::delete(), words::colour_line(line));
    let delete = move |_| {
        store.record(event, Fact::Deleted);
        store.tell_with_undo(words::colour_drawn_deleted(), vec![(event, Fact::Restored)]);
    };
    view! {
        <li>
            <span class="colour-two" aria-hidden="true">
                <span style:background-color=line.seen.to_colour().to_string()></span>
                <span style:background-color=said.to_colour().to_string()></span>
            </span>
            <span class="row-words">
                <strong>{words::colour_line(line)}</strong>
                <small class="muted">{how}" · "{off}" · "{words::moment(line.at)}</small>
            </span>
            <button type="button" class="icon-button" aria-label=label on:click=delete><Icon name="bin"/></button>
        </li>
    }
}
