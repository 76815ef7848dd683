//! Messages: checks, count, pace, stops, and the summary of a run.

use super::common::something_else;
use super::format::{moment, percent};
use super::jobs::lot_title;
use super::messages::messages;
use lastpull_core::run::{CheckItem, ForecastBasis, Goal, GoalKind, Likelihood, MisprintCause, PaceSource, StopCause};

messages! {
    press_pick { "Which run is next on press?", "¿Qué tiraje va a la prensa?" }
    press_empty_title { "No runs waiting", "No hay tirajes en espera" }
    press_empty_text { "Runs show up here once a job has garments and a run.", "Los tirajes aparecen aquí cuando un pedido tiene prendas y un tiraje." }
    to_job { "View job", "Ver pedido" }
    checks_title { "Before the first print", "Antes de la primera prenda" }
    checks_change_title { "Change these first", "Cambia esto primero" }
    checks_change_after(what) { "Last on press: {what}.", "Antes en prensa: {what}." }
    checks_same_title { "Same as before", "Igual que antes" }
    checks_all_right { "All OK", "Todo bien" }
    checks_all_title { "Check", "Revisar" }
    checks_caution { "Dryer, flash and platens burn. Never reach into a running dryer; let parts cool or wear heat-rated gloves. Follow the manufacturer's manual.", "El horno, el flash y las paletas queman. Nunca metas la mano en un horno en marcha; deja enfriar o usa guantes para calor. Sigue el manual del fabricante." }
    check_other_colour { "another color", "otro color" }
    check_tick { "OK", "Bien" }
    check_ticked { "Checked", "Revisado" }
    check_measure { "Measure", "Medir" }
    check_skip { "Skip", "Omitir" }
    check_skipped { "Skipped", "Omitido" }
    check_clear { "Undo", "Deshacer" }
    check_within(value) { "{value}: within tolerance", "{value}: dentro de tolerancia" }
    check_outside(value) { "{value}: out of tolerance", "{value}: fuera de tolerancia" }
    check_at_limit(value, limit, what) { "{value}: the limit is {limit}, {what}", "{value}: el límite es {limit}, {what}" }
    check_below_cure(value, cure) { "{value}: this ink cures at {cure} or more", "{value}: esta tinta cura a {cure} o más" }
    check_short_of_hold(value, has, hold) { "{value}: {has} dwell time, this ink needs {hold}", "{value}: {has} en el horno, esta tinta pide {hold}" }
    check_infrared(value) { "{value} by infrared: not enough to pass", "{value} con infrarrojo: no basta para aprobar" }
    check_infrared_why { "Infrared at the exit misses the peak temperature: it can fail this fabric, never pass it. Measure with a probe or strip on a garment, or use the display once the dryer is steady.", "El infrarrojo a la salida no ve el máximo: puede rechazar esta tela, nunca aprobarla. Mide con sonda o tira en una prenda, o usa la pantalla cuando el horno esté estable." }
    check_stands { "This was measured, so the display can't clear it. Change the setting, then measure again.", "Está medido: la pantalla del horno no lo anula. Cambia el ajuste y mide otra vez." }
    check_stands_infrared { "Read by infrared; the print itself was hotter. Measure with a probe or strip on a garment; the display can't clear it.", "Leído con infrarrojo; el estampado estuvo más caliente. Mide con sonda o tira en una prenda; la pantalla del horno no lo anula." }
    check_measured_before(when, value) { "Measured {when} at this setting: {value}. Measure again once it is steady.", "Medido con este ajuste ({when}): {value}. Mide otra vez cuando esté estable." }
    check_measure_dryer { "Peak temperature at the print.", "El máximo en el estampado." }
    check_way { "Measured by", "Medido con" }
    check_way_garment { "Probe or strip on a garment", "Sonda o tira en una prenda" }
    check_way_infrared { "Infrared at the exit", "Infrarrojo a la salida" }
    check_way_missing { "Select how it was measured: infrared does not count the same as a probe or strip.", "Elige con qué se midió: el infrarrojo no vale igual que la sonda o la tira." }
    check_tolerance(amount) { "± {amount}", "± {amount}" }
    check_measured_value(what) { "{what}: measured value", "{what}: valor medido" }
    screens_not_ready(labels) { "Not ready: {labels}", "Sin preparar: {labels}" }
    screens_can_print { "ready", "listas" }
    screens_kept(labels) { "Screens {labels} kept ready", "Pantallas {labels}: listas" }
    screens_gone(labels) { "Screens {labels}: to reclaim", "Pantallas {labels}: por recuperar" }
    screens_keep { "Keep ready", "Dejarlas listas" }
    screens_let_go { "Send to reclaim", "Mandar a recuperar" }
    checks_open[n] { "{n} check left" | "{n} checks left", "Falta {n} revisión" | "Faltan {n} revisiones" }
    checks_skipped[n] { "{n} check skipped" | "{n} checks skipped", "{n} revisión omitida" | "{n} revisiones omitidas" }
    first_run_hint {
        "To end a run early, tap Stop, then End short. A call or a locked phone loses no count.",
        "Para terminar antes, toca Parar y después Terminar así. Una llamada o el bloqueo del teléfono no borran el conteo."
    }
    start_count { "Start counting", "Empezar a contar" }
    start_open_title { "Start without all checks?", "¿Empezar sin revisar todo?" }
    start_open_text[n] { "{n} check is not done. It will be logged as skipped." | "{n} checks are not done. They will be logged as skipped.", "{n} revisión sin hacer. Se registra como omitida." | "{n} revisiones sin hacer. Se registran como omitidas." }
    start_anyway { "Start anyway", "Empezar así" }
    checked_by { "Who's checking?", "¿Quién revisa?" }
    item_dryer { "Dryer", "Horno" }
    item_belt { "Belt", "Banda" }
    item_dwell { "Dwell time", "Tiempo en el horno" }
    item_passes { "Dryer passes", "Vueltas de horno" }
    item_flash { "Flash", "Flash" }
    item_flash_distance { "Flash height", "Altura del flash" }
    item_screens { "Screens", "Pantallas" }
    item_mesh { "Mesh", "Malla" }
    item_off_contact { "Off-contact", "Fuera de contacto" }
    item_squeegee { "Squeegee", "Rasero" }
    item_below_collar { "Down from collar", "Desde el cuello" }
    item_placement { "Placement", "Posición" }
    item_ink { "Ink", "Tinta" }
    item_hits { "Strokes", "Manos de tinta" }
    value_no_flash { "No flash", "Sin flash" }
    passes_n[n] { "{n} pass" | "{n} passes", "{n} vuelta" | "{n} vueltas" }
    count_left[n] { "{n} left" | "{n} left", "falta {n}" | "faltan {n}" }
    count_over[n] { "{n} over" | "{n} over", "sobra {n}" | "sobran {n}" }
    count_complete { "All printed", "Todo impreso" }
    count_touch { "tap once per piece", "toca una vez por prenda" }
    count_not_saved { "not saved yet", "sin guardar aún" }
    count_saved { "saved", "guardado" }
    count_sizes { "Size being counted", "Talla que se cuenta" }
    size_left { "left", "por hacer" }
    size_over { "over", "de más" }
    act_misprint { "Misprint", "Defectuosa" }
    act_number { "Adjust ±", "Ajustar ±" }
    act_stop { "Stop", "Parar" }
    act_end { "End run", "Terminar" }
    misprint_title { "What went wrong?", "¿Qué salió mal?" }
    misprint_counted { "Already counted", "Ya está contada" }
    misprint_counted_hint { "Takes it off the count; one more to print.", "Sale del conteo y falta una más." }
    misprint_size { "Size", "Talla" }
    misprint_noted(cause) { "Misprint: {cause}. Print one more.", "Defectuosa: {cause}. Imprime una más." }
    misprints_so_far[n] { "{n} garment to replace" | "{n} garments to replace", "{n} prenda por reponer" | "{n} prendas por reponer" }
    cause_placement { "Crooked or off position", "Chueca o fuera de lugar" }
    cause_registration { "Out of register", "Fuera de registro" }
    cause_pinhole { "Pinhole or spot", "Poro o mancha" }
    cause_smudge { "Smudge", "Manchada" }
    cause_ink_lay { "Ink too thin or heavy", "Poca o mucha tinta" }
    cause_garment { "Lint, crease, seam", "Pelusa, arruga, costura" }
    cause_heat { "Scorched or not cured", "Quemada o sin curar" }
    cause_screen { "Screen broke down", "Falló la pantalla" }
    number_title { "Adjust the count", "Ajustar el conteo" }
    number_hint { "Printed but not tapped, or tapped but not printed.", "Impresas sin contar, o contadas sin imprimir." }
    number_add { "Add", "Agregar" }
    number_take { "Subtract", "Restar" }
    number_added(pieces) { "{pieces} added.", "Se sumó: {pieces}." }
    number_taken(pieces) { "{pieces} subtracted.", "Se restó: {pieces}." }
    number_too_many { "More than were counted.", "Más de lo contado." }
    stop_title { "Why are you stopping?", "¿Por qué paras?" }
    stop_screen { "Screen", "Pantalla" }
    stop_ink { "Ink", "Tinta" }
    stop_heat { "Flash or dryer", "Flash u horno" }
    stop_garments { "Garments", "Prendas" }
    stop_client { "Client, phone, door", "Cliente, teléfono, puerta" }
    stop_break { "Break", "Descanso" }
    stopped_for(cause) { "Stopped: {cause}", "Parada: {cause}" }
    touch_to_resume { "Tap to resume", "Toca para reanudar" }
    end_short_title { "End the run short?", "¿Terminar con piezas de menos?" }
    end_short_text[n] { "{n} piece still to print. You can resume the run later." | "{n} pieces still to print. You can resume the run later.", "Falta {n} pieza. Puedes reanudar el tiraje después." | "Faltan {n} piezas. Puedes reanudar el tiraje después." }
    end_anyway { "End short", "Terminar así" }
    see_checks { "Checks", "Revisión" }
    started_at(time) { "On the press since {time}", "En prensa desde: {time}" }
    at_work(time) { "Printing {time}", "Imprimiendo {time}" }
    stood(time) { "Down {time}", "Parada {time}" }
    pace_none { "Pace shows after three pieces.", "El ritmo aparece tras tres piezas." }
    pace_out_by(time) { "Out of the dryer {time}", "Fuera del horno {time}" }
    pace_printed_by(time) { "Printed {time}; dwell time not entered", "Impreso {time}; falta el tiempo en el horno" }
    pace_between(early, late) { "80% likely between {early} and {late}, with stops and misprints", "80\u{a0}% probable entre {early} y {late}, con paradas y defectuosas" }
    pace_left(time) { "{time} left", "falta {time}" }
    pace_needed_closing(rate) { "{rate} needed for closing", "hacen falta {rate} para el cierre" }
    pace_needed_due(rate) { "{rate} needed for the due time", "hacen falta {rate} para la entrega" }
    pace_due(time) { "Due {time}", "Entrega: {time}" }
    pace_was_due(time) { "Was due {time}", "Entrega vencida: {time}" }
    pace_no_time { "Closing has passed", "Ya pasó el cierre" }
    pace_by_closing(good, planned) { "{good} of {planned} by closing", "{good} de {planned} al cierre" }
    pace_title { "Pace", "Ritmo" }
    pace_in_full { "Pace details", "Detalles del ritmo" }
    pace_basis(basis) { "Based on {basis}.", "Según {basis}." }
    pace_no_history { "Without similar runs, a slow start or a tired finish can't be estimated.", "Sin tirajes parecidos no se puede estimar un inicio lento o el cansancio al final." }
    basis_this_run[n] { "{n} piece timed in this run" | "{n} pieces timed in this run", "{n} pieza medida en este tiraje" | "{n} piezas medidas en este tiraje" }
    basis_alike[n] { "{n} similar run" | "{n} similar runs", "{n} tiraje parecido" | "{n} tirajes parecidos" }
    basis_other[n] { "{n} earlier run, not quite alike" | "{n} earlier runs, not quite alike", "{n} tiraje anterior, no igual" | "{n} tirajes anteriores, no iguales" }
    basis_and(own, before) { "{own} and {before}", "{own} y {before}" }
    basis_guess { "your estimate", "tu estimación" }
    goal_closing { "closing", "al cierre" }
    goal_due { "the due time", "a su entrega" }
    chance_sure(goal) { "Done by {goal}", "Llega {goal}" }
    chance_sure_printed(goal) { "Printed by {goal}", "Impreso {goal}" }
    chance_likely(goal) { "Likely done by {goal}", "Probablemente llega {goal}" }
    chance_likely_printed(goal) { "Likely printed by {goal}", "Probablemente impreso {goal}" }
    chance_even(goal) { "May or may not be done by {goal}", "Puede llegar o no {goal}" }
    chance_unlikely(goal) { "Probably not done by {goal}", "Probablemente no llega {goal}" }
    chance_percent(words, value) { "{words} ({value} chance)", "{words} (prob. {value})" }
    chance_no(goal) { "Won't be done by {goal}", "No llega {goal}" }
    chart_label(words) { "Pieces over time and the likely finish times. {words}", "Piezas en el tiempo y las horas probables de fin. {words}" }
    chart_closing { "closing", "cierre" }
    chart_due { "due", "entrega" }
    chart_now { "now", "ahora" }
    chart_ordered[n] { "{n} piece" | "{n} pieces", "{n} pieza" | "{n} piezas" }
    chart_pulled { "printed", "impresas" }
    chart_expected { "expected", "previsto" }
    chart_range { "80% likely", "80\u{a0}% probable" }
    ended_title { "Run ended", "Tiraje terminado" }
    ended_good { "Good pieces", "Piezas buenas" }
    ended_short { "Short", "Faltan" }
    ended_over { "Over", "De más" }
    ended_replace { "Garments to replace", "Prendas por reponer" }
    ended_misprints { "Misprints", "Defectuosas" }
    ended_active { "Printing", "Imprimiendo" }
    ended_stopped { "Downtime", "Tiempo parada" }
    ended_span(range) { "On press {range}", "En prensa {range}" }
    ended_again { "Resume run", "Reanudar tiraje" }
    ended_next { "Next run", "Siguiente tiraje" }
    ended_wash { "Only a wash test shows whether it's cured. Follow the ink's data sheet.", "Solo una prueba de lavado muestra si está curado. Sigue la ficha técnica de la tinta." }
    keys_hint { "Clickers and pedals work too: space, enter, arrows, page and volume keys. Backspace undoes.", "También sirven pulsadores y pedales: espacio, Enter, flechas, página y volumen. Retroceso deshace." }
}

