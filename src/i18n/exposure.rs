//! Messages: exposure times, tests, lamps, emulsions, and the ink volume of a mesh.

use super::format::{length, mesh_count, number, stopwatch, unit_seconds};
use super::locale::units;
use super::messages::messages;
use super::screens::sheet_dyed;
use lastpull_core::screen::{
    Coats, ExposureMethod, ExposureMethodKind, ExposureRefused, Family, HumidityEffect, LampKind, MeshCloth, MeshCount,
    MissingSheetValue, NoDistanceLaw, NoTestResult, RoomHumidity, TestAdvice,
};
use lastpull_core::time::Millis;
use lastpull_core::units::{LengthUnit, Seconds};

messages! {
    stencil_title { "Exposure and dip tank", "Exposición y tanque" }
    stencil_exposure { "Exposure", "Exposición" }
    stencil_bath { "Dip tank", "Tanque de inmersión" }
    stencil_volume { "Ink volume", "Volumen de tinta" }
    stencil_equipment { "Exposure units, emulsions", "Unidades y emulsiones" }
    stencil_times_known[n] { "saved time" | "saved times", "tiempo guardado" | "tiempos guardados" }
    stencil_no_times { "No times saved yet. Test once, then just look it up.", "Aún no hay tiempos. Prueba una vez y después solo consulta." }
    stencil_volume_sheets(full, all) { "{full} of {all} meshes have a complete data sheet", "{full} de {all} mallas tienen ficha completa" }
    stencil_volume_text { "What a mesh holds and what a run needs", "Lo que carga una malla y lo que pide un tiraje" }
    stencil_lamps[n] { "{n} exposure unit" | "{n} exposure units", "{n} unidad de exposición" | "{n} unidades de exposición" }
    stencil_emulsions[n] { "{n} emulsion" | "{n} emulsions", "{n} emulsión" | "{n} emulsiones" }
    stencil_who { "Who?", "¿Quién?" }

    exposure_title { "Exposure time", "Tiempo de exposición" }
    exposure_begin_title { "First, exposure unit and emulsion", "Primero, unidad y emulsión" }
    exposure_begin_text { "An exposure time is for one emulsion on one mesh in one exposure unit. Enter the unit and emulsion you work with.", "Un tiempo vale para una emulsión, una malla y una unidad de exposición. Anota la unidad y la emulsión con que trabajas." }
    exposure_mesh_wanted { "Pick a mesh to see the time.", "Elige una malla para ver el tiempo." }
    exposure_minutes(time) { "{time}\u{a0}min", "{time}\u{a0}min" }
    exposure_not_tested { "Calculated, not tested", "Calculado, sin probar" }
    exposure_not_known { "No time for this yet. Run a test first.", "Aún no hay tiempo para esto. Haz antes una prueba." }
    exposure_unknown { "No times for this emulsion yet. Run a test first.", "Aún no hay tiempos de esta emulsión. Haz antes una prueba." }
    exposure_nearest { "Closest known time", "El tiempo más parecido" }
    exposure_differs(what, there, here) { "{what}: {there} instead of {here}", "{what}: {there} en vez de {here}" }
    exposure_differs_unrecorded(what, there) { "{what}: {there}; yours not entered", "{what}: {there}; sin anotar en tu caso" }
    exposure_per_inch(n) { "{n}/in", "{n}/pulg." }
    exposure_per_centimetre(n) { "{n}/cm", "{n}/cm" }
    exposure_scaled(distance) { "Calculated for {distance}", "Calculado para {distance}" }
    exposure_scaled_text { "By the square of the distance, not tested: reflectors throw it off. Expose a 21-step scale before you trust it.", "Según el cuadrado de la distancia, sin probar: los reflectores cambian el resultado. Expón una escala de 21 pasos antes de confiar." }
    exposure_scaled_note { "Save this time", "Guardar este tiempo" }
    exposure_find { "Find it with a test", "Buscarlo con una prueba" }
    exposure_find_again { "Test again", "Probar otra vez" }
    exposure_correct { "Correct", "Corregir" }
    exposure_for { "For", "Para" }
    exposure_lamp { "Exposure unit", "Unidad de exposición" }
    exposure_coats_any { "Usual coats", "Las de siempre" }
    exposure_coats_of(print, squeegee) { "{print} print side, {squeegee} squeegee side", "{print} lado de impresión, {squeegee} lado de rasero" }
    exposure_distance { "Distance", "Distancia" }
    exposure_colour { "Mesh color", "Color de la malla" }
    exposure_white { "white", "blanca" }
    exposure_not_recorded { "not entered", "sin anotar" }
    exposure_other_mesh { "Other mesh", "Otra malla" }
    exposure_thread_um(um) { "thread {um}\u{a0}µm", "hilo {um}\u{a0}µm" }
    exposure_um { "µm", "µm" }
    exposure_list_title(n) { "All known times ({n})", "Todos los tiempos ({n})" }
    exposure_newer { "there is a newer one", "hay uno más nuevo" }
    exposure_caution { "Exposure units give off UV light. Keep the lid shut, never look in, protect eyes and skin. Unplug the unit and let it cool before you move it or change a lamp. Follow the manual; local rules for old lamps.", "La unidad de exposición da luz ultravioleta. Tapa cerrada, no mires dentro y protege ojos y piel. Desenchúfala y deja que se enfríe antes de moverla o cambiar el foco. Manda el manual; focos usados, según la norma local." }
    exposure_noted(time) { "Saved: {time}.", "Guardado ({time})." }
    exposure_corrected(time) { "Corrected: {time}.", "Corregido ({time})." }
    exposure_deleted(time) { "{time}: deleted.", "{time}: borrado." }
    exposure_gone { "a deleted exposure unit", "una unidad borrada" }

    exposure_found_guide(test, solid, goal) { "21-step scale: at {test}, step {solid} was the last solid one; target is step {goal}.", "Escala de 21 pasos: con {test}, el último paso sólido fue el {solid}; se busca el {goal}." }
    exposure_found_columns(test, percent) { "Column film: at {test}, the {percent}% column was best.", "Película de columnas: con {test}, la mejor fue la de {percent}\u{a0}% de luz." }
    exposure_found_distance(before, from) { "Calculated from {before} at {from}.", "Calculado desde {before} a {from}." }
    exposure_found_practice { "Known from shop practice.", "Conocido por la práctica del taller." }

    exposure_find_title { "Find the time", "Buscar el tiempo" }
    exposure_edit_title { "Edit time", "Editar tiempo" }
    exposure_how { "How do you know it?", "¿Cómo lo sabes?" }
    exposure_how_guide { "21-step scale", "Escala de 21 pasos" }
    exposure_how_columns { "Column film", "Película de columnas" }
    exposure_how_distance { "New distance", "Otra distancia" }
    exposure_how_practice { "Already known", "Ya se sabe" }
    exposure_test_time { "Test exposure", "Exposición de prueba" }
    exposure_old_time { "Old exposure time", "Tiempo anterior" }
    exposure_known_time { "Exposure time", "Tiempo de exposición" }
    exposure_from { "At distance", "A la distancia" }
    exposure_solid { "Last solid step after washout", "Último paso sólido tras revelar" }
    exposure_solid_none { "None", "Ninguno" }
    exposure_solid_hint(goal) { "On a 21-step scale. Target: step {goal}.", "De una escala de 21 pasos. Se busca el paso {goal}." }
    exposure_factor { "Best column (percent of the light)", "Mejor columna (porcentaje de luz)" }
    exposure_factor_typed { "Column as a decimal", "Columna en decimal" }
    exposure_factor_hint { "The column with the least light whose color is the same as with more light, with all its detail.", "La de menos luz con el mismo color que las de más luz y con todo el detalle." }
    exposure_preview { "Expose for", "Exponer" }
    exposure_times(factor) { "× {factor}", "× {factor}" }
    exposure_preview_wait { "Fill in the test to see the time.", "Llena la prueba para ver el tiempo." }
    exposure_advice_confirm { "Expose one screen at this time and check it before you rely on it.", "Expón una pantalla con este tiempo y revísala antes de confiar." }
    exposure_advice_again { "That's far from the test time: test once more at this time.", "Queda lejos de la prueba: prueba otra vez con este tiempo." }
    exposure_advice_longer { "The best column was the one with most light: the right time may be longer still. Test with more.", "La mejor columna fue la de más luz: puede hacer falta más. Prueba con más tiempo." }
    exposure_advice_shorter { "The best column was the one with least light: the right time may be shorter still. Test with less.", "La mejor columna fue la de menos luz: puede bastar menos. Prueba con menos tiempo." }
    exposure_advice_distance { "Calculated, not tested: expose a 21-step scale at this time before you trust it.", "Calculado, sin probar: expón una escala de 21 pasos con este tiempo antes de confiar." }
    exposure_refused_nothing { "Not even step 1 held: expose the test much longer.", "No aguantó ni el primer paso: expón la prueba mucho más." }
    exposure_refused_all { "Every step held, so there is no last step to read: expose the test much shorter.", "Aguantaron todos los pasos y no se ve el último: expón la prueba mucho menos." }
    exposure_refused_reach { "That gives a time no exposure unit runs. Check what you typed.", "Sale un tiempo que ninguna unidad de exposición da. Revisa lo escrito." }
    exposure_no_law_tubes { "No calculation for tubes: their light doesn't fall off with distance like a single bulb. Test at the new distance.", "Para tubos no se calcula: su luz no baja con la distancia como la de un solo foco. Prueba a la nueva distancia." }
    exposure_no_law_panel { "No calculation for an LED panel: its light doesn't fall off with distance like a single bulb. Test at the new distance.", "Para un panel LED no se calcula: su luz no baja con la distancia como la de un solo foco. Prueba a la nueva distancia." }
    exposure_no_law_contact { "A contact unit has no distance to change.", "En una mesa de contacto no hay distancia que cambiar." }
    exposure_no_law_unknown { "No distance entered for this exposure unit yet. Add it first.", "Falta la distancia de esta unidad. Anótala primero." }
    exposure_which { "Emulsion, mesh and exposure unit", "Emulsión, malla y unidad" }
    sheet_may_stay_empty { "From the data sheet; can stay blank.", "De la ficha; puede quedar vacío." }
    exposure_pick_one { "Pick one.", "Elige una." }

    damp_title { "Screen room humidity", "Humedad del cuarto" }
    damp_not_read { "No reading in the last two hours. Humidity changes exposure: log one first.", "Sin lectura en las últimas dos horas. La humedad cambia la exposición: mide antes." }
    damp_read { "Log a reading", "Anotar lectura" }
    damp_dry(percent) { "{percent}% humidity: dry enough for coated screens.", "{percent}\u{a0}% de humedad: seco para pantallas emulsionadas." }
    damp_more(percent) { "{percent}% humidity: this emulsion hardens slower in damp air and needs more time. Better to dry the screen.", "{percent}\u{a0}% de humedad: esta emulsión endurece más despacio y pide más tiempo. Mejor secar la pantalla." }
    damp_less(percent) { "{percent}% humidity: this emulsion hardens faster in damp air, but the stencil ends up weak. Dry the screen first.", "{percent}\u{a0}% de humedad: esta emulsión endurece antes y aun así queda débil. Seca antes la pantalla." }

    edge_title { "Light at the corners", "Luz en las esquinas" }
    edge_text { "Inside of the frame, centered under the lamp:", "Interior del marco bajo el centro de la lámpara:" }
    edge_width { "Width", "Ancho" }
    edge_length { "Length", "Largo" }
    edge_answer(bulb, flat) { "Corners get {bulb}% less light than the center under a bare bulb, {flat}% less under a small flat light.", "Las esquinas reciben un {bulb}\u{a0}% menos que el centro con un foco desnudo, un {flat}\u{a0}% menos con una luz plana pequeña." }
    edge_refused { "No calculation for this kind of lamp: put a 21-step scale in a corner and one in the middle.", "Para este tipo de lámpara no se calcula: pon una escala de 21 pasos en una esquina y otra en el centro." }

    equipment_lamps { "Exposure units", "Unidades de exposición" }
    equipment_lamps_none { "No exposure unit yet. Enter the one you use.", "Aún no hay unidad de exposición. Anota la que usas." }
    equipment_emulsions { "Emulsions", "Emulsiones" }
    equipment_emulsions_none { "No emulsion yet. Enter the one in the bucket.", "Aún no hay emulsiones. Anota la de la cubeta." }
    equipment_times[n] { "{n} saved time" | "{n} saved times", "{n} tiempo guardado" | "{n} tiempos guardados" }
    equipment_goal_title { "Target step", "Paso que se busca" }
    equipment_goal_text { "The last step of a 21-step scale that should stay solid. Step 7 is the published minimum for a hard stencil.", "El último paso de una escala de 21 que debe quedar sólido. El paso 7 es el mínimo publicado para un esténcil duro." }
    equipment_goal { "Step", "Paso" }
    equipment_goal_saved(step) { "Target: step {step}.", "Se busca el paso {step}." }
    lamp_new { "Add exposure unit", "Agregar unidad" }
    lamp_name { "Name", "Nombre" }
    lamp_name_hint { "What you call it in the shop.", "Como le dicen en el taller." }
    lamp_kind { "Light type", "Tipo de luz" }
    lamp_point { "Single bulb", "Un foco" }
    lamp_tubes { "Tubes", "Tubos" }
    lamp_panel { "LED panel", "Panel LED" }
    lamp_contact { "Contact unit", "Mesa de contacto" }
    lamp_distance { "Light to emulsion", "De la luz a la emulsión" }
    lamp_distance_hint { "Times are for this distance.", "Los tiempos valen para esta distancia." }
    lamp_deleted(name) { "{name}: exposure unit deleted.", "{name}: unidad borrada." }
    emulsion_new { "Add emulsion", "Agregar emulsión" }
    emulsion_family { "Emulsion type", "Tipo de emulsión" }
    emulsion_family_hint { "It's on the label or data sheet. Damp air affects each type differently.", "Lo dice la etiqueta o la ficha. El aire húmedo afecta distinto a cada tipo." }
    emulsion_diazo { "Diazo", "Diazo" }
    emulsion_dual { "Dual-cure", "Doble curado" }
    emulsion_photopolymer { "Photopolymer", "Fotopolímero" }
    emulsion_solids { "Solids", "Sólidos" }
    emulsion_percent { "%", "%" }
    emulsion_deleted(name) { "{name}: emulsion deleted.", "{name}: emulsión borrada." }

    volume_on(labels) { "Screens {labels}", "Pantallas {labels}" }
    volume_unit { "cm³/m²", "cm³/m²" }
    volume_wet(um) { "Wet film {um}\u{a0}µm thick.", "Película húmeda de {um}\u{a0}µm." }
    volume_sheet_area(percent) { "{percent}% open area, from the data sheet.", "{percent}\u{a0}% de área abierta, según la ficha." }
    volume_own_area(percent) { "{percent}% open area, calculated from the data sheet's opening and count.", "{percent}\u{a0}% de área abierta, calculada con la luz de malla y los hilos de la ficha." }
    volume_theory { "Theoretical. What a print really uses differs: weigh it.", "En teoría. Lo que gasta un estampado varía: pésalo." }
    volume_lacks_area { "The data sheet needs open area or mesh opening. Thread diameter can't replace them: woven threads flatten. Look them up on the mesh data sheet.", "Falta el área abierta o la luz de malla. El diámetro del hilo no basta: al tejerse se aplasta. Búscalas en la ficha de la malla." }
    volume_lacks_thickness { "The thickness of the woven mesh is missing. Look it up on the mesh data sheet.", "Falta el espesor de la malla tejida. Búscalo en la ficha de la malla." }
    volume_type_count { "Enter what the mesh data sheet says.", "Escribe lo que dice la ficha de la malla." }
    volume_none { "No screen has a mesh entered yet. Enter what a data sheet says.", "Ninguna pantalla tiene malla anotada. Escribe lo que dice una ficha." }
    volume_count { "Mesh count", "Hilos" }
    volume_need_title { "Ink for a run", "Tinta para un tiraje" }
    volume_width { "Art width", "Ancho del arte" }
    volume_height { "Art height", "Alto del arte" }
    volume_coverage { "Ink coverage", "Área con tinta" }
    volume_transfer { "Ink transfer", "Traspaso de tinta" }
    volume_transfer_hint { "Percent of what the mesh holds; over 100 where the fabric soaks it up.", "De lo que carga la malla; más de 100 si la tela absorbe." }
    volume_density { "Ink density", "Densidad de la tinta" }
    volume_density_unit { "g/cm³", "g/cm³" }
    volume_finer { "Strokes, transfer, density", "Manos, traspaso, densidad" }
    volume_grams(grams) { "{grams}\u{a0}g", "{grams}\u{a0}g" }
    volume_need(print, cm3) { "{print}\u{a0}g per print, {cm3}\u{a0}cm³ total.", "{print}\u{a0}g por estampado, {cm3}\u{a0}cm³ en total." }
    volume_prints(n) { "One kilogram prints {n}.", "Con un kilo salen {n}." }
    volume_without { "Not counting what stays in container, screen and flood.", "Sin contar lo que queda en recipiente, pantalla y rasero." }
    volume_need_wait { "Enter art size and pieces.", "Pon el tamaño del arte y las prendas." }
    volume_weighed { "Ink used (weighed after the run)", "Tinta usada (pesada al final)" }
    volume_weighed_hint { "Shows how much really goes onto the garment.", "Muestra cuánto pasa de verdad a la prenda." }
    volume_real_transfer(percent) { "That was {percent}%.", "Fue un {percent}\u{a0}%." }
    volume_take_transfer { "Use this number", "Usar este dato" }
    unit_grams { "g", "g" }
}

