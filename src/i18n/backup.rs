//! Messages: the backup.

use super::messages::messages;
use lastpull_core::shop::ShopSetting;
messages! {
    backup_title { "Backup and other devices", "Copia y otros dispositivos" }
    backup_text { "One file with everything, to save or share", "Un archivo con todo, para guardar o pasar" }
    backup_out { "Make a backup", "Hacer una copia" }
    backup_out_text { "One file holds every job, count, check and photo from all your devices. It is not encrypted: anyone who has it can read it. Keep it somewhere safe, or pass it to another device.", "Un archivo con todos los pedidos, conteos, revisiones y fotos de todos tus dispositivos. No está cifrado: quien lo tenga puede leerlo. Guárdalo en un lugar seguro o pásalo a otro dispositivo." }
    backup_prepare { "Make the file", "Preparar el archivo" }
    backup_busy { "Working …", "Trabajando …" }
    work_reading(done, of) { "Reading the file: {done} of {of}", "Leyendo el archivo: {done} de {of}" }
    work_storing(of) { "Saving {of} …", "Guardando {of} …" }
    work_writing(done, of) { "Writing the file: {done} of {of}", "Escribiendo el archivo: {done} de {of}" }
    work_checking(done, of) { "Checking the file: {done} of {of}", "Revisando el archivo: {done} de {of}" }
    work_cancel_hint { "Cancelling changes nothing.", "Cancelar no cambia nada." }
    backup_ready(size, facts) { "Ready: {size}, {facts}.", "Listo: {size}, {facts}." }
    backup_photos[n] { "With {n} photo." | "With {n} photos.", "Con {n} foto." | "Con {n} fotos." }
    backup_photos_left_out[n] { "{n} photo is not included: its picture is not on this device." | "{n} photos are not included: their pictures are not on this device.", "Falta {n} foto: su imagen no está en este dispositivo." | "Faltan {n} fotos: sus imágenes no están en este dispositivo." }
    backup_photos_too_many[n] { "{n} photo is not included: the file is full." | "{n} photos are not included: the file is full.", "Falta {n} foto: el archivo está lleno." | "Faltan {n} fotos: el archivo está lleno." }
    backup_rescued[n] { "Includes {n} entry that could not be saved here." | "Includes {n} entries that could not be saved here.", "Lleva {n} registro que aquí no se pudo guardar." | "Lleva {n} registros que aquí no se pudieron guardar." }
    backup_part(read, stored) { "Not everything saved could be read: {read} of {stored} entries are in the file.", "No se pudo leer todo lo guardado: el archivo lleva {read} de {stored} registros." }
    backup_part_unknown(read) { "Not everything saved could be read. {read} entries are in the file; the total can't be read either.", "No se pudo leer todo lo guardado. Registros en el archivo: {read}; tampoco se lee cuántos había." }
    backup_pieces[n] { "{n} saved part can't be read and is in the file as is." | "{n} saved parts can't be read and are in the file as is.", "{n} parte guardada no se puede leer y va en el archivo tal cual." | "{n} partes guardadas no se pueden leer y van en el archivo tal cual." }
    backup_keep_part { "Keep this file, and do not clear this site's data: what can't be read here may still be repaired.", "Guarda este archivo y no borres los datos de este sitio: lo que aquí no se puede leer quizá se pueda reparar." }
    backup_sent(name) { "Check this device's downloads: is {name} there? Only you can see that.", "Revisa las descargas de este dispositivo: ¿está {name}? Solo tú puedes verlo." }
    backup_sent_rescued[n] { "Until you confirm, {n} entry stays here unsaved." | "Until you confirm, {n} entries stay here unsaved.", "Hasta que confirmes, {n} registro sigue aquí sin guardar." | "Hasta que confirmes, {n} registros siguen aquí sin guardar." }
    backup_have { "I have the file", "Tengo el archivo" }
    backup_nothing_read { "None of the saved data could be read.", "No se pudo leer nada de lo guardado." }
    backup_not_read_back { "The file was made but can't be read back:", "El archivo se hizo, pero no se puede volver a leer:" }
    backup_not_made { "The browser could not make the file. Free some space on the device and try again.", "El navegador no pudo hacer el archivo. Libera espacio en el dispositivo y prueba otra vez." }
    backup_download { "Download", "Descargar" }
    backup_last(when) { "Last backup: {when}.", "Última copia ({when})." }
    backup_since(facts) { "{facts} since.", "Desde entonces: {facts}." }
    backup_never { "No backup made on this device yet.", "Aún no se ha hecho ninguna copia en este dispositivo." }
    backup_in { "Import a file", "Importar un archivo" }
    backup_in_text { "You see what's in it first. It is added to what's here; the same file twice changes nothing.", "Primero ves lo que trae. Se suma a lo que hay; el mismo archivo dos veces no cambia nada." }
    backup_pick { "Choose a backup file", "Elegir una copia" }
    preview_title { "In this file", "En este archivo" }
    preview_shop(name) { "Shop: {name}", "Taller: {name}" }
    preview_no_name { "Unnamed shop", "Taller sin nombre" }
    preview_facts(new, known) { "{new} new; {known} already here.", "Nuevos: {new}; ya están aquí: {known}." }
    preview_latest(when) { "Latest entry: {when}.", "Último registro ({when})." }
    preview_device(name, facts, new) { "{name}: {facts}, {new} new", "{name}: {facts}, {new} nuevos" }
    preview_device_unnamed { "Unnamed device", "Dispositivo sin nombre" }
    preview_changes { "Changes on this device", "Cambios en este dispositivo" }
    preview_new_jobs[n] { "{n} new job" | "{n} new jobs", "{n} pedido nuevo" | "{n} pedidos nuevos" }
    preview_changed_jobs[n] { "Adds to {n} job here" | "Adds to {n} jobs here", "Agrega a {n} pedido que ya está" | "Agrega a {n} pedidos que ya están" }
    preview_pieces(n) { "Pieces counted: {n}", "Piezas contadas: {n}" }
    preview_deletes[n] { "Deletes {n} item here" | "Deletes {n} items here", "Borra {n} elemento de aquí" | "Borra {n} elementos de aquí" }
    preview_renames(name) { "Shop name may change to {name}", "El nombre del taller puede cambiar a {name}" }
    preview_sets_crew { "The crew may change", "Puede cambiar el equipo" }
    preview_sets_closing { "Closing times may change", "Pueden cambiar las horas de cierre" }
    preview_sets_set_up { "Setup between runs may change", "Puede cambiar la preparación entre tirajes" }
    preview_sets_order { "The order of open runs may change", "Puede cambiar el orden de los tirajes abiertos" }
    preview_demo { "This file is from the demo shop. Its made-up jobs would be mixed with yours.", "Este archivo es del taller de muestra. Sus pedidos inventados se mezclarían con los tuyos." }
    preview_other { "This file has no device in common with this shop: it may be from another shop. The two would become one.", "Este archivo no tiene ningún dispositivo en común con este taller: quizá sea de otro. Los dos se volverían uno." }
    preview_import { "Import", "Importar" }
    preview_import_anyway { "Mix into this shop", "Mezclar aquí" }
    preview_leave { "Don't import", "No importar" }
    import_at(moment) { "Last import: {moment}.", "Última importación ({moment})." }
    import_take_back { "Undo import", "Deshacer importación" }
    import_take_back_text { "Removes the file's entries from this device; what you entered since stays. Possible until your next import.", "Quita de este dispositivo los registros del archivo; lo que anotaste después se queda. Se puede hasta la próxima importación." }
    import_taken_back(facts) { "Import undone: {facts} removed from this device.", "Importación deshecha. Quitados de este dispositivo: {facts}." }
    import_new(new, known) { "{new} new; {known} already here.", "Nuevos: {new}; ya estaban: {known}." }
    import_nothing(known) { "Nothing new: all {known} already here.", "Nada nuevo: ya estaban aquí {known}." }
    import_photos[n] { "{n} new photo." | "{n} new photos.", "{n} foto nueva." | "{n} fotos nuevas." }
    import_photos_missing[n] { "{n} photo is still missing here: import a file from the device that took it." | "{n} photos are still missing here: import a file from the device that took them.", "Falta aquí {n} foto: importa un archivo del dispositivo que la tomó." | "Faltan aquí {n} fotos: importa un archivo del dispositivo que las tomó." }
    import_gaps[n] { "{n} entry in between is missing: import the newest file from every device." | "{n} entries in between are missing: import the newest file from every device.", "Falta {n} registro intermedio: importa el archivo más reciente de cada dispositivo." | "Faltan {n} registros intermedios: importa el archivo más reciente de cada dispositivo." }
    import_forks {
        "Two devices counted as one: a phone was copied or restored to an older state. Nothing is lost: both counts are kept.",
        "Dos dispositivos contaron como si fueran uno: un teléfono se copió o volvió a un estado anterior. No se pierde nada: se conserva lo que contó cada uno."
    }
    import_renewed {
        "From now on this device counts separately. Import its new file on the other device too.",
        "Desde ahora este dispositivo cuenta por separado. Importa también su archivo nuevo en el otro dispositivo."
    }
    import_far_ahead[n] { "{n} entry has a future date: check that device's clock." | "{n} entries have a future date: check that device's clock.", "{n} registro tiene fecha futura: revisa el reloj de ese dispositivo." | "{n} registros tienen fecha futura: revisa el reloj de ese dispositivo." }
    backup_devices { "Devices in this shop", "Dispositivos de este taller" }
    backup_this_device { "this device", "este dispositivo" }
    deleted_title { "Recently deleted", "Borrado hace poco" }
    deleted_text { "Bring back what was deleted by mistake", "Recuperar lo borrado por error" }
    deleted_none { "Nothing deleted.", "No hay nada borrado." }
    deleted_hint { "Restored items come back with all their counts. Photos of deleted items are kept for 30 days.", "Lo que recuperas vuelve con todos sus conteos. Las fotos de lo borrado se guardan 30 días." }
    deleted_restore { "Restore", "Recuperar" }
    deleted_restore_of(what) { "Restore: {what}", "Recuperar: {what}" }
    deleted_restored(what) { "Restored: {what}", "Recuperado: {what}" }
    deleted_when(when) { "Deleted {when}", "Borrado {when}" }
    deleted_job { "Job", "Pedido" }
    deleted_lot { "Garments", "Prendas" }
    deleted_run(location) { "Run, {location}", "Tiraje, {location}" }
    deleted_screen { "Screen", "Pantalla" }
    deleted_failure { "Failure on the press", "Fallo en la prensa" }
    deleted_lamp { "Exposure unit", "Unidad de exposición" }
    deleted_emulsion { "Emulsion", "Emulsión" }
    deleted_exposure { "Exposure time", "Tiempo de exposición" }
    deleted_bath_charge { "Tank charge", "Carga del tanque" }
    deleted_bath_batch { "Screens in the dip tank", "Pantallas en el tanque" }
    deleted_heater { "Dryer or flash", "Horno o flash" }
    deleted_ink_sheet { "Ink data sheet", "Ficha técnica de tinta" }
    deleted_cure_test { "Cure test", "Prueba de curado" }
    deleted_trial { "Trial", "Prueba" }
    deleted_settling { "Heat-up or cool-down time", "Tiempo para calentar o enfriar" }
    deleted_climate { "Room reading", "Lectura del cuarto" }
    deleted_component { "Ink component", "Componente de tinta" }
    deleted_recipe { "Recipe", "Receta" }
    deleted_revision(number) { "Recipe version {number}", "Versión {number} de receta" }
    deleted_pot { "Batch", "Mezcla" }
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
