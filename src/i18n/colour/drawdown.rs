//! Messages: noting a drawdown.

use super::super::format;
use super::super::locale::localized;
use super::super::messages::messages;
use lastpull_core::colour::SpectrumProblem;
use lastpull_core::ink::{LayerKind, Share};

messages! {
    colour_drawdown_title { "Drawdown", "Extendido" }
    colour_drawdown_of(name) { "Drawdown of {name}", "Extendido de {name}" }
    colour_share { "Percent", "Porcentaje" }
    colour_share_hint { "100 = straight; less = let down with white or base.", "100 = solo; menos = rebajado con blanco o base." }
    colour_rest { "Let down with", "Rebajado con" }
    colour_rest_none { "Nothing", "Nada" }
    colour_lay { "How it was applied", "Cómo se aplicó" }
    colour_lay_thick { "Thick: nothing shows through", "Grueso: no trasluce nada" }
    colour_lay_white { "A film over white", "Una capa sobre blanco" }
    colour_lay_black { "A film over black", "Una capa sobre negro" }
    colour_film { "Film made by", "La capa se hizo" }
    colour_film_print { "Printing", "Impresa" }
    colour_film_bar { "Drawdown bar", "Con barra" }
    colour_film_hits { "Strokes", "Manos de tinta" }
    colour_film_wet { "Wet film", "Capa húmeda" }
    colour_film_a_hit { "Ink per stroke", "Tinta por mano" }
    colour_film_a_hit_hint { "The screen's ink volume: 40 cm³/m² equals 40 µm.", "El volumen de tinta de la pantalla: 40 cm³/m² son 40 µm." }
    colour_backing { "Card underneath, measured", "Cartulina de debajo, medida" }
    colour_backing_hint { "If not, a standard opacity chart is assumed: white 80%, black 1%.", "Si no, se supone una carta de opacidad: blanco 80 %, negro 1 %." }
    colour_swatch_seen { "Reading", "Lectura" }
    colour_curve_or { "The instrument gives a curve", "El instrumento da una curva" }
    colour_curve_values { "Reflectance values in order", "Valores de reflectancia en orden" }
    colour_curve_first { "From", "Desde" }
    colour_curve_step { "In steps of", "En pasos de" }
    colour_curve_got { "Curve of 31 bands, 400 to 700 nm.", "Curva de 31 bandas, de 400 a 700 nm." }
    colour_curve_hint { "As copied from the instrument: 0–1 or percent. A curve makes every mix more reliable.", "Tal como sale del instrumento: 0–1 o porcentaje. Con curva, toda mezcla es más confiable." }
    colour_curve_no { "These numbers are not a curve.", "Estos números no son una curva." }
    colour_curve_narrow { "It must cover 420 to 680 nm.", "Debe abarcar de 420 a 680 nm." }
    colour_curve_range { "A value is below 0 or above 1 (100%).", "Hay un valor por debajo de 0 o por encima de 1 (100 %)." }
    colour_drawdown_saved { "Drawdown saved.", "Extendido guardado." }
    colour_drawdown_wait { "Let it dry and cool like a print before measuring.", "Deja que seque y se enfríe como una impresión antes de medirlo." }
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
    let percent = format::percent(share.percent(), 2);
    let of = if rest.is_empty() {
        percent
    } else {
        localized(format!("{percent} in {rest}"), format!("{percent} en {rest}"))
    };
    format!("{of} · {lies}")
}