/// An exposure time in seconds.
pub fn exposure_seconds(time: Seconds) -> String {
    let decimals = usize::from(time.seconds() < 20.0);
    format!("{}\u{a0}{}", number(time.seconds(), decimals), unit_seconds())
}

/// The same in minutes and seconds; `None` below one minute.
pub fn exposure_clock(time: Seconds) -> Option<String> {
    let whole = Millis::from_seconds(time.seconds().round());
    (whole >= Millis::from_minutes(1)).then(|| exposure_minutes(stopwatch(whole)))
}

/// A mesh: count, thread and colour.
pub fn cloth(cloth: &MeshCloth) -> String {
    let mut text = mesh_count(cloth.count);
    if let Some(um) = cloth.thread_um {
        text = format!("{text}, {}", exposure_thread_um(um));
    }
    if cloth.dyed { format!("{text}, {}", sheet_dyed()) } else { text }
}

/// A mesh in short form: count, with the unit only if it is not the device's, and
/// thread.
pub fn cloth_short(cloth: &MeshCloth) -> String {
    let count = match (cloth.count, units().length) {
        (MeshCount::PerInch(threads), LengthUnit::Centimetres) => exposure_per_inch(threads),
        (MeshCount::PerCentimetre(threads), LengthUnit::Inches) => exposure_per_centimetre(threads),
        (MeshCount::PerInch(threads) | MeshCount::PerCentimetre(threads), _) => threads.to_string(),
    };
    let text = cloth.thread_um.map_or(count.clone(), |um| format!("{count} · {um}\u{a0}µm"));
    if cloth.dyed { format!("{text}, {}", sheet_dyed()) } else { text }
}

