//! A drawdown in the list, and its photos.

use crate::components::{Icon, Sheet};
use crate::i18n;
use crate::pages::photos::Photos;
use crate::store::Store;
use lastpull_core::ink::{DrawdownLine, SwatchMeasurement};
use leptos::prelude::*;

/// A drawdown in the list: the seen colour beside the computed one.
#[component]
pub fn Line(
    line: DrawdownLine,
    /// The drawdown whose photos are shown.
    shown: RwSignal<Option<DrawdownLine>>,
) -> impl IntoView {
    let store = Store::from_context();
    let event = line.event;
    let off = line
        .off
        .map_or_else(|| i18n::colour_line_unused().to_owned(), |off| i18n::colour_line_off(i18n::colour_de(off)));
    let said = line.said.unwrap_or(line.seen);
    let how = match &line.made.seen {
        SwatchMeasurement::Colour(reading) => i18n::colour_read_by(reading.by),
        SwatchMeasurement::Curve(_) | SwatchMeasurement::Flat(_) => i18n::colour_line_curve(),
    };
    let words = i18n::colour_line(&line);
    let label = format!("{}: {words}", i18n::delete());
    let delete = move |_| {
        store.delete_with_undo(event, i18n::colour_drawn_deleted());
    };
    let note = Some(line.made.note.clone()).filter(|note| !note.is_empty());
    let colours = [line.seen, said].map(|lab| lab.to_colour().to_string());
    let at = line.at;
    let [seen, said] = colours;
    let pictures = Memo::new(move |_| store.shop.with(|shop| shop.photos.of(event).len() as u32));
    let picture = move |pictures: u32| {
        let label = format!("{}: {}", i18n::photos_n(pictures), i18n::colour_line(&line));
        let line = line.clone();
        view! { <button type="button" class="icon-button" aria-label=label on:click=move |_| shown.set(Some(line.clone()))><Icon name="picture"/></button> }
    };
    view! {
        <li>
            <span class="colour-two" aria-hidden="true">
                <span style:background-color=seen></span>
                <span style:background-color=said></span>
            </span>
            <span class="row-words">
                <strong>{words}</strong>
                <small class="muted">{how}" · "{off}" · "{i18n::moment(at)}</small>
                {note.map(|note| view! { <small class="muted">{note}</small> })}
            </span>
            {move || Some(pictures.get()).filter(|pictures| *pictures > 0).map(&picture)}
            <button type="button" class="icon-button" aria-label=label on:click=delete><Icon name="bin"/></button>
        </li>
    }
}

/// The photos of a drawdown.
#[component]
pub fn Shown(line: DrawdownLine, on_close: Callback<()>) -> impl IntoView {
    view! { <Sheet title=i18n::colour_line(&line) on_close><Photos subject=line.event/></Sheet> }
}
