//! Messages: whether an ink covers a garment, and in which way of printing.

use super::super::format::duration;
use super::super::messages::messages;
use lastpull_core::colour::PrintSequence;
use lastpull_core::time::Millis;

messages! {
    colour_cover_title(ink) { "Will it cover? {ink}", "¿Cubrirá? {ink}" }
    colour_cover_on { "Garment", "Prenda" }
    colour_cover_other { "Other color", "Otro color" }
    colour_cover_enough(way) { "Covers with {way}", "Cubre con {way}" }
    colour_cover_none { "None of these cover", "Nada de esto cubre" }
    colour_cover_nearest(way) { "Closest: {way}.", "Lo más cercano: {way}." }
    colour_cover_minutes(minutes, pieces) { "{minutes} for {pieces}", "{minutes} para {pieces}" }
    colour_cover_more(minutes, way) { "{minutes} more than {way}", "{minutes} más que {way}" }
    colour_cover_ways { "Options compared", "Comparar opciones" }
    colour_cover_legend { "On the garment: left, target; right, how it will print.", "Sobre la prenda: izquierda, objetivo; derecha, cómo se verá." }
    colour_hits[n] { "One stroke" | "{n} strokes, flash between", "Una mano" | "{n} manos con flash entre ellas" }
    colour_based[n] { "Underbase, then one stroke" | "Underbase, then {n} strokes", "Base blanca y una mano" | "Base blanca y {n} manos" }
    colour_short_hits[n] { "one stroke" | "{n} strokes", "una mano" | "{n} manos" }
    colour_short_based[n] { "underbase and one stroke" | "underbase and {n} strokes", "base y una mano" | "base y {n} manos" }
    colour_cover_off(off) { "ΔE₀₀ {off} from target", "ΔE₀₀ {off} del objetivo" }
    colour_cover_contrast(percent) { "contrast ratio {percent}%", "relación de contraste {percent} %" }
    colour_covers { "covers", "cubre" }
    colour_covers_not { "garment shows through", "se trasluce la prenda" }
    colour_cover_numbers { "Pieces and times", "Piezas y tiempos" }
    colour_cover_hit { "Time per stroke", "Tiempo por mano" }
    colour_cover_flash { "Time per flash and cool-down", "Tiempo por flash y enfriado" }
    colour_cover_screen { "Time per extra screen", "Tiempo por pantalla extra" }
    colour_cover_which { "Underbase", "Base blanca" }
    colour_cover_white(name) { "Underbase of {name}.", "Base de {name}." }
    colour_cover_no_white { "No drawdown of an opaque white yet, so no underbase is shown.", "Sin extendido de un blanco opaco: no se muestra base." }
    colour_cover_contrast_note { "Contrast ratio as for paint: 98% is full coverage. One film is one stroke, printed as in the drawdowns.", "Relación de contraste como en pinturas: 98 % cubre del todo. Una capa es una mano, impresa como en los extendidos." }
    colour_cover_in_pot { "Target is the ink in the batch: the recipe has no target.", "El objetivo es la tinta de la mezcla: la receta no tiene objetivo." }
    colour_cover_no_parts { "This recipe has no components yet.", "Esta receta aún no tiene componentes." }
    colour_cover_strike { "Calculated. Check with a strike-off.", "Es un cálculo. Confírmalo con una prueba impresa." }
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
