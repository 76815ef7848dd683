//! A colour as three numbers.

use super::reading::Reading;
use crate::forms::field_name;
use crate::i18n;
use lastpull_core::form::{FormProblem, Problems};
use lastpull_core::ink::{ReadBy, ReadingForm};
use leptos::prelude::*;

/// L*, a*, b*, as an instrument shows them or as printed on a card.
#[component]
pub fn LabInputs(name: &'static str, reading: RwSignal<Reading>, hint: &'static str) -> impl IntoView {
    let form = RwSignal::new(reading.with_untracked(|reading| {
        let begun = reading.value.filter(|value| value.by == ReadBy::Instrument);
        if reading.typed == ReadingForm::default() { ReadingForm::of(begun) } else { reading.typed.clone() }
    }));
    let problems = Memo::new(move |_| {
        let mut problems = Problems::new();
        form.with(|form| form.check(&mut problems));
        // An empty field is no problem yet.
        let mistakes = problems.iter().filter(|(_, problem)| **problem != FormProblem::Missing);
        mistakes.map(|(field, problem)| (*field, *problem)).collect::<Problems>()
    });
    let typed = move |set: fn(&mut ReadingForm, String), text: String| {
        form.update(|form| {
            form.by = ReadBy::Instrument;
            set(form, text);
        });
        let mut problems = Problems::new();
        let value = form.with_untracked(|form| form.check(&mut problems));
        let wrong = !problems.is_empty();
        let typed = form.get_untracked();
        reading.set(Reading { value: value.filter(|_| !wrong), typed, wrong, ..Reading::default() });
    };
    // A text keyboard: the numeric keyboard of some phones has no minus.
    let input = move |field: &'static str, get: fn(&ReadingForm) -> &String, set: fn(&mut ReadingForm, String)| {
        let id = format!("{name}-{field}");
        view! {
            <div class="field" class:wrong=move || problems.with(|problems| problems.contains_key(field))>
                <label for=id.clone()>{axis(field)}</label>
                <input
                    id=id
                    type="text"
                    inputmode=if field == field_name!(ReadingForm.l) { "decimal" } else { "text" }
                    autocomplete="off"
                    prop:value=move || i18n::with_mark(form.with(|form| get(form).clone()))
                    on:input=move |event| typed(set, i18n::with_mark(event_target_value(&event)))
                    aria-invalid=move || problems.with(|problems| problems.contains_key(field)).to_string()
                    aria-describedby=format!("{name}-help")
                />
            </div>
        }
    };
    view! {
        <div class="colour-lab">
            {input(field_name!(ReadingForm.l), |form| &form.l, |form, text| form.l = text)}
            {input(field_name!(ReadingForm.a), |form| &form.a, |form, text| form.a = text)}
            {input(field_name!(ReadingForm.b), |form| &form.b, |form, text| form.b = text)}
        </div>
        <p class="field-help" id=format!("{name}-help")>
            {move || problems.with(|problems| match problems.iter().next() {
                Some((field, problem)) => view! { <span class="problem">{format!("{}: {}", axis(field), i18n::form_problem(*problem))}</span> }.into_any(),
                None => view! { <span>{hint}</span> }.into_any(),
            })}
        </p>
    }
}

/// The symbol of a field's axis. It is not the field's name: L* is written large, a* and b* small.
fn axis(field: &str) -> &'static str {
    if field == field_name!(ReadingForm.a) {
        "a*"
    } else if field == field_name!(ReadingForm.b) {
        "b*"
    } else {
        "L*"
    }
}
