//! A run in the schedule.

use crate::components::drag::PointerDrag;
use crate::components::{GarmentChip, Icon};
use crate::i18n;
use crate::pages::shared::{Waits, out_at};
use crate::route::Route;
use lastpull_core::ids::RunId;
use lastpull_core::plan::{Rail, RailRun, RunFit};
use lastpull_core::time::Estimate;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, PointerEvent};

/// A run being dragged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DraggedRun {
    /// The run.
    pub run: RunId,
    /// Where the drag began, in pixels from the top of the window.
    pub from: f64,
    /// How far it has moved, in pixels.
    pub by: f64,
}

/// A run in the schedule: what it is, when it is finished, and its handles.
#[component]
pub fn RunBlock(
    id: RunId,
    state: Memo<Rail>,
    drag: PointerDrag<DraggedRun>,
    place: Callback<(RunId, usize)>,
    drop_at: Callback<f64, Option<usize>>,
) -> impl IntoView {
    let run = Memo::new(move |_| state.with(|rail| rail.runs.iter().find(|run| run.id == id).cloned()));
    let index = Memo::new(move |_| state.with(|rail| rail.runs.iter().position(|run| run.id == id).unwrap_or(0)));
    let first = Memo::new(move |_| state.with(|rail| rail.runs.iter().filter(|run| run.on_press).count()));
    let last = Memo::new(move |_| state.with(|rail| rail.runs.len().saturating_sub(1)));
    move || {
        run.get().map(|run| {
            let title = run.title.clone();
            view! {
                <div class="run-block" class:on-press=run.on_press data-fit=fit_name(run.fit)>
                    <a class="run-link" href=Route::Run(id).hash()>
                        <GarmentChip garment=run.garment_colour ink=run.ink_colour/>
                        <span class="run-words">
                            <strong>{run.title.clone()}</strong>
                            <span>{i18n::location(run.location)}" · "{run.ink.clone()}</span>
                            <small class="muted">{run.garment.clone()}", "{i18n::fabric(run.fabric)}</small>
                            <Waits run=run.clone()/>
                            {run.due.map(|due| view! { <small class="muted">{i18n::due_at(i18n::due(due))}</small> })}
                        </span>
                        <Finish run=run.clone()/>
                    </a>
                    <Handles id title on_press=run.on_press index first last drag place drop_at/>
                </div>
            }
        })
    }
}

#[component]
fn Finish(run: RailRun) -> impl IntoView {
    let (icon, words) = match run.fit {
        RunFit::Fits if run.ends_at_press => ("check", i18n::fit_fits_printed()),
        RunFit::Fits => ("check", i18n::fit_fits()),
        RunFit::Likely => ("check", i18n::fit_likely()),
        RunFit::Tight => ("clock", i18n::fit_tight()),
        RunFit::HardlyDue => ("alert", i18n::fit_hardly_due()),
        RunFit::HardlyClosing => ("alert", i18n::fit_hardly_closing()),
        RunFit::MissesDue => ("alert", i18n::fit_misses_due()),
        RunFit::MissesClosing => ("alert", i18n::fit_misses_closing()),
        RunFit::Later => ("next", i18n::fit_later()),
        RunFit::Depends => ("info", i18n::fit_depends()),
        RunFit::Unknown => ("info", i18n::fit_unknown()),
    };
    view! {
        <span class="run-finish">
            <span class="run-pieces">{i18n::of_pieces(run.good, run.planned)}</span>
            {run.finish.map(|Estimate { expected, low: early, high: late }| view! {
                <strong class="out">{out_at(i18n::moment(expected), run.ends_at_press)}</strong>
                <small>{if run.is_earliest_possible {
                    i18n::at_the_earliest().to_owned()
                } else {
                    i18n::likely_between(i18n::between(early, late))
                }}</small>
            })}
            {run.on_press.then(|| view! { <span class="badge press">{i18n::on_press()}</span> })}
            <span class="badge fit"><Icon name=icon/>{words}</span>
        </span>
    }
}

/// Handles for reordering a run by dragging or with buttons.
#[component]
fn Handles(
    id: RunId,
    title: String,
    on_press: bool,
    index: Memo<usize>,
    first: Memo<usize>,
    last: Memo<usize>,
    drag: PointerDrag<DraggedRun>,
    place: Callback<(RunId, usize)>,
    drop_at: Callback<f64, Option<usize>>,
) -> impl IntoView {
    let take = move |event: PointerEvent| {
        if let Some(handle) = event.target().and_then(|target| target.dyn_into::<Element>().ok()) {
            drag.start(&handle, &event, DraggedRun { run: id, from: f64::from(event.client_y()), by: 0.0 });
        }
    };
    let follow = move |event: PointerEvent| {
        if let Some(run) = drag.by(&event) {
            drag.moved(&event, DraggedRun { by: f64::from(event.client_y()) - run.from, ..run });
        }
    };
    let release = move |event: PointerEvent| {
        // Where it was let go is found while it is still drawn there.
        let at = drag.by(&event).and_then(|_| drop_at.run(f64::from(event.client_y())));
        if let (Some(run), Some(at)) = (drag.end(&event), at) {
            place.run((run.run, at));
        }
    };
    // The run on the press stays first.
    (!on_press)
        .then(|| {
            view! {
                <div class="handles">
                    <button
                        type="button"
                        class="icon-button"
                        aria-label=i18n::move_up(&title)
                        disabled=move || index.get() <= first.get()
                        on:click=move |_| place.run((id, index.get_untracked().saturating_sub(1)))
                    >
                        <Icon name="up"/>
                    </button>
                    <span
                        class="grip"
                        title=i18n::drag(&title)
                        on:pointerdown=take
                        on:pointermove=follow
                        on:pointerup=release
                        on:pointercancel=move |event| { drag.end(&event); }
                    >
                        <Icon name="grip"/>
                    </span>
                    <button
                        type="button"
                        class="icon-button"
                        aria-label=i18n::move_down(&title)
                        disabled=move || index.get() == last.get()
                        on:click=move |_| place.run((id, index.get_untracked() + 1))
                    >
                        <Icon name="down"/>
                    </button>
                </div>
            }
        })
        .into_any()
}

/// CSS class of a fit.
fn fit_name(fit: RunFit) -> &'static str {
    match fit {
        RunFit::Fits => "fits",
        RunFit::Likely => "likely",
        RunFit::Tight => "tight",
        RunFit::HardlyDue | RunFit::HardlyClosing => "hardly",
        RunFit::MissesDue => "misses-due",
        RunFit::MissesClosing => "misses",
        RunFit::Later => "later",
        RunFit::Depends => "depends",
        RunFit::Unknown => "unknown",
    }
}
