//! Messages: a pot against its target, and what to add.

use super::super::format::with_mark;
use super::super::messages::messages;
use lastpull_core::colour::{DifferenceDirection, DifferenceSize, DifferenceWord, Origin};

messages! {
    colour_match_title(pot) { "Compare: {pot}", "Comparar: {pot}" }
    colour_target { "Target", "Objetivo" }
    colour_pot { "Batch", "Mezcla" }
    colour_pot_computed { "Batch, calculated", "Mezcla, calculada" }
    colour_not_on_screen { "One of these is more vivid than this display can show.", "Uno de estos colores es más vivo de lo que este aparato puede mostrar." }
    colour_pot_is { "Compared with the target, the batch is", "Frente al objetivo, el color de la mezcla es" }
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
    colour_read_at(by, time) { "Measured {by}, {time}.", "Medida {by} ({time})." }
    colour_computed_since[n] {
        "Calculated: one addition since the last reading." | "Calculated: {n} additions since the last reading.",
        "Calculado: una adición desde la última lectura." | "Calculado: {n} adiciones desde la última lectura."
    }
    colour_computed_recipe { "Calculated from what was added; not measured yet.", "Calculado por lo agregado; aún sin medir." }
    colour_near_title { "Close enough", "Suficientemente cerca" }
    colour_near_text { "Under 1 ΔE: side by side you can hardly see it. The client has the last word.", "Menos de 1 ΔE: lado a lado apenas se ve. El cliente tiene la última palabra." }
    colour_to_pot { "Go to batch", "Ir a la mezcla" }
    colour_add_title { "What to add", "Qué agregar" }
    colour_add(what) { "Add {what}", "Agrega {what}" }
    colour_add_and(one, other) { "{one} and {other}", "{one} y {other}" }
    colour_of(grams, name) { "{grams} of {name}", "{grams} de {name}" }
    colour_before_after(before, after) { "ΔE₀₀ {before} → {after}", "ΔE₀₀ {before} → {after}" }
    colour_then_same { "then it looks the same", "después se verá igual" }
    colour_then(words) { "then {words}", "después {words}" }
    colour_or { "Or with fewer components", "O con menos componentes" }
    colour_only_closer { "No addition reaches the target.", "Ninguna adición llega al objetivo." }
    colour_only_closer_text { "You can only add, within what the container, stock and data sheets allow. The closest:", "Solo se puede agregar, dentro del recipiente, las existencias y las fichas técnicas. Lo más cercano:" }
    colour_nothing_helps { "No addition brings it closer.", "Ninguna adición la acerca." }
    colour_nothing_helps_text { "With what's in stock, this batch won't get closer: mix a fresh batch, or ask if this will do.", "Con lo que hay en existencias esta mezcla no se acerca más: haz una nueva o pregunta si vale así." }
    colour_full { "The container is full: nothing more fits.", "El recipiente está lleno: no cabe nada más." }
    colour_how { "How it is calculated", "Cómo se calcula" }
    colour_from_reading { "From the batch's reading and its components' drawdowns.", "A partir de la lectura de la mezcla y de los extendidos de sus componentes." }
    colour_from_recipe { "From what was added only. Measure the batch to start from its real color.", "Solo por lo agregado. Mide la mezcla para partir de su color real." }
    colour_left(left) { "This recipe can't give the color you measured (ΔE₀₀ {left} left): was the swatch from this batch?", "Esta receta no puede dar el color que mediste (queda ΔE₀₀ {left}): ¿la muestra era de esta mezcla?" }
    colour_measured { "All curves were measured.", "Todas las curvas se midieron." }
    colour_reconstructed { "Some curves were estimated from three numbers, not measured: trust the direction more than the last decimal.", "Algunas curvas se estimaron con tres números, no se midieron: confía más en la dirección que en la última décima." }
    colour_room(grams) { "{grams} more fits in the container.", "Caben {grams} más en el recipiente." }
    colour_room_guess(grams) { "Container capacity not entered: assuming {grams} more fits.", "Falta la capacidad del recipiente: se supone que caben {grams} más." }
    colour_offers[n] { "One component could be added." | "{n} components could be added.", "Se podía agregar un componente." | "Se podían agregar {n} componentes." }
    colour_on_thick { "Judged thick, fully opaque.", "En capa gruesa, sin que trasluzca nada." }
    colour_on_printed[n] { "Judged printed on the garment, one stroke." | "Judged printed on the garment, {n} strokes.", "Impreso en la prenda, una mano." | "Impreso en la prenda, {n} manos." }
    colour_no_target_title { "No target yet", "Aún sin objetivo" }
    colour_no_target_text { "Set the color you want, and you can compare the batch with it.", "Fija el color que quieres y podrás comparar la mezcla." }
    colour_no_recipe { "This batch has no recipe, so it has no target. Save it as a version first.", "Esta mezcla no tiene receta ni objetivo. Guárdala primero como versión." }
    colour_set_target { "Set target", "Fijar objetivo" }
    colour_empty_pot { "This batch is empty.", "Esta mezcla está vacía." }
    colour_not_drawn { "To get amounts, make drawdowns of these first:", "Para calcular cantidades, haz antes los extendidos de:" }
    colour_not_drawn_words { "Until then, the words above show which way to go.", "Hasta entonces, las palabras de arriba dicen hacia dónde ir." }
    colour_read_pot { "Measure batch", "Medir la mezcla" }
    colour_read_again { "Measure again", "Medir otra vez" }
    colour_read_after { "Stir, make a swatch like before, let it dry, measure it. Every reading improves the next suggestion.", "Remueve, haz una muestra como antes, deja secar y mídela. Cada lectura mejora la próxima sugerencia." }
    colour_pour_title { "Add to batch", "Agregar a la mezcla" }
    colour_pour_hint { "Weigh it. If the scale reads something else, enter that.", "Pésalo. Si la báscula marcó otra cosa, escríbela." }
    colour_poured { "Add", "Agregar" }
    colour_poured_notice(what) { "{what} added to the batch.", "{what}: agregado a la mezcla." }
    colour_pour_note(before, after) { "Calculated: ΔE {before} → {after}", "Calculado: ΔE {before} → {after}" }
    colour_target_link { "Target color", "Color objetivo" }
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
