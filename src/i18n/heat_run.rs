//! Messages: heat before a run, that is what changes at the dryer, and the computed cure.

use super::format::seconds;
use super::heat::degrees;
use super::messages::messages;
use lastpull_core::heat::{CureEstimate, HeatCaveat, LimitName, MissingInput, SettlingBasis};

messages! {
    change_too_hot(fabric) { "The dryer is too hot for {fabric}", "El horno está demasiado caliente para {fabric}" }
    change_set_up_too_hot(fabric) { "This setup is too hot for {fabric}", "Con este ajuste es demasiado calor para {fabric}" }
    change_last_too_hot(fabric) { "The dryer was last set too hot for {fabric}", "Último ajuste del horno: demasiado calor para {fabric}" }
    change_too_cool { "The dryer is too cool for this ink", "El horno está demasiado frío para esta tinta" }
    change_too_short { "Dwell time too short for this ink", "Poco tiempo en el horno para esta tinta" }
    change_limits { "Limits passed:", "Límites pasados:" }
    change_measure_again { "Change it, then measure again (dryer: probe or strip on a garment). Reading the display doesn't clear what was measured.", "Cámbialo y mide otra vez (horno: sonda o tira en una prenda). Leer el indicador no anula lo medido." }
    change_first { "Heat first, ink after", "Primero el calor, después la tinta" }
    change_settle { "Let the dryer settle", "Deja que el horno se estabilice" }
    change_verified { "Dryer and flash are set", "Horno y flash, listos" }
    stands_run_before(temperature, job) { "It's at {temperature}, from {job}.", "Está a {temperature}, por {job}." }
    stands_settled(temperature) { "It has reached {temperature}.", "Llegó a {temperature}." }
    stands_cooling(temperature) { "Still cooling; it may still be at {temperature}.", "Sigue enfriándose; aún puede estar a {temperature}." }
    stands_heating(temperature) { "Heating up to {temperature}.", "Se está calentando hasta {temperature}." }
    stands_measured(temperature) { "Measured at {temperature}.", "Se midió a {temperature}." }
    stands_infrared(temperature) { "Infrared at the exit reads {temperature}; the print was hotter.", "El infrarrojo a la salida marca {temperature}; el estampado estuvo más caliente." }
    stands_cold_job(temperature, job, when) { "Last set to {temperature} for {job}, {when}. By now it's cold, or was used without the app.", "Último ajuste ({when}): {temperature}, para {job}. Ya estará frío, o se usó sin la app." }
    stands_cold(temperature, when) { "Last set to {temperature}, {when}. By now it's cold, or was used without the app.", "Último ajuste ({when}): {temperature}. Ya estará frío, o se usó sin la app." }
    cures_from(cure) { "This ink cures at {cure} or above.", "Esta tinta cura a {cure} o más." }
    time_missed(has, hold) { "Measured dwell time {has}; this ink needs {hold}.", "Tiempo medido en el horno: {has}; esta tinta pide {hold}." }
    asks_for(temperature) { "This run calls for {temperature}.", "El tiraje pide {temperature}." }
    at_limit_dye { "dye migration", "migración del tinte" }
    at_limit_scorch { "scorching, shine or shrinkage", "quemado, brillo o encogimiento" }
    at_limit_ink { "the ink's maximum", "máximo de la tinta" }
    change_edit { "Change setup", "Cambiar el ajuste" }
    change_no_setting { "No dryer temperature on this run.", "El tiraje no tiene temperatura del horno." }
    change_enter_setting { "Enter it", "Ponerla" }
    change_step_done { "done", "hecho" }
    wait_allow(minutes) { "Allow about {minutes}\u{a0}min", "Cuenta con unos {minutes}\u{a0}min" }
    wait_cold(minutes) { "From cold, allow about {minutes}\u{a0}min", "Desde frío, cuenta con unos {minutes}\u{a0}min" }
    wait_learned[n] { "from {n} change you timed" | "from {n} changes you timed", "según {n} cambio cronometrado" | "según {n} cambios cronometrados" }
    wait_our_own { "no timings yet: a cautious estimate", "sin cronometrar: estimación prudente" }
    wait_one_log { "one timing so far: the slower of that and a cautious estimate", "un solo tiempo: el más lento entre ese y una estimación prudente" }
    settle_start(temperature) { "Set to {temperature}: start timer", "Puesto a {temperature}: cronometrar" }
    settle_going(temperature) { "Changing to {temperature}", "Pasando a {temperature}" }
    settle_should { "It should be there by now. Check or measure.", "Ya debería haber llegado. Revisa o mide." }
    settle_done(temperature) { "Reached {temperature}", "Llegó a {temperature}" }
    settle_drop { "Stop timer", "Parar cronómetro" }
    settle_soon_title { "There already?", "¿Ya llegó?" }
    settle_late_title { "Was it there earlier?", "¿Llegó antes?" }
    settle_doubt(took, expected) { "So far: {took}. Expected for this change: about {expected}.", "Hasta ahora: {took}. Lo esperado para este cambio: unos {expected}." }
    settle_doubt_hint { "A time saved by mistake throws off every later wait estimate.", "Un tiempo guardado por error altera las esperas siguientes." }
    settle_keep { "Keep timing", "Seguir cronometrando" }
    settle_leave_out(temperature) { "It's at {temperature}, don't save the time", "Está a {temperature}, no guardar el tiempo" }
    settle_count { "Time is right, save it", "Es correcto, guardarlo" }
    settle_left_out { "Reached; time not saved.", "Listo; tiempo no guardado." }
    settle_dropped { "Timer stopped; nothing saved.", "Cronómetro parado; no se guardó nada." }
    settle_logged(duration) { "Reached in {duration}.", "Llegó en {duration}." }
    hold_ink { "Hold the ink: the heat is not ready", "Espera con la tinta: el calor no está listo" }
    hold_title { "The heat is not ready", "El calor no está listo" }
    hold_text { "Ink dries in the mesh while the dryer changes temperature, and an overheated garment is ruined.", "La tinta se seca en la malla mientras el horno cambia de temperatura, y una prenda pasada de calor se arruina." }
    hold_settling { "The dryer is still changing temperature.", "El horno aún está cambiando de temperatura." }
    hold_steps[n] { "{n} dryer or flash change not made yet." | "{n} dryer or flash changes not made yet.", "Falta {n} cambio en horno o flash." | "Faltan {n} cambios en horno o flash." }
    hold_noted { "If you start anyway, the run shows it as skipped.", "Si empiezas igual, el tiraje lo muestra como saltado." }
    hold_back { "Back to the dryer", "Volver al horno" }
    paper_title { "Cure check (calculated)", "Curado (calculado)" }
    paper_reached(spare) { "Should cure (calculated), {spare} to spare", "Debería curar (calculado), sobran {spare}" }
    paper_too_cool(degrees) { "Won't cure (calculated): {degrees} too cool", "No cura (calculado): faltan {degrees}" }
    paper_too_short(has, needs) { "Won't cure (calculated): {has} of {needs}", "No cura (calculado): {has} de {needs}" }
    paper_unknown { "Can't tell if it cures", "No se sabe si cura" }
    paper_missing { "missing", "falta" }
    paper_ink { "Ink temperature", "Temperatura de tinta" }
    paper_measured { "Measured for this run", "Medido para este tiraje" }
    paper_dwell_measured { "Dwell time measured for this run", "Tiempo medido para este tiraje" }
    paper_dwell_both(set, belt) { "{set} set, {belt} by belt speed", "{set} ajustados, {belt} según la banda" }
    paper_dwell_belt(time) { "{time}, by belt speed", "{time}, según la banda" }
    paper_passes_of(set, needed) { "{set}, needs {needed}", "{set}, hacen falta {needed}" }
    paper_sheet { "Ink data sheet", "Ficha de la tinta" }
    paper_belt_for(speed) { "Or run the belt at {speed} or slower.", "O pon la banda a {speed} o menos." }
    paper_passes_for[n] { "{n} pass would be enough." | "{n} passes would be enough.", "Con {n} vuelta basta." | "Con {n} vueltas basta." }
    paper_limits { "Limits", "Límites" }
    paper_no_setting { "No setting works for both this ink and this fabric", "Ningún ajuste sirve para esta tinta y esta tela" }
    paper_conflict(cure, limit) { "This ink cures at {cure}, but the fabric's limit is {limit}: no setting works for both. Use another ink or another garment.", "Esta tinta cura a {cure}, pero el límite de la tela es {limit}: ningún ajuste sirve. Usa otra tinta u otra prenda." }
    name_dye { "Dye migration", "Migración del tinte" }
    name_scorch { "Scorching", "Quemado" }
    name_ink { "Ink maximum", "Máximo de la tinta" }
    state_clear(degrees) { "clear by {degrees}", "margen de {degrees}" }
    state_close(degrees) { "close: {degrees} below", "cerca: {degrees} por debajo" }
    state_passed(degrees) { "passed by {degrees}", "pasado por {degrees}" }
    state_unknown { "not known", "no se sabe" }
    missing_setting { "the dryer setting", "la temperatura del horno" }
    missing_sensor { "the dryer offset", "la diferencia del horno" }
    missing_dwell { "dwell time", "el tiempo en el horno" }
    missing_sheet { "the ink data sheet", "la ficha de la tinta" }
    missing_cure { "cure temperature on the data sheet", "la temperatura de curado de la ficha" }
    missing_hold { "hold time on the data sheet", "el tiempo mínimo de la ficha" }
    fix_setting { "Enter dryer temperature", "Poner la temperatura" }
    fix_sensor { "Measure at the print", "Medir en el estampado" }
    fix_dryer { "Add your dryer", "Agregar tu horno" }
    fix_dwell { "Enter dwell time or belt speed", "Poner tiempo o velocidad de banda" }
    fix_sheet { "Add ink data sheet", "Agregar ficha de tinta" }
    fix_sheet_edit { "Complete data sheet", "Completar la ficha" }
    caveat_wash { "Go by the wash test, not by these numbers.", "Decide la prueba de lavado, no estas cifras." }
    caveat_heat_up { "Includes the time to heat up and dry.", "Incluye el tiempo de calentar y secar." }
    caveat_passes { "Check the ink data sheet for whether passes add up: the print cools in between.", "Si las vueltas se suman lo dice la ficha de la tinta: el estampado se enfría entre una y otra." }
    caveat_not_measured { "Dryer offset never measured: this is just the setting.", "Diferencia del horno sin medir: es solo la temperatura ajustada." }
    caveat_sensor_old { "The dryer was last measured over 90 days ago.", "El horno se midió hace más de 90 días." }
    caveat_sensor_elsewhere { "The dryer was measured at a setting far from this one.", "El horno se midió con un ajuste lejos de este." }
    caveat_infrared { "The last dryer reading was infrared at the exit, which misses the peak: it can rule a fabric out, never clear it. Measure at the print with probe or strip.", "La última lectura del horno fue con infrarrojo a la salida, que no ve el máximo: puede descartar una tela, nunca darla por buena. Mide en el estampado con sonda o tira." }
    caveat_hotter_reading { "Another reading (infrared, older, or far from this setting) was hotter: it counts for the limits until you measure here with probe or strip.", "Otra lectura (con infrarrojo, más vieja o con otro ajuste) dio más calor: cuenta para los límites hasta que midas aquí con sonda o tira." }
    caveat_canvas { "This canvas is treated as cotton. If its label says polyester, enter the fabric as polyester: its dye migrates at this heat.", "Esta lona se toma como algodón. Si la etiqueta dice poliéster, pon poliéster: con este calor el tinte migra." }
    caveat_dryer_assumed { "Several dryers: the first one is assumed.", "Varios hornos: se supone el primero." }
    caveat_dwells { "Dwell time and belt speed don't agree; the shorter one counts.", "El tiempo puesto y la banda no coinciden; vale el menor." }
    caveat_belt { "This dryer doesn't run at that belt speed.", "Este horno no da esa velocidad de banda." }
    caveat_flash { "The flash heats this fabric too; dye can start to migrate there.", "El flash también calienta la tela; el tinte puede migrar ya ahí." }
    caveat_raised { "You raised a limit of this fabric.", "Subiste un límite de esta tela." }
    dryer_choose { "Which dryer?", "¿Qué horno?" }
    tests_standing_passed(kind, when) { "{kind} test passed {when}", "{kind}: superada, {when}" }
    tests_standing_due(kind, why) { "{kind} test due: {why}", "{kind}: pendiente, {why}" }
    tests_standing_waiting(kind) { "{kind} test in progress", "{kind}: prueba en curso" }
    trials_with_ink[n] { "{n} trial with this ink" | "{n} trials with this ink", "{n} ensayo con esta tinta" | "{n} ensayos con esta tinta" }
    trial_same { "same ink, same fabric", "misma tinta, misma tela" }
    trial_other_fabric { "on another fabric: its heat may not fit here", "en otra tela: su calor puede no servir aquí" }
    to_heat { "Go to Heat", "Ir a Calor" }
}

