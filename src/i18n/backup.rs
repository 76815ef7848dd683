//! Messages: the backup.

use super::messages::messages;
use lastpull_core::shop::ShopSetting;
messages! {
    backup_title { "Backup and other devices", "Copia y otros dispositivos" }
    backup_text { "One file with everything, out and in", "Un archivo con todo, de ida y vuelta" }
    backup_out { "Take everything out", "Sacar todo" }
    backup_out_text { "One file holds every job, count, check and photo of all your devices. It is not encrypted: whoever has it can read it. Keep it somewhere safe, or hand it to another device.", "Un archivo con todos los pedidos, conteos, comprobaciones y fotos de todos tus dispositivos. No va cifrado: quien lo tenga puede leerlo. Guárdalo en un lugar seguro o pásalo a otro dispositivo." }
    backup_prepare { "Make the file", "Preparar el archivo" }
    backup_busy { "Working …", "Trabajando …" }
    work_reading(done, of) { "Reading the file: {done} of {of}", "Leyendo el archivo: {done} de {of}" }
    work_storing(of) { "Storing {of} …", "Guardando {of} …" }
    work_writing(done, of) { "Writing the file: {done} of {of}", "Escribiendo el archivo: {done} de {of}" }
    work_checking(done, of) { "Reading it back: {done} of {of}", "Releyéndolo: {done} de {of}" }
    work_cancel_hint { "Cancelling changes nothing.", "Cancelar no cambia nada." }
    backup_ready(size, facts) { "Ready: {size}, {facts}.", "Listo: {size}, {facts}." }
    backup_photos[n] { "With {n} photo." | "With {n} photos.", "Con {n} foto." | "Con {n} fotos." }
    backup_photos_left_out[n] { "{n} photo is not in it: its picture is not on this device." | "{n} photos are not in it: their pictures are not on this device.", "Falta {n} foto: su imagen no está en este dispositivo." | "Faltan {n} fotos: sus imágenes no están en este dispositivo." }
    backup_photos_too_many[n] { "{n} photo is not in it: the file is full." | "{n} photos are not in it: the file is full.", "Falta {n} foto: el archivo está lleno." | "Faltan {n} fotos: el archivo está lleno." }
    backup_rescued[n] { "{n} entry that could not be saved here goes with it." | "{n} entries that could not be saved here go with it.", "Lleva {n} anotación que aquí no se pudo guardar." | "Lleva {n} anotaciones que aquí no se pudieron guardar." }
    backup_part(read, stored) { "Not everything stored could be read: {read} of {stored} facts are in the file.", "No se pudo leer todo lo guardado: el archivo lleva {read} de {stored} hechos." }
    backup_part_unknown(read) { "Not everything stored could be read. {read} facts are in the file; how many there were does not read either.", "No se pudo leer todo lo guardado. El archivo lleva {read} hechos; tampoco se lee cuántos había." }
    backup_pieces[n] { "{n} stored piece does not read and is in the file as it is." | "{n} stored pieces do not read and are in the file as they are.", "{n} parte guardada no se lee y va en el archivo tal cual." | "{n} partes guardadas no se leen y van en el archivo tal cual." }
    backup_keep_part { "Keep this file, and do not clear this site's data: what does not read here may still be repaired.", "Guarda este archivo y no borres los datos de este sitio: lo que aquí no se lee quizá se pueda reparar." }
    backup_sent(name) { "Look where downloads go on this device: is {name} there? Only you can see that.", "Mira donde van las descargas de este dispositivo: ¿está {name}? Solo tú puedes verlo." }
    backup_sent_rescued[n] { "Until you say so, {n} entry stays here unsaved." | "Until you say so, {n} entries stay here unsaved.", "Hasta que lo digas, {n} anotación sigue aquí sin guardar." | "Hasta que lo digas, {n} anotaciones siguen aquí sin guardar." }
    backup_have { "I have the file", "Tengo el archivo" }
    backup_nothing_read { "Nothing stored could be read.", "No se pudo leer nada de lo guardado." }
    backup_not_read_back { "The file was made, but does not read back:", "El archivo se hizo, pero no se puede volver a leer:" }
    backup_not_made { "The browser could not make a file of it. Free some room on the device and try again.", "El navegador no pudo hacer el archivo. Libera espacio en el dispositivo y prueba otra vez." }
    backup_download { "Download", "Descargar" }
    backup_last(when) { "Last backup: {when}.", "Última copia: {when}." }
    backup_since(facts) { "{facts} since.", "Desde entonces: {facts}." }
    backup_never { "No backup was made on this device yet.", "Aún no se ha hecho ninguna copia en este dispositivo." }
    backup_in { "Bring a file in", "Traer un archivo" }
    backup_in_text { "You see what is in it first. It is added to what is here, and the same file twice changes nothing.", "Primero ves lo que trae. Se suma a lo que hay, y el mismo archivo dos veces no cambia nada." }
    backup_pick { "Choose a backup file", "Elegir un archivo de copia" }
    preview_title { "In this file", "En este archivo" }
    preview_shop(name) { "Shop: {name}", "Taller: {name}" }
    preview_no_name { "A shop without a name", "Un taller sin nombre" }
    preview_facts(new, known) { "{new} new; {known} are here already.", "Nuevos: {new}; ya están aquí: {known}." }
    preview_latest(when) { "Latest entry: {when}.", "Última anotación: {when}." }
    preview_device(name, facts, new) { "{name}: {facts}, {new} new", "{name}: {facts}, {new} nuevos" }
    preview_device_unnamed { "A device without a name", "Un dispositivo sin nombre" }
    preview_changes { "What it changes here", "Lo que cambia aquí" }
    preview_new_jobs[n] { "{n} new job" | "{n} new jobs", "{n} pedido nuevo" | "{n} pedidos nuevos" }
    preview_changed_jobs[n] { "Adds to {n} job that is here" | "Adds to {n} jobs that are here", "Añade a {n} pedido que ya está" | "Añade a {n} pedidos que ya están" }
    preview_pieces(n) { "Pieces counted: {n}", "Piezas contadas: {n}" }
    preview_deletes[n] { "Deletes {n} thing that is here" | "Deletes {n} things that are here", "Borra {n} cosa que está aquí" | "Borra {n} cosas que están aquí" }
    preview_renames(name) { "This shop may then be called {name}", "Este taller puede pasar a llamarse {name}" }
    preview_sets_crew { "The crew may change", "Puede cambiar el equipo" }
    preview_sets_closing { "Closing times may change", "Pueden cambiar las horas de cierre" }
    preview_sets_set_up { "The time between runs may change", "Puede cambiar el tiempo entre tiradas" }
    preview_sets_order { "The order of open runs may change", "Puede cambiar el orden de las tiradas abiertas" }
    preview_demo { "This file is of the demo shop. Its invented jobs would be mixed into your own.", "Este archivo es del taller de demostración. Sus pedidos inventados se mezclarían con los tuyos." }
    preview_other { "This file has no device in common with this shop: it may be another shop's. The two would become one.", "Este archivo no tiene ningún dispositivo en común con este taller: quizá sea de otro. Los dos se volverían uno." }
    preview_import { "Bring it in", "Traerlo" }
    preview_import_anyway { "Mix it into this shop", "Mezclarlo con este taller" }
    preview_leave { "Leave it", "Dejarlo" }
    import_at(moment) { "Last file brought in: {moment}.", "Último archivo traído: {moment}." }
    import_take_back { "Take it back", "Deshacer la entrada" }
    import_take_back_text { "The facts of the file leave this device again; what you recorded since stays. Possible until you bring in another one.", "Los hechos del archivo salen otra vez de este dispositivo; lo que anotaste después se queda. Se puede hasta que traigas otro." }
    import_taken_back(facts) { "Taken back: {facts} left this device.", "Deshecho: {facts} salieron de este dispositivo." }
    import_new(new, known) { "{new} new; {known} were here already.", "Nuevos: {new}; ya estaban: {known}." }
    import_nothing(known) { "Nothing new: all {known} were here already.", "Nada nuevo: {known} ya estaban aquí." }
    import_photos[n] { "{n} photo new." | "{n} photos new.", "{n} foto nueva." | "{n} fotos nuevas." }
    import_photos_missing[n] { "{n} photo is still missing here: bring in a file of the device that took it." | "{n} photos are still missing here: bring in a file of the device that took them.", "Falta aquí {n} foto: trae un archivo del dispositivo que la tomó." | "Faltan aquí {n} fotos: trae un archivo del dispositivo que las tomó." }
    import_gaps[n] { "{n} fact in between is missing: bring in the newest file of every device." | "{n} facts in between are missing: bring in the newest file of every device.", "Falta {n} hecho intermedio: trae el archivo más reciente de cada dispositivo." | "Faltan {n} hechos intermedios: trae el archivo más reciente de cada dispositivo." }
    import_forks {
        "Two devices counted on as one: a phone was copied, or set back to an older state. Nothing is lost: what each of them counted is kept.",
        "Dos dispositivos contaron como si fueran uno: un teléfono se copió o volvió a un estado anterior. No se pierde nada: se conserva lo que contó cada uno."
    }
    import_renewed {
        "From now on this device counts under a name of its own. Bring its new file in on the other device too.",
        "Desde ahora este dispositivo cuenta con identidad propia. Trae también su archivo nuevo al otro dispositivo."
    }
    import_far_ahead[n] { "{n} fact is dated ahead of now: check that device's clock." | "{n} facts are dated ahead of now: check that device's clock.", "{n} hecho tiene fecha futura: revisa el reloj de ese dispositivo." | "{n} hechos tienen fecha futura: revisa el reloj de ese dispositivo." }
    backup_devices { "Devices in this shop", "Dispositivos de este taller" }
    backup_this_device { "this device", "este dispositivo" }
    deleted_title { "Recently deleted", "Borrado hace poco" }
    deleted_text { "Bring back what was deleted by mistake", "Recuperar lo borrado por error" }
    deleted_none { "Nothing is deleted.", "No hay nada borrado." }
    deleted_hint { "What you restore comes back with everything counted on it. Photos of deleted things are kept for 30 days.", "Lo que recuperas vuelve con todo lo contado. Las fotos de lo borrado se guardan 30 días." }
    deleted_restore { "Restore", "Recuperar" }
    deleted_restore_of(what) { "Restore: {what}", "Recuperar: {what}" }
    deleted_restored(what) { "Restored: {what}", "Recuperado: {what}" }
    deleted_when(when) { "Deleted {when}", "Borrado {when}" }
    deleted_job { "Job", "Pedido" }
    deleted_lot { "Garments", "Prendas" }
    deleted_run(location) { "Run, {location}", "Tirada, {location}" }
    deleted_screen { "Screen", "Pantalla" }
    deleted_failure { "Failure on the press", "Fallo en la prensa" }
    deleted_lamp { "Exposure lamp", "Lámpara de exposición" }
    deleted_emulsion { "Emulsion", "Emulsión" }
    deleted_exposure { "Known exposure", "Exposición conocida" }
    deleted_bath_charge { "Fresh bath", "Baño nuevo" }
    deleted_bath_batch { "Screens in the bath", "Pantallas en el baño" }
    deleted_heater { "Dryer or flash", "Túnel o flash" }
    deleted_ink_sheet { "Ink data sheet", "Ficha de tinta" }
    deleted_cure_test { "Cure test", "Prueba de curado" }
    deleted_trial { "Trial", "Ensayo" }
    deleted_settling { "Settling time", "Tiempo de estabilización" }
    deleted_climate { "Climate reading", "Lectura de clima" }
    deleted_component { "Ink component", "Componente de tinta" }
    deleted_recipe { "Recipe", "Receta" }
    deleted_revision(number) { "Recipe version {number}", "Versión {number} de receta" }
    deleted_pot { "Pot", "Bote" }
}

/// Which setting of the shop a file may change.
pub fn preview_sets(setting: ShopSetting) -> &'static str {
    match setting {
        ShopSetting::Crew => preview_sets_crew(),
        ShopSetting::Closing => preview_sets_closing(),
        ShopSetting::SetUp => preview_sets_set_up(),
        ShopSetting::Order => preview_sets_order(),
    }
}
