//! Messages: dryers and flash units, ink data sheets, limits of fabrics, settling times, tests and trials.

use super::format::{number, unit_temperature};
use super::locale::units;
use super::messages::messages;
use lastpull_core::heat::{
    DueReason, HeaterKind, LimitKind, LimitOrigin, SensorMethod, TestKind, TestMethod, TestResult, TrialVerdict,
};
use lastpull_core::job::Fabric;
use lastpull_core::units::TemperatureDelta;

messages! {
    heat_title { "Heat", "Calor" }
    heat_text { "Dryer, cure, what fabrics bear, the room", "Horno, curado, qué aguanta cada tejido, la sala" }
    heat_caution {
        "Tunnel, flash and platens burn, also after they are switched off. Gloves on; the maker's manual decides.",
        "Túnel, flash y planchas queman, también después de apagarlos. Usa guantes; manda el manual del fabricante."
    }
    heat_no_promise { "Figures on paper promise no cure. The wash test decides.", "Las cifras no garantizan el curado. Decide la prueba de lavado." }
    fabric_this { "this fabric", "este tejido" }
    source_makers_bulletin { "an ink maker's bulletin", "boletín de un fabricante de tintas" }
    source_trade_glossary { "a trade glossary", "glosario del oficio" }
    source_distributors_page { "a garment distributor's page", "página de un distribuidor de prendas" }
    source_common_practice { "common practice, no source", "costumbre del oficio, sin fuente" }
    source_if_polyester { "only if the canvas is polyester: look at its label", "solo si la lona es de poliéster: mira la etiqueta" }
    source_our_own { "our own caution, no figure found", "cautela nuestra, sin cifra publicada" }
    source_shop { "your own limit", "límite tuyo" }
    source_ink_sheet { "the ink's sheet", "ficha de la tinta" }
    limit_dye { "Dye moves into the print", "El tinte pasa al estampado" }
    limit_dye_hint { "It may show only days later.", "A veces se nota días después." }
    limit_scorch { "Scorches, shines or shrinks", "Se quema, brilla o encoge" }
    units_title { "Dryers and flash units", "Hornos y flashes" }
    units_none_title { "No dryer yet", "Aún no hay horno" }
    units_none_text { "Enter your dryer: its heated length gives the time in the heat, and its own timings say how long a change takes.", "Anota tu horno: el largo con calor da el tiempo en el calor, y sus tiempos dicen cuánto tarda un cambio." }
    unit_add { "Add a unit", "Añadir equipo" }
    unit_new { "A new dryer or flash", "Horno o flash nuevo" }
    unit_edit { "Edit the unit", "Editar equipo" }
    unit_kind { "What is it?", "¿Qué es?" }
    unit_dryer { "Dryer", "Horno" }
    unit_flash { "Flash unit", "Flash" }
    unit_name { "What you call it", "Cómo lo llamas" }
    unit_heated { "Heated length of the belt", "Largo de cinta con calor" }
    unit_heated_hint { "Only what lies under heat, from the maker's sheet or with a tape when it is cold.", "Solo lo que queda bajo calor: según la ficha, o con cinta métrica en frío." }
    unit_slowest { "Belt, slowest", "Cinta, mínima" }
    unit_fastest { "Belt, fastest", "Cinta, máxima" }
    unit_deleted(name) { "{name}: deleted.", "{name}: borrado." }
    unit_made { "Your dryer is entered as “Dryer”. Give it its heated length under Heat.", "Tu horno queda anotado como «Horno». Ponle el largo con calor en Calor." }
    belt_range(slow, fast) { "{slow} to {fast}", "de {slow} a {fast}" }
    belt_from(slow) { "from {slow}", "desde {slow}" }
    belt_up_to(fast) { "up to {fast}", "hasta {fast}" }
    belt_runs { "Belt", "Cinta" }
    unit_error { "At the print", "En el estampado" }
    error_none { "never measured", "sin medir" }
    error_none_hint { "Without it there is no telling whether ink cures.", "Sin medirlo no se sabe si cura." }
    error_hotter(degrees) { "{degrees} hotter than set", "{degrees} más que lo puesto" }
    error_cooler(degrees) { "{degrees} cooler than set", "{degrees} menos que lo puesto" }
    error_exact { "as hot as set", "igual que lo puesto" }
    measured_how(method, setting, when) { "{method}, at {setting}, {when}", "{method}, a {setting}, {when}" }
    measure { "Measure", "Medir" }
    measure_title(name) { "Measure {name}", "Medir {name}" }
    measure_text { "Send a probe or a temperature strip through on a garment, where the print lies. What the dryer shows is the air, not the ink.", "Pasa una sonda o una tira sobre una prenda, donde va el estampado. Lo que marca el horno es el aire, no la tinta." }
    measure_setting { "Set to", "Puesto a" }
    measure_found { "Hottest at the print", "Máximo en el estampado" }
    measure_method { "Measured with", "Medido con" }
    method_probe { "Probe", "Sonda" }
    method_strip { "Strip", "Tira" }
    method_infrared { "Infrared", "Infrarrojo" }
    method_infrared_hint { "Infrared sees the surface at the exit, where it has begun to cool: it never clears a fabric.", "El infrarrojo ve la superficie a la salida, cuando ya se enfría: nunca da por bueno un tejido." }
    measured_before { "Measured before", "Medido antes" }
    measure_undo { "Take the last one back", "Quitar la última" }
    measure_undone { "The last measurement is taken back.", "Última medición quitada." }
    sheets_title { "Ink sheets", "Fichas de tinta" }
    sheets_count[n] { "{n} ink" | "{n} inks", "{n} tinta" | "{n} tintas" }
    sheets_missing[n] { "{n} ink to print has none" | "{n} inks to print have none", "falta la de {n} tinta" | "faltan las de {n} tintas" }
    sheets_none_title { "No sheets yet", "Aún no hay fichas" }
    sheets_none_text { "Copy cure temperature and time from the maker's sheet of each ink you print, by the name your runs carry.", "Copia la temperatura y el tiempo de curado de la ficha de cada tinta, con el nombre que llevan tus tiradas." }
    sheet_wanted { "Printed soon, no sheet yet", "Se imprimen pronto, sin ficha" }
    sheet_add { "Add a sheet", "Añadir ficha" }
    sheet_new { "A new ink sheet", "Ficha de tinta nueva" }
    sheet_edit { "Edit the sheet", "Editar ficha" }
    sheet_ink_hint { "As your runs call it.", "Como la llaman tus tiradas." }
    sheet_cure { "Cures at", "Cura a" }
    sheet_cure_hint { "Temperature of the ink, not of the dryer.", "Temperatura de la tinta, no del horno." }
    sheet_hold { "For at least", "Al menos durante" }
    sheet_hold_hint { "0 if the sheet asks for no time.", "0 si la ficha no pide tiempo." }
    sheet_flash { "Flash at", "Flash a" }
    sheet_highest { "No hotter than", "No más de" }
    sheet_source { "Which sheet", "Qué ficha" }
    sheet_source_hint { "Maker's sheet, its number, where it hangs.", "Ficha del fabricante, número, dónde está." }
    sheet_day { "Its date", "Su fecha" }
    sheet_line(cure, hold) { "{cure} for {hold}", "{cure} durante {hold}" }
    sheet_no_cure { "no cure temperature yet", "sin temperatura de curado" }
    sheet_deleted(ink) { "{ink}: sheet deleted.", "{ink}: ficha borrada." }
    limits_title { "What fabrics bear", "Qué aguanta cada tejido" }
    limits_short { "Dye that moves, cloth that scorches", "Tinte que migra, tela que se quema" }
    limits_text { "From this temperature of the print on, the limit counts as passed. Where published figures differ, the lower one stands until you set your own.", "Desde esta temperatura del estampado el límite cuenta como pasado. Si las cifras publicadas difieren, vale la menor hasta que pongas la tuya." }
    limits_own[n] { "{n} of your own" | "{n} of your own", "{n} tuyo" | "{n} tuyos" }
    limit_from(temperature) { "from {temperature}", "desde {temperature}" }
    limit_also(temperature, source) { "Also published: {temperature}, {source}.", "También publicado: {temperature}, {source}." }
    limit_instead(temperature, source) { "In place of {temperature}, {source}.", "En lugar de {temperature}, {source}." }
    limit_raised { "higher than the cautious figure", "por encima de la cifra prudente" }
    limit_edit_title(fabric, what) { "{fabric}: {what}", "{fabric}: {what}" }
    limit_stands { "It stands at", "Ahora está en" }
    limit_temperature { "Your own limit", "Tu límite" }
    limit_temperature_hint { "Of the print, as a strip or probe shows it. Empty: the cautious figure.", "Del estampado, según tira o sonda. Vacío: la cifra prudente." }
    limit_note { "Why, or from which sheet", "Por qué, o según qué ficha" }
    limit_note_hint { "Garment maker's sheet, a trial of your own, a blocking ink.", "Ficha de la prenda, un ensayo propio, una tinta de bloqueo." }
    limit_back { "Back to the cautious figure", "Volver a la cifra prudente" }
    limit_is_default { "The cautious figure stands again.", "Vuelve a valer la cifra prudente." }
    limit_caution { "Above the cautious figure only with the garment maker's word, or a trial left to lie for days.", "Por encima de la cifra prudente, solo con la ficha de la prenda o un ensayo dejado varios días." }
    settlings_title { "How the dryer settles", "Cómo se estabiliza el horno" }
    settlings_text { "Every change you time here makes the waiting time your own.", "Cada cambio que cronometras aquí hace tuyo el tiempo de espera." }
    settlings_none { "No change timed yet. Start the timer at the checks of a run, or enter one you timed.", "Aún no hay cambios cronometrados. Pon en marcha el reloj en las comprobaciones, o anota uno." }
    settlings_count[n] { "{n} change timed" | "{n} changes timed", "{n} cambio cronometrado" | "{n} cambios cronometrados" }
    settling_add { "Enter one you timed", "Anotar uno" }
    settling_dryer { "Which dryer", "Qué horno" }
    settling_from { "From", "De" }
    settling_to { "To", "A" }
    settling_minutes { "It took", "Tardó" }
    settling_untimed { "time left out", "sin tiempo" }
    settling_not_counted { "not counted: no dryer takes so long or so short", "no cuenta: ningún horno tarda eso" }
    settling_running { "timing now", "en marcha" }
    settling_deleted { "The timing is deleted.", "Tiempo borrado." }
    settling_way(from, to) { "{from} → {to}", "{from} → {to}" }
    tests_title { "Wash and rub tests", "Pruebas de lavado y frote" }
    tests_none_title { "No test yet", "Aún no hay pruebas" }
    tests_none_text { "Print one more, wash it as the client will, and note what came of it. Nothing else tells that a print is cured.", "Imprime una más, lávala como lo hará el cliente y anota el resultado. Solo eso dice que está curada." }
    tests_due_count[n] { "{n} due" | "{n} due", "{n} pendiente" | "{n} pendientes" }
    tests_none_due { "none due", "ninguna pendiente" }
    tests_due { "Due", "Pendientes" }
    tests_log { "Made", "Hechas" }
    test_add { "Note a test", "Anotar prueba" }
    test_new { "A new test", "Prueba nueva" }
    test_edit { "The test", "La prueba" }
    test_of(ink, fabric) { "{ink} on {fabric}", "{ink} en {fabric}" }
    test_kind { "Which test?", "¿Qué prueba?" }
    kind_wash { "Wash", "Lavado" }
    kind_crock { "Rub", "Frote" }
    kind_stretch { "Stretch", "Estirado" }
    test_method { "How", "Cómo" }
    method_own { "Our own way", "A nuestra manera" }
    test_method_note { "Procedure", "Procedimiento" }
    test_method_note_hint { "Temperature, cycle, cloth; beside an unwashed one.", "Temperatura, ciclo, paño; junto a una sin lavar." }
    test_times_wash { "How many washes", "Cuántos lavados" }
    test_times_rub { "How many strokes", "Cuántas pasadas" }
    test_times_stretch { "How many times", "Cuántas veces" }
    test_home_washes[n] { "Stands for about {n} home wash." | "Stands for about {n} home washes.", "Equivale a {n} lavado en casa." | "Equivale a unos {n} lavados en casa." }
    test_result { "How it stands", "Cómo va" }
    result_waiting { "Under way", "En curso" }
    result_pass { "Passed", "Superada" }
    result_fail { "Failed", "No superada" }
    test_grade { "Grade", "Nota" }
    test_grade_hint { "On a grey scale, 1 to 5 in half steps.", "En escala de grises, de 1 a 5 por medios." }
    test_by { "Who tests", "Quién prueba" }
    test_went_through { "It went through", "Pasó por" }
    test_photos { "Before and after", "Antes y después" }
    test_deleted { "The test is deleted.", "Prueba borrada." }
    why_never { "never passed", "nunca superada" }
    why_failed { "the last one failed", "la última falló" }
    why_dryer { "another dryer", "otro horno" }
    why_temperature { "another dryer temperature", "otra temperatura" }
    why_sensor { "the dryer's error is another", "otro error del horno" }
    why_dwell { "another time in the heat", "otro tiempo en el calor" }
    why_passes { "another number of passes", "otro número de vueltas" }
    why_flash { "another flash", "otro flash" }
    why_sheet { "other figures on the ink's sheet", "otras cifras en la ficha" }
    trials_title { "Trials", "Ensayos" }
    trials_count[n] { "{n} trial" | "{n} trials", "{n} ensayo" | "{n} ensayos" }
    trials_none_title { "No trial yet", "Aún no hay ensayos" }
    trials_none_text { "A new ink, another fabric, a hotter flash: note how it was printed and what came of it, and it comes up with the next run like it.", "Una tinta nueva, otro tejido, más flash: anota cómo se imprimió y qué salió, y aparece en la próxima tirada parecida." }
    trial_add { "Note a trial", "Anotar ensayo" }
    trial_new { "A new trial", "Ensayo nuevo" }
    trial_edit { "The trial", "El ensayo" }
    trial_outcome { "What came of it", "Qué salió" }
    trial_verdict { "What you make of it", "Qué decides" }
    verdict_open { "Open", "Por ver" }
    verdict_keep { "Print it so", "Imprimir así" }
    verdict_adjust { "Change and try", "Ajustar y repetir" }
    verdict_reject { "Not so", "Así no" }
    trial_by { "Who tried it", "Quién lo probó" }
    trial_flash_hint { "Seconds; empty for none.", "Segundos; vacío si no hay." }
    trial_deleted { "The trial is deleted.", "Ensayo borrado." }
}

