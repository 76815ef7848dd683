//! One check: the expected value, the value before, and the result.

use crate::components::{Choice, Icon, Swatch};
use crate::forms::{Kind, submit_dialog};
use crate::i18n::check_values::{expected_text, read_value, tolerance_text, unit_text, value_text};
use crate::i18n::{self, Term};
use crate::pages::help::Help;
use crate::route::{Route, ScreensRoute};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{HeldBreach, MeasuredBreach};
use lastpull_core::ids::RunId;
use lastpull_core::run::{CheckItem, CheckList, CheckOutcome, CheckRow, CheckState, Expected, OtherColour, check_list};
use lastpull_core::screen::{not_ready, other_mesh};
use lastpull_core::units::NumberProblem;
use leptos::prelude::*;

/// One line of the check list.
#[component]
pub fn CheckLine(id: RunId, item: CheckItem, list: Memo<CheckList>) -> impl IntoView {
    let store = Store::from_context();
    let row = Memo::new(move |_| list.with(|list| list.rows().find(|row| row.item == item).cloned()));
    let term = term_of(item);
    let make = Callback::new(move |outcome: CheckOutcome| {
        let row = store.shop.with_untracked(|shop| check_list(shop, id).rows().find(|row| row.item == item).cloned());
        if let Some(row) = row {
            let by = store.operator();
            store.record(id, Fact::CheckMade { item, expected: row.expected, outcome, by });
        }
    });
    move || {
        row.get().map(|row| {
            view! {
                <li class="check" class:made=!row.state.is_open() data-item=format!("{item:?}")>
                    <div class="check-words">
                        <span class="check-item" class:help-row=term.is_some()>{i18n::check_item(item)}{term.map(|term| view! { <Help term/> })}</span>
                        <span class="check-expected">
                            {row.expected.colour().map(|colour| view! { <Swatch colour=colour.known/> })}
                            <strong>{with_colour(expected_text(item, &row.expected), row.colours.as_ref().map(colour_now))}</strong>
                            {tolerance_text(item, &row.expected).map(|words| view! { <small>{words}</small> })}
                        </span>
                        {row.before.as_ref().map(|before| view! {
                            <span class="check-was">
                                {before.colour().map(|colour| view! { <Swatch colour=colour.known/> })}
                                {i18n::was(with_colour(expected_text(item, before), row.colours.as_ref().map(colour_before)))}
                            </span>
                        })}
                        {(item == CheckItem::Screens).then(|| view! { <NotReady id/> })}
                        {(item == CheckItem::Mesh).then(|| view! { <AnotherMesh id/> })}
                        <Found row=row.clone()/>
                    </div>
                    <CheckButtons row=row.clone() make/>
                </li>
            }
        })
    }
}

/// The term of a check that is explained beside it: what a new printer cannot see at the press.
fn term_of(item: CheckItem) -> Option<Term> {
    match item {
        CheckItem::Dwell => Some(Term::DwellTime),
        CheckItem::OffContact => Some(Term::OffContact),
        CheckItem::Dryer
        | CheckItem::Belt
        | CheckItem::Passes
        | CheckItem::Flash
        | CheckItem::FlashDistance
        | CheckItem::Garment
        | CheckItem::Screens
        | CheckItem::Mesh
        | CheckItem::Squeegee
        | CheckItem::BelowCollar
        | CheckItem::Placement
        | CheckItem::Ink
        | CheckItem::Hits => None,
    }
}

fn colour_now(colours: &OtherColour) -> &str {
    match colours {
        OtherColour::Named([now, _]) => now,
        OtherColour::Unnamed => i18n::check_other_colour(),
    }
}

fn colour_before(colours: &OtherColour) -> &str {
    match colours {
        OtherColour::Named([_, before]) => before,
        OtherColour::Unnamed => "",
    }
}

/// What is expected, with the name of its colour if that is what differs.
fn with_colour(text: String, colour: Option<&str>) -> String {
    match colour.filter(|name| !name.is_empty()) {
        Some(name) => format!("{text}, {name}"),
        None => text,
    }
}

/// The run's screens that have another mesh by the shop's list.
#[component]
fn AnotherMesh(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let other = Memo::new(move |_| {
        store.shop.with(|shop| {
            shop.run(id).map(|run| other_mesh(shop, &run.set_up.screens, run.set_up.mesh)).unwrap_or_default()
        })
    });
    move || {
        other.with(|rows| {
            (!rows.is_empty()).then(|| {
                view! {
                    <a class="badge tight" id="other-mesh" href=Route::Screens(ScreensRoute::Home).hash()>
                        <Icon name="alert"/>{i18n::other_mesh(rows)}
                    </a>
                }
            })
        })
    }
}

