//! What is added to a ledger line afterwards: a note, a swatch reading, photos.

use super::ledger_text::scale_step;
use crate::components::Icon;
use crate::forms::{FormSubmit, SaveBar, TextArea, bound, submit_dialog};
use crate::i18n;
use crate::pages::ink::colour::{CompleteReading, PhotoOf, Reading, ReadingField, keep_picture};
use crate::pages::photos::Photos;
use crate::route::{ColourRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::facts::{Fact, FactsWithUndo};
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    ColourReading, EventNoteForm, InkFact, LedgerLine, PhotoSample, amend_reading_facts, lab_of, pot_card,
};
use leptos::prelude::*;

/// A line of a pot's ledger.
pub fn line_of(store: Store, pot: Subject, event: Subject) -> Memo<Option<LedgerLine>> {
    Memo::new(move |_| {
        store
            .shop
            .with(|shop| pot_card(shop, pot).and_then(|card| card.ledger.into_iter().find(|line| line.event == event)))
    })
}

/// The reading, photos and note of a line.
#[component]
pub fn EventDetails(pot: Subject, event: Subject, line: Memo<Option<LedgerLine>>) -> impl IntoView {
    view! {
        <Read pot event line/>
        <section class="card"><h2>{i18n::photos_title()}</h2><Photos subject=event/></section>
        <EventNote event/>
    }
}

/// The note; for a pour only.
#[component]
fn EventNote(event: Subject) -> impl IntoView {
    let store = Store::from_context();
    let Some(form) = store.shop.with_untracked(|shop| EventNoteForm::of(shop, event)) else { return ().into_any() };
    let form = RwSignal::new(form);
    let submit = FormSubmit::new(Box::new(move || {
        let reading_line = form.with(|form| store.shop.with_untracked(|shop| form.check(shop, event)))?;
        Ok(reading_line.map(|fact| (event, Fact::Ink(fact))).into_iter().collect())
    }))
    .with_draft(form);
    let problems = submit.problems;
    view! {
        <section class="card"><form on:submit=move |event| submit.submit_then(store, &event, Box::new(|| ())) novalidate=true>
            {submit.draft_line()}
            <TextArea label=i18n::pot_why() bound=bound!(form.note) problems/>
            <SaveBar problems busy=submit.busy/>
        </form></section>
    }.into_any()
}

/// The swatch reading after it; for a pour or a reading.
#[component]
fn Read(pot: Subject, event: Subject, line: Memo<Option<LedgerLine>>) -> impl IntoView {
    let store = Store::from_context();
    let kind = store.shop.with_untracked(|shop| {
        shop.ink.event(event).map(|row| (matches!(row.fact, InkFact::Poured { .. }), is_read(&row.fact)))
    });
    let now = Memo::new(move |_| line.with(|line| line.as_ref().and_then(|line| line.reading)));
    let Some((may_be_none, true)) = kind else {
        return (move || {
            now.get()
                .map(|now| view! { <section class="card"><h2>{i18n::pot_reading()}</h2>{reading_line(now)}</section> })
        })
        .into_any();
    };
    let reads = RwSignal::new(false);
    let note = move |FactsWithUndo { facts, undo }: FactsWithUndo, said: &'static str| {
        store.record_with_undo(facts, undo, said);
    };
    let again =
        move |read: Option<PhotoSample>| store.shop.with_untracked(|shop| amend_reading_facts(shop, pot, event, read));
    let save = Callback::new(move |CompleteReading { sample, photo }: CompleteReading| {
        note(again(Some(sample)), i18n::reading_noted());
        keep_picture(store, event, photo);
        reads.set(false);
    });
    let clear = move |_| note(again(None), i18n::pot_reading_off_notice());
    view! {
        <section class="card pot-read" id="read">
            <h2>{i18n::pot_reading()}</h2>
            {move || now.get().map(reading_line)}
            {move || if reads.get() {
                view! { <EventReadingForm pot save/> }.into_any()
            } else {
                let is = now.with(Option::is_some);
                view! {
                    <div class="button-row">
                        <button type="button" class="button with-icon" id="read-it" on:click=move |_| reads.set(true)><Icon name="drop"/>{if is { i18n::colour_read_again() } else { i18n::pot_read_it() }}</button>
                        {(is && may_be_none).then(|| view! { <button type="button" class="button quiet" id="read-off" on:click=clear>{i18n::pot_reading_off()}</button> })}
                    </div>
                }.into_any()
            }}
        </section>
    }.into_any()
}

