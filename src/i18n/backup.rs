//! Messages: the backup.

use super::messages::messages;
messages! {
    backup_title { "Backup and other devices", "Copia y otros dispositivos" }
    backup_text { "One file with everything, out and in", "Un archivo con todo, de ida y vuelta" }
    backup_out { "Take everything out", "Sacar todo" }
    backup_out_text { "One file holds every job, count, check and photo of all your devices. Keep it somewhere safe, or hand it to another device.", "Un archivo con todos los pedidos, conteos, comprobaciones y fotos de todos tus dispositivos. Guárdalo o pásalo a otro dispositivo." }
    backup_prepare { "Make the file", "Preparar el archivo" }
    backup_busy { "Working …", "Trabajando …" }
    backup_ready(size, facts) { "Ready: {size}, {facts}.", "Listo: {size}, {facts}." }
    backup_photos[n] { "With {n} photo." | "With {n} photos.", "Con {n} foto." | "Con {n} fotos." }
    backup_photos_left_out[n] { "{n} photo is not in it: its picture is not on this device." | "{n} photos are not in it: their pictures are not on this device.", "Falta {n} foto: su imagen no está en este dispositivo." | "Faltan {n} fotos: sus imágenes no están en este dispositivo." }
    backup_rescued[n] { "{n} entry that could not be saved here goes with it, and leaves this page." | "{n} entries that could not be saved here go with it, and leave this page.", "Lleva {n} anotación que aquí no se pudo guardar y que sale de esta página." | "Lleva {n} anotaciones que aquí no se pudieron guardar y que salen de esta página." }
    backup_download { "Download", "Descargar" }
    backup_last(when) { "Last backup: {when}.", "Última copia: {when}." }
    backup_since(facts) { "{facts} since.", "Desde entonces: {facts}." }
    backup_never { "No backup was made on this device yet.", "Aún no se ha hecho ninguna copia en este dispositivo." }
    backup_in { "Bring a file in", "Traer un archivo" }
    backup_in_text { "It is added to what is here; nothing is replaced. The same file twice changes nothing.", "Se suma a lo que hay; no se reemplaza nada. El mismo archivo dos veces no cambia nada." }
    backup_pick { "Choose a backup file", "Elegir un archivo de copia" }
    brought_new(new, known) { "{new} new; {known} were here already.", "Nuevos: {new}; ya estaban: {known}." }
    brought_nothing(known) { "Nothing new: all {known} were here already.", "Nada nuevo: {known} ya estaban aquí." }
    brought_photos[n] { "{n} photo new." | "{n} photos new.", "{n} foto nueva." | "{n} fotos nuevas." }
    brought_photos_missing[n] { "{n} photo is still missing here: bring in a file of the device that took it." | "{n} photos are still missing here: bring in a file of the device that took them.", "Falta aquí {n} foto: trae un archivo del dispositivo que la tomó." | "Faltan aquí {n} fotos: trae un archivo del dispositivo que las tomó." }
    brought_gaps[n] { "{n} fact in between is missing: bring in the newest file of every device." | "{n} facts in between are missing: bring in the newest file of every device.", "Falta {n} hecho intermedio: trae el archivo más reciente de cada dispositivo." | "Faltan {n} hechos intermedios: trae el archivo más reciente de cada dispositivo." }
    brought_forks {
        "Two devices counted on as one: a phone was copied, or set back to an older state. Nothing is lost: what each of them counted is kept.",
        "Dos dispositivos contaron como si fueran uno: un teléfono se copió o volvió a un estado anterior. No se pierde nada: se conserva lo que contó cada uno."
    }
    brought_renewed {
        "From now on this device counts under a name of its own. Bring its new file in on the other device too.",
        "Desde ahora este dispositivo cuenta con identidad propia. Trae también su archivo nuevo al otro dispositivo."
    }
    brought_far_ahead[n] { "{n} fact is dated ahead of now: check that device's clock." | "{n} facts are dated ahead of now: check that device's clock.", "{n} hecho tiene fecha futura: revisa el reloj de ese dispositivo." | "{n} hechos tienen fecha futura: revisa el reloj de ese dispositivo." }
    backup_devices { "Devices in this shop", "Dispositivos de este taller" }
    backup_this_device { "this device", "este dispositivo" }
}
