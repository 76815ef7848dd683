//! Messages: reading a colour with an instrument, from a screen or from a photo.

use super::super::messages::messages;
use super::drawdown::colour_lies;
use lastpull_core::colour::photo_reading::{PatchRole, PhotoProblem};
use lastpull_core::ink::{LayerKind, PatchSource, ReadBy};

messages! {
    colour_by_instrument { "by instrument", "con instrumento" }
    colour_by_photo { "from a photo", "de una foto" }
    colour_by_screen { "from an on-screen color", "de un color digital" }
    colour_read_from { "Color source", "Origen del color" }
    colour_from_instrument { "Instrument", "Instrumento" }
    colour_from_screen { "On-screen color", "Color digital" }
    colour_from_photo { "Photo", "Foto" }
    colour_lab_hint { "L*a*b* from the instrument, set to D65 and 2°.", "L*a*b* del instrumento, ajustado a D65 y 2°." }
    colour_screen_label { "Color", "Color" }
    colour_screen_hint { "As a file or color picker shows it. An approximation, not a measurement.", "Como lo muestra un archivo o un selector. Una aproximación, no una medida." }
    colour_hex { "#rrggbb", "#rrggbb" }
    colour_hex_wrong { "Enter # and six digits, such as #3f6b3a.", "Escribe # y seis cifras, como #3f6b3a." }
    colour_photo_trust { "A photo is trusted only for the difference between two patches, never for one color alone.", "De una foto solo vale la diferencia entre dos zonas, nunca un color suelto." }
    colour_photo_how(known, read) { "Lay {known}, {read} and something white or gray side by side in the same light. No flash, no shadow. Take one photo.", "Pon {known}, {read} y algo blanco o gris juntos, con la misma luz. Sin flash ni sombras. Toma una foto." }
    colour_photo_wait { "Reading the photo…", "Leyendo la foto…" }
    colour_photo_mark { "Tap the middle of each. Drag to move; arrow keys work too.", "Toca el centro de cada uno. Arrastra para mover; también con las flechas." }
    colour_photo_which { "Now marking", "Marcando" }
    colour_mark_sample { "Sample", "Muestra" }
    colour_mark_garment { "Garment", "Prenda" }
    colour_in_target { "target", "el objetivo" }
    colour_in_sample { "sample", "la muestra" }
    colour_in_garment { "garment", "la prenda" }
    colour_mark_neutral { "White or gray", "Blanco o gris" }
    colour_mark_at(which, x, y) { "{which}: {x}% across, {y}% down", "{which}: {x} % a lo ancho, {y} % a lo alto" }
    colour_smaller { "Smaller circle", "Círculo más chico" }
    colour_larger { "Larger circle", "Círculo más grande" }
    colour_neutral_is { "White or gray used", "Blanco o gris usado" }
    colour_neutral_paper { "White paper", "Papel blanco" }
    colour_neutral_card { "Gray card, 18%", "Tarjeta gris, 18 %" }
    colour_photo_says(known, read) { "In this photo, compared with the {known}, the {read} is", "En esta foto, comparando con {known}, {read} se ve" }
    colour_photo_corrected(stops, uneven) { "Corrected: {stops} stops of exposure, light uneven by {uneven}%.", "Corregido: {stops} pasos de exposición, luz desigual en {uneven} %." }
    colour_photo_laid { "This difference is added to the known target.", "Esta diferencia se suma al objetivo conocido." }
    colour_photo_laid_garment { "This difference is added to the garment's reading.", "Esta diferencia se suma a la lectura de la prenda." }
    colour_photo_first { "The recipe has no target yet: the one in the photo becomes its target.", "La receta aún no tiene objetivo: será el de la foto." }
    colour_photo_laid_known { "This difference is added to the known patch.", "Esta diferencia se suma a la muestra conocida." }
    colour_photo_no_patch { "Choose what's next to it before the photo can be read.", "Elige qué hay al lado antes de leer la foto." }
    colour_photo_reads(lab) { "Drawdown reading: {lab}.", "Lectura del extendido: {lab}." }
    colour_photo_doubt(doubt) {
        "These two are far apart in color. Under artificial light, and with the phone's contrast, this can be off by ΔE₀₀ {doubt}, mostly too large; less in daylight. The closer the two colors, the more reliable the photo.",
        "Estos dos se parecen poco. Con luz artificial, y por el contraste del teléfono, puede desviarse ΔE₀₀ {doubt}, casi siempre de más; con luz de día, menos. Cuanto más se parezcan, más confiable la foto."
    }
    colour_photo_note(name) { "Read from a photo next to {name}.", "Leído de una foto junto a {name}." }
    colour_mark_known { "Known patch", "Muestra conocida" }
    colour_in_known { "known patch", "la muestra conocida" }
    colour_letter_known { "K", "C" }
    colour_mark_drawdown { "Drawdown", "Extendido" }
    colour_in_drawdown { "drawdown", "el extendido" }
    colour_letter_drawdown { "D", "E" }
    colour_beside { "What's next to it?", "¿Qué hay al lado?" }
    colour_beside_why { "Something measured by an instrument. The closer the two colors, the more reliable the photo.", "Algo que midió un instrumento. Cuanto más se parezcan, más confiable la foto." }
    colour_beside_none { "Nothing measured by instrument yet. A control card with printed values works.", "Aún no hay nada medido con instrumento. Sirve una tarjeta de control con sus valores impresos." }
    colour_beside_card { "Control card", "Tarjeta de control" }
    colour_beside_card_hint { "Its values are printed on it", "Con sus valores impresos" }
    colour_beside_card_lab { "L*a*b* of the patch you mark, as printed, for D65.", "L*a*b* del campo que marques, como está impreso, con D65." }
    colour_beside_more[n] { "{n} more" | "{n} more", "{n} más" | "{n} más" }
    colour_beside_change { "Change", "Cambiar" }
    colour_beside_thick { "thick", "en capa gruesa" }
    colour_beside_white { "a film over white", "una capa sobre blanco" }
    colour_beside_black { "a film over black", "una capa sobre negro" }
    colour_beside_target { "Target", "Objetivo" }
    colour_beside_garment { "Garment", "Prenda" }
    colour_photo_none { "The photo could not be read. Choose another.", "No se pudo leer la foto. Elige otra." }
    colour_problem_outside(which) { "{which}: the circle goes past the edge. Move it in or make it smaller.", "{which}: el círculo se sale. Muévelo adentro o hazlo más chico." }
    colour_problem_small(which) { "{which}: too few pixels. Make the circle larger, or move the camera closer.", "{which}: muy pocos píxeles. Agranda el círculo o acerca la cámara." }
    colour_problem_bright(which) { "{which} is overexposed. Take a darker photo.", "{which}: sobreexpuesto. Toma la foto más oscura." }
    colour_problem_dark(which) { "{which} is too dark or too vivid for the photo. Take a brighter one.", "{which}: demasiado oscuro o vivo para la foto. Toma una más clara." }
    colour_problem_patchy(which) { "{which} is not one plain color there: an edge, a crease or a highlight. Move the circle or make it smaller.", "{which}: ahí no hay un color liso: un borde, un pliegue o un brillo. Mueve el círculo o hazlo más chico." }
    colour_problem_uneven { "The light differs too much between them. Lay them closer together, away from window edges and shadows.", "La luz cambia demasiado de uno a otro. Júntalos más, lejos de bordes de ventana y sombras." }
    colour_problem_light { "White or gray doesn't look neutral. Mark something white or gray, and avoid colored light.", "El blanco o gris no se ve neutro. Marca algo blanco o gris y evita luces de color." }
}

/// How a colour was read.
pub fn colour_read_by(by: ReadBy) -> &'static str {
    match by {
        ReadBy::Instrument => colour_by_instrument(),
        ReadBy::Photo => colour_by_photo(),
        ReadBy::Screen => colour_by_screen(),
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