/// A temperature difference without its sign.
pub fn degrees(value: TemperatureDelta) -> String {
    format!("{}\u{a0}{}", number(value.magnitude().in_units(units()).round(), 0), unit_temperature())
}

/// How far the temperature at the print is from the setting.
pub fn dryer_error(offset: TemperatureDelta) -> String {
    match offset.in_units(units()).round() {
        less if less < 0.0 => error_cooler(degrees(offset)),
        more if more > 0.0 => error_hotter(degrees(offset)),
        _ => error_exact().into(),
    }
}

/// The name of a fabric within a sentence.
pub fn fabric_inside(fabric: Fabric) -> String {
    if fabric == Fabric::Other { fabric_this().into() } else { super::format::fabric(fabric).to_lowercase() }
}

/// Where a limit comes from.
pub fn limit_origin(origin: LimitOrigin) -> &'static str {
    match origin {
        LimitOrigin::MakersBulletin => source_makers_bulletin(),
        LimitOrigin::TradeGlossary => source_trade_glossary(),
        LimitOrigin::DistributorsPage => source_distributors_page(),
        LimitOrigin::CommonPractice => source_common_practice(),
        LimitOrigin::IfPolyester => source_if_polyester(),
        LimitOrigin::OurOwn => source_our_own(),
        LimitOrigin::Shop => source_shop(),
        LimitOrigin::InkSheet => source_ink_sheet(),
    }
}