fn is_read(fact: &InkFact) -> bool {
    matches!(fact, InkFact::Poured { .. } | InkFact::SwatchRead { .. })
}

/// The form of a reading: from an instrument, as a screen colour, or from a photo beside the target.
#[component]
fn EventReadingForm(pot: Subject, save: Callback<CompleteReading>) -> impl IntoView {
    let store = Store::from_context();
    let reading = RwSignal::new(Reading::default());
    let target: Memo<Option<ColourReading>> = Memo::new(move |_| {
        store.shop.with(|shop| {
            let recipe = pot_card(shop, pot).and_then(|card| card.recipe);
            recipe.and_then(|recipe| shop.ink.recipe(recipe)).and_then(|recipe| recipe.target)
        })
    });
    let problems = RwSignal::new(Problems::new());
    let check = move || reading.with_untracked(|reading| reading.check("swatch"));
    let send = submit_dialog(problems, check, move |complete| save.run(complete));
    let waits = Signal::derive(move || reading.with(|reading| reading.colour().is_none()));
    view! {
        <form on:submit=send novalidate=true>
            <ReadingField name="swatch" label=i18n::pot_reading() reading known=target photo=PhotoOf::Swatch/>
            <button type="submit" class="button primary huge" id="reading-save" disabled=waits>{i18n::save()}</button>
        </form>
    }
}

/// A recorded reading.
fn reading_line(reading: ColourReading) -> AnyView {
    let [l, a, b] = reading.lab().map(|value| i18n::number(value, 1));
    let colour = lab_of(reading).to_colour().to_string();
    view! {
        <p class="pot-marks"><span class="swatch" aria-hidden="true" style:background-color=colour></span><span>{format!("L* {l}  a* {a}  b* {b}")}" · "{i18n::colour_read_by(reading.by)}</span></p>
    }.into_any()
}

/// The addition just recorded: read it, photograph it, or continue.
#[component]
pub fn AdditionRecorded(
    /// The pot.
    pot: Subject,
    /// The pour.
    event: Subject,
    /// Adds the same component again.
    same: Callback<()>,
    /// Adds another component.
    other: Callback<()>,
) -> impl IntoView {
    let store = Store::from_context();
    let line = line_of(store, pot, event);
    let step = scale_step(store);
    view! {
        <section class="pot-added" id="added">
            {move || line.get().map(|line| view! {
                <div class="pot-last">
                    <p><strong>{super::ledger_text::signed_weight(&line, step)}" "{super::ledger_text::event_text(&line, step)}</strong><span>{i18n::pot_now_holds(i18n::pot_weight(line.total, step))}</span></p>
                </div>
            })}
            <div class="pot-go-on">
                <button type="button" class="button huge with-icon primary" id="same" on:click=move |_| same.run(())><Icon name="repeat"/>{i18n::pot_same_again()}</button>
                <button type="button" class="button huge with-icon" id="other" on:click=move |_| other.run(())><Icon name="plus"/>{i18n::pot_something_else()}</button>
                <a class="button huge with-icon" id="to-match" href=Route::Colour(ColourRoute::Match(pot)).hash()><Icon name="drop"/>{i18n::pot_to_match()}</a>
                <a class="button huge with-icon" id="to-pot" href=Route::Pot(PotRoute::Pot(pot)).hash()><Icon name="ink"/>{i18n::colour_to_pot()}</a>
            </div>
            <EventDetails pot event line/>
        </section>
    }
}
