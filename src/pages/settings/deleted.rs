//! What was deleted, and restoring it.

use crate::components::{Icon, Page, long_rows};
use crate::i18n;
use crate::route::{MoreRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::shop::{DeletedKind, DeletedThing, Shop};
use leptos::prelude::*;

/// The page.
#[component]
pub fn DeletedPage() -> impl IntoView {
    let store = Store::from_context();
    let things = Memo::new(move |_| store.shop.with(Shop::recently_deleted));
    view! {
        <Page title=Signal::derive(|| i18n::deleted_title().to_owned()) up=Route::More(MoreRoute::Menu) class="deleted">
            <p class="quiet-line">{i18n::deleted_hint()}</p>
            {move || if things.with(Vec::is_empty) {
                view! { <p id="nothing-deleted">{i18n::deleted_none()}</p> }.into_any()
            } else {
                long_rows("deleted", "deleted-list", things.get(), move |thing| row(store, thing.clone()))
            }}
        </Page>
    }
}

fn row(store: Store, thing: DeletedThing) -> AnyView {
    let kind = kind_text(thing.kind);
    let name = if thing.name.is_empty() { kind.clone() } else { thing.name.clone() };
    let about: Vec<String> = [kind, thing.of].into_iter().filter(|part| !part.is_empty() && *part != name).collect();
    let (restores, said) = (thing.restores, name.clone());
    let restore = move |_| {
        // Undo deletes only the thing itself again, not what it belongs to.
        let undo = restores.last().map(|id| (*id, Fact::Deleted)).into_iter().collect();
        store.record_with_undo(
            restores.iter().map(|id| (*id, Fact::Restored)).collect(),
            undo,
            i18n::deleted_restored(&said),
        );
    };
    view! {
        <div class="card deleted-row" data-deleted=thing.id.to_string()>
            <div class="row-words">
                <strong>{name.clone()}</strong>
                <span class="muted">{about.join(" · ")}</span>
                <span class="muted">{i18n::deleted_when(i18n::moment(thing.at))}</span>
            </div>
            <button type="button" class="button with-icon" aria-label=i18n::deleted_restore_of(&name) on:click=restore>
                <Icon name="undo"/>{i18n::deleted_restore()}
            </button>
        </div>
    }
    .into_any()
}

fn kind_text(kind: DeletedKind) -> String {
    match kind {
        DeletedKind::Job => i18n::deleted_job().into(),
        DeletedKind::Lot => i18n::deleted_lot().into(),
        DeletedKind::Run(location) => i18n::deleted_run(i18n::location(location)),
        DeletedKind::Screen => i18n::deleted_screen().into(),
        DeletedKind::Failure => i18n::deleted_failure().into(),
        DeletedKind::Lamp => i18n::deleted_lamp().into(),
        DeletedKind::Emulsion => i18n::deleted_emulsion().into(),
        DeletedKind::Exposure => i18n::deleted_exposure().into(),
        DeletedKind::BathCharge => i18n::deleted_bath_charge().into(),
        DeletedKind::BathBatch => i18n::deleted_bath_batch().into(),
        DeletedKind::Heater => i18n::deleted_heater().into(),
        DeletedKind::InkSheet => i18n::deleted_ink_sheet().into(),
        DeletedKind::CureTest => i18n::deleted_cure_test().into(),
        DeletedKind::Trial => i18n::deleted_trial().into(),
        DeletedKind::Settling => i18n::deleted_settling().into(),
        DeletedKind::ClimateReading => i18n::deleted_climate().into(),
        DeletedKind::Component => i18n::deleted_component().into(),
        DeletedKind::Recipe => i18n::deleted_recipe().into(),
        DeletedKind::Revision(number) => i18n::deleted_revision(number),
        DeletedKind::Pot => i18n::deleted_pot().into(),
    }
}
