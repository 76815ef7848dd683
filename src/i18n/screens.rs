//! Messages: the shop's screens.

use super::day::on_press;
use super::format::{duration, moment, number};
use super::messages::messages;
use lastpull_core::screen::{AgeWarning, BurnStep, OtherMesh, ScreenState};
use lastpull_core::time::{Millis, WallTime};

messages! {
    screens_add { "Add screens", "Agregar" }
    screens_empty_title { "No screens yet", "Aún no hay pantallas" }
    screens_empty_text {
        "Add your frames, several at once: “1-12”. Then the day's runs show which ones to prepare, and by when.",
        "Agrega tus marcos, varios a la vez: «1-12». Después los tirajes del día dirán cuáles preparar y para cuándo."
    }
    needs_title { "To prepare for upcoming runs", "Por preparar para los próximos tirajes" }
    needs_none { "All screens for upcoming runs are ready.", "Las pantallas de los próximos tirajes están listas." }
    needs_late(late, ready, wanted) { "{late} late: ready at {ready} at the earliest, needed by {wanted}.", "{late} de retraso: lista a las {ready} lo más pronto (se necesita a las {wanted})." }
    needs_in_time(ready, wanted) { "Needed by {wanted}. Start now, ready at {ready}.", "Se necesita a las {wanted} (si empiezas ya, lista a las {ready})." }
    other_mesh_is(label, mesh) { "screen {label} is listed as {mesh}", "la pantalla {label} está anotada como {mesh}" }
    needs_also { "Also for", "También para" }
    needs_no_labels { "No screens assigned to this run.", "Este tiraje no tiene pantallas asignadas." }
    needs_name_them { "Assign screens", "Asignar pantallas" }
    needs_unlisted(label) { "{label}: not on the list", "{label}: no está en la lista" }
    needs_add { "Add to the list", "Agregar a la lista" }
    needs_other_art(label, title) { "{label} still has {title} on it", "{label} aún tiene {title}" }
    begin_by(time) { "start by {time}", "empieza antes de {time}" }
    begin_late(time) { "late since {time}", "atrasado desde {time}" }
    screens_n[n] { "{n} screen" | "{n} screens", "{n} pantalla" | "{n} pantallas" }
    burn_step_done { "Done", "Hecho" }
    burn_done_for(step, labels) { "{step}, done: {labels}.", "{step}, hecho: {labels}." }
    burn_reclaim { "Reclaim", "Recuperar" }
    burn_coat { "Coat", "Emulsionar" }
    burn_dry { "Dry", "Secar" }
    burn_expose { "Expose", "Exponer" }
    burn_wash_dry { "Wash out and dry", "Revelar y secar" }
    burn_tape { "Tape", "Encintar" }
    state_clean { "Clean", "Limpia" }
    state_coated { "Coated", "Emulsionada" }
    state_exposed { "Exposed", "Expuesta" }
    state_ready { "Ready", "Lista" }
    state_to_reclaim { "To reclaim", "Por recuperar" }
    state_in_bath { "In the tank", "En el tanque" }
    state_failed { "Failed", "Fallida" }
    board_title { "All screens", "Todas las pantallas" }
    board_show { "Show", "Mostrar" }
    board_all(n) { "All {n}", "Todas {n}" }
    board_warned(n) { "Past limit {n}", "Vencidas {n}" }
    board_search { "Find by label, mesh, emulsion or job", "Buscar marca, malla, emulsión o pedido" }
    board_none { "No matching screens.", "Ninguna pantalla coincide." }
    screens_select { "Select", "Elegir" }
    screens_select_all_of(state) { "Select all: {state}", "Elegir todas: {state}" }
    screens_select_all { "Select all", "Elegir todas" }
    screens_select_hint { "Tap the screens to change.", "Toca las pantallas que quieras cambiar." }
    screens_selected_n[n] { "{n} selected" | "{n} selected", "{n} elegida" | "{n} elegidas" }
    screens_select_no_way { "These screens have no next step in common.", "Estas pantallas no tienen un paso siguiente en común." }
    move_clean { "Mark clean", "Marcar limpia" }
    move_coated { "Mark coated", "Marcar emulsionada" }
    move_exposed { "Mark exposed", "Marcar expuesta" }
    move_ready { "Mark ready", "Marcar lista" }
    move_on_press { "Put on press", "Poner en prensa" }
    move_to_reclaim { "Send to reclaim", "Mandar a recuperar" }
    move_in_bath { "Put in tank", "Meter al tanque" }
    move_failed { "Mark failed", "Marcar fallida" }
    state_exposed_hint { "Still to wash out, dry and tape; then it's ready.", "Falta revelar, secar y encintar; después está lista." }
    state_to_tape_hint { "Still to tape; then it's ready.", "Falta encintar; después está lista." }
    state_to_reclaim_hint { "Put it in the dip tank, or reclaim it by hand and mark it clean.", "Métela al tanque, o recupérala a mano y márcala limpia." }
    screens_moved(screens, state) { "{screens}: {state}.", "{screens}: {state}." }
    screen_days_n[n] { "{n} day" | "{n} days", "{n} día" | "{n} días" }
    screen_too_old(days) { "Past limit: {days}", "Vencida: {days}" }
    screen_old_coat(days, limit) { "Coated {days} ago; your limit is {limit}. An old coat may need longer exposure or break down: test first.", "Emulsionada hace {days}; tu límite es {limit}. Una capa vieja puede pedir más exposición o no aguantar: pruébala antes." }
    screen_old_stencil(days, limit) { "Exposed {days} ago; your limit is {limit}. The longer it sits, the harder it is to reclaim.", "Expuesta hace {days}; tu límite es {limit}. Cuanto más espera, más cuesta recuperarla." }
    screen_since(moment, age) { "since {moment} ({age})", "desde {moment} ({age})" }
    screen_for(age) { "for {age}", "hace {age}" }
    screen_is_dry { "It's dry", "Ya está seca" }
    screen_other_state { "Change status", "Cambiar estado" }
    screen_carries { "Image", "Imagen" }
    screen_data { "Mesh and emulsion", "Malla y emulsión" }
    screen_mesh { "Mesh", "Malla" }
    screen_mesh_unknown { "not entered", "sin anotar" }
    screen_sheet { "Data sheet", "Ficha técnica" }
    sheet_thread(um) { "thread {um}\u{a0}µm", "hilo {um}\u{a0}µm" }
    sheet_opening(um) { "opening {um}\u{a0}µm", "luz {um}\u{a0}µm" }
    sheet_open_area(percent) { "{percent}% open", "{percent}\u{a0}% abierta" }
    sheet_thickness(um) { "{um}\u{a0}µm thick", "espesor {um}\u{a0}µm" }
    sheet_dyed { "dyed", "teñida" }
    screen_volume { "Theoretical ink volume", "Volumen teórico de tinta" }
    screen_volume_of(n) { "{n}\u{a0}cm³/m²", "{n}\u{a0}cm³/m²" }
    screen_volume_hint { "Open area × mesh thickness. What a print really uses differs: weigh it.", "Área abierta × espesor de la malla. Lo que gasta un estampado varía: pésalo." }
    screen_lacks_open { "needs open area or mesh opening from the data sheet", "falta el área abierta o la luz de malla de su ficha" }
    screen_lacks_thickness { "needs mesh thickness from the data sheet", "falta el espesor de su ficha" }
    screen_tension { "Tension", "Tensión" }
    unit_tension { "N/cm", "N/cm" }
    screen_emulsion { "Emulsion", "Emulsión" }
    screen_coats { "Coats", "Capas" }
    coats_of(print, squeegee) { "{print} print side, {squeegee} squeegee side", "{print} lado de impresión, {squeegee} lado de rasero" }
    screen_colour { "Print color", "Color que imprime" }
    screen_replaces { "Replaces", "Sustituye a" }
    screen_replaced_by { "Replaced by", "Sustituida por" }
    screen_steps { "In progress", "En preparación" }
    burn_over { "should be dry by now", "ya debería estar seca" }
    burn_takes(time) { "allow {time}", "cuenta con {time}" }
    screen_failures { "Failures", "Fallos" }
    failure_open { "still open", "por resolver" }
    screen_history { "History", "Historial" }
    history_dry { "Dry", "Seca" }
    history_not_dry { "Not dry yet", "Aún no seca" }
    history_by(moment, who) { "{moment}, {who}", "{moment}, {who}" }
    screen_take_back { "Undo", "Deshacer" }
    screen_taken_back(label) { "Screen {label}: undone.", "Pantalla {label}: deshecho." }
    screen_deleted(label) { "Screen {label} deleted.", "Pantalla {label}: borrada." }
    screen_new_title { "Add screens", "Agregar pantallas" }
    screen_edit_title { "Edit screen", "Editar pantalla" }
    screen_label { "Label on the frame", "Marca en el marco" }
    screen_labels_hint { "Several at once: “1-12”, “A1–A6” or “3, 5, 8”.", "Varias a la vez: «1-12», «A1–A6» o «3, 5, 8»." }
    screen_label_hint { "Same as on your runs.", "Igual que en tus tirajes." }
    adds_n[n] { "Adds {n} screen" | "Adds {n} screens", "Agrega {n} pantalla" | "Agrega {n} pantallas" }
    adds_these(adds, labels) { "{adds}: {labels}", "{adds}: {labels}" }
    already_listed(labels) { "Already on the list: {labels}", "Ya en la lista: {labels}" }
    screen_mesh_count { "Mesh count", "Malla" }
    mesh_per { "Counted per", "Se cuenta por" }
    mesh_per_inch { "inch", "pulgada" }
    mesh_per_centimetre { "centimeter", "centímetro" }
    screen_state_now { "Status", "Estado" }
    sheet_title { "Mesh data sheet", "Ficha de la malla" }
    sheet_hint { "From the mesh manufacturer's data sheet; thread diameter alone misleads on fine mesh.", "De la ficha del fabricante; el diámetro del hilo por sí solo engaña en mallas finas." }
    sheet_take(values) { "Another screen of this mesh has: {values}.", "Otra pantalla con esta malla tiene: {values}." }
    sheet_take_button { "Use these", "Usar estos" }
    screen_form_thread { "Thread", "Hilo" }
    screen_form_opening { "Opening", "Luz de malla" }
    screen_form_open_area { "Open area", "Área abierta" }
    screen_form_thickness { "Thickness", "Espesor" }
    screen_form_dyed { "Dyed mesh", "Malla teñida" }
    screen_form_dyed_hint { "Yellow or amber; needs longer exposure.", "Amarilla o ámbar; pide más exposición." }
    screen_form_tension_hint { "Reading of your tension meter.", "Lo que marca tu tensiómetro." }
    screen_form_coating { "Emulsion and tension", "Emulsión y tensión" }
    screen_form_coats_print { "Coats, print side", "Capas, lado de impresión" }
    screen_form_coats_squeegee { "Coats, squeegee side", "Capas, lado de rasero" }
    screen_form_more { "What it prints, notes", "Qué imprime, notas" }
    screen_form_colour_hint { "“Underbase”, “Highlight white”.", "«Base», «Blanco final»." }
    screens_added[n] { "{n} screen added." | "{n} screens added.", "{n} pantalla agregada." | "{n} pantallas agregadas." }
    screen_room_title { "Screen room", "Cuarto de pantallas" }
    screen_exposure { "Exposure time", "Tiempo de exposición" }
    exposure_known(time, lamp) { "Expose for {time} ({lamp})", "Exponer {time} ({lamp})" }
    screen_room_limits { "Warn about old screens", "Avisar de pantallas viejas" }
    screen_room_limits_hint { "Check your emulsion's data sheet for how long a coat keeps.", "La ficha de tu emulsión dice cuánto dura una capa." }
    screen_room_coated { "Coated for longer than", "Emulsionada más de" }
    screen_room_exposed { "Exposed for longer than", "Expuesta más de" }
    unit_screen_days { "days", "días" }
    screen_room_times { "Time per step", "Tiempo por paso" }
    screen_room_times_hint { "Counted back from when a run needs its screens. Defaults are common practice; drying depends on your room, so enter your own.", "Se cuentan hacia atrás desde que el tiraje necesita sus pantallas. Los primeros valores son práctica común; el secado depende de tu cuarto, así que pon los tuyos." }
    screen_room_each { "Hands-on time is per screen; drying is for all of them at once. For planning only: how long the light is on is under Exposure.", "El trabajo a mano es por pantalla; el secado, para todas a la vez. Solo para planear: cuánto dura la luz está en Exposición." }
}

