//! Text as people type it.

/// Converts to lower case, for the letters of the app's two languages. The tables for all scripts would add
/// 10 kB to the app.
pub(crate) fn lowercase_latin(text: &str) -> String {
    let mut lower = String::with_capacity(text.len());
    push_lowercase_latin(&mut lower, text);
    lower
}

/// Adds a text in lower case, as [`lowercase_latin`].
pub(crate) fn push_lowercase_latin(to: &mut String, text: &str) {
    let lower = |letter| match letter {
        'À'..='Ö' | 'Ø'..='Þ' => char::from_u32(letter as u32 + 32).unwrap_or(letter),
        _ => letter.to_ascii_lowercase(),
    };
    to.extend(text.chars().map(lower));
}

#[cfg(test)]
mod tests {
    use super::lowercase_latin;

    #[test]
    fn capitals_of_both_languages_become_lower_case() {
        for text in ["Camisetas ÑANDÚ", "ÁÉÍÓÚÜ ¿Qué? ×÷ß", "TOUR tees, 2XL"] {
            assert_eq!(lowercase_latin(text), text.to_lowercase());
        }
    }
}
