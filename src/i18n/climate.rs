//! Messages: the climate of the shop.

use super::format::{duration, number, unit_temperature};
use super::locale::units;
use super::messages::messages;
use lastpull_core::heat::{Assumption, ClimateCaveat, HeatIndex, HeatLevel, RestReason, Schedule, Water};
use lastpull_core::time::Millis;

messages! {
    climate_title { "Shop heat", "Calor del taller" }
    climate_read { "Log a reading", "Anotar lectura" }
    climate_read_text { "Use a thermometer and humidity meter at the press, in the shade, away from dryer and flash.", "Usa termómetro e higrómetro junto a la prensa, a la sombra, lejos del horno y del flash." }
    climate_temperature { "Air temperature", "Temperatura del aire" }
    climate_humidity { "Humidity", "Humedad" }
    climate_save { "Save reading", "Guardar lectura" }
    climate_less(what) { "{what}: less", "{what}: menos" }
    climate_more(what) { "{what}: more", "{what}: más" }
    climate_feels(temperature) { "feels like {temperature}", "se siente como {temperature}" }
    climate_beyond { "beyond the published table", "fuera de la tabla publicada" }
    climate_no_index { "No heat index is published for these conditions.", "Para este aire no hay índice de calor publicado." }
    climate_of(temperature, humidity) { "{temperature}, {humidity}%", "{temperature}, {humidity}\u{a0}%" }
    climate_ago(time) { "{time} ago", "hace {time}" }
    climate_just_now { "just now", "ahora mismo" }
    climate_old { "More than two hours old. Log a new reading.", "Tiene más de dos horas. Mide otra vez." }
    climate_read_again { "log again", "medir otra vez" }
    level_lower { "Lower heat risk", "Riesgo por calor bajo" }
    level_moderate { "Moderate heat risk", "Riesgo por calor moderado" }
    level_high { "High heat risk", "Riesgo por calor alto" }
    level_extreme { "Very high to extreme heat risk", "Riesgo por calor muy alto o extremo" }
    asks_lower { "Keep water and a way to cool down within reach.", "Ten agua a mano y un sitio para refrescarte." }
    asks_moderate { "Drink every 15 to 20 minutes, take breaks in a cool spot, keep an eye on people new to the heat and on each other.", "Bebe cada 15 o 20 minutos, descansa en un lugar fresco, vigila a quien es nuevo en el calor y cuídense entre todos." }
    asks_high { "Less heavy work and more rest; someone watches for signs of heat illness.", "Menos trabajo pesado y más descanso; alguien vigila los síntomas por calor." }
    asks_extreme { "Postpone what can wait. Only essential work, in the coolest spot, or stop.", "Aplaza lo que pueda esperar. Solo lo imprescindible, en el lugar más fresco, o para." }
    water_thirst { "Drink before you are thirsty, a little at a time.", "Bebe antes de tener sed, poco a poco." }
    water_four(cups, most, litres) { "About {cups} cups (1\u{a0}L) of water per hour, one cup every 15 minutes. Never more than {most} cups ({litres}\u{a0}L) per hour.", "Unas {cups} tazas (1\u{a0}L) de agua por hora, una cada 15 minutos. Nunca más de {most} tazas ({litres}\u{a0}L) por hora." }
    water_past(cups, most, litres) { "At least {cups} cups (1\u{a0}L) of water per hour, never more than {most} ({litres}\u{a0}L). In this heat, water does not replace rest.", "Al menos {cups} tazas (1\u{a0}L) de agua por hora, nunca más de {most} ({litres}\u{a0}L). Con este calor, el agua no sustituye al descanso." }
    rest_title { "Work and rest", "Trabajo y descanso" }
    rest_work { "How hard is the work?", "¿Qué tan pesado es el trabajo?" }
    work_light { "Light", "Ligero" }
    work_moderate { "Moderate", "Moderado" }
    work_heavy { "Heavy", "Pesado" }
    work_light_hint { "Light hand work, sitting or standing.", "Trabajo ligero de manos, sentado o de pie." }
    work_moderate_hint { "Pulling squeegees, walking around, lifting now and then.", "Jalar el rasero, caminar, levantar algo de vez en cuando." }
    work_heavy_hint { "Carrying cases, fast and nonstop.", "Cargar cajas, rápido y sin pausa." }
    rest_normal { "Breaks as usual", "Pausas como siempre" }
    rest_minutes(work, rest) { "{work}\u{a0}min work, {rest}\u{a0}min rest", "{work}\u{a0}min de trabajo, {rest}\u{a0}min de descanso" }
    rest_more { "More rest than usual", "Más descanso de lo normal" }
    rest_more_than(rest) { "At least {rest}\u{a0}min rest per hour, better more", "Al menos {rest}\u{a0}min de descanso por hora, mejor más" }
    rest_why_damp { "The table is for 30% humidity and doesn't apply to air this humid; no minutes are published for it. Work less and rest longer than in dry air.", "La tabla es para 30\u{a0}% de humedad y no vale en aire tan húmedo; no hay minutos publicados. Trabaja menos y descansa más que en aire seco." }
    rest_why_damper { "The table is for 30% humidity and this air is more humid: rest more than it says.", "La tabla es para 30\u{a0}% de humedad y este aire es más húmedo: descansa más de lo que dice." }
    rest_why_high { "The heat index calls for more rest than the table.", "El índice de calor pide más descanso que la tabla." }
    rest_why_extreme { "At this heat index the table's minutes don't apply, whatever it says for the air alone.", "Con este índice de calor no valen los minutos de la tabla, diga lo que diga para el aire solo." }
    rest_caution { "No safe minutes: postpone the work", "Sin minutos seguros: aplaza el trabajo" }
    rest_below { "The table starts at 90\u{a0}°F (32\u{a0}°C).", "La tabla empieza a 32\u{a0}°C (90\u{a0}°F)." }
    rest_beyond { "The table ends at 112\u{a0}°F (44\u{a0}°C).", "La tabla termina a 44\u{a0}°C (112\u{a0}°F)." }
    rest_assumes { "The minutes assume", "Los minutos suponen" }
    rest_assumes_more { "If any of these isn't true, rest more.", "Si algo de esto no se cumple, descansa más." }
    assume_fit { "fit", "buena forma" }
    assume_rested { "well rested", "descanso suficiente" }
    assume_hydrated { "well hydrated", "buena hidratación" }
    assume_under_forty { "under 40", "menos de 40 años" }
    assume_dry { "30% humidity", "30\u{a0}% de humedad" }
    assume_air { "moving air", "aire en movimiento" }
    climate_leaves_out { "What the numbers don't include", "Lo que no incluyen los números" }
    climate_shade { "They apply in shade and light wind; full sun can add up to 15\u{a0}°F (8\u{a0}°C).", "Valen a la sombra y con poco viento; el sol puede sumar hasta 8\u{a0}°C (15\u{a0}°F)." }
    climate_radiant { "Heat radiating from dryer and flash is not included.", "No incluyen el calor que irradian el horno y el flash." }
    climate_guides { "From OSHA's heat index guide (levels, water) and NIOSH (work and rest 2016, most water 2017).", "De la guía del índice de calor de OSHA (niveles, agua) y de NIOSH (trabajo y descanso 2016, agua máxima 2017)." }
    climate_guidance { "Guidance only: local heat rules come first.", "Solo orientación: mandan las normas locales de calor." }
    climate_damper { "The air is more humid than the rest table assumes: rest more.", "El aire es más húmedo de lo que supone la tabla: descansa más." }
    climate_past_tables { "Beyond the published tables: a sign of extreme heat, not a measurement.", "Fuera de las tablas: señal de calor extremo, no una medida." }
    climate_earlier { "Earlier readings", "Lecturas anteriores" }
    climate_none_title { "No reading yet", "Aún sin lectura" }
    climate_none_text { "Log temperature and humidity to see how hot it feels and what to do.", "Anota temperatura y humedad para ver qué calor se siente y qué hacer." }
    climate_symptoms_title { "Signs of heat illness", "Síntomas por calor" }
    climate_symptoms {
        "Confused, fainting, slurred speech, very hot skin (dry or sweating): call 911 or your emergency number first. Stop work, cool the person now, don't leave them alone. Local heat rules come first.",
        "Confusión, desmayo, habla arrastrada, piel muy caliente (seca o sudada): primero llama al 911 o a emergencias. Para el trabajo, enfría a la persona ya y no la dejes sola. Mandan las normas locales."
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
    // The most: 48 US fluid ounces, rounded down.
    let litres = number(1.4, 1);
    match water {
        Water::BeforeThirst => water_thirst().into(),
        Water::FourCupsAnHour => water_four(Water::CUPS_AN_HOUR, Water::MOST_CUPS_AN_HOUR, litres),
        Water::PastTheFigure => water_past(Water::CUPS_AN_HOUR, Water::MOST_CUPS_AN_HOUR, litres),
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