/// The name of a screen's state.
pub fn screen_state(state: ScreenState) -> &'static str {
    match state {
        ScreenState::Clean => state_clean(),
        ScreenState::Coated => state_coated(),
        ScreenState::Exposed => state_exposed(),
        ScreenState::Ready => state_ready(),
        ScreenState::OnPress => on_press(),
        ScreenState::ToReclaim => state_to_reclaim(),
        ScreenState::InBath => state_in_bath(),
        ScreenState::Failed => state_failed(),
    }
}

/// What moving a screen to a state is called, as an act.
pub fn screen_move(to: ScreenState) -> &'static str {
    match to {
        ScreenState::Clean => move_clean(),
        ScreenState::Coated => move_coated(),
        ScreenState::Exposed => move_exposed(),
        ScreenState::Ready => move_ready(),
        ScreenState::OnPress => move_on_press(),
        ScreenState::ToReclaim => move_to_reclaim(),
        ScreenState::InBath => move_in_bath(),
        ScreenState::Failed => move_failed(),
    }
}

/// What is still to be done to a screen in this state, where its name does not say; `None` elsewhere.
pub fn screen_state_hint(state: ScreenState) -> Option<&'static str> {
    match state {
        ScreenState::Exposed => Some(state_exposed_hint()),
        ScreenState::ToReclaim => Some(state_to_reclaim_hint()),
        ScreenState::Clean
        | ScreenState::Coated
        | ScreenState::Ready
        | ScreenState::OnPress
        | ScreenState::InBath
        | ScreenState::Failed => None,
    }
}

