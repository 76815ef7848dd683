//! The dialogs of the count: a misprint's cause, a number, the reason for a stop, ending the run.

use super::actions::end_run;
use crate::components::{Choice, Icon, Sheet, Switch};
use crate::forms::focus_problem;
use crate::i18n::{self, Term};
use crate::pages::help::LazyHelp;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::RunId;
use lastpull_core::job::Size;
use lastpull_core::run::{CountView, MisprintCause, StopCause, UndoView};
use lastpull_core::units::parse_whole;
use leptos::prelude::*;

/// The open dialog.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asking {
    /// The cause of a misprint.
    Misprint,
    /// A number to add or subtract.
    Number,
    /// The reason for a stop.
    Stop,
    /// Whether to end before all pieces are printed.
    End,
}

/// The open dialog, if any.
#[component]
pub fn Sheets(
    id: RunId,
    count: Memo<CountView>,
    size: Memo<Option<Size>>,
    asking: RwSignal<Option<Asking>>,
) -> impl IntoView {
    let close = Callback::new(move |()| asking.set(None));
    move || match asking.get() {
        None => ().into_any(),
        Some(Asking::Misprint) => view! { <Misprint id count size close/> }.into_any(),
        Some(Asking::Number) => view! { <Number id count size close/> }.into_any(),
        Some(Asking::Stop) => view! { <Stop id count close/> }.into_any(),
        Some(Asking::End) => view! { <End id count close/> }.into_any(),
    }
}

#[component]
fn Misprint(id: RunId, count: Memo<CountView>, size: Memo<Option<Size>>, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    // Most misprints are seen as the garment leaves the platen, after its pull was counted.
    let counted = RwSignal::new(count.with_untracked(|count| count.good > 0));
    let last_size = count.with_untracked(|count| {
        if let Some(UndoView::Pulled { size, .. }) = count.undo { size } else { size.get_untracked() }
    });
    let of = RwSignal::new(last_size);
    let sizes = count
        .with_untracked(|count| count.sizes.iter().map(|row| (row.size, i18n::size(row.size))).collect::<Vec<_>>());
    let note = move |cause: MisprintCause| {
        close.run(());
        let fact =
            |pieces| Fact::Misprinted { pieces, size: of.get_untracked(), cause, was_counted: counted.get_untracked() };
        store.record_with_undo(
            vec![(id, fact(1))],
            vec![(id, fact(-1))],
            i18n::misprint_noted(i18n::misprint_cause(cause)),
        );
    };
    view! {
        <Sheet title=i18n::misprint_title() on_close=close>
            <div class="help-row"><span class="quiet-line">{i18n::act_misprint()}</span><LazyHelp term=Term::Misprint name=i18n::act_misprint()/></div>
            <Switch id="was-counted" label=i18n::misprint_counted() hint=i18n::misprint_counted_hint() value=counted on_set=Callback::new(move |on| counted.set(on))/>
            {(sizes.len() > 1).then(|| view! {
                <Choice label=i18n::misprint_size() name="misprint-size" options=sizes value=of on_pick=Callback::new(move |size| of.set(size))/>
            })}
            <div class="cause-grid">
                {MisprintCause::ALL.into_iter().map(|cause| view! {
                    <button type="button" class="button cause" data-cause=format!("{cause:?}") on:click=move |_| note(cause)>{i18n::misprint_cause(cause)}</button>
                }).collect_view()}
            </div>
        </Sheet>
    }
}

#[component]
fn Number(id: RunId, count: Memo<CountView>, size: Memo<Option<Size>>, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let text = RwSignal::new(String::new());
    let problem = RwSignal::new(None::<String>);
    let of = RwSignal::new(size.get_untracked());
    let sizes = count
        .with_untracked(|count| count.sizes.iter().map(|row| (row.size, i18n::size(row.size))).collect::<Vec<_>>());
    let refuse = move |why: String| {
        problem.set(Some(why));
        focus_problem();
    };
    let send = move |sign: i32| match parse_whole(&text.get_untracked(), 1, 10_000) {
        Err(found) => refuse(i18n::number_problem(found)),
        Ok(pieces) => {
            let size = of.get_untracked();
            let good = count.with_untracked(|count| {
                count.sizes.iter().find(|row| row.size == size).map_or(count.good, |row| row.good)
            });
            if sign < 0 && pieces > good {
                return refuse(i18n::number_too_many().into());
            }
            close.run(());
            let signed = sign * pieces.cast_signed();
            let said = i18n::pieces(pieces);
            let text = if sign > 0 { i18n::number_added(said) } else { i18n::number_taken(said) };
            let fact = |pieces| vec![(id, Fact::Pulled { pieces, size })];
            store.record_with_undo(fact(signed), fact(-signed), text);
        }
    };
    view! {
        <Sheet title=i18n::number_title() on_close=close>
            <p>{i18n::number_hint()}</p>
            {(sizes.len() > 1).then(|| view! {
                <Choice label=i18n::misprint_size() name="number-size" options=sizes value=of on_pick=Callback::new(move |size| of.set(size))/>
            })}
            <form novalidate=true on:submit=move |event| { event.prevent_default(); send(1); }>
                <div class="field">
                    <label for="pieces">{i18n::pieces_how_many()}</label>
                    <div class="field-input">
                        <input id="pieces" type="text" inputmode="numeric" autocomplete="off" prop:value=move || i18n::with_mark(text.get()) on:input=move |event| text.set(i18n::with_mark(event_target_value(&event))) aria-invalid=move || problem.with(Option::is_some).to_string() aria-describedby="pieces-help"/>
                    </div>
                    <p class="problem" role="alert" id="pieces-help">{problem}</p>
                </div>
                <div class="button-row">
                    <button type="submit" class="button primary with-icon" id="number-add"><Icon name="plus"/>{i18n::number_add()}</button>
                    <button type="button" class="button with-icon" id="number-take" on:click=move |_| send(-1)><Icon name="minus"/>{i18n::number_take()}</button>
                </div>
            </form>
        </Sheet>
    }
}

#[component]
fn Stop(id: RunId, count: Memo<CountView>, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let stop = move |cause: StopCause| {
        close.run(());
        store.record(id, Fact::Stopped(cause));
    };
    view! {
        <Sheet title=i18n::stop_title() on_close=close>
            <p class="caution"><Icon name="heat"/>{i18n::caution_stopped()}</p>
            <div class="cause-grid">
                {StopCause::ALL.into_iter().map(|cause| view! {
                    <button type="button" class="button cause" data-cause=format!("{cause:?}") on:click=move |_| stop(cause)>{i18n::stop_cause(cause)}</button>
                }).collect_view()}
            </div>
            <h3>{i18n::end_short_title()}</h3>
            <EndShort id count close/>
        </Sheet>
    }
}

#[component]
fn End(id: RunId, count: Memo<CountView>, close: Callback<()>) -> impl IntoView {
    view! {
        <Sheet title=i18n::end_short_title() on_close=close>
            <EndShort id count close/>
        </Sheet>
    }
}

/// What ending the run now means.
#[component]
fn EndShort(id: RunId, count: Memo<CountView>, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let left = count.with_untracked(|count| count.left);
    view! {
        <p>{i18n::end_short_text(left)}</p>
        <div class="button-row">
            <button type="button" class="button" id="end-anyway" on:click=move |_| { close.run(()); end_run(store, id); }>{i18n::end_anyway()}</button>
        </div>
    }
}
