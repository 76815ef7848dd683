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
use lastpull_core::units::{Seconds, Units};

messages! {
    stencil_title { "Exposure and bath", "Insolado y baño" }
    stencil_exposure { "Exposure", "Insolado" }
    stencil_bath { "Reclaim bath", "Baño de recuperado" }
    stencil_volume { "Ink volume", "Volumen de tinta" }
    stencil_equipment { "Lamps and emulsions", "Lámparas y emulsiones" }
    stencil_times_known[n] { "time known" | "times known", "tiempo conocido" | "tiempos conocidos" }
    stencil_no_times { "No time known yet. Test once, look it up ever after.", "Aún no hay tiempos. Haz una prueba y consúltala siempre." }
    stencil_volume_sheets(full, all) { "{full} of {all} meshes have a data sheet that tells", "{full} de {all} mallas tienen ficha suficiente" }
    stencil_volume_text { "What a mesh holds, and what a run needs", "Lo que carga una malla y lo que pide una tirada" }
    stencil_lamps[n] { "{n} lamp" | "{n} lamps", "{n} lámpara" | "{n} lámparas" }
    stencil_emulsions[n] { "{n} emulsion" | "{n} emulsions", "{n} emulsión" | "{n} emulsiones" }
    stencil_who { "Who?", "¿Quién?" }

    exposure_title { "How long to expose", "Cuánto insolar" }
    exposure_begin_title { "First a lamp and an emulsion", "Primero, lámpara y emulsión" }
    exposure_begin_text { "A time holds for one emulsion on one mesh under one lamp. Enter the lamp and the emulsion you work with.", "Un tiempo vale para una emulsión, en una malla y con una lámpara. Anota la lámpara y la emulsión con que trabajas." }
    exposure_mesh_wanted { "Say which mesh, and the time stands here.", "Di qué malla es y aquí sale el tiempo." }
    exposure_minutes(time) { "{time}\u{a0}min", "{time}\u{a0}min" }
    exposure_not_tested { "Computed, not tested", "Calculado, sin probar" }
    exposure_not_known { "Not known for this. Test it first.", "No se conoce para esto. Haz antes una prueba." }
    exposure_unknown { "Nothing is known of this emulsion yet. Test it first.", "Aún no se sabe nada de esta emulsión. Haz antes una prueba." }
    exposure_nearest { "The nearest that is known", "Lo más parecido que se conoce" }
    exposure_differs(what, there, here) { "{what}: {there} instead of {here}", "{what}: {there} en vez de {here}" }
    exposure_differs_unrecorded(what, there) { "{what}: {there}; yours is not recorded", "{what}: {there}; el tuyo está sin anotar" }
    exposure_per_inch(n) { "{n}/in", "{n}/pulg." }
    exposure_per_centimetre(n) { "{n}/cm", "{n}/cm" }
    exposure_scaled(distance) { "Computed for {distance}", "Calculado para {distance}" }
    exposure_scaled_text { "From the square of the distance, untested: reflectors bend that law. Expose a guide before you trust it.", "Por el cuadrado de la distancia, sin probar: los reflectores alteran esa ley. Insola una escala antes de fiarte." }
    exposure_scaled_note { "Note this time", "Anotar este tiempo" }
    exposure_find { "Find the time by a test", "Buscarlo con una prueba" }
    exposure_find_again { "Test again", "Probar otra vez" }
    exposure_correct { "Correct", "Corregir" }
    exposure_for { "For", "Para" }
    exposure_lamp { "Lamp", "Lámpara" }
    exposure_coats_any { "As usual", "Las de siempre" }
    exposure_coats_of(print, squeegee) { "{print} print side, {squeegee} squeegee side", "{print} lado impresión, {squeegee} lado racleta" }
    exposure_distance { "Distance", "Distancia" }
    exposure_colour { "Colour of the mesh", "Color de la malla" }
    exposure_white { "white", "blanca" }
    exposure_not_recorded { "not recorded", "sin anotar" }
    exposure_other_mesh { "Another mesh", "Otra malla" }
    exposure_thread_um(um) { "thread {um}\u{a0}µm", "hilo {um}\u{a0}µm" }
    exposure_um { "µm", "µm" }
    exposure_list_title(n) { "All known times ({n})", "Todos los tiempos ({n})" }
    exposure_newer { "a newer one is known", "hay uno más nuevo" }
    exposure_caution { "An exposing lamp gives off ultraviolet light. Keep the cover shut, never look into it, and guard eyes and skin; the lamp's manual decides.", "La lámpara de insolar da luz ultravioleta. Tapa cerrada, no mires dentro y protege ojos y piel; manda el manual de la lámpara." }
    exposure_noted(time) { "Noted: {time}.", "Anotado: {time}." }
    exposure_corrected(time) { "Corrected: {time}.", "Corregido: {time}." }
    exposure_deleted(time) { "{time}: deleted.", "{time}: borrado." }
    exposure_gone { "a lamp that was deleted", "una lámpara borrada" }

    exposure_found_guide(test, solid, goal) { "From a step guide: at {test} step {solid} was the last solid one; the aim is step {goal}.", "De una escala: con {test} el último paso sólido fue el {solid}; se busca el {goal}." }
    exposure_found_columns(test, percent) { "From a calculator film: at {test} the column with {percent} % of the light was best.", "De una película de columnas: con {test} la mejor fue la de {percent} % de luz." }
    exposure_found_distance(before, from) { "Computed from {before} at {from}.", "Calculado desde {before} a {from}." }
    exposure_found_practice { "Known from the shop's practice.", "Conocido por la práctica del taller." }

    exposure_find_title { "Find the time", "Buscar el tiempo" }
    exposure_edit_title { "A known time", "Un tiempo conocido" }
    exposure_how { "How do you know?", "¿Cómo lo sabes?" }
    exposure_how_guide { "Step guide", "Escala de pasos" }
    exposure_how_columns { "Calculator film", "Película de columnas" }
    exposure_how_distance { "Lamp moved", "Lámpara movida" }
    exposure_how_practice { "We know it", "Ya lo sabemos" }
    exposure_test_time { "The test was exposed for", "La prueba se insoló" }
    exposure_old_time { "Right until now", "Hasta ahora, bien con" }
    exposure_known_time { "It takes", "Tarda" }
    exposure_from { "At the distance", "A la distancia" }
    exposure_solid { "Last step that stayed solid after washing", "Último paso sólido tras revelar" }
    exposure_solid_none { "None", "Ninguno" }
    exposure_solid_hint(goal) { "Of a guide of 21 steps. Aimed at: step {goal}.", "De una escala de 21 pasos. Se busca el paso {goal}." }
    exposure_factor { "Best column, as a share of the light", "Mejor columna, en parte de la luz" }
    exposure_factor_typed { "Its share", "Su parte" }
    exposure_factor_hint { "The first, from most light to least, whose colour no longer changes and whose detail is all there.", "La primera, de más luz a menos, cuyo color ya no cambia y que conserva todo el detalle." }
    exposure_preview { "Expose for", "Insolar" }
    exposure_times(factor) { "× {factor}", "× {factor}" }
    exposure_preview_wait { "Fill in the test, and the time stands here.", "Rellena la prueba y aquí sale el tiempo." }
    exposure_advice_confirm { "Expose one screen for this time and look at it before you rely on it.", "Insola una pantalla con este tiempo y mírala antes de fiarte." }
    exposure_advice_again { "That is a long way from the test: test once more at this time.", "Queda lejos de la prueba: prueba otra vez con este tiempo." }
    exposure_advice_longer { "The best column was the longest: the right time may be longer still. Test with more.", "La mejor columna fue la de más luz: puede hacer falta más. Prueba con más tiempo." }
    exposure_advice_shorter { "The best column was the shortest: the right time may be shorter still. Test with less.", "La mejor columna fue la de menos luz: puede bastar menos. Prueba con menos tiempo." }
    exposure_advice_distance { "Computed, not tested: expose a guide at this time before you trust it.", "Calculado, sin probar: insola una escala con este tiempo antes de fiarte." }
    exposure_refused_nothing { "Not even the first step held: expose the test much longer.", "No aguantó ni el primer paso: insola la prueba mucho más." }
    exposure_refused_all { "Every step held, so the last one cannot be seen: expose the test much shorter.", "Aguantaron todos los pasos y no se ve el último: insola la prueba mucho menos." }
    exposure_refused_reach { "That comes to a time no lamp is set to. Check what you typed.", "Sale un tiempo que no se pone en ninguna lámpara. Revisa lo escrito." }
    exposure_no_law_tubes { "Nothing is computed for tubes: a row of them does not thin out with distance as a point does. Test at the new distance.", "Para tubos no se calcula: una fila de tubos no pierde luz con la distancia como un punto. Prueba a la nueva distancia." }
    exposure_no_law_panel { "Nothing is computed for a panel: it does not thin out with distance as a point does. Test at the new distance.", "Para un panel no se calcula: no pierde luz con la distancia como un punto. Prueba a la nueva distancia." }
    exposure_no_law_contact { "On a contact table there is no distance to change.", "En una mesa de contacto no hay distancia que cambiar." }
    exposure_no_law_unknown { "The lamp's distance is not entered yet. Enter it with the lamp.", "Falta la distancia de la lámpara. Anótala en la lámpara." }
    exposure_which { "For which emulsion, mesh and lamp", "Para qué emulsión, malla y lámpara" }
    sheet_may_stay_empty { "As on the data sheet; may stay empty.", "Como en la ficha; puede quedar vacío." }
    exposure_pick_one { "Pick one.", "Elige una." }

    damp_title { "Air of the screen room", "Aire del cuarto" }
    damp_not_read { "The room was not read in the last two hours. Damp air changes the time: read it first.", "El cuarto no se ha medido en las últimas dos horas. El aire húmedo cambia el tiempo: mídelo antes." }
    damp_read { "Read the room", "Medir el cuarto" }
    damp_dry(percent) { "{percent} % humidity: dry enough for coated screens.", "{percent} % de humedad: seco para pantallas emulsionadas." }
    damp_more(percent) { "{percent} % humidity: this emulsion hardens slower in damp air and needs more time. Drying the screen is better.", "{percent} % de humedad: esta emulsión endurece más despacio y pide más tiempo. Mejor secar la pantalla." }
    damp_less(percent) { "{percent} % humidity: this emulsion hardens faster in damp air, and the stencil stays weak all the same. Dry the screen first.", "{percent} % de humedad: esta emulsión endurece antes y aun así queda floja. Seca antes la pantalla." }

    edge_title { "Light at the corners", "Luz en las esquinas" }
    edge_text { "Inside of the frame under the middle of the lamp:", "Interior del marco bajo el centro de la lámpara:" }
    edge_width { "Width", "Ancho" }
    edge_length { "Length", "Largo" }
    edge_answer(bulb, flat) { "The corners get {bulb} % less light than the middle under a bare bulb, {flat} % less under a small flat light.", "Las esquinas reciben un {bulb} % menos que el centro con una bombilla desnuda, un {flat} % menos con una luz plana pequeña." }
    edge_refused { "Nothing is computed for this kind of lamp: lay a guide in a corner and one in the middle.", "Para este tipo de lámpara no se calcula: pon una escala en una esquina y otra en el centro." }

    equipment_lamps { "Lamps", "Lámparas" }
    equipment_lamps_none { "No lamp yet. Enter the one you expose with.", "Aún no hay lámparas. Anota la que usas para insolar." }
    equipment_emulsions { "Emulsions", "Emulsiones" }
    equipment_emulsions_none { "No emulsion yet. Enter the one in the bucket.", "Aún no hay emulsiones. Anota la del cubo." }
    equipment_times[n] { "{n} time known" | "{n} times known", "{n} tiempo conocido" | "{n} tiempos conocidos" }
    equipment_goal_title { "Step to aim at", "Paso que se busca" }
    equipment_goal_text { "The last step of a 21-step guide that should stay solid. Seven is published as the least for a hard stencil.", "El último paso de una escala de 21 que debe quedar sólido. Siete es el mínimo publicado para un estarcido duro." }
    equipment_goal { "Step", "Paso" }
    equipment_goal_saved(step) { "The aim is step {step}.", "Se busca el paso {step}." }
    lamp_new { "Add a lamp", "Añadir lámpara" }
    lamp_name { "Name", "Nombre" }
    lamp_name_hint { "As you call it in the shop.", "Como lo llamas en el taller." }
    lamp_kind { "What kind of light?", "¿Qué tipo de luz?" }
    lamp_point { "One bulb", "Una bombilla" }
    lamp_tubes { "Tubes", "Tubos" }
    lamp_panel { "LED panel", "Panel LED" }
    lamp_contact { "Contact table", "Mesa de contacto" }
    lamp_distance { "From the light to the emulsion", "De la luz a la emulsión" }
    lamp_distance_hint { "Times hold for this distance.", "Los tiempos valen para esta distancia." }
    lamp_deleted(name) { "{name}: lamp deleted.", "{name}: lámpara borrada." }
    emulsion_new { "Add an emulsion", "Añadir emulsión" }
    emulsion_family { "What hardens it?", "¿Qué la endurece?" }
    emulsion_family_hint { "The label or its data sheet says. Damp air acts on them in opposite ways.", "Lo dice la etiqueta o la ficha. El aire húmedo actúa de forma opuesta en cada una." }
    emulsion_diazo { "Diazo", "Diazo" }
    emulsion_dual { "Dual-cure", "Doble curado" }
    emulsion_photopolymer { "Photopolymer", "Fotopolímero" }
    emulsion_solids { "Solids", "Sólidos" }
    emulsion_percent { "%", "%" }
    emulsion_deleted(name) { "{name}: emulsion deleted.", "{name}: emulsión borrada." }

    volume_typed { "Another", "Otra" }
    volume_on(labels) { "Screens {labels}", "Pantallas {labels}" }
    volume_unit { "cm³/m²", "cm³/m²" }
    volume_wet(um) { "As a wet film, {um}\u{a0}µm high.", "Como película húmeda, {um}\u{a0}µm de alto." }
    volume_sheet_area(percent) { "{percent} % open, as the data sheet says.", "{percent} % abierta, según la ficha." }
    volume_own_area(percent) { "{percent} % open, computed from the sheet's opening and count.", "{percent} % abierta, calculada de la luz de malla y los hilos de la ficha." }
    volume_theory { "In theory. What a print really takes differs: weigh it.", "En teoría. Lo que toma un estampado varía: pésalo." }
    volume_lacks_area { "The sheet lacks the open area, or the opening. Neither follows from the thread: woven threads flatten. Look it up on the mesh's data sheet.", "Falta el área abierta o la luz de malla. No salen del hilo: al tejerse se aplasta. Búscalas en la ficha de la malla." }
    volume_lacks_thickness { "The sheet lacks the thickness of the woven mesh. Look it up on the mesh's data sheet.", "Falta el espesor de la malla tejida. Búscalo en la ficha de la malla." }
    volume_type_count { "Type what the mesh's data sheet says.", "Escribe lo que dice la ficha de la malla." }
    volume_none { "No mesh is entered with a screen yet. Type what a data sheet says.", "Aún no hay malla anotada en una pantalla. Escribe lo que dice una ficha." }
    volume_count { "Count", "Hilos" }
    volume_need_title { "Ink for a run", "Tinta para una tirada" }
    volume_width { "Art width", "Ancho del arte" }
    volume_height { "Art height", "Alto del arte" }
    volume_coverage { "Share that prints", "Parte que imprime" }
    volume_transfer { "Goes onto the garment", "Pasa a la prenda" }
    volume_transfer_hint { "Of what the mesh holds; above 100 where fabric drinks it.", "De lo que carga la malla; más de 100 si el tejido absorbe." }
    volume_density { "Weight of the ink", "Peso de la tinta" }
    volume_density_unit { "g/cm³", "g/cm³" }
    volume_finer { "Hits, transfer, weight", "Pasadas, traspaso, peso" }
    volume_grams(grams) { "{grams}\u{a0}g", "{grams}\u{a0}g" }
    volume_need(print, cm3) { "{print}\u{a0}g a print, {cm3}\u{a0}cm³ in all.", "{print}\u{a0}g por estampado, {cm3}\u{a0}cm³ en total." }
    volume_prints(n) { "A kilogram prints {n}.", "Con un kilo salen {n}." }
    volume_without { "Without what stays in pot, screen and flood.", "Sin lo que queda en bote, pantalla y racleta." }
    volume_need_wait { "Type the art's size and the pieces.", "Escribe el tamaño del arte y las piezas." }
    volume_weighed { "Weighed after the run: used", "Pesado tras la tirada: usado" }
    volume_weighed_hint { "Tells how much really goes onto the garment.", "Dice cuánto pasa de verdad a la prenda." }
    volume_real_transfer(percent) { "That was {percent} %.", "Fue un {percent} %." }
    volume_take_transfer { "Reckon with it", "Calcular con eso" }
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
    let count = match (cloth.count, units()) {
        (MeshCount::PerInch(threads), Units::Metric) => exposure_per_inch(threads),
        (MeshCount::PerCentimetre(threads), Units::UsCustomary) => exposure_per_centimetre(threads),
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
