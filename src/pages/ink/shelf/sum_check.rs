//! Whether a recipe's parts add up, how to fix the sum, and whether data sheets allow the amounts.

use crate::components::Icon;
use crate::i18n;
use crate::store::Store;
use lastpull_core::ink::{LimitBroken, LimitOf, RecipeForm, SumError, SumRepair, SumRepairOption};
use leptos::prelude::*;

/// The sum as typed. Once a save was tried (`asked`) it is shown as a problem, before that as help.
#[component]
pub fn SumLine(form: RwSignal<RecipeForm>, asked: RwSignal<bool>) -> impl IntoView {
    let store = Store::from_context();
    let off = Memo::new(move |_| store.shop.with(|shop| form.with(|form| form.sum(shop))));
    let any = Memo::new(move |_| {
        form.with(|form| form.parts.iter().any(|row| !row.on_top && !row.percent.trim().is_empty()))
    });
    let top = Memo::new(move |_| form.with(RecipeForm::grams_with_on_top));
    view! {
        <div class="ink-sum" id="sum" aria-live="polite">
            {move || match off.get() {
                Some(off) => off_sum(form, &off, asked.get()).into_any(),
                None => view! { {any.get().then(|| view! { <p class="ink-whole"><Icon name="check"/>{i18n::ink_sum_whole()}</p> })} }.into_any(),
            }}
            {move || top.get().map(|grams| view! { <p class="quiet-line">{i18n::ink_with_top(i18n::number(grams, 4))}</p> })}
        </div>
    }
}

fn off_sum(form: RwSignal<RecipeForm>, off: &SumError, asked: bool) -> AnyView {
    let why = i18n::ink_why_off(off.cause, off.percent);
    let offers = off.repairs.iter().map(|offer| mend(form, offer)).collect_view();
    view! {
        <p class:problem=asked>{why}</p>
        <div class="ink-mends">{offers}</div>
    }
    .into_any()
}

fn mend(form: RwSignal<RecipeForm>, offer: &SumRepairOption) -> AnyView {
    let words = match offer.repair {
        SumRepair::Scale => i18n::ink_fix_scale().to_owned(),
        SumRepair::OnTop => i18n::ink_fix_on_top().to_owned(),
        SumRepair::Fill(at) => Filled { form, offer, at }.words(),
    };
    let parts = offer.parts.clone();
    let name = match offer.repair {
        SumRepair::Scale => "scale",
        SumRepair::OnTop => "on-top",
        SumRepair::Fill(_) => "fill",
    };
    view! {
        <button type="button" class="button" data-fix=name on:click=move |_| form.update(|form| form.parts.clone_from(&parts))>{words}</button>
    }.into_any()
}

/// The base that fills up the sum, and its resulting amount.
struct Filled<'a> {
    form: RwSignal<RecipeForm>,
    offer: &'a SumRepairOption,
    at: usize,
}

impl Filled<'_> {
    fn words(&self) -> String {
        let store = Store::from_context();
        let component = self.form.with_untracked(|form| form.parts.get(self.at).and_then(|row| row.component));
        let name = component
            .and_then(|id| store.shop.with_untracked(|shop| shop.ink.component(id).map(|found| found.name.clone())));
        let share = i18n::with_mark(self.offer.parts.get(self.at).map(|row| row.percent.clone()).unwrap_or_default());
        i18n::ink_fix_fill(name.unwrap_or_default(), format!("{share}{}", i18n::percent_sign()))
    }
}

/// The limits that a recipe as typed exceeds.
#[component]
pub fn TypedLimits(form: RwSignal<RecipeForm>) -> impl IntoView {
    let store = Store::from_context();
    let limits = Memo::new(move |_| store.shop.with(|shop| form.with(|form| form.limits(shop))));
    move || limits.with(|limits| limit_warnings(limits))
}

/// The exceeded limits of data sheets; `None` if there are none.
pub(super) fn limit_warnings(limits: &[LimitBroken]) -> Option<AnyView> {
    let lines = limits
        .iter()
        .map(|broken| {
            let [percent, most] = [broken.percent, broken.most].map(|share| i18n::percent(share, 2));
            let words = match broken.limit {
                LimitOf::Component => i18n::ink_limit_component(&broken.name, percent, most),
                LimitOf::Pigment => i18n::ink_limit_pigment(&broken.name, percent, most),
            };
            view! { <strong>{words}</strong>" " }
        })
        .collect_view();
    (!lines.is_empty()).then(|| {
        view! { <p class="caution ink-limits"><Icon name="alert"/><span>{lines}{i18n::ink_limit_hint()}</span></p> }
            .into_any()
    })
}
