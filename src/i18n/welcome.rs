//! Messages: the first start and the demo shop.

use super::messages::messages;
messages! {
    welcome_title { "Every job out of the dryer before closing", "Todo fuera del horno antes del cierre" }
    welcome_text {
        "Count prints on a phone at the press, see if the run will be done by closing, and find every setup again. Works offline; what you enter stays on this device.",
        "Cuenta las prendas con el teléfono en la prensa, mira si el tiraje llega al cierre y recupera cada ajuste. Funciona sin red; lo que escribes se queda en este dispositivo."
    }
    welcome_start { "Start my shop", "Empezar mi taller" }
    welcome_shop_name { "Shop name", "Nombre del taller" }
    welcome_demo { "Try a demo shop", "Ver un taller de muestra" }
    welcome_demo_hint { "A made-up day, half done. Nothing stays when you exit.", "Un día inventado, a medias. Al salir no queda nada." }
    welcome_file { "I have a backup file", "Tengo una copia" }
    welcome_other_copy(path) {
        "Another copy of Lastpull at {path} on this site has its own shop.",
        "Otra copia de Lastpull en {path}, en este mismo sitio, tiene su propio taller."
    }
    demo_device { "Press phone", "Teléfono de la prensa" }
    demo_card_title { "Demo shop", "Taller de muestra" }
    demo_open { "Open the demo shop", "Abrir el taller de muestra" }
    demo_left { "Demo closed. This is your own shop.", "Cerraste la muestra. Este es tu taller." }
}
