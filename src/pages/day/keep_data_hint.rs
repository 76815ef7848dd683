//! Hint to install the app and to have the data kept, once there is data to lose.

use crate::components::Icon;
use crate::i18n;
use crate::pages::settings::InstallHint;
use crate::store::Store;
use leptos::prelude::*;

/// The hint, until it is followed or dismissed. Not in the demo, and not while a run is on the press.
#[component]
pub fn KeepDataHint() -> impl IntoView {
    let store = Store::from_context();
    let wanted = Memo::new(move |_| {
        let at_stake = store.shop.with(|shop| shop.fact_count() > 20);
        let open = store.settings.with(|settings| !settings.install_hint_done && !settings.demo);
        let kept = store.persistence.with(|persistence| persistence.persisted != Some(false));
        at_stake && open && !kept && !store.is_printing()
    });
    view! {
        {move || wanted.get().then(|| view! {
                <section class="card" id="keep-hint">
                    <h2><Icon name="box"/>{i18n::persistence_title()}</h2>
                    <p>{i18n::persistence_not_promised()}</p>
                    <InstallHint/>
                    <div class="button-row">
                        <button type="button" class="button primary" on:click=move |_| store.request_persistence()>{i18n::persistence_ask()}</button>
                        <button type="button" class="button quiet" on:click=move |_| store.update_settings(|settings| settings.install_hint_done = true)>{i18n::persistence_later()}</button>
                    </div>
                </section>
        })}
    }
}