/// What happens at a limit, shown after its temperature.
pub fn at_limit(name: LimitName) -> &'static str {
    match name {
        LimitName::DyeMigration => at_limit_dye(),
        LimitName::Scorch => at_limit_scorch(),
        LimitName::InkHighest => at_limit_ink(),
    }
}

/// The name of a limit.
pub fn limit_name(name: LimitName) -> &'static str {
    match name {
        LimitName::DyeMigration => name_dye(),
        LimitName::Scorch => name_scorch(),
        LimitName::InkHighest => name_ink(),
    }
}

/// What a settling time is based on.
pub fn wait_basis(basis: SettlingBasis) -> String {
    match basis {
        SettlingBasis::Logged(logs) => wait_learned(logs),
        SettlingBasis::OneLog => wait_one_log().into(),
        SettlingBasis::OurOwn => wait_our_own().into(),
    }
}

/// The name of a missing figure.
pub fn missing(what: MissingInput) -> &'static str {
    match what {
        MissingInput::Setting => missing_setting(),
        MissingInput::Sensor => missing_sensor(),
        MissingInput::Dwell => missing_dwell(),
        MissingInput::Sheet => missing_sheet(),
        MissingInput::CureTemperature => missing_cure(),
        MissingInput::Hold => missing_hold(),
    }
}

