//! Messages for errors: what happened, what is safe, what to do next.

use super::colour::colour_curve_problem;
use super::format::{number, unit_belt_feet, unit_inch};
use super::messages::messages;
use lastpull_core::exchange::BackupProblem;
use lastpull_core::form::FormProblem;
use lastpull_core::journal::StorageFault;
use lastpull_core::units::{NumberProblem, Quantity};

messages! {
    problem_missing { "Required.", "Obligatorio." }
    problem_not_a_number { "Enter a number.", "Escribe un número." }
    problem_doubtful(example) { "Number not clear. Write it like {example}.", "Número poco claro. Escríbelo así: {example}." }
    problem_wrong_unit(units) { "Wrong unit. Use {units}.", "Unidad incorrecta. Usa {units}." }
    problem_too_low(least) { "{least} or more.", "{least} o más." }
    problem_too_high(most) { "{most} or less.", "{most} o menos." }
    problem_not_whole { "Enter a whole number.", "Escribe un número entero." }
    problem_not_a_day { "Not a valid date.", "Esa fecha no existe." }
    problem_not_a_time { "Not a valid time.", "Esa hora no existe." }
    problem_past { "That day has passed.", "Ese día ya pasó." }
    problem_too_long(most) { "At most {most} characters.", "Máximo {most} caracteres." }
    problem_no_pieces { "Enter pieces for at least one size.", "Pon las piezas de al menos una talla." }
    problem_taken { "That name is already used.", "Ese nombre ya existe." }
    problem_out_of_order { "Can't be lower than the one before.", "No puede ser menor que el anterior." }
    problem_not_a_grade { "Grades go from 1 to 5 in half steps.", "El grado va de 1 a 5, de medio en medio." }
    problem_too_many(most) { "At most {most}.", "Máximo {most}." }
    form_not_saved[n] {
        "Fix {n} thing above. Nothing you typed is lost." | "Fix {n} things above. Nothing you typed is lost.",
        "Corrige {n} cosa arriba. No se pierde nada de lo escrito." | "Corrige {n} cosas arriba. No se pierde nada de lo escrito."
    }
    draft_restored { "Your draft is back. It is not saved yet.", "Tu borrador está de vuelta. Aún no está guardado." }
    draft_discard { "Discard draft", "Descartar borrador" }
    not_written {
        "Not saved: a number, name or note is too large. Everything else is safe. Make it smaller and save again.",
        "No se guardó: un número, un nombre o una nota es demasiado grande. Todo lo demás está a salvo. Redúcelo y guárdalo otra vez."
    }
    too_long_to_keep {
        "Not saved: it is too long. Everything else is safe. Shorten the note or name and save again.",
        "No se guardó: es demasiado largo. Todo lo demás está a salvo. Acorta la nota o el nombre y guárdalo otra vez."
    }
    fault_full { "This device has no space left for the shop.", "No queda espacio en este dispositivo." }
    fault_closed { "The browser closed the storage.", "El navegador cerró el almacenamiento." }
    fault_blocked { "An older version is open in another window. Close it.", "Otra ventana tiene abierta una versión anterior. Ciérrala." }
    fault_silent {
        "The browser's storage does not respond. Close other windows of the app; if that doesn't help, close and reopen the browser.",
        "El almacenamiento del navegador no responde. Cierra otras ventanas de la app; si sigue igual, cierra y abre el navegador."
    }
    not_read_again {
        "Another window changed the shop and it could not be reloaded. What you see may be out of date; you can keep counting.",
        "Otra ventana cambió el taller y no se pudo volver a leer. Lo que ves puede ser antiguo; puedes seguir contando."
    }
    fault_unreadable {
        "Part of the saved data can't be read. Nothing was overwritten.",
        "Una parte de lo guardado no se puede leer. No se escribió encima."
    }
    fault_newer {
        "The shop was last opened by a newer Lastpull. Go online once and update the app.",
        "El taller se abrió con una versión más nueva. Conéctate una vez y actualiza la app."
    }
    fault_unavailable {
        "This browser window can't save data (a private window, or storage is turned off).",
        "Esta ventana no guarda datos (ventana privada o almacenamiento desactivado)."
    }
    fault_other(words) { "Storage error: {words}", "Error de almacenamiento: {words}" }
    load_failed_title { "Can't open the shop", "No se puede abrir el taller" }
    load_failed_safe {
        "Saved data was not changed. Try again; if it keeps failing, save a backup file before anything else.",
        "Lo guardado no cambió. Prueba otra vez; si sigue igual, guarda una copia antes de hacer otra cosa."
    }
    try_again { "Try again", "Probar otra vez" }
    retrying { "Can't save, trying again …", "No se pudo guardar; probando otra vez …" }
    blocked_title { "Counting paused: can't save", "Conteo en pausa: no se guarda" }
    blocked_waiting[n] {
        "{n} entry is not saved yet. It is still here: keep this page open." | "{n} entries are not saved yet. They are still here: keep this page open.",
        "{n} registro sin guardar. Sigue aquí: no cierres esta página." | "{n} registros sin guardar. Siguen aquí: no cierres esta página."
    }
    blocked_next_full {
        "Free some space on the device (photos, videos, other apps), then try again. Or save a backup file.",
        "Libera espacio en el dispositivo (fotos, videos, otras apps) y prueba otra vez. O guarda una copia de seguridad."
    }
    blocked_next {
        "Try again. If it keeps failing, save a backup file, then close and reopen the app.",
        "Prueba otra vez. Si sigue fallando, guarda una copia de seguridad y después cierra y abre la app."
    }
    take_data_out { "Save a backup", "Guardar una copia" }
    backup_too_large { "The file is too large for a backup.", "El archivo es demasiado grande para una copia." }
    backup_not_archive { "The file is not a backup, or part of it is missing.", "El archivo no es una copia o llegó incompleto." }
    backup_not_ours { "The file is not a Lastpull backup.", "El archivo no es una copia de Lastpull." }
    backup_newer {
        "The file was made by a newer Lastpull. Update the app here first.",
        "El archivo es de una versión más nueva. Actualiza aquí la app primero."
    }
    backup_cut { "The file ends before its last entry.", "El archivo termina antes de su último registro." }
    backup_damaged { "The file is damaged.", "El archivo está dañado." }
    backup_bad_line(line) { "Line {line} of the file was not written by Lastpull.", "La línea {line} del archivo no la escribió Lastpull." }
    backup_bad_photo {
        "A photo in the file does not match its name, or holds more than a picture.",
        "Una foto del archivo no corresponde a su nombre, o lleva más que la imagen."
    }
    import_onto_damage {
        "Part of the saved data here can't be read, so no file can be added to it. “Make a backup” saves everything that can be read. Keep that file safe, erase this device (More, Storage and app), then import that file and this one.",
        "Una parte de lo guardado aquí no se puede leer, así que no se le puede agregar un archivo. “Hacer una copia” guarda todo lo que se puede leer. Pon ese archivo a salvo, borra este dispositivo (Más, Almacenamiento y app) e importa ese archivo y este."
    }
    backup_too_many {
        "The file has more devices, or more missing entries, than a shop can have.",
        "El archivo tiene más dispositivos, o más registros faltantes, de los que puede tener un taller."
    }
    backup_scattered {
        "The file has more gaps or devices than a shop can have.",
        "El archivo tiene más huecos o dispositivos de los que puede tener un taller."
    }
    backup_not_read { "The file could not be read from the device.", "No se pudo leer el archivo." }
    nothing_changed { "Nothing was changed.", "No se cambió nada." }
}

