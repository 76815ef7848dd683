//! Heat limits of fabrics: each with its origin and other published figures.

use crate::components::{Icon, Page};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::heat::{FabricLimit, LimitKind, LimitOrigin, fabric_limits};
use lastpull_core::job::Fabric;
use leptos::prelude::*;

/// The list, fabric by fabric.
#[component]
pub fn LimitsPage() -> impl IntoView {
    let store = Store::from_context();
    let limits = Memo::new(move |_| store.shop.with(fabric_limits));
    view! {
        <Page title=Signal::derive(|| i18n::limits_title().to_owned()) up=Route::Heat(HeatRoute::Home) aside=help(Term::DyeMigration) class="heat">
            <p>{i18n::limits_text()}</p>
            {move || limits.with(|limits| {
                let of = |fabric: Fabric| {
                    let rows = limits.iter().filter(|limit| limit.fabric == fabric).map(row).collect_view();
                    view! { <section class="heat-fabric"><h2>{i18n::fabric(fabric)}</h2><ul class="menu">{rows}</ul></section> }
                };
                // The most heat-sensitive fabrics first.
                let mut fabrics = Fabric::ALL;
                fabrics.sort_by_key(|fabric| !fabric.is_heat_sensitive());
                fabrics.map(of).into_iter().collect::<Vec<_>>()
            })}
            <p class="caution"><Icon name="heat"/>{i18n::limit_caution()}</p>
        </Page>
    }
}

/// The number of a limit in the hash.
pub fn number_of(fabric: Fabric, kind: LimitKind) -> u8 {
    let place = Fabric::ALL.iter().position(|other| *other == fabric).unwrap_or_default();
    (place * 2 + usize::from(kind == LimitKind::Scorch)) as u8
}

/// The limit with this number in the hash; `None` if there is none.
pub fn of_number(number: u8) -> Option<(Fabric, LimitKind)> {
    let fabric = *Fabric::ALL.get(usize::from(number / 2))?;
    Some((fabric, if number.is_multiple_of(2) { LimitKind::DyeMigration } else { LimitKind::Scorch }))
}

/// Other published figures, and what the shop's own limit replaces.
pub fn beside(limit: &FabricLimit) -> Vec<String> {
    let instead = limit
        .instead_of
        .map(|(temperature, origin)| i18n::limit_instead(i18n::temperature(temperature), i18n::limit_origin(origin)));
    let also = limit
        .also_published
        .map(|(temperature, origin)| i18n::limit_also(i18n::temperature(temperature), i18n::limit_origin(origin)));
    instead.into_iter().chain(also).collect()
}

fn row(limit: &FabricLimit) -> AnyView {
    let own = limit.origin == LimitOrigin::Shop;
    view! {
        <li>
            <a class="menu-row heat-limit" data-own=own.to_string() href=HeatRoute::Limit(number_of(limit.fabric, limit.kind)).hash()>
                <span class="row-words">
                    <span>{i18n::limit_kind(limit.kind)}</span>
                    <strong>{i18n::limit_from(i18n::temperature(limit.temperature))}</strong>
                    <small>{i18n::limit_origin(limit.origin)}{(!limit.note.is_empty()).then(|| format!(": {}", limit.note))}</small>
                    {beside(limit).into_iter().map(|line| view! { <small class="muted">{line}</small> }).collect::<Vec<_>>()}
                    {limit.is_raised().then(|| view! { <span class="badge tight"><Icon name="alert"/>{i18n::limit_raised()}</span> })}
                </span>
                <Icon name="edit"/>
            </a>
        </li>
    }.into_any()
}
