//! Messages: the day's schedule.

use super::messages::messages;
messages! {
    day_title { "The day", "La jornada" }
    new_job { "New job", "Pedido nuevo" }
    all_jobs { "All jobs", "Todos los pedidos" }
    closing_at(time) { "Closing {time}", "Cierre {time}" }
    closing_earlier { "Close half an hour earlier", "Cerrar media hora antes" }
    closing_later { "Close half an hour later", "Cerrar media hora después" }
    closing_set(time) { "Closing today is {time} now.", "Hoy se cierra a las {time}." }
    closed_today { "Closed today", "Hoy cerrado" }
    open_today { "Open today until 5:00", "Abrir hoy hasta las 17:00" }
    verdict_fits(finish, spare) { "Everything is out of the dryer by {finish}, {spare} before closing.", "Todo sale del horno a las {finish}, {spare} antes del cierre." }
    verdict_tight(finish) { "It is tight: the last of it is expected at {finish}.", "Va justo: lo último se espera a las {finish}." }
    verdict_misses(runs, over) { "{runs} will not be out by closing: {over} too long.", "{runs} no llega al cierre: sobra {over}." }
    verdict_late(runs) { "{runs} will be late for when it is due.", "{runs} sale después de su hora de entrega." }
    verdict_unknown(runs) { "{runs} without a known pace. Count five pieces, or enter a guess.", "{runs} sin ritmo conocido. Cuenta cinco piezas o pon una estimación." }
    verdict_closed(runs) { "The shop is closed; {runs} still open.", "El taller está cerrado; {runs} por hacer." }
    waits_for_screens(labels, until) { "Waits for screens {labels} until {until}", "Espera las pantallas {labels} hasta las {until}" }
    fit_fits { "Makes it", "Llega" }
    fit_tight { "Tight", "Justo" }
    fit_misses_due { "Late for its time", "Tarde para su hora" }
    fit_misses_closing { "Past closing", "Pasa del cierre" }
    fit_later { "Not due today", "No es para hoy" }
    fit_unknown { "Pace not known", "Ritmo desconocido" }
    out_at(time) { "out {time}", "sale {time}" }
    from_to(from, to) { "{from} – {to}", "{from} – {to}" }
    at_the_earliest { "at the earliest", "como pronto" }
    on_press { "On the press", "En prensa" }
    due_at(due) { "Due {due}", "Entrega: {due}" }
    rail_now(time) { "Now {time}", "Ahora {time}" }
    rail_label { "Runs from now to closing", "Tiradas de ahora al cierre" }
    move_up(what) { "Move {what} up", "Subir {what}" }
    move_down(what) { "Move {what} down", "Bajar {what}" }
    drag(what) { "Drag {what} to another place", "Arrastrar {what} a otro sitio" }
    moved(what, place) { "{what} is number {place} now.", "{what} es ahora el número {place}." }
    set_up_between(time) { "{time} of set-up between runs, as set.", "{time} de preparación entre tiradas, según ajustes." }
    set_up_between_learned(time) { "{time} of set-up between runs, as your own changes took.", "{time} de preparación entre tiradas, según tus cambios." }
    done_today { "Done today", "Hecho hoy" }
    done_jobs[n] { "job" | "jobs", "pedido" | "pedidos" }
    done_pieces[n] { "piece" | "pieces", "pieza" | "piezas" }
    done_misprints[n] { "misprint" | "misprints", "mal impresa" | "mal impresas" }
    done_hours { "at the press", "en prensa" }
    usual(amount) { "usually {amount}", "lo normal: {amount}" }
    usual_days[n] { "Usual: the mean of {n} earlier working day." | "Usual: the mean of {n} earlier working days.", "Lo normal: la media de {n} día anterior." | "Lo normal: la media de {n} días anteriores." }
    usual_not_yet { "After three working days, today stands beside your usual day.", "Tras tres días de trabajo, hoy se compara con un día normal." }
    day_empty_title { "Nothing to print", "Nada por imprimir" }
    day_empty_text { "Enter a job with its garments and runs, and the day lays itself out up to closing.", "Crea un pedido con sus prendas y tiradas, y la jornada se ordena hasta el cierre." }
}
