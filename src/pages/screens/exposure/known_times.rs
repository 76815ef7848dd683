//! The known exposure times.

use super::answer::found_by;
use crate::components::{Icon, long_rows};
use crate::i18n;
use crate::route::ExposureRoute;
use crate::store::Store;
use lastpull_core::screen::{ExposureRow, exposure_list};
use leptos::prelude::*;

/// All known times, latest first; each links to the page where it is corrected or deleted.
#[component]
pub fn KnownTimes() -> impl IntoView {
    let store = Store::from_context();
    let rows = Memo::new(move |_| store.shop.with(exposure_list));
    move || {
        let rows = rows.get();
        (!rows.is_empty()).then(|| {
            view! {
                <details class="stencil-fold" id="known">
                    <summary>{i18n::exposure_list_title(rows.len())}</summary>
                    {long_rows("known", "stencil-list", rows, line)}
                </details>
            }
        })
    }
}

fn line(row: &ExposureRow) -> AnyView {
    let lamp = if row.lamp.is_empty() { i18n::exposure_gone().to_owned() } else { row.lamp.clone() };
    view! {
        <a class="stencil-row" href=ExposureRoute::Test(row.id).hash()>
            <span class="row-words">
                <strong>{i18n::exposure_seconds(row.time)}</strong>
                <span>{format!("{} · {}", row.emulsion, i18n::cloth(&row.cloth))}</span>
                <span class="muted">{format!("{lamp} · {}", found_by(row))}</span>
                {(!row.newest).then(|| view! { <span class="muted">{i18n::exposure_newer()}</span> })}
                {(!row.tested).then(|| view! { <span><span class="badge tight"><Icon name="alert"/>{i18n::exposure_not_tested()}</span></span> })}
            </span>
            <Icon name="next"/>
        </a>
    }.into_any()
}
