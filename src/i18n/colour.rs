//! Messages: colour readings, differences, additions, and coverage.

use super::format::{duration, number, with_mark};
use super::locale::localized;
use super::messages::messages;
use lastpull_core::colour::photo_reading::{PatchRole, PhotoProblem};
use lastpull_core::colour::{
    DifferenceDirection, DifferenceSize, DifferenceWord, Origin, PrintSequence, SpectrumProblem,
};
use lastpull_core::ink::{
    ColourProvenance, ColourQuality, DrawdownLine, LayerKind, NextDrawdown, PatchSource, ReadBy, Share, layer_kind,
};
use lastpull_core::time::Millis;

messages! {
    colour_match_title(pot) { "Match: {pot}", "Comparar: {pot}" }
    colour_target { "Target", "Objetivo" }
    colour_pot { "Pot", "Bote" }
    colour_pot_worked_out { "Pot, worked out", "Bote, calculado" }
    colour_not_on_screen { "One of these is more colourful than this screen can show.", "Uno de estos colores es más vivo de lo que muestra esta pantalla." }
    colour_pot_is { "Against the target, the pot is", "Frente al objetivo, el bote está" }
    colour_same { "Looks the same", "Se ve igual" }
    colour_slightly_lighter { "Slightly lighter", "Un poco más claro" }
    colour_clearly_lighter { "Clearly lighter", "Claramente más claro" }
    colour_much_lighter { "Much lighter", "Mucho más claro" }
    colour_slightly_darker { "Slightly darker", "Un poco más oscuro" }
    colour_clearly_darker { "Clearly darker", "Claramente más oscuro" }
    colour_much_darker { "Much darker", "Mucho más oscuro" }
    colour_slightly_redder { "Slightly redder", "Un poco más rojo" }
    colour_clearly_redder { "Clearly redder", "Claramente más rojo" }
    colour_much_redder { "Much redder", "Mucho más rojo" }
    colour_slightly_greener { "Slightly greener", "Un poco más verde" }
    colour_clearly_greener { "Clearly greener", "Claramente más verde" }
    colour_much_greener { "Much greener", "Mucho más verde" }
    colour_slightly_yellower { "Slightly yellower", "Un poco más amarillo" }
    colour_clearly_yellower { "Clearly yellower", "Claramente más amarillo" }
    colour_much_yellower { "Much yellower", "Mucho más amarillo" }
    colour_slightly_bluer { "Slightly bluer", "Un poco más azul" }
    colour_clearly_bluer { "Clearly bluer", "Claramente más azul" }
    colour_much_bluer { "Much bluer", "Mucho más azul" }
    colour_slightly_cleaner { "Slightly cleaner", "Un poco más limpio" }
    colour_clearly_cleaner { "Clearly cleaner", "Claramente más limpio" }
    colour_much_cleaner { "Much cleaner", "Mucho más limpio" }
    colour_slightly_dirtier { "Slightly dirtier", "Un poco más sucio" }
    colour_clearly_dirtier { "Clearly dirtier", "Claramente más sucio" }
    colour_much_dirtier { "Much dirtier", "Mucho más sucio" }
    colour_numbers(de, cmc) { "ΔE₀₀ {de} · CMC(2:1) {cmc}", "ΔE₀₀ {de} · CMC(2:1) {cmc}" }
    colour_read_at(by, time) { "Read {by}, {time}.", "Leído {by}, {time}." }
    colour_worked_out_since[n] {
        "Worked out: one addition went in since it was read." | "Worked out: {n} additions went in since it was read.",
        "Calculado: desde la lectura entró una adición." | "Calculado: desde la lectura entraron {n} adiciones."
    }
    colour_worked_out_recipe { "Worked out from what went in: nobody has read this pot yet.", "Calculado por lo echado: nadie ha leído aún este bote." }
    colour_by_instrument { "by instrument", "con instrumento" }
    colour_by_photo { "from a photo", "de una foto" }
    colour_by_screen { "from a screen colour", "de un color de pantalla" }
    colour_near_title { "Near enough", "Suficientemente cerca" }
    colour_near_text { "Under one unit: side by side an eye hardly finds it. The client's eye decides.", "Menos de una unidad: lado a lado apenas se ve. Decide el ojo del cliente." }
    colour_to_pot { "To the pot", "Al bote" }
    colour_add_title { "What to add", "Qué añadir" }
    colour_add(what) { "Add {what}", "Añade {what}" }
    colour_add_and(one, other) { "{one} and {other}", "{one} y {other}" }
    colour_of(grams, name) { "{grams} of {name}", "{grams} de {name}" }
    colour_before_after(before, after) { "ΔE₀₀ {before} → {after}", "ΔE₀₀ {before} → {after}" }
    colour_then_same { "then it looks the same", "después se verá igual" }
    colour_then(words) { "then {words}", "después {words}" }
    colour_or { "Or with fewer components", "O con menos componentes" }
    colour_only_closer { "No addition gets all the way there.", "Ninguna adición llega del todo." }
    colour_only_closer_text { "Only adding is possible, within pot, shelf and data sheets. This comes nearest:", "Solo se puede añadir, dentro del bote, el estante y las fichas. Esto es lo más cercano:" }
    colour_nothing_helps { "No addition brings it closer.", "Ninguna adición lo acerca." }
    colour_nothing_helps_text { "With what is on the shelf, in this pot, it is as near as it gets: mix less of it anew, or ask whether it will do.", "Con lo que hay en el estante y en este bote no se acerca más: mezcla de nuevo o pregunta si vale así." }
    colour_full { "The pot is full: nothing more goes in.", "El bote está lleno: no cabe nada más." }
    colour_how { "How this is worked out", "Cómo se calcula" }
    colour_from_reading { "From the pot's reading, and what its components showed when drawn down.", "A partir de la lectura del bote y de los extendidos de sus componentes." }
    colour_from_recipe { "From what went in alone. Read the pot, and it starts from what it really is.", "Solo por lo echado. Lee el bote y partirá de lo que es de verdad." }
    colour_left(left) { "No ink of this recipe looks quite as the pot was read (ΔE₀₀ {left} is left): was it this pot's swatch?", "Ninguna tinta de esta receta se ve como la lectura del bote (queda ΔE₀₀ {left}): ¿era la muestra de este bote?" }
    colour_measured { "Every curve behind it was measured.", "Todas las curvas se midieron." }
    colour_reconstructed { "Some curves are reconstructed from three numbers, not measured: trust the direction more than the last tenth.", "Algunas curvas se reconstruyen de tres números, no se midieron: fíate más de la dirección que de la última décima." }
    colour_room(grams) { "{grams} more fit into the pot.", "Caben {grams} más en el bote." }
    colour_room_guess(grams) { "How much the pot holds is not noted: taken as {grams} more.", "No se anotó cuánto cabe en el bote: se toman {grams} más." }
    colour_offers[n] { "One component could go in." | "{n} components could go in.", "Podía entrar un componente." | "Podían entrar {n} componentes." }
    colour_on_thick { "Seen thick, nothing shining through.", "Visto en capa gruesa, sin que trasluzca nada." }
    colour_on_printed[n] { "Seen printed on the garment, one hit." | "Seen printed on the garment, {n} hits.", "Visto impreso en la prenda, una pasada." | "Visto impreso en la prenda, {n} pasadas." }
    colour_no_target_title { "No target yet", "Aún sin objetivo" }
    colour_no_target_text { "Say which colour this ink is to have, and the pot can be held against it.", "Di qué color debe tener esta tinta y podrás comparar el bote." }
    colour_no_recipe { "This pot is of no recipe, so it has no target. Save it as one at the pot.", "Este bote no es de ninguna receta y no tiene objetivo. Guárdalo como receta en el bote." }
    colour_set_target { "Set the target", "Fijar el objetivo" }
    colour_empty_pot { "Nothing is in this pot yet.", "Aún no hay nada en este bote." }
    colour_not_drawn { "To say grams, draw these down first:", "Para decir gramos, haz antes los extendidos de:" }
    colour_not_drawn_words { "Until then the words above say which way to go.", "Hasta entonces, las palabras de arriba dicen hacia dónde ir." }
    colour_read_pot { "Read the pot", "Leer el bote" }
    colour_read_again { "Read it again", "Leerlo otra vez" }
    colour_read_after { "Stir, make a swatch as before, let it dry, read it. Each reading teaches what comes next.", "Remueve, haz una muestra como antes, deja secar y léela. Cada lectura enseña para la siguiente." }
    colour_pour_title { "Into the pot", "Al bote" }
    colour_pour_hint { "Weigh it in. If the scale showed something else, type that.", "Pésalo. Si la báscula marcó otra cosa, escríbela." }
    colour_poured { "It is in", "Ya está dentro" }
    colour_poured_said(what) { "{what} in the pot.", "{what} en el bote." }
    colour_pour_note(before, after) { "As worked out: ΔE {before} → {after}", "Según el cálculo: ΔE {before} → {after}" }
    colour_target_link { "Target colour", "Color objetivo" }

    colour_read_from { "The colour comes from", "El color viene de" }
    colour_from_instrument { "An instrument", "Un instrumento" }
    colour_from_screen { "A screen colour", "Un color de pantalla" }
    colour_from_photo { "A photo", "Una foto" }
    colour_lab_hint { "L*a*b* as the instrument shows it, under D65.", "L*a*b* como lo muestra el instrumento, con D65." }
    colour_screen_label { "Colour", "Color" }
    colour_screen_hint { "As a file or a colour picker names it. A likeness, not a measurement.", "Como lo nombra un archivo o un selector. Un parecido, no una medida." }
    colour_hex { "#rrggbb", "#rrggbb" }
    colour_hex_wrong { "Six digits behind a #, such as #3f6b3a.", "Seis cifras tras una #, como #3f6b3a." }
    colour_photo_trust { "Photos are trusted for the difference of two patches only, never for one colour.", "De una foto solo vale la diferencia entre dos zonas, nunca un color suelto." }
    colour_photo_how(known, read) { "Lay {known}, {read} and something white or grey side by side in the same light. No flash, no shadow. Take one photo.", "Pon {known}, {read} y algo blanco o gris juntos, con la misma luz. Sin flash ni sombras. Haz una foto." }
    colour_photo_wait { "Reading the picture…", "Leyendo la imagen…" }
    colour_photo_mark { "Touch the middle of each. Drag to move; arrow keys move too.", "Toca el centro de cada uno. Arrastra para mover; también con las flechas." }
    colour_photo_which { "Now marking", "Marcando" }
    colour_mark_sample { "Sample", "Muestra" }
    colour_mark_garment { "Garment", "Prenda" }
    colour_in_target { "target", "el objetivo" }
    colour_in_sample { "sample", "la muestra" }
    colour_in_garment { "garment", "la prenda" }
    colour_mark_neutral { "White or grey", "Blanco o gris" }
    colour_mark_at(which, x, y) { "{which}: {x} % across, {y} % down", "{which}: {x} % a lo ancho, {y} % a lo alto" }
    colour_smaller { "Smaller circle", "Círculo menor" }
    colour_larger { "Larger circle", "Círculo mayor" }
    colour_neutral_is { "The white or grey is", "El blanco o gris es" }
    colour_neutral_paper { "White paper", "Papel blanco" }
    colour_neutral_card { "Grey card, 18 %", "Carta gris, 18 %" }
    colour_photo_says(known, read) { "In this photo, against the {known}, the {read} is", "Comparando con {known}, en esta foto {read} está" }
    colour_photo_corrected(stops, uneven) { "Corrected: {stops} stops of exposure, light uneven by {uneven} %.", "Corregido: {stops} pasos de exposición, luz desigual en {uneven} %." }
    colour_photo_laid { "This difference is laid on the target as it is known.", "Esta diferencia se suma al objetivo conocido." }
    colour_photo_laid_garment { "This difference is laid on the garment as it was read.", "Esta diferencia se suma a la prenda como se leyó." }
    colour_photo_first { "The recipe has no target yet: the photo's own becomes it.", "La receta aún no tiene objetivo: será el de la foto." }
    colour_photo_laid_known { "This difference is laid on the known patch.", "Esta diferencia se suma a la muestra conocida." }
    colour_photo_no_patch { "Nothing is read until it is known what lies beside it.", "No se lee nada hasta saber qué hay al lado." }
    colour_photo_reads(lab) { "So the drawdown reads {lab}.", "Así, el extendido da {lab}." }
    colour_photo_doubt(doubt) {
        "These two are far apart. Under lamps this may well be off by ΔE₀₀ {doubt}; by daylight by less. A known patch nearer in colour is surer.",
        "Estos dos se parecen poco. Con lámparas puede desviarse ΔE₀₀ {doubt}; con luz de día, menos. Una muestra conocida más parecida es más segura."
    }
    colour_photo_note(name) { "Read from a photo beside {name}.", "Leído de una foto junto a {name}." }
    colour_mark_known { "Known patch", "Muestra conocida" }
    colour_in_known { "known patch", "la muestra conocida" }
    colour_letter_known { "K", "C" }
    colour_mark_drawdown { "Drawdown", "Extendido" }
    colour_in_drawdown { "drawdown", "el extendido" }
    colour_letter_drawdown { "D", "E" }
    colour_beside { "What lies beside it?", "¿Qué hay al lado?" }
    colour_beside_why { "Something that an instrument has read. The more alike the two, the surer the photo.", "Algo que leyó un instrumento. Cuanto más se parezcan, más segura la foto." }
    colour_beside_none { "No instrument has read anything in this shop yet. A control card with its numbers printed on it will do.", "En este taller aún no se leyó nada con instrumento. Sirve una carta de control con sus valores impresos." }
    colour_beside_card { "A control card", "Una carta de control" }
    colour_beside_card_hint { "Its numbers are printed on it", "Con sus valores impresos" }
    colour_beside_card_lab { "L*a*b* of the field you mark, as printed, for D65.", "L*a*b* del campo que marques, como está impreso, con D65." }
    colour_beside_more[n] { "{n} more" | "{n} more", "{n} más" | "{n} más" }
    colour_beside_change { "Change", "Cambiar" }
    colour_beside_thick { "thick", "en capa gruesa" }
    colour_beside_white { "a film over white", "una capa sobre blanco" }
    colour_beside_black { "a film over black", "una capa sobre negro" }
    colour_beside_target { "Target", "Objetivo" }
    colour_beside_garment { "Garment", "Prenda" }
    colour_photo_none { "The picture could not be read. Choose another.", "No se pudo leer la imagen. Elige otra." }
    colour_problem_outside(which) { "{which}: the circle reaches over the edge. Move it in, or make it smaller.", "{which}: el círculo se sale. Muévelo adentro o hazlo menor." }
    colour_problem_small(which) { "{which}: too few pixels. Make the circle larger, or go closer with the camera.", "{which}: muy pocos píxeles. Agranda el círculo o acerca la cámara." }
    colour_problem_bright(which) { "{which} is overexposed, and nobody knows by how much. Take the photo darker.", "{which}: sobreexpuesto, y no se sabe cuánto. Haz la foto más oscura." }
    colour_problem_dark(which) { "{which} is too dark or too colourful for the picture. Take the photo brighter.", "{which}: demasiado oscuro o vivo para la foto. Hazla más clara." }
    colour_problem_patchy(which) { "{which} is not one plain colour there: an edge, a crease or a highlight. Move the circle or make it smaller.", "{which}: ahí no hay un color liso: un borde, un pliegue o un brillo. Mueve el círculo o hazlo menor." }
    colour_problem_uneven { "The light differs too much from one to the other. Lay them closer together, away from window edges and shadows.", "La luz cambia demasiado de uno a otro. Júntalos más, lejos de bordes de ventana y sombras." }
    colour_problem_light { "The white or grey does not look neutral. Mark something white or grey, and leave coloured light.", "El blanco o gris no se ve neutro. Marca algo blanco o gris y evita luces de color." }

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

    colour_component_title(name) { "Colour of {name}", "Color de {name}" }
    colour_good_unknown { "Not known yet", "Aún no se conoce" }
    colour_good_unknown_text { "Without a drawdown nothing can be worked out with it.", "Sin extendido no se puede calcular nada con él." }
    colour_good_clear { "Taken as clear", "Se toma por transparente" }
    colour_good_clear_text { "Nobody drew it down. A clear base is good enough so.", "Nadie hizo su extendido. Para una base transparente basta." }
    colour_good_disagrees { "The drawdowns disagree", "Los extendidos no cuadran" }
    colour_good_disagrees_text { "One of them has a wrong share, or is another's.", "Uno tiene mal la proporción o es de otro." }
    colour_good_half { "Half known", "Conocido a medias" }
    colour_good_half_text { "What it takes of the light is known for what such a component usually throws back.", "Se sabe cuánta luz absorbe, suponiendo lo que suele devolver un componente así." }
    colour_good_good { "Well known", "Bien conocido" }
    colour_good_good_text { "What it takes of the light and what it throws back.", "Cuánta luz absorbe y cuánta devuelve." }
    colour_worst(worst) { "Worst drawdown off by ΔE₀₀ {worst}.", "El peor extendido se desvía ΔE₀₀ {worst}." }
    colour_rests_photos(photos, of) { "Read from photos: {photos} of {of} drawdowns behind it.", "Leídos de fotos: {photos} de {of} extendidos en que se basa." }
    colour_rests_through { "What it was let down with was read from photos.", "Aquello con que se rebajó se leyó de fotos." }
    colour_rests_differences { "A photo tells differences only; an instrument is surer.", "Una foto solo dice diferencias; un instrumento es más seguro." }
    colour_rests_some { "Drawdowns behind it were read from photos, which tell differences only; an instrument is surer.", "Hay extendidos leídos de fotos, que solo dicen diferencias; un instrumento es más seguro." }
    colour_next { "Draw down next", "Próximo extendido" }
    colour_next_straight { "It alone, so thick that nothing shines through", "Solo, tan grueso que no trasluzca nada" }
    colour_next_tint(percent, name) { "{percent} of it in {name}, so thick that nothing shines through", "{percent} de él en {name}, tan grueso que no trasluzca nada" }
    colour_next_black { "One film of it over black", "Una capa sobre negro" }
    colour_next_white { "One film of it over white", "Una capa sobre blanco" }
    colour_next_again { "The one that disagrees, again", "El que no cuadra, otra vez" }
    colour_next_do { "Note this drawdown", "Anotar este extendido" }
    colour_another { "Note another drawdown", "Anotar otro extendido" }
    colour_learned(times, lessons) { "In the pot it is {times} times as strong as drawn down: learned from {lessons}.", "En el bote es {times} veces más fuerte que en el extendido: aprendido de {lessons}." }
    colour_lessons[n] { "one correction" | "{n} corrections", "una corrección" | "{n} correcciones" }
    colour_not_learned { "Nothing learned from corrections yet: read a pot before and after adding it alone.", "Aún nada aprendido de correcciones: lee un bote antes y después de añadirlo solo." }
    colour_drawdowns { "Drawdowns", "Extendidos" }
    colour_over_white { "One hit over white", "Una pasada sobre blanco" }
    colour_over_black { "One hit over black", "Una pasada sobre negro" }
    colour_line_off(off) { "off by ΔE₀₀ {off}", "se desvía ΔE₀₀ {off}" }
    colour_line_unused { "not used: its white or base is not known", "sin usar: no se conoce su blanco o base" }
    colour_line_curve { "curve", "curva" }
    colour_drawn_deleted { "Drawdown deleted.", "Extendido eliminado." }
    colour_lines_legend { "Left as it was read, right as it is worked out.", "A la izquierda lo leído, a la derecha lo calculado." }

    colour_drawdown_title { "A drawdown", "Un extendido" }
    colour_drawdown_of(name) { "Drawdown of {name}", "Extendido de {name}" }
    colour_share { "Share of it", "Proporción" }
    colour_share_hint { "100 is it alone; less is let down with a white or base.", "100 es solo; menos, rebajado con un blanco o una base." }
    colour_rest { "The rest is", "El resto es" }
    colour_rest_none { "Nothing", "Nada" }
    colour_lay { "It lies", "Está puesto" }
    colour_lay_thick { "Thick: nothing shines through", "Grueso: no trasluce nada" }
    colour_lay_white { "A film over white", "Una capa sobre blanco" }
    colour_lay_black { "A film over black", "Una capa sobre negro" }
    colour_film { "The film was", "La capa se hizo" }
    colour_film_print { "Printed", "Impresa" }
    colour_film_bar { "AnyView with a bar", "Con barra" }
    colour_film_hits { "Hits", "Pasadas" }
    colour_film_wet { "Wet film", "Capa húmeda" }
    colour_film_a_hit { "One hit lays", "Una pasada deja" }
    colour_film_a_hit_hint { "The screen's ink volume: 40 cm³/m² are 40 µm.", "El volumen de tinta de la pantalla: 40 cm³/m² son 40 µm." }
    colour_backing { "The card below was read", "Se leyó la cartulina de debajo" }
    colour_backing_hint { "Else an opacity chart's is taken: white 80 %, black 1 %.", "Si no, se toma la de una carta de opacidad: blanco 80 %, negro 1 %." }
    colour_swatch_seen { "What was read of it", "Qué se leyó" }
    colour_curve_or { "The instrument gives a curve", "El instrumento da una curva" }
    colour_curve_values { "Reflectance, value after value", "Reflectancia, valor tras valor" }
    colour_curve_first { "From", "Desde" }
    colour_curve_step { "In steps of", "En pasos de" }
    colour_curve_got { "Curve of 31 bands, 400 to 700 nm.", "Curva de 31 bandas, de 400 a 700 nm." }
    colour_curve_hint { "As copied from the instrument: of 1 or in percent. A curve makes every mixture surer.", "Tal como sale del instrumento: sobre 1 o en porcentaje. Con curva, toda mezcla es más segura." }
    colour_curve_no { "These are not numbers of a curve.", "Estos números no son una curva." }
    colour_curve_narrow { "It must reach from 420 to 680 nm.", "Debe abarcar de 420 a 680 nm." }
    colour_curve_range { "A value is below 0 or above 1 (100 %).", "Hay un valor por debajo de 0 o por encima de 1 (100 %)." }
    colour_drawdown_saved { "Drawdown noted.", "Extendido anotado." }
    colour_drawdown_wait { "Let it dry and cool as a print would before it is read.", "Deja que seque y se enfríe como un estampado antes de leerlo." }
}

