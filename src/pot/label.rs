//! A pot's label: drawn once, and seen, printed and sent as it was drawn.

use super::happened::scale_step;
use crate::parts::{Icon, NotHere, Page};
use crate::place::{Place, PotPlace};
use crate::platform::files::{Left, Outgoing};
use crate::platform::paper::{self, Paper};
use crate::platform::{clock, spawn_local};
use crate::store::Store;
use crate::words;
use lastpull_core::ink::{BAND, LABEL, LabelWords, PotLabel, label_layout, pot_label};
use lastpull_core::journal::Subject;
use lastpull_core::quantity::Grams;
use leptos::prelude::*;

/// The label, and the ways out of the app.
#[component]
pub fn LabelScreen(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let label = Memo::new(move |_| store.shop.with(|shop| pot_label(shop, id)));
    let here = Memo::new(move |_| label.with(Option::is_some));
    move || {
        if !here.get() {
            return view! { <NotHere/> }.into_any();
        }
        view! {
            <Page title=Signal::derive(|| words::pot_label().to_owned()) up=Place::Pot(PotPlace::Pot(id)) class="pot-label">
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
    let paper = drawn(&words, label.colour.map(|colour| colour.to_string()));
    let address = paper.as_ref().and_then(Paper::address);
    // Made before the tap, so that the tap itself can share it.
    let file = RwSignal::new(None::<send_wrapper::SendWrapper<Outgoing>>);
    let name = file_name(&label);
    if let Some(paper) = paper {
        spawn_local(async move {
            file.set(paper.file(&name).await.map(send_wrapper::SendWrapper::new));
        });
    }
    let leave = move |share: bool| {
        let Some(outgoing) = file.get_untracked() else { return };
        spawn_local(async move {
            let left = if share { outgoing.share().await } else { outgoing.download() };
            if left == Left::Failed {
                store.tell(words::pot_label_not_left());
            }
        });
    };
    view! {
        {address.map(|address| view! { <img class="pot-paper" id="paper" src=address alt=said.clone()/> })}
        <div class="button-row pot-label-ways">
            <button type="button" class="button primary with-icon" id="print" on:click=move |_| paper::print()><Icon name="print"/>{words::pot_label_print()}</button>
            {move || file.get().map(|outgoing| view! {
                {outgoing.can_share().then(|| view! { <button type="button" class="button with-icon" id="share" on:click=move |_| leave(true)><Icon name="out"/>{words::share()}</button> })}
                <button type="button" class="button with-icon" id="keep" on:click=move |_| leave(false)><Icon name="in"/>{words::pot_label_keep()}</button>
            })}
        </div>
        <p class="quiet-line pot-label-ways">{words::pot_label_hint()}</p>
    }
}

/// What is written on it.
fn label_words(label: &PotLabel, step: Grams) -> LabelWords {
    let mut notes = Vec::new();
    if let Some(yes) = &label.approval {
        let on = words::date(clock::now().day_of(yes.at));
        notes.push(if yes.client.is_empty() {
            words::pot_label_yes_alone(on)
        } else {
            words::pot_label_yes(&yes.client, on)
        });
    }
    let join = |parts: Vec<String>| parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" · ");
    let mut foot = vec![join(vec![
        words::pot_weight(label.grams, step),
        words::date(clock::now().day_of(label.made)),
        label.by.clone().map(words::pot_label_by).unwrap_or_default(),
    ])];
    let job = join(vec![label.job.clone(), label.client.clone()]);
    foot.extend((!job.is_empty()).then_some(job));
    if label.pot != label.name {
        notes.insert(0, label.pot.clone());
    }
    LabelWords {
        name: label.name.clone(),
        mark: words::pot_holds(&label.holds),
        notes,
        parts: label.parts.iter().map(|part| [part.name.clone(), words::pot_percent(part.percent)]).collect(),
        more: (0..=label.parts.len()).map(|left| words::pot_label_more(left as u32)).collect(),
        foot,
    }
}

/// The same for readers.
fn in_words(words: &LabelWords) -> String {
    let parts = words.parts.iter().map(|[name, percent]| format!("{name} {percent}"));
    let all = [words.name.clone(), words.mark.clone()].into_iter().chain(words.notes.iter().cloned());
    all.chain(parts).chain(words.foot.iter().cloned()).collect::<Vec<_>>().join(", ")
}

fn drawn(words: &LabelWords, colour: Option<String>) -> Option<Paper> {
    let paper = Paper::new(LABEL)?;
    paper.fill([0.0, 0.0, BAND, LABEL[1]], "#000000");
    paper.fill([2.0, 2.0, BAND - 4.0, LABEL[1] - 4.0], &colour.unwrap_or_else(|| "#ffffff".into()));
    for placed in label_layout(words, &|text, size, bold| paper.width_of(text, size, bold)) {
        paper.write(&placed.text, [placed.x, placed.y], placed.size, placed.bold);
    }
    Some(paper)
}

/// The ink and its revision, in letters that every device takes for a file.
fn file_name(label: &PotLabel) -> String {
    let revision = label.holds.revision.as_ref().map(|revision| format!(" {}", revision.number)).unwrap_or_default();
    let plain = |letter: char| if letter.is_alphanumeric() { letter } else { '-' };
    let name: String = label.pot.chars().take(48).chain(revision.chars()).map(plain).collect();
    format!("{name}.png")
}
