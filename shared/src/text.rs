//! Text as people type it.

/// Converts to lower case, for the letters of the app's two languages. The tables for all scripts would add
/// 10 kB to the app.
pub(crate) fn lowercase_latin(text: &str) -> String {
    let lower = |letter| match letter {
        'À'..='Ö' | 'Ø'..='Þ' => char::from_u32(letter as u32 + 32).unwrap_or(letter),
        _ => letter.to_ascii_lowercase(),
    };
    text.chars().map(lower).collect()
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
