//! Messages: how well the colour of a component is known.

use super::super::format::number;
use super::super::messages::messages;
use super::drawdown::{colour_lay_kind, colour_lies};
use lastpull_core::ink::{ColourProvenance, ColourQuality, DrawdownLine, NextDrawdown, layer_kind};

messages! {
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
    colour_based_on_photos(photos, of) { "Read from photos: {photos} of {of} drawdowns behind it.", "Leídos de fotos: {photos} de {of} extendidos en que se basa." }
    colour_based_on_through { "What it was let down with was read from photos.", "Aquello con que se rebajó se leyó de fotos." }
    colour_based_on_differences { "A photo tells differences only; an instrument is surer.", "Una foto solo dice diferencias; un instrumento es más seguro." }
    colour_based_on_some { "Drawdowns behind it were read from photos, which tell differences only; an instrument is surer.", "Hay extendidos leídos de fotos, que solo dicen diferencias; un instrumento es más seguro." }
    colour_next { "Draw down next", "Próximo extendido" }
    colour_next_straight { "It alone, so thick that nothing shines through", "Solo, tan grueso que no trasluzca nada" }
    colour_next_tint(percent, name) { "{percent} of it in {name}, so thick that nothing shines through", "{percent} de él en {name}, tan grueso que no trasluzca nada" }
    colour_next_black { "One film of it over black", "Una capa sobre negro" }
    colour_next_white { "One film of it over white", "Una capa sobre blanco" }
    colour_next_again { "The one that disagrees, again", "El que no cuadra, otra vez" }
    colour_next_do { "Note this drawdown", "Anotar este extendido" }
    colour_another { "Note another drawdown", "Anotar otro extendido" }
    colour_learned(times, lessons) { "In the pot it is {times} times as strong as drawn down: learned from {lessons}.", "En el bote es {times} veces más fuerte que en el extendido: aprendido de {lessons}." }
    colour_correction_samples[n] { "one correction" | "{n} corrections", "una corrección" | "{n} correcciones" }
    colour_not_learned { "Nothing learned from corrections yet: read a pot before and after adding it alone.", "Aún nada aprendido de correcciones: lee un bote antes y después de añadirlo solo." }
    colour_drawdowns { "Drawdowns", "Extendidos" }
    colour_over_white { "One hit over white", "Una pasada sobre blanco" }
    colour_over_black { "One hit over black", "Una pasada sobre negro" }
    colour_line_off(off) { "off by ΔE₀₀ {off}", "se desvía ΔE₀₀ {off}" }
    colour_line_unused { "not used: its white or base is not known", "sin usar: no se conoce su blanco o base" }
    colour_line_curve { "curve", "curva" }
    colour_drawn_deleted { "Drawdown deleted.", "Extendido eliminado." }
    colour_lines_legend { "Left as it was read, right as it is worked out.", "A la izquierda lo leído, a la derecha lo calculado." }
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