/// The message for a problem with a field.
pub fn form_problem(problem: FormProblem) -> String {
    match problem {
        FormProblem::Missing => problem_missing().into(),
        FormProblem::Number(problem) => number_problem(problem),
        FormProblem::NotADay => problem_not_a_day().into(),
        FormProblem::NotATime => problem_not_a_time().into(),
        FormProblem::Past => problem_past().into(),
        FormProblem::TooLong { most } => problem_too_long(most),
        FormProblem::NoPieces => problem_no_pieces().into(),
        FormProblem::Taken => problem_taken().into(),
        FormProblem::OutOfOrder => problem_out_of_order().into(),
        FormProblem::NotAGrade => problem_not_a_grade().into(),
        FormProblem::TooMany { most } => problem_too_many(most),
        FormProblem::NotACurve(problem) => colour_curve_problem(problem).into(),
    }
}

/// The message for a problem with a number.
pub fn number_problem(problem: NumberProblem) -> String {
    match problem {
        NumberProblem::NotANumber => problem_not_a_number().into(),
        NumberProblem::TooLow { least } => problem_too_low(number(least, 2)),
        NumberProblem::TooHigh { most } => problem_too_high(number(most, 2)),
        NumberProblem::NotWhole => problem_not_whole().into(),
        NumberProblem::Doubtful => problem_doubtful(number(1250.5, 1)),
        NumberProblem::WrongUnit { takes } => problem_wrong_unit(match takes {
            Quantity::Weight => "g, kg, oz, lb".to_owned(),
            Quantity::Length => format!("{}, cm, mm", unit_inch()),
            Quantity::Temperature => "°F, °C".to_owned(),
            Quantity::BeltSpeed => format!("{}, cm/min", unit_belt_feet()),
            Quantity::Time => "s, min".to_owned(),
        }),
    }
}

/// The message for a storage fault.
pub fn storage_fault(fault: &StorageFault) -> String {
    match fault {
        StorageFault::Full => fault_full().into(),
        StorageFault::Closed | StorageFault::Stale => fault_closed().into(),
        StorageFault::Blocked => fault_blocked().into(),
        StorageFault::Silent => fault_silent().into(),
        StorageFault::Unreadable(_) => fault_unreadable().into(),
        StorageFault::NewerVersion => fault_newer().into(),
        StorageFault::Unavailable => fault_unavailable().into(),
        StorageFault::Other(words) => fault_other(words),
    }
}

/// The message for a backup file that was refused.
pub fn backup_problem(problem: BackupProblem) -> String {
    match problem {
        BackupProblem::TooLarge => backup_too_large().into(),
        BackupProblem::NotAnArchive => backup_not_archive().into(),
        BackupProblem::NotABackup => backup_not_ours().into(),
        BackupProblem::Newer => backup_newer().into(),
        BackupProblem::CutShort => backup_cut().into(),
        BackupProblem::Damaged => backup_damaged().into(),
        BackupProblem::BadLine { line } => backup_bad_line(line),
        BackupProblem::BadPhoto => backup_bad_photo().into(),
        BackupProblem::NotRead => backup_not_read().into(),
        BackupProblem::Scattered => backup_scattered().into(),
    }
}
