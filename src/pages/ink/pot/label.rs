//! A pot's label: drawn once, then shown, printed and shared as drawn.

use super::ledger_text::scale_step;
use crate::components::{Icon, NotHere, Page};
use crate::i18n;
use crate::platform::canvas::Canvas;
use crate::platform::files::{ExportOutcome, Outgoing};
use crate::platform::{canvas, clock, spawn_local};
use crate::route::{PotRoute, Route};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{BAND_WIDTH, LABEL_SIZE, LabelWords, PotLabel, label_layout, pot_label};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// The label, and buttons to print and share it.
#[component]
pub fn LabelPage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let label = Memo::new(move |_| store.shop.with(|shop| pot_label(shop, id)));
    let here = Memo::new(move |_| label.with(Option::is_some));
    move || {
        if !here.get() {
            return view! { <NotHere/> }.into_any();
        }
        view! {
            <Page title=Signal::derive(|| i18n::pot_label().to_owned()) up=Route::Pot(PotRoute::Pot(id)) class="pot-label">
                {move || label.get().map(|label| view! { <Sheet label step=scale_step(store)/> })}
            </Page>
        }.into_any()
    }
}

#[component]
fn Sheet(label: PotLabel, step: Grams) -> impl IntoView {
    let store = Store::from_context();
    let words = label_words(&label, step);
    let said = in_words(&words);
    let canvas = drawn(&words, label.colour.map(|colour| colour.to_string()));
    let address = canvas.as_ref().and_then(Canvas::address);
    // Created before the tap, since sharing is allowed only during a tap.
    let file = RwSignal::new(None::<send_wrapper::SendWrapper<Outgoing>>);
    let name = file_name(&label);
    if let Some(canvas) = canvas {
        spawn_local(async move {
            file.set(canvas.file(&name).await.map(send_wrapper::SendWrapper::new));
        });
    }
    let leave = move |share: bool| {
        let Some(outgoing) = file.get_untracked() else { return };
        spawn_local(async move {
            let left = if share { outgoing.share().await } else { outgoing.download() };
            if left == ExportOutcome::Failed {
                store.notify(i18n::pot_label_not_left());
            }
        });
    };
    view! {
        {address.map(|address| view! { <img class="pot-paper" id="paper" src=address alt=said.clone()/> })}
        <div class="button-row pot-label-ways">
            <button type="button" class="button primary with-icon" id="print" on:click=move |_| canvas::print()><Icon name="print"/>{i18n::pot_label_print()}</button>
            {move || file.get().map(|outgoing| view! {
                {outgoing.can_share().then(|| view! { <button type="button" class="button with-icon" id="share" on:click=move |_| leave(true)><Icon name="out"/>{i18n::share()}</button> })}
                <button type="button" class="button with-icon" id="keep" on:click=move |_| leave(false)><Icon name="in"/>{i18n::pot_label_keep()}</button>
            })}
        </div>
        <p class="quiet-line pot-label-ways">{i18n::pot_label_hint()}</p>
    }
}

/// The texts on the label.
fn label_words(label: &PotLabel, step: Grams) -> LabelWords {
    let mut notes = Vec::new();
    if let Some(yes) = &label.approval {
        let on = i18n::date(clock::now().day_of(yes.at));
        notes.push(if yes.client.is_empty() {
            i18n::pot_label_yes_alone(on)
        } else {
            i18n::pot_label_yes(&yes.client, on)
        });
    }
    let join = |parts: Vec<String>| parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" · ");
    let mut foot = vec![join(vec![
        i18n::pot_weight(label.grams, step),
        i18n::date(clock::now().day_of(label.made)),
        label.by.clone().map(i18n::pot_label_by).unwrap_or_default(),
    ])];
    let job = join(vec![label.job.clone(), label.client.clone()]);
    foot.extend((!job.is_empty()).then_some(job));
    if label.pot != label.name {
        notes.insert(0, label.pot.clone());
    }
    let percents = i18n::pot_percents(&label.parts.iter().map(|part| part.percent).collect::<Vec<_>>());
    LabelWords {
        name: label.name.clone(),
        mark: i18n::pot_holds(&label.holds),
        notes,
        parts: label
            .parts
            .iter()
            .map(|part| part.name.clone())
            .zip(percents)
            .map(|(name, percent)| [name, percent])
            .collect(),
        more: (0..=label.parts.len()).map(|left| i18n::pot_label_more(left as u32)).collect(),
        foot,
    }
}

/// The same as one text for screen readers.
fn in_words(words: &LabelWords) -> String {
    let parts = words.parts.iter().map(|[name, percent]| format!("{name} {percent}"));
    let all = [words.name.clone(), words.mark.clone()].into_iter().chain(words.notes.iter().cloned());
    all.chain(parts).chain(words.foot.iter().cloned()).collect::<Vec<_>>().join(", ")
}

fn drawn(words: &LabelWords, colour: Option<String>) -> Option<Canvas> {
    let canvas = Canvas::new(LABEL_SIZE)?;
    canvas.fill([0.0, 0.0, BAND_WIDTH, LABEL_SIZE[1]], "#000000");
    canvas.fill([2.0, 2.0, BAND_WIDTH - 4.0, LABEL_SIZE[1] - 4.0], &colour.unwrap_or_else(|| "#ffffff".into()));
    for placed in label_layout(words, &|text, size, bold| canvas.width_of(text, size, bold)) {
        canvas.write(&placed.text, [placed.x, placed.y], placed.size, placed.bold);
    }
    Some(canvas)
}

/// The file name: the ink and its revision, in characters that every device allows.
fn file_name(label: &PotLabel) -> String {
    let revision = label.holds.revision.as_ref().map(|revision| format!(" {}", revision.number)).unwrap_or_default();
    let plain = |letter: char| if letter.is_alphanumeric() { letter } else { '-' };
    let name: String = label.pot.chars().take(48).chain(revision.chars()).map(plain).collect();
    format!("{name}.png")
}
