//! The form of a recipe: a new one, a new revision, or its name and colour alone.

use super::part_rows::{PartRows, Picking};
use super::sum_check::{SumLine, TypedLimits};
use crate::components::{NotHere, Page};
use crate::forms::{Facts, Field, FormSubmit, Kind, SaveBar, TextArea, bound, field_name, focus_problem, set};
use crate::i18n;
use crate::platform::ids;
use crate::route::{InkRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{InkFact, Part, RecipeForm, RecipeProblems, revision_fact, revision_name, revisions_of};
use leptos::prelude::*;

/// The initial colour of a new recipe, the same as of a new run.
const BLACK: &str = "#1c1b1a";

/// What the form does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Task {
    New,
    Edit,
    Revise,
}

/// A form and its initial state.
struct InitialForm {
    id: Subject,
    form: RecipeForm,
    before: Vec<Part>,
    parent: Option<Subject>,
    up: Route,
}

/// A new recipe, empty or for the ink of a run.
#[component]
pub fn NewRecipePage(#[prop(into)] run: Option<RunId>) -> impl IntoView {
    let store = Store::from_context();
    // A browser shows an empty colour as black, so the form starts with the colour that it shows.
    let mut form = RecipeForm { colour: BLACK.into(), ..RecipeForm::default() };
    if let Some(run) = run {
        store.shop.with_untracked(|shop| {
            if let Some(run) = shop.run(run) {
                form.name.clone_from(&run.ink);
                form.colour = run.ink_colour.map_or_else(|| BLACK.into(), |colour| colour.to_string());
            }
        });
    }
    let up = Route::Ink(InkRoute::Home);
    page(store, Task::New, InitialForm { id: ids::new_id(), form, before: Vec::new(), parent: None, up })
}

/// Its name, colour and notes; its parts too if it has none yet.
#[component]
pub fn EditRecipePage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    match begun(store, id) {
        Some(begun) if begun.before.is_empty() => page(store, Task::Revise, begun).into_any(),
        Some(begun) => page(store, Task::Edit, begun).into_any(),
        None => view! { <NotHere/> }.into_any(),
    }
}

/// A new revision: from the latest of a recipe, or from a given revision.
#[component]
pub fn RevisePage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    match begun(store, id) {
        Some(begun) => page(store, Task::Revise, begun).into_any(),
        None => view! { <NotHere/> }.into_any(),
    }
}

fn begun(store: Store, id: Subject) -> Option<InitialForm> {
    store.shop.with_untracked(|shop| {
        let chosen = shop.ink.revision(id);
        let recipe = chosen.map_or(id, |revision| revision.recipe);
        let fields = shop.ink.recipe(recipe).filter(|found| !found.deleted)?;
        let from = chosen.or_else(|| revisions_of(shop, recipe).last().copied());
        let before = from.map(|revision| revision.parts.to_vec()).unwrap_or_default();
        let up = Route::Ink(InkRoute::Recipe(recipe));
        let form = RecipeForm::of(fields, &before);
        Some(InitialForm { id: recipe, form, before, parent: from.map(|revision| revision.id), up })
    })
}

