//! What fabrics bear: each limit with its origin, and other published figures beside it.

use super::HeatPlace;
use crate::parts::{Icon, Page};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{FabricLimit, LimitKind, LimitOrigin, fabric_limits};
use lastpull_core::job::Fabric;
use leptos::prelude::*;

/// The list, fabric by fabric.
#[component]
pub fn LimitsScreen() -> impl IntoView {
    let store = Store::from_context();
    let limits = Memo::new(move |_| store.shop.with(fabric_limits));
    view! {
        <Page title=Signal::derive(|| words::limits_title().to_owned()) up=Place::Heat(HeatPlace::Home) class="heat">
            <p>{words::limits_text()}</p>
            {move || limits.with(|limits| {
                let of = |fabric: Fabric| {
                    let rows = limits.iter().filter(|limit| limit.fabric == fabric).map(row).collect_view();
                    view! { <section class="heat-fabric"><h2>{words::fabric(fabric)}</h2><ul class="menu">{rows}</ul></section> }
                };
                // What fears heat most stands first.
                let mut fabrics = Fabric::ALL;
                fabrics.sort_by_key(|fabric| !fabric.fears_heat());
                fabrics.map(of).into_iter().collect::<Vec<_>>()
            })}
            <p class="caution"><Icon name="heat"/>{words::limit_caution()}</p>
        </Page>
    }
}

/// The number of a limit in the hash.
pub fn number_of(fabric: Fabric, kind: LimitKind) -> u8 {
    let place = Fabric::ALL.iter().position(|other| *other == fabric).unwrap_or_default();
    (place * 2 + usize::from(kind == LimitKind::Scorch)) as u8
}

/// The limit of a number in the hash.
pub fn of_number(number: u8) -> Option<(Fabric, LimitKind)> {
    let fabric = *Fabric::ALL.get(usize::from(number / 2))?;
    Some((fabric, if number.is_multiple_of(2) { LimitKind::DyeMigration } else { LimitKind::Scorch }))
}

/// What else is published, and what the shop's own stands in place of.
pub fn beside(limit: &FabricLimit) -> Vec<String> {
    let instead = limit.instead_of.map(|(temperature, origin)| {
        words::limit_instead(words::temperature(temperature), words::limit_origin(origin))
    });
    let also = limit
        .also_published
        .map(|(temperature, origin)| words::limit_also(words::temperature(temperature), words::limit_origin(origin)));
    instead.into_iter().chain(also).collect()
}

fn row(limit: &FabricLimit) -> AnyView {
    let own = limit.origin == LimitOrigin::Shop;
    view! {
        <li>
            <a class="menu-row heat-limit" data-own=own.to_string() href=HeatPlace::Limit(number_of(limit.fabric, limit.kind)).hash()>
                <span class="row-words">
                    <span>{words::limit_kind(limit.kind)}</span>
                    <strong>{words::limit_from(words::temperature(limit.temperature))}</strong>
                    <small>{words::limit_origin(limit.origin)}{(!limit.note.is_empty()).then(|| format!(": {}", limit.note))}</small>
                    {beside(limit).into_iter().map(|line| view! { <small class="muted">{line}</small> }).collect::<Vec<_>>()}
                    {limit.is_raised().then(|| view! { <span class="badge tight"><Icon name="alert"/>{words::limit_raised()}</span> })}
                </span>
                <Icon name="edit"/>
            </a>
        </li>
    }.into_any()
}
