//! Numbers, times and quantities as text, in the device's language and units.

use super::common::{
    at_centre_chest, at_full_back, at_full_front, at_inside_neck, at_left_chest, at_left_sleeve, at_other, at_pocket,
    at_right_chest, at_right_sleeve, at_upper_back, fabric_blend, fabric_canvas, fabric_cotton, fabric_nylon,
    fabric_other, fabric_polyester, fabric_tri_blend, no_size, one_size, size_youth,
};
use super::day::from_to;
use super::locale::{Locale, clock, localized, units};
use super::messages::messages;
use lastpull_core::job::{Fabric, Size};
use lastpull_core::run::Location;
use lastpull_core::screen::MeshCount;
use lastpull_core::time::{Day, Due, Millis, TimeOfDay, WallClock, WallTime};
use lastpull_core::units::{BeltSpeed, Grams, Length, LengthUnit, Seconds, Temperature, TemperatureUnit, WeightUnit};

messages! {
    today { "today", "hoy" }
    tomorrow { "tomorrow", "mañana" }
    yesterday { "yesterday", "ayer" }
    on_day_at(day, time) { "{day}, {time}", "{day}, {time}" }
    under_a_minute { "< 1\u{a0}min", "< 1\u{a0}min" }
    unit_seconds { "s", "s" }
    unit_inch { "in", "pulg." }
    unit_belt_feet { "ft/min", "pies/min" }
    mesh_count_inch(threads) { "{threads}\u{a0}mesh", "{threads}\u{a0}hilos/pulg." }
    unit_mesh_inch { "per inch", "hilos/pulg." }
    unit_mesh_metric { "threads/cm", "hilos/cm" }
    per_hour(n) { "{n} per hour", "{n} por hora" }
    seconds_each(n) { "{n}\u{a0}s per piece", "{n}\u{a0}s por pieza" }
}

/// A number with at most `decimals` decimals, no trailing zeros, and the device's decimal mark.
pub fn number(value: f64, decimals: usize) -> String {
    let mut text = format!("{value:.decimals$}");
    if text.contains('.') {
        text = text.trim_end_matches('0').trim_end_matches('.').to_owned();
    }
    with_mark(text)
}

/// A number in the notation of forms, with a decimal point and commas between thousands, as this device writes it; and
/// the other way round.
pub fn with_mark(text: String) -> String {
    let swapped = |mark| match mark {
        '.' => ',',
        ',' => '.',
        other => other,
    };
    if Locale::current().decimal_comma { text.chars().map(swapped).collect() } else { text }
}

/// The decimal mark of this device.
pub fn decimal_mark() -> &'static str {
    if Locale::current().decimal_comma { "," } else { "." }
}

/// A time of day.
pub fn time_of(time: TimeOfDay) -> String {
    let (hours, minutes) = (time.hour(), time.minute());
    if Locale::current().clock_24 {
        return format!("{hours}:{minutes:02}");
    }
    let half = localized(if hours < 12 { "am" } else { "pm" }, if hours < 12 { "a.\u{a0}m." } else { "p.\u{a0}m." });
    format!("{}:{minutes:02}\u{a0}{half}", (hours + 11) % 12 + 1)
}

/// The local time of day of a moment.
pub fn time(at: WallTime) -> String {
    time_of(clock().time_of_day(at))
}

/// The local date and time of a moment; today's date is left out.
pub fn moment(at: WallTime) -> String {
    let clock = clock();
    let day = clock.day_of(at);
    if day == clock.today() { time(at) } else { on_day_at(day_name(day, clock), time(at)) }
}

/// Two moments, the earlier first; the day is named once if it is the same.
pub fn between(from: WallTime, to: WallTime) -> String {
    let clock = clock();
    let is_same_day = clock.day_of(from) == clock.day_of(to);
    from_to(moment(from), if is_same_day { time(to) } else { moment(to) })
}

/// A day relative to today: "today", a weekday within the week, else the date.
pub fn day_name(day: Day, clock: WallClock) -> String {
    match day.days_after(clock.today()) {
        0 => today().into(),
        1 => tomorrow().into(),
        -1 => yesterday().into(),
        2..=6 => weekday(day.weekday()).into(),
        _ => date(day),
    }
}

/// A date with the name of its month.
pub fn date(day: Day) -> String {
    use chrono::Datelike;
    let date = day.date();
    let english = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    let spanish = ["ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"];
    let month = localized(english, spanish)[date.month0() as usize];
    localized(format!("{month} {}", date.day()), format!("{} {month}", date.day()))
}