/// One term of a colour difference.
pub fn colour_word(word: &DifferenceWord) -> &'static str {
    let by = |slightly, clearly, much| match word.size {
        DifferenceSize::Slightly => slightly,
        DifferenceSize::Clearly => clearly,
        DifferenceSize::Much => much,
    };
    match word.direction {
        DifferenceDirection::Lighter => by(colour_slightly_lighter(), colour_clearly_lighter(), colour_much_lighter()),
        DifferenceDirection::Darker => by(colour_slightly_darker(), colour_clearly_darker(), colour_much_darker()),
        DifferenceDirection::Redder => by(colour_slightly_redder(), colour_clearly_redder(), colour_much_redder()),
        DifferenceDirection::Greener => by(colour_slightly_greener(), colour_clearly_greener(), colour_much_greener()),
        DifferenceDirection::Yellower => {
            by(colour_slightly_yellower(), colour_clearly_yellower(), colour_much_yellower())
        }
        DifferenceDirection::Bluer => by(colour_slightly_bluer(), colour_clearly_bluer(), colour_much_bluer()),
        DifferenceDirection::Cleaner => by(colour_slightly_cleaner(), colour_clearly_cleaner(), colour_much_cleaner()),
        DifferenceDirection::Dirtier => by(colour_slightly_dirtier(), colour_clearly_dirtier(), colour_much_dirtier()),
    }
}

