//! Messages: jobs, lots and runs.

use super::messages::messages;
messages! {
    jobs_open { "Open", "Abiertos" }
    jobs_finished { "Finished", "Terminados" }
    jobs_search { "Find by title, client or note", "Buscar por título, cliente o nota" }
    jobs_none_found { "Nothing holds these words.", "Nada contiene esas palabras." }
    jobs_empty_title { "No jobs yet", "Aún no hay pedidos" }
    jobs_empty_text { "A job is one client's order: garments, sizes, and where each is printed.", "Un pedido es el encargo de un cliente: prendas, tallas y dónde se imprime cada una." }
    jobs_none_open { "Nothing open.", "Nada abierto." }
    overdue { "overdue", "atrasado" }
    no_due { "No due date", "Sin fecha" }
    finished_on(day) { "Finished {day}", "Terminado: {day}" }
    job_edit_title { "Edit job", "Editar pedido" }
    job_client { "Client", "Cliente" }
    job_name { "What it is", "Qué es" }
    job_name_hint { "As you call it in the shop: “Tour tees”.", "Como lo llamas en el taller: «Camisetas de la gira»." }
    job_due_day { "Due on", "Para el día" }
    job_due_time { "At", "A las" }
    job_due_hint { "No time means closing.", "Sin hora: al cierre." }
    job_exempt { "Tax exempt", "Exento de impuestos" }
    job_exempt_hint { "Keep the client's certificate. What is exempt where you are, your tax adviser knows.", "Guarda el certificado del cliente. Qué está exento en tu zona lo sabe tu asesor." }
    job_exempt_badge { "Exempt", "Exento" }
    job_repeat { "Order again", "Repetir pedido" }
    job_repeats { "A repeat with the same garments, inks and set-ups. Give it a due date. It is there once you save it.", "Una repetición con las mismas prendas, tintas y ajustes. Ponle fecha. Existe cuando la guardes." }
    job_delete_sure { "Delete this job?", "¿Borrar este pedido?" }
    job_delete_sure_text { "Its garments, runs and counts go with it.", "Con él se van sus prendas, tiradas y conteos." }
    job_is_repeat { "Repeat order", "Repetición" }
    printed { "Printed", "Impreso" }
    job_finish { "Finish job", "Terminar pedido" }
    job_finish_short[n] { "{n} piece is still short. Finish all the same?" | "{n} pieces are still short. Finish all the same?", "Falta {n} pieza. ¿Terminar de todos modos?" | "Faltan {n} piezas. ¿Terminar de todos modos?" }
    job_finish_anyway { "Finish it short", "Terminar así" }
    job_finished_notice(title) { "{title} is finished.", "{title}: terminado." }
    job_reopen { "Open again", "Abrir de nuevo" }
    job_reopened(title) { "{title} is open again.", "{title}: abierto de nuevo." }
    job_deleted(title) { "{title} was deleted.", "{title}: borrado." }
    job_progress { "Pieces printed", "Piezas impresas" }
    lot_title { "Garments", "Prendas" }
    lot_add { "Add garments", "Añadir prendas" }
    lot_none { "No garments yet. Add what the client sent or ordered, by size.", "Aún no hay prendas. Añade lo que trajo o encargó el cliente, por talla." }
    lot_edit_title { "Edit garments", "Editar prendas" }
    lot_garment { "Garment", "Prenda" }
    lot_garment_hint { "“Midweight tee”, “Canvas tote”.", "«Camiseta media», «Bolsa de loneta»." }
    lot_fabric { "Fabric", "Tejido" }
    lot_fabric_from(garment) { "Fabric as for {garment} before. Change it if this one differs.", "Tejido como en {garment} antes. Cámbialo si este es distinto." }
    lot_fabric_caution { "This fabric can scorch, shrink or bleed its dye in a dryer set for cotton. The garment's and the ink's data sheets decide.", "Este tejido puede quemarse, encoger o soltar tinte en un horno ajustado para algodón. Deciden las fichas de la prenda y de la tinta." }
    lot_colour { "Colour", "Color" }
    lot_colour_name { "Its name", "Su nombre" }
    lot_pieces { "Pieces by size", "Piezas por talla" }
    lot_total(pieces) { "{pieces} in all", "{pieces} en total" }
    lot_deleted(garment) { "{garment}: garments deleted.", "{garment}: prendas borradas." }
    run_add { "Add a run", "Añadir tirada" }
    run_none { "Nothing prints on these yet. Add a run for each print location and ink.", "Aún no se imprime nada en ellas. Añade una tirada por cada sitio y tinta." }
    run_edit_title { "Edit run", "Editar tirada" }
    run_where { "Print location", "Dónde se imprime" }
    run_ink_colour { "Ink colour", "Color de la tinta" }
    run_hits_hint { "Strokes that lay ink.", "Las que dejan tinta." }
    run_screens_hint { "Their labels.", "Sus etiquetas." }
    run_flash { "Flash between hits", "Flash entre pasadas" }
    run_flash_seconds { "Flash time", "Tiempo de flash" }
    run_belt { "Belt speed", "Velocidad de la cinta" }
    run_below_collar_hint { "From the collar seam to the top of the print.", "De la costura del cuello a lo alto del estampado." }
    run_placement { "Placement note", "Nota de posición" }
    run_guess { "Your guess for a piece", "Tu estimación por pieza" }
    run_guess_hint { "Only used until there are counts.", "Solo hasta que haya conteos." }
    run_group_print { "The print", "El estampado" }
    run_group_heat { "Flash and dryer", "Flash y horno" }
    run_group_press { "Screen and press", "Pantalla y prensa" }
    run_defaults_from(what) { "Set-up taken from {what}. Change what differs.", "Ajustes tomados de {what}. Cambia lo que sea distinto." }
    run_too_hot(fabric) { "This is too hot for {fabric}", "Es demasiado caliente para {fabric}" }
    run_heat_caution { "Follow the ink's data sheet for cure and the garment's for heat. Only a wash test shows that a print is cured.", "Sigue la ficha de la tinta para curar y la de la prenda para el calor. Solo la prueba de lavado dice si está curado." }
    run_done { "Done", "Hecha" }
    run_waiting { "Waiting", "En espera" }
    run_stopped { "Stopped", "Parada" }
    run_deleted(what) { "{what}: run deleted.", "{what}: tirada borrada." }
    no_flash { "no flash", "sin flash" }
    flash_for(seconds) { "flash {seconds}", "flash {seconds}" }
    hits_n[n] { "{n} hit" | "{n} hits", "{n} pasada" | "{n} pasadas" }
}
