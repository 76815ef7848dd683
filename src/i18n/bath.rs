//! Messages: the reclaim bath.

use super::format::number;
use super::messages::messages;
use lastpull_core::screen::{BatchTimeKind, BathTrend, ScreensLeft};

messages! {
    bath_min_a_screen { "min a screen", "min por pantalla" }
    bath_fresh_was(minutes) { "{minutes} when fresh", "{minutes} recién cargado" }
    bath_now { "Now", "Ahora" }
    bath_fresh { "When fresh", "Recién cargado" }
    bath_screens_wait[n] { "{n} screen waits" | "{n} screens wait", "{n} pantalla espera" | "{n} pantallas esperan" }
    bath_screens_in[n] { "{n} in it" | "{n} in it", "{n} dentro" | "{n} dentro" }
    bath_more_batches[n] { "{n} more batch until its pace is known" | "{n} more batches until its pace is known", "Falta {n} tanda para conocer su ritmo" | "Faltan {n} tandas para conocer su ritmo" }
    bath_not_charged { "Note when it was charged, and it tells when it slows.", "Anota cuándo se cargó y dirá cuándo se frena." }
    bath_too_few[n] { "Too few batches to say: {n} more." | "Too few batches to say: {n} more.", "Muy pocas tandas para decirlo: falta {n}." | "Muy pocas tandas para decirlo: faltan {n}." }
    bath_steady { "Steady: no slowing that could not be chance.", "Estable: no se frena más de lo casual." }
    bath_far_off { "Slowing a little; a new charge is far off.", "Se frena un poco; la carga nueva queda lejos." }
    bath_about(likely) { "Slowing. About {likely} more screens until a new charge.", "Se frena. Unas {likely} pantallas más hasta la carga nueva." }
    bath_about_range(least, most) { "Probably between {least} and {most}.", "Probablemente entre {least} y {most}." }
    bath_about_least(least) { "Probably {least} or more.", "Probablemente {least} o más." }
    bath_about_batches[n] { "{n} batch of the usual size" | "{n} batches of the usual size", "{n} tanda de las normales" | "{n} tandas de las normales" }
    bath_recharge { "Charge the bath again: a screen takes as long as you let it.", "Toca cargar el baño: una pantalla ya tarda lo que permites." }
    bath_sizes_differ { "The last batches are of another size than the first, so this is not quite like for like.", "Las últimas tandas son de otro tamaño que las primeras; la comparación no es exacta." }
    bath_in_title { "In the bath", "En el baño" }
    bath_in_none { "Nothing lies in the bath.", "No hay nada en el baño." }
    bath_in_since(time) { "since {time}", "desde las {time}" }
    bath_over { "its usual time is over: look", "ya pasó su tiempo normal: mira" }
    bath_usual_unknown { "no usual time yet", "aún sin tiempo normal" }
    bath_take_out { "Take out", "Sacar" }
    bath_wait_title { "Waiting", "Esperan" }
    bath_wait_none { "No screen waits to be reclaimed.", "Ninguna pantalla espera." }
    bath_queue_batches[n] { "{n} batch" | "{n} batches", "{n} tanda" | "{n} tandas" }
    bath_queue_time(time) { "{time} until the last is out, without loading and rinsing", "{time} hasta sacar la última, sin cargar ni enjuagar" }
    bath_queue_earlier { "Reckoned with the first times of the charge before.", "Con los primeros tiempos de la carga anterior." }
    bath_queue_no_capacity { "Say how many fit in at once, and the time for all of them stands here.", "Di cuántas caben a la vez y aquí saldrá el tiempo de todas." }
    bath_put_in { "Put screens in", "Meter pantallas" }
    bath_put_in_these { "Put in", "Meter" }
    bath_pick { "Which go in?", "¿Cuáles entran?" }
    bath_count { "How many in all", "Cuántas en total" }
    bath_count_hint { "Only where some are not on the list.", "Solo si hay alguna que no está en la lista." }
    bath_count_plain { "How many screens", "Cuántas pantallas" }
    bath_capacity_over(fit) { "More than the {fit} that fit in.", "Más de las {fit} que caben." }
    bath_put_in_done[n] { "{n} screen is in the bath." | "{n} screens are in the bath.", "{n} pantalla en el baño." | "{n} pantallas en el baño." }
    bath_out_title { "Out of the bath", "Fuera del baño" }
    bath_out_clean { "Which came clean?", "¿Cuáles salieron limpias?" }
    bath_out_clean_hint { "The others wait again.", "Las demás vuelven a esperar." }
    bath_out_none_clean { "Not one is clean: leave them in.", "Ninguna está limpia: déjalas dentro." }
    bath_out_time { "How long did it take?", "¿Cuánto tardó?" }
    bath_out_elapsed(time) { "As the clock ran: {time}", "Según el reloj: {time}" }
    bath_out_whole { "Minutes of the batch", "Minutos de la tanda" }
    bath_each { "Minutes a screen", "Minutos por pantalla" }
    bath_out_minutes { "Minutes", "Minutos" }
    bath_out_count { "How many came clean", "Cuántas salieron limpias" }
    bath_out_count_hint(n) { "Empty for all {n}.", "Vacío: las {n}." }
    bath_out_button { "Out and clean", "Fuera y limpias" }
    bath_out_done { "The batch is out.", "La tanda está fuera." }
    bath_out_forget { "It never went in: delete", "No llegó a entrar: borrar" }
    bath_note_out { "Note a batch that is out already", "Anotar una tanda ya sacada" }
    bath_batch_deleted { "The batch was deleted.", "Tanda borrada." }
    bath_chart_label(list) { "Minutes a screen, batch by batch: {list}.", "Minutos por pantalla, tanda a tanda: {list}." }
    bath_chart_fresh(minutes) { "fresh {minutes}", "nuevo {minutes}" }
    bath_chart_limit(minutes) { "charge again {minutes}", "cargar {minutes}" }
    bath_chart_oldest { "since it was charged", "desde la carga" }
    bath_chart_latest { "now", "ahora" }
    bath_chart_beyond { "A batch that took far longer is drawn at the upper edge.", "Una tanda mucho más larga se dibuja en el borde superior." }
    bath_batches_title(n) { "Batches of this charge ({n})", "Tandas de esta carga ({n})" }
    bath_no_time { "time not known", "tiempo desconocido" }
    bath_delete_batch(what) { "Delete the batch of {what}", "Borrar la tanda de {what}" }
    bath_charges_title { "Charges", "Cargas" }
    bath_charged_on(when) { "Charged {when}", "Cargado: {when}" }
    bath_this_charge { "in the bath now", "ahora en el baño" }
    bath_charge { "Charge the bath", "Cargar el baño" }
    bath_charge_title { "The bath was charged", "Se cargó el baño" }
    bath_charge_text { "From here on it is measured against its first three batches.", "Desde ahora se compara con sus tres primeras tandas." }
    bath_chemistry { "With what", "Con qué" }
    bath_chemistry_hint { "Product and dilution, in your words.", "Producto y dilución, con tus palabras." }
    bath_charge_edit_title { "A charge", "Una carga" }
    bath_charge_save { "Note the charge", "Anotar la carga" }
    bath_charged { "The bath is charged: a new baseline begins.", "Baño cargado: empieza otra comparación." }
    bath_charge_deleted { "The charge was deleted; its batches count to the one before.", "Carga borrada; sus tandas cuentan en la anterior." }
    bath_no_chemistry { "Nothing noted", "Sin anotar" }
    bath_caution { "Reclaimers are caustic or oxidising. Gloves, goggles and air before you open the tank, water at hand for eyes and skin. The maker's data sheet decides; where the bath may drain is a matter of local code.", "Los recuperadores son cáusticos u oxidantes. Guantes, gafas y ventilación antes de abrir la cuba, y agua a mano para ojos y piel. Manda la ficha del fabricante; dónde puede desaguar lo dice la norma local." }
    bath_settings { "Bath settings", "Ajustes del baño" }
    bath_capacity { "Screens that fit in at once", "Pantallas que caben a la vez" }
    bath_recharge_at { "Charge again at", "Cargar al llegar a" }
    bath_recharge_at_unit { "× fresh", "× nuevo" }
    bath_recharge_at_hint(own) { "Times the minutes when fresh. Empty: {own}, a rule of ours.", "Veces los minutos de recién cargado. Vacío: {own}, regla nuestra." }
    bath_note { "Note beside the bath", "Nota junto al baño" }
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
