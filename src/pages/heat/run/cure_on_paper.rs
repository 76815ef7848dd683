//! The computed cure of a run: the ink's temperature, its time, cure, limits, and missing figures.

use crate::components::{Choice, Icon};
use crate::i18n::{self, Term};
use crate::pages::heat::folding_row::folding_row;
use crate::pages::help::Help;
use crate::route::{HeatRoute, JobsRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{
    CureEstimate, HeatFact, LimitCheck, LimitState, MissingInput, RunHeat, heater_list, run_heat,
};
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// The row and its expanded content.
#[component]
pub fn ComputedCure(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let hour = Memo::new(move |_| store.clock.get().now.floor(Millis::from_hours(1)));
    let heat = Memo::new(move |_| {
        hour.get();
        store.shop.with(|shop| run_heat(shop, id, store.clock.get_untracked().now))
    });
    move || heat.with(|heat| heat.as_ref().map(|heat| drawn(store, id, heat)))
}

fn drawn(store: Store, id: RunId, heat: &RunHeat) -> AnyView {
    let (tone, icon) = match heat.cure {
        _ if heat.conflict.is_some() => ("bad", "alert"),
        CureEstimate::Reached { .. } => ("good", "check"),
        CureEstimate::Unknown(_) => ("calm", "info"),
        CureEstimate::TooCool(_) | CureEstimate::TooShort { .. } => ("bad", "alert"),
    };
    let mut line = i18n::cure_line(&heat.cure);
    if heat.conflict.is_some() {
        i18n::paper_no_setting().clone_into(&mut line);
    } else if let CureEstimate::Unknown(missing) = &heat.cure {
        let missing: Vec<&str> = missing.iter().map(|what| i18n::missing(*what)).collect();
        line = format!("{line}: {} {}", i18n::paper_missing(), missing.join(", "));
    }
    let within = view! {
        {conflict(heat)}
        {fixes(id, heat)}
        {more_time(heat)}
        <div class="help-row"><h3>{i18n::paper_title()}</h3><Help term=Term::Cure/></div>
        <dl class="lines">{figures(heat)}</dl>
        {dryers(store, id, heat)}
        <div class="help-row"><h3>{i18n::paper_limits()}</h3><Help term=Term::DyeMigration/></div>
        <ul class="heat-findings">{heat.limits.iter().map(finding).collect::<Vec<_>>()}</ul>
        <ul class="heat-caveats">{heat.caveats.iter().map(|caveat| view! { <li>{i18n::heat_caveat(*caveat)}</li> }).collect::<Vec<_>>()}</ul>
    };
    folding_row(tone, icon, "on-paper", line, within.into_any())
}

/// The warning that the ink cures only at temperatures that damage the fabric.
fn conflict(heat: &RunHeat) -> AnyView {
    let Some(conflict) = heat.conflict else { return ().into_any() };
    let (cure, limit) = (i18n::temperature(conflict.cure), i18n::temperature(conflict.limit.limit));
    view! { <p class="problem"><Icon name="alert"/>{i18n::paper_conflict(cure, limit)}</p> }.into_any()
}

/// A link for each missing figure to the page where it is entered.
fn fixes(id: RunId, heat: &RunHeat) -> AnyView {
    let CureEstimate::Unknown(missing) = &heat.cure else { return ().into_any() };
    let dryer = heat.dryer.as_ref().map(|dryer| dryer.id);
    let sheet = heat.sheet.as_ref().map_or(HeatRoute::NewSheetForRun(id), |(sheet, _)| HeatRoute::Sheet(*sheet));
    let mut ways: Vec<(Route, &str)> = missing
        .iter()
        .map(|what| match what {
            MissingInput::Setting => (Route::Jobs(JobsRoute::EditRun(id)), i18n::fix_setting()),
            MissingInput::Sensor => dryer.map_or((Route::Heat(HeatRoute::NewDryer), i18n::fix_dryer()), |dryer| {
                (Route::Heat(HeatRoute::Measure(dryer)), i18n::fix_sensor())
            }),
            MissingInput::Dwell => (Route::Jobs(JobsRoute::EditRun(id)), i18n::fix_dwell()),
            MissingInput::Sheet => (Route::Heat(sheet), i18n::fix_sheet()),
            MissingInput::CureTemperature | MissingInput::Hold => (Route::Heat(sheet), i18n::fix_sheet_edit()),
        })
        .collect();
    ways.dedup();
    view! {
        <ul class="heat-fixes">
            {ways.into_iter().map(|(route, words)| view! { <li><a class="button" href=route.hash()>{words}</a></li> }).collect::<Vec<_>>()}
        </ul>
    }.into_any()
}

/// Changes that would make the time long enough.
fn more_time(heat: &RunHeat) -> AnyView {
    let CureEstimate::TooShort { passes, belt, .. } = heat.cure else { return ().into_any() };
    view! {
        <p>
            {i18n::paper_passes_for(passes)}
            {belt.map(|belt| format!(" {}", i18n::paper_belt_for(i18n::belt(belt))))}
        </p>
    }
    .into_any()
}

fn figures(heat: &RunHeat) -> Vec<AnyView> {
    let dwell = &heat.dwell;
    let time = match (dwell.set, dwell.from_belt) {
        (Some(set), Some(belt)) if i18n::seconds(set) != i18n::seconds(belt) => {
            Some(i18n::paper_dwell_both(i18n::seconds(set), i18n::seconds(belt)))
        }
        (Some(set), _) => Some(i18n::seconds(set)),
        (None, belt) => belt.map(|belt| i18n::paper_dwell_belt(i18n::seconds(belt))),
    };
    let passes = i18n::passes_n(u32::from(heat.passes.max(1)));
    let needed = heat.passes_needed.filter(|needed| *needed > u32::from(heat.passes.max(1)));
    let sheet = heat.sheet.as_ref().map(|(_, sheet)| {
        let figures = &sheet.figures;
        match (figures.cure, figures.hold) {
            (Some(cure), Some(hold)) => i18n::sheet_line(i18n::temperature(cure), i18n::seconds(hold)),
            (Some(cure), None) => i18n::temperature(cure),
            _ => i18n::sheet_no_cure().to_owned(),
        }
    });
    let measured = heat.sensor.map(|sensor| i18n::dryer_error(sensor.offset));
    [
        (i18n::item_dryer(), heat.dryer.as_ref().map(|dryer| dryer.name.clone())),
        (i18n::measure_setting(), heat.setting.map(i18n::temperature)),
        (i18n::unit_error(), measured.or(Some(i18n::error_none().to_owned()))),
        (i18n::paper_ink(), heat.ink_temperature.filter(|_| heat.sensor.is_some()).map(i18n::temperature)),
        (i18n::paper_measured(), heat.measured.map(i18n::temperature)),
        (i18n::item_dwell(), time),
        (i18n::paper_dwell_measured(), dwell.measured.map(i18n::seconds)),
        (i18n::item_passes(), Some(needed.map_or(passes.clone(), |needed| i18n::paper_passes_of(passes, needed)))),
        (i18n::paper_sheet(), sheet),
    ]
    .into_iter()
    .filter_map(|(name, value)| value.map(|value| view! { <div><dt>{name}</dt><dd>{value}</dd></div> }.into_any()))
    .collect()
}

fn finding(finding: &LimitCheck) -> AnyView {
    let off = finding.over.map(i18n::degrees).unwrap_or_default();
    let (tone, icon, state) = match finding.state {
        LimitState::Clear => ("good", "check", i18n::state_clear(off)),
        LimitState::Close => ("tight", "alert", i18n::state_close(off)),
        LimitState::Exceeded => ("bad", "alert", i18n::state_passed(off)),
        LimitState::Unknown => ("", "info", i18n::state_unknown().to_owned()),
    };
    view! {
        <li>
            <span>
                {i18n::limit_name(finding.name)}" "<strong>{i18n::limit_from(i18n::temperature(finding.limit))}</strong>
                <small>{i18n::limit_origin(finding.origin)}</small>
            </span>
            <span class=format!("badge {tone}")><Icon name=icon/>{state}</span>
        </li>
    }
    .into_any()
}

/// The choice of the dryer, if the shop has several.
fn dryers(store: Store, id: RunId, heat: &RunHeat) -> AnyView {
    let own: Vec<(Option<Subject>, String)> = store.shop.with_untracked(|shop| {
        let dryers = heater_list(shop).into_iter().filter(|(_, unit)| unit.is_dryer());
        dryers.map(|(id, unit)| (Some(id), unit.name.clone())).collect()
    });
    if own.len() < 2 {
        return ().into_any();
    }
    let used = heat.dryer.as_ref().map(|dryer| dryer.id);
    let value = Signal::derive(move || used);
    let pick = Callback::new(move |dryer| store.record(id, Fact::Heat(HeatFact::DryerChosen(dryer))));
    view! { <Choice label=i18n::dryer_choose() name="run-dryer" options=own value on_pick=pick/> }.into_any()
}