/// The kind of damage by heat.
pub fn limit_kind(kind: LimitKind) -> &'static str {
    match kind {
        LimitKind::DyeMigration => limit_dye(),
        LimitKind::Scorch => limit_scorch(),
    }
}

/// The name of a kind of heater.
pub fn unit_kind_of(kind: HeaterKind) -> &'static str {
    match kind {
        HeaterKind::Dryer => unit_dryer(),
        HeaterKind::Flash => unit_flash(),
    }
}

/// The name of a measuring method.
pub fn sensor_method(method: SensorMethod) -> &'static str {
    match method {
        SensorMethod::Probe => method_probe(),
        SensorMethod::Strip => method_strip(),
        SensorMethod::Infrared => method_infrared(),
    }
}

/// The name of a kind of test.
pub fn test_kind_of(kind: TestKind) -> &'static str {
    match kind {
        TestKind::Wash => kind_wash(),
        TestKind::Crock => kind_crock(),
        TestKind::Stretch => kind_stretch(),
    }
}

/// The name of a test method. Standards have the same name in both languages.
pub fn test_method_of(method: TestMethod) -> &'static str {
    match method {
        TestMethod::Own => method_own(),
        TestMethod::Aatcc61 => "AATCC 61",
        TestMethod::Aatcc8 => "AATCC 8",
        TestMethod::Iso105X12 => "ISO 105-X12",
        TestMethod::Iso6330 => "ISO 6330",
    }
}

/// The result of a test.
pub fn test_result_of(result: TestResult) -> &'static str {
    match result {
        TestResult::Waiting => result_waiting(),
        TestResult::Pass => result_pass(),
        TestResult::Fail => result_fail(),
    }
}

/// Why a test is due.
pub fn why_due(why: DueReason) -> &'static str {
    match why {
        DueReason::NeverPassed => why_never(),
        DueReason::Failed => why_failed(),
        DueReason::Dryer => why_dryer(),
        DueReason::Temperature => why_temperature(),
        DueReason::Sensor => why_sensor(),
        DueReason::Dwell => why_dwell(),
        DueReason::Passes => why_passes(),
        DueReason::Flash => why_flash(),
        DueReason::Sheet => why_sheet(),
    }
}

/// The verdict of a trial.
pub fn trial_verdict_of(verdict: TrialVerdict) -> &'static str {
    match verdict {
        TrialVerdict::Open => verdict_open(),
        TrialVerdict::Keep => verdict_keep(),
        TrialVerdict::Adjust => verdict_adjust(),
        TrialVerdict::Reject => verdict_reject(),
    }
}
