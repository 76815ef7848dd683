//! The current component of the weigh-in: the target reading of the scale, and its actual reading.

use crate::components::{Icon, Keypad, RepeatedTap, Swatch};
use crate::i18n;
use crate::platform::{haptics, ids};
use crate::route::{PotRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    InkFact, PourForm, PourStep, ScaleEntry, WeighInView, WeighRow, WeighStep, check_scale_entry,
};
use lastpull_core::units::{Grams, NumberProblem};
use leptos::prelude::*;

/// The component being weighed now.
#[component]
pub fn CurrentComponent(
    id: Subject,
    weighing: Memo<Option<WeighInView>>,
    choice: RwSignal<Option<Subject>>,
) -> impl IntoView {
    let store = Store::from_context();
    let text = RwSignal::new(String::new());
    // Some scales are zeroed after every component; they show the weight of that component alone.
    let total = RwSignal::new(true);
    let wrong = RwSignal::new(None::<ScaleEntry>);
    let row = Memo::new(move |_| weighing.with(|view| now_of(view.as_ref())));
    let typed = Memo::new(move |_| {
        weighing.with(|view| match (view, now_of(view.as_ref())) {
            (Some(view), Some(row)) => check_scale_entry(view, &row, &text.get(), total.get(), i18n::units()),
            _ => ScaleEntry::Nothing,
        })
    });
    // A problem is shown until the text changes.
    Effect::new(move || {
        text.track();
        wrong.set(None);
    });
    let pour = move |component: Subject, grams: Grams| {
        let (note, by) = (String::new(), store.operator());
        let fact = InkFact::Poured { pot: id, component, grams, step: PourStep::WeighIn, note, reading: None, by };
        store.record(ids::new_id(), Fact::Ink(fact));
        text.set(String::new());
        choice.set(None);
        if store.settings.with_untracked(|settings| settings.buzz) {
            haptics::buzz(20);
        }
    };
    let enter = Callback::new(move |()| {
        let Some(row) = row.get_untracked() else { return };
        let component = Some(row.step.component);
        let form =
            PourForm { component, grams: text.get_untracked(), total: total.get_untracked(), ..PourForm::default() };
        let checked = store
            .shop
            .with_untracked(|shop| form.check(shop, id, PourStep::WeighIn, store.operator().as_deref(), i18n::units()));
        match checked {
            Ok(InkFact::Poured { component, grams, .. }) => pour(component, grams),
            _ => wrong.set(Some(typed.get_untracked())),
        }
    });
    let tap = RepeatedTap::new();
    let exact = move |event: leptos::ev::MouseEvent| {
        // The second tap of a double tap would be taken for the next component.
        let is_second = tap.is_second(&event);
        tap.done(&event);
        if let Some(row) = row.get_untracked().filter(|_| !is_second) {
            pour(row.step.component, row.step.to_go());
        }
    };
    let step = move || weighing.with(|view| view.as_ref().map(|view| view.scale_step).unwrap_or_default());
    let enough = Callback::new(move |step: WeighStep| {
        let accepted =
            InkFact::Accepted { pot: id, component: step.component, grams: step.poured, by: store.operator() };
        store.record_new(vec![(ids::new_id(), Fact::Ink(accepted))], i18n::pot_enough_notice());
    });
    let leave_out = Callback::new(move |component: Subject| {
        let left_out = InkFact::Accepted { pot: id, component, grams: Grams::ZERO, by: store.operator() };
        store.record_new(vec![(ids::new_id(), Fact::Ink(left_out))], i18n::pot_left_out_notice());
    });
    view! {
        <div class="pot-at-scale">
            <section class="pot-now" aria-live="polite" id="now">
                {move || row.get().map(|row| drawn(&row, step(), total.get(), weighing.with(|view| view.as_ref().and_then(|view| view.tare))))}
                {move || row.get().and_then(|row| still_missing(&row, step(), enough))}
                {move || row.get().and_then(|row| too_fine(id, &row, step(), leave_out))}
                {move || weighing.with(|view| view.as_ref().and_then(then))}
                {move || weighing.with(|view| view.as_ref().map(cautions))}
            </section>
            <section class="pot-entry">
                <button type="button" class="pot-way" id="way" aria-pressed=move || (!total.get()).to_string() on:click=move |_| total.update(|total| *total = !*total)>
                    {move || if total.get() { i18n::pot_scale_total() } else { i18n::pot_scale_own() }}
                    <Icon name="repeat"/>
                </button>
                <p class="pot-typed" class:none=move || text.with(String::is_empty) id="typed" aria-live="polite">
                    <strong>{move || if text.with(String::is_empty) { "0".to_owned() } else { i18n::with_mark(text.get()) }}</strong>
                    <span>{i18n::unit_weight()}</span>
                </p>
                <p class="pot-comes-to" id="comes-to" role="status">{move || {
                    let typed = wrong.get().unwrap_or_else(|| typed.get());
                    comes_to(&typed, step(), wrong.with(Option::is_some))
                }}</p>
                <Keypad
                    text
                    label=i18n::pot_keypad()
                    enter=i18n::pot_enter()
                    on_enter=enter
                    aside=move || view! { <button type="button" class="pot-key exact" id="exact" on:click=exact><Icon name="check"/>{i18n::pot_exact()}</button> }
                />
            </section>
        </div>
    }
}

fn now_of(view: Option<&WeighInView>) -> Option<WeighRow> {
    let view = view?;
    view.rows.get(view.now?).cloned()
}

