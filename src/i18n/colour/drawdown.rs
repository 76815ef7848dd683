//! Messages: noting a drawdown.

use super::super::format::number;
use super::super::locale::localized;
use super::super::messages::messages;
use lastpull_core::colour::SpectrumProblem;
use lastpull_core::ink::{LayerKind, Share};

messages! {
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
    colour_film_bar { "Drawn with a bar", "Con barra" }
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

/// Why the numbers are not a reflectance curve.
pub fn colour_curve_problem(problem: SpectrumProblem) -> &'static str {
    match problem {
        SpectrumProblem::NotASpectrum => colour_curve_no(),
        SpectrumProblem::TooNarrow => colour_curve_narrow(),
        SpectrumProblem::OutOfRange => colour_curve_range(),
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

/// What a layer is of, and how it lies.
pub(super) fn colour_lies(share: Share, rest: &str, lies: &str) -> String {
    let percent = format!("{}\u{a0}%", number(share.percent(), 2));
    let of = if rest.is_empty() {
        percent
    } else {
        localized(format!("{percent} in {rest}"), format!("{percent} en {rest}"))
    };
    format!("{of} · {lies}")
}