/// The name of a weekday; 0 is Monday.
pub fn weekday(index: usize) -> &'static str {
    let english = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
    let spanish = ["lunes", "martes", "miércoles", "jueves", "viernes", "sábado", "domingo"];
    localized(english, spanish)[index % 7]
}

/// A due date and time.
pub fn due(due: Due) -> String {
    on_day_at(day_name(due.day, clock()), time_of(due.time))
}

/// A duration for planning: hours and minutes.
pub fn duration(span: Millis) -> String {
    let minutes = span.minutes().round() as u64;
    match (minutes / 60, minutes % 60) {
        (0, 0) => under_a_minute().into(),
        (0, minutes) => format!("{minutes}\u{a0}min"),
        (hours, 0) => format!("{hours}\u{a0}h"),
        // One word: a line break inside would leave "2 h" to be read as the whole.
        (hours, minutes) => format!("{hours}\u{a0}h\u{a0}{minutes}\u{a0}min"),
    }
}

/// An elapsed time: minutes and seconds.
pub fn stopwatch(span: Millis) -> String {
    let seconds = span.whole_seconds();
    let (hours, minutes, seconds) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
    if hours > 0 { format!("{hours}:{minutes:02}:{seconds:02}") } else { format!("{minutes}:{seconds:02}") }
}

/// A temperature with its unit.
pub fn temperature(value: Temperature) -> String {
    format!("{}\u{a0}{}", number(value.in_units(units()).round(), 0), unit_temperature())
}

/// The device's unit of temperature.
pub fn unit_temperature() -> &'static str {
    match units().temperature {
        TemperatureUnit::Fahrenheit => "°F",
        TemperatureUnit::Celsius => "°C",
    }
}

/// A length with its unit.
pub fn length(value: Length) -> String {
    match units().length {
        LengthUnit::Inches => inches(value),
        LengthUnit::Centimetres => format!("{}\u{a0}cm", number(value.in_units(units()), 2)),
    }
}

/// A length in inches: as on a rule if it is there, else with up to three decimals.
fn inches(value: Length) -> String {
    let on_rule = |text: String| text.replace(' ', "\u{a0}");
    let number = value.fraction().map_or_else(|| number(value.inches(), 3), on_rule);
    format!("{number}\u{a0}{}", unit_inch())
}

/// What a length may be off by, with its unit: a fraction of an inch if `of` is written as one. `None` if it is written as
/// any length is.
pub fn length_tolerance(tolerance: Length, of: Length) -> Option<String> {
    let is_fraction = units().length == LengthUnit::Inches && of.fraction().is_some();
    let text = is_fraction.then(|| tolerance.fraction_within()).flatten()?;
    Some(format!("{}\u{a0}{}", text.replace(' ', "\u{a0}"), unit_inch()))
}

/// The device's unit of placements and distances.
pub fn unit_length() -> &'static str {
    match units().length {
        LengthUnit::Inches => unit_inch(),
        LengthUnit::Centimetres => "cm",
    }
}

/// Off-contact with its unit: in inches, or in millimetres.
pub fn off_contact(value: Length) -> String {
    match units().length {
        LengthUnit::Inches => inches(value),
        LengthUnit::Centimetres => format!("{}\u{a0}mm", number(value.millimetres(), 1)),
    }
}

/// The device's unit of off-contact.
pub fn unit_off_contact() -> &'static str {
    match units().length {
        LengthUnit::Inches => unit_inch(),
        LengthUnit::Centimetres => "mm",
    }
}

/// A belt speed with its unit.
pub fn belt(value: BeltSpeed) -> String {
    // A tenth of a foot would be too coarse for a slow belt.
    let decimals = if units().length == LengthUnit::Inches { 2 } else { 1 };
    format!("{}\u{a0}{}", number(value.in_units(units()), decimals), unit_belt())
}

/// The device's unit of belt speeds.
pub fn unit_belt() -> &'static str {
    match units().length {
        LengthUnit::Inches => unit_belt_feet(),
        LengthUnit::Centimetres => "cm/min",
    }
}

/// A mesh count in the unit of its data sheet.
pub fn mesh_count(count: MeshCount) -> String {
    match count {
        MeshCount::PerInch(threads) => mesh_count_inch(threads),
        MeshCount::PerCentimetre(threads) => format!("{threads}\u{a0}{}", unit_mesh_metric()),
    }
}

