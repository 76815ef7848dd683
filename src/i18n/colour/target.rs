//! Messages: the target of a recipe, and its garments.

use super::super::messages::messages;

messages! {
    colour_target_title(ink) { "Target: {ink}", "Objetivo: {ink}" }
    colour_target_now { "Current target", "Objetivo actual" }
    colour_target_new { "New target color", "Nuevo color objetivo" }
    colour_target_saved { "Target saved.", "Objetivo guardado." }
    colour_target_clear { "Remove target", "Quitar el objetivo" }
    colour_target_cleared { "Target removed.", "Objetivo quitado." }
    colour_read_on { "How target and swatches are measured", "Cómo se miden objetivo y muestras" }
    colour_read_on_thick { "Thick, nothing shows through", "En capa gruesa, sin traslucir" }
    colour_read_on_garment { "Printed on the garment", "Impresos en la prenda" }
    colour_read_on_hint { "Clear inks look different on fabric: measure them printed.", "Las tintas transparentes cambian sobre la tela: mídelas impresas." }
    colour_garments { "Garments for this ink", "Prendas para esta tinta" }
    colour_garment_read { "measured", "medida" }
    colour_garment_guess { "on-screen color", "color digital" }
    colour_garment_do { "Measure garment", "Medir esta prenda" }
    colour_garment_no_photo { "Photo works once the recipe has a target: a photo only shows the difference from a known color.", "La foto sirve cuando la receta tenga objetivo: una foto solo muestra la diferencia con un color conocido." }
    colour_target_no_photo { "Photo works once one of its garments is measured: a photo only shows the difference from a known color.", "La foto sirve cuando se haya medido una de sus prendas: una foto solo muestra la diferencia con un color conocido." }
    colour_garment_saved { "Garment color saved.", "Color de prenda guardado." }
}
