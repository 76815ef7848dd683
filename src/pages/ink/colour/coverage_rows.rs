//! The ways to print an ink, each with its expected look and its cost.

use crate::components::{Choice, Icon};
use crate::i18n::{self, Term};
use crate::pages::help::Help;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{CoverRow, CoverView, CoverageQuery};
use leptos::prelude::*;

/// The answer first, then each way to print.
pub fn rows(view: &CoverView, ask: &CoverageQuery, white: RwSignal<Option<Subject>>) -> AnyView {
    let pieces = i18n::pieces(ask.pieces);
    let cheapest = view.rows.first();
    let answer = match (
        view.cheapest.and_then(|place| view.rows.get(place)),
        view.nearest.and_then(|place| view.rows.get(place)),
    ) {
        (Some(row), _) => {
            let minutes = i18n::colour_cover_minutes(i18n::colour_minutes(row.minutes), &pieces);
            let more = cheapest.filter(|first| row.minutes > first.minutes).map(|first| {
                let by = i18n::colour_minutes(row.minutes - first.minutes);
                i18n::colour_cover_more(by, i18n::colour_short_way(first.look.way))
            });
            view! {
                <section class="verdict good" id="cover-answer">
                    <h2><Icon name="check"/>" "{i18n::colour_cover_enough(i18n::colour_short_way(row.look.way))}</h2>
                    <p>{minutes}{more.map(|more| format!(" · {more}"))}</p>
                </section>
            }
            .into_any()
        }
        (None, Some(row)) => view! {
            <section class="verdict tight" id="cover-answer">
                <h2><Icon name="alert"/>" "{i18n::colour_cover_none()}</h2>
                <p>{i18n::colour_cover_nearest(i18n::colour_way(row.look.way))}</p>
            </section>
        }
        .into_any(),
        _ => ().into_any(),
    };
    let cloth = ask.garment.to_colour().to_string();
    let wanted = view.target.to_colour().to_string();
    let row = |(place, row): (usize, &CoverRow)| {
        let best = view.cheapest == Some(place);
        let (icon, word) =
            if row.covers { ("check", i18n::colour_covers()) } else { ("cross", i18n::colour_covers_not()) };
        let percent = i18n::number(row.look.contrast_ratio * 100.0, 0);
        view! {
            <li class="colour-cover-row" class:best=best>
                <span class="colour-cover-patch" aria-hidden="true" style:background-color=cloth.clone()>
                    <span style:background-color=wanted.clone()></span>
                    <span style:background-color=row.look.lab.to_colour().to_string()></span>
                </span>
                <span class="row-words">
                    <strong>{i18n::colour_way(row.look.way)}</strong>
                    <span class="colour-covers" class:good=row.covers><Icon name=icon/>{word}" · "{i18n::colour_minutes(row.minutes)}</span>
                    <small class="muted">{i18n::colour_cover_off(i18n::colour_de(row.look.off))}" · "{i18n::colour_cover_contrast(percent)}</small>
                </span>
            </li>
        }
    };
    let list = view.rows.iter().enumerate().map(row).collect_view();
    let current = view.underbase.as_ref().map(|(id, _)| *id);
    let under = match (&view.underbase, view.whites.len()) {
        (None, _) => view! { <p class="quiet-line">{i18n::colour_cover_no_white()}</p> }.into_any(),
        (Some((_, name)), 0 | 1) => view! { <p class="quiet-line">{i18n::colour_cover_white(name)}</p> }.into_any(),
        (Some(_), _) => {
            let whites: Vec<(Option<Subject>, String)> =
                view.whites.iter().map(|(id, name)| (Some(*id), name.clone())).collect();
            view! { <Choice label=i18n::colour_cover_which() name="white" options=whites value=Signal::derive(move || white.get().or(current)) on_pick=Callback::new(move |id| white.set(id))/> }.into_any()
        }
    };
    view! {
        {answer}
        <section class="plain">
            <h2>{i18n::colour_cover_ways()}</h2>
            <p class="quiet-line">{i18n::colour_cover_legend()}</p>
            <ul class="colour-cover-rows">{list}</ul>
            {if view.is_target {
                view! { <div class="help-row"><p class="quiet-line">{i18n::colour_cover_strike()}</p><Help term=Term::StrikeOff/></div> }.into_any()
            } else {
                view! { <p class="quiet-line">{i18n::colour_cover_in_pot()}</p> }.into_any()
            }}
            {under}
            <div class="help-row">
                <p class="quiet-line">{i18n::colour_cover_contrast_note()}" "{i18n::colour_origin(view.origin)}</p>
                <Help term=Term::ContrastRatio/>
            </div>
            {view.by_photo.then(|| view! { <p class="quiet-line">{i18n::colour_based_on_some()}</p> })}
        </section>
    }.into_any()
}
