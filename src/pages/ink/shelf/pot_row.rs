//! A pot in a list.

use crate::components::{Icon, Swatch};
use crate::i18n;
use crate::route::{PotRoute, Route};
use lastpull_core::ink::{PotLine, PotStage};
use leptos::prelude::*;

/// Inside a row: a pot and its stage.
pub(super) fn pot_row(pot: &PotLine) -> AnyView {
    let look = match pot.stage {
        PotStage::Weighing => "press",
        PotStage::Matched | PotStage::Approved => "good",
        PotStage::Mixed | PotStage::Empty | PotStage::Closed => "",
    };
    view! {
        <a class="menu-row ink-row" href=Route::Pot(PotRoute::Pot(pot.id)).hash()>
            <Swatch colour=pot.colour/>
            <span class="row-words">
                <strong>{pot.name.clone()}</strong>
                <span class="muted">{i18n::ink_holds(&pot.holds)}</span>
            </span>
            <span class="ink-end">
                <strong>{i18n::weight(pot.grams)}</strong>
                <span class=format!("badge {look}")>{(look == "good").then(|| view! { <Icon name="check"/> })}{i18n::pot_stage(pot.stage)}</span>
            </span>
        </a>
    }.into_any()
}