/// Whether the computed cure is complete, in one line.
pub fn cure_line(cure: &CureEstimate) -> String {
    match cure {
        CureEstimate::Unknown(_) => paper_unknown().into(),
        CureEstimate::TooCool(short) => paper_too_cool(degrees(*short)),
        CureEstimate::TooShort { has, needs, .. } => paper_too_short(seconds(*has), seconds(*needs)),
        CureEstimate::Reached { spare } => paper_reached(seconds(*spare)),
    }
}

/// A caveat on the computed cure.
pub fn heat_caveat(caveat: HeatCaveat) -> &'static str {
    match caveat {
        HeatCaveat::WashTestDecides => caveat_wash(),
        HeatCaveat::HeatUpCounted => caveat_heat_up(),
        HeatCaveat::PassesMayNotAdd => caveat_passes(),
        HeatCaveat::SensorNotMeasured => caveat_not_measured(),
        HeatCaveat::SensorOld => caveat_sensor_old(),
        HeatCaveat::SensorFarFromSetting => caveat_sensor_elsewhere(),
        HeatCaveat::SensorInfrared => caveat_infrared(),
        HeatCaveat::SensorHotterReading => caveat_hotter_reading(),
        HeatCaveat::CanvasMayBePolyester => caveat_canvas(),
        HeatCaveat::DryerAssumed => caveat_dryer_assumed(),
        HeatCaveat::DwellsDiffer => caveat_dwells(),
        HeatCaveat::BeltBeyondDryer => caveat_belt(),
        HeatCaveat::FlashHeatsToo => caveat_flash(),
        HeatCaveat::LimitRaised => caveat_raised(),
    }
}
