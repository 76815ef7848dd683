//! Messages: the target of a recipe, and its garments.

use super::super::messages::messages;

messages! {
    colour_target_title(ink) { "Target: {ink}", "Objetivo: {ink}" }
    colour_target_now { "Target now", "Objetivo actual" }
    colour_target_new { "The colour it is to have", "El color que debe tener" }
    colour_target_saved { "Target noted.", "Objetivo anotado." }
    colour_target_clear { "No target any more", "Quitar el objetivo" }
    colour_target_cleared { "Target taken off.", "Objetivo quitado." }
    colour_read_on { "Target and swatches are read", "Objetivo y muestras se leen" }
    colour_read_on_thick { "Thick, nothing shines through", "En capa gruesa, sin traslucir" }
    colour_read_on_garment { "Printed on the garment", "Impresos en la prenda" }
    colour_read_on_hint { "Clear inks are what they are on the cloth: read those printed.", "Las tintas transparentes son lo que son sobre la tela: léelas impresas." }
    colour_garments { "Garments it goes on", "Prendas a las que va" }
    colour_garment_read { "read", "leída" }
    colour_garment_guess { "screen colour", "color de pantalla" }
    colour_garment_do { "Read this garment", "Leer esta prenda" }
    colour_garment_no_photo { "A photo too once the recipe has a target: of a photo only the difference to a known colour is trusted.", "También con foto cuando la receta tenga objetivo: de una foto solo vale la diferencia con un color conocido." }
    colour_target_no_photo { "A photo too once a garment of it was read: of a photo only the difference to a known colour is trusted.", "También con foto cuando se haya leído una de sus prendas: de una foto solo vale la diferencia con un color conocido." }
    colour_garment_saved { "Garment colour noted.", "Color de prenda anotado." }
}