/// A mesh count with its unit.
pub fn mesh(threads_an_inch: u16) -> String {
    match units().length {
        LengthUnit::Inches => mesh_count_inch(threads_an_inch),
        LengthUnit::Centimetres => {
            format!("{}\u{a0}{}", number((f64::from(threads_an_inch) / 2.54).round(), 0), unit_mesh())
        }
    }
}

/// The device's unit of mesh counts.
pub fn unit_mesh() -> &'static str {
    match units().length {
        LengthUnit::Inches => unit_mesh_inch(),
        LengthUnit::Centimetres => unit_mesh_metric(),
    }
}

/// A duration in seconds, with its unit.
pub fn seconds(value: Seconds) -> String {
    format!("{}\u{a0}{}", number(value.seconds(), 1), unit_seconds())
}

/// A weight with its unit, rounded for display: large weights in pounds or kilograms.
pub fn weight(value: Grams) -> String {
    let (shown, size) = (value.in_units(units()), value.grams().abs());
    match units().weight {
        WeightUnit::Ounces if size >= 907.0 => format!("{}\u{a0}lb", number(shown / 16.0, 2)),
        WeightUnit::Ounces => format!("{}\u{a0}oz", number(shown, 2)),
        WeightUnit::Grams if size >= 1000.0 => format!("{}\u{a0}kg", number(shown / 1000.0, 2)),
        WeightUnit::Grams => format!("{}\u{a0}g", number(shown, 1)),
    }
}

/// A weight with its unit, with the precision of a scale.
pub fn weight_fine(value: Grams) -> String {
    format!("{}\u{a0}{}", number(value.in_units(units()), 3), unit_weight())
}

/// A weight in grams, whatever the units of the device: scales read grams in every country.
pub fn grams(value: Grams) -> String {
    format!("{}\u{a0}g", number(value.grams(), 3))
}

/// The device's unit of weights.
pub fn unit_weight() -> &'static str {
    match units().weight {
        WeightUnit::Ounces => "oz",
        WeightUnit::Grams => "g",
    }
}

/// A percentage with at most `decimals` decimals.
pub fn percent(value: f64, decimals: usize) -> String {
    format!("{}{}", number(value, decimals), percent_sign())
}

/// A percentage with always two decimals, so that numbers align in a column.
pub fn percent_fixed(value: f64) -> String {
    with_mark(format!("{value:.2}{}", percent_sign()))
}

/// The percent sign, as it follows a number.
pub fn percent_sign() -> &'static str {
    localized("%", "\u{a0}%")
}

/// A number of bytes.
pub fn bytes(value: f64) -> String {
    if value >= 1e9 {
        format!("{}\u{a0}GB", number(value / 1e9, 1))
    } else if value >= 1e6 {
        format!("{}\u{a0}MB", number(value / 1e6, 1))
    } else {
        format!("{}\u{a0}kB", number((value / 1e3).max(0.1), 1))
    }
}

/// The name of a size on its own; youth sizes are marked.
pub fn size(size: Option<Size>) -> String {
    match size {
        None => no_size().into(),
        Some(Size::One) => one_size().into(),
        Some(size) if size.is_youth() => size_youth(size.letters()),
        Some(size) => size.letters().into(),
    }
}

/// The name of a fabric.
pub fn fabric(fabric: Fabric) -> &'static str {
    match fabric {
        Fabric::Cotton => fabric_cotton(),
        Fabric::Blend => fabric_blend(),
        Fabric::Polyester => fabric_polyester(),
        Fabric::TriBlend => fabric_tri_blend(),
        Fabric::Nylon => fabric_nylon(),
        Fabric::Canvas => fabric_canvas(),
        Fabric::Other => fabric_other(),
    }
}

/// The name of a print location.
pub fn location(location: Location) -> &'static str {
    match location {
        Location::FullFront => at_full_front(),
        Location::LeftChest => at_left_chest(),
        Location::RightChest => at_right_chest(),
        Location::CentreChest => at_centre_chest(),
        Location::FullBack => at_full_back(),
        Location::UpperBack => at_upper_back(),
        Location::LeftSleeve => at_left_sleeve(),
        Location::RightSleeve => at_right_sleeve(),
        Location::InsideNeck => at_inside_neck(),
        Location::Pocket => at_pocket(),
        Location::Other => at_other(),
    }
}
