//! The climate in one line on the day's page, while it requires care.

use crate::components::Icon;
use crate::i18n;
use crate::route::HeatRoute;
use crate::store::Store;
use lastpull_core::heat::{HeatLevel, climate_summary};
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// The line. Renders nothing if there is nothing to warn of.
#[component]
pub fn ClimateStrip() -> impl IntoView {
    let store = Store::from_context();
    let brief = store.every_minute(|shop, clock| {
        climate_summary(shop, clock.now.floor(Millis::from_minutes(1)) + Millis::from_ms(59_999))
    });
    move || {
        brief.get().map(|brief| {
            let tone = if brief.level == HeatLevel::Moderate { "tight" } else { "bad" };
            let age = i18n::minutes_ago(brief.age.whole_minutes());
            view! {
                <a class=format!("heat-strip {tone}") id="room-strip" href=HeatRoute::Climate.hash()>
                    <Icon name="heat"/>
                    <span>
                        <strong>{i18n::heat_level(brief.level)}</strong>
                        <small>{i18n::heat_index(brief.index)}" · "{age}{brief.old.then(|| format!(" · {}", i18n::climate_read_again()))}</small>
                    </span>
                    <Icon name="next"/>
                </a>
            }
        })
    }
}
