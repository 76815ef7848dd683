//! Colours on a garment's, at honest relative lightness: what lies beside what is what an eye compares.

use crate::i18n;
use lastpull_core::colour::Lab;
use leptos::prelude::*;

/// A colour and what it is called.
pub type Patch = (Lab, String);

/// Patches without a gap between them, on the garment.
#[component]
pub fn OnGarment(
    /// The garment's colour; the ground of the page where it is not known.
    #[prop(into)]
    garment: Option<Lab>,
    /// From left to right.
    patches: Vec<Patch>,
    /// Whether to leave unsaid that the screen falls short of a colour: where the eye has nothing to compare.
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
