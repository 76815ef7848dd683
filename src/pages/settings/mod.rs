//! The menu: settings of device and shop, backup, storage.

mod backup;
mod deleted;
mod device;
mod import;
mod menu;
mod shop;
mod storage;
mod work_progress;

pub use storage::InstallHint;

use crate::i18n;
use crate::pages::help::GlossaryPage;
use crate::route::{HeatRoute, MoreRoute, Route};
use leptos::prelude::*;
use menu::MenuEntry;

/// Draws the page of a route.
pub fn page(route: MoreRoute) -> AnyView {
    match route {
        MoreRoute::Menu => view! { <menu::MenuPage entries=menu_entries()/> }.into_any(),
        MoreRoute::Settings => view! { <device::DeviceSettingsPage/> }.into_any(),
        MoreRoute::Backup => view! { <backup::BackupPage/> }.into_any(),
        MoreRoute::Deleted => view! { <deleted::DeletedPage/> }.into_any(),
        MoreRoute::Storage => view! { <storage::StoragePage/> }.into_any(),
        MoreRoute::Glossary => view! { <GlossaryPage at=None/> }.into_any(),
        MoreRoute::GlossaryTerm(term) => view! { <GlossaryPage at=term/> }.into_any(),
    }
}

/// What the menu leads to, from the top.
fn menu_entries() -> Vec<MenuEntry> {
    let entry = |route, icon, title, text| MenuEntry { route, icon, title, text };
    vec![
        entry(Route::Heat(HeatRoute::Home), "heat", i18n::heat_title(), i18n::heat_text()),
        entry(Route::More(MoreRoute::Settings), "gear", i18n::settings_title(), i18n::settings_text()),
        entry(Route::More(MoreRoute::Backup), "out", i18n::backup_title(), i18n::backup_text()),
        entry(Route::More(MoreRoute::Deleted), "bin", i18n::deleted_title(), i18n::deleted_text()),
        entry(Route::More(MoreRoute::Storage), "box", i18n::storage_title(), i18n::storage_text()),
        entry(Route::More(MoreRoute::Glossary), "info", i18n::glossary_title(), i18n::glossary_text()),
    ]
}
