//! Colours on a garment at true relative lightness: the eye compares what is side by side.

use crate::i18n;
use lastpull_core::colour::Lab;
use leptos::prelude::*;

/// A colour and its name.
pub type Patch = (Lab, String);

/// Patches on the garment, without a gap between them.
#[component]
pub fn OnGarment(
    /// The garment's colour; `None` for the page's background.
    #[prop(into)]
    garment: Option<Lab>,
    /// The patches, from left to right.
    patches: Vec<Patch>,
    /// Whether to leave out the note that the screen cannot show a colour: if there is nothing to compare it with.
    #[prop(optional)]
    quiet: bool,
) -> impl IntoView {
    let cloth = garment.map(|garment| garment.to_colour().to_string());
    let shown = patches.iter().all(|(lab, _)| lab.shows_on_screen());
    let inks = patches.iter().map(|(lab, _)| {
        view! { <span class="colour-ink" style:background-color=lab.to_colour().to_string()></span> }
    });
    let inks = inks.collect_view();
    let names = patches.iter().map(|(_, name)| view! { <span>{name.clone()}</span> }).collect_view();
    view! {
        <figure class="colour-on">
            <div class="colour-cloth" class:known=garment.is_some() style:background-color=cloth aria-hidden="true"><div class="colour-inks">{inks}</div></div>
            <figcaption>{names}</figcaption>
            {(!shown && !quiet).then(|| view! { <p class="quiet-line">{i18n::colour_not_on_screen()}</p> })}
        </figure>
    }
}
