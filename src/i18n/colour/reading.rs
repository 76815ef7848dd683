//! Messages: reading a colour with an instrument, from a screen or from a photo.

use super::super::messages::messages;
use super::drawdown::colour_lies;
use lastpull_core::colour::photo_reading::{PatchRole, PhotoProblem};
use lastpull_core::ink::{LayerKind, PatchSource, ReadBy};

messages! {
    colour_by_instrument { "by instrument", "con instrumento" }
    colour_by_photo { "from a photo", "de una foto" }
    colour_by_screen { "from a screen colour", "de un color de pantalla" }
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
        "These two are far apart. Under lamps, and by the phone's contrast, this may well be off by ΔE₀₀ {doubt}, mostly too large; by daylight by less. The nearer the two, the surer the photo.",
        "Estos dos se parecen poco. Con lámparas, y por el contraste del teléfono, puede desviarse ΔE₀₀ {doubt}, casi siempre de más; con luz de día, menos. Cuanto más se parezcan, más segura la foto."
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
