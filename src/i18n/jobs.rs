//! Messages: jobs, lots and runs.

use super::messages::messages;
messages! {
    jobs_open { "Open", "Abiertos" }
    jobs_finished { "Finished", "Terminados" }
    jobs_search { "Search job, client or note", "Buscar pedido, cliente o nota" }
    jobs_none_found { "No matching jobs.", "No hay pedidos así." }
    jobs_empty_title { "No jobs yet", "Aún no hay pedidos" }
    jobs_empty_text { "A job is one client's order: garments, sizes and print locations.", "Un pedido es el encargo de un cliente: prendas, tallas y lugares de impresión." }
    jobs_none_open { "No open jobs.", "No hay pedidos abiertos." }
    overdue { "overdue", "atrasado" }
    no_due { "No due date", "Sin fecha" }
    finished_on(day) { "Finished {day}", "Terminado: {day}" }
    job_edit_title { "Edit job", "Editar pedido" }
    job_client { "Client", "Cliente" }
    job_name { "Job name", "Nombre del pedido" }
    job_name_hint { "As you call it in the shop: “Tour tees”.", "Como lo llamas en el taller: «Camisetas de la gira»." }
    job_due_day { "Due on", "Para el día" }
    job_due_time { "At", "A las" }
    job_due_hint { "No time means by closing.", "Sin hora: al cierre." }
    job_exempt { "Tax exempt", "Exento de impuestos" }
    job_exempt_hint { "Keep the client's certificate on file. Ask your tax adviser what is exempt where you are.", "Guarda el certificado del cliente. Pregunta a tu asesor qué está exento en tu zona." }
    job_exempt_badge { "Exempt", "Exento" }
    job_repeat { "Order again", "Repetir pedido" }
    job_repeats { "A repeat with the same garments, inks and setups. Set a due date. It's added once you save it.", "Una repetición con las mismas prendas, tintas y ajustes. Ponle fecha. Se agrega cuando la guardes." }
    job_delete_sure { "Delete this job?", "¿Borrar este pedido?" }
    job_delete_sure_text { "Its garments, runs and counts are deleted too.", "También se borran sus prendas, tirajes y conteos." }
    job_is_repeat { "Repeat order", "Repetición" }
    printed { "Printed", "Impreso" }
    job_finish { "Finish job", "Terminar pedido" }
    job_finish_short[n] { "{n} piece short. Finish anyway?" | "{n} pieces short. Finish anyway?", "Falta {n} pieza. ¿Terminar de todos modos?" | "Faltan {n} piezas. ¿Terminar de todos modos?" }
    job_finish_anyway { "Finish short", "Terminar así" }
    job_finished_notice(title) { "{title} is finished.", "{title}: terminado." }
    job_reopen { "Reopen", "Reabrir" }
    job_reopened(title) { "{title} is open again.", "{title}: abierto de nuevo." }
    job_deleted(title) { "{title} was deleted.", "{title}: borrado." }
    job_progress { "Pieces printed", "Piezas impresas" }
    lot_title { "Garments", "Prendas" }
    lot_add { "Add garments", "Agregar prendas" }
    lot_none { "No garments yet. Add what the client sent or ordered, by size.", "Aún no hay prendas. Agrega lo que trajo o encargó el cliente, por talla." }
    lot_edit_title { "Edit garments", "Editar prendas" }
    lot_garment { "Garment", "Prenda" }
    lot_garment_hint { "“Midweight tee”, “Canvas tote”.", "«Camiseta media», «Bolsa de loneta»." }
    lot_fabric { "Fabric", "Tela" }
    lot_fabric_from(garment) { "Fabric copied from {garment}. Change it if this one is different.", "Tela como en {garment} antes. Cámbiala si esta es distinta." }
    lot_fabric_caution { "This fabric can scorch, shrink or bleed dye in a dryer set for cotton. Follow the garment's and the ink's data sheets.", "Esta tela puede quemarse, encoger o soltar tinte en un horno ajustado para algodón. Sigue las fichas técnicas de la prenda y de la tinta." }
    lot_colour { "Color", "Color" }
    lot_colour_name { "Color name", "Nombre del color" }
    lot_pieces { "Pieces by size", "Piezas por talla" }
    lot_total(pieces) { "{pieces} total", "{pieces} en total" }
    lot_deleted(garment) { "{garment}: garments deleted.", "{garment}: prendas borradas." }
    run_add { "Add a run", "Agregar tiraje" }
    run_none {
        "No runs yet. A run is one trip through the press: one print location, with all colors printed in that trip.",
        "Aún no hay tirajes. Un tiraje es un paso por la prensa: un lugar de impresión con todos los colores que se imprimen en ese paso."
    }
    run_ink_hint { "Several colors in one trip: the main one here; the others on their screens.", "Varios colores en un paso: aquí el principal; los otros, en sus pantallas." }
    run_squeegee_hint { "Durometer and edge: “70, sharp”.", "Dureza y filo: «70, recto»." }
    run_edit_title { "Edit run", "Editar tiraje" }
    run_where { "Print location", "Dónde se imprime" }
    run_ink_colour { "Ink color", "Color de la tinta" }
    run_hits_hint { "Print strokes per piece; don't count flood strokes.", "Pasadas de rasero que imprimen, por prenda." }
    run_screens_hint { "Labels of all screens in this trip.", "Etiquetas de todas las pantallas de este paso." }
    run_flash { "Flash between strokes", "Flash entre manos" }
    run_flash_seconds { "Flash time", "Tiempo de flash" }
    run_belt { "Belt speed", "Velocidad de la banda" }
    run_below_collar_hint { "From the collar seam to the top of the print.", "De la costura del cuello al borde superior del estampado." }
    run_placement { "Placement note", "Nota de posición" }
    run_guess { "Your estimate per piece", "Tu estimación por pieza" }
    run_guess_hint { "Used only until there are real counts.", "Solo hasta que haya conteos." }
    run_group_print { "Print", "Estampado" }
    run_group_heat { "Flash and dryer", "Flash y horno" }
    run_group_press { "Screen and press", "Pantalla y prensa" }
    run_defaults_from(what) { "Setup copied from {what}. Change what's different.", "Ajustes copiados de {what}. Cambia lo que sea distinto." }
    run_too_hot(fabric) { "This is too hot for {fabric}", "Es demasiado caliente para {fabric}" }
    run_heat_caution { "Follow the ink's data sheet for cure and the garment's for heat limits. Only a wash test shows that a print is cured.", "Sigue la ficha técnica de la tinta para curar y la de la prenda para el calor. Solo la prueba de lavado muestra si está curado." }
    run_done { "Done", "Hecho" }
    run_waiting { "Waiting", "En espera" }
    run_stopped { "Stopped", "Parado" }
    run_deleted(what) { "{what}: run deleted.", "{what}: tiraje borrado." }
    no_flash { "no flash", "sin flash" }
    flash_for(seconds) { "flash {seconds}", "flash {seconds}" }
    hits_n[n] { "{n} stroke" | "{n} strokes", "{n} mano" | "{n} manos" }
}