fn page(store: Store, task: Task, begun: InitialForm) -> AnyView {
    let InitialForm { id, form, before, parent, up } = begun;
    let title = match task {
        Task::New => i18n::ink_new_recipe().to_owned(),
        Task::Edit => i18n::ink_recipe_edit().to_owned(),
        Task::Revise => i18n::ink_recipe_revise(&form.name),
    };
    let form = RwSignal::new(form);
    // Whether a new revision would be the same as the one before.
    let same = RwSignal::new(false);
    let revision = ids::new_id();
    let submit = FormSubmit::new(Box::new(move || {
        store.shop.with(|shop| {
            let checked = form.with(|form| form.check(shop, Some(id), &before))?;
            let mut facts = set(id, checked.fields, |fields| Fact::Ink(InkFact::RecipeSet(fields)));
            if let Some(parts) = checked.parts {
                let by = store.operator();
                let fact = revision_fact(shop, id, parts, parent, None, &checked.why, by.as_deref());
                facts.push((revision, Fact::Ink(fact)));
            }
            Ok(facts)
        })
    }))
    .with_draft(form);
    let problems: RwSignal<RecipeProblems> = submit.problems;
    Effect::new(move || {
        form.track();
        if same.get_untracked() {
            same.set(false);
        }
    });
    let saved = move || {
        if let Some(name) = store.shop.with_untracked(|shop| revision_name(shop, revision)) {
            store.notify(i18n::ink_saved_revision(i18n::ink_revision_name(&name)));
        }
        Route::Ink(InkRoute::Recipe(id)).replace();
    };
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        match submit.validate() {
            None => {}
            Some(facts) if task == Task::Revise && facts.is_empty() => {
                same.set(true);
                focus_problem();
            }
            Some(facts) => submit.save(store, facts, Box::new(saved)),
        }
    };
    let fields = Signal::derive(move || problems.with(|problems| problems.fields.clone()));
    let picking = Picking::new();
    let parent_name = parent.and_then(|id| store.shop.with_untracked(|shop| revision_name(shop, id)));
    let same_words = parent_name.map(|name| i18n::ink_same_parts(i18n::ink_revision_name(&name)));
    let with_parts = task != Task::Edit;
    let with_fields = task != Task::Revise || form.with_untracked(|form| form.parts.is_empty());
    view! {
        <Page title=Signal::derive(move || title.clone()) up class="form">
            <form on:submit=save novalidate=true>
                {submit.draft_line()}
                {with_fields.then(|| view! { <NameAndColour form fields/> })}
                {with_parts.then(|| view! { <Parts form submit picking/> })}
                {(task == Task::Revise).then(|| view! {
                    <TextArea label=i18n::ink_why() bound=bound!(form.why) problems=fields/>
                    <p class="field-help ink-under"><span>{i18n::ink_why_hint()}</span></p>
                })}
                {with_fields.then(|| view! { <TextArea label=i18n::notes() bound=bound!(form.note) problems=fields/> })}
                {move || same.get().then(|| view! { <p class="problem" role="alert" id="same">{same_words.clone()}</p> })}
                <SaveBar problems=all_problems(problems) busy=submit.busy/>
            </form>
            {picking.sheet(form)}
        </Page>
    }.into_any()
}

/// All problems, as the save bar counts them.
fn all_problems(problems: RwSignal<RecipeProblems>) -> Signal<Problems> {
    Signal::derive(move || {
        problems.with(|problems| {
            let mut all = problems.fields.clone();
            if let Some((_, problem)) = problems.rows.first() {
                all.insert("rows", *problem);
            }
            if problems.sum.is_some() {
                all.insert("sum", lastpull_core::form::FormProblem::Missing);
            }
            all
        })
    })
}

#[component]
fn NameAndColour(form: RwSignal<RecipeForm>, fields: Signal<Problems>) -> impl IntoView {
    view! {
        <div class="field-pair colour-pair">
            <Field label=i18n::ink_colour() kind=Kind::Colour bound=bound!(form.colour).named("ink_colour") problems=fields/>
            <Field label=i18n::ink_recipe_name() kind=Kind::Words bound=bound!(form.name) problems=fields hint=i18n::ink_recipe_name_hint()/>
        </div>
    }
}

#[component]
fn Parts(form: RwSignal<RecipeForm>, submit: FormSubmit<Facts, RecipeProblems>, picking: Picking) -> impl IntoView {
    let problems: RwSignal<RecipeProblems> = submit.problems;
    let missing =
        Memo::new(move |_| problems.with(|problems| problems.fields.contains_key(field_name!(RecipeForm.parts))));
    view! {
        <fieldset class="group ink-parts-group" id="parts">
            <legend>{i18n::ink_recipe_parts()}</legend>
            <PartRows form problems picking/>
            {move || missing.get().then(|| view! { <p class="problem" id="parts-missing">{i18n::ink_parts_missing()}</p> })}
            <SumLine form asked=submit.failed/>
            <TypedLimits form/>
        </fieldset>
    }
}