/// The run's screens that cannot print yet, if the shop keeps an inventory of screens.
#[component]
fn NotReady(id: RunId) -> impl IntoView {
    let store = Store::from_context();
    let waiting = Memo::new(move |_| store.shop.with(|shop| not_ready(shop, id)));
    move || {
        waiting.get().map(|labels| {
            if labels.is_empty() {
                return view! { <small class="muted">{i18n::screens_can_print()}</small> }.into_any();
            }
            view! {
                <a class="badge tight" href=Route::Screens(ScreensRoute::Home).hash()>
                    <Icon name="alert"/>{i18n::screens_not_ready(labels.join(", "))}
                </a>
            }
            .into_any()
        })
    }
}

/// The result, by whom and when.
#[component]
fn Found(row: CheckRow) -> impl IntoView {
    let made = row.made.clone().map(|made| match made.by {
        Some(who) => i18n::who_when(who, i18n::moment(made.at)),
        None => i18n::moment(made.at),
    });
    let value_of = |value| value_text(row.item, &row.expected, value);
    let history = row.history.map(|earlier| {
        let text = i18n::check_measured_before(i18n::moment(earlier.at), value_of(earlier.value));
        view! { <small class="check-found" data-before="true">{text}</small> }
    });
    let held = row.held.map(|HeldBreach { value, infrared, breach }| {
        let why = if infrared { i18n::check_stands_infrared() } else { i18n::check_stands() };
        view! {
            <span class="check-found" data-stands="true">
                <span class="badge bad"><Icon name="alert"/>{breach_text(value_of(value), breach)}</span>
                <small>{why}</small>
            </span>
        }
    });
    let why = match row.state {
        CheckState::ByInfrared { breach: Some(_), .. } => Some(i18n::check_stands_infrared()),
        CheckState::ByInfrared { breach: None, .. } => Some(i18n::check_infrared_why()),
        CheckState::Measured { breach: Some(_), .. } => Some(i18n::check_stands()),
        CheckState::Measured { breach: None, .. } | CheckState::Open | CheckState::Ticked | CheckState::Skipped => None,
    };
    let (tone, icon, text) = match row.state {
        CheckState::Open => return view! { {history}{held} }.into_any(),
        CheckState::Ticked => ("good", "check", i18n::check_ticked().to_owned()),
        CheckState::Skipped => ("tight", "skip", i18n::check_skipped().to_owned()),
        CheckState::Measured { value, breach: Some(breach), .. }
        | CheckState::ByInfrared { value, breach: Some(breach) } => {
            ("bad", "alert", breach_text(value_of(value), breach))
        }
        CheckState::Measured { value, within: true, .. } => ("good", "check", i18n::check_within(value_of(value))),
        CheckState::Measured { value, within: false, .. } => ("bad", "alert", i18n::check_outside(value_of(value))),
        CheckState::ByInfrared { value, breach: None } => ("tight", "alert", i18n::check_infrared(value_of(value))),
    };
    view! {
        <span class="check-found">
            <span class=format!("badge {tone}")><Icon name=icon/>{text}</span>
            <small>{made}</small>
            {why.map(|why| view! { <small>{why}</small> })}
        </span>
        {held}
    }
    .into_any()
}

/// What a measured value breaches.
fn breach_text(value: String, breach: MeasuredBreach) -> String {
    match breach {
        MeasuredBreach::Limit(limit) => {
            i18n::check_at_limit(value, i18n::temperature(limit.limit), i18n::at_limit(limit.name))
        }
        MeasuredBreach::BelowCure { cure, .. } => i18n::check_below_cure(value, i18n::temperature(cure)),
        MeasuredBreach::ShortOfHold { hold, has } => {
            i18n::check_short_of_hold(value, i18n::seconds(has), i18n::seconds(hold))
        }
    }
}