/// A colour difference within a sentence.
pub fn colour_words(words: &[DifferenceWord]) -> String {
    words.iter().map(|word| colour_word(word).to_lowercase()).collect::<Vec<_>>().join(", ")
}

/// CIEDE2000, always with one decimal so that two values can be compared.
pub fn colour_de(value: f64) -> String {
    with_mark(format!("{value:.1}"))
}

/// How a colour was read.
pub fn colour_read_by(by: ReadBy) -> &'static str {
    match by {
        ReadBy::Instrument => colour_by_instrument(),
        ReadBy::Photo => colour_by_photo(),
        ReadBy::Screen => colour_by_screen(),
    }
}

/// Whether the curves were measured or reconstructed.
pub fn colour_origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Measured => colour_measured(),
        Origin::Reconstructed => colour_reconstructed(),
    }
}

/// Why a photo cannot be used, and what to do; `name` gives the name of each mark.
pub fn colour_photo_problem(problem: PhotoProblem, name: impl Fn(PatchRole) -> &'static str) -> String {
    match problem {
        PhotoProblem::NotAPicture => colour_photo_none().into(),
        PhotoProblem::Outside(which) => colour_problem_outside(name(which)),
        PhotoProblem::TooSmall(which) => colour_problem_small(name(which)),
        PhotoProblem::TooBright(which) => colour_problem_bright(name(which)),
        PhotoProblem::TooDark(which) => colour_problem_dark(name(which)),
        PhotoProblem::NotPlain(which) => colour_problem_patchy(name(which)),
        PhotoProblem::UnevenLight => colour_problem_uneven().into(),
        PhotoProblem::ColouredLight => colour_problem_light().into(),
    }
}

