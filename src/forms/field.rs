//! A field of a form, with its error message.

use super::bind::Bound;
use crate::i18n;
use lastpull_core::form::Problems;
use lastpull_core::units::LengthUnit;
use leptos::prelude::*;

/// Most suggestions offered while typing.
const MOST_SUGGESTIONS: usize = 200;

/// What a field accepts; chooses the on-screen keyboard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Text.
    Words,
    /// A whole number.
    Whole,
    /// A number with decimals.
    Decimal,
    /// A length: a number with decimals or, in inches, a fraction such as `1 1/2`.
    Length,
    /// A date.
    Day,
    /// A time of day.
    Time,
    /// A colour.
    Colour,
}

impl Kind {
    /// Type and input mode of its input.
    pub fn input(self) -> (&'static str, &'static str) {
        match self {
            Self::Words => ("text", "text"),
            // Not `type=number`: browsers return no value for input that they cannot parse, and input must not be lost.
            Self::Whole => ("text", "numeric"),
            Self::Decimal => ("text", "decimal"),
            // Keyboards of numbers only have no `/`.
            Self::Length if i18n::units().length == LengthUnit::Inches => ("text", "text"),
            Self::Length => ("text", "decimal"),
            Self::Day => ("date", "text"),
            Self::Time => ("time", "text"),
            Self::Colour => ("color", "text"),
        }
    }
}

/// The problem of a field in words.
pub fn problem_text(problems: impl With<Value = Problems>, name: &str) -> Option<String> {
    problems.with(|problems| problems.get(name).map(|problem| i18n::form_problem(*problem)))
}

/// A labelled input with its error message.
#[component]
pub fn Field(
    /// Label.
    #[prop(into)]
    label: String,
    /// What it accepts.
    kind: Kind,
    /// The text of the form, and its name.
    bound: Bound,
    /// Problems of the form, by field name.
    #[prop(into)]
    problems: Signal<Problems>,
    /// The unit of the number.
    #[prop(optional)]
    unit: &'static str,
    /// Help text below the field.
    #[prop(optional, into)]
    hint: String,
    /// Earlier values to suggest.
    #[prop(optional)]
    suggestions: Vec<String>,
    /// A "?" button beside the label.
    #[prop(optional)]
    help: Option<ViewFn>,
) -> impl IntoView {
    let (input_type, input_mode) = kind.input();
    let name = bound.name;
    let problem = move || problem_text(problems, name);
    // The form has a decimal point and commas between thousands, the field what is written in its region.
    let is_number = matches!(kind, Kind::Whole | Kind::Decimal | Kind::Length);
    let noted = move |text: String| if is_number { i18n::with_mark(text) } else { text };
    let list = format!("{name}-list");
    let has_list = !suggestions.is_empty();
    view! {
        <div class="field" class:wrong=move || problem().is_some()>
            <label for=name>{label}</label>
            <div class="field-input">
                <input
                    id=name
                    name=name
                    type=input_type
                    inputmode=input_mode
                    autocomplete="off"
                    list=has_list.then(|| list.clone())
                    prop:value=move || noted(bound.value.get())
                    on:input=move |event| bound.set.run(noted(event_target_value(&event)))
                    aria-invalid=move || problem().is_some().to_string()
                    aria-describedby=format!("{name}-help")
                />
                {(!unit.is_empty()).then(|| view! { <span class="unit">{unit}</span> })}
            </div>
            {has_list.then(|| view! {
                <datalist id=list.clone()>
                    {suggestions.iter().take(MOST_SUGGESTIONS).map(|text| view! { <option value=noted(text.clone())></option> }).collect_view()}
                </datalist>
            })}
            <p class="field-help" id=format!("{name}-help")>
                {move || match problem() {
                    Some(problem) => view! { <span class="problem">{problem}</span> }.into_any(),
                    None => view! { <span>{hint.clone()}</span> }.into_any(),
                }}
            </p>
            {help.map(|help| help.run())}
        </div>
    }
}

/// A labelled input of several lines.
#[component]
pub fn TextArea(
    /// Label.
    #[prop(into)]
    label: String,
    /// The text of the form, and its name.
    bound: Bound,
    /// Problems of the form, by field name.
    #[prop(into)]
    problems: Signal<Problems>,
) -> impl IntoView {
    let name = bound.name;
    let problem = move || problem_text(problems, name);
    view! {
        <div class="field" class:wrong=move || problem().is_some()>
            <label for=name>{label}</label>
            <textarea
                id=name
                name=name
                rows="3"
                prop:value=bound.value
                on:input=move |event| bound.set.run(event_target_value(&event))
                aria-invalid=move || problem().is_some().to_string()
                aria-describedby=format!("{name}-help")
            ></textarea>
            <p class="field-help" id=format!("{name}-help")>
                {move || problem().map(|problem| view! { <span class="problem">{problem}</span> })}
            </p>
        </div>
    }
}
