//! Once there is something to lose: putting the app on the home screen, and having the data kept.

use crate::more::InstallHint;
use crate::parts::Icon;
use crate::store::Store;
use crate::words;
use leptos::prelude::*;

/// The hint, until it is followed or put away. Not in the demo, and not while a run is on the press.
#[component]
pub fn KeepHint() -> impl IntoView {
    let store = Store::from_context();
    let wanted = Memo::new(move |_| {
        let at_stake = store.shop.with(|shop| shop.facts() > 20);
        let open = store.settings.with(|settings| !settings.install_hint_done && !settings.demo);
        let kept = store.kept.with(|kept| kept.promised != Some(false));
        at_stake && open && !kept && !store.is_printing()
    });
    view! {
        {move || wanted.get().then(|| view! {
                <section class="card" id="keep-hint">
                    <h2><Icon name="box"/>{words::keep_title()}</h2>
                    <p>{words::keep_not_promised()}</p>
                    <InstallHint/>
                    <div class="button-row">
                        <button type="button" class="button primary" on:click=move |_| store.ask_keeping()>{words::keep_ask()}</button>
                        <button type="button" class="button quiet" on:click=move |_| store.set(|settings| settings.install_hint_done = true)>{words::keep_later()}</button>
                    </div>
                </section>
        })}
    }
}
