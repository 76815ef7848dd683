//! What to add to a pot: the advised addition large, smaller ones behind it, and what the advice is based on.

use crate::components::{Icon, Swatch};
use crate::i18n;
use lastpull_core::colour::correction::Outcome;
use lastpull_core::ink::{AddAdvice, AddWay};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// A chosen addition, and CIEDE2000 before it.
pub type Picked = Option<(AddWay, f64)>;

/// The advice. A tapped addition is written to `picked`.
#[component]
pub fn Advice(advice: AddAdvice, on: String, picked: RwSignal<Picked>) -> impl IntoView {
    let before = advice.before;
    let head = match advice.outcome {
        Outcome::GetsThere | Outcome::AlreadyThere => None,
        Outcome::OnlyCloser => Some((i18n::colour_only_closer(), i18n::colour_only_closer_text())),
        Outcome::NothingHelps if !advice.headroom.is_positive() => {
            Some((i18n::colour_nothing_helps(), i18n::colour_full()))
        }
        Outcome::NothingHelps => Some((i18n::colour_nothing_helps(), i18n::colour_nothing_helps_text())),
    };
    let way = move |way: &AddWay, first: bool| {
        let pick = way.clone();
        let swatches = way.rows.iter().map(|row| view! { <Swatch colour=row.colour/> }).collect_view();
        let after = if way.after.words.is_empty() {
            i18n::colour_then_same().to_owned()
        } else {
            i18n::colour_then(i18n::colour_words(&way.after.words))
        };
        let numbers = i18n::colour_before_after(i18n::colour_de(before), i18n::colour_de(way.after.de2000));
        view! {
            <button type="button" class="colour-way" class:first=first on:click=move |_| picked.set(Some((pick.clone(), before)))>
                <span class="colour-dots">{swatches}</span>
                <span class="row-words"><strong>{i18n::colour_add(way_words(way))}</strong><span>{numbers}" · "{after}</span></span>
                <Icon name="next"/>
            </button>
        }
    };
    let advised = advice.ways.last().map(|last| way(last, true));
    let others = advice.ways.iter().rev().skip(1).map(|other| way(other, false)).collect_view();
    let room = i18n::weight_fine(advice.headroom);
    view! {
        <section class="colour-advice">
            <h2>{i18n::colour_add_title()}</h2>
            {head.map(|(title, text)| view! { <div class="colour-honest"><strong>{title}</strong><p>{text}</p></div> })}
            {advised}
            {(!others.is_empty()).then(|| view! { <h3>{i18n::colour_or()}</h3>{others} })}
            <details class="colour-how">
                <summary>{i18n::colour_how()}</summary>
                <ul>
                    <li>{if advice.from_reading { i18n::colour_from_reading() } else { i18n::colour_from_recipe() }}</li>
                    {(advice.residual > 1.0).then(|| view! { <li>{i18n::colour_left(i18n::colour_de(advice.residual))}</li> })}
                    <li>{on}</li>
                    <li>{i18n::colour_origin(advice.origin)}</li>
                    {advice.by_photo.then(|| view! { <li>{i18n::colour_based_on_some()}</li> })}
                    <li>{if advice.headroom_known { i18n::colour_room(room) } else { i18n::colour_room_guess(room) }}" "{i18n::colour_offers(advice.candidates)}</li>
                </ul>
            </details>
        </section>
    }
}

/// The components to add, as text.
fn way_words(way: &AddWay) -> String {
    amounts_text(way.rows.iter().map(|row| (row.grams, row.name.as_str())))
}

/// Amounts and components in a sentence.
pub fn amounts_text<'a>(parts: impl Iterator<Item = (Grams, &'a str)>) -> String {
    let parts: Vec<String> = parts.map(|(grams, name)| i18n::colour_of(i18n::weight_fine(grams), name)).collect();
    match parts.split_last() {
        Some((last, rest)) if !rest.is_empty() => i18n::colour_add_and(rest.join(", "), last),
        Some((last, _)) => last.clone(),
        None => String::new(),
    }
}
