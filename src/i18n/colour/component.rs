//! Messages: how well the colour of a component is known.

use super::super::format;
use super::super::messages::messages;
use super::drawdown::{colour_lay_kind, colour_lies};
use lastpull_core::ink::{ColourProvenance, ColourQuality, DrawdownLine, NextDrawdown, layer_kind};

messages! {
    colour_component_title(name) { "{name}: color data", "{name}: datos de color" }
    colour_good_unknown { "Not known yet", "Aún no se conoce" }
    colour_good_unknown_text { "Without a drawdown nothing can be calculated with it.", "Sin extendido no se puede calcular nada con él." }
    colour_good_clear { "Assumed clear", "Se supone transparente" }
    colour_good_clear_text { "No drawdown made. For a clear base that's good enough.", "Sin extendido. Para una base transparente basta." }
    colour_good_disagrees { "The drawdowns disagree", "Los extendidos no cuadran" }
    colour_good_disagrees_text { "One of them has the wrong percent, or is from another component.", "Uno tiene mal el porcentaje o es de otro componente." }
    colour_good_half { "Partly known", "Conocido a medias" }
    colour_good_half_text { "Absorption known; scattering assumed as typical for such a component.", "Se sabe cuánta luz absorbe; la que refleja se supone." }
    colour_good_good { "Well known", "Bien conocido" }
    colour_good_good_text { "Absorption and scattering both known.", "Se sabe cuánta luz absorbe y cuánta refleja." }
    colour_worst(worst) { "Worst drawdown off by ΔE₀₀ {worst}.", "El peor extendido se desvía ΔE₀₀ {worst}." }
    colour_based_on_photos(photos, of) { "Read from photos: {photos} of {of} drawdowns.", "Leídos de fotos: {photos} de sus {of} extendidos." }
    colour_based_on_through { "What it was let down with was read from a photo.", "Lo que se usó para rebajarlo se leyó de una foto." }
    colour_based_on_differences { "A photo shows differences only; an instrument is more reliable.", "Una foto solo muestra diferencias; un instrumento es más confiable." }
    colour_based_on_some { "Some drawdowns were read from photos, which show differences only; an instrument is more reliable.", "Hay extendidos leídos de fotos, que solo muestran diferencias; un instrumento es más confiable." }
    colour_next { "Next drawdown", "Próximo extendido" }
    colour_next_straight { "Straight, thick enough that nothing shows through", "Solo, tan grueso que no trasluzca nada" }
    colour_next_tint(percent, name) { "{percent} in {name}, thick enough that nothing shows through", "{percent} en {name}, tan grueso que no trasluzca nada" }
    colour_next_black { "One film over black", "Una capa sobre negro" }
    colour_next_white { "One film over white", "Una capa sobre blanco" }
    colour_next_again { "Repeat the one that disagrees", "Repetir el que no cuadra" }
    colour_next_do { "Enter drawdown", "Registrar extendido" }
    colour_another { "Add drawdown", "Agregar extendido" }
    colour_learned(times, lessons) { "In the batch it is {times} times as strong as in the drawdown (learned from {lessons}).", "En la mezcla es {times} veces más fuerte que en el extendido (aprendido de {lessons})." }
    colour_correction_samples[n] { "one correction" | "{n} corrections", "una corrección" | "{n} correcciones" }
    colour_not_learned { "Nothing learned from corrections yet: measure a batch before and after adding only this.", "Aún nada aprendido de correcciones: mide una mezcla antes y después de agregar solo este." }
    colour_drawdowns { "Drawdowns", "Extendidos" }
    colour_over_white { "One stroke over white", "Una mano sobre blanco" }
    colour_over_black { "One stroke over black", "Una mano sobre negro" }
    colour_line_off(off) { "off by ΔE₀₀ {off}", "se desvía ΔE₀₀ {off}" }
    colour_line_unused { "not used: its white or base is unknown", "sin usar: no se conoce su blanco o base" }
    colour_line_curve { "curve", "curva" }
    colour_drawn_deleted { "Drawdown deleted.", "Extendido eliminado." }
    colour_lines_legend { "Left: measured. Right: calculated.", "Izquierda: medido. Derecha: calculado." }
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
        NextDrawdown::Tint { name, percent, .. } => colour_next_tint(format::percent(*percent, 1), name),
        NextDrawdown::OverBlack => colour_next_black().into(),
        NextDrawdown::OverWhite => colour_next_white().into(),
        NextDrawdown::Again(_) => colour_next_again().into(),
    }
}

/// What a drawdown is of, and how it is laid.
pub fn colour_line(line: &DrawdownLine) -> String {
    colour_lies(line.made.share, &line.rest, colour_lay_kind(layer_kind(&line.made.lay)))
}

/// Which parts of a component's colour rest on photos; `None` if none do.
pub fn colour_based_on_on(on: ColourProvenance) -> Option<String> {
    let own = (on.photos > 0).then(|| colour_based_on_photos(on.photos, on.drawdowns));
    let through = on.through.then(|| colour_based_on_through().to_owned());
    let sentences: Vec<String> = own.into_iter().chain(through).collect();
    (!sentences.is_empty()).then(|| format!("{} {}", sentences.join(" "), colour_based_on_differences()))
}
