//! The parts of a recipe as rows: component and amount.

use super::component_picker::ComponentPicker;
use crate::components::{Choice, Icon, Swatch};
use crate::i18n;
use crate::platform::{clock, dom};
use crate::store::Store;
use lastpull_core::colour::Colour;
use lastpull_core::form::FormProblem;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{PartForm, RecipeForm, RecipeProblems};
use leptos::prelude::*;
use std::time::Duration;

/// The row for which a component is chosen: an existing row, or a new one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Asking {
    at: Option<usize>,
    on_top: bool,
}

/// The rows, in the recipe's convention. [`Picking`] draws the dialog that chooses a component.
#[component]
pub fn PartRows(form: RwSignal<RecipeForm>, problems: RwSignal<RecipeProblems>, picking: Picking) -> impl IntoView {
    let with_top = RwSignal::new(form.with_untracked(|form| form.parts.iter().any(|row| row.on_top)));
    let conventions =
        vec![(false, i18n::ink_convention_whole().to_owned()), (true, i18n::ink_convention_top().to_owned())];
    let write = Callback::new(move |on_top: bool| {
        form.update(|form| form.set_convention(on_top));
        with_top.set(on_top);
    });
    // A fix of the sum may add rows.
    Effect::new(move || {
        if form.with(|form| form.parts.iter().any(|row| row.on_top)) {
            with_top.set(true);
        }
    });
    let hint = move || if with_top.get() { i18n::ink_convention_top_hint() } else { i18n::ink_convention_whole_hint() };
    let title = Memo::new(move |_| with_top.get());
    view! {
        <div class="ink-convention">
            <Choice label=i18n::ink_convention() name="convention" options=conventions value=with_top on_pick=write/>
            <p class="field-help"><span>{hint}</span></p>
        </div>
        {move || title.get().then(|| view! { <h3>{i18n::ink_the_ink()}</h3> })}
        <Rows form problems picking on_top=false/>
        {move || title.get().then(|| view! { <h3>{i18n::ink_on_top()}</h3> <Rows form problems picking on_top=true/> })}
    }
}

/// The open choice of a component.
#[derive(Clone, Copy)]
pub struct Picking {
    asking: RwSignal<Option<Asking>>,
}

impl Picking {
    /// No choice open.
    pub fn new() -> Self {
        Self { asking: RwSignal::new(None) }
    }

    /// The dialog, while a choice is open. It must be outside the form, since it contains a form itself.
    pub fn sheet(self, form: RwSignal<RecipeForm>) -> AnyView {
        let asking = self.asking;
        let on_pick = Callback::new(move |component: Subject| {
            let Some(Asking { at, on_top }) = asking.get_untracked() else { return };
            form.update(|form| match at.and_then(|at| form.parts.get_mut(at)) {
                Some(row) => row.component = Some(component),
                None => form.parts.push(PartForm { component: Some(component), on_top, ..PartForm::default() }),
            });
            asking.set(None);
            let at = at.unwrap_or_else(|| form.with_untracked(|form| form.parts.len().saturating_sub(1)));
            // Once the row is drawn, the amount is typed next.
            clock::after(Duration::ZERO, move || dom::focus(&percent_id(at)));
        });
        let on_close = Callback::new(move |()| asking.set(None));
        (move || asking.get().map(|_| view! { <ComponentPicker on_pick on_close/> })).into_any()
    }
}

fn percent_id(at: usize) -> String {
    format!("percent-{at}")
}

#[component]
fn Rows(
    form: RwSignal<RecipeForm>,
    problems: RwSignal<RecipeProblems>,
    picking: Picking,
    on_top: bool,
) -> impl IntoView {
    let places = Memo::new(move |_| {
        let rows = form.with(|form| form.parts.iter().map(|row| row.on_top).collect::<Vec<_>>());
        rows.into_iter().enumerate().filter(|(_, top)| *top == on_top).map(|(at, _)| at).collect::<Vec<usize>>()
    });
    let add = move |_| picking.asking.set(Some(Asking { at: None, on_top }));
    let words = if on_top { i18n::ink_add_on_top() } else { i18n::ink_add_part() };
    view! {
        <ul class="ink-parts">
            <For each=move || places.get() key=|at| *at let:at>
                <Row form problems picking at/>
            </For>
        </ul>
        <button type="button" class="button with-icon" id=if on_top { "add-on-top" } else { "add-part" } on:click=add><Icon name="plus"/>{words}</button>
    }
}

#[component]
fn Row(form: RwSignal<RecipeForm>, problems: RwSignal<RecipeProblems>, picking: Picking, at: usize) -> impl IntoView {
    let store = Store::from_context();
    let part = Memo::new(move |_| form.with(|form| form.parts.get(at).cloned().unwrap_or_default()));
    let component = Memo::new(move |_| -> Option<(String, Option<Colour>)> {
        let id = part.with(|part| part.component)?;
        store.shop.with(|shop| shop.ink.component(id).map(|found| (found.name.clone(), found.colour)))
    });
    let name = Signal::derive(move || {
        component.with(|found| found.as_ref().map_or_else(|| i18n::ink_row_component(at + 1), |(name, _)| name.clone()))
    });
    let problem = move || {
        let found = problems.with(|problems| problems.rows.iter().find(|(row, _)| *row == at).map(|(_, what)| *what));
        found.map(|what| {
            if what == FormProblem::Taken {
                i18n::ink_row_twice().to_owned()
            } else if what == FormProblem::Missing && component.with(Option::is_none) {
                i18n::ink_row_no_component().to_owned()
            } else {
                i18n::form_problem(what)
            }
        })
    };
    view! {
        <li class="ink-part" class:wrong=move || problem().is_some()>
            <button type="button" class="ink-part-pick" on:click=move |_| picking.asking.set(Some(Asking { at: Some(at), on_top: part.with(|part| part.on_top) }))>
                {move || {
                    let (name, colour) = component.get().unwrap_or_else(|| (i18n::ink_pick_component().to_owned(), None));
                    view! { <Swatch colour/><span>{name}</span> }
                }}
            </button>
            <span class="ink-part-percent">
                <input
                    id=percent_id(at)
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    aria-label=move || i18n::ink_row_percent(name.get())
                    aria-invalid=move || problem().is_some().to_string()
                    prop:value=move || i18n::with_mark(part.with(|part| part.percent.clone()))
                    on:input=move |event| {
                        let typed = i18n::with_mark(event_target_value(&event));
                        form.update(|form| if let Some(row) = form.parts.get_mut(at) { row.percent = typed });
                    }
                />
                <span class="unit">"%"</span>
            </span>
            <button
                type="button"
                class="icon-button"
                aria-label=move || i18n::ink_row_remove(name.get())
                on:click=move |_| form.update(|form| if at < form.parts.len() { form.parts.remove(at); })
            >
                <Icon name="cross"/>
            </button>
            {move || problem().map(|problem| view! { <p class="problem">{problem}</p> })}
        </li>
    }
}
