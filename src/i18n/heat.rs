//! Messages: dryers and flash units, ink data sheets, limits of fabrics, settling times, tests and trials.

use super::format::{number, seconds, temperature, unit_temperature};
use super::locale::units;
use super::messages::messages;
use lastpull_core::heat::{
    DueReason, HeaterKind, LimitKind, LimitOrigin, SensorMethod, SheetFigures, TestKind, TestMethod, TestResult,
    TrialVerdict,
};
use lastpull_core::job::Fabric;
use lastpull_core::units::TemperatureDelta;

messages! {
    heat_title { "Heat", "Calor" }
    heat_text { "Dryer, cure, fabric limits, shop heat", "Horno, curado, límites de tela, calor del taller" }
    heat_caution {
        "Dryer, flash and platens burn, even when switched off. Never reach into a running dryer; wear heat-rated gloves. Follow the manufacturer's manual.",
        "El horno, el flash y las paletas queman, aun apagados. Nunca metas la mano en un horno en marcha; usa guantes para calor. Manda el manual del fabricante."
    }
    heat_no_promise { "Calculated numbers don't prove a cure. Only a wash test does.", "Los cálculos no garantizan el curado. Decide la prueba de lavado." }
    fabric_this { "this fabric", "esta tela" }
    source_makers_bulletin { "an ink manufacturer's bulletin", "boletín de un fabricante de tintas" }
    source_trade_glossary { "a trade glossary", "glosario del oficio" }
    source_distributors_page { "a garment distributor's page", "página de un distribuidor de prendas" }
    source_common_practice { "common practice, no source", "práctica común, sin fuente" }
    source_if_polyester { "only if the canvas is polyester: check the label", "solo si la lona es de poliéster: revisa la etiqueta" }
    source_our_own { "our own caution, no figure found", "precaución nuestra, sin cifra publicada" }
    source_shop { "your own limit", "tu propio límite" }
    source_ink_sheet { "the ink data sheet", "ficha de la tinta" }
    limit_dye { "Dye migration", "Migración del tinte" }
    limit_dye_hint { "It may not show until days later.", "A veces se nota días después." }
    limit_scorch { "Scorching, shine or shrinkage", "Quemado, brillo o encogimiento" }
    units_title { "Dryers and flash units", "Hornos y flashes" }
    units_none_title { "No dryer yet", "Aún no hay horno" }
    units_none_text { "Add your dryer: its heated length gives the dwell time, and the changes you time show how long it takes to heat up or cool down.", "Agrega tu horno: el largo con calor da el tiempo en el horno, y los cambios que cronometras dicen cuánto tarda en calentar o enfriar." }
    unit_add { "Add a unit", "Agregar equipo" }
    unit_new { "New dryer or flash", "Horno o flash nuevo" }
    unit_edit { "Edit unit", "Editar equipo" }
    unit_kind { "Type", "Tipo" }
    unit_dryer { "Dryer", "Horno" }
    unit_flash { "Flash unit", "Flash" }
    unit_name { "Name", "Nombre" }
    unit_heated { "Heated length", "Largo con calor" }
    unit_heated_hint { "Only the part under heat: from the manual, or with a tape measure when it's cold.", "Solo la parte bajo calor: según el manual, o con cinta métrica en frío." }
    unit_slowest { "Min belt speed", "Velocidad mínima" }
    unit_fastest { "Max belt speed", "Velocidad máxima" }
    unit_deleted(name) { "{name}: deleted.", "{name}: borrado." }
    unit_made { "Your dryer was added as “Dryer”. Enter its heated length under Heat.", "Tu horno se agregó como «Horno». Pon su largo con calor en Calor." }
    belt_range(slow, fast) { "{slow} to {fast}", "de {slow} a {fast}" }
    belt_from(slow) { "from {slow}", "desde {slow}" }
    belt_up_to(fast) { "up to {fast}", "hasta {fast}" }
    belt_runs { "Belt", "Banda" }
    unit_error { "Offset at the print", "Diferencia en el estampado" }
    error_none { "never measured", "sin medir" }
    error_none_hint { "Until you measure it, cure can't be estimated.", "Hasta medirla no se sabe si la tinta cura." }
    error_hotter(degrees) { "{degrees} hotter than set", "{degrees} más que lo ajustado" }
    error_cooler(degrees) { "{degrees} cooler than set", "{degrees} menos que lo ajustado" }
    error_exact { "same as set", "igual que lo ajustado" }
    measured_how(method, setting, when) { "{method}, at {setting}, {when}", "{method}, a {setting}, {when}" }
    measure { "Measure", "Medir" }
    measure_title(name) { "Measure {name}", "Medir {name}" }
    measure_text { "Run a probe or temperature strip through on a garment, where the print goes. The dryer display shows the air, not the ink.", "Pasa una sonda o una tira de temperatura sobre una prenda, donde va el estampado. Lo que marca el horno es el aire, no la tinta." }
    measure_setting { "Set to", "Ajustado a" }
    measure_found { "Peak at the print", "Máximo en el estampado" }
    measure_method { "Measured with", "Medido con" }
    method_probe { "Probe", "Sonda" }
    method_strip { "Strip", "Tira" }
    method_infrared { "Infrared", "Infrarrojo" }
    method_infrared_hint { "Infrared reads the surface at the exit, where it's already cooling: it can never clear a fabric.", "El infrarrojo lee la superficie a la salida, cuando ya se enfría: nunca da por buena una tela." }
    measured_before { "Earlier measurements", "Mediciones anteriores" }
    measure_undo { "Undo the last one", "Deshacer la última" }
    measure_undone { "Last measurement undone.", "Última medición deshecha." }
    sheets_title { "Ink data sheets", "Fichas de tinta" }
    sheets_count[n] { "{n} ink" | "{n} inks", "{n} tinta" | "{n} tintas" }
    sheets_missing[n] { "{n} upcoming ink has none" | "{n} upcoming inks have none", "falta la de {n} tinta" | "faltan las de {n} tintas" }
    sheets_none_title { "No data sheets yet", "Aún no hay fichas" }
    sheets_none_text { "Copy cure temperature and time from the manufacturer's data sheet of each water-based ink you print. Use the same ink name as on your runs.", "Copia la temperatura y el tiempo de curado de la ficha de cada tinta a base de agua. Usa el mismo nombre que en tus tirajes." }
    sheet_wanted { "Printing soon, no data sheet", "Se imprimen pronto, sin ficha" }
    sheet_add { "Add data sheet", "Agregar ficha" }
    sheet_new { "New ink data sheet", "Ficha de tinta nueva" }
    sheet_edit { "Edit data sheet", "Editar ficha" }
    sheet_ink_hint { "Same name as on your runs.", "El mismo nombre que en tus tirajes." }
    sheet_water_based { "Made for water-based ink. For any other ink, go by its data sheet alone.", "Para tintas a base de agua. Con otra tinta, guíate solo por su ficha." }
    sheet_cure { "Cure temp.", "Temp. de curado" }
    sheet_cure_hint { "Temperature of the ink, not the dryer.", "Temperatura de la tinta, no del horno." }
    sheet_hold { "Hold time", "Tiempo mínimo" }
    sheet_hold_hint { "0 if the data sheet gives no time.", "0 si la ficha no da tiempo." }
    sheet_flash { "Flash temp.", "Temp. de flash" }
    sheet_highest { "Max temp.", "Temp. máxima" }
    sheet_source { "Data sheet", "Ficha técnica" }
    sheet_source_hint { "Manufacturer's sheet, its number, where it's kept.", "Ficha del fabricante, número, dónde se guarda." }
    sheet_day { "Data sheet date", "Fecha de la ficha" }
    sheet_line(cure, hold) { "{cure} for {hold}", "{cure} durante {hold}" }
    sheet_no_cure { "no cure temperature yet", "sin temperatura de curado" }
    sheet_deleted(ink) { "{ink}: data sheet deleted.", "{ink}: ficha borrada." }
    limits_title { "Fabric heat limits", "Límites de cada tela" }
    limits_short { "Dye migration and scorching", "Migración del tinte y quemado" }
    limits_text { "At this print temperature or above, the limit is passed. Where published figures differ, the lower one is used until you set your own.", "Con esta temperatura del estampado o más, el límite se pasa. Si las cifras publicadas difieren, vale la menor hasta que pongas la tuya." }
    limits_own[n] { "{n} of your own" | "{n} of your own", "{n} tuyo" | "{n} tuyos" }
    limit_from(temperature) { "from {temperature}", "desde {temperature}" }
    limit_also(temperature, source) { "Also published: {temperature}, {source}.", "También publicado: {temperature}, {source}." }
    limit_instead(temperature, source) { "Instead of {temperature}, {source}.", "En lugar de {temperature}, {source}." }
    limit_raised { "above the cautious default", "por encima del valor prudente" }
    limit_edit_title(fabric, what) { "{fabric}: {what}", "{fabric}: {what}" }
    limit_stands { "Current limit", "Límite actual" }
    limit_temperature { "Your own limit", "Tu límite" }
    limit_temperature_hint { "Print temperature, by strip or probe. Blank: the cautious default.", "Del estampado, según tira o sonda. Vacío: el valor prudente." }
    limit_note { "Reason or data sheet", "Motivo o ficha" }
    limit_note_hint { "Garment data sheet, your own trial, a blocking ink.", "Ficha de la prenda, un ensayo propio, una tinta de bloqueo." }
    limit_back { "Use cautious default", "Usar valor prudente" }
    limit_is_default { "Back to the cautious default.", "De vuelta al valor prudente." }
    limit_caution { "Go above the cautious default only on the garment manufacturer's word, or after a test print was left for several days.", "Pasa del valor prudente solo con la ficha de la prenda o tras dejar una prueba impresa varios días." }
    settlings_title { "Heat-up and cool-down", "Calentar y enfriar" }
    settlings_text { "Each change you time here makes the wait estimate fit your dryer.", "Cada cambio que cronometras ajusta la espera estimada a tu horno." }
    settlings_none { "No changes timed yet. Start the timer at a run's checks, or enter one you timed.", "Aún no hay cambios cronometrados. Inicia el cronómetro en las revisiones de un tiraje, o anota uno." }
    settlings_count[n] { "{n} change timed" | "{n} changes timed", "{n} cambio cronometrado" | "{n} cambios cronometrados" }
    settling_add { "Enter a time", "Anotar un tiempo" }
    settling_dryer { "Dryer", "Horno" }
    settling_from { "From", "De" }
    settling_to { "To", "A" }
    settling_minutes { "Time taken", "Tardó" }
    settling_untimed { "time not saved", "tiempo no guardado" }
    settling_not_counted { "not counted: too long or too short for a dryer", "no cuenta: demasiado largo o corto para un horno" }
    settling_running { "timing now", "cronometrando" }
    settling_deleted { "Timing deleted.", "Tiempo borrado." }
    settling_way(from, to) { "{from} → {to}", "{from} → {to}" }
    tests_title { "Wash and rub tests", "Pruebas de lavado y frote" }
    tests_none_title { "No tests yet", "Aún no hay pruebas" }
    tests_none_text { "Print one extra, wash it the way the client will, and log the result. Nothing else proves the cure.", "Imprime una de más, lávala como lo hará el cliente y anota el resultado. Solo eso demuestra el curado." }
    tests_due_count[n] { "{n} due" | "{n} due", "{n} pendiente" | "{n} pendientes" }
    tests_none_due { "none due", "ninguna pendiente" }
    tests_due { "Due", "Pendientes" }
    tests_log { "Done", "Hechas" }
    test_add { "Log a test", "Anotar prueba" }
    test_new { "New test", "Prueba nueva" }
    test_edit { "Edit test", "Editar prueba" }
    test_of(ink, fabric) { "{ink} on {fabric}", "{ink} en {fabric}" }
    test_kind { "Test type", "Tipo de prueba" }
    kind_wash { "Wash", "Lavado" }
    kind_crock { "Rub", "Frote" }
    kind_stretch { "Stretch", "Estirado" }
    test_method { "Method", "Método" }
    method_own { "Our own method", "Método propio" }
    test_method_note { "Procedure", "Procedimiento" }
    test_method_note_hint { "Temperature, cycle, cloth; compare with an unwashed one.", "Temperatura, ciclo, paño; compara con una sin lavar." }
    test_times_wash { "Washes", "Lavados" }
    test_times_rub { "Rubs", "Frotadas" }
    test_times_stretch { "Times stretched", "Veces estirada" }
    test_home_washes[n] { "About {n} home wash." | "About {n} home washes.", "Equivale a {n} lavado en casa." | "Equivale a unos {n} lavados en casa." }
    test_result { "Status", "Estado" }
    result_waiting { "In progress", "En curso" }
    result_pass { "Passed", "Superada" }
    result_fail { "Failed", "No superada" }
    test_grade { "Grade", "Grado" }
    test_grade_hint { "Gray scale, 1 to 5 in half steps.", "Escala de grises, de 1 a 5 por medios." }
    test_by { "Tested by", "Quién prueba" }
    test_went_through { "Printed with", "Impresa con" }
    test_photos { "Before and after", "Antes y después" }
    test_deleted { "Test deleted.", "Prueba borrada." }
    why_never { "never passed", "nunca superada" }
    why_failed { "last one failed", "la última falló" }
    why_dryer { "different dryer", "otro horno" }
    why_temperature { "different dryer temperature", "otra temperatura del horno" }
    why_sensor { "dryer offset changed", "cambió la diferencia del horno" }
    why_dwell { "different dwell time", "otro tiempo en el horno" }
    why_passes { "different number of passes", "otro número de vueltas" }
    why_flash { "different flash", "otro flash" }
    why_sheet { "ink data sheet changed", "cambió la ficha de la tinta" }
    trials_title { "Trials", "Ensayos" }
    trials_count[n] { "{n} trial" | "{n} trials", "{n} ensayo" | "{n} ensayos" }
    trials_none_title { "No trials yet", "Aún no hay ensayos" }
    trials_none_text { "New ink, other fabric, hotter flash: log how you printed it and how it came out, and it shows up on the next run like it.", "Tinta nueva, otra tela, más flash: anota cómo se imprimió y cómo salió, y aparece en el próximo tiraje parecido." }
    trial_add { "Log a trial", "Anotar ensayo" }
    trial_new { "New trial", "Ensayo nuevo" }
    trial_edit { "Edit trial", "Editar ensayo" }
    trial_outcome { "Result", "Resultado" }
    trial_verdict { "Your call", "Tu decisión" }
    verdict_open { "Undecided", "Por decidir" }
    verdict_keep { "Good to print", "Imprimir así" }
    verdict_adjust { "Adjust and retest", "Ajustar y repetir" }
    verdict_reject { "Don't use", "No usar" }
    trial_by { "Tried by", "Quién lo probó" }
    trial_flash_hint { "Seconds; blank for none.", "Segundos; vacío si no hay." }
    trial_deleted { "Trial deleted.", "Ensayo borrado." }
}

/// How an ink cures, by its data sheet.
pub fn sheet_cure_words(figures: &SheetFigures) -> String {
    match (figures.cure, figures.hold) {
        (Some(cure), Some(hold)) => sheet_line(temperature(cure), seconds(hold)),
        (Some(cure), None) => temperature(cure),
        (None, _) => sheet_no_cure().into(),
    }
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
