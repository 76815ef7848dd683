//! Messages: whether an ink covers a garment, and in which way of printing.

use super::super::format::duration;
use super::super::messages::messages;
use lastpull_core::colour::PrintSequence;
use lastpull_core::time::Millis;

messages! {
    colour_cover_title(ink) { "Will it cover? {ink}", "¿Cubrirá? {ink}" }
    colour_cover_on { "On which garment", "Sobre qué prenda" }
    colour_cover_other { "Another colour", "Otro color" }
    colour_cover_enough(way) { "Covers with {way}", "Cubre con {way}" }
    colour_cover_none { "Nothing here covers", "Nada de esto cubre" }
    colour_cover_nearest(way) { "Nearest: {way}.", "Lo más cercano: {way}." }
    colour_cover_minutes(minutes, pieces) { "{minutes} for {pieces}", "{minutes} para {pieces}" }
    colour_cover_more(minutes, way) { "{minutes} more than {way}", "{minutes} más que {way}" }
    colour_cover_ways { "Way by way", "Opción por opción" }
    colour_cover_legend { "On the garment: left what is wanted, right how it will look.", "Sobre la prenda: a la izquierda lo deseado, a la derecha cómo se verá." }
    colour_hits[n] { "One hit" | "{n} hits, print, flash, print", "Una pasada" | "{n} pasadas, imprimir, flash, imprimir" }
    colour_based[n] { "Underbase, then one hit" | "Underbase, then {n} hits", "Base blanca y una pasada" | "Base blanca y {n} pasadas" }
    colour_short_hits[n] { "one hit" | "{n} hits", "una pasada" | "{n} pasadas" }
    colour_short_based[n] { "underbase and one hit" | "underbase and {n} hits", "base y una pasada" | "base y {n} pasadas" }
    colour_cover_off(off) { "ΔE₀₀ {off} from wanted", "ΔE₀₀ {off} de lo deseado" }
    colour_cover_contrast(percent) { "contrast ratio {percent} %", "relación de contraste {percent} %" }
    colour_covers { "covers", "cubre" }
    colour_covers_not { "shines through", "trasluce" }
    colour_cover_numbers { "Pieces and times", "Piezas y tiempos" }
    colour_cover_hit { "One hit, all told", "Una pasada, en total" }
    colour_cover_flash { "One flash with cooling", "Un flasheo con enfriado" }
    colour_cover_screen { "One more screen", "Una pantalla más" }
    colour_cover_which { "The underbase is", "La base es" }
    colour_cover_white(name) { "Underbase of {name}.", "Base de {name}." }
    colour_cover_no_white { "No opaque white has been drawn down, so no underbase is shown.", "No hay extendido de ningún blanco opaco: no se muestra base." }
    colour_cover_contrast_note { "Contrast ratio as of paint: 98 % is full hiding. One film is one hit as the drawdowns were printed.", "Relación de contraste como en pinturas: 98 % cubre del todo. Una capa es una pasada como en los extendidos." }
    colour_cover_in_pot { "Wanted is the ink in the pot: the recipe has no target.", "Lo deseado es la tinta en el bote: la receta no tiene objetivo." }
    colour_cover_no_parts { "This recipe has no parts yet.", "Esta receta aún no tiene componentes." }
    colour_cover_strike { "A strike-off decides: this is worked out.", "Decide la prueba impresa: esto es un cálculo." }
}

/// A way to print: hits and underbase.
pub fn colour_way(way: PrintSequence) -> String {
    if way.underbase > 0 { colour_based(u32::from(way.hits)) } else { colour_hits(u32::from(way.hits)) }
}

/// The same within a sentence.
pub fn colour_short_way(way: PrintSequence) -> String {
    if way.underbase > 0 { colour_short_based(u32::from(way.hits)) } else { colour_short_hits(u32::from(way.hits)) }
}

/// Minutes of work.
pub fn colour_minutes(minutes: f64) -> String {
    duration(Millis::from_seconds(minutes * 60.0))
}
