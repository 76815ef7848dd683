//! Messages: the climate of the shop.

use super::format::{duration, number, unit_temperature};
use super::locale::units;
use super::messages::messages;
use lastpull_core::heat::{Assumption, ClimateCaveat, HeatIndex, HeatLevel, RestReason, Schedule, Water};
use lastpull_core::time::Millis;

messages! {
    climate_title { "The room", "La sala" }
    climate_read { "Read the room", "Leer la sala" }
    climate_read_text { "Thermometer and hygrometer at the press, in the shade, away from dryer and flash.", "Termómetro e higrómetro junto a la prensa, a la sombra, lejos del horno y del flash." }
    climate_temperature { "Air", "Aire" }
    climate_humidity { "Humidity", "Humedad" }
    climate_save { "Note the reading", "Anotar la lectura" }
    climate_less(what) { "{what}: less", "{what}: menos" }
    climate_more(what) { "{what}: more", "{what}: más" }
    climate_feels(temperature) { "feels like {temperature}", "se siente como {temperature}" }
    climate_beyond { "past the published table", "fuera de la tabla publicada" }
    climate_no_index { "For air like this no heat index is published.", "Para este aire no hay índice de calor publicado." }
    climate_of(temperature, humidity) { "{temperature}, {humidity}\u{a0}%", "{temperature}, {humidity}\u{a0}%" }
    climate_ago(time) { "{time} ago", "hace {time}" }
    climate_just_now { "just now", "ahora mismo" }
    climate_old { "Older than two hours. Read the room again.", "Tiene más de dos horas. Lee la sala otra vez." }
    climate_read_again { "read again", "leer otra vez" }
    level_lower { "Lower heat risk", "Riesgo por calor bajo" }
    level_moderate { "Moderate heat risk", "Riesgo por calor moderado" }
    level_high { "High heat risk", "Riesgo por calor alto" }
    level_extreme { "Very high to extreme heat risk", "Riesgo por calor muy alto o extremo" }
    asks_lower { "Water within reach, and a way to cool down.", "Agua a mano y un sitio para refrescarse." }
    asks_moderate { "Drink every 15 to 20 minutes, rest in the cool, watch newcomers and each other.", "Bebe cada 15 o 20 minutos, descansa al fresco, cuida a los nuevos y unos de otros." }
    asks_high { "Less heavy work and more rest; someone watches for signs of heat illness.", "Menos trabajo pesado y más descanso; alguien vigila los síntomas." }
    asks_extreme { "Put off what can wait. Only what must be done, in the coolest place, or stop.", "Aplaza lo que pueda esperar. Solo lo imprescindible, en el sitio más fresco, o para." }
    water_thirst { "Drink before you are thirsty, a little at a time.", "Bebe antes de tener sed, poco a poco." }
    water_four(cups, most) { "About {cups} cups (1\u{a0}l) of water an hour, a cup every 15 minutes. Never more than {most} cups (1.4\u{a0}l) an hour.", "Alrededor de {cups} tazas (1\u{a0}l) de agua por hora, una cada 15 minutos. Nunca más de {most} tazas (1,4\u{a0}l) por hora." }
    water_past(cups, most) { "At least {cups} cups (1\u{a0}l) of water an hour, never more than {most} (1.4\u{a0}l). In this heat water does not replace rest.", "Al menos {cups} tazas (1\u{a0}l) de agua por hora, nunca más de {most} (1,4\u{a0}l). Con este calor el agua no sustituye al descanso." }
    rest_title { "Work and rest", "Trabajo y descanso" }
    rest_work { "How hard is the work?", "¿Cómo es el trabajo?" }
    work_light { "Light", "Ligero" }
    work_moderate { "Moderate", "Moderado" }
    work_heavy { "Heavy", "Pesado" }
    work_light_hint { "Sitting or standing at light hand work.", "Sentado o de pie, trabajo ligero de manos." }
    work_moderate_hint { "Pulling squeegees, walking about, lifting now and then.", "Tirar de la racleta, andar, levantar algo de vez en cuando." }
    work_heavy_hint { "Carrying cases, fast and without a pause.", "Cargar cajas, rápido y sin pausa." }
    rest_normal { "Breaks as usual", "Pausas como siempre" }
    rest_minutes(work, rest) { "{work}\u{a0}min work, {rest}\u{a0}min rest", "{work}\u{a0}min de trabajo, {rest}\u{a0}min de descanso" }
    rest_more { "More rest than usual", "Más descanso de lo normal" }
    rest_more_than(rest) { "At least {rest}\u{a0}min rest an hour, and more", "Al menos {rest}\u{a0}min de descanso por hora, y más" }
    rest_why_damp { "The table is for 30\u{a0}% humidity and does not hold in air this damp; no minutes are published for it. Work less and rest longer than in dry air.", "La tabla es para 30\u{a0}% de humedad y no vale en aire tan húmedo; no hay minutos publicados. Trabaja menos y descansa más que en aire seco." }
    rest_why_damper { "The table is for 30\u{a0}% humidity, and this air is damper: rest more than it says.", "La tabla es para 30\u{a0}% de humedad y este aire es más húmedo: descansa más de lo que dice." }
    rest_why_high { "The heat index asks for more rest than the table does.", "El índice de calor pide más descanso que la tabla." }
    rest_why_extreme { "At this heat index no minutes hold, whatever the table says of the air alone.", "Con este índice de calor no vale ningún minuto, diga lo que diga la tabla del aire solo." }
    rest_caution { "No minutes any more: put it off", "Ya no hay minutos: aplázalo" }
    rest_below { "The table begins at 90\u{a0}°F (32\u{a0}°C).", "La tabla empieza a 32\u{a0}°C (90\u{a0}°F)." }
    rest_beyond { "The table ends at 112\u{a0}°F (44\u{a0}°C).", "La tabla termina a 44\u{a0}°C (112\u{a0}°F)." }
    rest_assumes { "The minutes take for granted", "Los minutos dan por hecho" }
    rest_assumes_more { "Whatever is not so asks for more rest.", "Lo que no se cumpla pide más descanso." }
    assume_fit { "fit", "buena forma" }
    assume_rested { "well rested", "descanso suficiente" }
    assume_hydrated { "well hydrated", "buena hidratación" }
    assume_under_forty { "under 40", "menos de 40 años" }
    assume_dry { "30\u{a0}% humidity", "30\u{a0}% de humedad" }
    assume_air { "moving air", "aire en movimiento" }
    climate_leaves_out { "What the numbers leave out", "Lo que no cuentan los números" }
    climate_shade { "They hold for shade and light wind; full sun can add up to 15\u{a0}°F (8\u{a0}°C).", "Valen a la sombra y con poco viento; el sol puede sumar hasta 8\u{a0}°C (15\u{a0}°F)." }
    climate_radiant { "What dryer and flash radiate is not in them.", "No incluyen lo que irradian horno y flash." }
    climate_guidance { "Guidance only: local heat rules come first.", "Solo orientación: mandan las normas locales de calor." }
    climate_damper { "The air is damper than the rest table assumes: rest more.", "El aire es más húmedo que el de la tabla: descansa más." }
    climate_past_tables { "Past the published tables: a sign of extreme heat, not a measurement.", "Fuera de las tablas: señal de calor extremo, no una medida." }
    climate_earlier { "Earlier readings", "Lecturas anteriores" }
    climate_none_title { "Not read yet", "Sin leer todavía" }
    climate_none_text { "Read air and humidity, and this page says how hot it feels and what that asks for.", "Lee el aire y la humedad, y aquí se ve cómo se siente y qué pide." }
    climate_symptoms {
        "Confused, fainting, hot dry skin, no longer sweating: stop, cool the person, call emergency services. Local heat rules come first.",
        "Confusión, desmayo, piel caliente y seca, sin sudar: para, enfría a la persona y llama a emergencias. Mandan las normas locales."
    }
}

