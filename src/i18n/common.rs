//! Messages used everywhere.

use super::messages::messages;
messages! {
    app_name { "Lastpull", "Lastpull" }
    nav_day { "Day", "Jornada" }
    nav_jobs { "Jobs", "Pedidos" }
    nav_press { "Press", "Prensa" }
    nav_screens { "Screens", "Pantallas" }
    nav_more { "More", "Más" }
    places { "Places", "Secciones" }
    skip_to_content { "Skip to content", "Ir al contenido" }
    save { "Save", "Guardar" }
    saving { "Saving …", "Guardando …" }
    cancel { "Cancel", "Cancelar" }
    close { "Close", "Cerrar" }
    back { "Back", "Atrás" }
    undo { "Undo", "Deshacer" }
    edit { "Edit", "Editar" }
    delete { "Delete", "Borrar" }
    chunk_failed_title { "This part of the app is not here yet", "Esta parte de la app aún no está aquí" }
    chunk_failed_text { "It comes over the network once, and there is none. Nothing you entered is lost. Try again when the device is online.", "Llega por la red una sola vez y ahora no hay red. No se pierde nada de lo anotado. Prueba otra vez cuando haya conexión." }
    opening { "Opening the shop …", "Abriendo el taller …" }
    not_here_title { "Not here", "No está aquí" }
    not_here_text {
        "What this page was about was deleted, or has not arrived on this device yet.",
        "Lo que mostraba esta página se borró o aún no ha llegado a este dispositivo."
    }
    to_day { "To the day", "Ir a la jornada" }
    pieces[n] { "{n} piece" | "{n} pieces", "{n} pieza" | "{n} piezas" }
    runs[n] { "{n} run" | "{n} runs", "{n} tirada" | "{n} tiradas" }
    work_folding(done, of) { "Adding up: {done} of {of}", "Sumando: {done} de {of}" }
    facts[n] { "{n} fact" | "{n} facts", "{n} hecho" | "{n} hechos" }
    misprints_n[n] { "{n} misprint" | "{n} misprints", "{n} mal impresa" | "{n} mal impresas" }
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
    fabric_nylon { "Nylon", "Nailon" }
    fabric_canvas { "Canvas", "Loneta" }
    fabric_other { "Other", "Otra" }
    at_full_front { "Full front", "Frente completo" }
    at_left_chest { "Left chest", "Pecho izquierdo" }
    at_right_chest { "Right chest", "Pecho derecho" }
    at_centre_chest { "Centre chest", "Centro del pecho" }
    at_full_back { "Full back", "Espalda completa" }
    at_upper_back { "Upper back", "Espalda alta" }
    at_left_sleeve { "Left sleeve", "Manga izquierda" }
    at_right_sleeve { "Right sleeve", "Manga derecha" }
    at_inside_neck { "Inside neck", "Interior del cuello" }
    at_pocket { "Pocket", "Bolsillo" }
    at_other { "Elsewhere", "Otro sitio" }
    update_waits { "A new version is ready.", "Hay una versión nueva." }
    update_now { "Load it now", "Cargarla ahora" }
    update_after_run {
        "A new version is ready. It waits until no run is on the press.",
        "Hay una versión nueva. Espera a que no haya ninguna tirada en prensa."
    }
    clock_behind(span) {
        "This device's clock is {span} behind the newest fact here.",
        "El reloj de este dispositivo va {span} por detrás del hecho más reciente."
    }
    clock_behind_more {
        "Nothing is lost, and counting goes on with the time it shows now. If that is wrong, set date and time to automatic.",
        "No se pierde nada, y se sigue contando con la hora que marca ahora. Si no es la correcta, pon fecha y hora automáticas."
    }
    understood { "Understood", "Entendido" }
    demo_banner { "Demo shop, all invented", "Taller inventado" }
    demo_leave { "Leave it", "Salir" }
    notes { "Notes", "Notas" }
    note { "Note", "Nota" }
    pieces_how_many { "Pieces", "Piezas" }
    about_left(time) { "about {time} left", "quedan unos {time}" }
    reading_noted { "Reading noted.", "Lectura anotada." }
    share { "Share", "Compartir" }
    was(value) { "was {value}", "antes {value}" }
    work_it_out { "Work it out", "Calcularlo" }
    who_when(who, when) { "{who}, {when}", "{who}, {when}" }
    something_else { "Something else", "Otra cosa" }
}
