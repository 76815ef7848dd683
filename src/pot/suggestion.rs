//! A suggested batch, and what it rests on.

use crate::words;
use lastpull_core::ink::SuggestedBatch;
use lastpull_core::quantity::Grams;
use leptos::prelude::*;

/// How much, and why so much.
pub fn suggestion(batch: &SuggestedBatch, step: Grams) -> AnyView {
    let grams = |grams: Grams| words::pot_weight(grams, step);
    let rests_on = match &batch.experience {
        None => words::pot_by_formula(grams(batch.printed), grams(batch.loss)),
        Some(learned) => {
            let weighings = words::pot_weighings(learned.weighings);
            let ratio = words::number(learned.ratio, 2);
            words::pot_by_experience(weighings, words::pot_alike(learned.alike), ratio)
        }
    };
    let spread = batch.experience.filter(|learned| learned.weighings > 1).map(|learned| {
        let end = |ratio: f64| words::number(ratio, 2);
        words::pot_between(end(learned.least), end(learned.most))
    });
    view! {
        <p class="pot-suggested"><strong>{grams(batch.grams)}</strong>" "{words::pot_for_pieces(words::pieces(batch.pieces))}</p>
        <p class="muted">{rests_on}{spread.map(|spread| format!(" {spread}"))}</p>
    }.into_any()
}
