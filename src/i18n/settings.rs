//! Messages: settings, storage and the app itself.

use super::messages::messages;
messages! {
    settings_title { "Settings", "Ajustes" }
    settings_text { "Units, language, crew, closing times", "Unidades, idioma, equipo, horas de cierre" }
    settings_device { "This device", "Este dispositivo" }
    settings_shop { "The shop", "El taller" }
    settings_shop_hint { "Shared with every device through the backup file.", "Compartido con todos los dispositivos por el archivo de copia." }
    settings_language { "Language", "Idioma" }
    language_english { "English", "English" }
    language_spanish { "Español", "Español" }
    settings_units { "Units", "Unidades" }
    units_inch { "Inches, °F", "Pulgadas, °F" }
    units_metric { "Centimetres, °C", "Centímetros, °C" }
    settings_clock { "Clock", "Reloj" }
    clock_12 { "12 hours", "12 horas" }
    clock_24 { "24 hours", "24 horas" }
    settings_theme { "Screen", "Pantalla" }
    theme_device { "As the device", "La del dispositivo" }
    theme_light { "Light", "Claro" }
    theme_dark { "Dark", "Oscuro" }
    theme_amber { "Amber, for the screen room", "Ámbar, para el cuarto de pantallas" }
    theme_amber_caution { "Amber on black keeps blue light low. Whether it is safe for your emulsion, its data sheet and a test strip say.", "El ámbar sobre negro reduce la luz azul. Si es seguro para tu emulsión lo dicen su ficha y una tira de prueba." }
    settings_buzz { "Tap the motor at each count", "Vibrar en cada conteo" }
    settings_buzz_hint { "Where the device has one.", "Si el dispositivo puede." }
    settings_click { "Click at each count", "Sonido en cada conteo" }
    settings_device_name { "What this device is called", "Nombre de este dispositivo" }
    settings_shop_name { "The shop's name", "Nombre del taller" }
    settings_crew { "Who works here", "Quién trabaja aquí" }
    settings_crew_hint { "Names with commas between: “Ines, Moss”.", "Nombres separados por comas: «Ines, Moss»." }
    settings_closing { "Closing by weekday", "Cierre por día de la semana" }
    settings_closing_hint {
        "Empty is a day off. Before 4:00 am it is the night after that day. All times are in this device's time zone: after a move to another one, earlier work is shown at that zone's times too.",
        "Vacío: día libre. Antes de las 4:00 a. m. es la noche siguiente a ese día. Todas las horas son del huso horario de este dispositivo: tras cambiar de huso, el trabajo anterior también se muestra con las horas del nuevo."
    }
    settings_set_up { "Set-up between runs", "Preparación entre tiradas" }
    settings_set_up_hint { "In minutes; used until three changes of your own are known.", "En minutos; se usa hasta conocer tres cambios tuyos." }
    unit_minutes { "min", "min" }
    settings_saved { "Saved.", "Guardado." }
    storage_title { "Storage and app", "Datos y app" }
    storage_text { "Where the data is, room, version, installing", "Dónde están los datos, espacio, versión, instalar" }
    storage_data { "Your data", "Tus datos" }
    storage_data_text { "Everything stays on this device. Nothing is sent anywhere; devices exchange files when you hand them over.", "Todo queda en este dispositivo. No se envía nada; los dispositivos intercambian archivos cuando tú los pasas." }
    storage_facts(facts) { "{facts} kept", "{facts} guardados" }
    storage_unknown(facts) { "{facts} of a newer version are carried along unread. Load the newest version to see them.", "{facts} de una versión más nueva se conservan sin leer. Carga la última versión para verlos." }
    storage_room(used, quota) { "{used} of {quota} used", "{used} de {quota} usados" }
    persistence_promised { "The browser has promised to keep the data.", "El navegador ha prometido conservar los datos." }
    persistence_not_promised { "The browser may clear the data when the device runs short of room. Ask it to keep them.", "El navegador puede borrar los datos si falta espacio. Pídele que los conserve." }
    persistence_declined { "The browser would not promise. Installing the app to the home screen usually changes that; a backup file always helps.", "El navegador no lo promete. Instalar la app suele cambiarlo; una copia siempre ayuda." }
    persistence_unknown { "This browser does not say whether it keeps the data. Make a backup now and then.", "Este navegador no dice si conserva los datos. Haz una copia de vez en cuando." }
    persistence_title { "Keep what you have entered", "Conserva lo que has anotado" }
    persistence_later { "Put this away", "Quitar esto" }
    persistence_ask { "Ask to keep the data", "Pedir que los conserve" }
    storage_offline { "Without a network", "Sin red" }
    offline_ready { "The app is stored on this device and opens without a network.", "La app está guardada y se abre sin red." }
    offline_not_ready { "The app is not stored for offline use yet. Keep it open with a network for a moment.", "La app aún no está guardada para usar sin red. Déjala abierta con red un momento." }
    storage_install { "On the home screen", "En la pantalla de inicio" }
    install_done { "The app runs from the home screen.", "La app se abre desde la pantalla de inicio." }
    install_button { "Install the app", "Instalar la app" }
    install_share { "Open the share menu and choose “Add to Home Screen”.", "Abre el menú de compartir y elige «Añadir a pantalla de inicio»." }
    install_menu { "If your browser can install pages, it is in its menu.", "Si tu navegador puede instalar páginas, está en su menú." }
    storage_version { "Version", "Versión" }
    storage_licence { "Free software under MIT or Apache 2.0.", "Software libre bajo MIT o Apache 2.0." }
    storage_erase { "Erase this device", "Borrar este dispositivo" }
    storage_erase_text { "Forgets every job, count and setting on this device. Other devices and backup files keep theirs.", "Olvida todos los pedidos, conteos y ajustes de este dispositivo. Otros dispositivos y las copias conservan lo suyo." }
    storage_erase_button { "Erase everything here", "Borrar todo aquí" }
    storage_erase_sure { "Erase for good?", "¿Borrar para siempre?" }
    storage_erase_sure_text(facts) { "{facts} will be gone from this device. Without a backup file they cannot be brought back.", "Se perderán {facts} de este dispositivo. Sin una copia no se pueden recuperar." }
    storage_erase_yes { "Erase", "Borrar" }
}
