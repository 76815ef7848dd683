//! Messages: a pot of ink, from weighing in to its label.

use super::format::{unit_weight, with_mark};
use super::ink::{ink_no_recipe, pot_not_as_written, pot_revision};
use super::locale::units;
use super::messages::messages;
use lastpull_core::ink::{HeldRevision, LimitBroken, LimitOf, PotStage, Similarity, scale_decimals, written_percents};
use lastpull_core::units::Grams;

messages! {
    pot_key_mark { "Decimal point", "Punto o coma decimal" }
    pot_key_back { "Delete last digit", "Borrar la última cifra" }
    pot_keypad { "Weight", "Peso" }
    pot_enter { "Add", "Agregar" }
    pot_exact { "On target", "Exacto" }
    pot_weigh_leave { "View batch", "Ver la mezcla" }
    pot_weigh_go_on { "Continue weighing", "Seguir pesando" }
    pot_weigh_progress(done, of) { "{done} of {of} added", "{done} de {of} agregados" }
    pot_weigh_rounding(step, worst, on_target) {
        "Scale readability {step}: no target is off the recipe by more than {worst}%. Within half a step, or {on_target}%, counts as on target.",
        "La báscula marca de {step} en {step}: ninguna meta se desvía de la receta más del {worst} %. Hasta medio paso, o un {on_target} %, cuenta como exacto."
    }
    pot_step_part(poured, target) { "{poured} of {target}", "{poured} de {target}" }
    pot_step_in(poured) { "{poured} added", "{poured} agregados" }
    pot_scale_shall { "Scale should read", "La báscula debe marcar" }
    pot_scale_total { "Scale reads (total)", "La báscula marca (total)" }
    pot_scale_own { "Scale reads (this one only)", "La báscula marca (solo este)" }
    pot_with_tare(tare) { "includes container, {tare}", "con recipiente, {tare}" }
    pot_zeroed { "tared with container on", "a cero con el recipiente" }
    pot_zeroed_each { "tared before each one", "a cero antes de cada uno" }
    pot_to_go { "Left to add", "Falta agregar" }
    pot_in_now { "Added so far", "Ya agregado" }
    pot_then(name, shall) { "Next {shall}: {name}", "Después {shall}: {name}" }
    pot_shelf_lacks(grams) { "Stock is {grams} short of this one.", "En existencias faltan {grams} de este." }
    pot_will_spill(grams) { "The container will be overfull by {grams}.", "El recipiente se pasará de lleno en {grams}." }
    pot_will_overload(grams) { "The scale will be {grams} over capacity.", "La báscula se pasará de su capacidad en {grams}." }
    pot_too_fine(asks, step, enough) {
        "The batch needs {asks} of this, less than the scale's {step}. From {enough} up it can be weighed to within 1%.",
        "La mezcla lleva {asks} de este, menos que los {step} de la báscula. Desde {enough} se puede pesar con un 1 % de error."
    }
    pot_make_more { "Mix more", "Mezclar más" }
    pot_leave_out { "Leave it out", "No agregarlo" }
    pot_still_missing(grams, name) { "{grams} of {name} still to add. Add it, or skip the rest: the recipe changes by that much.", "Aún faltan {grams} de {name}. Agrégalos o déjalo así: la receta cambia en eso." }
    pot_enough { "Skip the rest", "Dejarlo así" }
    pot_enough_notice { "Rest skipped.", "Se deja así." }
    pot_left_out_notice { "Left out: this is now a different recipe.", "No se agrega: ahora es otra receta." }
    pot_type_first { "Enter the scale reading, or tap On target.", "Escribe lo que marca la báscula o toca Exacto." }
    pot_no_more { "That's not more than the last reading.", "Eso no es más que la lectura anterior." }
    pot_short(poured, to_go) { "{poured} more, then {to_go} to go", "{poured} más; faltarán {to_go}" }
    pot_on(poured) { "{poured} more: on the mark", "{poured} más: en su punto" }
    pot_over(poured, by) { "{poured} more: {by} too much", "{poured} más: sobran {by}" }
    pot_over_title(by, name) { "{by} too much {name}", "Sobran {by} de {name}" }
    pot_over_text { "Pick a fix. What each one means on the scale:", "Elige una salida. Lo que se pesaría con cada una:" }
    pot_scale_rest { "Scale up the rest", "Aumentar el resto" }
    pot_scale_rest_hint { "same recipe, larger batch", "misma receta, más cantidad" }
    pot_accept { "Keep as poured", "Dejarlo así" }
    pot_accept_hint { "rest as planned, becomes a different recipe", "el resto como estaba, será otra receta" }
    pot_more(grams) { "+{grams}", "+{grams}" }
    pot_nothing_more { "done", "listo" }
    pot_total { "Total", "Total" }
    pot_total_more(grams) { "{grams} more", "{grams} más" }
    pot_total_same { "nothing more to add", "nada más que agregar" }
    pot_recipe { "Recipe", "Receta" }
    pot_recipe_kept { "unchanged", "sin cambios" }
    pot_recipe_off(points) { "off by {points} percentage points", "cambia {points} puntos porcentuales" }
    pot_over_undo { "Typo? Undo removes the reading.", "¿Error al escribir? Deshacer quita esa lectura." }
    pot_refused_large(most) { "That's too large for a batch: {most} at most.", "Es demasiado para una mezcla: {most} como máximo." }
    pot_refused_spills(grams) { "{grams} more than the container holds.", "{grams} más de lo que cabe en el recipiente." }
    pot_refused_lacks(grams, name) { "Stock is {grams} short of {name}.", "En existencias faltan {grams} de {name}." }
    pot_other_vessel { "Larger container", "Recipiente mayor" }
    pot_scaled_notice { "The rest is scaled up.", "Resto aumentado." }
    pot_accepted_notice { "Kept as poured: this is now the recipe.", "Se deja así: esta es ahora la receta." }
    pot_taken_back { "Removed.", "Quitado." }
    pot_recorded_again { "Put back.", "Repuesto." }
    pot_all_in(grams) { "Everything added: {grams}.", "Todo agregado: {grams}." }
    pot_did_weigh(name) { "{name}, weighed in", "{name}, pesado" }
    pot_did_add(name) { "{name}, added", "{name}, agregado" }
    pot_did_top_up(name) { "{name}, topped up", "{name}, para rellenar" }
    pot_did_resize(whole) { "Rest scaled up to {whole}", "Resto aumentado a {whole}" }
    pot_did_accept(name) { "{name} kept as poured", "{name} se deja así" }
    pot_did_move_in(name) { "From {name}", "De {name}" }
    pot_did_move_out(name) { "Into {name}", "A {name}" }
    pot_did_waste { "Thrown away", "Desechado" }
    pot_did_use { "Used for printing", "Usado para imprimir" }
    pot_did_print(pieces) { "Printed: {pieces}", "Impreso: {pieces}" }
    pot_did_read { "Swatch measured", "Muestra medida" }
    pot_did_approve(client) { "{client} approved", "{client} aprobó" }
    pot_did_approve_alone { "Client approved", "El cliente aprobó" }
    pot_did_save(revision) { "Saved as {revision}", "Guardado como {revision}" }
    pot_did_save_unknown { "Saved as a version", "Guardado como versión" }
    pot_nameless { "another batch", "otra mezcla" }
    pot_changed[n] { "changed {n} time since" | "changed {n} times since", "cambiada {n} vez desde entonces" | "cambiada {n} veces desde entonces" }
    pot_by_eye_changes[n] { "Mixed by eye, {n} addition" | "Mixed by eye, {n} additions", "Mezclada a ojo, {n} adición" | "Mezclada a ojo, {n} adiciones" }
    pot_stage_weighing { "Weighing", "Pesando" }
    pot_stage_mixed { "Mixed", "Mezclada" }
    pot_stage_matched { "Matches", "Coincide" }
    pot_stage_approved { "Approved", "Aprobada" }
    pot_stage_empty { "Empty", "Agotada" }
    pot_stage_closed { "Off the list", "Fuera de la lista" }
    pot_stage_approved_by(client) { "Approved by {client}", "Aprobada por {client}" }
    pot_for(job) { "For {job}", "Para {job}" }
    pot_in_it { "in the container", "en el recipiente" }
    pot_on_scale(grams) { "{grams} on the scale", "{grams} en la báscula" }
    pot_room(grams) { "{grams} more fits", "caben {grams} más" }
    pot_too_full(grams) { "overfull by {grams}", "{grams} de más" }
    pot_component { "Component", "Componente" }
    pot_percent_head { "Percent", "Por ciento" }
    pot_grams_head { "Weight", "Peso" }
    pot_began_hint { "Small print: what the original recipe calls for.", "En pequeño: lo que pide la receta original." }
    pot_short_of(grams) { "{grams} more came out than went in: something was added and not logged.", "Salieron {grams} más de lo que entró: algo se agregó sin registrarlo." }
    pot_limit_component(name, percent, most) { "{name}: {percent} added, its data sheet allows {most}.", "{name}: hay {percent}; su ficha técnica admite {most}." }
    pot_limit_pigment(name, percent, most) { "{percent} pigment in total; the data sheet of {name} allows {most}.", "{percent} de pigmento en total; la ficha técnica de {name} admite {most}." }
    pot_label { "Label", "Etiqueta" }
    pot_edit { "Edit batch", "Editar mezcla" }
    pot_add { "Add to batch", "Agregar algo" }
    pot_to_match { "Compare and correct", "Comparar y corregir" }
    pot_matches { "Mark as match", "Marcar: coincide" }
    pot_matched_notice { "Marked as a match.", "Marcada: coincide." }
    pot_client_yes { "Client approved", "Cliente aprobó" }
    pot_used { "Used on a run", "Usada en un tiraje" }
    pot_save { "Save as version", "Guardar versión" }
    pot_top_up { "Top up, same color", "Rellenar, mismo color" }
    pot_move_out { "Pour into another", "Pasar a otra mezcla" }
    pot_move_in { "Pour another in", "Agregar otra mezcla" }
    pot_waste { "Throw away", "Desechar" }
    pot_close { "Remove from list", "Quitar de la lista" }
    pot_close_hint { "Container is empty or washed out", "El recipiente está vacío o lavado" }
    pot_open { "Put back on list", "Volver a la lista" }
    pot_closed_notice { "Removed from the list.", "Quitada de la lista." }
    pot_opened_notice { "Back on the list.", "De vuelta en la lista." }
    pot_delete_hint { "Entered by mistake: its ink goes back to stock", "Registrada por error: su tinta vuelve a existencias" }
    pot_deleted(name) { "{name} deleted.", "{name}: borrada." }
    pot_more_steps { "More", "Más" }
    pot_photo_reading { "Photo, reading", "Foto, lectura" }
    pot_history[n] { "History: {n} entry" | "History: {n} entries", "Historial: {n} registro" | "Historial: {n} registros" }
    pot_used_wasted(used, wasted) { "Printed: {used}; thrown away: {wasted}.", "Impreso: {used}; desechado: {wasted}." }
    pot_take_back { "Remove", "Quitar" }
    pot_record_again { "Put back", "Reponer" }
    pot_was_taken_back { "removed, not counted", "quitado, no cuenta" }
    pot_with_reading { "reading", "lectura" }
    pot_then_held(grams) { "then {grams}", "luego {grams}" }
    pot_held_after(grams) { "Batch was {grams} after this", "Después la mezcla pesaba {grams}" }
    pot_why { "Reason", "Motivo" }
    pot_reading { "Swatch reading", "Lectura de la muestra" }
    pot_client { "Approved by", "Quién aprobó" }
    pot_yes_as_written(revision) { "This batch matches {revision}. The approval is for that version.", "Esta mezcla coincide con la {revision}. La aprobación es para esa." }
    pot_yes_saves(revision) { "This batch differs from {revision}. It is saved as a new version first, and the approval is for that one.", "Esta mezcla difiere de la {revision}. Primero se guarda como versión nueva; la aprobación es para esa." }
    pot_yes_first { "This batch is saved as a version, and the approval is for that one.", "Esta mezcla se guarda como versión; la aprobación es para esa." }
    pot_recipe_name { "Ink name", "Nombre de la tinta" }
    pot_joins_recipe(name, number) {
        "{name} is already a recipe: this becomes its version {number}. A different name makes a separate recipe.",
        "{name} ya es una receta: esta será su versión {number}. Con otro nombre será otra receta."
    }
    pot_new_recipe(name) { "Creates the recipe {name}, with this as its first version.", "Crea la receta {name}, con esta como primera versión." }
    pot_yes_note { "Save approval", "Guardar aprobación" }
    pot_yes_notice { "Approval saved.", "Aprobación guardada." }
    pot_save_text { "Saves the actual mix, in percent, as the next version.", "Guarda la mezcla real, en porcentajes, como siguiente versión." }
    pot_saved_notice { "Saved as a version.", "Guardada como versión." }
    pot_which_run { "Run", "Tiraje" }
    pot_no_run { "No run", "Ninguno" }
    pot_take_how { "How you weigh it", "Cómo lo pesas" }
    pot_take_total { "What is left", "Lo que queda" }
    pot_take_own { "Only what came out", "Solo lo que salió" }
    pot_went_out { "Amount taken out", "Cantidad que salió" }
    pot_weighs { "Scale reads", "La báscula marca" }
    pot_take_now(shows, holds) { "By the entries so far, the scale should read {shows} with the container, {holds} of it ink.", "Según los registros, la báscula debe marcar {shows} con el recipiente, {holds} de tinta." }
    pot_pieces { "Pieces printed with it", "Prendas impresas con ella" }
    pot_pieces_hint { "Improves the next batch size.", "Así se calcula mejor la próxima mezcla." }
    pot_used_notice { "Ink use saved.", "Consumo guardado." }
    pot_waste_caution { "Dispose of waste by its data sheet, SDS and local rules. Never guess what may go down a drain.", "Desecha los restos según la ficha técnica, la SDS y las normas locales; nada al desagüe sin saber si se permite." }
    pot_wasted_notice { "Waste saved.", "Desecho guardado." }
    pot_all_of_it { "All of it", "Todo" }
    pot_new_one { "New batch", "Mezcla nueva" }
    pot_split_name(name) { "{name}, part", "{name}, parte" }
    pot_moved_notice { "Ink transferred.", "Tinta trasvasada." }
    pot_which_into { "Pour into which batch?", "¿A qué mezcla?" }
    pot_which_from { "Pour from which batch?", "¿De qué mezcla?" }
    pot_no_other { "No other batch has ink left.", "Ninguna otra mezcla tiene tinta." }
    pot_merge_caution { "Adding another ink changes this one; its approval no longer applies.", "Otra tinta cambia esta mezcla; su aprobación ya no vale." }
    pot_top_up_text(holds) { "{holds} in it now. Add this much of each to keep the same mix:", "Hay {holds}. Agrega esto de cada uno para mantener la misma mezcla:" }
    pot_top_up_to { "Top up to", "Rellenar hasta" }
    pot_all_poured { "All added", "Todo agregado" }
    pot_topped_notice { "Topped up.", "Rellenado." }
    pot_lacks_of(grams, name) { "Stock is {grams} short of {name}.", "En existencias faltan {grams} de {name}." }
    pot_name { "Name on container", "Nombre en el recipiente" }
    pot_tare { "Tare (empty container)", "Tara (recipiente vacío)" }
    pot_tare_hint { "Leave blank if you tare the scale with it on.", "Déjalo en blanco si pones la báscula a cero con él." }
    pot_capacity { "Container capacity", "Capacidad del recipiente" }
    pot_capacity_hint { "How much fits with room to stir.", "Lo que cabe y aún se puede remover." }
    pot_size { "Amount to mix", "Cantidad a mezclar" }
    pot_start { "Start weighing", "Empezar a pesar" }
    pot_of_ink { "Amount is for the ink alone", "La cantidad es solo de tinta" }
    pot_of_ink_hint { "Additives on top are extra.", "Los aditivos aparte se suman." }
    pot_new_of(ink) { "New batch of {ink}", "Mezcla nueva de {ink}" }
    pot_new_by_eye { "Batch mixed by eye", "Mezcla a ojo" }
    pot_by_eye_text { "Every gram you add is logged, so your final match becomes a recipe.", "Se registra cada gramo que agregas: al coincidir, la mezcla se vuelve receta." }
    pot_no_recipe(ink) { "{ink} has no recipe yet", "{ink} aún no tiene receta" }
    pot_no_recipe_text { "Write it down, or mix by eye and save the result as the recipe.", "Anótala, o mezcla a ojo y guarda el resultado como receta." }
    pot_yes_is_to(revision) { "Client approved {revision}", "El cliente aprobó la {revision}" }
    pot_no_yes { "Not approved by a client yet", "Aún sin aprobación" }
    pot_newer_there { "There is a later version, not approved.", "Hay una versión posterior, sin aprobar." }
    pot_not_computed(pieces) { "{pieces} to print. Ink per print not calculated yet.", "{pieces} por imprimir. Falta calcular la tinta por prenda." }
    pot_what_print_takes { "Ink per print", "Tinta por prenda" }
    pot_in_pots(in_pots, to_mix) { "{in_pots} already mixed; {to_mix} still to mix.", "{in_pots} ya mezclados; faltan {to_mix} por mezclar." }
    pot_left_over(grams) { "{grams} left over from earlier runs.", "Sobran {grams} de los tirajes anteriores." }
    pot_for_pieces(pieces) { "for {pieces}", "para {pieces}" }
    pot_by_formula(printed, loss) { "{printed} on the garments, {loss} left in container, screen and flood. No similar run weighed yet.", "{printed} en las prendas, {loss} quedan en recipiente, pantalla y rasero. Aún no se pesó un tiraje parecido." }
    pot_by_experience(weighings, alike, ratio) { "From {weighings} of {alike}: {ratio} times the calculation.", "Según {weighings} de {alike}: {ratio} veces lo calculado." }
    pot_between(least, most) { "They ranged from {least} to {most}.", "Variaron de {least} a {most}." }
    pot_weighings[n] { "{n} weighing" | "{n} weighings", "{n} pesada" | "{n} pesadas" }
    pot_alike_ink { "this ink on this fabric and mesh", "esta tinta en esta tela y malla" }
    pot_alike_mesh { "this fabric and mesh", "esta tela y malla" }
    pot_alike_fabric { "this fabric", "esta tela" }
    pot_alike_any { "other runs", "otros tirajes" }
    pot_print_left(pieces) { "For the {pieces} left in this run.", "Para lo que queda de este tiraje: {pieces}." }
    pot_print_none_left { "No pieces left in this run: shown for one.", "No quedan prendas de este tiraje: se muestra para una." }
    pot_print_wait { "Enter the art size and the mesh's ink volume.", "Escribe el tamaño del arte y el volumen de tinta de la malla." }
    pot_coverage_hint { "Share of the art's rectangle that prints.", "Parte del rectángulo del arte que se imprime." }
    pot_mesh_volume { "Mesh ink volume", "Volumen de tinta de la malla" }
    pot_mesh_volume_hint { "From the mesh's data sheet.", "De la ficha técnica de la malla." }
    pot_mesh_volume_link { "Calculate from mesh", "Calcular con la malla" }
    // Common practice, no source.
    pot_screen_decides(used, charge) { "The run uses {used}, but a screen needs about {charge} to flood and print evenly to the last piece (common practice). Mix {charge}, or enter another weight. What is left goes back into the container.", "El tiraje gasta {used}, pero una pantalla necesita unos {charge} para cubrirse e imprimir parejo hasta la última prenda (práctica habitual). Mezcla {charge} o escribe otro peso. Lo que sobra vuelve al recipiente." }
    pot_garments_decide(charge) { "The garments need more than the {charge} minimum for a screen (common practice). Mix a little extra, so there is ink in front of the squeegee to the last piece. What is left goes back into the container.", "Las prendas llevan más que los {charge} que una pantalla necesita como mínimo (práctica habitual). Mezcla algo más, para que haya tinta ante el rasero hasta la última prenda. Lo que sobra vuelve al recipiente." }
    pot_loss { "Extra for waste", "Extra por merma" }
    pot_loss_hint { "What stays in container, screen and flood.", "Lo que queda en recipiente, pantalla y rasero." }
    pot_add_to(name) { "Add to {name}", "Agregar a {name}" }
    pot_which_component { "Component", "Componente" }
    pot_pick_other { "change", "cambiar" }
    pot_goes_in { "Amount added", "Cantidad agregada" }
    pot_shows_total(now) { "Scale reads (total, now {now})", "La báscula marca (total, ahora {now})" }
    pot_add_it { "Add", "Agregar" }
    pot_added_notice { "Added.", "Agregado." }
    pot_after_wait { "Pick a component and enter an amount to see the resulting mix.", "Elige un componente y escribe cuánto para ver cómo quedará la mezcla." }
    pot_then_holds(grams) { "Batch will be {grams}", "La mezcla pesará {grams}" }
    pot_was(percent) { "was {percent}", "era {percent}" }
    pot_touch_more(name) { "a little more {name}", "un poco más de {name}" }
    pot_too_light { "too light", "muy claro" }
    pot_too_dark { "too dark", "muy oscuro" }
    pot_too_dull { "too dull", "muy apagado" }
    pot_too_thick { "too thick", "muy espeso" }
    pot_photo_after { "Next: photo and reading.", "Después: foto y lectura." }
    pot_now_holds(grams) { "Batch is now {grams}", "La mezcla pesa {grams}" }
    pot_same_again { "Add same again", "Agregar lo mismo" }
    pot_something_else { "Add other", "Agregar otra cosa" }
    pot_read_it { "Measure swatch", "Medir una muestra" }
    pot_reading_off { "Delete reading", "Borrar la lectura" }
    pot_reading_off_notice { "Reading deleted.", "Lectura borrada." }
    pot_no_components { "No components yet", "Aún sin componentes" }
    pot_no_components_text { "Enter the shop's pigments, bases and additives first.", "Registra primero los pigmentos, bases y aditivos del taller." }
    pot_new_component { "New component", "Nuevo componente" }
    pot_label_yes(client, on) { "Approved: {client}, {on}", "Aprobada: {client}, {on}" }
    pot_label_yes_alone(on) { "Approved {on}", "Aprobada el {on}" }
    pot_label_by(by) { "mixed by {by}", "mezclada por {by}" }
    pot_label_more[n] { "and {n} more" | "and {n} more", "y {n} más" | "y {n} más" }
    pot_label_print { "Print", "Imprimir" }
    pot_label_keep { "Save as picture", "Guardar como imagen" }
    pot_label_hint { "Prints as wide as the paper; use the picture for a label printer or a text message.", "Se imprime tan ancha como el papel; la imagen sirve para una etiquetadora o un mensaje." }
    pot_label_not_left { "The browser blocked the picture. Print it or take a screenshot.", "El navegador bloqueó la imagen. Imprímela o toma una captura." }
}

