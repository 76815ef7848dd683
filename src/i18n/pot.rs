//! Messages: a pot of ink, from weighing in to its label.

use super::format::unit_weight;
use super::ink::{ink_no_recipe, pot_not_as_written, pot_revision};
use super::locale::{Locale, units};
use super::messages::messages;
use crate::platform::settings::Language;
use lastpull_core::ink::{HeldRevision, LimitBroken, LimitOf, PotStage, Similarity, scale_decimals, written_percents};
use lastpull_core::units::Grams;

messages! {
    pot_key_mark { "Decimal mark", "Coma decimal" }
    pot_key_back { "Take off the last", "Borrar la última" }
    pot_keypad { "Weight", "Peso" }
    pot_enter { "It is in", "Echado" }
    pot_exact { "Exact", "Exacto" }
    pot_weigh_leave { "See the pot", "Ver el bote" }
    pot_weigh_go_on { "Go on weighing in", "Seguir pesando" }
    pot_weigh_progress(done, of) { "{done} of {of} in", "{done} de {of} echados" }
    pot_weigh_rounding(step, worst) {
        "The scale reads in steps of {step}: no target is off the recipe by more than {worst} %. Half a step beside it, or 0.2 %, counts as on it.",
        "La báscula lee de {step} en {step}: ninguna meta se desvía de la receta más del {worst} %. Medio paso al lado, o un 0,2 %, cuenta como en su punto."
    }
    pot_step_part(poured, target) { "{poured} of {target}", "{poured} de {target}" }
    pot_step_in(poured) { "{poured} in", "{poured} echados" }
    pot_scale_shall { "Scale should read", "La báscula debe marcar" }
    pot_scale_total { "The scale shows, all told", "La báscula marca, en total" }
    pot_scale_own { "The scale shows, of this one only", "La báscula marca, solo de este" }
    pot_with_tare(tare) { "the pot's {tare} in it", "con bote, {tare}" }
    pot_zeroed { "zeroed, pot on", "a cero con bote" }
    pot_zeroed_each { "zeroed before it", "a cero antes" }
    pot_to_go { "To go in", "Por echar" }
    pot_in_now { "In now", "Echado ya" }
    pot_then(name, shall) { "Next {shall}: {name}", "Después {shall}: {name}" }
    pot_shelf_lacks(grams) { "By the ledger the shelf lacks {grams} of it.", "Según el registro faltan {grams} en el estante." }
    pot_will_spill(grams) { "The pot will be {grams} too full.", "El bote se pasará de lleno en {grams}." }
    pot_will_overload(grams) { "The scale will be {grams} over what it bears.", "La báscula cargará {grams} de más." }
    pot_too_fine(asks, step, enough) {
        "The batch asks for {asks} of it, less than the scale's {step}. From {enough} on it can be weighed to a hundredth.",
        "La cantidad pide {asks}, menos que los {step} de la báscula. Desde {enough} se puede pesar a la centésima."
    }
    pot_make_more { "Make more", "Hacer más" }
    pot_leave_out { "Leave it out", "No echarlo" }
    pot_still_missing(grams, name) { "{grams} of {name} are still missing. Pour them in, or leave it at that: the recipe changes by so much.", "Aún faltan {grams} de {name}. Échalos o déjalo así: la receta cambia en eso." }
    pot_enough { "Leave it at that", "Dejarlo así" }
    pot_enough_notice { "Left at that.", "Se deja así." }
    pot_left_out_notice { "It is left out: another recipe.", "No se echa: es otra receta." }
    pot_type_first { "Type what the scale shows, or touch Exact.", "Escribe lo que marca la báscula o toca Exacto." }
    pot_no_more { "That is no more than it showed before.", "Eso no es más de lo que marcaba antes." }
    pot_short(poured, to_go) { "{poured} more, then {to_go} to go", "{poured} más; faltarán {to_go}" }
    pot_on(poured) { "{poured} more: on the mark", "{poured} más: en su punto" }
    pot_over(poured, by) { "{poured} more: {by} too much", "{poured} más: sobran {by}" }
    pot_over_title(by, name) { "{by} too much {name}", "Sobran {by} de {name}" }
    pot_over_text { "Nothing is decided yet. Both ways on, with what is to be weighed:", "Aún no hay nada decidido. Las dos salidas, con lo que se pesaría:" }
    pot_scale_rest { "Scale the rest", "Ajustar el resto" }
    pot_scale_rest_hint { "same recipe, larger batch", "misma receta, más cantidad" }
    pot_accept { "Take it as it is", "Dejarlo así" }
    pot_accept_hint { "the rest as planned, another recipe", "el resto como estaba, otra receta" }
    pot_more(grams) { "+{grams}", "+{grams}" }
    pot_nothing_more { "all in", "todo echado" }
    pot_total { "In all", "En total" }
    pot_total_more(grams) { "{grams} more", "{grams} más" }
    pot_total_same { "no more than is in", "nada más de lo echado" }
    pot_recipe { "Recipe", "Receta" }
    pot_recipe_kept { "kept", "se mantiene" }
    pot_recipe_off(points) { "off by {points} points", "cambia {points} puntos" }
    pot_over_undo { "Mistyped? Undo takes the reading back.", "¿Error al escribir? Deshacer quita esa lectura." }
    pot_refused_large(most) { "That is more than any batch: {most} at most.", "Es más que cualquier mezcla: {most} como mucho." }
    pot_refused_spills(grams) { "{grams} more than the pot takes.", "{grams} más de lo que cabe en el bote." }
    pot_refused_lacks(grams, name) { "The shelf lacks {grams} of {name}.", "Faltan {grams} de {name} en el estante." }
    pot_other_vessel { "A larger pot", "Un bote mayor" }
    pot_scaled_notice { "The rest is scaled.", "El resto está ajustado." }
    pot_accepted_notice { "What is in stands as the recipe.", "Lo echado queda como receta." }
    pot_taken_back { "Taken back.", "Anulado." }
    pot_recorded_again { "Back again.", "Repuesto." }
    pot_all_in(grams) { "All is in: {grams}.", "Todo echado: {grams}." }
    pot_did_weigh(name) { "{name}, weighed in", "{name}, pesado" }
    pot_did_add(name) { "{name}, added", "{name}, añadido" }
    pot_did_top_up(name) { "{name}, topped up", "{name}, para rellenar" }
    pot_did_resize(whole) { "Rest scaled to {whole}", "Resto ajustado a {whole}" }
    pot_did_accept(name) { "{name} taken as it is", "{name} se deja así" }
    pot_did_move_in(name) { "From {name}", "De {name}" }
    pot_did_move_out(name) { "Into {name}", "A {name}" }
    pot_did_waste { "Thrown away", "Desechado" }
    pot_did_use { "Printed with", "Impreso" }
    pot_did_print(pieces) { "Printed: {pieces}", "Impreso: {pieces}" }
    pot_did_read { "Swatch read", "Muestra leída" }
    pot_did_approve(client) { "{client} said yes", "{client} dio el visto bueno" }
    pot_did_approve_alone { "The client said yes", "Visto bueno del cliente" }
    pot_did_save(revision) { "Saved as {revision}", "Guardado como {revision}" }
    pot_did_save_unknown { "Saved as a revision", "Guardado como revisión" }
    pot_nameless { "another pot", "otro bote" }
    pot_changed[n] { "changed {n} time since" | "changed {n} times since", "cambiada {n} vez desde entonces" | "cambiada {n} veces desde entonces" }
    pot_by_eye_changes[n] { "Mixed by eye, {n} addition" | "Mixed by eye, {n} additions", "Mezclado a ojo, {n} adición" | "Mezclado a ojo, {n} adiciones" }
    pot_stage_weighing { "Weighing", "Pesando" }
    pot_stage_mixed { "Mixed", "Mezclado" }
    pot_stage_matched { "Matches", "Coincide" }
    pot_stage_approved { "Approved", "Aprobado" }
    pot_stage_empty { "Empty", "Vacío" }
    pot_stage_closed { "Put away", "Retirado" }
    pot_stage_approved_by(client) { "Approved by {client}", "Aprobado por {client}" }
    pot_for(job) { "For {job}", "Para {job}" }
    pot_in_it { "in the pot", "en el bote" }
    pot_on_scale(grams) { "{grams} on the scale", "{grams} en la báscula" }
    pot_room(grams) { "room for {grams}", "caben {grams} más" }
    pot_too_full(grams) { "{grams} too full", "{grams} de más" }
    pot_component { "Component", "Componente" }
    pot_percent_head { "Percent", "Por ciento" }
    pot_grams_head { "Weight", "Peso" }
    pot_began_hint { "In small: what the recipe it began as asks for.", "En pequeño: lo que pide la receta de partida." }
    pot_short_of(grams) { "{grams} more were taken out than went in: something poured was not noted.", "Salieron {grams} más de lo que entró: algo se echó sin anotarlo." }
    pot_limit_component(name, percent, most) { "{name}: {percent} is in, its data sheet allows {most}.", "{name}: hay {percent}; su ficha técnica admite {most}." }
    pot_limit_pigment(name, percent, most) { "{percent} pigment in all; the data sheet of {name} allows {most}.", "{percent} de pigmento en total; la ficha de {name} admite {most}." }
    pot_label { "Label", "Etiqueta" }
    pot_edit { "Edit the pot", "Editar el bote" }
    pot_add { "Add something", "Añadir algo" }
    pot_to_match { "Match and what to add", "Comparar y qué añadir" }
    pot_matches { "It matches", "Coincide" }
    pot_matched_notice { "Noted that it matches.", "Anotado: coincide." }
    pot_client_yes { "Client says yes", "El cliente dice sí" }
    pot_used { "Used on a run", "Usado en una tirada" }
    pot_save { "Save as a revision", "Guardar como revisión" }
    pot_top_up { "Top up, same colour", "Rellenar, mismo color" }
    pot_move_out { "Pour into another pot", "Pasar a otro bote" }
    pot_move_in { "Pour another pot in", "Echar otro bote aquí" }
    pot_waste { "Thrown away", "Desechar" }
    pot_close { "Put away", "Retirar" }
    pot_close_hint { "Empty or washed out: off the list of pots", "Vacío o lavado: fuera de la lista" }
    pot_open { "Take it out again", "Volver a sacarlo" }
    pot_closed_notice { "The pot is put away.", "Bote retirado." }
    pot_opened_notice { "The pot stands in the shop again.", "El bote vuelve a estar en el taller." }
    pot_delete_hint { "It never was: its grams go back on the shelf", "Nunca existió: sus gramos vuelven al estante" }
    pot_deleted(name) { "{name} is deleted.", "{name} está borrado." }
    pot_more_steps { "More", "Más" }
    pot_photo_reading { "Photo, reading", "Foto, lectura" }
    pot_history[n] { "History: {n} line" | "History: {n} lines", "Historia: {n} línea" | "Historia: {n} líneas" }
    pot_used_wasted(used, wasted) { "Printed with {used}, thrown away {wasted}.", "Impreso {used}, desechado {wasted}." }
    pot_take_back { "Take back", "Anular" }
    pot_record_again { "Put back", "Reponer" }
    pot_was_taken_back { "taken back, changes nothing", "anulado, no cuenta" }
    pot_with_reading { "reading", "lectura" }
    pot_then_held(grams) { "then {grams}", "luego {grams}" }
    pot_held_after(grams) { "The pot held {grams} after it", "Después el bote tenía {grams}" }
    pot_why { "Why", "Por qué" }
    pot_reading { "Swatch reading", "Lectura de la muestra" }
    pot_client { "Who said yes", "Quién dijo sí" }
    pot_yes_as_written(revision) { "The pot holds {revision} as written. The yes is to it.", "El bote tiene la {revision} tal cual. El sí es a ella." }
    pot_yes_saves(revision) { "The pot differs from {revision}. What it holds is saved as a new revision first, and the yes is to that one.", "El bote difiere de la {revision}. Primero se guarda lo que tiene como revisión nueva; el sí es a esa." }
    pot_yes_first { "What the pot holds is saved as a revision, and the yes is to that.", "Lo que tiene el bote se guarda como revisión; el sí es a esa." }
    pot_recipe_name { "The ink is called", "La tinta se llama" }
    pot_joins_recipe(name, number) {
        "{name} is a recipe already: this becomes its revision {number}. Another name makes a recipe of its own.",
        "{name} ya es una receta: esto será su revisión {number}. Con otro nombre será otra receta."
    }
    pot_new_recipe(name) { "It becomes the recipe {name}, with this as its first revision.", "Será la receta {name}, con esto como primera revisión." }
    pot_yes_note { "Note the yes", "Anotar el sí" }
    pot_yes_notice { "The yes is noted.", "Sí anotado." }
    pot_save_text { "What the pot really holds, in percent, as the next revision.", "Lo que el bote tiene de verdad, en por ciento, como siguiente revisión." }
    pot_saved_notice { "Saved as a revision.", "Guardado como revisión." }
    pot_which_run { "For which run", "Para qué tirada" }
    pot_no_run { "No run", "Ninguna" }
    pot_take_how { "How it is weighed", "Cómo se pesa" }
    pot_take_total { "The pot, now", "El bote, ahora" }
    pot_take_own { "Only what went out", "Solo lo que salió" }
    pot_went_out { "What went out", "Lo que salió" }
    pot_weighs { "The scale shows", "La báscula marca" }
    pot_take_now(shows, holds) { "By the ledger it shows {shows} with the pot on, {holds} of it ink.", "Según el registro marca {shows} con el bote, {holds} de tinta." }
    pot_pieces { "Pieces printed with it", "Piezas impresas con ella" }
    pot_pieces_hint { "With them the next batch is suggested better.", "Con ellas, la próxima cantidad se calcula mejor." }
    pot_used_notice { "Noted what was used.", "Anotado lo usado." }
    pot_waste_caution { "Waste goes where its data sheet and local rules say, never down a drain by guess.", "Los restos van donde digan la ficha y las normas locales, nunca al desagüe por suponer." }
    pot_wasted_notice { "Noted as thrown away.", "Anotado como desechado." }
    pot_all_of_it { "All of it", "Todo" }
    pot_new_one { "A new pot", "Un bote nuevo" }
    pot_split_name(name) { "{name}, part", "{name}, parte" }
    pot_moved_notice { "Poured over.", "Trasvasado." }
    pot_which_into { "Into which pot", "A qué bote" }
    pot_which_from { "From which pot", "De qué bote" }
    pot_no_other { "There is no other pot with ink in it.", "No hay otro bote con tinta." }
    pot_merge_caution { "Another ink changes what this pot holds; a yes to it ends.", "Otra tinta cambia lo que tiene este bote; su visto bueno termina." }
    pot_top_up_text(holds) { "{holds} are in. More of each, in the proportions of what it really holds:", "Hay {holds}. Más de cada uno, en las proporciones de lo que tiene de verdad:" }
    pot_top_up_to { "Up to", "Hasta" }
    pot_all_poured { "All poured in", "Todo echado" }
    pot_topped_notice { "Topped up.", "Rellenado." }
    pot_lacks_of(grams, name) { "By the ledger the shelf lacks {grams} of {name}.", "Según el registro faltan {grams} de {name}." }
    pot_name { "Written on the pot", "Escrito en el bote" }
    pot_tare { "Empty pot weighs", "El bote vacío pesa" }
    pot_tare_hint { "Leave empty if the scale is zeroed with it on.", "Déjalo vacío si la báscula se pone a cero con él." }
    pot_capacity { "It holds", "Le caben" }
    pot_capacity_hint { "Filled to where it can still be stirred.", "Lleno hasta donde aún se puede remover." }
    pot_size { "How much to make", "Cuánto hacer" }
    pot_start { "To the scale", "A la báscula" }
    pot_of_ink { "That is the ink alone", "Eso es solo la tinta" }
    pot_of_ink_hint { "What the recipe adds on top comes to it.", "Lo que la receta añade encima va aparte." }
    pot_new_of(ink) { "New pot of {ink}", "Bote nuevo de {ink}" }
    pot_new_by_eye { "A pot mixed by eye", "Un bote mezclado a ojo" }
    pot_by_eye_text { "Every gram that goes in is noted, so what matches in the end is a recipe.", "Se anota cada gramo que entra; lo que al final coincide es una receta." }
    pot_no_recipe(ink) { "{ink} has no recipe yet", "{ink} aún no tiene receta" }
    pot_no_recipe_text { "Write it down, or mix by eye and let the pot become the recipe.", "Anótala, o mezcla a ojo y deja que el bote sea la receta." }
    pot_yes_is_to(revision) { "The client's yes is to {revision}", "El visto bueno es a la {revision}" }
    pot_no_yes { "No client said yes to it yet", "Aún sin visto bueno" }
    pot_newer_there { "A later revision is there, without the client's yes.", "Hay una revisión posterior, sin visto bueno." }
    pot_not_computed(pieces) { "{pieces} to print. How much ink a print takes was not worked out yet.", "{pieces} por imprimir. Aún no se ha calculado cuánta tinta lleva un estampado." }
    pot_what_print_takes { "What a print takes", "Lo que lleva un estampado" }
    pot_in_pots(in_pots, to_mix) { "{in_pots} of it stand in pots; {to_mix} are to be mixed.", "{in_pots} ya están en botes; faltan {to_mix} por mezclar." }
    pot_left_over(grams) { "{grams} of it are left over from the runs before this one.", "{grams} sobran de las tiradas anteriores." }
    pot_for_pieces(pieces) { "for {pieces}", "para {pieces}" }
    pot_by_formula(printed, loss) { "{printed} go onto the garments, {loss} stay in pot, screen and flood. Nothing alike was weighed yet.", "{printed} van a las prendas, {loss} quedan en bote, pantalla y racleta. Aún no se ha pesado nada parecido." }
    pot_by_experience(weighings, alike, ratio) { "By {weighings} of {alike}: {ratio} times what is on paper.", "Según {weighings} de {alike}: {ratio} veces lo del papel." }
    pot_between(least, most) { "They lay between {least} and {most}.", "Estuvieron entre {least} y {most}." }
    pot_weighings[n] { "{n} weighing" | "{n} weighings", "{n} pesada" | "{n} pesadas" }
    pot_alike_ink { "this ink on this fabric and mesh", "esta tinta en esta tela y malla" }
    pot_alike_mesh { "this fabric and mesh", "esta tela y malla" }
    pot_alike_fabric { "this fabric", "esta tela" }
    pot_alike_any { "other runs", "otras tiradas" }
    pot_print_left(pieces) { "For the {pieces} left of this run.", "Para lo que queda de esta tirada: {pieces}." }
    pot_print_none_left { "No pieces are left of this run: shown for one.", "No quedan piezas de esta tirada: se dice para una." }
    pot_print_wait { "Type the art's size and the mesh's volume.", "Escribe el tamaño del arte y el volumen de la malla." }
    pot_coverage_hint { "Of that rectangle.", "De ese rectángulo." }
    pot_mesh_volume { "Ink the mesh holds", "Tinta que carga la malla" }
    pot_mesh_volume_hint { "From the mesh's data sheet.", "De la ficha de la malla." }
    pot_mesh_volume_link { "Work it out from the mesh", "Calcularlo de la malla" }
    // Common practice, no source.
    pot_screen_decides(used, charge) { "The run uses {used}, but a screen needs about {charge} to flood and print evenly down to the last piece (common practice). Mix {charge}, or type another weight for the pot. What is left goes back into the pot.", "La tirada gasta {used}, pero una pantalla necesita unos {charge} para cubrirse e imprimir parejo hasta la última pieza (práctica habitual). Mezcla {charge} o escribe otro peso para el bote. Lo que sobra vuelve al bote." }
    pot_garments_decide(charge) { "The garments decide: they take more than the {charge} that a screen needs at least (common practice). Mix some more, so that there is ink in front of the squeegee down to the last piece. What is left goes back into the pot.", "Deciden las prendas: llevan más que los {charge} que una pantalla necesita como mínimo (práctica habitual). Mezcla algo más, para que haya tinta ante la racleta hasta la última pieza. Lo que sobra vuelve al bote." }
    pot_loss { "Mixed in addition", "De más" }
    pot_loss_hint { "For what stays in pot, screen and flood.", "Por lo que queda en bote, pantalla y racleta." }
    pot_add_to(name) { "Add to {name}", "Añadir a {name}" }
    pot_which_component { "What", "Qué" }
    pot_pick_other { "another", "otro" }
    pot_goes_in { "What goes in", "Lo que se echa" }
    pot_shows_total(now) { "The scale shows, all told (now {now})", "La báscula marca, en total (ahora {now})" }
    pot_add_it { "Add it", "Añadir" }
    pot_added_notice { "It is in.", "Añadido." }
    pot_after_wait { "Pick what, type how much: what the pot will hold stands here before it is said.", "Elige qué y escribe cuánto: aquí se ve lo que tendrá el bote antes de anotarlo." }
    pot_then_holds(grams) { "Then it holds {grams}", "Entonces tendrá {grams}" }
    pot_was(percent) { "was {percent}", "era {percent}" }
    pot_touch_more(name) { "a touch more {name}", "una pizca más de {name}" }
    pot_too_light { "too light", "muy claro" }
    pot_too_dark { "too dark", "muy oscuro" }
    pot_too_dull { "too dull", "muy apagado" }
    pot_too_thick { "too thick", "muy espeso" }
    pot_photo_after { "Photo and reading come next.", "Foto y lectura vienen después." }
    pot_now_holds(grams) { "The pot holds {grams}", "El bote tiene {grams}" }
    pot_same_again { "The same again", "Lo mismo otra vez" }
    pot_something_else { "Something else", "Otra cosa" }
    pot_read_it { "Read a swatch", "Leer una muestra" }
    pot_reading_off { "Take the reading off", "Quitar la lectura" }
    pot_reading_off_notice { "Reading taken off.", "Lectura quitada." }
    pot_no_components { "Nothing to add yet", "Aún no hay qué añadir" }
    pot_no_components_text { "Enter the shop's pigments, bases and additives first.", "Anota primero los pigmentos, bases y aditivos del taller." }
    pot_new_component { "New component", "Componente nuevo" }
    pot_label_yes(client, on) { "Approved: {client}, {on}", "Aprobado: {client}, {on}" }
    pot_label_yes_alone(on) { "Approved {on}", "Aprobado el {on}" }
    pot_label_by(by) { "made by {by}", "hecho por {by}" }
    pot_label_more[n] { "and {n} more" | "and {n} more", "y {n} más" | "y {n} más" }
    pot_label_print { "Print", "Imprimir" }
    pot_label_keep { "Save as a picture", "Guardar como imagen" }
    pot_label_hint { "It prints as wide as the paper; the picture is for a label printer or a message.", "Se imprime tan ancha como el papel; la imagen es para una etiquetadora o un mensaje." }
    pot_label_not_left { "The browser did not let the picture out. Print it, or take a screenshot.", "El navegador no dejó salir la imagen. Imprímela o haz una captura." }
}

/// The decimal mark of the language.
pub fn decimal_mark() -> &'static str {
    match Locale::current().language {
        Language::English => ".",
        Language::Spanish => ",",
    }
}

/// A weight as a scale with this readability shows it, with all its decimals.
pub fn pot_weight(grams: Grams, step: Grams) -> String {
    let decimals = scale_decimals(step, units());
    let value = grams.in_units(units());
    format!("{}\u{a0}{}", format!("{value:.decimals$}").replace('.', decimal_mark()), unit_weight())
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
