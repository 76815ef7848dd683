//! Messages: photos.

use super::format::moment;
use super::messages::messages;
use lastpull_core::ids::PhotoId;
use lastpull_core::photo::Photo;

messages! {
    photos_title { "Photos", "Fotos" }
    photos_none { "No photo yet. One of what you see now answers questions in a month.", "Aún no hay fotos. Una de lo que ves ahora responde preguntas dentro de un mes." }
    photo_take { "Take a photo", "Hacer una foto" }
    photo_choose { "Choose pictures", "Elegir imágenes" }
    photo_adding(done, of) { "Making photo {done} of {of} …", "Preparando foto {done} de {of} …" }
    photo_of(number, count, when) { "Photo {number} of {count}, {when}", "Foto {number} de {count}, {when}" }
    photo_missing { "Not on this device", "No está en este dispositivo" }
    photo_missing_text { "The picture comes with a backup file of the device that took it.", "La imagen llega con una copia del dispositivo que la tomó." }
    photo_delete { "Delete the photo", "Borrar la foto" }
    photo_deleted { "Photo deleted.", "Foto borrada." }
    photo_before { "Photo before", "Foto anterior" }
    photo_after { "Next photo", "Foto siguiente" }
    photo_closer { "Closer", "Acercar" }
    photo_farther { "Farther", "Alejar" }
    photo_refused(file, why) { "{file}: {why}", "{file}: {why}" }
    photo_too_large { "larger than any picture.", "demasiado grande para una imagen." }
    photo_no_picture { "this browser reads no picture in it.", "este navegador no encuentra ninguna imagen." }
    photo_not_made { "this browser could not make a photo of it.", "este navegador no pudo preparar la foto." }
    photos_left[n] {
        "Room for about {n} more photo on this device." | "Room for about {n} more photos on this device.",
        "Queda sitio para {n} foto más en este dispositivo." | "Queda sitio para unas {n} fotos más en este dispositivo."
    }
    photo_no_room {
        "This device has too little room left for photos; the count needs what there is. Free some, or take the data out as a file.",
        "Queda poco sitio en este dispositivo para fotos; el conteo necesita lo que hay. Libera espacio o saca los datos en un archivo."
    }
    photos_n[n] { "{n} photo" | "{n} photos", "{n} foto" | "{n} fotos" }
}

/// Which photo of how many, and when it was taken.
pub fn photo_label(photos: &[Photo], photo: PhotoId) -> String {
    let found = photos.iter().enumerate().find(|(_, other)| other.id == photo);
    found.map_or_else(String::new, |(at, photo)| photo_of(at + 1, photos.len(), moment(photo.at)))
}
