//! Choosing the run to print.

use super::run::RunPage;
use crate::components::{Empty, GarmentChip, Page};
use crate::i18n;
use crate::pages::shared::Waits;
use crate::platform::history;
use crate::route::{JobsRoute, Route};
use crate::store::Store;
use lastpull_core::plan::{only_on_press, rail};
use leptos::prelude::*;

/// The run on the press, or the runs waiting for it.
#[component]
pub fn PickRunPage() -> impl IntoView {
    let store = Store::from_context();
    if let Some(id) = store.shop.with_untracked(only_on_press) {
        history::rename(&Route::Run(id).hash());
        return view! { <RunPage id/> }.into_any();
    }
    let runs = store.every_minute(move |shop, clock| rail(shop, clock).runs);
    view! {
        <Page title=Signal::derive(|| i18n::nav_press().to_owned()) class="press-pick">
            {move || if runs.with(Vec::is_empty) {
                view! {
                    <Empty icon="press" title=i18n::press_empty_title() text=i18n::press_empty_text()>
                        <a class="button primary" href=JobsRoute::List.hash()>{i18n::all_jobs()}</a>
                    </Empty>
                }.into_any()
            } else {
                view! {
                    <p class="lead">{i18n::press_pick()}</p>
                    <ul class="job-rows">
                        {runs.get().into_iter().map(|run| view! {
                            <li>
                                <a class="job-row" href=Route::Run(run.id).hash()>
                                    <GarmentChip garment=run.garment_colour ink=run.ink_colour/>
                                    <span class="row-words">
                                        <strong>{run.title.clone()}</strong>
                                        <span>{i18n::location(run.location)}" · "{run.ink.clone()}</span>
                                        <span class="muted">{run.garment.clone()}", "{i18n::fabric(run.fabric)}</span>
                                        <Waits run=run.clone()/>
                                    </span>
                                    <span class="row-count">
                                        {i18n::of_pieces(run.good, run.planned)}
                                        {run.on_press.then(|| view! { <span class="badge press">{i18n::on_press()}</span> })}
                                    </span>
                                </a>
                            </li>
                        }).collect_view()}
                    </ul>
                }.into_any()
            }}
        </Page>
    }
    .into_any()
}
