//! What the heat does to a run on paper: the ink's temperature, its time, cure, limits, what is missing.

use super::HeatPlace;
use super::run_heat::row;
use crate::parts::{Choice, Icon};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{CureOnPaper, HeatFact, LimitFinding, LimitState, Missing, RunHeat, run_heat, unit_list};
use lastpull_core::job::RunId;
use lastpull_core::journal::{Fact, Subject};
use leptos::prelude::*;

/// The row and what it opens to.
#[component]
pub fn OnPaper(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let hour = Memo::new(move |_| store.clock.get().now / 3_600_000);
    let heat = Memo::new(move |_| {
        hour.get();
        store.shop.with(|shop| run_heat(shop, id, store.clock.get_untracked().now))
    });
    move || heat.with(|heat| heat.as_ref().map(|heat| drawn(store, id, heat)))
}

fn drawn(store: Store, id: RunId, heat: &RunHeat) -> AnyView {
    let (tone, icon) = match heat.cure {
        _ if heat.conflict.is_some() => ("bad", "alert"),
        CureOnPaper::Reached { .. } => ("good", "check"),
        CureOnPaper::Unknown(_) => ("calm", "info"),
        CureOnPaper::TooCool(_) | CureOnPaper::TooShort { .. } => ("bad", "alert"),
    };
    let mut line = words::cure_line(&heat.cure);
    if heat.conflict.is_some() {
        words::paper_no_setting().clone_into(&mut line);
    } else if let CureOnPaper::Unknown(missing) = &heat.cure {
        let missing: Vec<&str> = missing.iter().map(|what| words::missing(*what)).collect();
        line = format!("{line}: {} {}", words::paper_missing(), missing.join(", "));
    }
    let within = view! {
        {conflict(heat)}
        {fixes(id, heat)}
        {more_time(heat)}
        <h3>{words::paper_title()}</h3>
        <dl class="lines">{figures(heat)}</dl>
        {dryers(store, id, heat)}
        <h3>{words::paper_limits()}</h3>
        <ul class="heat-findings">{heat.limits.iter().map(finding).collect::<Vec<_>>()}</ul>
        <ul class="heat-caveats">{heat.caveats.iter().map(|caveat| view! { <li>{words::heat_caveat(*caveat)}</li> }).collect::<Vec<_>>()}</ul>
    };
    row(tone, icon, "on-paper", line, within.into_any())
}

/// The ink cures only where the fabric suffers.
fn conflict(heat: &RunHeat) -> AnyView {
    let Some(conflict) = heat.conflict else { return ().into_any() };
    let (cure, limit) = (words::temperature(conflict.cure), words::temperature(conflict.limit.limit));
    view! { <p class="problem"><Icon name="alert"/>{words::paper_conflict(cure, limit)}</p> }.into_any()
}

/// A way to what is missing, for each thing.
fn fixes(id: RunId, heat: &RunHeat) -> AnyView {
    let CureOnPaper::Unknown(missing) = &heat.cure else { return ().into_any() };
    let dryer = heat.dryer.as_ref().map(|dryer| dryer.id);
    let sheet = heat.sheet.as_ref().map_or(HeatPlace::SheetOf(id), |(sheet, _)| HeatPlace::Sheet(*sheet));
    let mut ways: Vec<(Place, &str)> = missing
        .iter()
        .map(|what| match what {
            Missing::Setting => (Place::EditRun(id), words::fix_setting()),
            Missing::Sensor => dryer.map_or((Place::Heat(HeatPlace::NewUnit), words::fix_dryer()), |dryer| {
                (Place::Heat(HeatPlace::Measure(dryer)), words::fix_sensor())
            }),
            Missing::Dwell => (Place::EditRun(id), words::fix_dwell()),
            Missing::Sheet => (Place::Heat(sheet), words::fix_sheet()),
            Missing::CureTemperature | Missing::Hold => (Place::Heat(sheet), words::fix_sheet_edit()),
        })
        .collect();
    ways.dedup();
    view! {
        <ul class="heat-fixes">
            {ways.into_iter().map(|(place, words)| view! { <li><a class="button" href=place.hash()>{words}</a></li> }).collect::<Vec<_>>()}
        </ul>
    }.into_any()
}

