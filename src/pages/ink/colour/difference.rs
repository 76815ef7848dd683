//! A colour difference: in words, large, and in numbers, small.

use crate::i18n;
use lastpull_core::ink::ColourDifference;
use leptos::prelude::*;

/// The difference in words, one line per term.
pub fn in_words(difference: &ColourDifference) -> AnyView {
    if difference.words.is_empty() {
        return view! { <p class="colour-words"><strong>{i18n::colour_same()}</strong></p> }.into_any();
    }
    let lines = difference.words.iter().map(|word| view! { <strong>{i18n::colour_word(word)}</strong> });
    let lines = lines.collect_view();
    view! { <p class="colour-words">{lines}</p> }.into_any()
}

/// The difference in numbers.
pub fn in_numbers(difference: &ColourDifference) -> String {
    i18n::colour_numbers(i18n::colour_de(difference.de2000), i18n::colour_de(difference.cmc))
}