/// Number of coats on both sides.
pub fn coats(coats: Coats) -> String {
    exposure_coats_of(coats.print, coats.squeegee)
}

/// How an exposure time was found.
pub fn found(found: ExposureMethod) -> String {
    match found {
        ExposureMethod::StepGuide { test, solid, goal } => exposure_found_guide(exposure_seconds(test), solid, goal),
        ExposureMethod::Columns { test, percent } => exposure_found_columns(exposure_seconds(test), percent),
        ExposureMethod::Distance { before, from } => exposure_found_distance(exposure_seconds(before), length(from)),
        ExposureMethod::Practice => exposure_found_practice().into(),
    }
}

/// The name of a method of finding an exposure time.
pub fn found_kind(kind: ExposureMethodKind) -> &'static str {
    match kind {
        ExposureMethodKind::StepGuide => exposure_how_guide(),
        ExposureMethodKind::Columns => exposure_how_columns(),
        ExposureMethodKind::Distance => exposure_how_distance(),
        ExposureMethodKind::Practice => exposure_how_practice(),
    }
}

/// What to do before a test reading is relied on.
pub fn test_advice(found: ExposureMethod, advice: TestAdvice) -> &'static str {
    match advice {
        _ if !found.is_tested() => exposure_advice_distance(),
        TestAdvice::Confirm => exposure_advice_confirm(),
        TestAdvice::TestAgain => exposure_advice_again(),
        TestAdvice::TestLonger => exposure_advice_longer(),
        TestAdvice::TestShorter => exposure_advice_shorter(),
    }
}