/// Why the numbers are not a reflectance curve.
pub fn colour_curve_problem(problem: SpectrumProblem) -> &'static str {
    match problem {
        SpectrumProblem::NotASpectrum => colour_curve_no(),
        SpectrumProblem::TooNarrow => colour_curve_narrow(),
        SpectrumProblem::OutOfRange => colour_curve_range(),
    }
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

/// How well a component's colour is known, and what that means.
pub fn colour_good(good: ColourQuality) -> (&'static str, &'static str) {
    match good {
        ColourQuality::Unknown => (colour_good_unknown(), colour_good_unknown_text()),
        ColourQuality::AssumedClear => (colour_good_clear(), colour_good_clear_text()),
        ColourQuality::Contradictory => (colour_good_disagrees(), colour_good_disagrees_text()),
        ColourQuality::AbsorptionOnly => (colour_good_half(), colour_good_half_text()),
        ColourQuality::Good => (colour_good_good(), colour_good_good_text()),
    }
}

/// What to draw down next.
pub fn colour_next_words(next: &NextDrawdown) -> String {
    match next {
        NextDrawdown::Straight => colour_next_straight().into(),
        NextDrawdown::Tint { name, percent, .. } => colour_next_tint(format!("{}\u{a0}%", number(*percent, 1)), name),
        NextDrawdown::OverBlack => colour_next_black().into(),
        NextDrawdown::OverWhite => colour_next_white().into(),
        NextDrawdown::Again(_) => colour_next_again().into(),
    }
}

