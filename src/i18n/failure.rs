//! Messages: failures on the press.

use super::common::something_else;
use super::locale::localized;
use super::messages::messages;
use super::screens::burn_step;
use lastpull_core::failure::{FailureKind, GridCell, Remedy};
use lastpull_core::screen::{BurnStep, ScreenState};

messages! {
    act_failed { "Screen failed", "Falló pantalla" }
    failure_new { "Something failed", "Algo falló" }
    failure_on_screen(what, label) { "{what} · {label}", "{what} · {label}" }
    failure_stands { "Press down", "Prensa parada" }
    failure_stood { "Downtime", "Tiempo parada" }
    failure_stands_for(time) { "Press down {time}", "Prensa parada {time}" }
    failure_stood_for(time) { "down {time}", "parada {time}" }
    failure_look_at[n] { "{n} piece to check" | "{n} pieces to check", "{n} pieza por revisar" | "{n} piezas por revisar" }
    failure_to_do { "still open", "sin cerrar aún" }
    failure_spoiled_n[n] { "{n} misprint" | "{n} misprints", "{n} defectuosa" | "{n} defectuosas" }
    failure_good { "Good", "Buenas" }
    failure_suspect { "Suspect", "Dudosas" }
    failure_spoiled { "Misprints", "Defectuosas" }
    failure_heaps { "Pieces in this run", "Piezas del tiraje" }
    failure_if_now { "If you resume now", "Si reanudas ahora" }
    failure_with_screen { "With the new screen", "Con la pantalla nueva" }
    failure_as_it_runs { "At this pace", "A este ritmo" }
    failure_pulls_again(time) { "Printing again about {time}", "Imprime otra vez, aprox.: {time}" }
    failure_not_recorded { "not entered", "sin registrar" }
    failure_next { "Next", "Siguiente" }
    failure_step_kind { "What failed?", "¿Qué falló?" }
    failure_which_screen { "Which screen?", "¿Qué pantalla?" }
    failure_not_listed(label) { "{label}, new on the list", "{label}, nueva en la lista" }
    failure_step_mark { "Where on the print?", "¿En qué parte del estampado?" }
    failure_mark_hint { "Tap the spot as you look at the print. Arrow keys move the mark.", "Toca el lugar tal como ves el estampado. Las flechas mueven la marca." }
    failure_mark_label(place) { "Place on the print: {place}", "Lugar en el estampado: {place}" }
    failure_mark_none { "none marked", "sin marcar" }
    failure_mark_exact(right, down) { ": {right}% from the left, {down}% from the top", ": {right}\u{a0}% desde la izquierda, {down}\u{a0}% desde arriba" }
    failure_mark_clear { "Clear the mark", "Quitar la marca" }
    failure_step_since { "Pieces since the last good one", "Piezas desde la última buena" }
    failure_since_hint { "How many were printed since someone last saw a good one? They are suspect until checked.", "¿Cuántas se imprimieron desde la última que se vio buena? Son dudosas hasta revisarlas." }
    failure_since_none { "None", "Ninguna" }
    failure_since_all(n) { "All {n}", "Todas: {n}" }
    failure_since_more { "One more", "Una más" }
    failure_since_less { "One less", "Una menos" }
    failure_since_last[n] { "The last {n} piece is suspect" | "The last {n} pieces are suspect", "La última pieza es dudosa ({n})" | "Las últimas {n} piezas son dudosas" }
    failure_since_no { "No piece is suspect", "Ninguna pieza es dudosa" }
    failure_since_nothing { "Nothing was counted before it failed.", "No se había contado nada antes del fallo." }
    failure_step_remedy { "What's the fix?", "¿Cómo se arregla?" }
    failure_tape_hint { "on the print side, over the hole", "por el lado de impresión, sobre el poro" }
    failure_block_hint { "touch up, let it dry", "retocar y dejar secar" }
    failure_clean_hint { "clear the mesh, spot-clean", "destapar la malla, limpiar la mancha" }
    failure_burn_hint { "a new screen takes its place", "otra pantalla ocupa su lugar" }
    failure_solvent { "Spot remover and screen cleaner: fresh air, gloves, goggles, no heat or sparks nearby. Follow their safety data sheets (SDS).", "Quitamanchas y limpiador: ventilación, guantes, gafas protectoras y nada caliente ni chispas cerca. Sigue sus hojas de seguridad (SDS)." }
    failure_lamp { "Exposure unit: keep eyes and skin out of its light. Follow the manufacturer's manual.", "Unidad de exposición: ni ojos ni piel en su luz. Sigue el manual del fabricante." }
    failure_burn_title { "Which screen will you expose?", "¿Qué pantalla vas a exponer?" }
    failure_burn_same { "same mesh", "misma malla" }
    failure_burn_wanted(title) { "planned for {title}", "prevista para {title}" }
    failure_burn_pulls(time) { "printing about {time}", "imprime, aprox.: {time}" }
    failure_burn_new { "Clean frame not on the list", "Marco limpio que no está en la lista" }
    failure_burn_label { "Screen label", "Etiqueta" }
    failure_burn_it { "Expose this one", "Exponer esta" }
    failure_burn_none { "No coated or clean screen is on the list.", "No hay pantallas emulsionadas ni limpias en la lista." }
    failure_burn_other { "Change screen", "Cambiar de pantalla" }
    failure_burning(label) { "Screen {label}", "Pantalla {label}" }
    failure_tick_hint { "Tick each step when it is done.", "Marca cada paso al terminarlo." }
    failure_step_any_moment { "any minute now", "en cualquier momento" }
    failure_ready { "Ready to print. Set up, register, then resume.", "Lista para imprimir. Monta, registra y reanuda." }
    failure_coated { "coated", "emulsionada" }
    failure_burned { "already exposed for this", "ya expuesta para esto" }
    failure_clean_screen { "clean", "limpia" }
    failure_go_on { "Resume", "Reanudar" }
    failure_to_count { "Go to count", "Ir al conteo" }
    failure_judge_title { "Check the suspect pieces", "Revisar las dudosas" }
    failure_judge_hint { "Misprints come off the count: they are printed again and their garments replaced.", "Las defectuosas salen del conteo: se imprimen otra vez y se reponen sus prendas." }
    failure_judged { "All checked", "Todas revisadas" }
    failure_all_good { "All good", "Todas buenas" }
    failure_all_spoiled { "All misprints", "Todas defectuosas" }
    failure_size_open[n] { "{n} to check" | "{n} to check", "{n} por revisar" | "{n} por revisar" }
    failure_one_good(size) { "{size}: one more good", "{size}: una buena más" }
    failure_one_less_good(size) { "{size}: one less good", "{size}: una buena menos" }
    failure_one_spoiled(size) { "{size}: one more misprint", "{size}: una defectuosa más" }
    failure_one_less_spoiled(size) { "{size}: one less misprint", "{size}: una defectuosa menos" }
    failure_judged_good[n] { "{n} piece is good." | "{n} pieces are good.", "{n} pieza buena." | "{n} piezas buenas." }
    failure_judged_spoiled[n] { "{n} misprint: print one more." | "{n} misprints: print {n} more.", "{n} pieza defectuosa: imprime una más." | "{n} piezas defectuosas: imprime {n} más." }
    failure_found_by(who, when) { "Found by {who}, {when}", "Visto por {who}, {when}" }
    failure_found_at(when) { "Found {when}", "Visto: {when}" }
    failure_another { "Something else failed", "Falló otra cosa" }
    failure_delete { "Delete this failure", "Borrar este fallo" }
    failure_deleted { "The failure was deleted.", "Fallo borrado." }
    failures_title { "What failed", "Lo que falló" }
    failures_today { "Failed today", "Fallos de hoy" }
    failures_cost(time, spoiled) { "{time} downtime; {spoiled}.", "Tiempo parada: {time}; {spoiled}." }
    failures_suspect[n] { "{n} counted piece is still suspect." | "{n} counted pieces are still suspect.", "{n} pieza contada aún es dudosa." | "{n} piezas contadas aún son dudosas." }
    failure_kind_pinhole { "Pinhole", "Poro" }
    failure_kind_clog { "Clogged mesh", "Malla tapada" }
    failure_kind_spot { "Spot", "Mancha" }
    failure_kind_breakdown { "Stencil breakdown", "Se suelta la emulsión" }
    failure_kind_tear { "Torn mesh", "Malla rota" }
    failure_kind_ghost { "Ghost image", "Imagen fantasma" }
    failure_kind_registration { "Out of register", "Fuera de registro" }
    failure_tape { "Tape over it", "Tapar con cinta" }
    failure_block { "Block it out", "Bloquear" }
    failure_clean { "Clean it", "Limpiar" }
    failure_burn { "Expose again", "Exponer otra vez" }
    failure_burn_coat { "Degrease and coat", "Desengrasar y emulsionar" }
}

