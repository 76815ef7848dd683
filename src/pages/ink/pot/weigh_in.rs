//! The weigh-in at the scale: one component at a time, as large as the page allows.

use super::over_pour::OverPourChoice;
use super::weigh_step::CurrentComponent;
use crate::components::{Icon, Swatch};
use crate::i18n;
use crate::platform::{dom, wake_lock};
use crate::route::{InkRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{StepState, WeighInView, WeighRow, weigh_in_view};
use leptos::prelude::*;

/// The weigh-in of a pot. `leave` shows the pot instead.
#[component]
pub fn WeighIn(id: Subject, leave: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let choice = RwSignal::new(None::<Subject>);
    let weighing = Memo::new(move |_| store.shop.with(|shop| weigh_in_view(shop, id, choice.get())));
    wake_lock::stay_awake();
    on_cleanup(wake_lock::let_sleep);
    let title =
        Memo::new(move |_| weighing.with(|view| view.as_ref().map(|view| view.name.clone()).unwrap_or_default()));
    Effect::new(move || dom::set_title(&format!("{} · {}", title.get(), i18n::app_name())));
    let undo = Memo::new(move |_| weighing.with(|view| view.as_ref().and_then(|view| view.undo)));
    let over = Memo::new(move |_| weighing.with(|view| view.as_ref().is_some_and(|view| view.over.is_some())));
    view! {
        <article class="page pot-weigh" on:click=move |event| dom::blur_after_touch(&event)>
            <header class="page-head">
                <a class="head-back" href=Route::Ink(InkRoute::Home).hash() aria-label=i18n::back()><Icon name="back"/></a>
                <div class="pot-weigh-title">
                    <h1 id="heading" tabindex="-1">{title}</h1>
                    <p>{move || weighing.with(|view| view.as_ref().map(under))}</p>
                </div>
                {move || undo.get().map(|event| view! {
                    <button type="button" class="control pot-undo" id="undo" on:click=move |_| take_back(store, event)>
                        <Icon name="undo"/><span>{i18n::undo()}</span>
                    </button>
                })}
            </header>
            {move || if over.get() {
                view! { <OverPourChoice id weighing/> }.into_any()
            } else {
                view! { <CurrentComponent id weighing choice/> }.into_any()
            }}
            <details class="pot-fold" id="all">
                <summary>{move || weighing.with(|view| view.as_ref().map(summary))}</summary>
                <ol class="pot-steps">
                    {move || weighing.with(|view| view.as_ref().map(|view| {
                        view.rows.iter().enumerate().map(|(at, row)| step(view, at, row, choice)).collect::<Vec<_>>()
                    }))}
                </ol>
                <p class="quiet-line">{move || weighing.with(|view| view.as_ref().map(rounding))}</p>
                <div class="button-row">
                    <button type="button" class="button" id="leave" on:click=move |_| leave.run(())>{i18n::pot_weigh_leave()}</button>
                    <a class="button" href=Route::Pot(PotRoute::Edit(id)).hash()>{i18n::pot_edit()}</a>
                </div>
            </details>
        </article>
    }
}

/// Undoes the last entry of the weigh-in.
fn take_back(store: Store, event: Subject) {
    store.delete_with_undo(event, i18n::pot_taken_back());
}

fn under(view: &WeighInView) -> String {
    let of = i18n::pot_weight(view.total, view.scale_step);
    format!("{} · {of}", i18n::pot_holds(&view.holds))
}

fn summary(view: &WeighInView) -> String {
    let done = view.rows.iter().filter(|row| row.step.state == StepState::Done).count();
    i18n::pot_weigh_progress(done, view.rows.len())
}

fn rounding(view: &WeighInView) -> String {
    let step = i18n::pot_weight(view.scale_step, view.scale_step);
    i18n::pot_weigh_rounding(step, i18n::number(view.worst * 100.0, 2), i18n::number(0.2, 1))
}

/// A component in the list; one that is still to be poured can be chosen out of order.
fn step(view: &WeighInView, at: usize, row: &WeighRow, choice: RwSignal<Option<Subject>>) -> AnyView {
    let component = row.step.component;
    let grams = |grams| i18n::pot_weight(grams, view.scale_step);
    let icon = match row.step.state {
        StepState::Done => "check",
        StepState::Over => "alert",
        StepState::ToPour if view.now == Some(at) => "go",
        StepState::ToPour => "drop",
    };
    let figures = match row.step.state {
        StepState::ToPour if row.step.poured.is_positive() => {
            i18n::pot_step_part(grams(row.step.poured), grams(row.step.target))
        }
        StepState::ToPour => grams(row.step.target),
        StepState::Done | StepState::Over => i18n::pot_step_in(grams(row.step.poured)),
    };
    let within = view! {
        <Icon name=icon/>
        <Swatch colour=row.colour/>
        <span>{row.name.clone()}<small>{i18n::pot_percent(row.percent)}</small></span>
        <strong>{figures}</strong>
    };
    if row.step.state == StepState::ToPour && view.now.is_some() {
        view! {
            <li>
                <button type="button" class="pot-step" aria-current=(view.now == Some(at)).then_some("step") on:click=move |_| choice.set(Some(component))>{within}</button>
            </li>
        }.into_any()
    } else {
        view! { <li class="pot-step">{within}</li> }.into_any()
    }
}