/// The name of a check.
pub fn check_item(item: CheckItem) -> &'static str {
    match item {
        CheckItem::Dryer => item_dryer(),
        CheckItem::Belt => item_belt(),
        CheckItem::Dwell => item_dwell(),
        CheckItem::Passes => item_passes(),
        CheckItem::Flash => item_flash(),
        CheckItem::FlashDistance => item_flash_distance(),
        CheckItem::Garment => lot_title(),
        CheckItem::Screens => item_screens(),
        CheckItem::Mesh => item_mesh(),
        CheckItem::OffContact => item_off_contact(),
        CheckItem::Squeegee => item_squeegee(),
        CheckItem::BelowCollar => item_below_collar(),
        CheckItem::Placement => item_placement(),
        CheckItem::Ink => item_ink(),
        CheckItem::Hits => item_hits(),
    }
}

/// The name of a misprint's cause.
pub fn misprint_cause(cause: MisprintCause) -> &'static str {
    match cause {
        MisprintCause::Placement => cause_placement(),
        MisprintCause::Registration => cause_registration(),
        MisprintCause::Pinhole => cause_pinhole(),
        MisprintCause::Smudge => cause_smudge(),
        MisprintCause::InkLay => cause_ink_lay(),
        MisprintCause::Garment => cause_garment(),
        MisprintCause::Heat => cause_heat(),
        MisprintCause::Other => something_else(),
        MisprintCause::Screen => cause_screen(),
    }
}

