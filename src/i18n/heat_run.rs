//! Messages: heat before a run, that is what changes at the dryer, and the computed cure.

use super::format::seconds;
use super::heat::degrees;
use super::messages::messages;
use lastpull_core::heat::{CureEstimate, HeatCaveat, LimitName, MissingInput, SettlingBasis};

messages! {
    change_too_hot(fabric) { "The dryer is too hot for {fabric}", "El horno está demasiado caliente para {fabric}" }
    change_set_up_too_hot(fabric) { "This set-up is too hot for {fabric}", "Este ajuste es demasiado caliente para {fabric}" }
    change_last_too_hot(fabric) { "The dryer was last set too hot for {fabric}", "El horno quedó demasiado caliente para {fabric}" }
    change_too_cool { "The dryer is too cool for this ink", "El horno está demasiado frío para esta tinta" }
    change_too_short { "Too little time in the heat for this ink", "Poco tiempo en el calor para esta tinta" }
    change_measure_again { "Change it, then measure again, the dryer with probe or strip on a garment: a look at the display does not lift what was measured.", "Cámbialo y mide otra vez, el horno con sonda o tira en una prenda: mirar la pantalla no anula lo medido." }
    change_first { "Heat first, ink after", "Primero el calor, después la tinta" }
    change_settle { "Let the dryer settle", "Deja que el horno se estabilice" }
    change_verified { "Dryer and flash are seen to", "Horno y flash, vistos" }
    stands_run_before(temperature, job) { "It stands at {temperature}, as for {job}.", "Está a {temperature}, como para {job}." }
    stands_settled(temperature) { "It settled at {temperature}.", "Se estabilizó a {temperature}." }
    stands_cooling(temperature) { "It is on its way, and may still be at {temperature}.", "Va de camino y aún puede estar a {temperature}." }
    stands_heating(temperature) { "It is heating up to {temperature}.", "Se está calentando hasta {temperature}." }
    stands_measured(temperature) { "Measured at {temperature}.", "Se midió a {temperature}." }
    stands_infrared(temperature) { "Infrared at the exit reads {temperature}; at the print it was hotter.", "El infrarrojo a la salida marca {temperature}; en el estampado hubo más." }
    stands_cold_job(temperature, job, when) { "It was last set to {temperature}, for {job}, {when}. By now it is cold, or was used without the app.", "La última vez se puso a {temperature}, para {job}, {when}. Ya estará frío, o se usó sin la app." }
    stands_cold(temperature, when) { "It was last set to {temperature}, {when}. By now it is cold, or was used without the app.", "La última vez se puso a {temperature}, {when}. Ya estará frío, o se usó sin la app." }
    cures_from(cure) { "This ink cures from {cure} on.", "Esta tinta cura desde {cure}." }
    time_missed(has, hold) { "Measured {has} in the heat; this ink needs {hold}.", "Se midieron {has} en el calor; esta tinta pide {hold}." }
    asks_for(temperature) { "The run asks for {temperature}.", "La tirada pide {temperature}." }
    at_limit_dye { "its dye moves into the print", "su tinte pasa al estampado" }
    at_limit_scorch { "it scorches, shines or shrinks", "se quema, brilla o encoge" }
    at_limit_ink { "the ink bears no more", "la tinta no aguanta más" }
    change_edit { "Change the set-up", "Cambiar el ajuste" }
    change_no_setting { "The run names no dryer temperature.", "La tirada no dice la temperatura del horno." }
    change_enter_setting { "Enter it", "Ponerla" }
    change_step_done { "done", "hecho" }
    wait_allow(minutes) { "Allow about {minutes}\u{a0}min", "Cuenta con unos {minutes}\u{a0}min" }
    wait_cold(minutes) { "From cold, allow about {minutes}\u{a0}min", "Desde frío, cuenta con unos {minutes}\u{a0}min" }
    wait_learned[n] { "learned from {n} of your own timings" | "learned from {n} of your own timings", "según {n} medición tuya" | "según {n} mediciones tuyas" }
    wait_our_own { "no timing yet: a cautious guess", "sin mediciones: estimación prudente" }
    wait_one_log { "one timing so far: the slower of it and a cautious guess", "una sola medición: lo más lento, ella o una estimación prudente" }
    settle_start(temperature) { "Set to {temperature}, time it", "Poner a {temperature} y medir" }
    settle_going(temperature) { "Settling to {temperature}", "Estabilizándose a {temperature}" }
    settle_should { "It should have settled. Look, or measure.", "Ya debería estar. Mira, o mide." }
    settle_done(temperature) { "Settled at {temperature}", "Ya está a {temperature}" }
    settle_drop { "Stop timing", "Dejar de medir" }
    settle_soon_title { "Settled already?", "¿Ya está?" }
    settle_late_title { "Was it settled earlier?", "¿Estaba antes?" }
    settle_doubt(took, expected) { "{took} have gone by, and this change was expected to take about {expected}.", "Han pasado {took}, y para este cambio se esperaban unos {expected}." }
    settle_doubt_hint { "A time noted by mistake makes every later waiting time wrong.", "Un tiempo anotado por error estropea las esperas siguientes." }
    settle_keep { "Keep timing", "Seguir midiendo" }
    settle_leave_out(temperature) { "It is at {temperature}, leave the time out", "Está a {temperature}, sin anotar el tiempo" }
    settle_count { "The time is right, note it", "El tiempo es correcto, anotarlo" }
    settle_left_out { "Settled; the time is left out.", "Estable; el tiempo no se anota." }
    settle_dropped { "Timing stopped, nothing noted.", "Medición parada, sin anotar." }
    settle_logged(time) { "Settled after {time}.", "Estable tras {time}." }
    hold_ink { "Hold the ink: the heat is not ready", "Espera con la tinta: el calor no está listo" }
    hold_title { "The heat is not ready", "El calor no está listo" }
    hold_text { "Ink dries in the mesh while a tunnel settles, and a garment too hot is lost.", "La tinta se seca en la malla mientras el túnel se estabiliza, y una prenda pasada de calor está perdida." }
    hold_settling { "The dryer is still settling.", "El horno aún se está estabilizando." }
    hold_steps[n] { "{n} change at dryer or flash is not made." | "{n} changes at dryer or flash are not made.", "Falta {n} cambio en horno o flash." | "Faltan {n} cambios en horno o flash." }
    hold_noted { "Starting all the same is noted on the run as skipped.", "Si empiezas igual, queda anotado como saltado." }
    hold_back { "Back to the dryer", "Volver al horno" }
    paper_title { "Heat on paper", "El calor sobre el papel" }
    paper_reached(spare) { "Cure reached on paper, {spare} to spare", "Curado sobre el papel, sobran {spare}" }
    paper_too_cool(degrees) { "Too cool to cure on paper: {degrees} short", "No cura sobre el papel: faltan {degrees}" }
    paper_too_short(has, needs) { "Too short on paper: {has} of {needs}", "Poco tiempo sobre el papel: {has} de {needs}" }
    paper_unknown { "Cure not known", "Curado desconocido" }
    paper_missing { "missing", "falta" }
    paper_ink { "Ink at", "Tinta a" }
    paper_measured { "Measured for this run", "Medido para esta tirada" }
    paper_dwell_measured { "Time measured for this run", "Tiempo medido para esta tirada" }
    paper_dwell_both(set, belt) { "{set} set, {belt} from the belt", "{set} puestos, {belt} según la cinta" }
    paper_dwell_belt(time) { "{time}, from the belt", "{time}, según la cinta" }
    paper_passes_of(set, needed) { "{set}, needs {needed}", "{set}, hacen falta {needed}" }
    paper_sheet { "The ink's sheet", "Ficha de la tinta" }
    paper_belt_for(speed) { "Or run the belt at {speed} or slower.", "O pon la cinta a {speed} o menos." }
    paper_passes_for[n] { "{n} pass would add up to it." | "{n} passes would add up to it.", "Con {n} vuelta se llega." | "Con {n} vueltas se llega." }
    paper_limits { "Limits", "Límites" }
    paper_no_setting { "No setting fits both this ink and this fabric", "Ningún ajuste sirve para esta tinta y este tejido" }
    paper_conflict(cure, limit) { "This ink cures at {cure}, and the fabric bears no more than {limit}: no setting is right for both. Another ink, or another garment.", "Esta tinta cura a {cure} y el tejido no aguanta más de {limit}: ningún ajuste sirve. Otra tinta u otra prenda." }
    name_dye { "Dye moves", "El tinte migra" }
    name_scorch { "Scorches", "Se quema" }
    name_ink { "Ink's highest", "Máximo de la tinta" }
    state_clear(degrees) { "clear by {degrees}", "margen de {degrees}" }
    state_close(degrees) { "close: {degrees} below", "cerca: {degrees} por debajo" }
    state_passed(degrees) { "passed by {degrees}", "pasado por {degrees}" }
    state_unknown { "not known", "sin saber" }
    missing_setting { "the dryer's setting", "la temperatura del horno" }
    missing_sensor { "the dryer's error", "el error del horno" }
    missing_dwell { "time in the heat", "el tiempo en el calor" }
    missing_sheet { "the ink's sheet", "la ficha de la tinta" }
    missing_cure { "cure temperature on the sheet", "la temperatura de curado de la ficha" }
    missing_hold { "cure time on the sheet", "el tiempo de curado de la ficha" }
    fix_setting { "Enter the run's dryer temperature", "Poner la temperatura del horno" }
    fix_sensor { "Measure the dryer at the print", "Medir el horno en el estampado" }
    fix_dryer { "Enter your dryer", "Anotar tu horno" }
    fix_dwell { "Enter time or belt speed of the run", "Poner tiempo o velocidad de la cinta" }
    fix_sheet { "Enter the ink's sheet", "Anotar la ficha de la tinta" }
    fix_sheet_edit { "Complete the ink's sheet", "Completar la ficha de la tinta" }
    caveat_wash { "The wash test decides, not these figures.", "Decide la prueba de lavado, no estas cifras." }
    caveat_heat_up { "The time to heat up and dry is counted in.", "Incluye el tiempo de calentar y secar." }
    caveat_passes { "Whether passes add up is for the ink's sheet to say: the print cools between.", "Si las vueltas se suman lo dice la ficha: el estampado se enfría entre medias." }
    caveat_not_measured { "The dryer's error was never measured: this is the bare setting.", "El error del horno no se ha medido: es la temperatura puesta." }
    caveat_sensor_old { "The dryer was measured over 90 days ago.", "El horno se midió hace más de 90 días." }
    caveat_sensor_elsewhere { "The dryer was measured far from this setting.", "El horno se midió lejos de esta temperatura." }
    caveat_infrared { "The dryer was last read by infrared at the exit, which misses the hottest moment: it can hold a fabric, and never clears it. Measure at the print with probe or strip.", "El horno se leyó por última vez con infrarrojo a la salida, que no ve el máximo: puede frenar un tejido, nunca darlo por bueno. Mide en el estampado con sonda o tira." }
    caveat_hotter_reading { "Another reading, by infrared, older or far from this setting, was hotter: it counts for limits until you measure here with probe or strip.", "Otra lectura, con infrarrojo, más vieja o lejos de esta temperatura, dio más calor: cuenta para los límites hasta que midas aquí con sonda o tira." }
    caveat_canvas { "This canvas is taken for cotton. If its label says polyester, enter the fabric as polyester: its dye moves at this heat.", "Esta lona se toma por algodón. Si la etiqueta dice poliéster, pon poliéster: con este calor el tinte migra." }
    caveat_dryer_assumed { "Several dryers: the first one is assumed.", "Varios hornos: se supone el primero." }
    caveat_dwells { "Set time and belt do not agree; the shorter one counts.", "Tiempo puesto y cinta no coinciden; vale el menor." }
    caveat_belt { "The belt is set to a speed this dryer does not run.", "La cinta va a una velocidad que este horno no da." }
    caveat_flash { "The flash heats this fabric too; its dye may move there already.", "El flash también calienta el tejido; el tinte puede migrar ya ahí." }
    caveat_raised { "A limit of this fabric is one you raised.", "Un límite de este tejido lo subiste tú." }
    dryer_choose { "Which dryer?", "¿Qué horno?" }
    tests_standing_passed(kind, when) { "{kind} test passed {when}", "{kind}: superada, {when}" }
    tests_standing_due(kind, why) { "{kind} test due: {why}", "{kind}: pendiente, {why}" }
    tests_standing_waiting(kind) { "{kind} test under way", "{kind}: prueba en curso" }
    trials_with_ink[n] { "{n} trial with this ink" | "{n} trials with this ink", "{n} ensayo con esta tinta" | "{n} ensayos con esta tinta" }
    trial_same { "same ink, same fabric", "misma tinta, mismo tejido" }
    trial_other_fabric { "on another fabric: its heat may be wrong here", "en otro tejido: su calor puede no valer" }
    to_heat { "All about heat", "Todo sobre el calor" }
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