/// The name of a step on the way to printing.
pub fn burn_step(step: BurnStep) -> &'static str {
    match step {
        BurnStep::Reclaim => burn_reclaim(),
        BurnStep::Coat => burn_coat(),
        BurnStep::Dry => burn_dry(),
        BurnStep::Expose => burn_expose(),
        BurnStep::WashDry => burn_wash_dry(),
        BurnStep::Tape => burn_tape(),
    }
}

/// When something was done, and by whom if known.
pub fn by_whom(at: WallTime, by: Option<String>) -> String {
    let when = moment(at);
    by.map_or(when.clone(), |who| history_by(when, who))
}

/// A tension, from tenths of N/cm.
pub fn tension(tenths: u16) -> String {
    format!("{}\u{a0}{}", number(f64::from(tenths) / 10.0, 1), unit_tension())
}

/// An age in days, in hours below one day, in minutes below one hour.
pub fn age(span: Millis) -> String {
    match (span.whole_days(), span.whole_hours()) {
        (0, 0) => duration(span),
        (0, hours) => format!("{hours}\u{a0}h"),
        (days, _) => screen_days_n(days as u32),
    }
}

/// A short warning that a screen is too old.
pub fn age_warning_short(warning: AgeWarning) -> String {
    let (AgeWarning::Coated { days, .. } | AgeWarning::Exposed { days, .. }) = warning;
    screen_too_old(screen_days_n(days))
}

/// The same with what it means.
pub fn age_warning_long(warning: AgeWarning) -> String {
    match warning {
        AgeWarning::Coated { days, limit } => screen_old_coat(screen_days_n(days), screen_days_n(u32::from(limit))),
        AgeWarning::Exposed { days, limit } => screen_old_stencil(screen_days_n(days), screen_days_n(u32::from(limit))),
    }
}

/// The screens with another mesh than their run asks for.
pub fn other_mesh(rows: &[OtherMesh]) -> String {
    let words = rows.iter().map(|row| other_mesh_is(&row.label, super::format::mesh_count(row.count)));
    let text = words.collect::<Vec<_>>().join(", ");
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}