/// The name of a kind of failure.
pub fn failure_kind(kind: Option<FailureKind>) -> &'static str {
    match kind {
        None => failure_new(),
        Some(FailureKind::Pinhole) => failure_kind_pinhole(),
        Some(FailureKind::Clog) => failure_kind_clog(),
        Some(FailureKind::Spot) => failure_kind_spot(),
        Some(FailureKind::Breakdown) => failure_kind_breakdown(),
        Some(FailureKind::Tear) => failure_kind_tear(),
        Some(FailureKind::Ghost) => failure_kind_ghost(),
        Some(FailureKind::RegistrationDrift) => failure_kind_registration(),
        Some(FailureKind::Other) => something_else(),
    }
}

/// The kind of failure, and its screen if known.
pub fn failure_name(kind: Option<FailureKind>, screen: Option<&String>) -> String {
    let what = failure_kind(kind);
    screen.map_or_else(|| what.to_owned(), |label| failure_on_screen(what, label))
}

/// The name of a remedy, and how it is done.
pub fn failure_remedy(remedy: Remedy) -> (&'static str, &'static str) {
    match remedy {
        Remedy::Tape => (failure_tape(), failure_tape_hint()),
        Remedy::BlockOut => (failure_block(), failure_block_hint()),
        Remedy::Clean => (failure_clean(), failure_clean_hint()),
        Remedy::BurnAgain => (failure_burn(), failure_burn_hint()),
    }
}

/// The name of a step of burning a screen.
pub fn failure_burn_step(step: BurnStep) -> &'static str {
    if step == BurnStep::Coat { failure_burn_coat() } else { burn_step(step) }
}

/// The state of a screen in stock.
pub fn failure_stock_state(state: ScreenState) -> &'static str {
    match state {
        ScreenState::Coated => failure_coated(),
        ScreenState::Exposed | ScreenState::Ready => failure_burned(),
        ScreenState::Clean
        | ScreenState::OnPress
        | ScreenState::ToReclaim
        | ScreenState::InBath
        | ScreenState::Failed => failure_clean_screen(),
    }
}

/// The name of one of the nine areas of a print: column from the left, row from the top, both from 0.
pub fn failure_ninth(cell: GridCell) -> &'static str {
    let english = [
        ["top left", "top center", "top right"],
        ["left", "center", "right"],
        ["bottom left", "bottom center", "bottom right"],
    ];
    let spanish = [
        ["arriba a la izquierda", "arriba al centro", "arriba a la derecha"],
        ["a la izquierda", "en el centro", "a la derecha"],
        ["abajo a la izquierda", "abajo al centro", "abajo a la derecha"],
    ];
    localized(english, spanish)[cell.row.min(2)][cell.column.min(2)]
}
