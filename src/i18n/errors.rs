//! Messages for errors: what happened, what is safe, what to do next.

use super::colour::colour_curve_problem;
use super::format::number;
use super::messages::messages;
use lastpull_core::exchange::BackupProblem;
use lastpull_core::form::FormProblem;
use lastpull_core::journal::StorageFault;
use lastpull_core::units::NumberProblem;

messages! {
    problem_missing { "This is needed.", "Hace falta." }
    problem_not_a_number { "Write a number here.", "Escribe un número." }
    problem_too_low(least) { "{least} or more.", "{least} o más." }
    problem_too_high(most) { "{most} or less.", "{most} o menos." }
    problem_not_whole { "A whole number, please.", "Tiene que ser un número entero." }
    problem_not_a_day { "That is not a day.", "Esa fecha no existe." }
    problem_not_a_time { "That is not a time of day.", "Esa hora no existe." }
    problem_past { "That day has passed.", "Ese día ya pasó." }
    problem_too_long(most) { "At most {most} letters.", "Como mucho {most} letras." }
    problem_no_pieces { "Enter how many pieces of at least one size.", "Pon cuántas piezas hay de al menos una talla." }
    problem_taken { "Another one is called that already.", "Ya hay otra con ese nombre." }
    problem_out_of_order { "This must not be below the one before it.", "No puede ser menor que el anterior." }
    problem_not_a_grade { "A grade is 1 to 5 in half steps.", "La nota va de 1 a 5, de medio en medio." }
    problem_too_many(most) { "At most {most} at once.", "Como mucho {most} a la vez." }
    form_not_saved[n] {
        "{n} thing to put right above. Nothing you typed is lost." | "{n} things to put right above. Nothing you typed is lost.",
        "Hay {n} cosa por corregir arriba. No se pierde nada de lo escrito." | "Hay {n} cosas por corregir arriba. No se pierde nada de lo escrito."
    }
    draft_restored { "What you typed here before is back. It is not saved yet.", "Lo que escribiste aquí antes está de vuelta. Todavía no está guardado." }
    draft_discard { "Discard it", "Descartarlo" }
    not_written {
        "This was not recorded: a number, a name or a note in it is larger than can be kept. Everything else is safe. Make it smaller and save it again.",
        "Esto no se anotó: un número, un nombre o una nota supera lo que se puede guardar. Todo lo demás está a salvo. Redúcelo y guárdalo otra vez."
    }
    too_long_to_keep {
        "This was not recorded: it is too long to be kept. Everything else is safe. Shorten the note or the name and save it again.",
        "Esto no se anotó: es demasiado largo para guardarlo. Todo lo demás está a salvo. Acorta la nota o el nombre y guárdalo otra vez."
    }
    fault_full { "This device has no room left for the shop.", "No queda sitio en este dispositivo." }
    fault_closed { "The browser closed the store.", "El navegador cerró el almacén." }
    fault_blocked { "Another window holds an older version open. Close it.", "Otra ventana tiene abierta una versión anterior. Ciérrala." }
    fault_silent {
        "The browser's store does not answer. Close other windows of the app; if it stays so, close and open the browser.",
        "El almacén del navegador no responde. Cierra otras ventanas de la app; si sigue igual, cierra y abre el navegador."
    }
    not_read_again {
        "Another window changed the shop, and it could not be read again. What you see may be old; counting goes on.",
        "Otra ventana cambió el taller y no se pudo volver a leer. Lo que ves puede ser antiguo; puedes seguir contando."
    }
    fault_unreadable {
        "Part of what is stored does not read. Nothing was written over it.",
        "Una parte de lo guardado no se puede leer. No se ha escrito encima."
    }
    fault_newer {
        "The shop was last opened by a newer Lastpull. Load the newest version with a network once.",
        "El taller se abrió con una versión más nueva. Carga la última versión una vez con red."
    }
    fault_unavailable {
        "This browser window keeps no data (a private window, or storage is switched off).",
        "Esta ventana no guarda datos (ventana privada o almacenamiento desactivado)."
    }
    fault_other(words) { "The store answered: {words}", "El almacén respondió: {words}" }
    load_failed_title { "The shop does not open", "El taller no se abre" }
    load_failed_safe {
        "What is stored was not touched. Try again; if it stays so, take the data out as a file before anything else.",
        "Lo guardado no se ha tocado. Prueba otra vez; si sigue igual, saca los datos en un archivo antes de nada."
    }
    try_again { "Try again", "Probar otra vez" }
    retrying { "Saving failed, trying again …", "No se pudo guardar; probando otra vez …" }
    blocked_title { "Counting stands still: saving fails", "El conteo se detiene: no se guarda" }
    blocked_waiting[n] {
        "{n} entry is not saved yet. It is still here: keep this page open." | "{n} entries are not saved yet. They are still here: keep this page open.",
        "{n} anotación sin guardar. Sigue aquí: no cierres esta página." | "{n} anotaciones sin guardar. Siguen aquí: no cierres esta página."
    }
    blocked_next_full {
        "Free some room on the device (photos, videos, other apps), then try again. Or take the data out as a file.",
        "Libera espacio en el dispositivo (fotos, vídeos, otras apps) y prueba otra vez. O saca los datos en un archivo."
    }
    blocked_next {
        "Try again. If it keeps failing, take the data out as a file, then close and open the app.",
        "Prueba otra vez. Si sigue fallando, saca los datos en un archivo y después cierra y abre la app."
    }
    take_data_out { "Take the data out", "Sacar los datos" }
    backup_too_large { "The file is larger than any backup.", "El archivo es más grande que cualquier copia." }
    backup_not_archive { "The file is no archive, or was cut short on its way.", "El archivo no es un archivo comprimido o llegó cortado." }
    backup_not_ours { "The file is an archive, but no Lastpull backup.", "El archivo no es una copia de Lastpull." }
    backup_newer {
        "The file was made by a newer Lastpull. Load the newest version here first.",
        "El archivo es de una versión más nueva. Carga aquí antes la última versión."
    }
    backup_cut { "The file ends before its last fact.", "El archivo termina antes de su último hecho." }
    backup_damaged { "The file was damaged on its way.", "El archivo se dañó por el camino." }
    backup_bad_line(line) { "Line {line} of the file is nothing a Lastpull device wrote.", "La línea {line} del archivo no la escribió Lastpull." }
    backup_bad_photo {
        "A photo in the file is not what its name says, or holds more than a picture.",
        "Una foto del archivo no es lo que dice su nombre, o lleva más que la imagen."
    }
    import_onto_damage {
        "Part of what is stored here does not read, so no file can be added to it. “Take everything out” makes a file of all that reads. Keep it safe, erase this device (More, Storage and app), then bring in that file and this one.",
        "Una parte de lo guardado aquí no se puede leer, así que no se le puede añadir un archivo. “Sacar todo” hace un archivo con todo lo que se lee. Ponlo a salvo, borra este dispositivo (Más, Datos y app) y carga ese archivo y este."
    }
    backup_too_many {
        "The file names more devices, or leaves out more facts, than a shop can have.",
        "El archivo nombra más dispositivos, o deja fuera más hechos, de los que puede tener un taller."
    }
    backup_scattered {
        "The file has more gaps or devices than a shop leaves.",
        "El archivo tiene más huecos o dispositivos de los que deja un taller."
    }
    backup_not_read { "The file could not be read from the device.", "No se pudo leer el archivo." }
    nothing_changed { "Nothing was changed.", "No se ha cambiado nada." }
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