/// A weight as a scale with this readability shows it, with all its decimals.
pub fn pot_weight(grams: Grams, step: Grams) -> String {
    let decimals = scale_decimals(step, units());
    let value = grams.in_units(units());
    format!("{}\u{a0}{}", with_mark(format!("{value:.decimals$}")), unit_weight())
}

/// A share of an ink in percent: one decimal, or two for small shares.
pub fn pot_percent(percent: f64) -> String {
    super::format::percent(percent, if percent < 10.0 { 2 } else { 1 })
}

/// Shares of a whole ink in percent, which add up to 100 as they are written.
pub fn pot_percents(percents: &[f64]) -> Vec<String> {
    written_percents(percents).into_iter().map(|percent| super::format::percent(percent, 2)).collect()
}

/// Which recipe a pot holds.
pub fn pot_holds(holds: &HeldRevision) -> String {
    match (&holds.revision, holds.changes) {
        (Some(revision), 0) if holds.as_written => pot_revision(revision),
        (Some(revision), 0) => pot_not_as_written(pot_revision(revision)),
        (Some(revision), changes) => format!("{}, {}", pot_revision(revision), pot_changed(changes)),
        (None, 0) => ink_no_recipe().into(),
        (None, changes) => pot_by_eye_changes(changes),
    }
}

/// The name of a pot's stage.
pub fn pot_stage(stage: PotStage) -> &'static str {
    match stage {
        PotStage::Weighing => pot_stage_weighing(),
        PotStage::Mixed => pot_stage_mixed(),
        PotStage::Matched => pot_stage_matched(),
        PotStage::Approved => pot_stage_approved(),
        PotStage::Empty => pot_stage_empty(),
        PotStage::Closed => pot_stage_closed(),
    }
}

/// A data sheet limit that is exceeded.
pub fn pot_limit(limit: &LimitBroken) -> String {
    let (percent, most) = (pot_percent(limit.percent), pot_percent(limit.most));
    match limit.limit {
        LimitOf::Component => pot_limit_component(&limit.name, percent, most),
        LimitOf::Pigment => pot_limit_pigment(&limit.name, percent, most),
    }
}

/// How similar the runs are from which the ink use was learned.
pub fn pot_alike(alike: Similarity) -> &'static str {
    match alike {
        Similarity::Ink => pot_alike_ink(),
        Similarity::Mesh => pot_alike_mesh(),
        Similarity::Fabric => pot_alike_fabric(),
        Similarity::Any => pot_alike_any(),
    }
}