/// The name of a stop's cause.
pub fn stop_cause(cause: StopCause) -> &'static str {
    match cause {
        StopCause::Screen => stop_screen(),
        StopCause::Ink => stop_ink(),
        StopCause::Heat => stop_heat(),
        StopCause::Garments => stop_garments(),
        StopCause::Client => stop_client(),
        StopCause::Break => stop_break(),
        StopCause::Other => something_else(),
    }
}

/// What a forecast is based on.
pub fn basis(basis: ForecastBasis) -> String {
    let before = match basis.source {
        PaceSource::Unknown => return basis_this_run(basis.gaps),
        PaceSource::Alike { runs } => basis_alike(runs),
        PaceSource::Other { runs } => basis_other(runs),
        PaceSource::Guess => basis_guess().into(),
    };
    if basis.gaps == 0 { before } else { basis_and(basis_this_run(basis.gaps), before) }
}

/// Whether a run is in time for its goal, in words, and in percent where that is known.
pub fn in_time(goal: &Goal) -> String {
    let name = match goal.kind {
        GoalKind::Closing if goal.is_past => return pace_no_time().into(),
        GoalKind::Due if goal.is_past => return pace_was_due(moment(goal.at)),
        GoalKind::Closing => goal_closing(),
        GoalKind::Due => goal_due(),
    };
    let words = match goal.chance.likelihood {
        // Without the time in the dryer, no more than this can be said.
        Likelihood::Sure if goal.ends_at_press => chance_sure_printed(name),
        Likelihood::Likely if goal.ends_at_press => chance_likely_printed(name),
        Likelihood::Sure => chance_sure(name),
        Likelihood::Likely => chance_likely(name),
        Likelihood::Even => chance_even(name),
        Likelihood::Unlikely => chance_unlikely(name),
        Likelihood::No => chance_no(name),
    };
    match goal.chance.percent {
        Some(value) => chance_percent(words, percent(f64::from(value), 0)),
        None => words,
    }
}
