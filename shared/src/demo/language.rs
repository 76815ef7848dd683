//! The texts of the invented shop, in both languages side by side. The structure around them has one source, so that
//! only the texts differ.

/// A language in which the invented shop is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Language {
    /// English of the United States.
    English,
    /// Spanish of the Americas.
    Spanish,
}

/// A text in each language.
#[derive(Clone, Copy)]
pub(super) struct Text {
    english: &'static str,
    spanish: &'static str,
}

pub(super) const fn text(english: &'static str, spanish: &'static str) -> Text {
    Text { english, spanish }
}

/// What is the same in both languages: labels and numbers.
pub(super) const fn same(text: &'static str) -> Text {
    Text { english: text, spanish: text }
}

impl Language {
    pub(super) fn say(self, text: Text) -> String {
        let said = match self {
            Self::English => text.english,
            Self::Spanish => text.spanish,
        };
        said.to_owned()
    }
}

pub(super) const EMPTY: Text = same("");

// The crew.
pub(super) const INES: Text = text("Ines", "Inés");
pub(super) const MOSS: Text = text("Moss", "Beto");

// Clients.
pub(super) const CHOIR: Text = text("Harbor Night Choir", "Coro Nocturno del Puerto");
pub(super) const FERRY: Text = text("Slow Tide Ferry", "Lanchas Marea Lenta");
pub(super) const SEEDS: Text = text("Saltgrass Seed Library", "Banco de Semillas El Zacatal");
pub(super) const CHESS: Text = text("Tern Quay Chess Club", "Club de Ajedrez Muelle Charrán");
pub(super) const BAKERY: Text = text("Fifth Tray Bakery", "Panadería La Quinta Charola");

// Inks, by which runs, recipes and data sheets find each other.
pub(super) const APRICOT: Text = text("Apricot", "Durazno");
pub(super) const BONE: Text = text("Bone", "Hueso");
pub(super) const FERN: Text = text("Fern", "Helecho");
pub(super) const JERSEY_WHITE: Text = text("Jersey white", "Blanco deportivo");
pub(super) const NIGHT: Text = text("Night", "Noche");

// Emulsions, which screens and exposures name.
pub(super) const HARBOR_BLUE: Text = text("Harbor blue", "Azul puerto");
pub(super) const MARSH_GREEN: Text = text("Marsh green", "Verde pantano");

#[cfg(test)]
mod tests;
