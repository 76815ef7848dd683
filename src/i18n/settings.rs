//! Messages: settings, storage and the app itself.

use super::messages::messages;
messages! {
    settings_title { "Settings", "Ajustes" }
    settings_text { "Units, language, crew, closing times", "Unidades, idioma, equipo, horas de cierre" }
    settings_device { "This device", "Este dispositivo" }
    settings_shop { "Shop", "Taller" }
    settings_shop_hint { "Shared with every device through the backup file.", "Se comparte con todos los dispositivos por la copia de seguridad." }
    settings_language { "Language", "Idioma" }
    language_english { "English", "English" }
    language_spanish { "Español", "Español" }
    settings_length { "Length and mesh", "Longitud y malla" }
    length_inches { "Inches", "Pulgadas" }
    length_centimetres { "Centimeters", "Centímetros" }
    settings_temperature { "Temperature", "Temperatura" }
    settings_weight { "Ink weight", "Peso de la tinta" }
    weight_grams { "Grams", "Gramos" }
    weight_ounces { "Ounces", "Onzas" }
    settings_currency { "Currency of prices", "Moneda de los precios" }
    currency_none { "None", "Ninguna" }
    settings_clock { "Clock", "Reloj" }
    clock_12 { "12-hour", "12 horas" }
    clock_24 { "24-hour", "24 horas" }
    settings_theme { "Appearance", "Apariencia" }
    theme_device { "Same as device", "Como el dispositivo" }
    theme_light { "Light", "Claro" }
    theme_dark { "Dark", "Oscuro" }
    theme_amber { "Amber, for the screen room", "Ámbar, para el cuarto de pantallas" }
    theme_amber_caution { "Amber on black keeps blue light low. Check your emulsion's data sheet and run a test strip to see if it is safe.", "El ámbar sobre negro reduce la luz azul. Para saber si es seguro, revisa la ficha técnica de tu emulsión y haz una tira de prueba." }
    settings_buzz { "Vibrate on each count", "Vibrar en cada conteo" }
    settings_buzz_hint { "If the device can.", "Si el dispositivo puede." }
    settings_click { "Click on each count", "Sonido en cada conteo" }
    settings_device_name { "Device name", "Nombre de este dispositivo" }
    settings_shop_name { "Shop name", "Nombre del taller" }
    settings_crew { "Crew", "Equipo" }
    settings_crew_hint { "Names separated by commas: “Ines, Moss”.", "Nombres separados por comas: «Ines, Moss»." }
    settings_closing { "Closing by weekday", "Cierre por día" }
    settings_closing_hint {
        "Blank means closed. Before 4:00 am counts as the night after that day. All times use this device's time zone: if you change zones, earlier work shows in the new zone too.",
        "Vacío: cerrado. Antes de las 4:00 a.\u{a0}m. es la noche siguiente a ese día. Todas las horas son de la zona horaria de este dispositivo: si la cambias, el trabajo anterior también se muestra con la nueva."
    }
    settings_set_up { "Setup between runs", "Preparación entre tirajes" }
    settings_set_up_hint { "In minutes; used until three of your changeovers are timed.", "En minutos; se usa hasta medir tres cambios tuyos." }
    unit_minutes { "min", "min" }
    settings_saved { "Saved.", "Guardado." }
    storage_title { "Storage and app", "Almacenamiento y app" }
    storage_text { "Your data, storage space, version, installing", "Tus datos, espacio, versión, instalar" }
    storage_data { "Your data", "Tus datos" }
    storage_data_text { "Everything stays on this device. Nothing is sent anywhere; devices share data only through files you pass along.", "Todo queda en este dispositivo. No se envía nada; los dispositivos comparten datos solo con los archivos que tú pasas." }
    storage_facts(facts) { "{facts} saved", "{facts} guardados" }
    storage_unknown(facts) { "{facts} from a newer version are kept but can't be shown. Update the app to see them.", "{facts} de una versión más nueva se conservan sin mostrarse. Actualiza la app para verlos." }
    storage_room(used, quota) { "{used} of {quota} used", "{used} de {quota} usados" }
    persistence_promised { "The browser has agreed to keep the data.", "El navegador aceptó conservar los datos." }
    persistence_not_promised { "The browser may delete the data if the device runs low on space. Ask it to keep the data.", "El navegador puede borrar los datos si falta espacio. Pídele que los conserve." }
    persistence_declined { "The browser did not agree. Installing the app to the home screen usually helps; a backup file always does.", "El navegador no aceptó. Instalar la app suele ayudar; una copia de seguridad siempre ayuda." }
    persistence_unknown { "This browser does not say whether it keeps the data. Make a backup now and then.", "Este navegador no dice si conserva los datos. Haz una copia de vez en cuando." }
    persistence_title { "Keep your data", "Conserva tus datos" }
    persistence_later { "Not now", "Ahora no" }
    persistence_ask { "Ask to keep data", "Pedir que conserve" }
    storage_offline { "Offline", "Sin red" }
    offline_ready { "The app is saved on this device and works offline.", "La app está guardada en este dispositivo y funciona sin red." }
    offline_not_ready { "Not saved for offline use yet. Keep the app open online for a moment.", "Aún no está guardada para usar sin red. Deja la app abierta con red un momento." }
    storage_install { "Home screen", "Pantalla de inicio" }
    install_done { "The app is installed on the home screen.", "La app está en la pantalla de inicio." }
    install_button { "Install the app", "Instalar la app" }
    install_share { "Open the share menu and choose “Add to Home Screen”.", "Abre el menú de compartir y elige «Agregar a inicio»." }
    install_menu { "If your browser can install apps, the option is in its menu.", "Si tu navegador puede instalar apps, la opción está en su menú." }
    storage_version { "Version", "Versión" }
    storage_licence { "Free software under MIT or Apache 2.0.", "Software libre bajo MIT o Apache 2.0." }
    storage_erase { "Erase this device", "Borrar este dispositivo" }
    storage_erase_text { "Deletes every job, count and setting on this device. Other devices and backup files keep theirs.", "Borra todos los pedidos, conteos y ajustes de este dispositivo. Otros dispositivos y las copias conservan lo suyo." }
    storage_erase_button { "Erase everything here", "Borrar todo aquí" }
    storage_erase_sure { "Erase for good?", "¿Borrar para siempre?" }
    storage_erase_sure_text(facts) { "{facts} will be erased from this device. Without a backup file they can't be recovered.", "Se borrarán {facts} de este dispositivo. Sin una copia no se pueden recuperar." }
    storage_erase_yes { "Erase", "Borrar" }
}