/// The name of a heat level.
pub fn heat_level(level: HeatLevel) -> &'static str {
    match level {
        HeatLevel::Lower => level_lower(),
        HeatLevel::Moderate => level_moderate(),
        HeatLevel::High => level_high(),
        HeatLevel::Extreme => level_extreme(),
    }
}

/// How hot the air feels.
pub fn heat_index(index: HeatIndex) -> String {
    climate_feels(format!("{}\u{a0}{}", number(index.shown(units()), 1), unit_temperature()))
}

/// How many minutes ago.
pub fn minutes_ago(minutes: u64) -> String {
    if minutes == 0 { climate_just_now().into() } else { climate_ago(duration(Millis::from_minutes(minutes))) }
}

/// What to do at a heat level.
pub fn heat_level_advice(level: HeatLevel) -> &'static str {
    match level {
        HeatLevel::Lower => asks_lower(),
        HeatLevel::Moderate => asks_moderate(),
        HeatLevel::High => asks_high(),
        HeatLevel::Extreme => asks_extreme(),
    }
}

/// Published advice on drinking.
pub fn water(water: Water) -> String {
    match water {
        Water::BeforeThirst => water_thirst().into(),
        Water::FourCupsAnHour => water_four(Water::CUPS_AN_HOUR, Water::MOST_CUPS_AN_HOUR),
        Water::PastTheFigure => water_past(Water::CUPS_AN_HOUR, Water::MOST_CUPS_AN_HOUR),
    }
}

/// Minutes of work and rest per hour.
pub fn schedule(schedule: Schedule) -> String {
    match schedule {
        Schedule::Normal => rest_normal().into(),
        Schedule::WorkRest { work, rest } => rest_minutes(work, rest),
        Schedule::MoreRest { least: 0 } => rest_more().into(),
        Schedule::MoreRest { least } => rest_more_than(least),
        Schedule::Caution => rest_caution().into(),
    }
}

/// Why the table's minutes are not used as they are.
pub fn rest_reason(reason: RestReason) -> &'static str {
    match reason {
        RestReason::DampAir => rest_why_damp(),
        RestReason::DamperThanTable => rest_why_damper(),
        RestReason::HighIndex => rest_why_high(),
        RestReason::ExtremeIndex => rest_why_extreme(),
    }
}

/// An assumption behind the work and rest times.
pub fn assumption(assumption: Assumption) -> &'static str {
    match assumption {
        Assumption::Fit => assume_fit(),
        Assumption::Rested => assume_rested(),
        Assumption::Hydrated => assume_hydrated(),
        Assumption::UnderForty => assume_under_forty(),
        Assumption::ThirtyPercentHumidity => assume_dry(),
        Assumption::MovingAir => assume_air(),
    }
}

/// What the figures do not cover.
pub fn climate_caveat(caveat: ClimateCaveat) -> &'static str {
    match caveat {
        ClimateCaveat::ShadeAndLightWind => climate_shade(),
        ClimateCaveat::RadiantHeat => climate_radiant(),
        ClimateCaveat::GuidanceOnly => climate_guidance(),
        ClimateCaveat::DamperThanTable => climate_damper(),
        ClimateCaveat::PastTables => climate_past_tables(),
    }
}