fn drawn(row: &WeighRow, step: Grams, total: bool, tare: Option<Grams>) -> AnyView {
    let to_go = i18n::pot_weight(row.step.to_go(), step);
    let shall = if total { i18n::pot_weight(row.scale_target.unwrap_or_default(), step) } else { to_go.clone() };
    // The number is shown large, to be read from a distance; the unit is not.
    let (number, unit) = shall.split_once('\u{a0}').unwrap_or((&shall, ""));
    let (number, unit, long) = (number.to_owned(), format!("\u{a0}{unit}"), number.len() > 7);
    let vessel = match tare {
        _ if !total => i18n::pot_zeroed_each().to_owned(),
        Some(tare) => i18n::pot_with_tare(i18n::pot_weight(tare, step)),
        None => i18n::pot_zeroed().to_owned(),
    };
    view! {
        <h2 class="pot-now-name"><Swatch colour=row.colour/>{row.name.clone()}</h2>
        <p class="pot-target"><span>{i18n::pot_scale_shall()}<small>{vessel}</small></span><strong id="target" class:long=long>{number}<small>{unit}</small></strong></p>
        <dl class="pot-figures">
            <div><dt>{i18n::pot_to_go()}</dt><dd id="to-go">{to_go}</dd></div>
            <div><dt>{i18n::pot_in_now()}</dt><dd id="in-now">{i18n::pot_weight(row.step.poured, step)}</dd></div>
        </dl>
        {row.lacks.is_positive().then(|| view! {
            <p class="caution"><Icon name="alert"/>{i18n::pot_shelf_lacks(i18n::pot_weight(row.lacks, step))}</p>
        })}
    }.into_any()
}

/// What is missing of a component that is partly in, with a button to leave it at that.
fn still_missing(row: &WeighRow, step: Grams, enough: Callback<WeighStep>) -> Option<AnyView> {
    if !row.step.is_partly_in() {
        return None;
    }
    let (missing, at) = (i18n::pot_weight(row.step.to_go(), step), row.step);
    Some(view! {
        <div class="pot-too-fine" id="still-missing">
            <p class="caution"><Icon name="drop"/>{i18n::pot_still_missing(missing, row.name.clone())}</p>
            <button type="button" class="button" id="enough" on:click=move |_| enough.run(at)>{i18n::pot_enough()}</button>
        </div>
    }.into_any())
}

/// What the scale cannot weigh in so small a batch, and the alternatives.
fn too_fine(id: Subject, row: &WeighRow, step: Grams, leave_out: Callback<Subject>) -> Option<AnyView> {
    let (enough, component) = (row.accurate_batch?, row.step.component);
    let asks = i18n::pot_weight(row.step.exact, Grams::from_milligrams(1));
    Some(view! {
        <div class="pot-too-fine" id="too-fine">
            <p class="caution"><Icon name="alert"/>{i18n::pot_too_fine(asks, i18n::pot_weight(step, step), i18n::weight(enough))}</p>
            <div class="button-row">
                <a class="button" href=Route::Pot(PotRoute::Edit(id)).hash()>{i18n::pot_make_more()}</a>
                <button type="button" class="button" id="leave-out" on:click=move |_| leave_out.run(component)>{i18n::pot_leave_out()}</button>
            </div>
        </div>
    }.into_any())
}

/// The next component.
fn then(view: &WeighInView) -> Option<AnyView> {
    let now = view.rows.get(view.now?)?;
    let then = view.rows.get(view.then?)?;
    let shall = i18n::pot_weight(now.scale_target?.saturating_add(then.step.to_go()), view.scale_step);
    Some(view! {
        <p class="pot-then" id="then"><Swatch colour=then.colour/><span>{i18n::pot_then(&then.name, shall)}</span></p>
    }.into_any())
}

/// A warning that the next amount will not fit, before it is poured.
fn cautions(view: &WeighInView) -> Vec<AnyView> {
    let spills =
        view.spills.is_positive().then(|| i18n::pot_will_spill(i18n::pot_weight(view.spills, view.scale_step)));
    let overloads = view
        .overloads
        .is_positive()
        .then(|| i18n::pot_will_overload(i18n::pot_weight(view.overloads, view.scale_step)));
    let lines = [spills, overloads].into_iter().flatten();
    lines.map(|line| view! { <p class="caution"><Icon name="alert"/>{line}</p> }.into_any()).collect()
}

fn comes_to(typed: &ScaleEntry, step: Grams, submitted: bool) -> Option<AnyView> {
    let grams = |grams: &Grams| i18n::pot_weight(*grams, step);
    let (tone, icon, line) = match typed {
        ScaleEntry::Nothing if submitted => ("bad", "alert", i18n::pot_type_first().to_owned()),
        ScaleEntry::Nothing => return None,
        ScaleEntry::Wrong(NumberProblem::TooLow { .. }) if submitted => {
            ("bad", "alert", i18n::pot_no_more().to_owned())
        }
        ScaleEntry::Wrong(problem) if submitted => ("bad", "alert", i18n::number_problem(*problem)),
        // A number that is still being typed is no problem yet.
        ScaleEntry::Wrong(_) => return None,
        ScaleEntry::Short { poured, to_go } => ("calm", "drop", i18n::pot_short(grams(poured), grams(to_go))),
        ScaleEntry::On { poured } => ("good", "check", i18n::pot_on(grams(poured))),
        ScaleEntry::Over { poured, by } => ("tight", "alert", i18n::pot_over(grams(poured), grams(by))),
    };
    Some(view! { <span class=format!("badge {tone}")><Icon name=icon/>{line}</span> }.into_any())
}
