//! Messages: checks, count, pace, stops, and the summary of a run.

use super::common::something_else;
use super::format::moment;
use super::jobs::lot_title;
use super::messages::messages;
use lastpull_core::run::{CheckItem, ForecastBasis, Goal, GoalKind, Likelihood, MisprintCause, PaceSource, StopCause};

messages! {
    press_pick { "Which run goes on the press?", "¿Qué tirada va a la prensa?" }
    press_empty_title { "Nothing waits for the press", "Nada espera la prensa" }
    press_empty_text { "A job with garments and a run comes here when its turn comes.", "Un pedido con prendas y una tirada llega aquí cuando le toca." }
    to_job { "To the job", "Ir al pedido" }
    checks_title { "Before the first pull", "Antes de la primera pasada" }
    checks_change_title { "Change these first", "Cambia esto primero" }
    checks_change_after(what) { "On the press before: {what}.", "Antes en prensa: {what}." }
    checks_same_title { "Same as before", "Igual que antes" }
    checks_all_right { "All of these are right", "Todo esto está bien" }
    checks_all_title { "Check", "Comprueba" }
    checks_caution { "Hot tunnel, flash and platens: let them cool or use gloves before you reach in. The maker's manual decides.", "Túnel, flash y planchas queman: deja enfriar o usa guantes antes de meter la mano. Manda el manual del fabricante." }
    check_other_colour { "another colour", "otro color" }
    check_tick { "Right", "Bien" }
    check_ticked { "Checked", "Comprobado" }
    check_measure { "Measure", "Medir" }
    check_skip { "Skip", "Saltar" }
    check_skipped { "Skipped", "Saltado" }
    check_clear { "Take back", "Quitar" }
    check_within(value) { "{value}: close enough", "{value}: dentro de margen" }
    check_outside(value) { "{value}: too far off", "{value}: fuera de margen" }
    check_at_limit(value, limit, what) { "{value}: the limit is {limit}, {what}", "{value}: el límite es {limit}, {what}" }
    check_below_cure(value, cure) { "{value}: this ink cures from {cure} on", "{value}: esta tinta cura desde {cure}" }
    check_short_of_hold(value, has, hold) { "{value}: {has} in the heat, this ink needs {hold}", "{value}: {has} en el calor, esta tinta pide {hold}" }
    check_infrared(value) { "{value} by infrared: checks nothing", "{value} con infrarrojo: no comprueba nada" }
    check_infrared_why { "Infrared at the exit misses the hottest moment: it can hold this fabric, never clear it. Measure with probe or strip on a garment, or go by the display once the dryer has settled.", "El infrarrojo a la salida no ve el máximo: puede frenar este tejido, nunca darlo por bueno. Mide con sonda o tira en una prenda, o fíate de la pantalla cuando el horno esté estable." }
    check_stands { "Measured, so a look at the display does not lift it. Change it, then measure again.", "Está medido: mirar la pantalla no lo anula. Cámbialo y mide otra vez." }
    check_stands_infrared { "Read by infrared, and at the print it was hotter. Measure with probe or strip on a garment; a look at the display does not lift it.", "Leído con infrarrojo, y en el estampado hubo más. Mide con sonda o tira en una prenda; mirar la pantalla no lo anula." }
    check_measured_before(when, value) { "Measured {when} at this setting: {value}. Measure again once it has settled.", "Medido con este ajuste ({when}): {value}. Mide otra vez cuando se haya estabilizado." }
    check_measure_dryer { "The hottest at the print.", "El máximo en el estampado." }
    check_way { "Measured by", "Medido con" }
    check_way_garment { "Probe or strip on a garment", "Sonda o tira en una prenda" }
    check_way_infrared { "Infrared at the exit", "Infrarrojo a la salida" }
    check_way_missing { "Say how it was measured: infrared does not count as probe or strip does.", "Di con qué se midió: el infrarrojo no vale como la sonda o la tira." }
    check_tolerance(amount) { "± {amount}", "± {amount}" }
    check_measured_value(what) { "{what}: measured value", "{what}: valor medido" }
    screens_not_ready(labels) { "Not ready: {labels}", "Sin preparar: {labels}" }
    screens_can_print { "ready", "listas" }
    screens_kept(labels) { "Screens {labels} kept ready", "Pantallas {labels}: listas" }
    screens_gone(labels) { "Screens {labels} to reclaim", "Pantallas {labels}: por recuperar" }
    screens_keep { "Keep ready", "Dejarlas listas" }
    screens_let_go { "To reclaim", "A recuperar" }
    checks_open[n] { "{n} check is open" | "{n} checks are open", "Queda {n} comprobación" | "Quedan {n} comprobaciones" }
    checks_skipped[n] { "{n} check was skipped" | "{n} checks were skipped", "{n} comprobación saltada" | "{n} comprobaciones saltadas" }
    start_count { "Start the count", "Empezar a contar" }
    start_open_title { "Start with open checks?", "¿Empezar sin comprobar todo?" }
    start_open_text[n] { "{n} check is not made. It is noted as skipped." | "{n} checks are not made. They are noted as skipped.", "{n} comprobación sin hacer. Queda anotada como saltada." | "{n} comprobaciones sin hacer. Quedan anotadas como saltadas." }
    start_anyway { "Start all the same", "Empezar de todos modos" }
    checked_by { "Who checks?", "¿Quién comprueba?" }
    item_dryer { "Dryer", "Horno" }
    item_belt { "Belt", "Cinta" }
    item_dwell { "Time in the heat", "Tiempo en el calor" }
    item_passes { "Passes", "Vueltas" }
    item_flash { "Flash", "Flash" }
    item_flash_distance { "Flash height", "Altura del flash" }
    item_screens { "Screens", "Pantallas" }
    item_mesh { "Mesh", "Malla" }
    item_off_contact { "Off-contact", "Fuera de contacto" }
    item_squeegee { "Squeegee", "Racleta" }
    item_below_collar { "Below the collar", "Bajo el cuello" }
    item_placement { "Placement", "Posición" }
    item_ink { "Ink", "Tinta" }
    item_hits { "Hits", "Pasadas de tinta" }
    value_no_flash { "No flash", "Sin flash" }
    passes_n[n] { "{n} pass" | "{n} passes", "{n} vuelta" | "{n} vueltas" }
    count_left[n] { "{n} left" | "{n} left", "falta {n}" | "faltan {n}" }
    count_over[n] { "{n} over" | "{n} over", "sobra {n}" | "sobran {n}" }
    count_complete { "All pulled", "Todas hechas" }
    count_touch { "touch for each pull", "toca en cada pasada" }
    count_not_saved { "not saved yet", "sin guardar aún" }
    count_saved { "saved", "guardado" }
    count_sizes { "Size being counted", "Talla que se cuenta" }
    size_left { "left", "por hacer" }
    size_over { "over", "de más" }
    act_misprint { "Misprint", "Mal impresa" }
    act_number { "Add ±", "Sumar ±" }
    act_stop { "Stop", "Parar" }
    act_end { "End run", "Terminar" }
    misprint_title { "What spoiled it?", "¿Qué la estropeó?" }
    misprint_counted { "It stands in the count already", "Ya está contada" }
    misprint_counted_hint { "Then it leaves the count, and one more is to pull.", "Entonces sale del conteo y falta una más." }
    misprint_size { "Its size", "Su talla" }
    misprint_noted(cause) { "Misprint: {cause}. One more to pull.", "Mal impresa: {cause}. Falta una más." }
    misprints_so_far[n] { "{n} garment to replace" | "{n} garments to replace", "{n} prenda por reponer" | "{n} prendas por reponer" }
    cause_placement { "Not in its place", "Fuera de sitio" }
    cause_registration { "Registration", "Registro" }
    cause_pinhole { "Pinhole or spot", "Poro o mancha" }
    cause_smudge { "Smudge", "Manchada" }
    cause_ink_lay { "Ink too thin or thick", "Poca o mucha tinta" }
    cause_garment { "Lint, crease, seam", "Pelusa, arruga, costura" }
    cause_heat { "Scorched or not cured", "Quemada o sin curar" }
    cause_screen { "The screen gave way", "Falló la pantalla" }
    number_title { "Add or take pieces", "Añadir o quitar piezas" }
    number_hint { "For pieces that were pulled and not touched in, or touched in and not pulled.", "Para piezas hechas y no contadas, o contadas y no hechas." }
    number_add { "Add", "Añadir" }
    number_take { "Take off", "Quitar" }
    number_added(pieces) { "{pieces} added.", "{pieces}: añadido." }
    number_taken(pieces) { "{pieces} taken off.", "{pieces}: quitado." }
    number_too_many { "More than was counted.", "Más de lo contado." }
    stop_title { "Why does the press stop?", "¿Por qué para la prensa?" }
    stop_screen { "Screen", "Pantalla" }
    stop_ink { "Ink", "Tinta" }
    stop_heat { "Flash or dryer", "Flash u horno" }
    stop_garments { "Garments", "Prendas" }
    stop_client { "Client, phone, door", "Cliente, teléfono, puerta" }
    stop_break { "Break", "Descanso" }
    stopped_for(cause) { "Stopped: {cause}", "Parada: {cause}" }
    touch_to_resume { "Touch to go on", "Toca para seguir" }
    end_short_title { "End the run short?", "¿Terminar con piezas de menos?" }
    end_short_text[n] { "{n} piece is still to pull. The run can be taken up again." | "{n} pieces are still to pull. The run can be taken up again.", "Falta {n} pieza. La tirada se puede retomar." | "Faltan {n} piezas. La tirada se puede retomar." }
    end_anyway { "End it short", "Terminar así" }
    see_checks { "Checks", "Comprobaciones" }
    started_at(time) { "On the press since {time}", "En prensa desde: {time}" }
    at_work(time) { "At work {time}", "En marcha {time}" }
    stood(time) { "Stood {time}", "Parada {time}" }
    pace_none { "The pace shows after three pulls.", "El ritmo aparece tras tres pasadas." }
    pace_out_by(time) { "Out of the dryer {time}", "Fuera del horno {time}" }
    pace_printed_by(time) { "Printed {time}; the time in the dryer is not known", "Impresa {time}; no se conoce el tiempo de horno" }
    pace_between(early, late) { "Eight times in ten between {early} and {late}, with time for stops and misprints", "Ocho de cada diez veces entre {early} y {late}, con tiempo para paradas y mal impresas" }
    pace_left(time) { "{time} left", "quedan {time}" }
    pace_needed_closing(rate) { "{rate} needed for closing", "hacen falta {rate} para el cierre" }
    pace_needed_due(rate) { "{rate} needed for the due time", "hacen falta {rate} para la entrega" }
    pace_due(time) { "Due {time}", "Entrega: {time}" }
    pace_was_due(time) { "Was due {time}", "Entrega vencida: {time}" }
    pace_no_time { "Closing has passed", "Ya es hora de cierre" }
    pace_by_closing(good, planned) { "{good} of {planned} by closing", "{good} de {planned} al cierre" }
    pace_title { "The pace", "El ritmo" }
    pace_in_full { "The pace in full", "El ritmo completo" }
    pace_basis(basis) { "Reckoned {basis}.", "Calculado {basis}." }
    pace_no_history { "Without earlier runs like it, a slow start or getting tired is not known.", "Sin tiradas parecidas no se sabe si se empieza lento o se acaba cansado." }
    basis_this_run[n] { "from this run, {n} gap" | "from this run, {n} gaps", "de esta tirada, {n} intervalo" | "de esta tirada, {n} intervalos" }
    basis_alike[n] { "from {n} run like it before" | "from {n} runs like it before", "de {n} tirada parecida" | "de {n} tiradas parecidas" }
    basis_other[n] { "from {n} earlier run, not quite like it" | "from {n} earlier runs, not quite like it", "de {n} tirada anterior, no igual" | "de {n} tiradas anteriores, no iguales" }
    basis_and(own, before) { "{own}, and {before}", "{own}, y {before}" }
    basis_guess { "from your guess", "de tu estimación" }
    goal_closing { "closing", "al cierre" }
    goal_due { "its due time", "a su entrega" }
    chance_sure(goal) { "Makes {goal}", "Llega {goal}" }
    chance_sure_printed(goal) { "Printed by {goal}", "Impresa {goal}" }
    chance_likely(goal) { "Likely makes {goal}", "Probablemente llega {goal}" }
    chance_likely_printed(goal) { "Likely printed by {goal}", "Probablemente impresa {goal}" }
    chance_even(goal) { "May or may not make {goal}", "Puede llegar o no {goal}" }
    chance_unlikely(goal) { "Will hardly make {goal}", "Difícilmente llega {goal}" }
    chance_no(goal) { "Will not make {goal}", "No llega {goal}" }
    chart_label(words) { "Pieces over time, and the fan of likely finishes. {words}", "Piezas en el tiempo y el abanico de finales probables. {words}" }
    chart_closing { "closing", "cierre" }
    chart_due { "due", "entrega" }
    chart_now { "now", "ahora" }
    chart_ordered[n] { "{n} piece" | "{n} pieces", "{n} pieza" | "{n} piezas" }
    chart_pulled { "pulled", "hechas" }
    chart_expected { "expected", "previsto" }
    chart_range { "eight times in ten", "ocho de cada diez" }
    ended_title { "Off the press", "Fuera de la prensa" }
    ended_good { "Good pieces", "Piezas buenas" }
    ended_short { "Short", "Faltan" }
    ended_over { "Over", "De más" }
    ended_replace { "Garments to replace", "Prendas por reponer" }
    ended_misprints { "Misprints", "Mal impresas" }
    ended_active { "At work", "En marcha" }
    ended_stopped { "Stood", "Parada" }
    ended_again { "Take it up again", "Retomarla" }
    ended_next { "Next run", "Siguiente tirada" }
    ended_wash { "Cured or not, a wash test says. Follow the ink's data sheet.", "Si está curado lo dice una prueba de lavado. Sigue la ficha de la tinta." }
    keys_hint { "Clickers and pedals count too: space, enter, arrows, page and volume keys. Backspace undoes.", "También cuentan pulsadores y pedales: espacio, intro, flechas, página y volumen. Retroceso deshace." }
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
        Some(percent) => format!("{words} ({percent}\u{a0}%)"),
        None => words,
    }
}
