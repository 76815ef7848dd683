//! A suggested batch size, and what it is based on.

use crate::components::Icon;
use crate::i18n;
use lastpull_core::ink::{SCREEN_CHARGE, SuggestedBatch};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// The size, and the reason for it.
pub fn suggestion(batch: &SuggestedBatch, step: Grams) -> AnyView {
    let grams = |grams: Grams| i18n::pot_weight(grams, step);
    let provenance = match &batch.experience {
        None => {
            let split = batch.split(step);
            i18n::pot_by_formula(grams(split.printed), grams(split.extra))
        }
        Some(learned) => {
            let weighings = i18n::pot_weighings(learned.weighings);
            let ratio = i18n::number(learned.ratio, 2);
            i18n::pot_by_experience(weighings, i18n::pot_alike(learned.similarity), ratio)
        }
    };
    let spread = batch.experience.filter(|learned| learned.weighings > 1).map(|learned| {
        let end = |ratio: f64| i18n::number(ratio, 2);
        i18n::pot_between(end(learned.least), end(learned.most))
    });
    let charge = if batch.is_charge() {
        Some(i18n::pot_screen_decides(grams(batch.used), grams(batch.grams)))
    } else {
        // What similar runs really used includes what the last pieces needed.
        batch.experience.is_none().then(|| i18n::pot_garments_decide(grams(SCREEN_CHARGE)))
    };
    view! {
        <p class="pot-suggested"><strong>{grams(batch.grams)}</strong>" "{i18n::pot_for_pieces(i18n::pieces(batch.pieces))}</p>
        <p class="muted">{provenance}{spread.map(|spread| format!(" {spread}"))}</p>
        {charge.map(|charge| view! { <p class="caution" id="charge"><Icon name="info"/>{charge}</p> })}
    }.into_any()
}
