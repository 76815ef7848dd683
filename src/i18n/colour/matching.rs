//! Messages: a pot against its target, and what to add.

use super::super::format::with_mark;
use super::super::messages::messages;
use lastpull_core::colour::{DifferenceDirection, DifferenceSize, DifferenceWord, Origin};

messages! {
    colour_match_title(pot) { "Match: {pot}", "Comparar: {pot}" }
    colour_target { "Target", "Objetivo" }
    colour_pot { "Pot", "Bote" }
    colour_pot_computed { "Pot, worked out", "Bote, calculado" }
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
    colour_computed_since[n] {
        "Worked out: one addition went in since it was read." | "Worked out: {n} additions went in since it was read.",
        "Calculado: desde la lectura entró una adición." | "Calculado: desde la lectura entraron {n} adiciones."
    }
    colour_computed_recipe { "Worked out from what went in: nobody has read this pot yet.", "Calculado por lo echado: nadie ha leído aún este bote." }
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
    colour_nothing_helps_text { "With what is on the shelf, in this pot, it is as near as it gets: mix less of it again, or ask whether it will do.", "Con lo que hay en el estante y en este bote no se acerca más: mezcla de nuevo o pregunta si vale así." }
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
    colour_poured_notice(what) { "{what} in the pot.", "{what} en el bote." }
    colour_pour_note(before, after) { "As worked out: ΔE {before} → {after}", "Según el cálculo: ΔE {before} → {after}" }
    colour_target_link { "Target colour", "Color objetivo" }
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

/// Whether the curves were measured or reconstructed.
pub fn colour_origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Measured => colour_measured(),
        Origin::Reconstructed => colour_reconstructed(),
    }
}
