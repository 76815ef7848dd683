//! Messages used everywhere.

use super::messages::messages;
messages! {
    app_name { "Lastpull", "Lastpull" }
    nav_day { "Day", "Hoy" }
    nav_jobs { "Jobs", "Pedidos" }
    nav_press { "Press", "Prensa" }
    nav_screens { "Screens", "Pantallas" }
    nav_more { "More", "Más" }
    places { "Sections", "Secciones" }
    skip_to_content { "Skip to content", "Ir al contenido" }
    save { "Save", "Guardar" }
    saving { "Saving …", "Guardando …" }
    cancel { "Cancel", "Cancelar" }
    close { "Close", "Cerrar" }
    back { "Back", "Atrás" }
    undo { "Undo", "Deshacer" }
    edit { "Edit", "Editar" }
    delete { "Delete", "Borrar" }
    chunk_failed_title { "This part isn't downloaded yet", "Esta parte aún no se descarga" }
    chunk_failed_text { "It downloads once, and you're offline now. Nothing you entered is lost. Try again online.", "Se descarga una sola vez y ahora no hay red. No se pierde nada de lo que escribiste. Prueba otra vez con conexión." }
    opening { "Opening the shop …", "Abriendo el taller …" }
    not_here_title { "Not found", "No se encontró" }
    not_here_text {
        "This was deleted, or hasn't reached this device yet.",
        "Esto se borró o aún no llega a este dispositivo."
    }
    to_day { "Go to Day", "Ir a Hoy" }
    pieces[n] { "{n} piece" | "{n} pieces", "{n} pieza" | "{n} piezas" }
    runs[n] { "{n} run" | "{n} runs", "{n} tiraje" | "{n} tirajes" }
    work_folding(done, of) { "Adding up: {done} of {of}", "Sumando: {done} de {of}" }
    facts[n] { "{n} entry" | "{n} entries", "{n} registro" | "{n} registros" }
    misprints_n[n] { "{n} misprint" | "{n} misprints", "{n} defectuosa" | "{n} defectuosas" }
    of_pieces(good, planned) { "{good} of {planned}", "{good} de {planned}" }
    youth { "Youth", "Niño" }
    adult { "Adult", "Adulto" }
    one_size { "One size", "Talla única" }
    size_youth(letters) { "Youth {letters}", "Niño {letters}" }
    no_size { "No size", "Sin talla" }
    fabric_cotton { "Cotton", "Algodón" }
    fabric_blend { "Blend", "Mezcla" }
    fabric_polyester { "Polyester", "Poliéster" }
    fabric_tri_blend { "Tri-blend", "Tri-blend" }
    fabric_nylon { "Nylon", "Nylon" }
    fabric_canvas { "Canvas", "Loneta" }
    fabric_other { "Other", "Otra" }
    at_full_front { "Full front", "Frente completo" }
    at_left_chest { "Left chest", "Pecho izquierdo" }
    at_right_chest { "Right chest", "Pecho derecho" }
    at_centre_chest { "Center chest", "Centro del pecho" }
    at_full_back { "Full back", "Espalda completa" }
    at_upper_back { "Upper back", "Espalda alta" }
    at_left_sleeve { "Left sleeve", "Manga izquierda" }
    at_right_sleeve { "Right sleeve", "Manga derecha" }
    at_inside_neck { "Inside neck", "Interior del cuello" }
    at_pocket { "Pocket", "Bolsillo" }
    at_other { "Other location", "Otro lugar" }
    update_waits { "A new version is ready.", "Hay una versión nueva." }
    update_now { "Update now", "Actualizar" }
    update_after_run {
        "A new version is ready. It can load when no run is on press.",
        "Hay una versión nueva. Se puede cargar cuando no haya un tiraje en prensa."
    }
    clock_behind(span) {
        "This device's clock is {span} behind the latest entry.",
        "El reloj de este dispositivo está {span} atrás del registro más reciente."
    }
    clock_behind_more {
        "Nothing is lost; counting uses the time shown now. If it's wrong, set date and time to automatic.",
        "No se pierde nada; el conteo usa la hora que marca ahora. Si no es la correcta, pon fecha y hora automáticas."
    }
    understood { "OK", "Entendido" }
    demo_banner { "Demo shop, made-up data", "Taller de muestra, todo inventado" }
    demo_leave { "Exit demo", "Salir" }
    notes { "Notes", "Notas" }
    note { "Note", "Nota" }
    pieces_how_many { "Pieces", "Piezas" }
    about_left(time) { "about {time} left", "falta aprox. {time}" }
    reading_noted { "Reading saved.", "Lectura guardada." }
    share { "Share", "Compartir" }
    was(value) { "was {value}", "antes {value}" }
    work_it_out { "Calculate", "Calcular" }
    who_when(who, when) { "{who}, {when}", "{who}, {when}" }
    something_else { "Other", "Otra cosa" }
}
