//! Messages: the reclaim bath.

use super::format::number;
use super::messages::messages;
use lastpull_core::screen::{BatchTimeKind, BathTrend, ScreensLeft};

messages! {
    bath_min_a_screen { "min per screen", "min por pantalla" }
    bath_fresh_was(minutes) { "{minutes} when fresh", "{minutes} recién cargado" }
    bath_now { "Now", "Ahora" }
    bath_fresh { "When fresh", "Recién cargado" }
    bath_screens_wait[n] { "{n} screen waiting" | "{n} screens waiting", "{n} pantalla espera" | "{n} pantallas esperan" }
    bath_screens_in[n] { "{n} in the tank" | "{n} in the tank", "{n} en el tanque" | "{n} en el tanque" }
    bath_more_batches[n] { "{n} more batch to learn its pace" | "{n} more batches to learn its pace", "Falta {n} tanda para conocer su ritmo" | "Faltan {n} tandas para conocer su ritmo" }
    bath_not_charged { "Log when you charge the tank, and you'll see when it slows down.", "Anota cuándo cargas el tanque y verás cuándo se vuelve lento." }
    bath_too_few[n] { "Need {n} more batch to tell." | "Need {n} more batches to tell.", "Muy pocas tandas para decirlo: falta {n}." | "Muy pocas tandas para decirlo: faltan {n}." }
    bath_steady { "Steady: no real slowdown.", "Estable: no se ha vuelto más lento." }
    bath_far_off { "Slowing a little; no recharge soon.", "Un poco más lento; falta para recargar." }
    bath_about[likely] { "Slowing down. About {likely} more screen before a recharge." | "Slowing down. About {likely} more screens before a recharge.", "Más lento. Alrededor de {likely} pantalla más antes de recargar." | "Más lento. Unas {likely} pantallas más antes de recargar." }
    bath_about_range(least, most) { "Probably between {least} and {most}.", "Probablemente entre {least} y {most}." }
    bath_about_least(least) { "Probably {least} or more.", "Probablemente {least} o más." }
    bath_about_batches[n] { "{n} batch of the usual size" | "{n} batches of the usual size", "{n} tanda de tamaño normal" | "{n} tandas de tamaño normal" }
    bath_recharge { "Time to recharge the tank: screens now take as long as your limit.", "Hora de recargar el tanque: cada pantalla ya tarda tu límite." }
    bath_sizes_differ { "The last batches were a different size than the first, so the comparison is rough.", "Las últimas tandas son de otro tamaño que las primeras; la comparación no es exacta." }
    bath_in_title { "In the tank", "En el tanque" }
    bath_in_none { "No screens in the tank.", "No hay pantallas en el tanque." }
    bath_in_since(time) { "since {time}", "desde las {time}" }
    bath_over { "past its usual time: check it", "ya pasó su tiempo normal: revisa" }
    bath_usual_unknown { "no usual time yet", "aún sin tiempo normal" }
    bath_take_out { "Take out", "Sacar" }
    bath_wait_title { "Waiting", "Esperan" }
    bath_wait_none { "No screens waiting to be reclaimed.", "No hay pantallas por recuperar." }
    bath_queue_batches[n] { "{n} batch" | "{n} batches", "{n} tanda" | "{n} tandas" }
    bath_queue_time(time) { "{time} until the last one is out, not counting loading and rinsing", "{time} hasta sacar la última, sin contar meter y enjuagar" }
    bath_queue_earlier { "Based on the first batches of the last charge.", "Según las primeras tandas de la carga anterior." }
    bath_queue_no_capacity { "Enter how many fit at once to see the time for all of them.", "Pon cuántas caben a la vez y verás el tiempo de todas." }
    bath_put_in { "Put screens in", "Meter pantallas" }
    bath_put_in_these { "Put in", "Meter" }
    bath_pick { "Which ones go in?", "¿Cuáles entran?" }
    bath_count { "Total screens", "Total de pantallas" }
    bath_count_hint { "Only if some are not on the list.", "Solo si hay alguna que no está en la lista." }
    bath_count_plain { "Number of screens", "Número de pantallas" }
    bath_capacity_over(fit) { "More than the {fit} that fit.", "Más de las {fit} que caben." }
    bath_put_in_done[n] { "{n} screen is in the tank." | "{n} screens are in the tank.", "{n} pantalla en el tanque." | "{n} pantallas en el tanque." }
    bath_out_title { "Out of the tank", "Fuera del tanque" }
    bath_out_clean { "Which came clean?", "¿Cuáles salieron limpias?" }
    bath_out_clean_hint { "The others go back to waiting.", "Las demás vuelven a esperar." }
    bath_out_none_clean { "None are clean: leave them in.", "Ninguna está limpia: déjalas dentro." }
    bath_out_time { "How long did it take?", "¿Cuánto tardó?" }
    bath_out_elapsed(time) { "By the clock: {time}", "Según el reloj: {time}" }
    bath_out_whole { "Minutes for the batch", "Minutos de la tanda" }
    bath_each { "Minutes per screen", "Minutos por pantalla" }
    bath_out_minutes { "Minutes", "Minutos" }
    bath_out_count { "How many came clean", "Cuántas salieron limpias" }
    bath_out_count_hint(n) { "Blank for all {n}.", "Vacío: las {n}." }
    bath_out_button { "Out and clean", "Fuera y limpias" }
    bath_out_done { "The batch is out.", "La tanda está fuera." }
    bath_out_forget { "Never went in: delete", "No llegó a entrar: borrar" }
    bath_note_out { "Log a finished batch", "Anotar tanda sacada" }
    bath_batch_deleted { "Batch deleted.", "Tanda borrada." }
    bath_chart_label(list) { "Minutes per screen, batch by batch: {list}.", "Minutos por pantalla, tanda a tanda: {list}." }
    bath_chart_fresh(minutes) { "fresh {minutes}", "nuevo {minutes}" }
    bath_chart_limit(minutes) { "recharge {minutes}", "recargar {minutes}" }
    bath_chart_oldest { "since charged", "desde la carga" }
    bath_chart_latest { "now", "ahora" }
    bath_chart_beyond { "A batch that took far longer is drawn at the top edge.", "Una tanda mucho más larga se dibuja en el borde superior." }
    bath_batches_title(n) { "Batches of this charge ({n})", "Tandas de esta carga ({n})" }
    bath_no_time { "time not known", "tiempo desconocido" }
    bath_delete_batch(what) { "Delete the batch of {what}", "Borrar la tanda de {what}" }
    bath_charges_title { "Charges", "Cargas" }
    bath_charged_on(when) { "Charged {when}", "Cargado: {when}" }
    bath_this_charge { "in the tank now", "ahora en el tanque" }
    bath_charge { "Log a charge", "Anotar carga" }
    bath_charge_title { "New charge", "Carga nueva" }
    bath_charge_text { "From now on it's compared with its first three batches.", "Desde ahora se compara con sus tres primeras tandas." }
    bath_chemistry { "Product and mix ratio", "Producto y dilución" }
    bath_chemistry_hint { "In your own words.", "Con tus palabras." }
    bath_charge_edit_title { "Edit charge", "Editar carga" }
    bath_charge_save { "Save charge", "Guardar carga" }
    bath_charged { "Charge saved: a new baseline starts.", "Carga guardada: empieza otra comparación." }
    bath_charge_deleted { "Charge deleted; its batches now count with the one before.", "Carga borrada; sus tandas cuentan con la anterior." }
    bath_no_chemistry { "Not entered", "Sin anotar" }
    bath_settings { "Tank settings", "Ajustes del tanque" }
    bath_capacity { "Screens that fit at once", "Pantallas que caben a la vez" }
    bath_recharge_at { "Recharge at", "Recargar al llegar a" }
    bath_recharge_at_unit { "× fresh", "× nuevo" }
    bath_recharge_at_hint(own) { "Times the minutes per screen when fresh. Blank: {own}, our default.", "Veces el tiempo por pantalla recién cargado. Vacío: {own}, valor nuestro." }
    bath_note { "Tank note", "Nota del tanque" }
}

