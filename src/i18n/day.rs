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
    verdict_fits(finish, spare) { "Everything is out of the dryer before closing: expected {finish}, {spare} to spare.", "Todo sale del horno antes del cierre: previsto {finish}, con {spare} de margen." }
    verdict_fits_printed(finish, spare) { "Everything is printed before closing: expected {finish}, {spare} to spare.", "Todo se imprime antes del cierre: previsto {finish}, con {spare} de margen." }
    verdict_today_fits(finish, spare) { "Everything due today is out of the dryer before closing: expected {finish}, {spare} to spare.", "Todo lo de hoy sale del horno antes del cierre: previsto {finish}, con {spare} de margen." }
    verdict_today_fits_printed(finish, spare) { "Everything due today is printed before closing: expected {finish}, {spare} to spare.", "Todo lo de hoy se imprime antes del cierre: previsto {finish}, con {spare} de margen." }
    verdict_no_dryer { "The time in the dryer is not known.", "No se conoce el tiempo de horno." }
    verdict_likely(finish) { "Likely in time. The last of what is due today is expected {finish}.", "Probablemente llega. Lo último de hoy: previsto {finish}." }
    verdict_none_due(runs, finish) { "Nothing is due today. {runs} open, the last expected out {finish}.", "Hoy no hay entregas. {runs} por hacer; lo último sale: {finish}." }
    verdict_none_due_printed(runs, finish) { "Nothing is due today. {runs} open, the last expected printed {finish}.", "Hoy no hay entregas. {runs} por hacer; lo último se imprime: {finish}." }
    verdict_none_due_open(runs) { "Nothing is due today. {runs} open.", "Hoy no hay entregas. {runs} por hacer." }
    verdict_tight(finish) { "It is tight. The last of what is due today is expected {finish}.", "Va justo. Lo último de hoy: previsto {finish}." }
    verdict_hardly { "Not everything is likely to fit.", "Es probable que no quepa todo." }
    verdict_hardly_closing[n] { "{n} run will hardly make closing." | "{n} runs will hardly make closing.", "{n} tirada difícilmente llega al cierre." | "{n} tiradas difícilmente llegan al cierre." }
    verdict_hardly_due[n] { "{n} run will hardly make its due time." | "{n} runs will hardly make their due times.", "{n} tirada difícilmente llega a su entrega." | "{n} tiradas difícilmente llegan a su entrega." }
    verdict_hardly_too[n] { "{n} more will hardly make it." | "{n} more will hardly make it.", "{n} más difícilmente llega." | "{n} más difícilmente llegan." }
    verdict_misses(runs, over) { "Not everything fits today: {runs} past closing, about {over} of work too much.", "Hoy no cabe todo: {runs} después del cierre, unos {over} de más." }
    verdict_late(runs) { "Late for the time it is due: {runs}.", "Con retraso para su entrega: {runs}." }
    verdict_unknown(runs) { "{runs} without a known pace. Count three pieces, or enter a guess.", "{runs} sin ritmo conocido. Cuenta tres piezas o pon una estimación." }
    verdict_closed(runs) { "The shop is closed; {runs} still open.", "El taller está cerrado; {runs} por hacer." }
    verdict_past_due[n] { "{n} job is past due." | "{n} jobs are past due.", "{n} pedido vencido." | "{n} pedidos vencidos." }
    waits_for_screens(labels, until) { "Waits for screens {labels} until {until}", "Espera las pantallas {labels} hasta {until}" }
    fit_fits { "Makes it", "Llega" }
    fit_fits_printed { "Printed in time", "Impresa a tiempo" }
    fit_likely { "Likely makes it", "Probable que llegue" }
    fit_depends { "Depends on the run before", "Depende de la anterior" }
    fit_tight { "Tight", "Justo" }
    fit_hardly_due { "Hardly on time", "Difícil para su hora" }
    fit_hardly_closing { "Hardly by closing", "Difícil para el cierre" }
    fit_misses_due { "Late for its time", "Tarde para su hora" }
    fit_misses_closing { "Past closing", "Pasa del cierre" }
    fit_later { "Not due today", "No es para hoy" }
    fit_unknown { "Pace not known", "Ritmo desconocido" }
    out_at(time) { "out {time}", "sale {time}" }
    printed_at(time) { "printed {time}", "impresa {time}" }
    dryer_unknown[n] {
        "{n} run without a known time in the dryer: its times end at the press. Enter time or belt speed of the run." | "{n} runs without a known time in the dryer: their times end at the press. Enter time or belt speed of each run.",
        "{n} tirada sin tiempo de horno conocido: sus horas acaban en la prensa. Pon tiempo o velocidad de la cinta." | "{n} tiradas sin tiempo de horno conocido: sus horas acaban en la prensa. Pon tiempo o velocidad de la cinta de cada una."
    }
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