/// How a drawdown is laid: film and ground.
pub fn colour_lay_kind(kind: LayerKind) -> &'static str {
    match kind {
        LayerKind::Hiding => colour_lay_thick(),
        LayerKind::OverWhite => colour_lay_white(),
        LayerKind::OverBlack => colour_lay_black(),
    }
}

/// What a drawdown is of, and how it is laid.
pub fn colour_line(line: &DrawdownLine) -> String {
    colour_lies(line.made.share, &line.rest, colour_lay_kind(layer_kind(&line.made.lay)))
}

fn colour_lies(share: Share, rest: &str, lies: &str) -> String {
    let percent = format!("{}\u{a0}%", number(share.percent(), 2));
    let of = if rest.is_empty() {
        percent
    } else {
        localized(format!("{percent} in {rest}"), format!("{percent} en {rest}"))
    };
    format!("{of} · {lies}")
}

/// What a known patch is.
pub fn colour_patch(of: &PatchSource) -> String {
    match of {
        PatchSource::Drawdown { share, rest, lay } => {
            let lies = match lay {
                LayerKind::Hiding => colour_beside_thick(),
                LayerKind::OverWhite => colour_beside_white(),
                LayerKind::OverBlack => colour_beside_black(),
            };
            colour_lies(*share, rest, lies)
        }
        PatchSource::Target => colour_beside_target().into(),
        PatchSource::Garment => colour_beside_garment().into(),
    }
}

/// Which parts of a component's colour rest on photos; `None` if none do.
pub fn colour_rests_on(on: ColourProvenance) -> Option<String> {
    let own = (on.photos > 0).then(|| colour_rests_photos(on.photos, on.drawdowns));
    let through = on.through.then(|| colour_rests_through().to_owned());
    let sentences: Vec<String> = own.into_iter().chain(through).collect();
    (!sentences.is_empty()).then(|| format!("{} {}", sentences.join(" "), colour_rests_differences()))
}
