//! Messages: the day's schedule.

use super::messages::messages;
messages! {
    day_title { "Day", "Hoy" }
    new_job { "New job", "Pedido nuevo" }
    all_jobs { "All jobs", "Todos los pedidos" }
    closing_at(time) { "Closing {time}", "Cierre {time}" }
    closing_earlier { "Close half an hour earlier", "Cerrar media hora antes" }
    closing_later { "Close half an hour later", "Cerrar media hora después" }
    closing_set(time) { "Closing today is now {time}.", "Nueva hora de cierre para hoy ({time})." }
    closed_today { "Closed today", "Hoy cerrado" }
    open_today(time) { "Open until {time}", "Abrir; cierre {time}" }
    verdict_fits(finish, spare) { "Everything is out of the dryer before closing: expected {finish}, {spare} to spare.", "Todo sale del horno antes del cierre: previsto {finish}, con {spare} de margen." }
    verdict_fits_printed(finish, spare) { "Everything is printed before closing: expected {finish}, {spare} to spare.", "Todo se imprime antes del cierre: previsto {finish}, con {spare} de margen." }
    verdict_today_fits(finish, spare) { "Everything due today is out of the dryer before closing: expected {finish}, {spare} to spare.", "Todo lo de hoy sale del horno antes del cierre: previsto {finish}, con {spare} de margen." }
    verdict_today_fits_printed(finish, spare) { "Everything due today is printed before closing: expected {finish}, {spare} to spare.", "Todo lo de hoy se imprime antes del cierre: previsto {finish}, con {spare} de margen." }
    verdict_no_dryer { "Dwell time is missing.", "Falta el tiempo en el horno." }
    verdict_likely(finish) { "Likely on time. Last run due today expected {finish}.", "Probablemente llega (previsto para lo último de hoy: {finish})." }
    verdict_none_due(runs, finish) { "Nothing is due today. {runs} open, the last expected out {finish}.", "Hoy no hay entregas. Por hacer: {runs} (lo último sale: {finish})." }
    verdict_none_due_printed(runs, finish) { "Nothing is due today. {runs} open, the last expected printed {finish}.", "Hoy no hay entregas. Por hacer: {runs} (lo último se imprime: {finish})." }
    verdict_none_due_open(runs) { "Nothing is due today. {runs} open.", "Hoy no hay entregas. Por hacer: {runs}." }
    verdict_tight(finish) { "Tight. Last run due today expected {finish}.", "Va justo (previsto para lo último de hoy: {finish})." }
    verdict_hardly { "Probably not everything fits today.", "Es probable que hoy no quepa todo." }
    verdict_hardly_closing[n] { "{n} run probably won't be done by closing." | "{n} runs probably won't be done by closing.", "{n} tiraje probablemente no llega al cierre." | "{n} tirajes probablemente no llegan al cierre." }
    verdict_hardly_due[n] { "{n} run probably won't make its due time." | "{n} runs probably won't make their due times.", "{n} tiraje probablemente no llega a su entrega." | "{n} tirajes probablemente no llegan a su entrega." }
    verdict_hardly_too[n] { "{n} more probably won't make it." | "{n} more probably won't make it.", "{n} más probablemente no llega." | "{n} más probablemente no llegan." }
    verdict_misses(runs, over) { "Not everything fits today: {runs} past closing, over by about {over}.", "Hoy no cabe todo: {runs} después del cierre, se pasa aprox. {over}." }
    verdict_late(runs) { "Will miss the due time: {runs}.", "No llega a su hora de entrega: {runs}." }
    verdict_unknown(runs) { "{runs} with no known pace. Count three pieces or enter an estimate.", "{runs} sin ritmo conocido. Cuenta tres piezas o pon una estimación." }
    verdict_closed(runs) { "The shop is closed; {runs} left.", "El taller está cerrado; por hacer: {runs}." }
    verdict_past_due[n] { "{n} job is past due." | "{n} jobs are past due.", "{n} pedido vencido." | "{n} pedidos vencidos." }
    waits_for_screens(labels, until) { "Waiting for screens {labels} until {until}", "Espera las pantallas {labels} hasta {until}" }
    fit_fits { "Makes it", "Llega" }
    fit_fits_printed { "Printed on time", "Impreso a tiempo" }
    fit_likely { "Likely makes it", "Probable que llegue" }
    fit_depends { "Depends on the run before", "Depende de la anterior" }
    fit_tight { "Tight", "Justo" }
    fit_hardly_due { "Probably late", "Quizá tarde" }
    fit_hardly_closing { "Probably past closing", "Quizá pase del cierre" }
    fit_misses_due { "Late for due time", "Tarde para su entrega" }
    fit_misses_closing { "Runs past closing", "Pasa del cierre" }
    fit_later { "Not due today", "No es para hoy" }
    fit_unknown { "Pace not known", "Ritmo desconocido" }
    out_at(time) { "out {time}", "sale {time}" }
    printed_at(time) { "printed {time}", "impreso {time}" }
    dryer_unknown[n] {
        "{n} run has no dwell time: its times end at the press. Enter dwell time or belt speed." | "{n} runs have no dwell time: their times end at the press. Enter dwell time or belt speed for each run.",
        "{n} tiraje sin tiempo de horno: sus horas acaban en la prensa. Pon el tiempo o la velocidad de la banda." | "{n} tirajes sin tiempo de horno: sus horas acaban en la prensa. Pon el tiempo o la velocidad de la banda de cada uno."
    }
    from_to(from, to) { "{from} – {to}", "{from} – {to}" }
    likely_between(range) { "likely {range}", "probable {range}" }
    at_the_earliest { "at the earliest", "lo más pronto" }
    on_press { "On press", "En prensa" }
    due_at(due) { "Due {due}", "Entrega: {due}" }
    rail_now(time) { "Now {time}", "Ahora {time}" }
    rail_label { "Runs from now to closing", "Tirajes de ahora al cierre" }
    move_up(what) { "Move {what} up", "Subir {what}" }
    move_down(what) { "Move {what} down", "Bajar {what}" }
    drag(what) { "Drag {what} to another place", "Arrastrar {what} a otro sitio" }
    moved(what, place) { "{what} is now number {place}.", "{what} es ahora el número {place}." }
    set_up_between(time) { "{time} setup between runs (from settings).", "{time} de preparación entre tirajes, según ajustes." }
    set_up_between_learned(time) { "{time} setup between runs (your average).", "{time} de preparación entre tirajes (tu promedio)." }
    done_today { "Done today", "Hecho hoy" }
    done_jobs[n] { "job" | "jobs", "pedido" | "pedidos" }
    done_pieces[n] { "piece" | "pieces", "pieza" | "piezas" }
    done_misprints[n] { "misprint" | "misprints", "defectuosa" | "defectuosas" }
    done_hours { "press time", "en prensa" }
    usual(amount) { "usually {amount}", "lo normal: {amount}" }
    usual_days[n] { "Usual: average of {n} earlier working day." | "Usual: average of {n} earlier working days.", "Lo normal: promedio de {n} día anterior." | "Lo normal: promedio de {n} días anteriores." }
    usual_not_yet { "After three working days, you'll see your average here.", "Después de tres días de trabajo verás aquí tu promedio." }
    day_empty_title { "Nothing to print", "Nada por imprimir" }
    day_empty_text { "Enter a job with garments and runs, and they line up here until closing.", "Crea un pedido con prendas y tirajes, y se ordenan aquí hasta el cierre." }
}
