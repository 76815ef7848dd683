//! A difference: in words first and large, in numbers small.

use leptos::prelude::*;
use crate::live::Drawn;
use crate::words;
use lastpull_core::ink::Difference;
use crate::live::view;

/// The words of a difference, a line each.
pub fn in_words(difference: &Difference) -> Drawn {
    if difference.words.is_empty() {
        return view! { <p class="colour-words"><strong>{words::colour_same()}</strong></p> };
    }
    let lines = difference.words.iter().map(|word| view! { <strong>{words::colour_word(word)}</strong> });
    let lines: Vec<Drawn> = lines.collect();
    view! { <p class="colour-words">{lines}</p> }
}

/// Its numbers.
pub fn in_numbers(difference: &Difference) -> String {
    words::colour_numbers(words::colour_de(difference.de2000), words::colour_de(difference.cmc))
}
