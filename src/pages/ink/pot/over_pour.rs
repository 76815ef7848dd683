//! Too much was poured: both ways to continue, side by side with their amounts.

use crate::components::{Icon, Swatch};
use crate::i18n;
use crate::platform::ids;
use crate::route::{InkRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{OverPour, Repair, RepairPlan, WeighInView, repair_facts, weigh_in};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// The over-poured component, and the choice.
#[component]
pub fn OverPourChoice(id: Subject, weighing: Memo<Option<WeighInView>>) -> impl IntoView {
    let store = Store::from_context();
    let choose = Callback::new(move |repair: Repair| {
        let facts = store.shop.with_untracked(|shop| {
            let by = store.operator();
            weigh_in(shop, id).map(|weigh_in| repair_facts(shop, id, &weigh_in, repair, by.as_deref(), ids::new_id))
        });
        let said = match repair {
            Repair::ScaleRest => i18n::pot_scaled_notice(),
            Repair::Accept => i18n::pot_accepted_notice(),
        };
        store.record_new(facts.unwrap_or_default(), said);
    });
    move || {
        weighing.with(|view| match view.as_ref().and_then(|view| Some((view, view.over.as_ref()?))) {
            Some((view, over)) => drawn(id, view, over, choose),
            None => ().into_any(),
        })
    }
}

fn drawn(id: Subject, view: &WeighInView, over: &OverPour, choose: Callback<Repair>) -> AnyView {
    let step = view.scale_step;
    let grams = |grams: Grams| i18n::pot_weight(grams, step);
    let row = view.rows.iter().find(|row| row.step.component == over.component);
    let (name, colour) = row.map(|row| (row.name.clone(), row.colour)).unwrap_or_default();
    let plans = [&over.scale_rest, &over.accept];
    let rows = view.rows.iter().enumerate().map(|(at, row)| {
        let cells = plans.map(|plan| plan.rows.get(at).map(|row| {
            // An amount below the scale's readability cannot be poured.
            let more = grams(row.to_pour);
            let to_pour = if more == grams(Grams::ZERO) { i18n::pot_nothing_more().to_owned() } else { i18n::pot_more(more) };
            view! { <td><strong>{grams(row.target)}</strong><small>{to_pour}</small><small>{i18n::pot_percent(row.percent)}</small></td> }
        }));
        view! {
            <tr>
                <th scope="row"><Swatch colour=row.colour/>{row.name.clone()}</th>
                {cells.into_iter().flatten().collect::<Vec<_>>()}
            </tr>
        }
    });
    let totals = plans.map(|plan| {
        let more = if plan.more.is_positive() {
            i18n::pot_total_more(grams(plan.more))
        } else {
            i18n::pot_total_same().to_owned()
        };
        view! { <td><strong>{grams(plan.total)}</strong><small>{more}</small></td> }
    });
    let recipe = plans.map(|plan| {
        // Less than a tenth of a percentage point is rounding of the scale.
        let off = if plan.off < 0.05 {
            i18n::pot_recipe_kept().to_owned()
        } else {
            i18n::pot_recipe_off(i18n::number(plan.off, 1))
        };
        view! { <td><small>{off}</small></td> }
    });
    let ways = [Repair::ScaleRest, Repair::Accept]
        .into_iter()
        .zip(plans)
        .map(|(repair, plan)| way(id, view, repair, plan, choose));
    view! {
        <section class="pot-over" id="over" role="alert">
            <h2><Icon name="alert"/><span>{i18n::pot_over_title(grams(over.by), name)}</span><Swatch colour/></h2>
            <p>{i18n::pot_over_text()}</p>
            <table class="pot-ways">
                <thead>
                    <tr>
                        <td></td>
                        <th scope="col">{i18n::pot_scale_rest()}<small>{i18n::pot_scale_rest_hint()}</small></th>
                        <th scope="col">{i18n::pot_accept()}<small>{i18n::pot_accept_hint()}</small></th>
                    </tr>
                </thead>
                <tbody>{rows.collect::<Vec<_>>()}</tbody>
                <tfoot>
                    <tr><th scope="row">{i18n::pot_total()}</th>{totals.into_iter().collect::<Vec<_>>()}</tr>
                    <tr><th scope="row">{i18n::pot_recipe()}</th>{recipe.into_iter().collect::<Vec<_>>()}</tr>
                </tfoot>
            </table>
            <div class="pot-way-choice">{ways.collect::<Vec<_>>()}</div>
            <p class="quiet-line">{i18n::pot_over_undo()}</p>
        </section>
    }
    .into_any()
}

/// One way to continue: why it is impossible, and what it would cause.
fn way(id: Subject, view: &WeighInView, repair: Repair, plan: &RepairPlan, choose: Callback<Repair>) -> AnyView {
    let grams = |grams: Grams| i18n::pot_weight(grams, view.scale_step);
    let (key, words) = match repair {
        Repair::ScaleRest => ("scale-rest", i18n::pot_scale_rest()),
        Repair::Accept => ("accept", i18n::pot_accept()),
    };
    let mut refused: Vec<AnyView> = Vec::new();
    if plan.too_large {
        refused.push(view! { <p class="problem">{i18n::pot_refused_large(grams(Grams::MOST))}</p> }.into_any());
    }
    // A fault that existed before does not rule this way out, and is shown all the same.
    let said = |stops: bool, line: String| {
        if stops {
            view! { <p class="problem">{line}</p> }
        } else {
            view! { <p class="caution"><Icon name="alert"/>{line}</p> }
        }
    };
    if plan.spills.is_positive() {
        refused.push(
            view! {
                {said(plan.spills_more.is_positive(), i18n::pot_refused_spills(grams(plan.spills)))}
                <a class="button" href=Route::Pot(PotRoute::Edit(id)).hash()>{i18n::pot_other_vessel()}</a>
            }
            .into_any(),
        );
    }
    for row in plan.rows.iter().filter(|row| row.lacks.is_positive()) {
        let name = view.rows.iter().find(|of| of.step.component == row.component).map(|of| of.name.clone());
        refused.push(
            view! {
                {said(row.lacks_more.is_positive(), i18n::pot_refused_lacks(grams(row.lacks), name.unwrap_or_default()))}
                <a class="button" href=Route::Ink(InkRoute::Component(row.component)).hash()>{i18n::ink_count()}</a>
            }
            .into_any(),
        );
    }
    view! {
        <div>
            <button type="button" class="button huge" class:primary=plan.is_possible() id=key disabled=!plan.is_possible() on:click=move |_| choose.run(repair)>{words}</button>
            {refused}
        </div>
    }.into_any()
}