/// Why no time can be computed from a test.
pub fn exposure_refused(refused: ExposureRefused) -> &'static str {
    match refused {
        ExposureRefused::Test(NoTestResult::NothingHeld) => exposure_refused_nothing(),
        ExposureRefused::Test(NoTestResult::AllHeld) => exposure_refused_all(),
        ExposureRefused::Test(NoTestResult::OutOfReach) => exposure_refused_reach(),
        ExposureRefused::Distance(law) => no_distance_law(law),
    }
}

/// Why no time can be computed for another distance.
pub fn no_distance_law(law: NoDistanceLaw) -> &'static str {
    match law {
        NoDistanceLaw::Tubes => exposure_no_law_tubes(),
        NoDistanceLaw::Panel => exposure_no_law_panel(),
        NoDistanceLaw::Contact => exposure_no_law_contact(),
        NoDistanceLaw::NotKnown => exposure_no_law_unknown(),
    }
}

/// What the room's humidity means for an exposure.
pub fn damp(damp: RoomHumidity) -> String {
    let percent = damp.humidity.unwrap_or_default();
    match damp.note {
        HumidityEffect::NotRead => damp_not_read().into(),
        HumidityEffect::Dry => damp_dry(percent),
        HumidityEffect::MoreTime => damp_more(percent),
        HumidityEffect::LessTimeButWeak => damp_less(percent),
    }
}

/// The name of a kind of lamp.
pub fn lamp_kind_name(kind: LampKind) -> &'static str {
    match kind {
        LampKind::Point => lamp_point(),
        LampKind::Tubes => lamp_tubes(),
        LampKind::Panel => lamp_panel(),
        LampKind::Contact => lamp_contact(),
    }
}

/// The name of an emulsion family.
pub fn emulsion_family_name(family: Family) -> &'static str {
    match family {
        Family::Diazo => emulsion_diazo(),
        Family::DualCure => emulsion_dual(),
        Family::Photopolymer => emulsion_photopolymer(),
    }
}

/// What is missing on the data sheet.
pub fn sheet_lacks(lacks: MissingSheetValue) -> &'static str {
    match lacks {
        MissingSheetValue::OpenArea => volume_lacks_area(),
        MissingSheetValue::Thickness => volume_lacks_thickness(),
    }
}