/// Minutes per screen, with one decimal.
pub fn bath_time(minutes: f64) -> String {
    number(minutes, 1)
}

/// Whether the bath is slowing down, and when to recharge it.
pub fn bath_trend_words(trend: BathTrend) -> String {
    match trend {
        BathTrend::TooFew { more } => bath_too_few(more as u32),
        BathTrend::Steady => bath_steady().into(),
        BathTrend::Slowing(ScreensLeft::FarOff) => bath_far_off().into(),
        BathTrend::Slowing(ScreensLeft::About { likely, .. }) => bath_about(likely),
        BathTrend::Recharge => bath_recharge().into(),
    }
}

/// How certain the trend is; `None` if it is not given in screens.
pub fn bath_trend_range(trend: BathTrend) -> Option<String> {
    match trend {
        BathTrend::Slowing(ScreensLeft::About { least, most: Some(most), .. }) => Some(bath_about_range(least, most)),
        BathTrend::Slowing(ScreensLeft::About { least, most: None, .. }) => Some(bath_about_least(least)),
        BathTrend::Slowing(ScreensLeft::FarOff)
        | BathTrend::TooFew { .. }
        | BathTrend::Steady
        | BathTrend::Recharge => None,
    }
}

/// How to enter a batch's time; `elapsed` is the time since it went in.
pub fn bath_time_kind(kind: BatchTimeKind, elapsed: &str) -> String {
    match kind {
        BatchTimeKind::Elapsed => bath_out_elapsed(elapsed),
        BatchTimeKind::Whole => bath_out_whole().into(),
        BatchTimeKind::EachScreen => bath_each().into(),
    }
}