/// Buttons for right, measured and skip; or undo. What was measured and holds the ink is not put right by a look.
#[component]
fn CheckButtons(row: CheckRow, make: Callback<CheckOutcome>) -> impl IntoView {
    let item = row.item;
    let name = i18n::check_item(item);
    let measuring = RwSignal::new(false);
    let is_held = row.breach().is_some();
    if !row.state.is_open() {
        return view! {
            <button type="button" class="button quiet" aria-label=format!("{name}: {}", i18n::check_clear()) on:click=move |_| make.run(CheckOutcome::Cleared)>
                {i18n::check_clear()}
            </button>
        }.into_any()
        .into_any();
    }
    let measurable = row.expected.tolerance(item).is_some();
    let expected = StoredValue::new(row.expected);
    view! {
        <div class="check-buttons">
            {(!is_held).then(|| view! {
                <button type="button" class="button tick" aria-label=format!("{name}: {}", i18n::check_tick()) on:click=move |_| make.run(CheckOutcome::Ticked)>
                    <Icon name="check"/>{i18n::check_tick()}
                </button>
            })}
            {measurable.then(|| view! {
                <button
                    type="button"
                    class="button"
                    aria-label=format!("{name}: {}", i18n::check_measure())
                    aria-expanded=move || measuring.get().to_string()
                    on:click=move |_| measuring.update(|on| *on = !*on)
                >
                    {i18n::check_measure()}
                </button>
            })}
            <button type="button" class="button quiet" aria-label=format!("{name}: {}", i18n::check_skip()) on:click=move |_| make.run(CheckOutcome::Skipped)>
                {i18n::check_skip()}
            </button>
        </div>
        {move || measuring.get().then(|| view! { <Measure item expected make/> })}
    }
    .into_any()
}

/// How a dryer was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    /// By probe or strip, on a garment that went through.
    Garment,
    /// By infrared, at the exit.
    Infrared,
}

/// What is wrong with a measured value.
#[derive(Clone, Copy, Debug, PartialEq)]
enum MeasureProblem {
    Number(NumberProblem),
    /// How the dryer was measured was not said: infrared must not pass for a probe.
    WayMissing,
}

/// The form of a measured value. For the dryer it asks how.
#[component]
fn Measure(item: CheckItem, expected: StoredValue<Expected>, make: Callback<CheckOutcome>) -> impl IntoView {
    let text = RwSignal::new(String::new());
    let problem = RwSignal::new(None::<MeasureProblem>);
    let way = RwSignal::new((item != CheckItem::Dryer).then_some(Way::Garment));
    let ways = vec![
        (Some(Way::Garment), i18n::check_way_garment().to_owned()),
        (Some(Way::Infrared), i18n::check_way_infrared().to_owned()),
    ];
    let id = format!("measure-{item:?}");
    let is_length = expected.with_value(|expected| matches!(expected, Expected::Length(_)));
    let (_, input_mode) = if is_length { Kind::Length } else { Kind::Decimal }.input();
    let read = move || text.with_untracked(|text| expected.with_value(|expected| read_value(item, expected, text)));
    let outcome = move || {
        let value = read().map_err(MeasureProblem::Number)?;
        match way.get_untracked() {
            Some(Way::Garment) => Ok(CheckOutcome::Measured(value)),
            Some(Way::Infrared) => Ok(CheckOutcome::ReadByInfrared(value)),
            None => Err(MeasureProblem::WayMissing),
        }
    };
    let send = submit_dialog(problem, move || outcome().map_err(Some), move |outcome| make.run(outcome));
    let problem_text = move |problem| match problem {
        MeasureProblem::Number(problem) => i18n::number_problem(problem),
        MeasureProblem::WayMissing => i18n::check_way_missing().to_owned(),
    };
    view! {
        <form class="measure" on:submit=send novalidate=true>
            <label class="visually-hidden" for=id.clone()>{i18n::check_measured_value(i18n::check_item(item))}</label>
            <div class="field-input">
                <input
                    id=id
                    type="text"
                    inputmode=input_mode
                    autocomplete="off"
                    prop:value=move || i18n::with_mark(text.get())
                    on:input=move |event| text.set(i18n::with_mark(event_target_value(&event)))
                    aria-invalid=move || matches!(problem.get(), Some(MeasureProblem::Number(_))).to_string()
                />
                <span class="unit">{expected.with_value(|expected| unit_text(item, expected))}</span>
            </div>
            <button type="submit" class="button primary">{i18n::save()}</button>
            {(item == CheckItem::Dryer).then(|| view! {
                <Choice label=i18n::check_way() name="way" options=ways value=Signal::derive(move || way.get()) on_pick=Callback::new(move |to| way.set(to))/>
                <p class="quiet-line">{move || if way.get() == Some(Way::Infrared) { i18n::check_infrared_why() } else { i18n::check_measure_dryer() }}</p>
            })}
            <p class="problem" role="alert">{move || problem.get().map(problem_text)}</p>
        </form>
    }
}