/// What would make the time long enough.
fn more_time(heat: &RunHeat) -> AnyView {
    let CureOnPaper::TooShort { passes, belt, .. } = heat.cure else { return ().into_any() };
    view! {
        <p>
            {words::paper_passes_for(passes)}
            {belt.map(|belt| format!(" {}", words::paper_belt_for(words::belt(belt))))}
        </p>
    }
    .into_any()
}

fn figures(heat: &RunHeat) -> Vec<AnyView> {
    let dwell = &heat.dwell;
    let time = match (dwell.set, dwell.from_belt) {
        (Some(set), Some(belt)) if dwell.differ => {
            Some(words::paper_dwell_both(words::seconds(set), words::seconds(belt)))
        }
        (Some(set), _) => Some(words::seconds(set)),
        (None, belt) => belt.map(|belt| words::paper_dwell_belt(words::seconds(belt))),
    };
    let passes = words::passes_n(u32::from(heat.passes.max(1)));
    let needed = heat.passes_needed.filter(|needed| *needed > u32::from(heat.passes.max(1)));
    let sheet = heat.sheet.as_ref().map(|(_, sheet)| {
        let figures = &sheet.figures;
        match (figures.cure, figures.hold) {
            (Some(cure), Some(hold)) => words::sheet_line(words::temperature(cure), words::seconds(hold)),
            (Some(cure), None) => words::temperature(cure),
            _ => words::sheet_no_cure().to_owned(),
        }
    });
    let measured = heat.sensor.map(|sensor| words::dryer_error(sensor.offset));
    [
        (words::item_dryer(), heat.dryer.as_ref().map(|dryer| dryer.name.clone())),
        (words::measure_setting(), heat.setting.map(words::temperature)),
        (words::unit_error(), measured.or(Some(words::error_none().to_owned()))),
        (words::paper_ink(), heat.ink_temperature.filter(|_| heat.sensor.is_some()).map(words::temperature)),
        (words::item_dwell(), time),
        (words::item_passes(), Some(needed.map_or(passes.clone(), |needed| words::paper_passes_of(passes, needed)))),
        (words::paper_sheet(), sheet),
    ]
    .into_iter()
    .filter_map(|(name, value)| value.map(|value| view! { <div><dt>{name}</dt><dd>{value}</dd></div> }.into_any()))
    .collect()
}

fn finding(finding: &LimitFinding) -> AnyView {
    let off = finding.over.map(words::degrees).unwrap_or_default();
    let (tone, icon, state) = match finding.state {
        LimitState::Clear => ("good", "check", words::state_clear(off)),
        LimitState::Close => ("tight", "alert", words::state_close(off)),
        LimitState::Passed => ("bad", "alert", words::state_passed(off)),
        LimitState::Unknown => ("", "info", words::state_unknown().to_owned()),
    };
    view! {
        <li>
            <span>
                {words::limit_name(finding.name)}" "<strong>{words::limit_from(words::temperature(finding.limit))}</strong>
                <small>{words::limit_origin(finding.origin)}</small>
            </span>
            <span class=format!("badge {tone}")><Icon name=icon/>{state}</span>
        </li>
    }.into_any()
}

/// Which dryer, where the shop has several.
fn dryers(store: Store, id: RunId, heat: &RunHeat) -> AnyView {
    let own: Vec<(Option<Subject>, String)> = store.shop.with_untracked(|shop| {
        let dryers = unit_list(shop).into_iter().filter(|(_, unit)| unit.is_dryer());
        dryers.map(|(id, unit)| (Some(id), unit.name.clone())).collect()
    });
    if own.len() < 2 {
        return ().into_any();
    }
    let used = heat.dryer.as_ref().map(|dryer| dryer.id);
    let value = Signal::derive(move || used);
    let pick = Callback::new(move |dryer| store.record(id, Fact::Heat(HeatFact::DryerChosen(dryer))));
    view! { <Choice label=words::dryer_choose() name="run-dryer" options=own value on_pick=pick/> }.into_any()
}
