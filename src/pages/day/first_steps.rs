//! The first steps of a new shop: a card in a chunk, until a piece was counted or the steps are skipped.

use crate::components::Icon;
use crate::i18n;
use crate::lazy::{ChunkLoadError, chunk};
use crate::platform::{spawn_local, stylesheet};
use crate::route::{JobsRoute, MoreRoute, Route};
use crate::store::Store;
use lastpull_core::plan::{FirstStep, first_step};
use leptos::prelude::*;

/// Draws the card while there is a next step.
type Draw = fn(Store, FirstStep) -> AnyView;

chunk! {
    jobs_and_settings: fn split_first_steps() -> Result<Draw, ChunkLoadError> {
        Ok(card)
    }
}

/// The next step, and how the card is drawn once its chunk is loaded. If that fails there is no card.
#[derive(Clone, Copy)]
pub struct FirstSteps {
    store: Store,
    step: Memo<Option<FirstStep>>,
    draw: RwSignal<Option<Draw>>,
}

impl FirstSteps {
    /// Those of the open shop; none of the demo.
    pub fn of(store: Store) -> Self {
        let step = Memo::new(move |_| {
            let shown = store.settings.with(|settings| !settings.demo && !settings.first_steps_skipped);
            shown.then(|| store.shop.with(first_step)).flatten()
        });
        let draw = RwSignal::new(None);
        if step.with_untracked(Option::is_some) {
            spawn_local(async move {
                let style = stylesheet::load_lazy();
                let loaded = split_first_steps().await;
                if style.await {
                    draw.set(loaded.ok());
                }
            });
        }
        Self { store, step, draw }
    }

    /// Whether the card is on the page.
    pub fn are_drawn(self) -> bool {
        self.step.with(Option::is_some) && self.draw.with(Option::is_some)
    }

    /// The card.
    pub fn card(self) -> Option<AnyView> {
        self.step.get().zip(self.draw.get()).map(|(step, draw)| draw(self.store, step))
    }
}

fn card(store: Store, next: FirstStep) -> AnyView {
    let act = |href: String, text: &'static str| view! { <a class="button primary" href=href>{text}</a> };
    let (at, link) = match next {
        FirstStep::Job => (0, act(JobsRoute::New.hash(), i18n::new_job())),
        FirstStep::Run(job) => (1, act(JobsRoute::Job(job).hash(), i18n::first_steps_run_open())),
        FirstStep::Count(run) => (2, act(Route::Run(run).hash(), i18n::first_steps_count_open())),
    };
    let texts = [
        (i18n::first_steps_job(), i18n::first_steps_job_text()),
        (i18n::first_steps_run(), i18n::first_steps_run_text()),
        (i18n::first_steps_count(), i18n::first_steps_count_text()),
    ];
    let mut link = Some(link);
    let rows = texts.into_iter().enumerate().map(|(place, (title, text))| {
        let (done, now) = (place < at, place == at);
        let mark = if done { view! { <Icon name="check"/> }.into_any() } else { (place + 1).into_any() };
        view! {
            <li data-done=done.to_string() aria-current=now.then_some("step")>
                <span class="first-steps-mark" aria-hidden="true">{mark}</span>
                <div>
                    <strong>{title}</strong>
                    <span>{if done { i18n::run_done() } else { text }}</span>
                    {now.then(|| link.take())}
                </div>
            </li>
        }
    });
    let rows = rows.collect_view();
    view! {
        <section class="card first-steps" id="first-steps">
            <h2>{i18n::first_steps_title()}</h2>
            <ol>{rows}</ol>
            <p class="quiet-line">{i18n::first_steps_backup()}</p>
            <div class="button-row">
                <a class="button" href=MoreRoute::Backup.hash()>{i18n::backup_title()}</a>
                <button type="button" class="button quiet" id="first-steps-skip" on:click=move |_| store.update_settings(|settings| settings.first_steps_skipped = true)>{i18n::first_steps_skip()}</button>
            </div>
        </section>
    }
    .into_any()
}
