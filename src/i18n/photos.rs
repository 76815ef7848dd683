//! Messages: photos.

use super::format::moment;
use super::messages::messages;
use lastpull_core::ids::PhotoId;
use lastpull_core::photo::Photo;

messages! {
    photos_title { "Photos", "Fotos" }
    photos_none { "No photos yet. A photo taken now answers questions next month.", "Aún no hay fotos. Una foto de hoy responde preguntas en un mes." }
    photo_take { "Take a photo", "Tomar una foto" }
    photo_choose { "Choose photos", "Elegir fotos" }
    photo_adding(done, of) { "Adding photo {done} of {of} …", "Agregando foto {done} de {of} …" }
    photo_of(number, count, when) { "Photo {number} of {count}, {when}", "Foto {number} de {count}, {when}" }
    photo_missing { "Not on this device", "No está en este dispositivo" }
    photo_missing_text { "Import a backup file from the device that took it to see it here.", "Para verla aquí, importa una copia del dispositivo que la tomó." }
    photo_delete { "Delete the photo", "Borrar la foto" }
    photo_deleted { "Photo deleted.", "Foto borrada." }
    photo_before { "Previous photo", "Foto anterior" }
    photo_after { "Next photo", "Foto siguiente" }
    photo_closer { "Zoom in", "Acercar" }
    photo_farther { "Zoom out", "Alejar" }
    photo_refused(file, why) { "{file}: {why}", "{file}: {why}" }
    photo_too_large { "too large for a photo.", "demasiado grande para una foto." }
    photo_no_picture { "this browser can't find a picture in it.", "este navegador no encuentra ninguna imagen." }
    photo_not_made { "this browser could not make a photo from it.", "este navegador no pudo preparar la foto." }
    photos_left[n] {
        "Space for about {n} more photo on this device." | "Space for about {n} more photos on this device.",
        "Queda espacio para {n} foto más en este dispositivo." | "Queda espacio para unas {n} fotos más en este dispositivo."
    }
    photo_no_room {
        "Too little space left for photos; the count needs what is left. Free some space, or save a backup file.",
        "Queda poco espacio para fotos; el conteo necesita lo que queda. Libera espacio o guarda una copia de seguridad."
    }
    photos_n[n] { "{n} photo" | "{n} photos", "{n} foto" | "{n} fotos" }
}

/// Which photo of how many, and when it was taken.
pub fn photo_label(photos: &[Photo], photo: PhotoId) -> String {
    let found = photos.iter().enumerate().find(|(_, other)| other.id == photo);
    found.map_or_else(String::new, |(at, photo)| photo_of(at + 1, photos.len(), moment(photo.at)))
}
