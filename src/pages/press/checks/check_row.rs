//! One check: the expected value, the value before, and the result.

use crate::components::{Icon, Swatch};
use crate::forms::submit_dialog;
use crate::i18n;
use crate::i18n::check_values::{expected_text, read_value, tolerance_text, unit_text, value_text};
use crate::route::{Route, ScreensRoute};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::MeasuredBreach;
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
                <li class="check" class:made=row.state != CheckState::Open data-item=format!("{item:?}")>
                    <div class="check-words">
                        <span class="check-item">{i18n::check_item(item)}</span>
                        <span class="check-expected">
                            {colour_of(&row.expected).map(|colour| view! { <Swatch colour=colour/> })}
                            <strong>{with_colour(expected_text(item, &row.expected), row.colours.as_ref().map(colour_now))}</strong>
                            {tolerance_text(item, &row.expected).map(|words| view! { <small>{words}</small> })}
                        </span>
                        {row.before.as_ref().map(|before| view! {
                            <span class="check-was">
                                {colour_of(before).map(|colour| view! { <Swatch colour=colour/> })}
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

fn colour_of(expected: &Expected) -> Option<Option<lastpull_core::colour::Colour>> {
    match expected {
        Expected::Garment { colour, .. } | Expected::Ink { colour, .. } => Some(*colour),
        _ => None,
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
    let (tone, icon, text) = match row.state {
        CheckState::Open => return ().into_any(),
        CheckState::Ticked => ("good", "check", i18n::check_ticked().to_owned()),
        CheckState::Skipped => ("tight", "skip", i18n::check_skipped().to_owned()),
        CheckState::Measured { value, breach: Some(breach), .. } => {
            ("bad", "alert", breach_text(value_text(row.item, &row.expected, value), breach))
        }
        CheckState::Measured { value, within: true, .. } => {
            ("good", "check", i18n::check_within(value_text(row.item, &row.expected, value)))
        }
        CheckState::Measured { value, within: false, .. } => {
            ("bad", "alert", i18n::check_outside(value_text(row.item, &row.expected, value)))
        }
    };
    view! {
        <span class="check-found">
            <span class=format!("badge {tone}")><Icon name=icon/>{text}</span>
            <small>{made}</small>
        </span>
    }
    .into_any()
}

/// What a measured temperature breaches.
fn breach_text(value: String, breach: MeasuredBreach) -> String {
    match breach {
        MeasuredBreach::Limit(limit) => {
            i18n::check_at_limit(value, i18n::temperature(limit.limit), i18n::at_limit(limit.name))
        }
        MeasuredBreach::BelowCure { cure, .. } => i18n::check_below_cure(value, i18n::temperature(cure)),
    }
}

/// Buttons for right, measured and skip; or undo.
#[component]
fn CheckButtons(row: CheckRow, make: Callback<CheckOutcome>) -> impl IntoView {
    let item = row.item;
    let name = i18n::check_item(item);
    let measuring = RwSignal::new(false);
    if row.state != CheckState::Open {
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
            <button type="button" class="button tick" aria-label=format!("{name}: {}", i18n::check_tick()) on:click=move |_| make.run(CheckOutcome::Ticked)>
                <Icon name="check"/>{i18n::check_tick()}
            </button>
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

/// The form of a measured value.
#[component]
fn Measure(item: CheckItem, expected: StoredValue<Expected>, make: Callback<CheckOutcome>) -> impl IntoView {
    let text = RwSignal::new(String::new());
    let problem = RwSignal::new(None::<NumberProblem>);
    let id = format!("measure-{item:?}");
    let read = move || text.with_untracked(|text| expected.with_value(|expected| read_value(item, expected, text)));
    let send =
        submit_dialog(problem, move || read().map_err(Some), move |value| make.run(CheckOutcome::Measured(value)));
    view! {
        <form class="measure" on:submit=send novalidate=true>
            <label class="visually-hidden" for=id.clone()>{i18n::check_measured_value(i18n::check_item(item))}</label>
            <div class="field-input">
                <input
                    id=id
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    prop:value=move || i18n::with_mark(text.get())
                    on:input=move |event| text.set(event_target_value(&event))
                />
                <span class="unit">{expected.with_value(|expected| unit_text(item, expected))}</span>
            </div>
            <button type="submit" class="button primary">{i18n::save()}</button>
            {(item == CheckItem::Dryer).then(|| view! { <p class="quiet-line">{i18n::check_measure_dryer()}</p> })}
            <p class="problem" role="alert">{move || problem.get().map(i18n::number_problem)}</p>
        </form>
    }
}
